package mechanism

import (
	"errors"
	"math"
	"testing"

	"steelyard/planar"
)

func TestOffsetSliderCrank(t *testing.T) {
	// R. L. Norton, Design of Machinery, ch. 4, example 4-2 (from memory: 152.91,
	// 126.84; 27.09, -86.84), recomputed to 12 digits: a 40, b 120, offset -20 mm,
	// crank at 60 deg. theta3 points from the slider to the crank pin.
	const mm = 0.001
	for _, row := range []struct {
		name      string
		branch    float64
		theta3, d float64 // deg, mm
	}{
		{"open", +1, 152.913071522, 126.838005195},
		{"crossed", -1, 27.0869284785, -86.8380051945},
	} {
		t.Run(row.name, func(t *testing.T) {
			m := sliderCrank(40*mm, 120*mm, -20*mm, 10*planar.Degree, row.branch)
			st := mustMove(t, m, float64(50*planar.Degree))
			pa, pb := st.Pose(1).Point(m.Joints[1].At), st.Pose(3).Point(m.Joints[2].At)
			near(t, "theta3, deg", pa.Sub(pb).Angle().Degrees(), row.theta3, 1e-9)
			near(t, "slider, mm", pb.X/mm, row.d, 1e-9)
			near(t, "rail, mm", pb.Y/mm, -20, 1e-12)
		})
	}
}

func TestCentredSliderCrank(t *testing.T) {
	// Closed form x = a cos θ + √(b² - a² sin² θ), 12 digits, invented lengths:
	// crank 50, rod 200 mm, 30 deg.
	const mm = 0.001
	m := sliderCrank(50*mm, 200*mm, 0, 0, +1)
	st := mustMove(t, m, float64(30*planar.Degree))
	pb := st.Pose(3).Point(m.Joints[2].At)
	near(t, "slider, mm", pb.X/mm, 241.732618519, 1e-9)
	near(t, "from dead centre, mm", (250*mm-pb.X)/mm, 8.26738148093, 1e-9)
	near(t, "dx/dtheta, mm/rad", st.vel[3].v.X/mm, -30.4554472559, 1e-9)
}

func TestSliderCrankDeadCentre(t *testing.T) {
	// Driven at the slider, it stops where crank and rod are in line: 250 mm out.
	m := sliderCrank(0.05, 0.2, 0, 40*planar.Degree, +1)
	out := 0.05*math.Cos(float64(40*planar.Degree)) + math.Sqrt(0.2*0.2-math.Pow(0.05*math.Sin(float64(40*planar.Degree)), 2))
	m.Drive = Drive{Joint: 3, From: 0, To: 0.1}
	st := mustCompile(t, m).NewState()
	var stop *Stop
	if err := st.MoveTo(0.1); !errors.As(err, &stop) || stop.Kind != DeadPoint || !stop.Slides {
		t.Fatalf("got %v, want a dead point", err)
	}
	near(t, "slide, m", stop.Driver, 0.25-out, 1e-9)
	near(t, "place x, m", stop.Place.X, 0.05, 1e-5)

	// The state rests there and still balances.
	mustForce(t, st, Hold)
	near(t, "imbalance, N", st.Imbalance(Hold), 0, 1e-6)
}

func TestSledOnInclinedRails(t *testing.T) {
	// Crank and rod push a sled up rails at α. Weight on the sled needs W sin α
	// along the rail, wherever the crank stands; weight at the crank pin needs
	// W·dy_A/ds with dx/dθ of the slider-crank in the rails' own frame.
	const a, b, alpha = 0.3, 0.9, 35 * planar.Degree
	turn := planar.TurnThenShift(alpha, vec{X: 0.2, Y: 0.4})
	m := sliderCrank(a, b, 0, 70*planar.Degree, +1)
	for i := range m.Links {
		m.Links[i].Mass, m.Links[i].Inertia = 0, 0
	}
	for i := range m.Joints {
		m.Joints[i].At = turn.Point(m.Joints[i].At)
	}
	m.Joints[3].Along = alpha
	m.Contact.At = turn.Point(m.Contact.At)
	m.Drive = Drive{Joint: 0, From: 0, To: -0.9} // the sled goes up
	for _, q := range []float64{0, -0.4, -0.9} {
		m.Weights = []Weight{{Name: "plates", Link: 3, At: m.Contact.At.Add(vec{X: 0.3, Y: 0.5}), Mass: 100, Load: true}}
		near(t, "on the sled, N", mustForce(t, mustMove(t, m, q), Hold), 100*Gravity*math.Sin(float64(alpha)), 1e-10)

		m.Weights = []Weight{{Name: "plates", Link: 1, At: m.Joints[1].At, Mass: 100, Load: true}}
		theta := float64(70*planar.Degree) + q
		sin, cos := math.Sincos(theta)
		ds := -a*sin - a*a*sin*cos/math.Sqrt(b*b-a*a*sin*sin) // m/rad along the rails
		rise := a * math.Cos(theta+float64(alpha))
		near(t, "at the crank pin, N", mustForce(t, mustMove(t, m, q), Hold), 100*Gravity*rise/ds, 1e-9)
	}
}

