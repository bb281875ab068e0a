package planar

// cubic is one piece of a spline, between two traced points. The spline's
// parameter runs along the chords, so its derivative is close to a unit vector.
type cubic struct {
	from, to         Vec     // m
	bendFrom, bendTo Vec     // second derivative at either end, 1/m
	chord            float64 // distance from from to to, m
}

// at returns the point, the first and the second derivative at the fraction t
// of the chord.
func (c *cubic) at(t float64) (p, d, dd Vec) {
	s, l := 1-t, c.chord
	p = c.from.Scale(s).Add(c.to.Scale(t)).
		Sub(c.bendFrom.Scale(l * l * s * t * (1 + s) / 6)).
		Sub(c.bendTo.Scale(l * l * s * t * (1 + t) / 6))
	d = c.to.Sub(c.from).Scale(1 / l).
		Sub(c.bendFrom.Scale(l * (3*s*s - 1) / 6)).
		Add(c.bendTo.Scale(l * (3*t*t - 1) / 6))
	return p, d, c.bendFrom.Lerp(c.bendTo, t)
}

// chordsThrough returns straight pieces from each point to the next, the last
// one back to the first if closed.
func chordsThrough(points []Vec) []cubic {
	pieces := make([]cubic, len(points))
	for i, p := range points {
		q := points[(i+1)%len(points)]
		pieces[i] = cubic{from: p, to: q, chord: q.Sub(p).Norm()}
	}
	return pieces
}

// smoothClosed bends pieces, which run once round, into a cubic spline whose
// value, slope and curvature join everywhere.
//
// With M the second derivatives at the points, equal slopes on either side of
// point i say
//
//	l₋/6 M₋ + (l₋ + l)/3 M + l/6 M₊ = (P₊ - P)/l - (P - P₋)/l₋
//
// Round a closed curve that is a tridiagonal system with two corners. They
// are split off as an outer product u vᵀ and put back by the Sherman-Morrison
// formula.
//
// Source: C. de Boor, A Practical Guide to Splines, 1978, ch. IV; W. H. Press et al.,
// Numerical Recipes, 3rd ed. 2007, section 2.7.2 (cyclic systems), from memory.
func smoothClosed(pieces []cubic) {
	n := len(pieces)
	diag, upper, rhs := make([]float64, n), make([]float64, n), make([]Vec, n)
	for i := range pieces {
		before, after := &pieces[(i+n-1)%n], &pieces[i]
		diag[i], upper[i], rhs[i] = slopeRow(before, after)
	}

	// u = (γ, 0, ..., corner), v = (1, 0, ..., corner/γ), γ = -diag[0].
	corner, gamma := upper[n-1], -diag[0]
	diag[0] -= gamma
	diag[n-1] -= corner * corner / gamma
	u := make([]Vec, n)
	u[0], u[n-1] = Vec{X: gamma}, Vec{X: corner}
	solveTridiagonal(diag, upper, u)
	solveTridiagonal(diag, upper, rhs)

	k := corner / gamma
	y := rhs[0].Add(rhs[n-1].Scale(k)).Scale(1 / (1 + u[0].X + k*u[n-1].X))
	for i := range rhs {
		rhs[i] = rhs[i].Sub(y.Scale(u[i].X))
	}
	for i := range pieces {
		pieces[i].bendFrom, pieces[i].bendTo = rhs[i], rhs[(i+1)%n]
	}
}

// smoothOpen bends pieces, which run from one corner to the next, into a cubic
// spline whose value, slope and curvature join in between. The first and the
// last piece are parabolas: a corner says nothing of the bend there, and to let
// it run out to zero, as the natural spline does, would flatten a round flank.
// A single piece stays straight.
func smoothOpen(pieces []cubic) {
	n := len(pieces) - 1 // points in between
	if n < 1 {
		return
	}
	diag, upper, rhs := make([]float64, n), make([]float64, n), make([]Vec, n)
	for i := range n {
		diag[i], upper[i], rhs[i] = slopeRow(&pieces[i], &pieces[i+1])
	}
	diag[0] += pieces[0].chord / 6
	diag[n-1] += pieces[n].chord / 6
	solveTridiagonal(diag, upper, rhs)
	for i := range pieces {
		pieces[i].bendFrom, pieces[i].bendTo = rhs[max(0, i-1)], rhs[min(i, n-1)]
	}
}

// slopeRow returns the row of the spline's equations for the point between two
// pieces: the coefficients of its own second derivative and of the next one,
// and the right-hand side.
func slopeRow(before, after *cubic) (diag, upper float64, rhs Vec) {
	in := before.to.Sub(before.from).Scale(1 / before.chord)
	out := after.to.Sub(after.from).Scale(1 / after.chord)
	return (before.chord + after.chord) / 3, after.chord / 6, out.Sub(in)
}

// solveTridiagonal solves the symmetric tridiagonal system with the given
// diagonal and upper diagonal in place of x, its right-hand side. The system is
// diagonally dominant, so it needs no pivots.
func solveTridiagonal(diag, upper []float64, x []Vec) {
	n := len(x)
	d := make([]float64, n)
	d[0] = diag[0]
	for i := 1; i < n; i++ {
		w := upper[i-1] / d[i-1]
		d[i] = diag[i] - w*upper[i-1]
		x[i] = x[i].Sub(x[i-1].Scale(w))
	}
	x[n-1] = x[n-1].Scale(1 / d[n-1])
	for i := n - 2; i >= 0; i-- {
		x[i] = x[i].Sub(x[i+1].Scale(upper[i])).Scale(1 / d[i])
	}
}
