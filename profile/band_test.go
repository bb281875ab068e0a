package profile

import (
	"context"
	"errors"
	"math"
	"slices"
	"testing"
)

func mustLinear(t *testing.T, c Curve, ms []Measurement, ds []Partial) *Band {
	t.Helper()
	b, err := Linear(c, Holding, ms, ds)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// The lever's band by hand: dF = F dR/R - F dr/r - (mgR/r) sin θ dθ0 at a fixed
// share of the travel, combined by JCGM 100:2008 equation 10 with k = 2
// throughout. Its peak lies at θ = 0 and so does not feel the starting angle to
// first order, while its place -θ0/sweep feels nothing else.
func TestLinearBandOfLever(t *testing.T) {
	const n = 201
	ms, values := leverMeasurements, stated(leverMeasurements)
	b := mustLinear(t, lever(values, n), ms, leverPartials(values, n))
	arm, contact := ms[0].Spread/values[0], ms[1].Spread/values[1]
	lengths := math.Hypot(arm, contact)
	top := leverMass * gravity * values[0] / values[1]
	for i, u := range b.Share {
		theta := values[2] + u*leverSweep
		want := math.Hypot(top*math.Cos(theta)*lengths, top*math.Sin(theta)*ms[2].Spread)
		near(t, "half width", b.Between[i].Half(), want, 1e-9, "N")
	}
	mean := top * (math.Sin(1) - math.Sin(-0.2)) / leverSweep
	dMean := top * (math.Cos(1) - math.Cos(-0.2)) / leverSweep
	// The first third's share is sin(sweep/6) cos(θ0 + sweep/6) over sin(sweep/2)
	// cos(θ0 + sweep/2), with θ0 + sweep/6 = 0 and θ0 + sweep/2 = 0.4.
	first := math.Sin(0.2) / (math.Sin(0.6) * math.Cos(0.4))
	for _, tt := range []struct {
		q    Reading
		want float64
		tol  float64
	}{
		{PeakForce, top * lengths, 1e-4},
		{PeakShare, ms[2].Spread / leverSweep, 1e-6},
		{Mean, math.Hypot(mean*lengths, dMean*ms[2].Spread), 1e-3},
		{LiftRatio, values[0] / values[1] * lengths, 1e-12},
		{Length, leverSweep * ms[1].Spread, 1e-12},
		{WorkUp, leverMass * gravity * math.Hypot((math.Sin(1)+math.Sin(0.2))*ms[0].Spread,
			values[0]*(math.Cos(1)-math.Cos(0.2))*ms[2].Spread), 1e-3},
		{LengthenedShare, first * (math.Tan(0.4) - math.Tan(0)) * ms[2].Spread, 1e-5},
		{MiddleShare, 0, 1e-9}, // sin(sweep/6)/sin(sweep/2), whatever the start
	} {
		near(t, "± of "+tt.q.String(), b.Reading(tt.q).Half(), tt.want, tt.tol, tt.q.Unit())
	}
}

// By the envelope theorem the peak changes as the force does where the peak
// is: with the travel still, by the parabola through the three forces'
// derivatives, read at the peak.
func TestPeakObeysEnvelopeTheorem(t *testing.T) {
	c := over(1, 11, func(u float64) float64 { return 100 - 300*(u-0.43)*(u-0.43) })
	d := Partial{Travel: make([]float64, 11), Hold: over(1, 11, func(u float64) float64 { return 3 + u*u }).Hold}
	o, err := read(c, d, Holding)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "peak place", o.values[PeakShare].v, 0.43, 1e-12, "")
	near(t, "peak derivative", o.values[PeakForce].d, 3+0.43*0.43, 1e-12, "N")
}

// A spring F = k (p + s) over a travel L, with only the last position moving
// when L does: at a fixed share dF = k u dL all the same, and the mean moves
// by k/2.
func TestLinearBandAtFixedShare(t *testing.T) {
	const k, preload, length = 500.0, 0.1, 0.8
	c := over(length, 9, func(u float64) float64 { return k * (preload + u*length) })
	d := Partial{Travel: make([]float64, 9), Hold: make([]float64, 9)}
	d.Travel[8], d.Hold[8] = 1, k
	b := mustLinear(t, c, []Measurement{{"travel", length, 0.02, "m"}}, []Partial{d})
	for i, u := range b.Share {
		near(t, "half width", b.Between[i].Half(), k*u*0.02, 1e-9, "N")
	}
	near(t, "± of the mean", b.Reading(Mean).Half(), k/2*0.02, 1e-9, "N")
	near(t, "± of the middle third", b.Reading(MiddleMean).Half(), k/2*0.02, 1e-9, "N")
	near(t, "± of the last third", b.Reading(ShortenedMean).Half(), k*5/6*0.02, 1e-9, "N")
	near(t, "± of the start", b.Reading(StartForce).Half(), 0, 0, "N")
}

