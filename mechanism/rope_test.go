package mechanism

import (
	"math"
	"testing"

	"steelyard/planar"
)

func TestRoundSheaveLeavesLoadUnchanged(t *testing.T) {
	// Common practice, no source: a round sheave centred on its axis gives an
	// unchanged load. By the law of the lever F = W·r/L.
	sw := mustSweep(t, camMachine(planar.Circle{Radius: 0.12}, 50), 21)
	for i := range sw.Hold {
		near(t, "force, N", sw.Hold[i], 50*Gravity*0.12/0.5, 1e-9)
		near(t, "lift ratio", sw.LiftRatio[i], 0.12/0.5, 1e-11)
		near(t, "load travel, m", sw.LoadTravel[i], 0.12*sw.Driver[i], 1e-9)
	}
}

func TestMovingSheaves(t *testing.T) {
	// Law of the tackle: n strands carry the load, the handle travels n times as far.
	const w = 80 * Gravity
	for _, n := range []int{2, 4, 6} {
		sw := mustSweep(t, tackle(n, 80, RopeLoss{}), 11)
		for i := range sw.Hold {
			near(t, "handle, N", sw.Hold[i], w/float64(n), 1e-10)
			near(t, "tension, N", sw.Tension(i, 0, Hold), w/float64(n), 1e-10)
			near(t, "lift ratio", sw.LiftRatio[i], 1/float64(n), 1e-12)
			near(t, "effective mass, kg", sw.Mass[i], 80/float64(n*n), 1e-10)
		}
	}
}

func TestHandleAtTheLoadSide(t *testing.T) {
	// The same two strands the other way: the handle carries the sheave, the
	// load hangs on the rope. Twice the weight at half the travel.
	load, loadGuide := slide("load", 1, vec{X: 0.2, Y: 0.5}, math.Pi/2)
	grip, gripGuide := slide("handle", 2, vec{X: 0.1, Y: 1}, math.Pi/2)
	m := Machine{
		Links:  []Link{load, grip},
		Joints: []Joint{loadGuide, gripGuide},
		Ropes: []Rope{{Name: "main", Route: Route{
			{Name: "floor", Link: Ground},
			{Name: "sheave", Link: 2, At: vec{X: 0.1, Y: 1}, Outline: planar.Circle{Radius: 0.1}, Side: planar.Right},
			{Name: "load", Link: 1, At: vec{X: 0.2, Y: 0.5}},
		}}},
		Weights: []Weight{{Name: "plates", Link: 1, At: vec{X: 0.2, Y: 0.5}, Mass: 30, Load: true}},
		Drive:   Drive{Joint: 1, From: 0, To: 0.4},
		Contact: Contact{Name: "handle", Link: 2, At: vec{X: 0.1, Y: 1}},
	}
	sw := mustSweep(t, m, 5)
	for i := range sw.Hold {
		near(t, "handle, N", sw.Hold[i], 2*30*Gravity, 1e-10)
		near(t, "lift ratio", sw.LiftRatio[i], 2, 1e-12)
	}
}

// wrapLever is test problem (b) of the reference: a cylinder of 0.1 m at
// (0, 1.5), a strand down from it at x = -0.1 to a stack, and a lever about
// (0.6, 0.4), 0.5 m long and at 60 deg as measured, drawn by the other end.
func wrapLever() Machine {
	axis := vec{X: 0.6, Y: 0.4}
	tip := axis.Add(planar.Polar(0.5, 60*planar.Degree))
	stack, guide, plates := stackOn(2, -0.1, 0.5, 40)
	return Machine{
		Links:  []Link{{Name: "lever"}, stack},
		Joints: []Joint{{Name: "axis", A: Ground, B: 1, At: axis}, guide},
		Ropes: []Rope{{Name: "main", Route: Route{
			{Name: "lever", Link: 1, At: tip},
			{Name: "cylinder", Link: Ground, At: vec{Y: 1.5}, Outline: planar.Circle{Radius: 0.1}, Side: planar.Left},
			{Name: "stack", Link: 2, At: vec{X: -0.1, Y: 0.5}},
		}}},
		Weights: []Weight{plates},
		Drive:   Drive{Joint: 0, From: 0, To: float64(-90 * planar.Degree)},
		Contact: Contact{Name: "grip", Link: 1, At: axis.Add(planar.Polar(0.4, 60*planar.Degree))},
	}
}

func TestRedirectWithChangingWrap(t *testing.T) {
	// Moment arm of the rope about the lever, 12 digits; a general engine agrees
	// to 3e-16 m.
	st := mustCompile(t, wrapLever()).NewState()
	for _, row := range []struct{ driver, arm float64 }{
		{0, 0.486324136959},
		{float64(-90 * planar.Degree), 0.218789316467},
	} {
		if err := st.MoveTo(row.driver); err != nil {
			t.Fatal(err)
		}
		near(t, "force · 0.4 m / weight, m", mustForce(t, st, Hold)*0.4/(40*Gravity), row.arm, 1e-12)
		near(t, "tension, N", st.Tension(0, Hold), 40*Gravity, 1e-10)
		before, after := st.Radius(0, 1)
		near(t, "radius before the cylinder, m", before, 0.1, 1e-14)
		near(t, "radius after the cylinder, m", after, 0.1, 1e-14)
	}
}

