package family_test

import (
	"bytes"
	"errors"
	"math"
	"strings"
	"testing"

	"steelyard/calibrate"
	"steelyard/calibrate/family"
	"steelyard/planar"
	"steelyard/quantity"
	"steelyard/sheet"
)

// TestUsual builds every family from nothing: its own sheet, which lifts its
// load all the way.
func TestUsual(t *testing.T) {
	for _, f := range family.All() {
		data := build(t, f.ID, family.Answers{})
		for i, force := range curve(t, data) {
			if !(force > 0) {
				t.Errorf("%s: %.1f N at position %d; want a load that is lifted", f.ID, force, i)
				break
			}
		}
		if !bytes.Contains(data, []byte("nothing yet")) || !bytes.Contains(data, []byte("# ")) {
			t.Errorf("%s: the sheet hides that nothing was measured, or lost its comments", f.ID)
		}
		for _, p := range f.Points {
			if p.Ask == "" || p.Hint == "" || p.Picture == "" || !p.Usual.Finite() {
				t.Errorf("%s: nothing asks for %s", f.ID, p.Name)
			}
		}
		for _, v := range f.Values {
			if v.Ask == "" || v.Hint == "" || !(v.Low <= v.Usual && v.Usual <= v.High && v.Step > 0) {
				t.Errorf("%s: %s of %g to %g by %g, usually %g", f.ID, v.Name, v.Low, v.High, v.Step, v.Usual)
			}
		}
	}
}

// all answers every question of a family as is usual, moved by shift, ± 2 mm.
func all(f *family.Family, shift planar.Vec, mirrored bool) family.Answers {
	put := func(v planar.Vec) calibrate.Point {
		if mirrored {
			v.X = -v.X
		}
		return calibrate.Point{At: v.Add(shift), Plus: planar.Vec{X: 0.002, Y: 0.002}}
	}
	a := family.Answers{Name: "Mine: 'the' one # 1", Measured: "steel tape", Points: map[string]calibrate.Point{}, Values: map[string]quantity.Quantity{}}
	for _, p := range f.Points {
		a.Points[p.Name] = put(p.Usual)
	}
	for _, v := range f.Values {
		a.Values[v.Name] = quantity.Of(v.Usual, 0, v.Unit)
	}
	if f.Cam != nil {
		for _, v := range f.Cam.Usual {
			a.Cam = append(a.Cam, put(v))
		}
	}
	return a
}

// TestMovedAndMirrored builds each family elsewhere, and facing the other way,
// which changes signs of turns and ways round of ropes but no force.
func TestMovedAndMirrored(t *testing.T) {
	for _, f := range family.All() {
		want := curve(t, build(t, f.ID, all(&f, planar.Vec{}, false)))
		for name, a := range map[string]family.Answers{
			"moved":    all(&f, planar.Vec{X: 3, Y: -0.4}, false),
			"mirrored": all(&f, planar.Vec{X: 0.5}, true),
		} {
			data := build(t, f.ID, a)
			// Places are rounded to 1 mm, as ± 2 mm asks for.
			if off := apart(curve(t, data), want); off > 0.02 {
				t.Errorf("%s, %s: curve off by %.2f %% of its mean\n%s", f.ID, name, 100*off, data)
			}
			if !bytes.Contains(data, []byte("measured: steel tape\n")) {
				t.Errorf("%s, %s: how it was measured is not told:\n%s", f.ID, name, data)
			}
			m := machine(t, data)
			if m.Name != a.Name {
				t.Errorf("%s: named %q; want %q", f.ID, m.Name, a.Name)
			}
		}
	}
}

