package mechanism

import (
	"math"
	"slices"
	"testing"

	"steelyard/planar"
)

// clone copies what nudges change.
func clone(m Machine) Machine {
	m.Links, m.Joints, m.Weights = slices.Clone(m.Links), slices.Clone(m.Joints), slices.Clone(m.Weights)
	m.Elements, m.Chains, m.Ropes = slices.Clone(m.Elements), slices.Clone(m.Chains), slices.Clone(m.Ropes)
	for i := range m.Ropes {
		m.Ropes[i].Route = slices.Clone(m.Ropes[i].Route)
	}
	return m
}

// nudge changes one number of the description by e.
type nudge struct {
	name string
	by   func(m *Machine, e float64)
}

// TestDriftAgainstDifferences holds the exact derivative against central
// differences of whole sweeps, two independent roads.
func TestDriftAgainstDifferences(t *testing.T) {
	common := []nudge{
		{"contact", func(m *Machine, e float64) { m.Contact.At.X += e; m.Contact.At.Y -= 2 * e }},
		{"load", func(m *Machine, e float64) { m.Weights[0].Mass += 20 * e }},
		{"load place", func(m *Machine, e float64) { m.Weights[0].At.X += e; m.Weights[0].At.Y += e }},
		{"travel", func(m *Machine, e float64) { m.Drive.From += e; m.Drive.To -= 3 * e }},
		{"tilt", func(m *Machine, e float64) { m.Plane.Tilt += planar.Angle(e) }},
	}
	for _, machine := range driftMachines(t) {
		for _, n := range append(common, machine.nudges...) {
			t.Run(machine.name+"/"+n.name, func(t *testing.T) { compareDrift(t, machine.m, n) })
		}
	}
}

func compareDrift(t *testing.T, m Machine, n nudge) {
	const e = 1e-5
	at := func(e float64) (*Model, *Sweep) {
		c := clone(m)
		n.by(&c, e)
		md := mustCompile(t, c)
		sw, err := md.Sweep(41)
		if err != nil {
			t.Fatal(err)
		}
		return md, sw
	}
	md, sw := at(0)
	moved, up := at(e)
	_, down := at(-e)
	ds, err := md.Drifts(sw, []*Model{md, moved})
	if err != nil {
		t.Fatal(err)
	}
	still, d := ds[0], ds[1]
	for i := range sw.Driver {
		if sw.Stops[i] != nil {
			t.Fatal(sw.Stops[i])
		}
		if still.Hold[i] != 0 || still.Travel[i] != 0 || still.Contact[i] != (vec{}) {
			t.Fatalf("at position %d the unmoved machine drifts: %g N, %g m", i, still.Hold[i], still.Travel[i])
		}
		near(t, "hold", d.Hold[i], (up.Hold[i]-down.Hold[i])/2, 5e-4*e*(1+math.Abs(sw.Hold[i]))) // the chord of a curved number errs with e²
		near(t, "travel", d.Travel[i], (up.Travel[i]-down.Travel[i])/2, 1e-4*e)
		near(t, "load travel", d.LoadTravel[i], (up.LoadTravel[i]-down.LoadTravel[i])/2, 1e-4*e)
		near(t, "contact x", d.Contact[i].X, (up.Contact[i].X-down.Contact[i].X)/2, 1e-6*e)
		near(t, "contact y", d.Contact[i].Y, (up.Contact[i].Y-down.Contact[i].Y)/2, 1e-6*e)
		if t.Failed() {
			t.Fatalf("at position %d", i)
		}
	}
}

type driftMachine struct {
	name   string
	m      Machine
	nudges []nudge
}

