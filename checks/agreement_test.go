package checks

import (
	"os"
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
		{machine: stephensonSixBar("Stephenson III six-bar", turning(0, -40*deg, 60*deg)), engines: both},
		{machine: stephensonSixBar("Stephenson III driven at its arm", turning(6, -2.5*deg, 35*deg)), engines: both},
	}
	for _, m := range randomFourBars(20) {
		list = append(list, bench{machine: m, engines: both})
	}
	return list
}

// TestAgreement sweeps every machine with Steelyard and with each engine and
// prints how far they are apart.
func TestAgreement(t *testing.T) {
	var table []Difference
	for _, b := range append(append(linkages(), roped()...), camMachines()...) {
		t.Run(b.Name, func(t *testing.T) {
			rows := b.run(t)
			for _, d := range rows {
				if !d.OK() {
					t.Errorf("%s by %s: difference %.3g %s, relative %.3g > %.3g", d.Quantity, d.Engine, d.Greatest, d.Unit, d.Relative(), d.Allowed)
				}
			}
			table = append(table, rows...)
		})
	}
	if err := WriteTable(os.Stdout, table); err != nil {
		t.Fatal(err)
	}
}

func (b bench) run(t *testing.T) []Difference {
	model, err := mechanism.Compile(b.machine)
	if err != nil {
		t.Fatal(err)
	}
	const positions = 41
	sw, err := model.Sweep(positions)
	if err != nil {
		t.Fatal(err)
	}
	for i, stop := range sw.Stops {
		if stop != nil {
			t.Fatalf("position %d: %v", i, stop)
		}
	}
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
