package mechanism

import (
	"math"

	"steelyard/planar"
)

// Friction follows the reactions and the reactions follow friction, so both
// are found in turns, until the contact force no longer changes.
const (
	rubTurns  = 200
	rubSettle = 1e-12 // relative change of the contact force taken as settled
)

// rub returns the contact force with friction in the given sense, and leaves
// the reactions under it. It returns a *[Stop] if the turns do not settle: the
// machine binds.
func (st *State) rub(sense Sense, at, tangent vec, speed float64) (float64, error) {
	lambda := st.lambda[sense.slot()]
	f := st.balance(st.applied, at, tangent, speed)
	st.equilibrium(st.applied, at, tangent.Scale(f), lambda)
	along := st.model.forward * float64(sense)
	frictionless := f
	for range rubTurns {
		on := st.rubbed
		copy(on, st.applied)
		st.rubJoints(on, lambda, along)
		st.rubRopes(on, lambda, along)
		next := st.balance(on, at, tangent, speed)
		st.equilibrium(on, at, tangent.Scale(next), lambda)
		if math.Abs(next-f) <= rubSettle*math.Max(math.Abs(next), st.model.heaviness) {
			return next, nil
		}
		f = next
	}
	return 0, st.bindStop(at, frictionless)
}

// rubJoints adds each joint's friction, along being the sign of the driver's
// motion. A pin's moment is μ·r·R with R its reaction; a slider's drag μ·N,
// where a tipping moment M over a bearing of length b presses with 2M/b.
func (st *State) rubJoints(on []wrench, lambda []float64, along float64) {
	for i := range st.model.machine.Joints {
		j := &st.model.machine.Joints[i]
		f := &j.Friction
		if *f == (JointFriction{}) {
			continue
		}
		row := st.model.constraints[i].row
		if j.Kind == Revolute {
			moment := f.Coefficient*f.Radius*math.Hypot(lambda[row], lambda[row+1]) + f.Drag
			moment *= -direction(along * (st.vel[j.B].w - st.vel[j.A].w))
			on[j.B].m += moment
			on[j.A].m -= moment
			continue
		}
		press := math.Abs(lambda[row+1])
		if f.Bearing > 0 {
			press = math.Max(press, 2*math.Abs(lambda[row])/f.Bearing)
		}
		pb := st.pose[j.B].Point(j.At)
		u := st.pose[j.A].Turn(planar.Polar(1, j.Along))
		slide := u.Dot(st.velocity(j.B, pb).Sub(st.velocity(j.A, pb)))
		drag := u.Scale(-direction(along*slide) * (f.Coefficient*press + f.Drag))
		on[j.B] = on[j.B].plus(st.wrenchAt(j.B, pb, drag), 1)
		on[j.A] = on[j.A].plus(st.wrenchAt(j.A, pb, drag), -1)
	}
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

// rubRopes adds what sheaves take: each span pulls with its own tension, that
// of the first span times the losses between, so the difference acts beside
// the even tension that equilibrium knows.
func (st *State) rubRopes(on []wrench, lambda []float64, along float64) {
	md := st.model
	for i := range md.machine.Ropes {
		if !md.lossy[i] {
			continue
		}
		st.tensionRatios(i, along)
		tension := -lambda[md.constraints[md.firstRope+i].row]
		terms := st.lines[i].terms
		for t := range terms {
			extra := tension * (st.ratios[t/2] - 1)
			on[terms[t].link] = on[terms[t].link].plus(terms[t].wrench, -extra)
		}
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
