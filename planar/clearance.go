package planar

// Clearance returns the distance in metres from the outline o to the straight
// piece between the points from and to (ground frame). It is negative where
// the piece cuts into the outline, and then minus the shortest shift that
// would free it. The side of o does not matter.
func Clearance(o *Wrapped, from, to Vec) float64 {
	var p pair
	p.from.place(o)
	if p.from.outline == nil {
		return p.from.center.fromSegment(from, to) - p.from.radius
	}

	// The usual case: the outline lies beside the piece, on one side or the other.
	p.from.side = +1
	piece := to.Sub(from)
	for _, u := range [2]Vec{piece.Unit(), piece.Unit().Neg()} {
		c := p.from.contact(u.Angle(), u)
		a, b := from.Dot(u), to.Dot(u)
		gap := c.left - u.Cross(from)
		if gap >= 0 && min(a, b) <= c.along && c.along <= max(a, b) {
			return gap
		}
	}

	// The offset of a rope that passes between outline and piece dips, over all
	// directions, to minus their distance.
	p.to = end{center: from, swept: piece, side: -1}
	_, theta, _ := p.closest(0, +1)
	offset, _ := p.offset(theta)
	return -offset
}

// fromSegment returns the distance from v to the nearest point between a and b.
func (v Vec) fromSegment(a, b Vec) float64 {
	d := b.Sub(a)
	t := 0.0
	if dd := d.Dot(d); dd > 0 {
		t = min(1, max(0, v.Sub(a).Dot(d)/dd))
	}
	return v.Sub(a.Lerp(b, t)).Norm()
}
