package planar

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

// place sets the end to w in the ground frame.
func (e *end) place(w *Wrapped) {
	e.side, e.turn = float64(w.Side), w.Turn
	switch o := w.Outline.(type) {
	case nil:
		e.center = w.At.Point(w.Center)
	case Circle:
		e.center, e.radius = w.At.Point(o.Center), o.Radius
	default:
		e.outline, e.center = o, w.At.Shift
	}
}

// place sets both ends.
func (p *pair) place(a, b *Wrapped) {
	p.from.place(a)
	p.to.place(b)
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

// line is a direction in which a rope may travel, with the tangents of both
// ends along it.
type line struct {
	theta    Angle
	u        Vec // (cos theta, sin theta)
	from, to contact
}

// touch sets where the line touches both ends.
func (p *pair) touch(l *line) {
	l.from, l.to = p.from.contact(l.theta, l.u), p.to.contact(l.theta, l.u)
}

// offset returns how far left the tangent of the far end lies of that of the
// near end. The rope is where it is zero and length is positive.
func (l *line) offset() float64 { return l.to.left - l.from.left }

// length returns the distance along the line from touching point to touching
// point. It is minus the derivative of offset.
func (l *line) length() float64 { return l.to.along - l.from.along }

// turn turns the line by the angle a. Small turns are cheap.
func (l *line) turn(a float64) {
	l.theta += Angle(a)
	if a > widestPiece || a < -widestPiece {
		l.u = Polar(1, l.theta)
		return
	}
	sin, vers, _ := smallAngle(a)
	l.u = l.u.Sub(l.u.Scale(vers)).Add(l.u.Perp().Scale(sin))
}

// offset returns offset and length of the line of direction theta.
func (p *pair) offset(theta Angle) (offset, length float64) {
	l := line{theta: theta, u: Polar(1, theta)}
	p.touch(&l)
	return l.offset(), l.length()
}
