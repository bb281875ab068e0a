package profile

import (
	"math"
	"math/rand/v2"
	"testing"
)

// Curves with readings known in closed form, used by all tests.

// over returns f of the travel share at n even positions over a length in m.
func over(length float64, n int, f func(u float64) float64) Curve {
	c := Curve{Travel: make([]float64, n), Hold: make([]float64, n)}
	for i := range n {
		u := float64(i) / float64(n-1)
		c.Travel[i], c.Hold[i] = u*length, f(u)
	}
	return c
}

// lever is a load on an arm that turns about an axis, lifted at a contact on
// the same arm. With the arm at angle θ from the horizontal
//
//	F = m g (R/r) cos θ    s = r (θ - θ0)    q = R (θ - θ0)
//
// Source: balance of moments about the axis, m g R cos θ = F r. Values:
// R m, r m, θ0 rad, in this order; the arm turns through sweep.
const (
	leverMass  = 20.0
	leverSweep = 1.2 // rad
	gravity    = 9.80665
)

func lever(values []float64, n int) Curve {
	arm, contact, start := values[0], values[1], values[2]
	c := over(contact*leverSweep, n, func(u float64) float64 {
		return leverMass * gravity * arm / contact * math.Cos(start+u*leverSweep)
	})
	c.Load = make([]float64, n)
	for i, s := range c.Travel {
		c.Load[i] = s * arm / contact
	}
	return c
}

var leverMeasurements = []Measurement{
	{"arm to the load", 0.80, 0.010, "m"},
	{"arm to the contact", 0.50, 0.005, "m"},
	{"starting angle", -0.2, 0.03, "rad"},
}

// leverPartials differentiates the lever's columns by hand.
func leverPartials(values []float64, n int) []Partial {
	arm, contact, start := values[0], values[1], values[2]
	c := lever(values, n)
	ds := make([]Partial, 3)
	for j := range ds {
		ds[j] = Partial{Travel: make([]float64, n), Hold: make([]float64, n), Load: make([]float64, n)}
	}
	for i := range n {
		turned := leverSweep * float64(i) / float64(n-1)
		ds[0].Hold[i] = c.Hold[i] / arm
		ds[0].Load[i] = turned
		ds[1].Hold[i] = -c.Hold[i] / contact
		ds[1].Travel[i] = turned
		ds[2].Hold[i] = -leverMass * gravity * arm / contact * math.Sin(start+turned)
	}
	return ds
}

// randomCurve returns a bumpy positive curve at uneven positions.
func randomCurve(rng *rand.Rand, n int) Curve {
	c := Curve{Travel: make([]float64, n), Hold: make([]float64, n), Lift: make([]float64, n), Lower: make([]float64, n), Load: make([]float64, n)}
	a, b, phase := rng.Float64()*80, rng.Float64()*40, rng.Float64()*6
	for i := range n {
		if i > 0 {
			c.Travel[i] = c.Travel[i-1] + 0.002 + 0.02*rng.Float64()
			c.Load[i] = c.Load[i-1] + 0.01*rng.Float64()
		}
		x := float64(i) / float64(n-1)
		c.Hold[i] = 200 + a*math.Sin(4*x+phase) + b*math.Cos(9*x)
		c.Lift[i], c.Lower[i] = c.Hold[i]*1.1, c.Hold[i]*0.9
	}
	return c
}

func mustRead(t *testing.T, c Curve) Readings {
	t.Helper()
	r, err := Read(c, Holding)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func near(t *testing.T, what string, got, want, tol float64, unit string) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.10g, want %.10g %s, off by %.3g, allowed %.3g", what, got, want, unit, got-want, tol)
	}
}
