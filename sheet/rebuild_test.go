package sheet

import (
	"math"
	"reflect"
	"sync"
	"testing"

	"steelyard/mechanism"
	"steelyard/quantity"
)

func nominalValues(b *Built) []float64 {
	v := make([]float64, len(b.Measurements))
	for i, m := range b.Measurements {
		v[i] = m.Value
	}
	return v
}

func mustRebuild(t testing.TB, b *Built, v []float64) mechanism.Machine {
	t.Helper()
	m, err := b.Rebuild(v)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// TestRebuildAgreesWithASheetWrittenAnew changes each number of each good sheet
// in two ways, by Rebuild and by writing it into the sheet, and expects the same
// machine to come out of both.
func TestRebuildAgreesWithASheetWrittenAnew(t *testing.T) {
	tried := 0
	for name, data := range goodSheets(t) {
		b := mustBuild(t, mustMachine(t, data), nil)
		if !reflect.DeepEqual(mustRebuild(t, b, nominalValues(b)), b.Machine) {
			t.Fatalf("%s: rebuilt from its own numbers it is another machine", name)
		}
		for i, m := range b.Measurements {
			moved := quantity.Quantity{Value: m.Value + step(m), Spread: m.Spread, Unit: m.Unit}
			d, err := Read(name, data)
			if err != nil {
				t.Fatal(err)
			}
			if err := d.Set(m.Path, moved.String()); err != nil {
				continue // a range's choice stands nowhere in the sheet
			}
			anew, err := d.Machine()
			if err != nil {
				continue // such as a default that is no longer on a step
			}
			parsed, err := quantity.Parse(moved.String(), m.Unit.Dimension(), m.Unit)
			if err != nil {
				t.Fatal(err)
			}
			v := nominalValues(b)
			v[i] = parsed.Value
			if got, want := mustRebuild(t, b, v), mustBuild(t, anew, nil).Machine; !reflect.DeepEqual(fixed(got), fixed(want)) {
				t.Errorf("%s: %s to %v: rebuilt\n%+v\nread anew\n%+v", name, m.Path, moved, got, want)
			}
			tried++
		}
	}
	if tried < 150 {
		t.Errorf("compared %d numbers, want 150 or more", tried)
	}
}

// step is a change that keeps every good sheet usable.
func step(m Measurement) float64 {
	if m.Value == 0 {
		return 1e-3
	}
	return -m.Value * 1e-3
}

// fixed takes out what reflect cannot compare by value: the cached outlines are
// other objects, compared here by their support.
func fixed(m mechanism.Machine) mechanism.Machine {
	for i := range m.Ropes {
		for k := range m.Ropes[i].Route {
			s := &m.Ropes[i].Route[k]
			if s.Outline == nil {
				continue
			}
			h, dh := s.Outline.Support(0.3)
			s.At.X += round9(h) + 10*round9(dh) + 100*round9(s.Outline.Length(4))
			s.Anchor, s.Outline = 0, nil
		}
	}
	return m
}

func round9(x float64) float64 { return math.Round(x*1e9) / 1e9 }

func TestRebuildKeepsNumbersWithinTheirRange(t *testing.T) {
	b := mustBuild(t, mustMachine(t, []byte(base)), nil)
	v := nominalValues(b)
	for i, m := range b.Measurements {
		if m.Path == "links.arm.mass" || m.Path == "sheaves.top.diameter" {
			v[i] = -1
		}
	}
	m := mustRebuild(t, b, v)
	if m.Links[0].Mass != 0 {
		t.Errorf("a mass of -1 kg is taken as %g kg, want 0 kg", m.Links[0].Mass)
	}
	if _, err := mechanism.Compile(m); err != nil {
		t.Errorf("the machine at the ends of its ranges does not compile: %v", err)
	}
}

func TestBadRebuild(t *testing.T) {
	b := mustBuild(t, mustMachine(t, []byte(base)), nil)
	if _, err := b.Rebuild(nil); err == nil {
		t.Error("no values: got no error")
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		v := nominalValues(b)
		v[3] = bad
		if _, err := b.Rebuild(v); err == nil {
			t.Errorf("value %g: got no error", bad)
		}
	}
}

func TestRebuildFromManyAtOnce(t *testing.T) {
	b := mustBuild(t, mustMachine(t, goodSheets(t)["six-bar.yaml"]), nil)
	var wg sync.WaitGroup
	for range 4 {
		wg.Go(func() {
			v := nominalValues(b)
			for i := range v {
				v[i] += step(b.Measurements[i])
				if _, err := b.Rebuild(v); err != nil {
					t.Error(err)
				}
			}
		})
	}
	wg.Wait()
}

// BenchmarkRebuild is one perturbed machine of a sweep's band.
func BenchmarkRebuild(b *testing.B) {
	for _, name := range []string{"example", "cam-curl.yaml", "six-bar.yaml", "sled.yaml"} {
		b.Run(name, func(b *testing.B) {
			built := mustBuild(b, mustMachine(b, goodSheets(b)[name]), nil)
			v := nominalValues(built)
			for i, m := range built.Measurements {
				v[i] += m.Spread / 2
			}
			b.ReportAllocs()
			for b.Loop() {
				mustRebuild(b, built, v)
			}
		})
	}
}

// BenchmarkRead is a sheet from its text to a machine that can be built.
func BenchmarkRead(b *testing.B) {
	data := goodSheets(b)["sled.yaml"]
	for b.Loop() {
		mustBuild(b, mustMachine(b, data), nil)
	}
}
