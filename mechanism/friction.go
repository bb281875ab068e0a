package mechanism

import (
	"math"

	"steelyard/planar"
)

// unitFriction adds the wrenches of a rubber's friction per newton of its load,
// along being the sign of the driver's motion.
func (st *State) unitFriction(r rubber, on []wrench, along float64) {
	if r.kind == rubRope {
		st.rubRope(r.index, on, along)
		return
	}
	f := &st.model.machine.Joints[r.index].Friction
	k := f.Coefficient
	if r.kind == rubPin {
		k *= f.Radius
	}
	st.resist(r.index, k, on, along)
}

// dragJoints adds the drag that joints have whatever their load.
func (st *State) dragJoints(on []wrench, along float64) {
	for i := range st.model.machine.Joints {
		if d := st.model.machine.Joints[i].Friction.Drag; d > 0 {
			st.resist(i, d, on, along)
		}
	}
}

// resist adds a moment (N·m) or force (N) against the joint's motion.
func (st *State) resist(joint int, amount float64, on []wrench, along float64) {
	j := &st.model.machine.Joints[joint]
	if j.Kind == Revolute {
		moment := -amount * direction(along*(st.vel[j.B].w-st.vel[j.A].w))
		on[j.B].m += moment
		on[j.A].m -= moment
		return
	}
	pb := st.pose[j.B].Point(j.At)
	u := st.pose[j.A].Turn(planar.Polar(1, j.Along))
	slide := u.Dot(st.velocity(j.B, pb).Sub(st.velocity(j.A, pb)))
	drag := u.Scale(-direction(along*slide) * amount)
	on[j.B] = on[j.B].plus(st.wrenchAt(j.B, pb, drag), 1)
	on[j.A] = on[j.A].plus(st.wrenchAt(j.A, pb, drag), -1)
}

// standing is the rate per unit of driver below which a joint or rope does not
// move against its neighbour, so that its friction has no direction.
const standing = 1e-12

func direction(rate float64) float64 {
	switch {
	case rate > standing:
		return 1
	case rate < -standing:
		return -1
	}
	return 0
}

// rubRope adds what sheaves take per newton in the first span: each span pulls
// with its own tension, so the difference acts beside the even tension that
// equilibrium knows.
func (st *State) rubRope(rope int, on []wrench, along float64) {
	st.tensionRatios(rope, along)
	terms := st.lines[rope].terms
	for t := range terms {
		on[terms[t].link] = on[terms[t].link].plus(terms[t].wrench, 1-st.ratios[t/2])
	}
}

// tensionRatios fills st.ratios with each span's tension over the first's. The
// tension rises in the direction in which the rope runs over a station.
func (st *State) tensionRatios(rope int, along float64) {
	l, now := &st.model.lines[rope], &st.lines[rope]
	ratio, paid := 1.0, 0.0 // paid: growth per unit of driver of the straight pieces so far
	for k := range now.spans {
		if k > 0 {
			wrap := math.Abs(float64(now.spans[k].Direction - now.spans[k-1].Direction))
			step := l.route[k].Loss.step(wrap)
			if d := direction(-along * paid); d > 0 { // runs towards the last station
				ratio *= step
			} else if d < 0 {
				ratio /= step
			}
		}
		st.ratios[k] = ratio
		paid += now.terms[2*k].power(st.vel[now.terms[2*k].link]) + now.terms[2*k+1].power(st.vel[now.terms[2*k+1].link])
	}
}

// step returns the tension ahead over the tension behind, ≥ 1, for a rope that
// turns by wrap (rad, ≥ 0) round the station.
//
// A bearing of coefficient μ and radius a in a sheave of radius r resists with
// μ·a·R, R being the resultant of both tensions: with f = μa/r and ratio ρ,
// (ρ-1)² = f²(1 + ρ² - 2ρ cos wrap). A post follows Euler and Eytelwein,
// exp(μ·wrap).
func (l RopeLoss) step(wrap float64) float64 {
	switch {
	case l.Efficiency > 0:
		return 1 / l.Efficiency
	case l.Slip > 0:
		return math.Exp(l.Slip * wrap)
	case l.Bearing > 0:
		f := l.Bearing * l.AxleOverRim
		a, b := 1-f*f, 1-f*f*math.Cos(wrap)
		return (b + math.Sqrt(math.Max(0, b*b-a*a))) / a
	}
	return 1
}