func driftMachines(t *testing.T) []driftMachine {
	oval, err := planar.EllipseFromAxes(vec{X: 0.01}, 0.14, 0.11, 0.3)
	if err != nil {
		t.Fatal(err)
	}
	cam := camMachine(oval, 50)
	cam.Drive = Drive{Joint: 0, From: 0.1, To: 1.2}
	slide := Machine{
		Links: []Link{{Name: "crank"}, {Name: "rod", Mass: 3, Center: vec{X: 0.4, Y: 0.1}}, {Name: "sled", Mass: 20, Center: vec{X: 0.8}}},
		Joints: []Joint{
			{Name: "O", A: Ground, B: 1},
			{Name: "A", A: 1, B: 2, At: vec{X: 0.1, Y: 0.2}},
			{Name: "B", A: 2, B: 3, At: vec{X: 0.8, Y: 0.05}},
			{Name: "rail", Kind: Prismatic, A: Ground, B: 3, At: vec{X: 0.8, Y: 0.05}, Along: 0.3},
		},
		Weights: []Weight{{Name: "plates", Link: 3, At: vec{X: 0.9, Y: 0.3}, Mass: 40, Load: true}},
		Elements: []Element{
			{Name: "spring", Route: Route{{Name: "foot", At: vec{X: -0.2, Y: -0.3}}, {Name: "eye", Link: 2, At: vec{X: 0.5, Y: 0.2}}}, Law: Spring{Rate: 800, Free: 0.3}},
			{Name: "torsion", Joint: 0, Law: Spring{Rate: 12, Free: 0.2}},
		},
		Chains:  []Chain{{Name: "chain", Link: 3, At: vec{X: 0.9, Y: 0.3}, Floor: -0.5, Length: 2, Density: 4}},
		Drive:   Drive{Joint: 0, From: -0.4, To: 0.5},
		Contact: Contact{Name: "grip", Link: 2, At: vec{X: 0.5, Y: 0.4}},
	}
	leaning := clone(slide)
	leaning.Plane.Tilt = 0.4
	return []driftMachine{
		{"four-bar", nortonFourBar(40 * planar.Degree), []nudge{
			{"pin A", func(m *Machine, e float64) { m.Joints[1].At.X += e; m.Joints[1].At.Y -= e }},
			{"pin B", func(m *Machine, e float64) { m.Joints[2].At.Y += e }},
			{"ground pin", func(m *Machine, e float64) { m.Joints[3].At.X -= e; m.Joints[3].At.Y += e }},
			{"coupler mass", func(m *Machine, e float64) { m.Links[1].Mass += e; m.Links[1].Center.X += e }},
		}},
		{"cam and stack", cam, []nudge{
			{"sheave", func(m *Machine, e float64) { m.Ropes[0].Route[1].At = m.Ropes[0].Route[1].At.Add(vec{X: e, Y: 2 * e}) }},
			{"sheave radius", func(m *Machine, e float64) { m.Ropes[0].Route[1].Outline = planar.Circle{Radius: 0.05 + e} }},
			{"rope end", func(m *Machine, e float64) { m.Ropes[0].Route[2].At.X += e }},
			{"cam axis", func(m *Machine, e float64) { m.Ropes[0].Route[0].At.X += e; m.Ropes[0].Route[0].At.Y += e }},
			{"cam outline", func(m *Machine, e float64) {
				m.Ropes[0].Route[0].Outline, _ = planar.EllipseFromAxes(vec{X: 0.01 + e}, 0.14+e, 0.11-e, 0.3)
			}},
			{"axis", func(m *Machine, e float64) { m.Joints[0].At.X += e }},
		}},
		{"leaning slider-crank with spring and chain", leaning, []nudge{
			{"chain", func(m *Machine, e float64) { m.Chains[0].Density += e; m.Chains[0].Floor += e; m.Chains[0].At.Y += e }},
		}},
		{"slider-crank with spring and chain", slide, []nudge{
			{"rail tilt", func(m *Machine, e float64) { m.Joints[3].Along += planar.Angle(e) }},
			{"slider pin", func(m *Machine, e float64) {
				m.Joints[2].At.X += e
				m.Joints[2].At.Y += e
				m.Joints[3].At = m.Joints[2].At
			}},
			{"spring foot", func(m *Machine, e float64) {
				m.Elements[0].Route = slices.Clone(m.Elements[0].Route)
				m.Elements[0].Route[0].At.X += e
				m.Elements[0].Route[1].At.Y += e
			}},
			{"spring rate", func(m *Machine, e float64) { m.Elements[0].Law = Spring{Rate: 800 + 1000*e, Free: 0.3 - e} }},
			{"torsion", func(m *Machine, e float64) { m.Elements[1].Law = Spring{Rate: 12 + 10*e, Free: 0.2 + e} }},
			{"chain", func(m *Machine, e float64) { m.Chains[0].Density += e; m.Chains[0].Floor += e; m.Chains[0].At.Y += e }},
		}},
	}
}
