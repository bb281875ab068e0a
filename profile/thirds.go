package profile

// Partial is the derivative of a curve's columns with respect to one
// measurement: per unit of that measurement, at a fixed index. Travel must be
// 0 at the first position, because travel counts from there.
type Partial struct {
	Travel, Hold, Lift, Lower, Load []float64
}

// check demands the columns that the curve itself has.
func (p Partial) check(c Curve) error {
	columns := [...]struct {
		name   string
		values []float64
		needed bool
	}{
		{"travel derivative", p.Travel, true}, {"hold derivative", p.Hold, true},
		{"lift derivative", p.Lift, c.Lift != nil}, {"lower derivative", p.Lower, c.Lower != nil},
		{"load derivative", p.Load, c.Load != nil},
	}
	for _, col := range columns {
		if !col.needed {
			continue
		}
		if err := checkColumn(col.name, col.values, len(c.Travel)); err != nil {
			return err
		}
	}
	if p.Travel[0] != 0 {
		return &ValueError{"travel derivative", 0, p.Travel[0], "0, since travel counts from the start"}
	}
	return nil
}

// force returns the derivative of Curve.Force(p).
func (p Partial) force(c Curve, ph Phase) []float64 {
	switch {
	case ph == Lifting && c.Lift != nil:
		return p.Lift
	case ph == Lowering && c.Lower != nil:
		return p.Lower
	}
	return p.Hold
}

// line is a force over the travel with its derivatives, ready to be
// integrated.
type line struct {
	travel, force   []float64 // m, N
	dTravel, dForce []float64 // nil, both, for a plain reading
	gap             []Reason
	length          dual // m
}

// knot is one end of a straight piece: share of the travel and force.
type knot struct{ u, f dual }

func lineOf(c Curve, d Partial, p Phase) line {
	l := line{travel: c.Travel, force: c.Force(p), dTravel: d.Travel, dForce: d.force(c, p), gap: c.Gap}
	last := len(c.Travel) - 1
	l.length = dual{l.travel[last], at(l.dTravel, last)}
	return l
}

func at(column []float64, i int) float64 {
	if column == nil {
		return 0
	}
	return column[i]
}

func (l *line) has(i int) bool { return present(l.gap, len(l.travel), i) }

// knot returns position i. The share's derivative is (ds - u dL)/L.
func (l *line) knot(i int) knot {
	k := knot{dual{v: l.travel[i] / l.length.v}, dual{v: l.force[i]}}
	if l.dTravel != nil {
		k.u.d = (l.dTravel[i] - k.u.v*l.length.d) / l.length.v
		k.f.d = l.dForce[i]
	}
	return k
}

// moments are the integrals of one stretch over the travel share u, of the
// force less a pivot: ∫du, ∫(F-k)du, ∫(F-k)²du. The pivot, any force of the
// curve, keeps the variance free of cancellation.
type moments struct {
	width, first, second dual
	helps                float64 // width on which the force itself is below 0
}

// thirds integrates the line over each third of the travel.
func (l *line) thirds(pivot float64) (m [3]moments) {
	lo, seen := knot{}, false
	for i := range l.travel {
		if !l.has(i) {
			seen = false
			continue
		}
		hi := l.knot(i)
		if seen {
			addSegment(&m, lo, hi, pivot)
		}
		lo, seen = hi, true
	}
	return m
}

// addSegment adds one segment, cut where it crosses from one third into the
// next. The cut stays put while the segment's ends move, and the dual numbers
// carry what that does to the force there.
func addSegment(m *[3]moments, lo, hi knot, pivot float64) {
	from, to := lo, hi
	for k := range m {
		edge := float64(k+1) / 3
		if k < 2 && from.u.v >= edge {
			continue
		}
		if k == 2 || to.u.v <= edge {
			m[k].add(from, to, pivot)
			return
		}
		u := constant(edge)
		t := u.minus(lo.u).over(hi.u.minus(lo.u))
		cut := knot{u, lerp(lo.f, hi.f, t)}
		m[k].add(from, cut, pivot)
		from = cut
	}
}

// add integrates one straight piece from a to b exactly:
//
//	∫F du = w (a + b)/2    ∫F² du = w (a² + ab + b²)/3
func (m *moments) add(from, to knot, pivot float64) {
	w := to.u.minus(from.u)
	a, b := from.f.shifted(-pivot), to.f.shifted(-pivot)
	m.width = m.width.plus(w)
	m.first = m.first.plus(w.times(a.plus(b)).scaled(1. / 2))
	m.second = m.second.plus(w.times(a.times(a.plus(b)).plus(b.times(b))).scaled(1. / 3))
	m.helps += w.v * shareBelow(from.f.v, to.f.v)
}

// shareBelow returns how much of a straight piece from a to b lies below 0.
func shareBelow(a, b float64) float64 {
	switch {
	case a >= 0 && b >= 0:
		return 0
	case a <= 0 && b <= 0:
		return 1
	}
	return min(a, b) / (min(a, b) - max(a, b))
}

func sum(m [3]moments) moments {
	s := m[0]
	for _, t := range m[1:] {
		s.width = s.width.plus(t.width)
		s.first = s.first.plus(t.first)
		s.second = s.second.plus(t.second)
		s.helps += t.helps
	}
	return s
}

// mean returns the mean force in N over the stretch; its width is not 0.
func (m moments) mean(pivot float64) dual { return m.first.over(m.width).shifted(pivot) }

// variance returns the mean square deviation of the force in N².
func (m moments) variance() dual {
	mean := m.first.over(m.width)
	return m.second.over(m.width).minus(mean.times(mean))
}

// work returns the work in J for a travel of the given length.
func (m moments) work(pivot float64, length dual) dual {
	return m.first.plus(m.width.scaled(pivot)).times(length)
}
