package planar

import "math"

// Outline is a closed convex outline described by its support function, in
// the frame of the body that carries it.
//
// h(φ) is the distance of the tangent whose outward normal points along φ,
// measured from the frame's origin. The touching point of that tangent is
//
//	(h cos φ - h' sin φ,  h sin φ + h' cos φ)
//
// and the length of outline passed from normal 0 to normal φ is
// ∫h dφ + h'(φ) - h'(0). When a rope leaves the outline along that tangent, h
// is at once its moment arm about the origin.
//
// Source: L. A. Santaló, Integral Geometry and Geometric Probability, 1976,
// ch. 1 (support function of a convex set), from memory.
type Outline interface {
	// Support returns h(φ) and h'(φ) in metres. Where the outline is straight
	// h' jumps; either of its two values may be returned there.
	Support(phi Angle) (h, dh float64)

	// Length returns the length of outline in metres from the touching point
	// of normal 0 to that of normal φ, counter-clockwise positive. It counts
	// turns: Length(φ+2π) = Length(φ) + perimeter.
	Length(phi Angle) float64
}

// Touch returns the point, in the outline's frame, where the tangent with
// outward normal φ touches it.
func Touch(o Outline, phi Angle) Vec {
	h, dh := o.Support(phi)
	s, c := math.Sincos(float64(phi))
	return Vec{h*c - dh*s, h*s + dh*c}
}

// Circle is a round outline: a sheave, a drum, an eccentric.
type Circle struct {
	Center Vec
	Radius float64 // m, > 0
}

// Support implements [Outline]: h = r + c·n.
func (c Circle) Support(phi Angle) (h, dh float64) {
	sin, cos := math.Sincos(float64(phi))
	return c.Radius + c.Center.X*cos + c.Center.Y*sin, c.Center.Y*cos - c.Center.X*sin
}

// Length implements [Outline].
func (c Circle) Length(phi Angle) float64 { return c.Radius * float64(phi) }