func TestRedirectOnEitherSide(t *testing.T) {
	// Tangent from a point to a circle: it leaves the line to the centre, d away,
	// at asin(r/d). Rising past the sheave's left side the rope goes on upwards,
	// past its right side over the top and down; x is the same.
	const r, arm, pull = 0.1, 0.5, 400.0
	sheave := vec{X: -0.4, Y: 1.2}
	for _, row := range []struct {
		name string
		side planar.Side
		far  float64 // y of the stack, drawn away from the sheave by a constant pull
	}{
		{"over the top", planar.Left, 0.2},
		{"past the near side", planar.Right, 2.2},
	} {
		t.Run(row.name, func(t *testing.T) {
			end := vec{X: sheave.X - r, Y: row.far}
			stack, guide := slide("stack", 2, end, math.Pi/2)
			m := lever(0, arm, 0)
			m.Links, m.Joints, m.Weights = append(m.Links, stack), append(m.Joints, guide), nil
			m.Elements = []Element{{Name: "pull", Law: Steady{pull}, Route: Route{
				{Name: "far end", Link: Ground, At: vec{X: end.X, Y: sheave.Y + 2*(end.Y-sheave.Y)}},
				{Name: "stack", Link: 2, At: end}}}}
			m.Ropes = []Rope{{Name: "main", Route: Route{
				{Name: "tip", Link: 1, At: vec{X: arm}},
				{Name: "sheave", Link: Ground, At: sheave, Outline: planar.Circle{Radius: r}, Side: row.side},
				{Name: "stack", Link: 2, At: end},
			}}}
			m.Drive = Drive{Joint: 0, From: 0, To: -0.8}
			st := mustCompile(t, m).NewState()
			for _, q := range []float64{0, -0.3, -0.8} {
				if err := st.MoveTo(q); err != nil {
					t.Fatal(err)
				}
				tip := planar.Polar(arm, planar.Angle(q))
				to := sheave.Sub(tip)
				direction := to.Angle() - planar.Angle(float64(row.side)*math.Asin(r/to.Norm()))
				near(t, "force, N", mustForce(t, st, Hold), pull*tip.Unit().Cross(planar.Polar(1, direction)), 1e-10)
				near(t, "tension, N", st.Tension(0, Hold), pull, 1e-10)
			}
		})
	}
}

func TestRopeHandleOnAPath(t *testing.T) {
	// A handle pulled along a line that is not the rope's: F = T·cos of the angle
	// between them (virtual work). The rope runs from (0, 1) to the handle.
	const w = 30 * Gravity
	top := Station{Name: "top", Link: Ground, At: vec{Y: 1}} // bent over a point
	t.Run("straight", func(t *testing.T) {
		m := hoist(30, vec{}, vec{X: 0.5, Y: 1}, -30*planar.Degree, top)
		m.Drive.To = 0.6
		sw := mustSweep(t, m, 7)
		for i := range sw.Hold {
			handle := vec{X: 0.5, Y: 1}.Add(planar.Polar(sw.Driver[i], -30*planar.Degree))
			cos := handle.Sub(top.At).Unit().Dot(planar.Polar(1, -30*planar.Degree))
			near(t, "force, N", sw.Hold[i], w*cos, 1e-10)
			near(t, "travel, m", sw.Travel[i], sw.Driver[i], 1e-12)
			near(t, "lift ratio", sw.LiftRatio[i], cos, 1e-12)
		}
	})
	t.Run("arc", func(t *testing.T) {
		// A hand on a circle of 0.6 m about the shoulder at (0.9, 0.9).
		shoulder := vec{X: 0.9, Y: 0.9}
		grip := shoulder.Add(vec{X: -0.6})
		m := hoist(30, vec{}, grip, 0, top)
		m.Joints[1] = Joint{Name: "shoulder", A: Ground, B: 2, At: shoulder}
		m.Drive.To = 1.5
		sw := mustSweep(t, m, 7)
		for i := range sw.Hold {
			arm := planar.Polar(0.6, planar.Angle(math.Pi+sw.Driver[i]))
			cos := shoulder.Add(arm).Sub(top.At).Unit().Dot(arm.Perp().Unit())
			near(t, "force, N", sw.Hold[i], w*cos, 1e-10)
		}
	})
}

func TestTiltedPlaneAndUprightStack(t *testing.T) {
	// In a plane leaning by φ a weight counts by cos φ; a stack on upright guides
	// counts in full.
	lean := 35 * planar.Degree
	m := lever(0.62, 1.05, 60)
	m.Plane.Tilt = lean
	near(t, "lever, N", mustForce(t, mustCompile(t, m).NewState(), Hold), 347.4356*math.Cos(float64(lean)), 1e-9)

	m = camMachine(planar.Circle{Radius: 0.12}, 50)
	m.Plane.Tilt = lean
	near(t, "stack, N", mustForce(t, mustCompile(t, m).NewState(), Hold), 50*Gravity*0.12/0.5, 1e-9)
	m.Links[1].Upright = false
	near(t, "sled in the plane, N", mustForce(t, mustCompile(t, m).NewState(), Hold), 50*Gravity*0.12/0.5*math.Cos(float64(lean)), 1e-9)

	m = lever(0.62, 1.05, 60)
	m.Plane.Tilt = math.Pi / 2
	near(t, "level plane, N", mustForce(t, mustCompile(t, m).NewState(), Hold), 0, 0)
}
