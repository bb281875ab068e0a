package planar

// Clearance returns the distance in metres from the outline o to the straight
// piece between the points from and to (ground frame). It is negative where
// the piece cuts into the outline, and then minus the shortest shift that
// would free it. The side of o does not matter.
func Clearance(o *Wrapped, from, to Vec) float64 {
	outline := placed(o)
	if outline.outline == nil {
		return outline.center.fromSegment(from, to) - outline.radius
	}

	// The rope that passes between outline and piece has an offset, over all
	// directions, that dips to minus their distance.
	outline.side = +1
	p := pair{outline, end{center: from, swept: to.Sub(from), side: -1}}
	_, theta, _ := p.closest(0, +1)
	gap, _ := p.offset(theta)
	return -gap
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
