package reference

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// Percentiles made separately from the same public data, mm (kg for mass):
// ANSUR II 2012, linear interpolation between order statistics.
func TestSurveyPercentiles(t *testing.T) {
	for _, c := range []struct {
		sex                     Sex
		d                       Dimension
		p1, p5, p25, p50        float64
		p75, p95, p99, mean, sd float64
	}{
		{Male, Stature, 1601.6, 1648.0, 1710.0, 1755.0, 1802.0, 1870.0, 1927.0, 1756.21, 68.55},
		{Male, Mass, 57.8, 64.4, 75.6, 84.6, 94.4, 110.7, 124.2, 85.52, 14.22},
		{Male, UpperArm, 296.0, 307.0, 324.0, 335.0, 346.0, 365.0, 377.0, 335.24, 17.48},
		{Male, Forearm, 235.0, 244.0, 257.0, 267.0, 278.0, 295.0, 308.0, 267.88, 15.42},
		{Male, ForearmGrip, 310.0, 320.0, 337.0, 348.5, 361.0, 379.0, 395.0, 349.01, 18.02},
		{Male, ButtockKnee, 550.8, 569.0, 597.0, 617.0, 639.0, 669.0, 692.0, 617.95, 30.59},
		{Male, SittingHeight, 835.8, 860.0, 894.2, 918.0, 943.0, 977.0, 1001.2, 918.29, 35.7},
		{Female, Stature, 1482.5, 1525.0, 1586.2, 1626.0, 1672.0, 1740.0, 1777.6, 1628.47, 64.2},
		{Female, Mass, 46.7, 51.3, 60.1, 66.8, 74.6, 87.1, 97.5, 67.76, 10.98},
		{Female, UpperArm, 271.0, 283.2, 300.0, 311.0, 323.0, 340.0, 352.3, 311.20, 17.16},
		{Female, ShoulderBreadth, 322.0, 335.0, 353.0, 365.0, 378.0, 396.0, 406.0, 365.35, 18.3},
		{Female, HeelToBall, 161.0, 167.0, 175.0, 182.0, 188.0, 198.0, 204.0, 182.05, 9.64},
		{Female, PoplitealHeight, 336.0, 350.0, 373.0, 387.0, 403.0, 428.0, 445.0, 388.2, 23.59},
	} {
		r, k := SurveyOf(c.sex).Row[c.d], 1000.0
		if c.d == Mass {
			k = 1
		}
		got := []float64{r.P1, r.P5, r.P25, r.P50, r.P75, r.P95, r.P99, r.Mean, r.SD}
		for i, want := range []float64{c.p1, c.p5, c.p25, c.p50, c.p75, c.p95, c.p99, c.mean, c.sd} {
			if math.Abs(k*got[i]-want) > 0.06 { // the list is rounded to 0.1
				t.Errorf("%v %v, figure %d: %.2f, want %.2f", c.sex, c.d, i, k*got[i], want)
			}
		}
	}
}

// Correlations computed from the public files with another program (Python
// 3.11, statistics.correlation; mass as its logarithm).
func TestSurveyCorrelations(t *testing.T) {
	for _, c := range []struct {
		sex  Sex
		a, b Dimension
		want float64
	}{
		{Male, Stature, UpperArm, 0.795253}, {Male, UpperArm, Forearm, 0.719061}, {Male, Stature, Mass, 0.470647},
		{Female, Stature, UpperArm, 0.792869}, {Female, UpperArm, Forearm, 0.687017}, {Female, Stature, Mass, 0.538769},
	} {
		s := SurveyOf(c.sex)
		if got := s.corr[c.a][c.b]; math.Abs(got-c.want) > 1e-6 || got != s.corr[c.b][c.a] {
			t.Errorf("%v: %v with %v is %.6f, want %.6f", c.sex, c.a, c.b, got, c.want)
		}
	}
}

func TestSurveyCovarianceIsPositiveDefinite(t *testing.T) {
	for _, sex := range []Sex{Female, Male} {
		_, cov := SurveyOf(sex).Normal()
		sym := mat.NewSymDense(int(NumDimensions), nil)
		for i := range cov {
			for j := range cov[i] {
				sym.SetSym(i, j, cov[i][j])
			}
		}
		var chol mat.Cholesky
		if !chol.Factorize(sym) {
			t.Errorf("%v: the covariance of the survey has no Cholesky factor", sex)
		}
	}
}

// Mass is kept log-normal: its percentiles must then be the survey's.
func TestMassIsLogNormal(t *testing.T) {
	for _, sex := range []Sex{Female, Male} {
		mean, cov := SurveyOf(sex).Normal()
		r, sd := SurveyOf(sex).Row[Mass], math.Sqrt(cov[Mass][Mass])
		for _, c := range []struct{ z, want float64 }{{-1.645, r.P5}, {0, r.P50}, {1.645, r.P95}} {
			if got := Unscore(Mass, mean[Mass]+c.z*sd); math.Abs(got-c.want) > 0.8 {
				t.Errorf("%v at z = %.3f: %.1f kg, survey %.1f kg", sex, c.z, got, c.want)
			}
		}
	}
}
