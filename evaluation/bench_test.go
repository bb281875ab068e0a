package evaluation

import (
	"context"
	"os"
	"testing"
)

// BenchmarkDraws times the error band of a four-bar: 2,000 perturbed machines,
// each rebuilt, compiled and swept at 101 positions, on all processors, and
// read.
func BenchmarkDraws(b *testing.B) {
	e := fourBar(b)
	for b.Loop() {
		if _, err := e.band(context.Background(), Options{Draws: 2000}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkPerturbedSweeps is the same without reading: the sweeps alone, one
// after the other.
func BenchmarkPerturbedSweeps(b *testing.B) {
	e := fourBar(b)
	values := e.values(nil, nil)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := e.rebuilt(values, 101); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkLinear times the band from exact derivatives.
func BenchmarkLinear(b *testing.B) {
	e := fourBar(b)
	for b.Loop() {
		if _, err := e.Linear(); err != nil {
			b.Fatal(err)
		}
	}
}

func fourBar(b *testing.B) *Evaluation {
	b.Helper()
	text, err := os.ReadFile("testdata/four-bar.yaml")
	if err != nil {
		b.Fatal(err)
	}
	return run(b, string(text), Options{Draws: -1})
}

// BenchmarkMeetKick puts a person on a leg extension at 101 positions.
func BenchmarkMeetKick(b *testing.B) {
	e := setTo(b, "kick.yaml", nil, Options{Draws: -1})
	p := personFrom(b, kicker)
	for b.Loop() {
		if _, err := e.Meet(p); err != nil {
			b.Fatal(err)
		}
	}
}
