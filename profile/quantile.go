package profile

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
)

// summaryOf is one output over the draws that have it.
type summaryOf struct {
	count       int
	interval    Interval
	correlation []float64 // with each measurement, -1 to 1; 0 where either does not vary
}

func summary(y []float64, has []bool, batch *mat.Dense, measurements int) summaryOf {
	kept := make([]float64, 0, len(y))
	for i, v := range y {
		if has[i] {
			kept = append(kept, v)
		}
	}
	s := summaryOf{count: len(kept), correlation: make([]float64, measurements)}
	if s.count == 0 {
		return s
	}
	sorted := slices.Sorted(slices.Values(kept))
	s.interval = Interval{
		Low:  stat.Quantile(lowQuantile, stat.LinInterp, sorted, nil),
		High: stat.Quantile(1-lowQuantile, stat.LinInterp, sorted, nil),
	}
	if s.interval.Half() <= rounding*math.Abs(s.interval.High) {
		return s
	}
	x := make([]float64, s.count)
	for j := range s.correlation {
		x = x[:0]
		for i := range y {
			if has[i] {
				x = append(x, batch.At(i, j))
			}
		}
		if r := stat.Correlation(x, kept, nil); !math.IsNaN(r) {
			s.correlation[j] = r
		}
	}
	return s
}

// rounding is the half width, over the value, below which an output does not
// vary: what is left is the rounding of its computation.
const rounding = 1e-12

// nearKnot is the share of a segment within which a grid place counts as the
// segment's end, so that rounding cannot push it into a neighbouring gap.
const nearKnot = 1e-9

// resampler reads a curve at ascending shares of its travel.
type resampler struct {
	curve Curve
	force []float64
	i     int // current segment
}

// at returns the force in N at share u, on the straight line between
// positions, and whether there is one.
func (r *resampler) at(u float64) (float64, bool) {
	travel, s := r.curve.Travel, u*r.curve.Length()
	for r.i < len(travel)-2 && travel[r.i+1] < s {
		r.i++
	}
	a, b := r.i, r.i+1
	t := (s - travel[a]) / (travel[b] - travel[a])
	switch {
	case t <= nearKnot:
		return r.force[a], r.curve.Has(a)
	case t >= 1-nearKnot:
		return r.force[b], r.curve.Has(b)
	case r.curve.Has(a) && r.curve.Has(b):
		return r.force[a] + t*(r.force[b]-r.force[a]), true
	}
	return 0, false
}
