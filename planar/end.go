package planar

import "math"

// end is one end of a straight rope piece, in the ground frame. Without an
// outline it is a disc, which may be a point, or what a disc sweeps over when
// it is shifted.
type end struct {
	outline Outline
	center  Vec     // of the disc; origin of the outline's frame
	swept   Vec     // shift of the disc, zero unless it is swept
	radius  float64 // of the disc
	side    float64 // +1 if the outline is on the rope's left, -1 on its right
	turn    Angle
}

// pair is the two ends of a straight rope piece.
type pair struct{ from, to end }

// placed moves w to the ground frame.
func placed(w *Wrapped) end {
	e := end{side: float64(w.Side), turn: w.Turn}
	switch o := w.Outline.(type) {
	case nil:
		e.center = w.At.Point(w.Center)
	case Circle:
		e.center, e.radius = w.At.Point(o.Center), o.Radius
	default:
		e.outline, e.center = o, w.At.Shift
	}
	return e
}

func (e *end) isPoint() bool { return e.outline == nil && e.radius == 0 }

// contact is where a line of direction u touches an end: along is the
// coordinate of the touching point along u, left its coordinate along the left
// normal of u (m).
type contact struct{ along, left float64 }

func (c contact) point(u Vec) Vec {
	return u.Scale(c.along).Add(u.Perp().Scale(c.left))
}

// contact returns where the line of direction u = (cos theta, sin theta)
// touches the end, the outline being on its side of the line.
//
// The outward normal there is n = -σL with L the left normal of u, so the line
// lies at -σh along L; and n⊥ = σu, so the touching point lies at σh' along u.
func (e *end) contact(theta Angle, u Vec) contact {
	if e.outline == nil {
		return e.discContact(u)
	}
	h, dh := e.outline.Support(theta - Angle(e.side)*quarter - e.turn)
	return contact{
		along: e.center.Dot(u) + e.side*dh,
		left:  u.Cross(e.center) - e.side*h,
	}
}

func (e *end) discContact(u Vec) contact {
	c := e.center
	if e.side*u.Cross(e.swept) < 0 {
		c = c.Add(e.swept)
	}
	return contact{along: c.Dot(u), left: u.Cross(c) - e.side*e.radius}
}

// offset returns how far left the tangent of p.to lies of the parallel tangent
// of p.from, both of direction theta, and the distance from touching point to
// touching point along them. The rope is where offset is zero and length is
// positive. The derivative of offset is -length.
func (p *pair) offset(theta Angle) (offset, length float64) {
	s, c := math.Sincos(float64(theta))
	u := Vec{c, s}
	a, b := p.from.contact(theta, u), p.to.contact(theta, u)
	return b.left - a.left, b.along - a.along
}
