package checks

import (
	"testing"

	"steelyard/mechanism"
)

// BenchmarkFourBarSweep sweeps Norton's four-bar through 101 positions, with
// reactions and effective mass at each, and reports how many times longer
// Simbody takes for the same on this machine, now.
//
// Simbody is timed inside its own process, without building, reading and
// writing, the fastest of 25 sweeps; Steelyard on average. Simbody holds the
// machine in the driver joint, which takes it one pass; holding it at the
// contact, as Steelyard does, would take a second.
func BenchmarkFourBarSweep(b *testing.B) {
	const n = 101
	m := fourBar("four-bar", +1)
	m.Drive = turning(0, 0, 60*deg)
	c, err := CaseOf(m, nil, n)
	if err != nil {
		b.Fatal(err)
	}
	c.Contact, c.Repeat = nil, 25
	r, err := Simbody.Sweep(c)
	if err != nil {
		b.Fatal(err)
	}
	model, err := mechanism.Compile(m)
	if err != nil {
		b.Fatal(err)
	}
	sw := model.NewSweep(n)

	for b.Loop() {
		if err := model.SweepInto(sw); err != nil {
			b.Fatal(err)
		}
	}
	own := float64(b.Elapsed().Nanoseconds()) / float64(b.N) / n / 1000
	b.ReportMetric(own, "µs/position")
	b.ReportMetric(r.Micros, "Simbody-µs/position")
	b.ReportMetric(r.Micros/own, "times-faster")
}
