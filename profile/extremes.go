package profile

// extremes are positions on a segment that has a force.
type extremes struct {
	start, end  knot
	peak, least int
}

func (l *line) extremes() (e extremes, ok bool) {
	first, last := -1, -1
	for i := range l.travel {
		if !onSegment(l.gap, len(l.travel), i) {
			continue
		}
		if first < 0 {
			first, e.peak, e.least = i, i, i
		}
		last = i
		if l.force[i] > l.force[e.peak] {
			e.peak = i
		}
		if l.force[i] < l.force[e.least] {
			e.least = i
		}
	}
	if first < 0 {
		return e, false
	}
	e.start, e.end = l.knot(first), l.knot(last)
	return e, true
}

// refine returns the vertex of the parabola through position i and its two
// neighbours, where i holds the greatest or the smallest of the three forces.
// Position i itself is returned where a neighbour is missing or the three are
// level.
//
// With Newton's form F = F0 + s01 (u-u0) + c (u-u0)(u-u1) the slope at u1 is
// m = s01 + c (u1-u0), so that the vertex lies at u1 - m/2c, at F1 - m²/4c.
func (l *line) refine(i int) knot {
	k1 := l.knot(i)
	if n := len(l.travel); !present(l.gap, n, i-1) || !present(l.gap, n, i+1) {
		return k1
	}
	k0, k2 := l.knot(i-1), l.knot(i+1)
	before, after := k1.u.minus(k0.u), k2.u.minus(k1.u)
	s01 := k1.f.minus(k0.f).over(before)
	s12 := k2.f.minus(k1.f).over(after)
	c := s12.minus(s01).over(before.plus(after))
	if c.v == 0 {
		return k1
	}
	m := s01.plus(c.times(before))
	shift := m.over(c).scaled(-1. / 2)
	return knot{k1.u.plus(shift), k1.f.plus(m.times(shift).scaled(1. / 2))}
}
