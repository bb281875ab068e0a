package mechanism

import (
	"math"

	"steelyard/planar"
)

// Rates computes, at the present pose, how every link moves per unit of driver
// and its second derivative, and leaves each group factored for equilibrium.
// It returns a *[Stop] at a dead point.
//
// Each group's rows J give J·v = b, with b one for the driver and otherwise
// what the links placed before bring in, and J·a = -γ, with γ the part of the
// second derivative that is quadratic in v.
func (st *State) Rates() error {
	for i := range st.model.constraints {
		c := &st.model.constraints[i]
		switch c.kind { // ropes' rows were laid with the pose
		case pinned:
			st.pinEquation(c)
		case guided:
			st.guideEquation(c)
		case driven:
			st.driveEquation(c)
		}
	}
	for i := range st.model.groups {
		g, f := &st.model.groups[i], &st.groups[i]
		if _, ok := st.factorGroup(g, f); !ok {
			return st.stopGroup(DeadPoint, g, "the links are in line, motion or force is lost", "end the travel before it")
		}
		st.groupVelocity(g, f)
		st.groupAcceleration(g, f)
	}
	for i := range st.lines {
		now := &st.lines[i]
		now.rate = 0
		for k := range now.terms {
			now.rate += now.terms[k].power(st.vel[now.terms[k].link])
		}
	}
	return nil
}

// factorGroup assembles the group's rows into its matrix and factors it.
func (st *State) factorGroup(g *group, f *lu) (float64, bool) {
	st.number(g)
	clear(f.a)
	r := 0
	for _, ci := range g.constraints {
		c := &st.model.constraints[ci]
		for k := range c.kind.rows() {
			row := f.a[r*f.n : (r+1)*f.n]
			for _, t := range st.rows[c.row+k] {
				if at := st.local[t.link]; at >= 0 {
					row[at] += t.f.X
					row[at+1] += t.f.Y
					row[at+2] += t.m
				}
			}
			r++
		}
	}
	return f.factor()
}

// number gives the group's links their columns and all others none.
func (st *State) number(g *group) {
	for i := range st.local {
		st.local[i] = -1
	}
	for i, l := range g.links {
		st.local[l] = 3 * i
	}
}

func (st *State) groupVelocity(g *group, f *lu) {
	b := st.column[:f.n]
	r := 0
	for _, ci := range g.constraints {
		c := &st.model.constraints[ci]
		for k := range c.kind.rows() {
			b[r] = -st.placedShare(st.rows[c.row+k], st.vel)
			if c.kind == driven {
				b[r]++
			}
			r++
		}
	}
	f.solve(b)
	st.spread(g, b, st.vel)
}

func (st *State) groupAcceleration(g *group, f *lu) {
	b := st.column[:f.n]
	r := 0
	for _, ci := range g.constraints {
		c := &st.model.constraints[ci]
		gx, gy := st.quadratic(c, st.vel, st.vel)
		b[r] = -gx - st.placedShare(st.rows[c.row], st.acc)
		r++
		if c.kind.rows() == 2 {
			b[r] = -gy - st.placedShare(st.rows[c.row+1], st.acc)
			r++
		}
	}
	f.solve(b)
	st.spread(g, b, st.acc)
}

// placedShare returns what the links outside the group being solved bring into
// a row.
func (st *State) placedShare(row []term, motion []twist) float64 {
	s := 0.0
	for i := range row {
		if l := row[i].link; l != Ground && st.local[l] < 0 {
			s += row[i].power(motion[l])
		}
	}
	return s
}

func (st *State) spread(g *group, b []float64, motion []twist) {
	for i, l := range g.links {
		motion[l] = twist{vec{X: b[3*i], Y: b[3*i+1]}, b[3*i+2]}
	}
}

// quadratic returns γ of the constraint's rows: the part of their second
// derivative, once along each of two motions of the links, that does not
// depend on the motions' own second derivative.
func (st *State) quadratic(c *constraint, one, two []twist) (x, y float64) {
	if c.kind == roped {
		return st.lineQuadratic(c.index, one, two), 0
	}
	j := &st.model.machine.Joints[c.index]
	pb := st.pose[j.B].Point(j.At)
	d := st.centripetal(j.B, pb, one, two).Sub(st.centripetal(j.A, pb, one, two))
	if c.kind == pinned {
		return d.X, d.Y
	}
	if j.Kind == Revolute {
		return 0, 0 // the driver of a pin
	}
	u := st.pose[j.A].Turn(planar.Polar(1, j.Along))
	slide := func(m []twist) float64 { return u.Dot(st.moves(j.B, pb, m).Sub(st.moves(j.A, pb, m))) }
	if c.kind == driven {
		// u turns with A, and across u the slider does not move against A.
		return u.Dot(d), 0
	}
	// Sliding along a turning guide adds the Coriolis term 2ωṡ across it.
	return 0, u.Perp().Dot(d) - one[j.A].w*slide(two) - two[j.A].w*slide(one)
}

// centripetal returns -ω²r of the material point of the link now at p, one ω
// from each motion.
func (st *State) centripetal(l LinkID, p vec, one, two []twist) vec {
	o, k := &st.pose[l].Shift, -one[l].w*two[l].w
	return vec{X: k * (p.X - o.X), Y: k * (p.Y - o.Y)}
}

// moves returns how the material point of the link now at p moves in the given
// motion of all links.
func (st *State) moves(l LinkID, p vec, m []twist) vec {
	t, o := &m[l], &st.pose[l].Shift
	return vec{X: t.v.X - t.w*(p.Y-o.Y), Y: t.v.Y + t.w*(p.X-o.X)}
}

// shortest is the span length in m below which a span's turning is left out:
// outlines that touch roll on each other there.
const shortest = 1e-9

// lineQuadratic returns the part of a line's second derivative that does not
// depend on accelerations. With d the direction of a span, n across it and ℓ
// its length,
//
//	L″ = Σ (n·Δv)²/ℓ + d·Δa,
//
// where Δ is between the material points at the two ends. The touching points
// also slide along the outlines, but only along d, and ω times that is across d.
func (st *State) lineQuadratic(i int, one, two []twist) float64 {
	l, now := &st.model.lines[i], &st.lines[i]
	sum := 0.0
	for k := range now.spans {
		a, b := l.route[k].Link, l.route[k+1].Link
		if a == Ground && b == Ground {
			continue
		}
		sp := &now.spans[k]
		n := sp.Unit.Perp()
		across1 := n.Dot(st.moves(b, sp.To, one).Sub(st.moves(a, sp.From, one)))
		across2 := n.Dot(st.moves(b, sp.To, two).Sub(st.moves(a, sp.From, two)))
		sum += across1 * across2 / math.Max(sp.Length, shortest)
		sum += sp.Unit.Dot(st.centripetal(b, sp.To, one, two).Sub(st.centripetal(a, sp.From, one, two)))
	}
	return sum
}
