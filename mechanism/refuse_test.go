package mechanism

import (
	"errors"
	"math"
	"strings"
	"testing"

	"steelyard/planar"
)

// TestRefusedDescriptions: what no pose could make right is refused with the
// part, the value, and a cure.
func TestRefusedDescriptions(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	// whole has one of everything, so that each row spoils a single number.
	whole := func() Machine {
		m := camMachine(planar.Circle{Radius: 0.12}, 50)
		m.Elements = []Element{
			{Name: "spring", Law: Spring{Rate: 500, Free: 0.3}, Route: Route{{Name: "foot", Link: Ground, At: vec{Y: -0.5}}, {Name: "eye", Link: 1, At: vec{X: 0.3}}}},
			{Name: "torsion", Joint: 0, Law: Spring{Rate: 5}},
		}
		m.Chains = []Chain{{Name: "chain", Link: 1, At: vec{X: 0.4}, Floor: -1, Length: 2, Density: 3}}
		m.Wheels = []Flywheel{{Name: "wheel", Joint: 0, Inertia: 0.1, Ratio: 2}}
		return m
	}
	mustCompile(t, whole())
	law := func(l Law) func(*Machine) { return func(m *Machine) { m.Elements[0].Law = l } }
	station := func(f func(*Station)) func(*Machine) { return func(m *Machine) { f(&m.Ropes[0].Route[1]) } }
	for _, row := range []struct {
		name  string
		spoil func(*Machine)
		says  []string
	}{
		{"no link", func(m *Machine) { m.Links = nil }, []string{"no moving link"}},
		{"too many links", func(m *Machine) { m.Links = make([]Link, 17) }, []string{"17 moving links", "16"}},
		{"mass that is no number", func(m *Machine) { m.Links[0].Mass = nan }, []string{`link "arm"`, "mass", "NaN kg"}},
		{"mass below nought", func(m *Machine) { m.Links[0].Mass = -3 }, []string{`link "arm"`, "-3 kg"}},
		{"mass without bound", func(m *Machine) { m.Links[0].Mass = inf }, []string{`link "arm"`, "+Inf kg", "5000"}},
		{"mass in grams", func(m *Machine) { m.Weights[0].Mass = 20000 }, []string{`weight "plates"`, "20000 kg", "5000"}},
		{"inertia below nought", func(m *Machine) { m.Links[0].Inertia = -1 }, []string{"inertia", "-1 kg·m²"}},
		{"centre in millimetres", func(m *Machine) { m.Links[0].Center.X = 412 }, []string{"centre of mass (x)", "412 m", "100 m"}},
		{"pin without place", func(m *Machine) { m.Joints[0].At.Y = nan }, []string{`joint "axis"`, "NaN m"}},
		{"joint to a missing link", func(m *Machine) { m.Joints[0].B = 7 }, []string{`joint "axis"`, "not there"}},
		{"joint to a link below the ground", func(m *Machine) { m.Joints[0].A = -1 }, []string{`joint "axis"`, "not there"}},
		{"joint of a link with itself", func(m *Machine) { m.Joints[0].A = 1 }, []string{`joint "axis"`, "itself"}},
		{"guide without direction", func(m *Machine) { m.Joints[1].Along = planar.Angle(nan) }, []string{`joint "guide"`, "direction", "NaN"}},
		{"friction below nought", func(m *Machine) { m.Joints[0].Friction.Coefficient = -0.1 }, []string{"friction coefficient", "-0.1"}},
		{"pin of two metres", func(m *Machine) { m.Joints[0].Friction.Radius = 2 }, []string{"pin radius", "2 m"}},
		{"bearing below nought", func(m *Machine) { m.Joints[1].Friction.Bearing = -1 }, []string{"bearing length", "-1 m"}},
		{"drag without bound", func(m *Machine) { m.Joints[1].Friction.Drag = inf }, []string{"drag", "+Inf"}},
		{"rope with one end", func(m *Machine) { m.Ropes[0].Route = m.Ropes[0].Route[:1] }, []string{`rope "main"`, "1"}},
		{"rope with no end", func(m *Machine) { m.Ropes[0].Route = nil }, []string{`rope "main"`}},
		{"sheave without side", station(func(s *Station) { s.Side = 0 }), []string{`rope "main"`, "sheave", "left or right"}},
		{"sheave on a missing link", station(func(s *Station) { s.Link = 9 }), []string{"sheave", "not there"}},
		{"sheave without place", station(func(s *Station) { s.At.X = nan }), []string{`rope "main"`, "NaN m"}},
		{"sheave radius that is no number", station(func(s *Station) { s.Outline = planar.Circle{Radius: nan} }), []string{`rope "main"`, "sheave", "radius"}},
		{"sheave radius below nought", station(func(s *Station) { s.Outline = planar.Circle{Radius: -0.05} }), []string{`rope "main"`, "sheave", "radius"}},
		{"sheave radius of nought", station(func(s *Station) { s.Outline = planar.Circle{} }), []string{`rope "main"`, "sheave", "radius"}},
		{"sheave centre that is no number", station(func(s *Station) { s.Outline = planar.Circle{Center: vec{X: nan}, Radius: 0.05} }), []string{`rope "main"`, "sheave"}},
		{"sheave gains", station(func(s *Station) { s.Loss.Efficiency = 1.02 }), []string{"efficiency", "1.02"}},
		{"two losses at once", station(func(s *Station) { s.Loss = RopeLoss{Efficiency: 0.95, Slip: 0.1} }), []string{`rope "main"`, "sheave", "one"}},
		{"bearing loss without sizes", station(func(s *Station) { s.Loss = RopeLoss{Bearing: 0.2} }), []string{`rope "main"`, "axle over rim"}},
		{"turns below nought", func(m *Machine) { m.Ropes[0].Route[0].Turns = -2 }, []string{`rope "main"`, "turns", "-2"}},
		{"a million turns", func(m *Machine) { m.Ropes[0].Route[0].Turns = 1e6 }, []string{`rope "main"`, "turns", "1e+06", "50"}},
		{"anchor that is no number", func(m *Machine) { m.Ropes[0].Route[0].Anchor = planar.Angle(nan) }, []string{`rope "main"`, "anchor", "NaN"}},
		{"rope through a sheave", func(m *Machine) { m.Ropes[0].Route[2].At = vec{X: -0.75, Y: 1.21} }, []string{`rope "main"`, "sheave", "mm inside"}},
		{"sheave inside the cam", station(func(s *Station) { s.At = vec{X: 0.05} }), []string{`rope "main"`, "cam", "sheave", "mm"}},
		{"rope that passes clear of its sheave", func(m *Machine) {
			*m = offSheave()
			m.Ropes[0].Route[0].At.Y = 1.6
		}, []string{`rope "main"`, "°", "sheave", "side"}},
		{"rope that touches nothing that moves", func(m *Machine) {
			m.Ropes = append(m.Ropes, Rope{Name: "washing line", Route: Route{{Name: "a", Link: Ground}, {Name: "b", Link: Ground, At: vec{X: 1}}}})
		}, []string{`rope "washing line"`, "moves"}},
		{"no law", law(nil), []string{`element "spring"`, "law"}},
		{"spring rate below nought", law(Spring{Rate: -5}), []string{`element "spring"`, "rate", "-5"}},
		{"spring rate that is no number", law(Spring{Rate: nan}), []string{"rate", "NaN"}},
		{"gas without column", law(GasSpring{Force: 300, Extended: 0.5}), []string{"gas column", "0 m"}},
		{"gas column without bound", law(GasSpring{Force: 300, Extended: 0.5, Column: inf}), []string{"gas column", "+Inf"}},
		{"band without length", law(Band{Area: 1e-4, Shear: 4e5}), []string{"unstretched length", "0 m"}},
		{"band without bound", law(Band{Free: inf, Area: 1e-4, Shear: 4e5}), []string{"unstretched length", "+Inf"}},
		{"table of one pair", law(Table{X: []float64{1}, F: []float64{2}}), []string{"table", "1 lengths"}},
		{"table that goes back", law(Table{X: []float64{1, 0.5}, F: []float64{2, 3}}), []string{"table", "0.5 m"}},
		{"table with a hole", law(Table{X: []float64{1, 2}, F: []float64{2, nan}}), []string{"force", "NaN N"}},
		{"steady force without bound", law(Steady{inf}), []string{"force", "+Inf"}},
		{"damper below nought", law(Damper{-1}), []string{"damping", "-1"}},
		{"element about a missing pin", func(m *Machine) { m.Elements[1].Joint = 5 }, []string{`element "torsion"`, "pin"}},
		{"element about a guide", func(m *Machine) { m.Elements[1].Joint = 1 }, []string{`element "torsion"`, "pin"}},
		{"gas spring about a pin", func(m *Machine) { m.Elements[1].Law = GasSpring{Force: 300, Extended: 0.5, Column: 0.6} }, []string{`element "torsion"`, "pin"}},
		{"weight on a missing link", func(m *Machine) { m.Weights[0].Link = 4 }, []string{`weight "plates"`, "not there"}},
		{"chain of lead", func(m *Machine) { m.Chains[0].Density = 500 }, []string{`chain "chain"`, "500 kg/m"}},
		{"wheel on a missing pin", func(m *Machine) { m.Wheels[0].Joint = -1 }, []string{`flywheel "wheel"`, "pin"}},
		{"gear ratio that is no number", func(m *Machine) { m.Wheels[0].Ratio = nan }, []string{"gear ratio", "NaN"}},
		{"travel of a missing joint", func(m *Machine) { m.Drive.Joint = 8 }, []string{"travel", "not there"}},
		{"travel of nought", func(m *Machine) { m.Drive = Drive{Joint: 0, From: 0.3, To: 0.3} }, []string{"travel", "0.3 rad"}},
		{"travel in degrees", func(m *Machine) { m.Drive.To = 100 }, []string{"travel", "100 rad"}},
		{"travel without end", func(m *Machine) { m.Drive.To = nan }, []string{"travel", "end", "NaN"}},
		{"contact on the ground", func(m *Machine) { m.Contact.Link = Ground }, []string{"contact", "moves"}},
		{"contact nowhere", func(m *Machine) { m.Contact.At.X = inf }, []string{"contact", "+Inf m"}},
		{"plane upside down", func(m *Machine) { m.Plane.Tilt = 3 }, []string{"plane", "tilt", "3 rad"}},
	} {
		t.Run(row.name, func(t *testing.T) {
			m := clone(whole())
			row.spoil(&m)
			_, err := Compile(m)
			var part *PartError
			if !errors.As(err, &part) {
				t.Fatalf("got %v, want a *PartError", err)
			}
			readable(t, err)
			for _, word := range row.says {
				if !strings.Contains(err.Error(), word) {
					t.Errorf("%q does not say %q", err, word)
				}
			}
		})
	}
}

