package mechanism

import (
	"math"
	"testing"

	"steelyard/planar"
)

// pulled is a sled on a level rail drawn by an element from the wall at x = 0:
// the element is as long as the sled is far, at driver 0 at x = start.
func pulled(law Law, start float64) Machine {
	sled, rail := slide("sled", 1, vec{X: start}, 0)
	return Machine{
		Links: []Link{sled}, Joints: []Joint{rail},
		Elements: []Element{{Name: "element", Law: law, Route: Route{
			{Name: "wall", Link: Ground}, {Name: "sled", Link: 1, At: vec{X: start}}}}},
		Drive:   Drive{Joint: 0, From: 0, To: 1},
		Contact: Contact{Name: "handle", Link: 1, At: vec{X: start}},
	}
}

type lengthAndForce struct{ length, force float64 }

// comparePull checks the force at lengths of an element pulled out.
func comparePull(t *testing.T, law Law, tol float64, rows []lengthAndForce) {
	t.Helper()
	st := mustCompile(t, pulled(law, rows[0].length)).NewState()
	for _, row := range rows {
		if err := st.MoveTo(row.length - rows[0].length); err != nil {
			t.Fatal(err)
		}
		near(t, "pull, N", mustForce(t, st, Hold), row.force, tol)
	}
}

func TestExtensionSpring(t *testing.T) {
	// Shigley's rate d⁴G/(8D³N) (constants from memory): d 3, D 24 mm, 40 coils,
	// G 79.3 GPa: 1452.02636719 N/m, 12 digits. No force before the initial
	// tension, here 20 N, has opened the coils; then that plus rate times stretch.
	rate := math.Pow(0.003, 4) * 79.3e9 / (8 * math.Pow(0.024, 3) * 40)
	near(t, "rate, N/m", rate, 1452.02636719, 1e-8)
	comparePull(t, Spring{Rate: rate, Free: 0.2, Preload: 20, PullOnly: true}, 1e-8, []lengthAndForce{
		{0.15, 0}, {0.2, 0}, {0.25, 20 + 72.6013183595}, {0.3, 20 + 145.202636719},
	})
}

func TestTorsionSpring(t *testing.T) {
	// d⁴E/(64DN) per rad (Shigley, constants from memory): d 2.5, D 20 mm, 6 coils,
	// E 203.4 GPa: 1.03454589844 N·m/rad, 12 digits; 6.13064236111 N·m a turn with
	// 10.8 in place of 64/2π for the coils' own friction.
	wire := math.Pow(0.0025, 4) * 203.4e9 / (0.02 * 6)
	rate := wire / 64
	near(t, "rate, N·m/rad", rate, 1.03454589844, 1e-11)
	near(t, "per turn with coil friction, N·m", wire/10.8, 6.13064236111, 1e-11)
	m := lever(0, 0.25, 0)
	m.Elements = []Element{{Name: "spring", Joint: 0, Law: Spring{Rate: rate, Free: -0.3}}}
	for _, q := range []float64{-0.3, 0, 0.5, 1} {
		near(t, "force, N", mustForce(t, mustMove(t, m, q), Hold), 1.03454589844*(q+0.3)/0.25, 1e-10)
	}
	// Between two moving links it turns both ways: the joint may be written either way round.
	m.Joints[0] = Joint{Name: "axis", A: 1, B: Ground}
	m.Elements[0].Law = Spring{Rate: rate, Free: 0.3}
	m.Drive = Drive{Joint: 0, From: 0, To: -1}
	near(t, "written the other way round, N", mustForce(t, mustMove(t, m, -0.5), Hold), 1.03454589844*0.8/0.25, 1e-10)
}

func TestGasSpring(t *testing.T) {
	// Isothermal, 400 N, rod 8 mm, tube 18 mm, gas 170 mm long: 400, 424.672,
	// 452.588, 484.433 N at 0, 50, 100, 150 mm of stroke, 6 digits; charge
	// 79.577 bar, progression 1.211.
	rod, tube := math.Pi/4*0.008*0.008, math.Pi/4*0.018*0.018
	near(t, "charge, bar", 400/rod/1e5, 79.577, 5e-4)
	law := GasSpring{Force: 400, Extended: 0.5, Column: tube * 0.17 / rod}
	comparePull(t, law, 5e-4, []lengthAndForce{{0.5, -400}, {0.45, -424.672}, {0.4, -452.588}, {0.35, -484.433}})
	near(t, "progression", 484.433/400, 1.211, 1e-3)
}

func TestNeoHookeanBand(t *testing.T) {
	// Engineering stress μ(λ - 1/λ²), μ 0.40 MPa (Treloar, from memory): 28.548,
	// 49.4, 81.9, 109.512, 135.2 N of two strands 13 × 4.5 mm at stretch 1.25 to
	// 3, 6 digits; nothing while slack.
	law := Band{Free: 0.4, Area: 2 * 0.013 * 0.0045, Shear: 0.4e6}
	comparePull(t, law, 1e-3, []lengthAndForce{
		{0.3, 0}, {0.4, 0}, {0.5, 28.548}, {0.6, 49.4}, {0.8, 81.9}, {1.0, 109.512}, {1.2, 135.2},
	})
}

