package profile

import (
	"math"
	"testing"
)

// F = 100 + x + 2y + 3z with ± of 4, 2 and 1 N has parts 4, 4 and 3: of the
// squares 16, 16 and 9 the first two tie, and the first is named.
func TestDominantOfSum(t *testing.T) {
	ms := []Measurement{{"x", 0, 4, "N"}, {"y", 0, 2, "N"}, {"z", 0, 1, "N"}}
	f := func(v []float64, _ int) (Curve, error) {
		return over(1, 7, func(float64) float64 { return 100 + v[0] + 2*v[1] + 3*v[2] }), nil
	}
	c, ds, err := Differentiate(ms, f)
	if err != nil {
		t.Fatal(err)
	}
	// Differences leave rounding, so the tie is broken by a hair here.
	ms[0].Spread += 1e-6
	check := func(name string, b *Band, tol float64) {
		n, ok := b.Dominant()
		if !ok || n.Measurement.Name == "z" {
			t.Fatalf("%s: dominant %+v", name, n)
		}
		half := math.Sqrt(41)
		near(t, name+" share", n.Share, 16./41, tol, "")
		near(t, name+" half", n.Half, half, half*max(tol, 0.05), "N")
		near(t, name+" without", n.Without/n.Half, math.Sqrt(25./41), tol, "")
	}
	linear := mustLinear(t, c, ms, ds)
	check("linear", linear, 1e-6)
	check("drawn", mustSample(t, ms, f, Sampling{}), 0.03)
	if n, _ := linear.Dominant(); n.Measurement.Name != "x" {
		t.Errorf("linear: %s dominates, want x", n.Measurement.Name)
	}
}

// Each reading has its own: the lever's peak is moved only by the arms and its
// place only by the starting angle, and no length moves the shares of work.
func TestDominantForEachReading(t *testing.T) {
	const n = 101
	values := stated(leverMeasurements)
	linear := mustLinear(t, lever(values, n), leverMeasurements, leverPartials(values, n))
	drawn := mustSample(t, leverMeasurements, func(v []float64, _ int) (Curve, error) { return lever(v, n), nil }, Sampling{})
	arm, contact := 0.010/0.80, 0.005/0.50
	for _, b := range []*Band{linear, drawn} {
		for _, tt := range []struct {
			q     Reading
			name  string
			share float64
		}{
			{PeakForce, "arm to the load", arm * arm / (arm*arm + contact*contact)},
			{LiftRatio, "arm to the load", arm * arm / (arm*arm + contact*contact)},
			{PeakShare, "starting angle", 1},
			{ShortenedShare, "starting angle", 1},
			{Length, "arm to the contact", 1},
		} {
			got, ok := b.DominantFor(tt.q)
			if !ok || got.Measurement.Name != tt.name {
				t.Errorf("%v: %q dominates, want %q", tt.q, got.Measurement.Name, tt.name)
			}
			near(t, "share for "+tt.q.String(), got.Share, tt.share, 0.03, "")
		}
	}
}

// The squared parts of all measurements make up the squared half width, at
// every position of a linear band; gaps weigh nothing.
func TestPartsMakeUpBand(t *testing.T) {
	const n = 21
	values := stated(leverMeasurements)
	c := lever(values, n)
	c.Gap = make([]Reason, n)
	c.Gap[4] = Slack
	b := mustLinear(t, c, leverMeasurements, leverPartials(values, n))
	weight := 0.0
	for i := range b.Share {
		total := 0.0
		for j := range leverMeasurements {
			total += b.forceParts[j][i] * b.forceParts[j][i]
		}
		near(t, "parts", math.Sqrt(total), b.Between[i].Half(), 1e-9, "N")
		weight += b.weight(i)
	}
	near(t, "weights", weight, b.Readings.Covered, 1e-12, "")
	near(t, "gap", b.Between[4].High, 0, 0, "N")
}
