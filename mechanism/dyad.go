package mechanism

import (
	"math"

	"steelyard/planar"
)

// dyad is a group with a closed form: the driven link itself, two links
// pinned to each other and to what is already placed, or a rod and its slider.
type dyad struct {
	kind   dyadKind
	joint  int     // of the driven link, or the one joining the dyad's two links
	i, j   LinkID  // i is pinned to a at its outer end; j is pinned to b, or slides
	a, b   vec     // m, outer pins at the measured pose
	c      vec     // m, the pin between i and j at the measured pose
	la, lb LinkID  // placed links that carry a and b (or the guide)
	along  vec     // unit, guide direction at the measured pose
	branch float64 // +1: c lies left of a→b (or ahead of a's foot along the guide); -1 otherwise
	r, s   float64 // m, length a–c and b–c
}

type dyadKind uint8

const (
	drivenTurn dyadKind = iota
	drivenSlide
	twoRods
	rodAndSlider
)

// contact is the relative gap still taken as links in line, so that rounding
// cannot turn a dead point into links that do not meet.
const contact = 1e-12

// findDyad recognises a group that has a closed form; nil if it has none.
func (md *Model) findDyad(g *group) *dyad {
	var joints []int
	isDriven := false
	for _, c := range g.constraints {
		switch k := &md.constraints[c]; k.kind {
		case pinned, guided:
			joints = append(joints, k.index)
		case driven:
			isDriven = true
		default:
			return nil
		}
	}
	switch {
	case len(g.links) == 1 && isDriven && len(joints) == 1 && joints[0] == md.machine.Drive.Joint:
		return md.drivenLink(joints[0], g.links[0])
	case len(g.links) == 2 && !isDriven && len(joints) == 3:
		return md.closedDyad(joints, g.links[0], g.links[1])
	}
	return nil
}

func (md *Model) drivenLink(joint int, link LinkID) *dyad {
	j := &md.machine.Joints[joint]
	d := &dyad{kind: drivenTurn, joint: joint, i: link, la: j.A, a: j.At, along: planar.Polar(1, j.Along), branch: 1}
	if j.Kind == Prismatic {
		d.kind = drivenSlide
	}
	if link == j.A { // the placed link is B: the driver turns A backwards
		if j.Kind == Prismatic {
			return nil
		}
		d.la, d.branch = j.B, -1
	}
	return d
}

// closedDyad recognises two rods, or a rod and a slider, among three joints.
func (md *Model) closedDyad(joints []int, i, j LinkID) *dyad {
	var inner, onI, onJ *Joint
	for _, k := range joints {
		jt := &md.machine.Joints[k]
		hasI, hasJ := jt.A == i || jt.B == i, jt.A == j || jt.B == j
		switch {
		case hasI && hasJ:
			inner = jt
		case hasI:
			onI = jt
		default:
			onJ = jt
		}
	}
	if inner == nil || onI == nil || onJ == nil || inner.Kind != Revolute {
		return nil
	}
	if onI.Kind == Prismatic {
		i, j, onI, onJ = j, i, onJ, onI
	}
	if onI.Kind == Prismatic {
		return nil // two sliders: left to Newton
	}
	d := &dyad{i: i, j: j, a: onI.At, b: onJ.At, c: inner.At, la: other(onI, i), lb: other(onJ, j)}
	d.r, d.s = d.c.Sub(d.a).Norm(), d.c.Sub(d.b).Norm()
	if onJ.Kind == Prismatic {
		d.kind, d.along = rodAndSlider, planar.Polar(1, onJ.Along)
		d.branch = sign(d.c.Sub(d.a).Dot(d.along))
	} else {
		d.kind = twoRods
		d.branch = sign(d.b.Sub(d.a).Cross(d.c.Sub(d.a)))
	}
	if d.r == 0 || (d.kind == twoRods && d.s == 0) {
		return nil
	}
	return d
}

