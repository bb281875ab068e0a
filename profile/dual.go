package profile

import "math"

// dual is a value and its derivative with respect to one measurement. Carrying
// both through the same formulas makes every reading's derivative exact,
// moving third boundaries and peaks included, without a second set of
// formulas that could disagree with the first.
//
// Source: A. Griewank, A. Walther, Evaluating Derivatives, 2nd ed., 2008,
// section 3.1 (forward mode), from memory.
type dual struct{ v, d float64 }

func constant(v float64) dual { return dual{v, 0} }

func (a dual) plus(b dual) dual        { return dual{a.v + b.v, a.d + b.d} }
func (a dual) minus(b dual) dual       { return dual{a.v - b.v, a.d - b.d} }
func (a dual) times(b dual) dual       { return dual{a.v * b.v, a.d*b.v + a.v*b.d} }
func (a dual) scaled(k float64) dual   { return dual{k * a.v, k * a.d} }
func (a dual) shifted(by float64) dual { return dual{a.v + by, a.d} }
func (a dual) over(b dual) dual        { q := a.v / b.v; return dual{q, (a.d - q*b.d) / b.v} }
func lerp(a, b, t dual) dual           { return a.plus(b.minus(a).times(t)) }

// root returns the square root. At 0, where the root has no derivative, the
// derivative is taken as 0: a curve without any unevenness has no first-order
// unevenness to report.
func (a dual) root() dual {
	if a.v <= 0 {
		return dual{}
	}
	r := math.Sqrt(a.v)
	return dual{r, a.d / (2 * r)}
}