func TestFreedoms(t *testing.T) {
	for _, row := range []struct {
		name     string
		m        Machine
		freedoms int
		says     []string
	}{
		{"none: a triangle of links", triangle(), 0, []string{"link", "held by more joints"}},
		{"two: a five-bar with one driver", fiveBar(), 2, []string{"2 freedoms instead of one", "link"}},
		{"two: a link nobody holds", loosened(), 4, []string{"4 freedoms instead of one", `link "stray"`}},
		{"over-held: a third crank", thirdCrank(), 0, []string{"held by more joints"}},
		{"over-held: pinned to the ground twice", pinnedTwice(), -1, []string{`link "arm"`, "held by more joints"}},
		{"stack without guides", unguided(), 3, []string{`link "stack"`}},
	} {
		t.Run(row.name, func(t *testing.T) {
			_, err := Compile(row.m)
			var freedom *FreedomError
			if !errors.As(err, &freedom) {
				t.Fatalf("got %v, want a *FreedomError", err)
			}
			if freedom.Freedoms != row.freedoms {
				t.Errorf("got %d freedoms, want %d", freedom.Freedoms, row.freedoms)
			}
			readable(t, err)
			for _, word := range row.says {
				if !strings.Contains(err.Error(), word) {
					t.Errorf("%q does not say %q", err, word)
				}
			}
		})
	}
}

