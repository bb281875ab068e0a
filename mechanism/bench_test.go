package mechanism

import (
	"testing"

	"steelyard/planar"
)

func BenchmarkFourBarSweep(b *testing.B) {
	benchmarkSweep(b, nortonFourBar(40*planar.Degree))
}

// benchmarkSweep measures a sweep of 101 positions per position.
func benchmarkSweep(b *testing.B, m Machine) {
	md := mustCompile(b, m)
	sw := md.NewSweep(101)
	b.ReportAllocs()
	for b.Loop() {
		if err := md.SweepInto(sw); err != nil {
			b.Fatal(err)
		}
	}
	for _, stop := range sw.Stops {
		if stop != nil {
			b.Fatal(stop)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/101, "ns/position")
}