// slottedLever is a crank a about the origin whose pin carries a block that
// slides along a lever about (0, -h), on which there is a moment and a wheel.
func slottedLever(a, h float64, crank planar.Angle) Machine {
	pin, pivot := planar.Polar(a, crank), vec{Y: -h}
	return Machine{
		Links: []Link{{Name: "crank"}, {Name: "block", Center: pin}, {Name: "lever", Center: pivot}},
		Joints: []Joint{
			{Name: "O2", A: Ground, B: 1},
			{Name: "A", A: 1, B: 2, At: pin},
			{Name: "slot", Kind: Prismatic, A: 3, B: 2, At: pin, Along: pin.Sub(pivot).Angle()},
			{Name: "O4", A: Ground, B: 3, At: pivot},
		},
		Elements: []Element{{Name: "moment", Joint: 3, Law: Steady{80}}},
		Wheels:   []Flywheel{{Name: "wheel", Joint: 3, Inertia: 1.5, Ratio: 2}},
		Drive:    Drive{Joint: 0, From: 0, To: 1},
		Contact:  Contact{Name: "crank pin", Link: 1, At: pin},
	}
}

func TestGuideCarriedByMovingLink(t *testing.T) {
	// Crank and slotted lever: β = atan2 from the lever's pivot to the crank pin,
	// β′ = a(a + h sin θ)/r², r² = a² + h² + 2ah sin θ, β″ by differentiating.
	const a, h = 0.2, 0.5
	start := 20 * planar.Degree
	m := slottedLever(a, h, start)
	first := m.Joints[2].Along
	st := mustCompile(t, m).NewState()
	for _, q := range []float64{0, 0.5, 1, 2, 4, 2 * math.Pi} {
		if err := st.MoveTo(q); err != nil {
			t.Fatal(err)
		}
		theta := float64(start) + q
		sin, cos := math.Sincos(theta)
		r2 := a*a + h*h + 2*a*h*sin
		d1 := a * (a + h*sin) / r2
		d2 := a*h*cos/r2 - d1*2*a*h*cos/r2
		beta := math.Atan2(h+a*sin, a*cos)
		near(t, "lever, rad", float64(st.Turn(3)), float64((planar.Angle(beta) - first).Normalized()), 1e-11)
		near(t, "block turns with it, rad", float64(st.Turn(2)-st.Turn(3)), 0, 1e-12)
		near(t, "force, N", mustForce(t, st, Hold), 80*d1/a, 1e-10)
		in := st.Inertia()
		near(t, "effective mass, kg", in.Mass, 1.5*4*d1*d1/(a*a), 1e-9)
		near(t, "its slope, kg/m", in.Slope, 1.5*4*2*d1*d2/(a*a*a), 1e-7)
		near(t, "push of the block on the lever, N", st.Reaction(2, Hold).Force.Norm()*math.Sqrt(r2), 80, 1e-9)
	}
}

// trammel is a rod of length l between a slider on the floor at x and one on
// the wall, at (x, 0) and (0, √(l²-x²)), 40 kg on the wall's slider.
func trammel(l, x float64) Machine {
	y := math.Sqrt(l*l - x*x)
	foot, floor := slide("foot", 1, vec{X: x}, 0)
	top, wall := slide("top", 3, vec{Y: y}, math.Pi/2)
	return Machine{
		Links: []Link{foot, {Name: "rod"}, top},
		Joints: []Joint{floor, wall,
			{Name: "foot pin", A: 1, B: 2, At: vec{X: x}},
			{Name: "top pin", A: 2, B: 3, At: vec{Y: y}}},
		Weights: []Weight{{Name: "plates", Link: 3, At: vec{Y: y}, Mass: 40, Load: true}},
		Drive:   Drive{Joint: 0, From: 0, To: -x / 2},
		Contact: Contact{Name: "foot", Link: 1, At: vec{X: x}},
	}
}

