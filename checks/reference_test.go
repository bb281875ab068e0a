package checks

import (
	"math"
	"testing"

	"steelyard/mechanism"
	"steelyard/planar"
)

// The engines themselves, against closed forms and printed answers; Steelyard
// takes no part. Numbers that carry "recomputed" were recomputed from the
// formula with SciPy and mpmath to the digits shown.

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.15g, want %.15g, difference %.3g > %.3g", what, got, want, got-want, tol)
	}
}

func sweep(t *testing.T, e Engine, c Case) []Position {
	t.Helper()
	r, err := e.Sweep(c)
	if err != nil {
		t.Fatal(err)
	}
	return r.Positions
}

// nortonCase is problem (a): four-bar 0.4, 1.2, 0.8, 1.0 m of uniform bars of
// 2, 6 and 4 kg, 50 kg at (0.7, 0.2) m on the coupler, crank at 40°.
func nortonCase(t *testing.T, left float64) Case {
	t.Helper()
	m := fourBar("Norton", left)
	m.Weights[0].Inertia = 0
	c, err := CaseOf(m, nil, 2)
	if err != nil {
		t.Fatal(err)
	}
	c.At = []float64{0, float64(60 * deg)}
	return c
}

func TestEnginesOnNortonFourBar(t *testing.T) {
	// R. L. Norton, Design of Machinery, ch. 4 (problem from memory): a 40, b 120,
	// c 80, d 100, crank at 40°. Velocity ratios, torques and effective mass
	// recomputed to 12 digits or more.
	for _, e := range []Engine{Simbody, MuJoCo} {
		p := sweep(t, e, nortonCase(t, +1))
		near(t, e.Name+" torque at 40°, N·m", p[0].Drive, 120.737979215259, 1e-11)
		near(t, e.Name+" torque at 100°, N·m", p[1].Drive, -8.94809753549, 1e-10)
		near(t, e.Name+" effective mass at the crank pin, kg", p[0].Mass/0.16, 29.3442453325, 1e-9)
		near(t, e.Name+" left in the driver joint, N·m", p[0].Left, 0, 1e-12)
	}
	p := sweep(t, Simbody, nortonCase(t, +1))[0]
	near(t, "omega3/omega2, open", p.Rates[2], -0.164836576614, 1e-12)
	near(t, "omega4/omega2, open", p.Rates[3], 0.279919409687, 1e-12)
	p = sweep(t, Simbody, nortonCase(t, -1))[0]
	near(t, "omega3/omega2, crossed", p.Rates[2], -0.370350891982, 1e-12)
	near(t, "omega4/omega2, crossed", p.Rates[3], -0.815106878283, 1e-12)
}

func TestEnginesOnSliderCrank(t *testing.T) {
	// Centred slider-crank, crank 50, rod 200 mm at 30°: dx/dθ = -30.4554472559 mm
	// per rad (closed form, recomputed to 12 digits). The middles of a crank of
	// 3 kg and a rod of 5 kg both rise half as far as the pin between them, so the
	// crank needs (3/2 + 5/2)·g·r·cos 30°.
	a := planar.Polar(0.05, 30*deg)
	b := vec{X: a.X + math.Sqrt(0.2*0.2-a.Y*a.Y)}
	m := machine{
		Name:  "centred slider-crank",
		Links: []mechanism.Link{bar("crank", 3, vec{}, a), bar("rod", 5, a, b), block("slider", 4, b)},
	}
	m.Joints = append(m.Joints, pin("O", 0, 1, vec{}), pin("A", 1, 2, a), pin("B", 2, 3, b), guide("rail", 0, 3, b, 0))
	m.Drive = turning(0, 0, 1*deg)
	m.Contact.Link, m.Contact.At = 3, b
	c, err := CaseOf(m, nil, 2)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range []Engine{Simbody, MuJoCo} {
		p := sweep(t, e, c)[0]
		near(t, e.Name+" slider per rad, m", p.Velocity[0], -0.0304554472559, 1e-13)
		near(t, e.Name+" torque, N·m", p.Drive, (3./2+5./2)*9.80665*a.X, 1e-12)
	}
	// With nothing along the rail, moments about A on the rod: the rail carries
	// the slider and half of the rod.
	c.Contact = nil
	p := sweep(t, Simbody, c)[0]
	near(t, "rail, N", p.Reactions[3].Force[1], (4+5./2)*9.80665, 1e-12)
}

// cableCase is problem (b): a cylinder of 0.1 m at (0, 1.5) m, one strand down
// at x = -0.1, the other end on a lever about (0.6, 0.4), 0.5 m long, turned
// from 60° to -30°.
func cableCase() Case {
	tip := vec{X: 0.6, Y: 0.4}.Add(planar.Polar(0.5, 60*deg))
	return Case{
		Name: "cable", Gravity: 9.80665,
		Links:  []Link{{}, {Mass: 1, Inertia: 0.01, COM: pointOf(tip)}},
		Joints: []Joint{{Kind: Pin, B: 1, At: Point{0.6, 0.4}}},
		At:     []float64{0, float64(-90 * deg)},
		Ropes: []Rope{{
			Ends: [2]End{{At: Point{-0.1, 0}}, {Link: 1, At: pointOf(tip)}},
			Over: []Outline{{At: Point{0, 1.5}, Radius: 0.1, Turn: CW}},
		}},
	}
}

func TestEnginesOnCable(t *testing.T) {
	// Moment arm of the cable on the lever: closed form, recomputed to 12 digits.
	for _, e := range []struct {
		Engine
		tol float64
	}{{MuJoCo, 1e-12}, {Shortest, 1e-10}} {
		p := sweep(t, e.Engine, cableCase())
		near(t, e.Name+" arm at 60°, m", -p[0].Ropes[0].Rate, 0.486324136959, e.tol)
		near(t, e.Name+" arm at -30°, m", -p[1].Ropes[0].Rate, 0.218789316467, e.tol)
	}
}

func TestShortestStringRoundEllipse(t *testing.T) {
	// Perimeter of an ellipse of semi-axes 125 and 78 mm: 646.318858915 mm
	// (recomputed to 12 digits). A rope from its right end over the top to its
	// left end, each led straight down, lies on half of it.
	c := cableCase()
	c.At = []float64{0}
	c.Links[1] = Link{Mass: 1, COM: Point{3, 0}}
	c.Joints[0].At = Point{3, 0}
	c.Ropes[0].Over[0] = Outline{At: Point{0, 1}, Ellipse: &Ellipse{Along: 0.125, Across: 0.078}, Turn: CCW}
	c.Ropes[0].Ends = [2]End{{At: Point{0.125, 0}}, {At: Point{-0.125, 0}}}
	p := sweep(t, Shortest, c)
	near(t, "length, m", p[0].Ropes[0].Length, 2+0.646318858915/2, 1e-11)
}

func TestEnginesRefuseWhatTheyCannot(t *testing.T) {
	oval := cableCase()
	oval.Ropes[0].Over[0].Radius, oval.Ropes[0].Over[0].Ellipse = 0, &Ellipse{Along: 0.2, Across: 0.1}
	linked := nortonCase(t, +1)
	for _, row := range []struct {
		name string
		Engine
		Case
	}{
		{"no cable along a sweep", Simbody, cableCase()},
		{"only round sheaves", MuJoCo, oval},
		{"no links between links", Shortest, linked},
	} {
		if _, err := row.Sweep(row.Case); err == nil {
			t.Errorf("%s: %s answered a case it cannot follow", row.name, row.Engine.Name)
		}
	}
}