func TestCentralDifferencesOfLever(t *testing.T) {
	const n = 31
	values := stated(leverMeasurements)
	work := lever(values, n)
	c, ds, err := Differentiate(leverMeasurements, func(v []float64, worker int) (Curve, error) {
		fresh := lever(v, n) // into the same memory each time, as callers may
		copy(work.Travel, fresh.Travel)
		copy(work.Hold, fresh.Hold)
		copy(work.Load, fresh.Load)
		return work, nil
	})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "stated curve", c.Hold[3], lever(values, n).Hold[3], 0, "N")
	for j, want := range leverPartials(values, n) {
		for i := range n {
			near(t, "dF", ds[j].Hold[i], want.Hold[i], 2e-3, "N per unit") // (step ±)²/6 F'''
			near(t, "ds", ds[j].Travel[i], want.Travel[i], 1e-9, "m per unit")
		}
	}
}

func TestDifferentiateRefuses(t *testing.T) {
	flat := func() Curve { return over(1, 4, func(u float64) float64 { return 100 }) }
	broken := errors.New("the links cannot meet")
	m := []Measurement{{"seat height", 0.4, 0.02, "m"}}
	tests := []struct {
		name string
		f    Evaluate
		want string
	}{
		{"gap appears", func(v []float64, _ int) (Curve, error) {
			c := flat()
			if v[0] > 0.4 {
				c.Gap = []Reason{None, None, Slack, None}
			}
			return c, nil
		}, `profile: position 3 gains or loses its force when "seat height" moves by 0.001 m; take a sampled band instead`},
		{"length changes", func(v []float64, _ int) (Curve, error) {
			if v[0] < 0.4 {
				return over(1, 5, func(u float64) float64 { return 1 }), nil
			}
			return flat(), nil
		}, `profile: the number of positions changes when "seat height" moves by 0.001 m; take a sampled band instead`},
		{"cannot be assembled", func(v []float64, _ int) (Curve, error) {
			if v[0] > 0.4 {
				return Curve{}, broken
			}
			return flat(), nil
		}, "with seat height at 0.401 m: the links cannot meet"},
	}
	for _, tt := range tests {
		if _, _, err := Differentiate(m, tt.f); err == nil || err.Error() != tt.want {
			t.Errorf("%s: got %v, want %s", tt.name, err, tt.want)
		}
	}
}

func TestBandRefuses(t *testing.T) {
	c := over(1, 3, func(u float64) float64 { return 100 })
	zeros := Partial{Travel: make([]float64, 3), Hold: make([]float64, 3)}
	late := Partial{Travel: []float64{1, 1, 1}, Hold: make([]float64, 3)}
	one := []Measurement{{"arm", 1, 0.1, "m"}}
	var m *MeasurementError
	var length *LengthError
	var value *ValueError
	for _, tt := range []struct {
		name   string
		ms     []Measurement
		ds     []Partial
		target any
	}{
		{"negative ±", []Measurement{{"arm", 1, -0.1, "m"}}, []Partial{zeros}, &m},
		{"± not a number", []Measurement{{"arm", 1, math.NaN(), "m"}}, []Partial{zeros}, &m},
		{"no derivatives", one, nil, &length},
		{"short derivative", one, []Partial{{Travel: zeros.Travel, Hold: []float64{1}}}, &length},
		{"moving start", one, []Partial{late}, &value},
	} {
		if _, err := Linear(c, Holding, tt.ms, tt.ds); !errors.As(err, tt.target) {
			t.Errorf("%s: got %v", tt.name, err)
		}
	}
	many := slices.Repeat(one, maxMeasurements+1)
	var tooMany *TooManyError
	flat := func([]float64, int) (Curve, error) { return c, nil }
	if _, err := Sampled(context.Background(), Holding, many, flat, Sampling{Draws: 50}); !errors.As(err, &tooMany) {
		t.Errorf("got %v, want a TooManyError", err)
	}
}

// Without any ± the band is the curve.
func TestBandWithoutSpread(t *testing.T) {
	c := over(1, 5, func(u float64) float64 { return 100 - 50*u })
	b := mustLinear(t, c, nil, nil)
	if _, ok := b.Dominant(); ok {
		t.Error("something dominates a band of no width")
	}
	near(t, "half", b.Reading(Mean).Half(), 0, 0, "N")
	if w, sure := b.Verdict.Loads(); w != AtStart || !sure {
		t.Errorf("verdict %v, sure %v", w, sure)
	}
}
