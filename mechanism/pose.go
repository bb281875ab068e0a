package mechanism

import (
	"fmt"
	"math"

	"steelyard/planar"
)

const (
	longestStep = 0.15  // rad or m of driver, taken at once on the way to a pose
	finestStep  = 1e-10 // rad or m, to which the end of reach is narrowed
)

// MoveTo follows the mechanism to driver coordinate q, in rad or m from the
// measured pose, carrying the branch, and leaves its rates known. It returns a
// *[Stop] where the machine cannot follow; the state then rests at the last
// pose it could reach.
//
// A step that does not close is halved until halving no longer helps: that is
// the end of reach, found to 1e-10 rad or m. Steps that close grow again.
func (st *State) MoveTo(q float64) error {
	if !finite(q) {
		return &Stop{Kind: OutOfReach, Part: "machine", Driver: st.q, Slides: st.slides(), Place: st.contactPoint(),
			Detail: fmt.Sprintf("it was sent to %g", q), Cure: "check the travel"}
	}
	step := longestStep
	for st.q != q {
		next := st.q + math.Copysign(step, q-st.q)
		if math.Abs(q-st.q) <= step {
			next = q
		}
		st.save()
		stop := st.pass(next)
		if stop == nil {
			stop = asStop(st.Rates())
		}
		if stop == nil {
			stop = st.branchLost()
		}
		if stop == nil {
			step = math.Min(2*step, longestStep)
			continue
		}
		st.retreat()
		if step = math.Min(step, math.Abs(q-st.q)) / 2; step < finestStep {
			stop.Driver = st.q
			return stop
		}
	}
	return nil
}

// retreat returns to the saved pose, with its lines, rates and factors.
func (st *State) retreat() {
	st.restore()
	st.layLines(0, len(st.lines))
	_ = st.Rates() // they were found there before
}

// pass places every group for driver q in one step from the present pose,
// whose rates must be known.
func (st *State) pass(q float64) *Stop {
	dq := q - st.q
	st.q = q
	for i := range st.model.groups {
		g := &st.model.groups[i]
		if g.dyad != nil {
			if !g.dyad.place(st, q) {
				return st.stopDyad(g)
			}
			continue
		}
		st.predict(g, dq)
		if stop := st.newton(g, &st.groups[i]); stop != nil {
			return stop
		}
	}
	return st.layLines(len(st.model.machine.Ropes), len(st.lines))
}

// equation evaluates one constraint: its residuals, and its rows as wrenches.
func (st *State) equation(c *constraint) *Stop {
	switch c.kind {
	case pinned:
		st.pinEquation(c)
	case guided:
		st.guideEquation(c)
	case driven:
		st.driveEquation(c)
	default:
		if stop := st.layLines(c.index, c.index+1); stop != nil {
			return stop
		}
		st.resid[c.row] = st.lines[c.index].length - st.model.lines[c.index].length
	}
	return nil
}

// pinEquation: the pin's centre on B coincides with that on A. The row's force
// is that on B by A.
func (st *State) pinEquation(c *constraint) {
	j := &st.model.machine.Joints[c.index]
	pa, pb := st.pose[j.A].Point(j.At), st.pose[j.B].Point(j.At)
	gap := pb.Sub(pa)
	st.resid[c.row], st.resid[c.row+1] = gap.X, gap.Y
	ra, rb := pa.Sub(st.pose[j.A].Shift), pb.Sub(st.pose[j.B].Shift)
	x, y := st.rows[c.row], st.rows[c.row+1]
	x[0].wrench, x[1].wrench = wrench{vec{X: -1}, ra.Y}, wrench{vec{X: 1}, -rb.Y}
	y[0].wrench, y[1].wrench = wrench{vec{Y: -1}, -ra.X}, wrench{vec{Y: 1}, rb.X}
}

// guideEquation: B neither turns against A nor leaves the guide line. The
// rows' forces are the moment and the push across the guide on B by A.
func (st *State) guideEquation(c *constraint) {
	j := &st.model.machine.Joints[c.index]
	pb := st.pose[j.B].Point(j.At)
	n := st.pose[j.A].Turn(planar.Polar(1, j.Along)).Perp()
	st.resid[c.row] = st.turn[j.B] - st.turn[j.A]
	st.resid[c.row+1] = n.Dot(pb.Sub(st.pose[j.A].Point(j.At)))
	turn, off := st.rows[c.row], st.rows[c.row+1]
	turn[0].wrench, turn[1].wrench = wrench{m: -1}, wrench{m: 1}
	off[0].wrench, off[1].wrench = st.wrenchAt(j.A, pb, n.Neg()), st.wrenchAt(j.B, pb, n)
}

// driveEquation: the driven joint stands at q.
func (st *State) driveEquation(c *constraint) {
	j := &st.model.machine.Joints[c.index]
	row := st.rows[c.row]
	if j.Kind == Revolute {
		st.resid[c.row] = st.turn[j.B] - st.turn[j.A] - st.q
		row[0].wrench, row[1].wrench = wrench{m: -1}, wrench{m: 1}
		return
	}
	pb := st.pose[j.B].Point(j.At)
	u := st.pose[j.A].Turn(planar.Polar(1, j.Along))
	st.resid[c.row] = u.Dot(pb.Sub(st.pose[j.A].Point(j.At))) - st.q
	row[0].wrench, row[1].wrench = st.wrenchAt(j.A, pb, u.Neg()), st.wrenchAt(j.B, pb, u)
}

// layLines lays the lines numbered from lo to hi along the present pose.
func (st *State) layLines(lo, hi int) *Stop {
	for i := lo; i < hi; i++ {
		if stop := st.layLine(i); stop != nil {
			return stop
		}
	}
	return nil
}

func (st *State) layLine(i int) *Stop {
	l, now := &st.model.lines[i], &st.lines[i]
	for k := range l.route {
		if s := &l.route[k]; s.Link != Ground {
			w := &now.stations[k]
			m := st.pose[s.Link]
			m.Shift = m.Point(s.At)
			w.At, w.Turn = m, planar.Angle(st.turn[s.Link])
		}
	}
	for k := range now.spans {
		if err := planar.CommonTangent(&now.stations[k], &now.stations[k+1], now.spans[k].Direction, &now.spans[k]); err != nil {
			return st.stopLine(i, k, err)
		}
		sp := &now.spans[k]
		a, b := l.route[k].Link, l.route[k+1].Link
		now.terms[2*k] = term{a, st.wrenchAt(a, sp.From, sp.Unit.Neg())}
		now.terms[2*k+1] = term{b, st.wrenchAt(b, sp.To, sp.Unit)}
	}
	now.length = l.lay(now.spans)
	return nil
}