func machine(t *testing.T, data []byte) *sheet.Machine {
	t.Helper()
	doc, err := sheet.Read("test", data)
	if err != nil {
		t.Fatal(err)
	}
	m, err := doc.Machine()
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// TestClosedForms compares curves with what one line of statics gives.
func TestClosedForms(t *testing.T) {
	const g = 9.80665
	at := func(x, y float64) calibrate.Point { return calibrate.Point{At: planar.Vec{X: x, Y: y}} }

	// A lever: moments of plates and arm about the axle, over the grip's radius.
	horn, balance, grip := planar.Vec{X: 0.5, Y: -0.1}, planar.Vec{X: 0.2}, planar.Vec{X: 0.7, Y: -0.2}
	axle := planar.Vec{X: 0.3, Y: 1}
	got := curve(t, build(t, "lever", family.Answers{
		Points: map[string]calibrate.Point{"axle": {At: axle}, "horn": {At: axle.Add(horn)}, "grip": {At: axle.Add(grip)}, "balance": {At: axle.Add(balance)}},
		Values: map[string]quantity.Quantity{"plates": kg(40), "arm mass": kg(12), "turn": deg(50)}}))
	for i := range got {
		turned := planar.TurnThenShift(50*planar.Degree*planar.Angle(i)/100, planar.Vec{})
		want := g * (40*turned.Point(horn).X + 12*turned.Point(balance).X) / grip.Norm()
		if math.Abs(got[i]-want) > 1e-6 {
			t.Errorf("lever at position %d: %.6f N; want %.6f N", i, got[i], want)
			break
		}
	}

	// A sled: the weight's part along rails at 30°, from stop to stop.
	slope := planar.Polar(1, 30*planar.Degree)
	got = curve(t, build(t, "sled", family.Answers{
		Points: map[string]calibrate.Point{"rail foot": at(0, 0.2), "rail head": {At: planar.Vec{Y: 0.2}.Add(slope.Scale(1.5))}, "truck": {At: planar.Vec{Y: 0.2}.Add(slope.Scale(0.5))}, "foot": at(0.4, 0.7), "horn": at(0.6, 0.8)},
		Values: map[string]quantity.Quantity{"plates": kg(100), "sled mass": kg(52), "travel": quantity.Of(400, 0, quantity.Millimetre)}}))
	for i := range got {
		// Places are written to 0.1 mm, which turns the rails by up to 1e-4.
		if want := 152 * g / 2; math.Abs(got[i]/want-1) > 2e-4 {
			t.Errorf("sled at position %d: %.3f N; want %.3f N", i, got[i], want)
			break
		}
	}
}

// TestPartly taps one point only: the others come along.
func TestPartly(t *testing.T) {
	data := build(t, "lever", family.Answers{Points: map[string]calibrate.Point{"axle": {At: planar.Vec{X: 1, Y: 2}, Plus: planar.Vec{X: 0.004, Y: 0.003}}}})
	for _, want := range []string{
		"axle: [1000±4 mm, 2000±3 mm]",
		"horn: [1460±50 mm, 1950±50 mm]", // usual: 460 mm before and 50 mm below the axle
		"Not measured, usual figures: horn, grip, plates, arm mass, turn.",
	} {
		if !bytes.Contains(data, []byte(want)) {
			t.Errorf("lacks %q:\n%s", want, data)
		}
	}
	if bytes.Contains(data, []byte("balance")) {
		t.Errorf("a point that may be skipped was skipped and is there:\n%s", data)
	}
	machine(t, data)
}

// TestLoads answers with loads that no usual range has a step for.
func TestLoads(t *testing.T) {
	for _, row := range []struct {
		load quantity.Quantity
		want string
	}{
		{quantity.Of(45, 0, quantity.Pound), "range: {from: 0 lb, to: 445 lb, step: 5 lb}\n    default: 45 lb"},
		{quantity.Of(41.3, 0.5, quantity.Kilogram), "range: {from: 1.3 kg, to: 241.3 kg, step: 2.5 kg}\n    default: 41.3 kg"},
		{kg(0), "range: {from: 0 kg, to: 200 kg, step: 2.5 kg}\n    default: 0 kg"},
	} {
		data := build(t, "lever", family.Answers{Values: map[string]quantity.Quantity{"plates": row.load}})
		if !bytes.Contains(data, []byte(row.want)) {
			t.Errorf("%v: lacks %q:\n%s", row.load, row.want, data)
		}
	}
}

func TestRefused(t *testing.T) {
	one := func(name string, x, y float64) map[string]calibrate.Point {
		return map[string]calibrate.Point{name: {At: planar.Vec{X: x, Y: y}}}
	}
	for _, row := range []struct {
		name, family string
		a            family.Answers
		want         string
	}{
		{"family", "catapult", family.Answers{}, `the family "catapult" is not known`},
		{"point", "lever", family.Answers{Points: one("trigger", 0, 0)}, `the point "trigger" is not one`},
		{"place", "lever", family.Answers{Points: one("axle", math.NaN(), 0)}, "places lie within 20 m"},
		{"far place", "lever", family.Answers{Points: one("axle", 900, 0)}, "(9e+05 mm, 0 mm)"},
		{"number", "lever", family.Answers{Values: map[string]quantity.Quantity{"speed": kg(1)}}, `the number "speed" is not one`},
		{"unit", "lever", family.Answers{Values: map[string]quantity.Quantity{"turn": kg(1)}}, "an angle is wanted"},
		{"range", "lever", family.Answers{Values: map[string]quantity.Quantity{"turn": deg(400)}}, "the turn is 400 °; 1 to 330 ° can be used"},
		{"cam without one", "lever", family.Answers{Cam: make([]calibrate.Point, 9)}, "was not asked for"},
		{"cam of few", "cam", family.Answers{Cam: make([]calibrate.Point, 3)}, "has 3 places; at least 8"},
		{"cam without axle", "cam", family.Answers{Cam: make([]calibrate.Point, 9)}, "measured from the axle, which is not answered"},
	} {
		_, err := family.Build(row.family, row.a)
		var f *calibrate.Fault
		if !errors.As(err, &f) || f.Cure == "" || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: %v; want …%s…", row.name, err, row.want)
		}
	}
	same := family.Answers{Points: map[string]calibrate.Point{}}
	for _, f := range family.All() {
		if f.ID == "four-bar-arm" {
			for _, p := range f.Points {
				same.Points[p.Name] = calibrate.Point{}
			}
		}
	}
	if _, err := family.Build("four-bar-arm", same); err == nil {
		t.Error("all points in one place make a machine")
	}
	if _, err := family.Build("lever", family.Answers{Name: "two\nlines"}); err == nil {
		t.Error("a name of two lines is taken")
	}
}

