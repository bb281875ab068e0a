package mechanism

import (
	"math"
	"testing"

	"steelyard/planar"
)

// Machines of the textbooks and of the gym floor, shared by all tests. Where
// no source is named the dimensions are invented.

// near fails the test unless got is within tol of want.
func near(t testing.TB, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.15g, want %.15g, difference %.3g > %.3g", what, got, want, got-want, tol)
	}
}

// mustCompile compiles a machine that is right by construction.
func mustCompile(t testing.TB, m Machine) *Model {
	t.Helper()
	md, err := Compile(m)
	if err != nil {
		t.Fatal(err)
	}
	return md
}

// mustMove compiles the machine and takes it to driver q.
func mustMove(t testing.TB, m Machine, q float64) *State {
	t.Helper()
	st := mustCompile(t, m).NewState()
	if err := st.MoveTo(q); err != nil {
		t.Fatal(err)
	}
	return st
}

// mustSweep compiles the machine and sweeps it without a gap.
func mustSweep(t testing.TB, m Machine, n int) *Sweep {
	t.Helper()
	sw, err := mustCompile(t, m).Sweep(n)
	if err != nil {
		t.Fatal(err)
	}
	for i, stop := range sw.Stops {
		if stop != nil {
			t.Fatalf("position %d: %v", i, stop)
		}
	}
	return sw
}

