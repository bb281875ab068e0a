package human

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/planar"
)

// Side is the side of the body.
type Side int

const (
	Right Side = iota
	Left
)

// String returns "right" or "left".
func (s Side) String() string { return [...]string{"right", "left"}[s] }

// out is the sense of the frame's Z axis that points away from the body's
// middle on this side.
func (s Side) out() float64 { return float64(1 - 2*s) }

// Frame is a place and three unit axes at right angles, in the ground frame: a
// body part's forward, up and right.
type Frame struct {
	Origin  r3.Vec // m
	X, Y, Z r3.Vec // forward, up (towards the head), right
}

// TrunkAt returns the frame of a trunk whose line of the hips crosses the
// middle of the body at hips, turned by lean about the ground's z axis from
// upright: counter-clockwise, so a person who faces +x leans back with a
// positive angle, lies on the back at +90° and on the front at -90°.
//
// With facesBack the person faces -x before leaning and lean turns the other
// way, so that positive still means leaning back.
func TrunkAt(hips r3.Vec, lean planar.Angle, facesBack bool) Frame {
	s, c := math.Sincos(float64(lean))
	f := Frame{hips, r3.Vec{X: c, Y: s}, r3.Vec{X: -s, Y: c}, r3.Vec{Z: 1}}
	if facesBack {
		half := func(v r3.Vec) r3.Vec { return r3.Vec{X: -v.X, Y: v.Y, Z: -v.Z} }
		f.X, f.Y, f.Z = half(f.X), half(f.Y), half(f.Z)
	}
	return f
}

// Point returns the ground position of a point given in the frame.
func (f Frame) Point(p r3.Vec) r3.Vec { return r3.Add(f.Origin, f.Turn(p)) }

// Turn returns the ground components of a free vector given in the frame.
func (f Frame) Turn(v r3.Vec) r3.Vec {
	return r3.Add(r3.Scale(v.X, f.X), r3.Add(r3.Scale(v.Y, f.Y), r3.Scale(v.Z, f.Z)))
}

// TurnBack returns the frame's components of a free vector of the ground.
func (f Frame) TurnBack(v r3.Vec) r3.Vec {
	return r3.Vec{X: r3.Dot(v, f.X), Y: r3.Dot(v, f.Y), Z: r3.Dot(v, f.Z)}
}

// Shoulder returns the centre of a shoulder of a body whose trunk has frame f.
func (f Frame) Shoulder(l Links, s Side) r3.Vec {
	return f.Point(r3.Vec{Y: l.Trunk, Z: s.out() * l.ShoulderHalf})
}

// Hip returns the centre of a hip of a body whose trunk has frame f.
func (f Frame) Hip(l Links, s Side) r3.Vec {
	return f.Point(r3.Vec{Z: s.out() * l.HipHalf})
}

// turnAbout turns v about the unit axis k by a: Rodrigues' formula.
func turnAbout(v, k r3.Vec, a planar.Angle) r3.Vec {
	s, c := math.Sincos(float64(a))
	along := r3.Scale((1-c)*r3.Dot(k, v), k)
	return r3.Add(r3.Scale(c, v), r3.Add(r3.Scale(s, r3.Cross(k, v)), along))
}

// across returns the unit vector along the part of v at right angles to the
// unit vector u, and the length of that part.
func across(v, u r3.Vec) (r3.Vec, float64) {
	p := r3.Sub(v, r3.Scale(r3.Dot(v, u), u))
	n := r3.Norm(p)
	if n == 0 {
		return r3.Vec{}, 0
	}
	return r3.Scale(1/n, p), n
}

// turnBetween returns the angle from a to b about the unit axis k, to which
// both are at right angles, in (-π, π].
func turnBetween(a, b, k r3.Vec) planar.Angle {
	return planar.Angle(math.Atan2(r3.Dot(k, r3.Cross(a, b)), r3.Dot(a, b)))
}