func other(j *Joint, l LinkID) LinkID {
	if j.A == l {
		return j.B
	}
	return j.A
}

func sign(x float64) float64 {
	if x < 0 {
		return -1
	}
	return 1
}

// place puts the dyad where it belongs for driver q. It returns false if its
// links cannot meet.
func (d *dyad) place(st *State, q float64) bool {
	switch d.kind {
	case drivenTurn:
		base := st.pose[d.la]
		st.setTurn(d.i, st.turn[d.la]+d.branch*q, d.a, base.Point(d.a))
		return true
	case drivenSlide:
		base := st.pose[d.la]
		st.setTurn(d.i, st.turn[d.la], d.a, base.Point(d.a.Add(d.along.Scale(q))))
		return true
	case twoRods:
		a, b := st.pose[d.la].Point(d.a), st.pose[d.lb].Point(d.b)
		c, ok := meet(a, b, d.r, d.s, d.branch)
		if ok {
			st.setRod(d.i, d.a, d.c, a, c)
			st.setRod(d.j, d.b, d.c, b, c)
		}
		return ok
	default:
		a, base := st.pose[d.la].Point(d.a), st.pose[d.lb]
		c, ok := meetLine(a, base.Point(d.c), base.Turn(d.along), d.r, d.branch)
		if ok {
			st.setRod(d.i, d.a, d.c, a, c)
			st.setTurn(d.j, st.turn[d.lb], d.c, c)
		}
		return ok
	}
}

// meet returns the pin joining rods of lengths r and s (m, > 0) whose other
// ends are pinned at a and b, on the left of a→b for branch +1, right for -1.
// At a dead point both branches give the same pin, good to about 1e-7 m.
//
// Source: intersection of two circles by their common chord.
func meet(a, b vec, r, s, branch float64) (vec, bool) {
	d := b.Sub(a)
	l := d.Norm()
	if l == 0 || l > (r+s)*(1+contact) || l < math.Abs(r-s)*(1-contact) {
		return vec{}, false
	}
	// The chord cuts a→b at distance e from a; h is half of it.
	//   e = (l² + r² - s²) / 2l
	//   h = √(r² - e²), factored so that it stays accurate as e → r
	e := (l*l + (r-s)*(r+s)) / (2 * l)
	h := branch * math.Sqrt(max(0, (r-e)*(r+e)))
	u := d.Scale(1 / l)
	return vec{X: a.X + e*u.X - h*u.Y, Y: a.Y + e*u.Y + h*u.X}, true
}

// meetLine returns the point at distance r from a on the line through p along
// the unit vector u, ahead of a's foot for branch +1, behind it for -1.
func meetLine(a, p, u vec, r, branch float64) (vec, bool) {
	d := a.Sub(p)
	foot, off := d.Dot(u), u.Cross(d)
	if math.Abs(off) > r*(1+contact) {
		return vec{}, false
	}
	return p.Add(u.Scale(foot + branch*math.Sqrt(max(0, (r-off)*(r+off))))), true
}

// setTurn places the link turned by turn with its point p now at at.
func (st *State) setTurn(l LinkID, turn float64, p, at vec) {
	m := planar.TurnThenShift(planar.Angle(turn), vec{})
	m.Shift = at.Sub(m.Turn(p))
	st.pose[l], st.turn[l] = m, turn
}

// setRod places the link with its points p and q now at a and b.
func (st *State) setRod(l LinkID, p, q, a, b vec) {
	from, to := q.Sub(p), b.Sub(a)
	k := 1 / from.Dot(from)
	cos, sin := from.Dot(to)*k, from.Cross(to)*k
	n := 1 / math.Sqrt(cos*cos+sin*sin)
	m := planar.Motion{Cos: cos * n, Sin: sin * n}
	m.Shift = a.Sub(m.Turn(p))
	st.pose[l] = m
	st.turn[l] = float64(m.Angle().Near(planar.Angle(st.turn[l])))
}
