package checks

import (
	"errors"
	"os"
	"slices"
	"testing"

	"steelyard/mechanism"
	"steelyard/planar"
)

// Each engine's allowance, relative to a quantity's greatest value. The first
// two solve to rounding, magnified near dead points; the third differentiates
// lengths of polygons (see shortest/).
const (
	exact     = 1e-9
	numerical = 1e-7
)

// traced is the allowance for a smooth outline that Steelyard knows only by
// points 10 mm apart.
const traced = 1e-6

// bench is one machine and the engines that can answer for it.
type bench struct {
	machine
	shapes  map[planar.Outline]Shape
	engines []Engine
	allowed float64 // 0 for the engine's own allowance
}

func (b bench) allowance(e Engine) float64 {
	switch {
	case b.allowed > 0:
		return b.allowed
	case e.Name == Shortest.Name:
		return numerical
	}
	return exact
}

func linkages() []bench {
	both := []Engine{Simbody, MuJoCo}
	list := []bench{
		{machine: lever(), engines: []Engine{Simbody, MuJoCo, Shortest}},
		{machine: helpedLever(), engines: both},
		{machine: gasLever(), engines: []Engine{Shortest}},
		{machine: bandLever(), engines: []Engine{Shortest}},
		{machine: coiledLever(), engines: []Engine{Shortest}},
		{machine: fourBar("four-bar, open", +1), engines: both},
		{machine: fourBar("four-bar, crossed", -1), engines: both},
		{machine: leaningFourBar(), engines: both},
		{machine: parallelogram(), engines: both},
		{machine: sliderCrank("slider-crank, offset", 0, turning(0, -40*deg, 50*deg)), engines: both},
		{machine: sliderCrank("slider-crank driven by its sled", 35*deg, mechanism.Drive{Joint: 3, From: 0.1, To: -0.45}), engines: both},
		{machine: inclineSled(), engines: []Engine{Simbody, MuJoCo, Shortest}},
		{machine: trammel(), engines: both},
		{machine: movingGuide(), engines: both},
		{machine: wattSixBar(), engines: both},
		{machine: stephensonSixBar("Stephenson III six-bar", turning(0, -20*deg, 60*deg)), engines: both},
		{machine: stephensonSixBar("Stephenson III driven at its arm", turning(6, -2.5*deg, 35*deg)), engines: both},
	}
	for _, m := range randomFourBars(20) {
		list = append(list, bench{machine: m, engines: both})
	}
	return list
}

// positions of every sweep, from stop to stop.
const positions = 41

// table is where the agreement is written, for run.sh to print.
const table = "build/agreement.txt"

// TestAgreement sweeps every machine with Steelyard and with each engine and
// writes down how far they are apart.
func TestAgreement(t *testing.T) {
	var list []Difference
	for _, b := range append(append(linkages(), roped()...), camMachines()...) {
		t.Run(b.Name, func(t *testing.T) {
			rows := b.run(t)
			for _, d := range rows {
				if !d.OK() {
					t.Errorf("%s by %s: difference %.3g %s, relative %.3g > %.3g", d.Quantity, d.Engine, d.Greatest, d.Unit, d.Relative(), d.Allowed)
				}
			}
			list = append(list, rows...)
		})
	}

	f, err := os.Create(table)
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(WriteTable(f, Worst(list)), f.Close()); err != nil {
		t.Fatal(err)
	}
}

func (b bench) run(t *testing.T) []Difference {
	t.Helper()
	sw := b.sweep(t)
	c, err := CaseOf(b.machine, b.shapes, positions)
	if err != nil {
		t.Fatal(err)
	}
	c.Slope = true
	var rows []Difference
	for _, e := range b.engines {
		r, err := e.Sweep(c)
		if err != nil {
			t.Fatal(err)
		}
		rows = append(rows, Compare(b.machine, sw, e.Name, r, b.allowance(e))...)
	}
	return rows
}

// sweep returns Steelyard's own table, which may have no gap.
func (b bench) sweep(t *testing.T) *mechanism.Sweep {
	t.Helper()
	model, err := mechanism.Compile(b.machine)
	if err != nil {
		t.Fatal(err)
	}
	sw, err := model.Sweep(positions)
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

// TestSmallFaultsShow makes sure that the comparison can fail: each fault is
// put into the engine's case alone and must show in the quantity it touches.
func TestSmallFaultsShow(t *testing.T) {
	b := bench{machine: sliderCrank("slider-crank", 0, turning(0, -40*deg, 50*deg))}
	sw := b.sweep(t)
	for _, row := range []struct {
		name, quantity string
		fault          func(c *Case)
	}{
		{"plates a millionth heavier", "holding force", func(c *Case) { c.Weights[1].Mass *= 1 + 1e-6; c.Weights[0].Mass *= 1 + 1e-6 }},
		{"a pin a micrometre off", "link turn", func(c *Case) { c.Joints[1].At[0] += 1e-6 }},
		{"the guide a microradian off", "joint force", func(c *Case) { c.Joints[3].Axis[1] += 1e-6 }},
		{"the sled's centre a micrometre off", "slide moment", func(c *Case) { c.Links[3].COM[0] += 1e-6 }},
		{"the rod's inertia a millionth off", "effective mass", func(c *Case) { c.Links[2].Inertia *= 1 + 1e-6 }},
	} {
		c, err := CaseOf(b.machine, nil, positions)
		if err != nil {
			t.Fatal(err)
		}
		row.fault(&c)
		r, err := Simbody.Sweep(c)
		if err != nil {
			t.Fatal(err)
		}
		shows := slices.ContainsFunc(Compare(b.machine, sw, Simbody.Name, r, exact), func(d Difference) bool {
			return d.Quantity == row.quantity && !d.OK()
		})
		if !shows {
			t.Errorf("%s does not show in the %s", row.name, row.quantity)
		}
	}
}