func TestMeasuredTable(t *testing.T) {
	// Straight between the readings, none below the first, on in line above the last.
	comparePull(t, Table{X: []float64{0.5, 0.7, 1}, F: []float64{0, 60, 90}}, 1e-12, []lengthAndForce{
		{0.4, 0}, {0.5, 0}, {0.6, 30}, {0.7, 60}, {0.85, 75}, {1, 90}, {1.1, 100},
	})
}

func TestSteadyForceAndDamperAtRest(t *testing.T) {
	comparePull(t, Steady{Force: 120}, 1e-12, []lengthAndForce{{0.5, 120}, {0.9, 120}})
	comparePull(t, Damper{Coefficient: 300}, 0, []lengthAndForce{{0.5, 0}, {0.9, 0}}) // rests, gives nothing
}

func TestSlopesOfLaws(t *testing.T) {
	// Each law's slope against a central difference of its force.
	const h = 1e-6
	for _, row := range []struct {
		name string
		law  Law
		at   []float64
	}{
		{"spring", Spring{Rate: 800, Free: 0.3, Preload: 10}, []float64{0.1, 0.5}},
		{"extension spring", Spring{Rate: 800, Free: 0.3, Preload: 10, PullOnly: true}, []float64{0.2, 0.5}},
		{"gas spring", GasSpring{Force: 400, Extended: 0.5, Column: 0.86}, []float64{0.35, 0.45, 0.6}},
		{"band", Band{Free: 0.4, Area: 1e-4, Shear: 4e5}, []float64{0.3, 0.5, 1.1}},
		{"table", Table{X: []float64{0.5, 0.7, 1}, F: []float64{0, 60, 90}}, []float64{0.4, 0.6, 0.8, 1.2}},
		{"steady", Steady{Force: 50}, []float64{0.5}},
	} {
		for _, x := range row.at {
			up, _ := row.law.Pull(x+h, 0)
			down, _ := row.law.Pull(x-h, 0)
			_, slope := row.law.Pull(x, 0)
			near(t, row.name+", N/m", slope, (up-down)/(2*h), 1e-5*(1+math.Abs(slope)))
		}
	}
}

func TestSpringOverASheave(t *testing.T) {
	// An extension spring drawn by a strap wound on a drum of radius r: it
	// stretches r·φ, so F·L = r·k·r·φ.
	const r, k, l = 0.08, 2000.0, 0.4
	m := lever(0, l, 0)
	wall := vec{X: -0.6, Y: r} // level with the top of the drum
	m.Elements = []Element{{Name: "strap", Law: Spring{Rate: k, Free: 0.6}, Route: Route{
		{Name: "wall", Link: Ground, At: wall},
		{Name: "drum", Link: 1, Outline: planar.Circle{Radius: r}, Side: planar.Right, Anchor: 80 * planar.Degree},
	}}}
	m.Drive = Drive{Joint: 0, From: 0, To: -1.5}
	// Measured with 10 deg of strap on the drum: so much it is longer than 0.6 m.
	wound := float64(10*planar.Degree) * r
	for _, q := range []float64{0, 0.7, 1.5} {
		near(t, "force, N", mustForce(t, mustMove(t, m, -q), Hold), r*k*(wound+r*q)/l, 1e-9)
	}
}

func TestHangingChain(t *testing.T) {
	// What is off the floor weighs: λ·g·height, up to its whole length.
	sled, guide := slide("hook", 1, vec{Y: 0.2}, math.Pi/2)
	m := Machine{
		Links: []Link{sled}, Joints: []Joint{guide},
		Chains:  []Chain{{Name: "chain", Link: 1, At: vec{Y: 0.2}, Floor: 0.1, Length: 0.9, Density: 5}},
		Drive:   Drive{Joint: 0, From: -0.2, To: 1.2},
		Contact: Contact{Name: "hook", Link: 1, At: vec{Y: 0.2}},
	}
	st := mustCompile(t, m).NewState()
	for _, row := range []struct{ driver, off float64 }{{-0.2, 0}, {-0.1, 0}, {0, 0.1}, {0.5, 0.6}, {0.8, 0.9}, {1.2, 0.9}} {
		if err := st.MoveTo(row.driver); err != nil {
			t.Fatal(err)
		}
		near(t, "force, N", mustForce(t, st, Hold), 5*Gravity*row.off, 1e-12)
		near(t, "mass, kg", st.Inertia().Mass, 5*row.off, 1e-12)
	}
}

func TestCounterweight(t *testing.T) {
	// Moments add: F·l = W₁·b₁ - W₂·b₂.
	m := lever(0.6, 1, 50)
	m.Weights = append(m.Weights, Weight{Name: "counterweight", Link: 1, At: vec{X: -0.4}, Mass: 30})
	st := mustCompile(t, m).NewState()
	near(t, "force, N", mustForce(t, st, Hold), Gravity*(50*0.6-30*0.4), 1e-10)
	near(t, "lift ratio of the load alone", st.LiftRatio(), 0.6, 1e-13)
}
