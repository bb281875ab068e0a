package reference

import (
	"math"
	"sync"
)

// Survey holds what was computed from the public data of ANSUR II, the 2012
// anthropometric survey of US Army personnel (Gordon et al. 2014,
// NATICK/TR-15/007, from memory; data released 2017, public domain): 4082 men
// and 1986 women.
//
// Limits: soldiers of 17 to 58 years, screened for fitness and weight. It is
// not a general, young or elderly population; height and limb lengths carry
// over better than mass and girth.
//
// The figures were computed by internal/survey, which says how to repeat them.
type Survey struct {
	N    int                       // people measured
	Row  [NumDimensions]SurveyRow  // m; kg for Mass
	corr [NumDimensions]Dimensions // of the normal scores, see Normal
}

// SurveyRow describes one dimension over the people of one sex.
type SurveyRow struct {
	Mean, SD           float64 // m, or kg
	Min, Max           float64
	P1, P5, P25, P50   float64 // percentiles
	P75, P95, P99      float64
	RatioMean, RatioSD float64 // of the dimension over stature (m/m; kg/m for Mass)
	Source             Source
}

// Normal returns mean and covariance of the survey in normal scores: metres
// for lengths and, because mass is skewed, the natural logarithm of kilograms
// for [Mass]. See [Score] and [Unscore].
func (s *Survey) Normal() (mean Dimensions, cov [NumDimensions]Dimensions) {
	var sd Dimensions
	for d := range NumDimensions {
		mean[d], sd[d] = s.Row[d].Mean, s.Row[d].SD
	}
	// A log-normal mass of mean m and standard deviation v has
	//   σ² = ln(1 + v²/m²)   and   μ = ln m - σ²/2
	m, v := mean[Mass], sd[Mass]
	sd[Mass] = math.Sqrt(math.Log1p(v * v / (m * m)))
	mean[Mass] = math.Log(m) - sd[Mass]*sd[Mass]/2
	for i := range NumDimensions {
		for j := range NumDimensions {
			cov[i][j] = s.corr[i][j] * sd[i] * sd[j]
		}
	}
	return mean, cov
}

// Score turns a value (m, or kg for Mass) into its normal score.
func Score(d Dimension, value float64) float64 {
	if d == Mass {
		return math.Log(value)
	}
	return value
}

// Unscore undoes [Score].
func Unscore(d Dimension, score float64) float64 {
	if d == Mass {
		return math.Exp(score)
	}
	return score
}

// SurveyOf returns the survey's figures for women or men.
// It panics for [Unstated]: ask for each of [Sex.Halves] instead.
func SurveyOf(sex Sex) *Survey {
	s := surveys()[sex]
	if s == nil {
		panic("reference: the survey is kept by sex")
	}
	return s
}

var surveys = sync.OnceValue(func() map[Sex]*Survey {
	out := map[Sex]*Survey{Female: {}, Male: {}}
	for _, r := range rows("survey_dimensions.csv") {
		s := out[parseSex(r.text("sex"))]
		s.N = int(r.number("n"))
		s.Row[surveyDimension(r)] = surveyRow(r)
	}
	for _, r := range rows("survey_correlations.csv") {
		s := out[parseSex(r.text("sex"))]
		for d := range NumDimensions {
			s.corr[surveyDimension(r)][d] = r.number(d.String())
		}
	}
	return out
})

func surveyDimension(r row) Dimension {
	d, ok := ParseDimension(r.text("dimension"))
	if !ok {
		panic("reference: unknown dimension " + r.text("dimension"))
	}
	return d
}

func surveyRow(r row) SurveyRow {
	scale := 1e-3 // mm
	if r.text("unit") == "kg" {
		scale = 1
	}
	in := func(column string) float64 { return scale * r.number(column) }
	return SurveyRow{
		Mean: in("mean"), SD: in("sd"), Min: in("min"), Max: in("max"),
		P1: in("p1"), P5: in("p5"), P25: in("p25"), P50: in("p50"),
		P75: in("p75"), P95: in("p95"), P99: in("p99"),
		RatioMean: r.number("ratio_mean"), RatioSD: r.number("ratio_sd"),
		Source: r.source(),
	}
}
