package planar

import "math"

// Vec is a point or a free vector in the plane.
type Vec struct{ X, Y float64 }

// Polar returns the vector of length r in direction a.
func Polar(r float64, a Angle) Vec {
	s, c := math.Sincos(float64(a))
	return Vec{r * c, r * s}
}

// Add returns v + w.
func (v Vec) Add(w Vec) Vec { return Vec{v.X + w.X, v.Y + w.Y} }

// Sub returns v - w: the way from w to v.
func (v Vec) Sub(w Vec) Vec { return Vec{v.X - w.X, v.Y - w.Y} }

// Scale returns k·v.
func (v Vec) Scale(k float64) Vec { return Vec{k * v.X, k * v.Y} }

// Neg returns -v.
func (v Vec) Neg() Vec { return Vec{-v.X, -v.Y} }

// Dot returns v·w.
func (v Vec) Dot(w Vec) float64 { return v.X*w.X + v.Y*w.Y }

// Cross returns the z component of v × w: positive when w lies
// counter-clockwise of v.
func (v Vec) Cross(w Vec) float64 { return v.X*w.Y - v.Y*w.X }

// Perp returns v turned a quarter counter-clockwise, the velocity of the point
// v under unit angular velocity.
func (v Vec) Perp() Vec { return Vec{-v.Y, v.X} }

// Norm returns the length of v. It does not guard against overflow, which
// lengths in metres cannot reach.
func (v Vec) Norm() float64 { return math.Sqrt(v.X*v.X + v.Y*v.Y) }

// Angle returns the direction of v from the x axis, in (-π, π]; 0 for the zero
// vector.
func (v Vec) Angle() Angle { return Angle(math.Atan2(v.Y, v.X)) }

// Unit returns v scaled to length 1, or the zero vector if v is zero.
func (v Vec) Unit() Vec {
	l := v.Norm()
	if l == 0 {
		return Vec{}
	}
	return v.Scale(1 / l)
}

// Lerp returns the point the fraction t of the way from v to w.
func (v Vec) Lerp(w Vec, t float64) Vec { return v.Add(w.Sub(v).Scale(t)) }

// Finite reports whether both components are ordinary numbers.
func (v Vec) Finite() bool {
	return !math.IsNaN(v.X-v.X) && !math.IsNaN(v.Y-v.Y)
}