// mustForce returns the contact force in N.
func mustForce(t testing.TB, st *State, sense Sense) float64 {
	t.Helper()
	f, err := st.Force(sense)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// degrees turns a driver into degrees.
func degrees(rad float64) float64 { return planar.Angle(rad).Degrees() }

// crossing returns where circles of radii r and s about a and b meet, left of
// a→b for side +1, by the law of cosines.
func crossing(a, b vec, r, s, side float64) vec {
	d := b.Sub(a)
	at := d.Angle() + planar.Angle(side*math.Acos((r*r+d.Dot(d)-s*s)/(2*r*d.Norm())))
	return a.Add(planar.Polar(r, at))
}

// lever is an arm about the origin, level as measured: load at x = load, grip
// at x = grip.
func lever(load, grip, mass float64) Machine {
	return Machine{
		Links:   []Link{{Name: "arm"}},
		Joints:  []Joint{{Name: "axis", A: Ground, B: 1}},
		Weights: []Weight{{Name: "plates", Link: 1, At: vec{X: load}, Mass: mass, Load: true}},
		Drive:   Drive{Joint: 0, From: -0.5, To: 1},
		Contact: Contact{Name: "grip", Link: 1, At: vec{X: grip}},
	}
}

// bars are four-bar lengths in m: crank O2-A, coupler A-B, rocker B-O4, ground.
type bars struct{ a, b, c, d float64 }

// norton is the four-bar of R. L. Norton, Design of Machinery, ch. 4: 40, 120,
// 80, 100 mm (from memory), here ten times as large.
var norton = bars{0.4, 1.2, 0.8, 1.0}

// fourBar is a four-bar with its crank at the angle, open for branch +1 and
// crossed for -1: uniform bars of 2, 6 and 4 kg and 50 kg on the coupler at
// (0.7, 0.2) m of its frame, held at the crank pin.
func fourBar(l bars, crank planar.Angle, branch float64) Machine {
	pa, ground := planar.Polar(l.a, crank), vec{X: l.d}
	pb := crossing(pa, ground, l.b, l.c, branch)
	u := pb.Sub(pa).Unit()
	load := pa.Add(u.Scale(0.7)).Add(u.Perp().Scale(0.2))
	return Machine{
		Links: []Link{
			{Name: "crank", Mass: 2, Center: pa.Scale(0.5), Inertia: 2 * l.a * l.a / 12},
			{Name: "coupler", Mass: 6, Center: pa.Lerp(pb, 0.5), Inertia: 6 * l.b * l.b / 12},
			{Name: "rocker", Mass: 4, Center: pb.Lerp(ground, 0.5), Inertia: 4 * l.c * l.c / 12},
		},
		Joints: []Joint{
			{Name: "O2", A: Ground, B: 1},
			{Name: "A", A: 1, B: 2, At: pa},
			{Name: "B", A: 2, B: 3, At: pb},
			{Name: "O4", A: Ground, B: 3, At: ground},
		},
		Weights: []Weight{{Name: "plates", Link: 2, At: load, Mass: 50, Load: true}},
		Drive:   Drive{Joint: 0, From: 0, To: float64(60 * planar.Degree)},
		Contact: Contact{Name: "crank pin", Link: 1, At: pa},
	}
}

// nortonFourBar is Norton's, open.
func nortonFourBar(crank planar.Angle) Machine { return fourBar(norton, crank, +1) }

// sliderCrank is a crank a about the origin at the angle, a rod b, and a slider
// on a level rail at height offset, ahead of the crank pin for branch +1, held
// at the slider.
func sliderCrank(a, b, offset float64, crank planar.Angle, branch float64) Machine {
	pa := planar.Polar(a, crank)
	pb := vec{X: pa.X + branch*math.Sqrt(b*b-(pa.Y-offset)*(pa.Y-offset)), Y: offset}
	return Machine{
		Links: []Link{
			{Name: "crank", Mass: 1, Center: pa.Scale(0.5), Inertia: a * a / 12},
			{Name: "rod", Mass: 3, Center: pa.Lerp(pb, 0.4), Inertia: 3 * b * b / 12},
			{Name: "slider", Mass: 2, Center: pb},
		},
		Joints: []Joint{
			{Name: "O", A: Ground, B: 1},
			{Name: "A", A: 1, B: 2, At: pa},
			{Name: "B", A: 2, B: 3, At: pb},
			{Name: "rail", Kind: Prismatic, A: Ground, B: 3, At: pb},
		},
		Weights: []Weight{{Name: "plates", Link: 2, At: pa.Lerp(pb, 0.7), Mass: 20, Load: true}},
		Drive:   Drive{Joint: 0, From: -0.3, To: 0.4},
		Contact: Contact{Name: "sled", Link: 3, At: pb},
	}
}

// stackOn returns a stack of the given mass on vertical guides at x, with its
// guide joint, as link number l.
func stackOn(l LinkID, x, y, mass float64) (Link, Joint, Weight) {
	at := vec{X: x, Y: y}
	return Link{Name: "stack", Center: at, Upright: true},
		Joint{Name: "guide", Kind: Prismatic, A: Ground, B: l, At: at, Along: math.Pi / 2},
		Weight{Name: "plates", Link: l, At: at, Mass: mass, Load: true}
}

// camMachine is an arm about the origin with a cam fixed to it, and a stack
// drawn up over a round sheave.
func camMachine(cam planar.Outline, mass float64) Machine {
	stack, guide, plates := stackOn(2, -0.8, 0.4, mass)
	return Machine{
		Links:  []Link{{Name: "arm"}, stack},
		Joints: []Joint{{Name: "axis", A: Ground, B: 1}, guide},
		Ropes: []Rope{{Name: "main", Route: Route{
			{Name: "cam", Link: 1, Outline: cam, Side: planar.Right, Anchor: -100 * planar.Degree},
			{Name: "sheave", Link: Ground, At: vec{X: -0.75, Y: 1.2}, Outline: planar.Circle{Radius: 0.05}, Side: planar.Left},
			{Name: "stack", Link: 2, At: vec{X: -0.8, Y: 0.4}},
		}}},
		Weights: []Weight{plates},
		Drive:   Drive{Joint: 0, From: 0, To: float64(100 * planar.Degree)},
		Contact: Contact{Name: "grip", Link: 1, At: vec{X: 0.5}},
	}
}

// slide is a weightless link on a guide from the ground, as link number l.
func slide(name string, l LinkID, at vec, along planar.Angle) (Link, Joint) {
	return Link{Name: name, Center: at}, Joint{Name: name + " guide", Kind: Prismatic, A: Ground, B: l, At: at, Along: along}
}

// hoist is a load of the given mass on vertical guides below the route's one
// end, lifted by pulling a handle at the other end along the direction pull.
// The stations between them are fixed; driver is the handle.
func hoist(mass float64, load, handle vec, pull planar.Angle, between ...Station) Machine {
	l1, g1 := slide("load", 1, load, math.Pi/2)
	l2, g2 := slide("handle", 2, handle, pull)
	route := append(Route{{Name: "load", Link: 1, At: load}}, between...)
	return Machine{
		Links:   []Link{l1, l2},
		Joints:  []Joint{g1, g2},
		Ropes:   []Rope{{Name: "main", Route: append(route, Station{Name: "handle", Link: 2, At: handle})}},
		Weights: []Weight{{Name: "plates", Link: 1, At: load, Mass: mass, Load: true}},
		Drive:   Drive{Joint: 1, From: 0, To: 0.3},
		Contact: Contact{Name: "handle", Link: 2, At: handle},
	}
}

// tackle is a block and tackle of n strands, all upright, whose lead line comes
// down from the upper block to a handle: one sheave a strand. n is even.
func tackle(n int, mass float64, loss RopeLoss) Machine {
	const r, low, high = 0.04, 0.5, 2.0
	load, lead := vec{X: float64(n) * r, Y: low - 0.2}, vec{X: float64(2*n) * r, Y: 1}
	m := hoist(mass, load, lead, -math.Pi/2)
	route := Route{{Name: "becket", Link: Ground, At: vec{Y: high}}}
	for k := range n {
		s := Station{Name: "lower sheave", Link: 1, At: vec{X: float64(2*k+1) * r, Y: low}, Outline: planar.Circle{Radius: r}, Side: planar.Left, Loss: loss}
		if k%2 == 1 {
			s.Name, s.Link, s.At.Y, s.Side = "upper sheave", Ground, high, planar.Right
		}
		route = append(route, s)
	}
	m.Ropes[0].Route = append(route, Station{Name: "handle", Link: 2, At: lead})
	return m
}

// reversed is the route walked the other way.
func reversed(r Route) Route {
	back := make(Route, 0, len(r))
	for i := len(r) - 1; i >= 0; i-- {
		s := r[i]
		s.Side = -s.Side
		back = append(back, s)
	}
	return back
}
