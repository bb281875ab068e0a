package demo

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"steelyard/evaluation"
	"steelyard/mechanism"
	"steelyard/profile"
	"steelyard/sheet"
)

// exhibit is a machine of the room, set one way and put through its travel.
type exhibit struct {
	file  string
	sheet *sheet.Machine
	built *sheet.Built
	model *mechanism.Model
	sweep *mechanism.Sweep
}

// positions is how finely a test goes through a travel.
const positions = 51

func read(t *testing.T, f File) *sheet.Machine {
	t.Helper()
	doc, err := sheet.Read(f.Name, f.Data)
	if err != nil {
		t.Fatal(err)
	}
	m, err := doc.Machine()
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// exhibited builds a machine with the settings chosen and sweeps it.
func exhibited(t *testing.T, file string, m *sheet.Machine, choice map[string]string) *exhibit {
	t.Helper()
	b, err := m.Build(choice)
	if err != nil {
		t.Fatal(err)
	}
	md, err := mechanism.Compile(b.Machine)
	if err != nil {
		t.Fatalf("%v: %v", choice, m.Locate(err))
	}
	sw, err := md.Sweep(positions)
	if err != nil {
		t.Fatalf("%v: %v", choice, m.Locate(err))
	}
	return &exhibit{file, m, b, md, sw}
}

// room returns all machines as set by default.
func room(t *testing.T) []*exhibit {
	t.Helper()
	var all []*exhibit
	for _, f := range Machines() {
		all = append(all, exhibited(t, f.Name, read(t, f), nil))
	}
	return all
}

// named returns one machine as set by default.
func named(t *testing.T, file string) *exhibit {
	t.Helper()
	for _, f := range Machines() {
		if f.Name == file {
			return exhibited(t, file, read(t, f), nil)
		}
	}
	t.Fatalf("no sheet is called %s", file)
	return nil
}

// ways returns every choice that differs from the defaults in one setting, and
// the defaults.
func ways(t *testing.T, m *sheet.Machine) []map[string]string {
	t.Helper()
	all := []map[string]string{nil}
	for _, s := range m.Settings {
		for _, v := range append(slices.Clone(s.Values), steps(t, s)...) {
			all = append(all, map[string]string{s.Name: v})
		}
	}
	return all
}

// steps lists the values of a range such as 0 kg to 80 kg by 2.5 kg.
func steps(t *testing.T, s sheet.Setting) []string {
	t.Helper()
	if len(s.Values) > 0 {
		return nil
	}
	amount := func(text string) float64 {
		v, err := strconv.ParseFloat(strings.Fields(text)[0], 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	var all []string
	unit := strings.Fields(s.From)[1]
	for v := amount(s.From); v <= amount(s.To); v += amount(s.Step) {
		all = append(all, fmt.Sprintf("%g %s", v, unit))
	}
	return all
}

// TestSheetsAreWhole wants of each sheet what a reader needs: whom it serves, how
// it was measured, doubts, and that writing it back changes nothing.
func TestSheetsAreWhole(t *testing.T) {
	names := map[string]string{}
	for _, f := range Machines() {
		doc, err := sheet.Read(f.Name, f.Data)
		if err != nil {
			t.Error(err)
			continue
		}
		if !bytes.Equal(doc.Bytes(), f.Data) {
			t.Errorf("%s: written back it is not the same", f.Name)
		}
		m := read(t, f)
		if other, taken := names[m.Name]; taken {
			t.Errorf("%s: is called %q as %s is", f.Name, m.Name, other)
		}
		names[m.Name] = f.Name
		if !strings.HasPrefix(m.Notes, "Serves ") || m.Measured == "" {
			t.Errorf("%s: notes begin %.20q, measured %.20q; want whom it serves and how it was measured", f.Name, m.Notes, m.Measured)
		}
		b, err := m.Build(nil)
		if err != nil {
			t.Error(err)
			continue
		}
		if !slices.ContainsFunc(b.Measurements, func(m sheet.Measurement) bool { return m.Spread > 0 }) {
			t.Errorf("%s: no number carries a ±", f.Name)
		}
	}
}

// TestNothingIsMissing wants no gap in the sheets but the one that belongs to
// machines without a weight to lift.
func TestNothingIsMissing(t *testing.T) {
	const noRatio = "no plates, stack or free weight is given, so there is no lift ratio"
	for _, e := range room(t) {
		var want []string
		if !slices.ContainsFunc(e.built.Machine.Weights, func(w mechanism.Weight) bool { return w.Load }) {
			want = []string{noRatio}
		}
		if got := e.built.Explain().Missing; !slices.Equal(got, want) {
			t.Errorf("%s: missing %q, want %q", e.file, got, want)
		}
	}
}

// TestEverySettingWorks puts each machine through its travel at each value of
// each setting. The force must resist, and stay within what a body can meet:
// 3 kN is about four times the weight of a heavy person.
func TestEverySettingWorks(t *testing.T) {
	const most = 3000 // N
	tried := 0
	for _, f := range Machines() {
		m := read(t, f)
		for _, choice := range ways(t, m) {
			tried++
			e := exhibited(t, f.Name, m, choice)
			for i, stop := range e.sweep.Stops {
				if stop != nil {
					t.Errorf("%s %v: gap: %v", f.Name, choice, stop)
					break
				}
				hold, lift, lower := e.sweep.Hold[i], e.sweep.Lift[i], e.sweep.Lower[i]
				if !(hold > 0 && lift >= hold && lower <= hold && lift < most) {
					t.Errorf("%s %v: at position %d of %d lowers %.0f N, holds %.0f N, lifts %.0f N; want 0 < hold, lower ≤ hold ≤ lift < %d",
						f.Name, choice, i, positions, lower, hold, lift, most)
					break
				}
			}
		}
	}
	t.Logf("%d machines set %d ways", len(Machines()), tried)
}

// TestEvaluates puts each machine through the whole evaluation, with error band
// and words.
func TestEvaluates(t *testing.T) {
	for _, e := range room(t) {
		got, err := evaluation.Run(context.Background(), e.sheet, e.built, evaluation.Options{Draws: 64})
		if err != nil {
			t.Errorf("%s: %v", e.file, err)
			continue
		}
		r := got.Readings[profile.Lifting]
		if len(got.Notes) > 0 || r.Covered != 1 || r.Helps != 0 {
			t.Errorf("%s: force on %.2f of the travel, helping on %.2f, notes %q; want all, none, none", e.file, r.Covered, r.Helps, got.Notes)
		}
		if r.Length < 0.1 || r.Length > 1.3 {
			t.Errorf("%s: the contact travels %.2f m, no stroke of a person's", e.file, r.Length)
		}
		if got.Band == nil {
			t.Errorf("%s: has no error band", e.file)
		} else if n := len(got.Band.Between); n != len(got.Curve.Travel) {
			t.Errorf("%s: the band has %d positions, the curve %d", e.file, n, len(got.Curve.Travel))
		}
		t.Log(e.file + ": " + strings.Join(got.Words(evaluation.Metric{}), "\n\t"))
	}
}

// TestNothingDigsIntoTheFloor wants plates, pins and contact above the floor all
// the way. A plan seen from above has no floor.
func TestNothingDigsIntoTheFloor(t *testing.T) {
	for _, e := range room(t) {
		m := &e.built.Machine
		if math.Abs(float64(m.Plane.Tilt)) > math.Pi/4 {
			continue
		}
		lowest := func(what string, i int, y float64) {
			if y < 0 {
				t.Errorf("%s: %s is %.0f mm below the floor at position %d", e.file, what, -1000*y, i)
			}
		}
		for i := range e.sweep.Len() {
			lowest("the contact", i, e.sweep.Contact[i].Y)
			for _, w := range m.Weights {
				radius := 0.0
				if w.Mass > 0 {
					radius = math.Sqrt(2 * w.Inertia / w.Mass) // of a disc, I = m·r²/2
				}
				lowest(w.Name, i, e.sweep.Pose(i, w.Link).Point(w.At).Y-radius)
			}
			for _, j := range m.Joints {
				lowest(j.Name, i, e.sweep.Pose(i, j.B).Point(j.At).Y)
			}
		}
	}
}