// FuzzBuild looks for a panic, or a sheet that cannot be read.
func FuzzBuild(f *testing.F) {
	f.Add(uint8(0), "Press", 0.1, 0.2, 3.0, uint16(7))
	f.Add(uint8(6), "null", -1.0, 5.0, 20.0, uint16(511))
	f.Add(uint8(8), "'\"#: {[", 0.0, 0.0, 0.0, uint16(1023))
	f.Fuzz(func(t *testing.T, kind uint8, name string, x, y, k float64, which uint16) {
		families := family.All()
		fam := families[int(kind)%len(families)]
		a := all(&fam, planar.Vec{X: x, Y: y}, kind&128 != 0)
		a.Name = name
		for i, p := range fam.Points {
			if which>>(i%16)&1 == 0 {
				delete(a.Points, p.Name)
			} else if i%3 == 0 {
				a.Points[p.Name] = calibrate.Point{At: planar.Vec{X: k, Y: x}, Plus: planar.Vec{X: math.Abs(y), Y: 0.001}}
			}
		}
		for i, v := range fam.Values {
			if which>>(i%16)&1 == 0 {
				a.Values[v.Name] = quantity.Of(k, math.Abs(x), v.Unit)
			}
		}
		data, err := family.Build(fam.ID, a)
		if err == nil {
			machine(t, data)
		}
	})
}
