package calibrate

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

const (
	// mostSteps bounds the steps of a fit; most take 4 to 15, and those along a
	// narrow valley all.
	mostSteps = 100
	// fewSteps does for one that begins where it is to end.
	fewSteps = 15
	// stiffest is the damping past which no step is small enough.
	stiffest = 1e9
	// settled is the relative fall of the sum of squares below which a fit ends.
	settled = 1e-10
)

// residuals fills out with what is left unexplained at x, each in units of its
// standard deviation, and reports whether x is possible at all.
type residuals func(x, out []float64) bool

// fit returns the x near the start that makes the sum of squares of n residuals
// least, and that sum, by at most so many steps of the method of Levenberg and
// Marquardt. widths are those of central differences. It fails if the start is
// impossible.
//
// Source: D. W. Marquardt, "An Algorithm for Least-Squares Estimation of Nonlinear
// Parameters", J. SIAM 11 (1963) 431, from memory.
func fit(f residuals, start, widths []float64, n, steps int) (x []float64, sum float64, ok bool) {
	x = append([]float64(nil), start...)
	r, trial, tried := make([]float64, n), make([]float64, n), make([]float64, len(x))
	if !f(x, r) {
		return nil, 0, false
	}
	sum = squares(r)
	damping := 1e-3
	jacobian := mat.NewDense(n, len(x), nil)
	for range steps {
		if !slopesAt(f, x, widths, jacobian, trial, tried) {
			return nil, 0, false
		}
		fell := false
		for !fell && damping < stiffest {
			step, solved := damped(jacobian, r, damping)
			for i := range x {
				tried[i] = x[i] + step[i]
			}
			if solved && f(tried, trial) && squares(trial) <= sum {
				fell = true
				damping = max(damping/10, 1e-12)
			} else {
				damping *= 10
			}
		}
		if !fell {
			return x, sum, true
		}
		before := sum
		copy(x, tried)
		copy(r, trial)
		if sum = squares(r); before-sum <= settled*(1+before) {
			return x, sum, true
		}
	}
	return x, sum, true
}

// slopesAt fills the Jacobian by central differences. trial and moved are room
// to work in.
func slopesAt(f residuals, x, widths []float64, jacobian *mat.Dense, trial, moved []float64) bool {
	before := make([]float64, len(trial))
	for j := range x {
		copy(moved, x)
		moved[j] = x[j] - widths[j]
		if !f(moved, before) {
			return false
		}
		moved[j] = x[j] + widths[j]
		if !f(moved, trial) {
			return false
		}
		for i := range trial {
			jacobian.Set(i, j, (trial[i]-before[i])/(2*widths[j]))
		}
	}
	return true
}

// damped returns the step of the normal equations with the diagonal of JᵀJ
// raised by the factor 1 + damping.
func damped(jacobian *mat.Dense, r []float64, damping float64) ([]float64, bool) {
	_, n := jacobian.Dims()
	var normal mat.SymDense
	normal.SymOuterK(1, jacobian.T())
	for i := range n {
		normal.SetSym(i, i, normal.At(i, i)*(1+damping))
	}
	var gradient, step mat.VecDense
	gradient.MulVec(jacobian.T(), mat.NewVecDense(len(r), r))
	var chol mat.Cholesky
	if !chol.Factorize(&normal) || chol.SolveVecTo(&step, &gradient) != nil {
		return make([]float64, n), false
	}
	step.ScaleVec(-1, &step)
	return step.RawVector().Data, true
}

func squares(r []float64) float64 {
	sum := 0.0
	for _, x := range r {
		sum += x * x
	}
	if math.IsNaN(sum) {
		return math.Inf(1)
	}
	return sum
}
