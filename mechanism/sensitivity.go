package mechanism

import (
	"errors"
	"math"

	"steelyard/planar"
)

// Drift is the exact first-order change of a sweep for one change of the
// description: columns of the sweep's length, zero where it has a gap.
type Drift struct {
	Hold       []float64 // N
	Travel     []float64 // m
	LoadTravel []float64 // m
	Contact    []vec     // m
}

// errShape says that two models cannot be compared position by position.
var errShape = errors.New("mechanism: the moved machine has other links, joints, ropes or loads; move numbers only")

// Drifts returns how the sweep changes, to first order, towards each of the same
// machines with some of their numbers moved: what the errors of measurements do
// to the curve.
//
// At each position the loops are differentiated twice: once for where a moved
// number takes the links, y with J·y = -Φₚ, and once for what it does to their
// rates, J·v′ = -(γ(v,y) + Φₚ′). Nothing is solved again and no step is taken,
// so the result is exact in the motion; where the description itself is curved
// in the number (an ellipse's axis, say) it is the chord from one to the other.
//
// It returns an error if a machine has other parts than the model, not only
// other numbers, or if the sweep is not the model's own.
func (md *Model) Drifts(sw *Sweep, moved []*Model) ([]*Drift, error) {
	st := md.NewState()
	all := make([]*variation, len(moved))
	for k, m := range moved {
		if !md.sameShape(m) {
			return nil, errShape
		}
		all[k] = newVariation(md, m, st, sw.Len())
	}
	for i := range sw.Len() {
		if !sw.Posed[i] {
			continue
		}
		if err := st.MoveTo(sw.Driver[i]); err != nil {
			return nil, err
		}
		for _, v := range all {
			v.record(sw, i)
		}
	}
	out := make([]*Drift, len(all))
	for k, v := range all {
		cumulate(v.drift.Travel, v.speed, sw)
		cumulate(v.drift.LoadTravel, v.load, sw)
		out[k] = v.drift
	}
	return out, nil
}

// variation is one change of the description, carried along the travel.
type variation struct {
	base, moved *Model
	st          *State
	y, vp       []twist   // by LinkID: change of place, and of rate, per unit change
	laidAtRest  []float64 // m, by line: explicit change of length at the measured pose
	stretch     float64   // of the driver's range: change of driver per unit of driver

	drift       *Drift
	speed, load []float64 // by position: change of the contact's and the load's speed
}

// newVariation takes the state in the measured pose.
func newVariation(base, moved *Model, st *State, n int) *variation {
	v := &variation{base: base, moved: moved, st: st, speed: make([]float64, n), load: make([]float64, n),
		drift: &Drift{make([]float64, n), make([]float64, n), make([]float64, n), make([]vec, n)}}
	v.y, v.vp = make([]twist, len(v.st.pose)), make([]twist, len(v.st.pose))
	v.laidAtRest = make([]float64, len(base.lines))
	for i := range v.laidAtRest {
		v.laidAtRest[i], _ = v.line(i)
	}
	a, b := base.machine.Drive, moved.machine.Drive
	v.stretch = (b.To-b.From)/(a.To-a.From) - 1
	return v
}

// record writes the changes at position i, where the state is.
func (v *variation) record(sw *Sweep, i int) {
	a, b := v.base.machine.Drive, v.moved.machine.Drive
	t := float64(i) / float64(sw.Len()-1)
	v.turn((1-t)*(b.From-a.From) + t*(b.To-a.To))
	at, speed := v.contact()
	v.drift.Contact[i] = at
	if sw.Stops[i] == nil {
		v.drift.Hold[i] = v.hold(sw.Hold[i], speed)
	}
	v.speed[i], v.load[i] = v.perPosition(speed, v.loadSpeed(), sw, i)
}

// turn solves for y and v′ at the state's pose, where the driver itself is
// moved by dq.
func (v *variation) turn(dq float64) {
	st := v.st
	for i := range st.model.groups {
		g, f := &st.model.groups[i], &st.groups[i]
		st.number(g)
		v.solve(g, f, v.y, func(c *constraint) (x, y float64) {
			x, y, _, _ = v.explicit(c)
			if c.kind == driven {
				x -= dq
			}
			return x, y
		})
		v.solve(g, f, v.vp, func(c *constraint) (x, y float64) {
			_, _, x, y = v.explicit(c)
			qx, qy := st.quadratic(c, st.vel, v.y)
			return x + qx, y + qy
		})
	}
}

// solve finds the group's motion with J·motion = -(rhs).
func (v *variation) solve(g *group, f *lu, motion []twist, rhs func(*constraint) (x, y float64)) {
	st := v.st
	b := st.column[:f.n]
	r := 0
	for _, ci := range g.constraints {
		c := &st.model.constraints[ci]
		x, y := rhs(c)
		b[r] = -x - st.placedShare(st.rows[c.row], motion)
		r++
		if c.kind.rows() == 2 {
			b[r] = -y - st.placedShare(st.rows[c.row+1], motion)
			r++
		}
	}
	f.solve(b)
	st.spread(g, b, motion)
}

