package mechanism

import (
	"math"

	"steelyard/planar"
)

// Sense is the way the stroke goes.
type Sense int8

const (
	Hold  Sense = 0  // at rest, no friction
	Lift  Sense = 1  // from the start of the travel to its end, against friction
	Lower Sense = -1 // back again, friction helping
)

// slot returns where the sense's reactions are kept.
func (s Sense) slot() int { return int(s+3) % 3 }

// still is the rate in m of contact path per rad or m of driver below which
// the contact is taken as standing: no force there can move the machine.
const still = 1e-9

// path returns the contact's point, the unit tangent of its path towards the
// end of the travel, and its distance per unit of driver, ≥ 0.
func (st *State) path() (at, tangent vec, speed float64) {
	c := &st.model.machine.Contact
	at = st.pose[c.Link].Point(c.At)
	v := st.velocity(c.Link, at)
	speed = v.Norm()
	if speed > 0 {
		tangent = v.Scale(st.model.forward / speed)
	}
	return at, tangent, speed
}

// Force returns the force in N that the body must exert at the contact along
// its path, positive towards the end of the travel, for the loads at rest. It
// also leaves the joint reactions and rope tensions of that sense, for
// [State.Reaction] and [State.Tension]. Rates must be known.
//
// The force is from virtual work; the reactions from the equilibrium of every
// link under it. For a Hold that leaves nothing for the driven joint to carry,
// which [State.Imbalance] tells.
//
// It returns a *[Stop] where the contact stands still, a spring is beyond its
// range, or friction holds whatever the force. A slack rope is not an error
// here: see [State.Slack].
func (st *State) Force(sense Sense) (float64, error) {
	return st.force(sense, motion{})
}

func (st *State) force(sense Sense, mo motion) (float64, error) {
	if stop := st.applyLoads(mo); stop != nil {
		return 0, stop
	}
	at, tangent, speed := st.path()
	if speed < still {
		return 0, &Stop{Kind: DeadPoint, Part: "contact", Driver: st.q, Slides: st.slides(), Place: at,
			Detail: "it stands still while the machine moves", Cure: "end the travel before it"}
	}
	if sense == Hold || !st.model.rubs {
		f := st.balance(st.applied, at, tangent, speed)
		st.equilibrium(st.applied, at, tangent.Scale(f), st.lambda[sense.slot()])
		return f, nil
	}
	return st.rub(sense, at, tangent, speed)
}

// balance returns the contact force that keeps the wrenches' virtual work at
// nought.
func (st *State) balance(on []wrench, at, tangent vec, speed float64) float64 {
	return -st.power(on) / (st.model.forward * speed)
}

// equilibrium finds the force of every row that holds every link under the
// given wrenches and the contact force: Jᵀλ = -Q, group by group from the last
// placed to the first. Each group passes on to the links before it what its
// joints and ropes put on them.
func (st *State) equilibrium(on []wrench, at, contact vec, lambda []float64) {
	q := st.scratch
	copy(q, on)
	c := st.model.machine.Contact.Link
	q[c] = q[c].plus(st.wrenchAt(c, at, contact), 1)
	for i := len(st.groups) - 1; i >= 0; i-- {
		st.groupEquilibrium(&st.model.groups[i], &st.groups[i], q, lambda)
	}
}

func (st *State) groupEquilibrium(g *group, f *lu, q []wrench, lambda []float64) {
	st.number(g)
	b := st.column[:f.n]
	for i, l := range g.links {
		b[3*i], b[3*i+1], b[3*i+2] = -q[l].f.X, -q[l].f.Y, -q[l].m
	}
	f.solveT(b)
	r := 0
	for _, ci := range g.constraints {
		c := &st.model.constraints[ci]
		for k := range c.kind.rows() {
			lambda[c.row+k] = b[r]
			for _, t := range st.rows[c.row+k] {
				if st.local[t.link] < 0 {
					q[t.link] = q[t.link].plus(t.wrench, b[r])
				}
			}
			r++
		}
	}
}

// Reaction is what a joint transmits.
type Reaction struct {
	Force  vec     // N, on the joint's link B by A, ground frame, at the pin or slider
	Moment float64 // N·m, on B by A; prismatic joints only
}

// Reaction returns what the joint transmits, as left by the last Force of that
// sense. Friction's own share along the joint's motion is not in it.
func (st *State) Reaction(joint int, sense Sense) Reaction {
	c := &st.model.constraints[joint]
	l := st.lambda[sense.slot()]
	if c.kind == pinned {
		return Reaction{Force: vec{X: l[c.row], Y: l[c.row+1]}}
	}
	j := &st.model.machine.Joints[joint]
	n := st.pose[j.A].Turn(planar.Polar(1, j.Along)).Perp()
	return Reaction{n.Scale(l[c.row+1]), l[c.row]}
}

// Tension returns the rope's pull in N, as left by the last Force of that
// sense: of its first span, where friction makes them differ. Below zero the
// rope is slack and the force that was found with it means nothing.
func (st *State) Tension(rope int, sense Sense) float64 {
	c := &st.model.constraints[st.model.firstRope+rope]
	return -st.lambda[sense.slot()][c.row]
}

// slackTension is the push in N still taken as rounding of a slack rope.
const slackTension = -1e-9

// Slack returns a *[Stop] if a rope would have to push in that sense.
func (st *State) Slack(sense Sense) *Stop {
	m := &st.model.machine
	for i := range m.Ropes {
		t := st.Tension(i, sense)
		if t >= slackTension*math.Max(1, st.model.heaviness) {
			continue
		}
		sp := &st.lines[i].spans[0]
		return st.slackStop(st.model.lines[i].part, sp.From.Lerp(sp.To, 0.5), t)
	}
	return nil
}

// Imbalance returns the force in N or moment in N·m left for the driven joint
// to carry in the last Force of that sense. Virtual work and equilibrium agree
// when it is nought to rounding.
func (st *State) Imbalance(sense Sense) float64 {
	c := &st.model.constraints[len(st.model.machine.Joints)]
	return st.lambda[sense.slot()][c.row]
}

// Radius returns, for a station of a rope, the distance in m from its axis to
// the rope before it and after it: the moment arm there. At the route's ends
// both are that of the only span.
func (st *State) Radius(rope, station int) (before, after float64) {
	now := &st.lines[rope]
	axis := now.stations[station].At.Shift
	arm := func(sp *planar.Span) float64 { return math.Abs(sp.Unit.Cross(axis.Sub(sp.From))) }
	k := station
	before, after = arm(&now.spans[max(k-1, 0)]), arm(&now.spans[min(k, len(now.spans)-1)])
	return before, after
}
