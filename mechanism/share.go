package mechanism

import "math"

// Share is what one source of load asks of the contact by itself, frictionless.
type Share struct {
	Name  string
	Kind  ShareKind
	Link  LinkID  // that carries it; Ground for an element
	At    vec     // m, where it acts now; of an element the middle of its first span
	Force float64 // N at the contact along its path; the shares add up to the holding force
	Rise  float64 // of a weight: m risen per m of contact travel; of an element: m lengthened
}

// ShareKind tells what kind of source it is.
type ShareKind uint8

const (
	OwnWeight ShareKind = iota // of a link
	LoadWeight
	Elastic // spring, band, steady pull
	ChainWeight
)

// Shares returns the shares of every source at the present pose, in the order
// links, weights, elements, chains. Rates must be known and the contact must
// move.
func (st *State) Shares() []Share {
	md := st.model
	_, _, speed := st.path()
	per := md.forward / speed // d/ds of something per unit of driver
	var all []Share
	weight := func(kind ShareKind, name string, l LinkID, measured vec, mass float64) {
		p := st.pose[l].Point(measured)
		rise := st.velocity(l, p).Y * per
		g := md.gravity[0]
		if md.bodies[l].upright {
			g = md.gravity[1]
		}
		all = append(all, Share{name, kind, l, p, mass * g * rise, rise})
	}
	for i := range md.machine.Links {
		if l := &md.machine.Links[i]; l.Mass > 0 {
			weight(OwnWeight, l.Name, LinkID(i+1), l.Center, l.Mass)
		}
	}
	for i := range md.machine.Weights {
		if w := &md.machine.Weights[i]; w.Mass > 0 && w.Link != Ground {
			weight(LoadWeight, w.Name, w.Link, w.At, w.Mass)
		}
	}
	for i := range md.machine.Elements {
		all = append(all, st.elasticShare(i, per))
	}
	for i := range md.machine.Chains {
		c := &md.machine.Chains[i]
		length, _ := c.lifted(st.pose[c.Link].Point(c.At).Y, md.upward(c.Link))
		weight(ChainWeight, c.Name, c.Link, c.At, c.Density*length)
	}
	return all
}

func (st *State) elasticShare(i int, per float64) Share {
	e := &st.model.machine.Elements[i]
	s := Share{Name: e.Name, Kind: Elastic}
	if k := st.model.lineOf[i]; k >= 0 {
		now := &st.lines[k]
		pull, _ := e.Law.Pull(now.length, 0)
		s.At, s.Rise = now.spans[0].From.Lerp(now.spans[0].To, 0.5), now.rate*per
		s.Force = pull * s.Rise
		return s
	}
	j := &st.model.machine.Joints[e.Joint]
	moment, _ := e.Law.Pull(st.turn[j.B]-st.turn[j.A], 0)
	s.At = st.pose[j.A].Point(j.At)
	s.Force = moment * (st.vel[j.B].w - st.vel[j.A].w) * per
	return s
}

// turning is the turn per unit of driver below which a link is taken as
// sliding, with no centre within reach.
const turning = 1e-6

// Center returns the point about which the link turns at this instant: its
// axis if it is pinned to the ground, else its instant centre. It returns
// false for a link that only slides. Rates must be known.
func (st *State) Center(l LinkID) (vec, bool) {
	t := &st.vel[l]
	if math.Abs(t.w) < turning {
		return vec{}, false
	}
	// v + ω×(p - o) = 0
	o := st.pose[l].Shift
	return vec{X: o.X - t.v.Y/t.w, Y: o.Y + t.v.X/t.w}, true
}

// Arms returns the two lengths that decide what a weight on a link asks of the
// contact on the same link: the weight's level distance from the link's centre
// of turning, positive forward, and the distance from that centre to the line
// of the contact force, both in m.
func (st *State) Arms(l LinkID, weight vec) (load, contact float64, ok bool) {
	c, ok := st.Center(l)
	if !ok || l != st.model.machine.Contact.Link {
		return 0, 0, false
	}
	at, tangent, _ := st.path()
	return weight.X - c.X, math.Abs(at.Sub(c).Cross(tangent)), true
}

// Spans returns the straight pieces of line i of [Machine.Lines].
func (st *State) Spans(i int) []Straight {
	now := &st.lines[i]
	out := make([]Straight, len(now.spans))
	for k := range now.spans {
		out[k] = Straight{now.spans[k].From, now.spans[k].To}
	}
	return out
}

// Straight is a straight piece of rope between two places, m.
type Straight struct{ From, To vec }