// triangle has its coupler pinned to the ground: Grübler 3·3 - 2·5 - ... = 0.
func triangle() Machine {
	m := nortonFourBar(40 * planar.Degree)
	m.Joints = append(m.Joints, Joint{Name: "bolt", A: Ground, B: 2, At: vec{X: 0.5, Y: 0.5}})
	m.Joints = m.Joints[:5]
	m.Links = append(m.Links, Link{Name: "free end"})
	m.Joints = append(m.Joints, Joint{Name: "hook", A: 3, B: 4, At: vec{X: 0.6, Y: 0.6}})
	return m // the free end swings: one freedom in all, in the wrong place
}

func fiveBar() Machine {
	p := []vec{{}, {X: 0.1, Y: 0.4}, {X: 0.5, Y: 0.8}, {X: 0.9, Y: 0.4}, {X: 1}}
	m := lever(0.1, 0.2, 10)
	m.Links = []Link{{Name: "crank"}, {Name: "left rod"}, {Name: "right rod"}, {Name: "rocker"}}
	m.Joints = nil
	for i, at := range p {
		m.Joints = append(m.Joints, Joint{Name: "pin", A: LinkID(i), B: LinkID((i + 1) % 5), At: at})
	}
	return m
}

func loosened() Machine {
	m := nortonFourBar(40 * planar.Degree)
	m.Links = append(m.Links, Link{Name: "stray"})
	return m
}

func thirdCrank() Machine {
	m := parallelogram()
	m.Links = append(m.Links, Link{Name: "third crank"})
	foot := vec{X: 0.4}
	m.Joints = append(m.Joints,
		Joint{Name: "O6", A: Ground, B: 4, At: foot},
		Joint{Name: "C", A: 2, B: 4, At: m.Joints[1].At.Add(foot)})
	return m
}

func pinnedTwice() Machine {
	m := lever(0.5, 1, 20)
	m.Joints = append(m.Joints, Joint{Name: "bolt", A: Ground, B: 1, At: vec{X: 0.3}})
	return m
}

// unguided leaves the stack to swing on its rope: 3 less 1.
func unguided() Machine {
	m := camMachine(planar.Circle{Radius: 0.12}, 50)
	m.Joints = m.Joints[:1]
	return m
}
