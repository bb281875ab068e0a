package profile

import (
	"fmt"
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
	"gonum.org/v1/gonum/stat/samplemv"
)

const (
	// truncation is where the normal distribution of a measurement is cut, in
	// standard uncertainties: a tape is not misread by more, and a draw far
	// out would build a machine nobody measured. It narrows the standard
	// deviation by 1.3 % (factor 0.9866) and a 95 % interval about as much.
	truncation = 3

	// maxMeasurements is how many dimensions the Halton sequence offers.
	maxMeasurements = 1000
)

// TooManyError reports more measurements than can be drawn at once.
type TooManyError struct{ Got, Limit int }

func (e *TooManyError) Error() string {
	return fmt.Sprintf("profile: %d measurements carry a ±, at most %d can be drawn; drop the ± of those that matter least",
		e.Got, e.Limit)
}

// draws returns n rows of one value for each measurement: a randomized Halton
// sequence through the inverse normal distribution with the measurement's mean
// and a standard deviation of half its spread, cut at [truncation]. The same
// seed gives the same rows.
//
// Source: A. B. Owen, A randomized Halton algorithm in R, 2017,
// arXiv:1706.02808, as built into gonum.
func draws(ms []Measurement, n int, seed uint64) (*mat.Dense, error) {
	if len(ms) > maxMeasurements {
		return nil, &TooManyError{len(ms), maxMeasurements}
	}
	if len(ms) == 0 {
		return nil, nil
	}
	batch := mat.NewDense(n, len(ms), nil)
	samplemv.Halton{Kind: samplemv.Owen, Q: truncated(ms), Src: rand.NewPCG(seed, 0)}.Sample(batch)
	return batch, nil
}

// truncated is the joint distribution of independent measurements. It
// implements distmv.Quantiler.
type truncated []Measurement

// Quantile maps p, each in [0, 1], to values; x may be p.
func (ms truncated) Quantile(x, p []float64) []float64 {
	if x == nil {
		x = make([]float64, len(p))
	}
	tail := distuv.UnitNormal.CDF(-truncation)
	for j, m := range ms {
		z := distuv.UnitNormal.Quantile(tail + p[j]*(1-2*tail))
		x[j] = m.Value + z*m.Spread/coverageFactor
	}
	return x
}

// verdictDraws is how many machines a linear band's verdict is taken over; it
// resolves a share of 0.2 %.
const verdictDraws = 512

// linearVerdict draws measurements and moves the means of the thirds and of
// the travel along their gradients.
func linearVerdict(base Readings, ms []Measurement, gradient []outcome) (Verdict, error) {
	batch, err := draws(ms, verdictDraws, 0)
	if err != nil {
		return Verdict{}, err
	}
	var counts [whereCount]int
	for i := range verdictDraws {
		r := base
		for j, m := range ms {
			by := batch.At(i, j) - m.Value
			for _, q := range [...]Reading{LengthenedMean, MiddleMean, ShortenedMean, Mean, Work} {
				*r.field(q) += gradient[j].values[q].d * by
			}
		}
		counts[whereOf(&r)]++
	}
	return verdictOf(counts), nil
}
