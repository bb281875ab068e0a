package planar

import "math"

// Side tells on which side of a rope an outline lies, seen along the rope's
// direction of travel from its first end to its last.
type Side int8

const (
	// Left: the outline is on the rope's left, so the rope turns
	// counter-clockwise round it.
	Left Side = +1
	// Right: the outline is on the rope's right, so the rope turns clockwise
	// round it.
	Right Side = -1
)

// quarter is a quarter turn, the angle between a rope and the normal of the
// outline it touches.
const quarter = math.Pi / 2

// Wrapped is what a straight rope piece starts from or runs to: an outline
// placed in the ground frame, or a single point such as a rope's end.
type Wrapped struct {
	// Outline is in the body's frame. If it is nil, the rope piece ends at the
	// point Center, also in the body's frame; Side then only shifts the normals
	// of the resulting [Span], and Center is not used otherwise.
	Outline Outline
	Center  Vec

	// At takes body coordinates to ground coordinates ([Rest] for a body at
	// rest). Turn is its turn, the same modulo 2π, but counting whole turns.
	At   Motion
	Turn Angle

	Side Side // of the rope on which the outline lies
}

// normal returns the body-frame angle of the outward normal at which a rope
// that travels in ground direction theta touches the outline.
func (w *Wrapped) normal(theta Angle) Angle {
	return theta - Angle(w.Side)*quarter - w.Turn
}

// Span is a straight piece of rope between two outlines or points.
type Span struct {
	From, To  Vec     // touching points, m, ground frame
	Unit      Vec     // direction of travel, ground frame
	Direction Angle   // of Unit; counts turns, close to the guess it was found from
	Length    float64 // m, >= 0

	// NormalFrom and NormalTo are the outward normals at From and To, each in
	// the frame of its own body: Direction - Side·π/2 - Turn. They count turns
	// as Direction and Turn do, and are what [Arc] wants.
	NormalFrom, NormalTo Angle
}

// Arc returns the length of rope in metres that lies on the outline o between
// the normal from, at which it arrives (NormalTo of the span before), and the
// normal to, at which it leaves (NormalFrom of the span after).
//
// The rope really touches the outline where Arc is positive. Below zero it
// would have to lift off: a line that stays straight there is shorter.
// A nil outline is a point and holds no rope.
func Arc(o Outline, side Side, from, to Angle) float64 {
	if o == nil {
		return 0
	}
	return float64(side) * (o.Length(to) - o.Length(from))
}
