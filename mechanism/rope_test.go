package mechanism

import (
	"math"
	"testing"

	"steelyard/planar"
)

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
		Drive:   Drive{Joint: 0, From: 0, To: float64(-100 * planar.Degree)},
		Contact: Contact{Name: "grip", Link: 1, At: vec{X: 0.5}},
	}
}

func TestRoundSheaveLeavesLoadUnchanged(t *testing.T) {
	// Common practice, no source: a round sheave centred on its axis gives an
	// unchanged load. By the law of the lever F = W·r/L.
	m := camMachine(planar.Circle{Radius: 0.12}, 50)
	m.Drive.To = -m.Drive.To
	md := mustCompile(t, m)
	sw, err := md.Sweep(21)
	if err != nil {
		t.Fatal(err)
	}
	for i := range sw.Hold {
		if sw.Stops[i] != nil {
			t.Fatal(sw.Stops[i])
		}
		near(t, "force, N", sw.Hold[i], 50*Gravity*0.12/0.5, 1e-9)
		near(t, "tension, N", sw.Tension(i, 0, Hold), 50*Gravity, 1e-9)
		near(t, "lift ratio", sw.LiftRatio[i], 0.12/0.5, 1e-11)
	}
}
func BenchmarkFourBarCamStackSweep(b *testing.B) {
	oval, err := planar.EllipseFromAxes(vec{}, 0.15, 0.1, 0)
	if err != nil {
		b.Fatal(err)
	}
	m := nortonFourBar(40 * planar.Degree)
	stack, guide, plates := stackOn(4, -0.8, 0.4, 50)
	m.Links = append(m.Links, stack)
	m.Joints = append(m.Joints, guide)
	m.Weights = append(m.Weights, plates)
	m.Ropes = []Rope{{Name: "main", Route: Route{
		{Name: "cam", Link: 3, At: vec{X: 1}, Outline: oval, Side: planar.Right, Anchor: -100 * planar.Degree},
		{Name: "sheave", Link: Ground, At: vec{X: -0.75, Y: 1.2}, Outline: planar.Circle{Radius: 0.05}, Side: planar.Left},
		{Name: "stack", Link: 4, At: vec{X: -0.8, Y: 0.4}},
	}}}
	md := mustCompile(b, m)
	sw := md.NewSweep(101)
	b.ReportAllocs()
	for b.Loop() {
		if err := md.SweepInto(sw); err != nil {
			b.Fatal(err)
		}
	}
	if sw.Stops[50] != nil {
		b.Fatal(sw.Stops[50])
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/101, "ns/position")
}