// explicit returns Φₚ of the constraint's rows, with the links held still, and
// how it changes along the travel.
func (v *variation) explicit(c *constraint) (x, y, dx, dy float64) {
	st := v.st
	if c.kind == roped {
		length, rate := v.line(c.index)
		return length - v.laidAtRest[c.index], 0, rate, 0
	}
	j, k := &v.base.machine.Joints[c.index], &v.moved.machine.Joints[c.index]
	lean := float64(k.Along - j.Along)
	pa, pb := st.pose[j.A].Point(j.At), st.pose[j.B].Point(j.At)
	switch {
	case c.kind == pinned:
		shift := k.At.Sub(j.At)
		sa, sb := st.pose[j.A].Turn(shift), st.pose[j.B].Turn(shift)
		gap, rate := sb.Sub(sa), sb.Perp().Scale(st.vel[j.B].w).Sub(sa.Perp().Scale(st.vel[j.A].w))
		return gap.X, gap.Y, rate.X, rate.Y
	case j.Kind == Revolute:
		return 0, 0, 0, 0 // the driver of a pin
	}
	u := st.pose[j.A].Turn(planar.Polar(1, j.Along))
	slid := u.Dot(pb.Sub(pa))
	if c.kind == driven {
		return 0, 0, lean * st.vel[j.A].w * slid, 0
	}
	sliding := u.Dot(st.velocity(j.B, pb).Sub(st.velocity(j.A, pb)))
	return 0, -lean * slid, 0, -lean * sliding
}

// line returns the change of the line's length with the links held still, and
// how that changes along the travel. A station's shift counts along the spans
// that meet it; an outline grown by δh adds ∫δh dφ over the wrapped part.
// What an end's anchor adds is constant and left out.
func (v *variation) line(i int) (length, rate float64) {
	st := v.st
	base, moved, now := &v.base.lines[i], &v.moved.lines[i], &st.lines[i]
	for k := range now.spans {
		sp := &now.spans[k]
		a, b := &base.route[k], &base.route[k+1]
		sa := st.pose[a.Link].Turn(moved.route[k].At.Sub(a.At))
		sb := st.pose[b.Link].Turn(moved.route[k+1].At.Sub(b.At))
		swing := st.swing(i, k)
		wa, wb := st.vel[a.Link].w, st.vel[b.Link].w
		shift := sb.Sub(sa)
		length += sp.Unit.Dot(shift)
		rate += swing*sp.Unit.Perp().Dot(shift) + sp.Unit.Dot(sb.Perp().Scale(wb).Sub(sa.Perp().Scale(wa)))
		if a.Outline != nil {
			dl, dh := grown(a.Outline, moved.route[k].Outline, sp.NormalFrom)
			length += float64(a.Side) * dl
			rate += float64(a.Side) * dh * (swing - wa)
		}
		if b.Outline != nil {
			dl, dh := grown(b.Outline, moved.route[k+1].Outline, sp.NormalTo)
			length -= float64(b.Side) * dl
			rate -= float64(b.Side) * dh * (swing - wb)
		}
	}
	return length, rate
}

// swing returns how fast span k of a line turns per unit of driver.
func (st *State) swing(i, k int) float64 {
	l, sp := &st.model.lines[i], &st.lines[i].spans[k]
	d := st.velocity(l.route[k+1].Link, sp.To).Sub(st.velocity(l.route[k].Link, sp.From))
	return sp.Unit.Perp().Dot(d) / math.Max(sp.Length, shortest)
}

// grown returns ∫δh dφ from normal 0 to normal phi, and δh there, between an
// outline and its moved twin: the integral of h is the length less h′.
func grown(from, to planar.Outline, phi planar.Angle) (integral, dh float64) {
	if from == to {
		return 0, 0
	}
	h0, s0 := from.Support(phi)
	h1, s1 := to.Support(phi)
	return (to.Length(phi) - s1) - (from.Length(phi) - s0), h1 - h0
}

func (md *Model) sameShape(other *Model) bool {
	a, b := &md.machine, &other.machine
	if len(a.Links) != len(b.Links) || len(a.Joints) != len(b.Joints) || len(a.Weights) != len(b.Weights) ||
		len(a.Elements) != len(b.Elements) || len(a.Chains) != len(b.Chains) || len(md.lines) != len(other.lines) {
		return false
	}
	for i := range md.lines {
		if len(md.lines[i].route) != len(other.lines[i].route) {
			return false
		}
		for k := range md.lines[i].route {
			if (md.lines[i].route[k].Outline == nil) != (other.lines[i].route[k].Outline == nil) {
				return false
			}
		}
	}
	return true
}
