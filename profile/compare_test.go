package profile

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat"
)

func mustCompare(t *testing.T, a, b Curve) Comparison {
	t.Helper()
	c, err := Compare(a, b, Holding)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// A = 100 + 100 s over 1 m and B = 250 - 100 s over 2 m, by hand: on the
// travel they meet where 100 + 100 s = 250 - 100 s, s = 0.75 m, 175 N; on the
// share where 100 + 100 u = 250 - 200 u, u = 0.5, 150 N.
func TestCompareLines(t *testing.T) {
	a := over(1, 4, func(u float64) float64 { return 100 + 100*u })
	b := over(2, 7, func(u float64) float64 { return 250 - 200*u })
	c := mustCompare(t, a, b)

	near(t, "span", c.OnTravel.Span, 1, 0, "m")
	near(t, "mean A", c.OnTravel.Mean.A, 150, 1e-9, "N")
	near(t, "mean B over the shared metre", c.OnTravel.Mean.B, 200, 1e-9, "N")
	near(t, "first third A", c.OnTravel.Thirds[0].A, 100+100./6, 1e-9, "N")
	near(t, "last third, B more", c.OnTravel.Thirds[2].More(), (250-500./6)-(100+500./6), 1e-9, "N")
	near(t, "largest, place", c.OnTravel.Largest.At, 0, 0, "m")
	near(t, "largest", c.OnTravel.Largest.Force.More(), 150, 1e-9, "N")
	near(t, "shape", c.OnTravel.Shape, -1, 1e-12, "")
	if x := c.OnTravel.Crossings; len(x) != 1 || x[0].BHarder {
		t.Fatalf("crossings on travel: %+v", x)
	}
	near(t, "crossing", c.OnTravel.Crossings[0].At, 0.75, 1e-12, "m")
	near(t, "crossing", c.OnTravel.Crossings[0].Force, 175, 1e-9, "N")

	if x := c.OnShare.Crossings; len(x) != 1 {
		t.Fatalf("crossings on share: %+v", x)
	}
	near(t, "crossing", c.OnShare.Crossings[0].At, 0.5, 1e-12, "")
	near(t, "crossing", c.OnShare.Crossings[0].Force, 150, 1e-9, "N")
	near(t, "mean B", c.OnShare.Mean.B, 150, 1e-9, "N")
	near(t, "largest at an end", math.Abs(c.OnShare.Largest.Force.More()), 150, 1e-9, "N")
}

// Over half a period sin and cos are uncorrelated: ∫sin cos = 0 and the mean
// of cos is 0.
func TestShapeOfSineAndCosine(t *testing.T) {
	a := over(1, 201, func(u float64) float64 { return 100 * math.Sin(math.Pi*u) })
	b := over(1, 101, func(u float64) float64 { return 300 + 100*math.Cos(math.Pi*u) })
	near(t, "correlation", mustCompare(t, a, b).OnShare.Shape, 0, 1e-12, "")
}

// Two roads: the integral correlation against gonum's over dense samples.
func TestShapeAgainstSamples(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 22))
	for range 20 {
		a, b := randomCurve(rng, 5+rng.IntN(40)), randomCurve(rng, 5+rng.IntN(40))
		const n = 20000
		x, y := make([]float64, n), make([]float64, n)
		ra, rb := resampler{curve: a, force: a.Hold}, resampler{curve: b, force: b.Hold}
		for i := range n {
			u := (float64(i) + 0.5) / n
			x[i], _ = ra.at(u)
			y[i], _ = rb.at(u)
		}
		d := mustCompare(t, a, b).OnShare
		near(t, "correlation", d.Shape, stat.Correlation(x, y, nil), 1e-5, "")
		near(t, "mean A", d.Mean.A, mustRead(t, a).Mean, 1e-9, "N")
		near(t, "last third B", d.Thirds[2].B, mustRead(t, b).Thirds[2].Mean, 1e-9, "N")
	}
}

func TestCompareDegenerate(t *testing.T) {
	flat := over(1, 5, func(u float64) float64 { return 100 })
	wave := over(1, 9, func(u float64) float64 { return 200 + 50*math.Sin(7*u) })

	same := mustCompare(t, wave, mapForce(wave, func(f float64) float64 { return f * (1 + 1e-15) }))
	if len(same.OnTravel.Crossings) != 0 || same.OnTravel.Largest.Force.More() > 1e-9 {
		t.Errorf("a curve against itself: %+v", same.OnTravel)
	}
	near(t, "shape of itself", same.OnTravel.Shape, 1, 1e-12, "")

	if d := mustCompare(t, flat, wave).OnShare; d.HasShape || d.Shape != 0 {
		t.Errorf("a constant has no shape to correlate: %+v", d)
	}

	// Equal from 0.25 to 0.75, apart before and after on opposite sides: one
	// crossing, where they part.
	bent := Curve{Travel: []float64{0, 0.25, 0.75, 1}, Hold: []float64{120, 100, 100, 80}}
	d := mustCompare(t, flat, bent).OnTravel
	if len(d.Crossings) != 1 || d.Crossings[0].BHarder {
		t.Fatalf("touching stretch: %+v", d.Crossings)
	}
	near(t, "they part", d.Crossings[0].At, 0.75, 1e-6, "m")

	// No crossing is claimed inside a gap.
	falling := over(1, 5, func(u float64) float64 { return 150 - 100*u })
	falling.Gap = []Reason{None, None, Slack, None, None}
	d = mustCompare(t, flat, falling).OnTravel
	if len(d.Crossings) != 0 {
		t.Errorf("crossing in a gap: %+v", d.Crossings)
	}
	near(t, "covered", d.Covered, 0.5, 1e-12, "")

	none := flat.Clone()
	none.Gap = []Reason{Slack, Slack, Slack, Slack, Slack}
	if d := mustCompare(t, flat, none).OnTravel; d.Covered != 0 || d.HasShape {
		t.Errorf("nothing shared: %+v", d)
	}
	var length *LengthError
	if _, err := Compare(flat, Curve{}, Holding); !errors.As(err, &length) {
		t.Errorf("got %v, want a LengthError", err)
	}
}
