package profile

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

func TestCandidates(t *testing.T) {
	for _, tt := range []struct {
		shares [whereCount]float64 // unknown, start, middle, end, evenly
		first  Where
		n      int
		sure   bool
	}{
		{[whereCount]float64{0, 1, 0, 0, 0}, AtStart, 1, true},
		{[whereCount]float64{0, 0.95, 0.05, 0, 0}, AtStart, 1, true},
		{[whereCount]float64{0, 0.94, 0.06, 0, 0}, AtStart, 2, false},
		{[whereCount]float64{0, 0.3, 0.1, 0.2, 0.4}, Evenly, 4, false},
		{[whereCount]float64{1, 0, 0, 0, 0}, Unknown, 1, false},
	} {
		v := Verdict{tt.shares}
		where, sure := v.Loads()
		if c := v.Candidates(); where != tt.first || sure != tt.sure || len(c) != tt.n {
			t.Errorf("%v: %v, sure %v, candidates %v", tt.shares, where, sure, c)
		}
	}
}

// A line from 100 (1 + x) to 100 (1 - x) N, with x read as 0 ± 0.2: the means of
// its outer thirds differ by 100·4x/3, so that it loads the start above x =
// 0.075, the end below -0.075, and evenly between: 0.75 standard uncertainties.
func tilted(x []float64, _ int) (Curve, error) {
	return over(1, 7, func(u float64) float64 { return 100 * (1 + x[0]*(1-2*u)) }), nil
}

func TestVerdictWeakens(t *testing.T) {
	ms := []Measurement{{"tilt", 0, 0.2, "1"}}
	tail := distuv.UnitNormal.CDF(-3)
	side := (distuv.UnitNormal.CDF(-0.75) - tail) / (1 - 2*tail)
	c, ds, err := Differentiate(ms, tilted)
	if err != nil {
		t.Fatal(err)
	}
	for name, b := range map[string]*Band{
		"linear": mustLinear(t, c, ms, ds), "drawn": mustSample(t, ms, tilted, Sampling{}),
	} {
		near(t, name+" start", b.Verdict.Shares[AtStart], side, 0.005, "")
		near(t, name+" end", b.Verdict.Shares[AtEnd], side, 0.005, "")
		near(t, name+" evenly", b.Verdict.Shares[Evenly], 1-2*side, 0.01, "")
		if where, sure := b.Verdict.Loads(); where != Evenly || sure {
			t.Errorf("%s: %v, sure %v", name, where, sure)
		}
	}

	// Surely the start once x is known to lie above 0.075 in 95 % of draws.
	ms = []Measurement{{"tilt", 0.3, 0.2, "1"}}
	b := mustSample(t, ms, tilted, Sampling{})
	if where, sure := b.Verdict.Loads(); where != AtStart || !sure {
		t.Errorf("%v, sure %v", where, sure)
	}
	total := 0.0
	for _, s := range b.Verdict.Shares {
		total += s
	}
	near(t, "shares", total, 1, 1e-12, "")
	if math.IsNaN(total) {
		t.Error("no shares")
	}
}
