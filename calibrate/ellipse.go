package calibrate

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"steelyard/planar"
)

// ellipse is a plate's rim as seen, in px, right and down.
type ellipse struct {
	center       planar.Vec
	major, minor float64      // semi-axes, px
	angle        planar.Angle // from right towards down, of the major axis
}

// ellipseThrough returns the ellipse that fits at least 5 points best in the
// sense of direct least squares: the conic a x² + b xy + c y² + d x + e y + f of
// least algebraic distance with 4ac - b² = 1, which no other kind of conic can
// meet. It fails if the points fix no ellipse.
//
// Points on an ellipse give it back to about 1e-9 of its size.
//
// Source: A. Fitzgibbon, M. Pilu, R. B. Fisher, "Direct Least Square Fitting of
// Ellipses", IEEE Trans. PAMI 21 (1999) 476; split into quadratic and linear
// part, which keeps exact data from failing, after R. Halíř, J. Flusser,
// "Numerically Stable Direct Least Squares Fitting of Ellipses", WSCG 1998; from
// memory.
func ellipseThrough(points []planar.Vec) (ellipse, bool) {
	mid := mean(points)
	size := 0.0
	for _, p := range points {
		size += p.Sub(mid).Norm() / float64(len(points))
	}
	if !(size > 0) || len(points) < 5 {
		return ellipse{}, false
	}
	quadratic, linear := mat.NewDense(len(points), 3, nil), mat.NewDense(len(points), 3, nil)
	for i, p := range points {
		p = p.Sub(mid).Scale(1 / size)
		quadratic.SetRow(i, []float64{p.X * p.X, p.X * p.Y, p.Y * p.Y})
		linear.SetRow(i, []float64{p.X, p.Y, 1})
	}
	conic, ok := leastConic(quadratic, linear)
	if !ok {
		return ellipse{}, false
	}
	e, ok := conic.axes()
	e.center = e.center.Scale(size).Add(mid)
	e.major *= size
	e.minor *= size
	return e, ok
}

// leastConic solves S₁a + S₂t = λCa, S₂ᵀa + S₃t = 0 for the quadratic part a
// and the linear part t of the conic.
func leastConic(quadratic, linear *mat.Dense) (conic, bool) {
	var s1, s2, s3, toLinear, reduced mat.Dense
	s1.Mul(quadratic.T(), quadratic)
	s2.Mul(quadratic.T(), linear)
	s3.Mul(linear.T(), linear)
	if toLinear.Solve(&s3, s2.T()) != nil {
		return conic{}, false
	}
	toLinear.Scale(-1, &toLinear)
	reduced.Mul(&s2, &toLinear)
	reduced.Add(&s1, &reduced)

	// C⁻¹, with aᵀCa = 4 a₀a₂ - a₁².
	inverse := mat.NewDense(3, 3, []float64{0, 0, 0.5, 0, -1, 0, 0.5, 0, 0})
	var system mat.Dense
	system.Mul(inverse, &reduced)
	var eigen mat.Eigen
	if !eigen.Factorize(&system, mat.EigenRight) {
		return conic{}, false
	}
	var vectors mat.CDense
	eigen.VectorsTo(&vectors)
	for j := range 3 {
		a := mat.NewVecDense(3, []float64{real(vectors.At(0, j)), real(vectors.At(1, j)), real(vectors.At(2, j))})
		if 4*a.AtVec(0)*a.AtVec(2)-a.AtVec(1)*a.AtVec(1) > 0 {
			var t mat.VecDense
			t.MulVec(&toLinear, a)
			return conic{a.AtVec(0), a.AtVec(1), a.AtVec(2), t.AtVec(0), t.AtVec(1), t.AtVec(2)}, true
		}
	}
	return conic{}, false
}

// conic is a x² + b xy + c y² + d x + e y + f = 0.
type conic struct{ a, b, c, d, e, f float64 }

// axes returns the conic as an ellipse; false if it is none.
func (q conic) axes() (ellipse, bool) {
	det := 4*q.a*q.c - q.b*q.b
	at := planar.Vec{X: (q.b*q.e - 2*q.c*q.d) / det, Y: (q.b*q.d - 2*q.a*q.e) / det}
	rest := q.f + (q.d*at.X+q.e*at.Y)/2 // value at the centre
	// Along the axes the quadratic part is l·r², and l·r² = -rest.
	spread := math.Hypot(q.a-q.c, q.b)
	low, high := (q.a+q.c-spread)/2, (q.a+q.c+spread)/2
	if rest > 0 {
		low, high, rest = -high, -low, -rest
		q.a, q.b, q.c = -q.a, -q.b, -q.c
	}
	e := ellipse{
		center: at, major: math.Sqrt(-rest / low), minor: math.Sqrt(-rest / high),
		angle: planar.Angle(math.Atan2(-q.b, q.c-q.a) / 2),
	}
	return e, det > 0 && e.minor > 0 && e.center.Finite() && !math.IsNaN(e.major-e.major)
}

// tilt returns the rotation vector of a disc about its major axis that is seen
// so from far off; its opposite is seen alike.
func (e ellipse) tilt() planar.Vec {
	return planar.Polar(math.Acos(min(1, e.minor/e.major)), e.angle)
}

// off returns the distance of p from the ellipse in px, to first order and
// without sign.
func (e ellipse) off(p planar.Vec) float64 {
	q := p.Sub(e.center)
	s, c := math.Sincos(float64(e.angle))
	u, v := (q.X*c+q.Y*s)/e.major, (q.Y*c-q.X*s)/e.minor
	r := math.Hypot(u, v)
	if r == 0 {
		return e.minor
	}
	return math.Abs(r-1) * r / math.Hypot(u/e.major, v/e.minor)
}

// gap returns the greatest angle round the ellipse, as that of the disc it is
// the picture of, without a point.
func (e ellipse) gap(points []planar.Vec) planar.Angle {
	s, c := math.Sincos(float64(e.angle))
	round := make([]float64, len(points))
	for i, p := range points {
		q := p.Sub(e.center)
		round[i] = math.Atan2((q.Y*c-q.X*s)/e.minor, (q.X*c+q.Y*s)/e.major)
	}
	slices.Sort(round)
	widest := round[0] + 2*math.Pi - round[len(round)-1]
	for i := 1; i < len(round); i++ {
		widest = max(widest, round[i]-round[i-1])
	}
	return planar.Angle(widest)
}
