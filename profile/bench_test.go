package profile

import (
	"context"
	"testing"
)

func BenchmarkRead101(b *testing.B) {
	c := lever(stated(leverMeasurements), 101)
	c.Lift, c.Lower = c.Hold, c.Hold
	b.ReportAllocs()
	total := 0.0
	for b.Loop() {
		r, err := Read(c, Holding)
		if err != nil {
			b.Fatal(err)
		}
		total += r.Mean
	}
	if total == 0 {
		b.Fatal("nothing read")
	}
}

func BenchmarkCompare101(b *testing.B) {
	c := lever(stated(leverMeasurements), 101)
	d := lever([]float64{0.7, 0.45, -0.4}, 91)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Compare(c, d, Holding); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkMatchPeak101(b *testing.B) {
	m := loadedLever(101)
	allowed := plates(2.5, 100)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := MatchLoad(600, PeakForce, m, allowed); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLinear101(b *testing.B) {
	values := stated(leverMeasurements)
	c, ds := lever(values, 101), leverPartials(values, 101)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Linear(c, Holding, leverMeasurements, ds); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSampled2000x101(b *testing.B) {
	f := func(v []float64, _ int) (Curve, error) { return lever(v, 101), nil }
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Sampled(context.Background(), Holding, leverMeasurements, f, Sampling{}); err != nil {
			b.Fatal(err)
		}
	}
}