func TestTrammel(t *testing.T) {
	// y = √(l²-x²): pushing the foot in by one lifts the top by x/y. F = W·x/y,
	// m = M·x²/y² and, pushing in, m′ = -dm/dx = -2M·x·l²/y⁴.
	const l, x0, m = 1.3, 1.1, 40
	description := trammel(l, x0)
	// Driven at the floor, at either pin and at the wall it is the same machine.
	turnOf := func(x float64) float64 { return math.Acos(x/l) - math.Acos(x0/l) } // rod, falling back
	for _, row := range []struct {
		name  string
		joint int
		drive func(x float64) float64
	}{
		{"floor", 0, func(x float64) float64 { return x - x0 }},
		{"wall", 1, func(x float64) float64 { return math.Sqrt(l*l-x*x) - math.Sqrt(l*l-x0*x0) }},
		{"pin between foot and rod", 2, func(x float64) float64 { return -turnOf(x) }},
		{"pin between rod and top", 3, turnOf},
	} {
		t.Run(row.name, func(t *testing.T) {
			d := description
			d.Drive = Drive{Joint: row.joint, From: 0, To: row.drive(0.5)}
			st := mustCompile(t, d).NewState()
			for _, x := range []float64{1.1, 0.9, 0.5} {
				if err := st.MoveTo(row.drive(x)); err != nil {
					t.Fatal(err)
				}
				y2 := l*l - x*x
				near(t, "foot, m", st.Pose(1).Point(vec{X: x0}).X, x, 1e-12)
				near(t, "force, N", mustForce(t, st, Hold), m*Gravity*x/math.Sqrt(y2), 1e-9)
				near(t, "lift ratio", st.LiftRatio(), x/math.Sqrt(y2), 1e-12)
				in := st.Inertia()
				near(t, "effective mass, kg", in.Mass, m*x*x/y2, 1e-10)
				near(t, "its slope, kg/m", in.Slope, -2*m*x*l*l/(y2*y2), 1e-9)
				near(t, "imbalance", st.Imbalance(Hold), 0, 1e-9)
			}
		})
	}
}

func TestRamBetweenMovingLinks(t *testing.T) {
	// A boom about the origin raised by a ram: cylinder pinned to the ground at p,
	// rod pinned to the boom at c, driven by the slide of rod in cylinder. Its
	// length gives the boom's angle by the law of cosines.
	p, c := vec{X: 0.5, Y: -0.3}, vec{X: 0.7}
	along := c.Sub(p).Angle()
	m := Machine{
		Links: []Link{{Name: "boom"}, {Name: "cylinder", Center: p}, {Name: "rod", Center: c}},
		Joints: []Joint{
			{Name: "axis", A: Ground, B: 1},
			{Name: "foot", A: Ground, B: 2, At: p},
			{Name: "eye", A: 1, B: 3, At: c},
			{Name: "ram", Kind: Prismatic, A: 2, B: 3, At: c, Along: along},
		},
		Weights: []Weight{{Name: "plates", Link: 1, At: vec{X: 1.2}, Mass: 20, Load: true}},
		Drive:   Drive{Joint: 3, From: 0, To: 0.25},
		Contact: Contact{Name: "grip", Link: 1, At: vec{X: 1}},
	}
	sw := mustSweep(t, m, 6)
	for i, q := range sw.Driver {
		length := c.Sub(p).Norm() + q
		angle := float64(p.Angle()) + math.Acos((p.Dot(p)+c.Dot(c)-length*length)/(2*p.Norm()*c.Norm()))
		near(t, "boom, rad", float64(sw.Turn(i, 1)), angle, 1e-12)
		near(t, "force, N", sw.Hold[i], 20*Gravity*1.2*math.Cos(angle), 1e-9)
		near(t, "travel, m", sw.Travel[i], angle, 2e-6) // by the trapezoid corrected with slopes; its error is of order h⁴
	}
}
