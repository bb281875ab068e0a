package calibrate

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"steelyard/planar"
)

// waves is a closed curve: x and y as sums of cosines and sines of a parameter
// that goes from 0 to 2π. Row 0 is the middle; rows 2k-1 and 2k are cos kt and
// sin kt. The columns are x and y.
type waves struct{ mat.Dense }

// basis fills row with what x and y are weighted sums of at t.
func basis(row []float64, t float64) {
	row[0] = 1
	for k := 1; 2*k < len(row); k++ {
		row[2*k], row[2*k-1] = math.Sincos(float64(k) * t)
	}
}

func (w *waves) at(t float64) planar.Vec {
	n, _ := w.Dims()
	row := make([]float64, n)
	basis(row, t)
	var p planar.Vec
	for i, b := range row {
		p.X += b * w.At(i, 0)
		p.Y += b * w.At(i, 1)
	}
	return p
}

// smoothed returns points evenly spread on the least wavy closed curve that
// passes the places within the standard error of each, m along x and along y;
// false if none does.
func smoothed(at []planar.Vec, standard float64) ([]planar.Vec, bool) {
	for k := 1; k <= mostWaves && 2*(2*k+1) <= len(at)+2; k++ {
		w, left, ok := wavesThrough(at, k)
		// left is itself uncertain by one part in the root of twice its degrees of
		// freedom; two of these are allowed.
		free := float64(max(1, len(at)-(2*k+1)))
		if ok && left <= max(standard*(1+math.Sqrt(2/free)), 1e-5) {
			return w.spread(min(MostTraced, max(24, len(at)))), true
		}
	}
	return nil, false
}

// wavesThrough returns the curve of k waves closest to the places, and the
// standard deviation of what is left, for the degrees of freedom there are.
//
// The places' parameters are the share of the way round, first along chords,
// then along the curve fitted, so that unevenly spread taps do no harm.
func wavesThrough(at []planar.Vec, k int) (*waves, float64, bool) {
	n := len(at)
	t := shares(at)
	design, target := mat.NewDense(n, 2*k+1, nil), mat.NewDense(n, 2, nil)
	for i, p := range at {
		target.SetRow(i, []float64{p.X, p.Y})
	}
	var w waves
	sum := 0.0
	for range settlings {
		for i := range n {
			basis(design.RawRowView(i), t[i])
		}
		var next waves
		if next.Solve(design, target) != nil {
			return nil, 0, false
		}
		w, sum = next, 0
		for i, p := range at {
			t[i] = w.closest(p, t[i])
			d := p.Sub(w.at(t[i]))
			sum += d.Dot(d)
		}
	}
	// What is left of each tap is its distance square to the curve: n numbers,
	// of which the curve's 2(2k+1) use up about half.
	return &w, math.Sqrt(sum / float64(max(1, n-(2*k+1)))), true
}

// shares returns, for each place, the share of the way round at it, times 2π.
func shares(at []planar.Vec) []float64 {
	t := make([]float64, len(at))
	way := 0.0
	for i := range at {
		t[i] = way
		way += at[(i+1)%len(at)].Sub(at[i]).Norm()
	}
	for i := range t {
		t[i] *= 2 * math.Pi / way
	}
	return t
}

// closest returns the parameter near t at which the curve is closest to p, by
// three steps of Newton's method along the tangent.
func (w *waves) closest(p planar.Vec, t float64) float64 {
	const h = 1e-4
	for range 3 {
		a := w.at(t)
		d := w.at(t + h).Sub(w.at(t - h)).Scale(1 / (2 * h))
		if l := d.Dot(d); l > 0 {
			t += min(0.1, max(-0.1, p.Sub(a).Dot(d)/l))
		}
	}
	return t
}

// spread returns n points at equal parts of the way round.
func (w *waves) spread(n int) []planar.Vec {
	const fine = 720
	dense := make([]planar.Vec, fine)
	for i := range dense {
		dense[i] = w.at(2 * math.Pi * float64(i) / fine)
	}
	t := shares(dense)
	out := make([]planar.Vec, 0, n)
	for i, j := 0, 0; i < n; i++ {
		for ; j+1 < fine && t[j+1] <= 2*math.Pi*float64(i)/float64(n); j++ {
		}
		out = append(out, dense[j])
	}
	return out
}
