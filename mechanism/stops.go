package mechanism

import (
	"fmt"
	"math"
	"strings"
)

// resting is the speed of the contact, relative to what it had a position
// earlier, below which it is taken as resting where it turns: found to 1e-10 rad
// or m of driver it is far less, and on a bend far more.
const resting = 1e-4

// slides reports whether the driver is a slide, measured in m.
func (st *State) slides() bool {
	m := &st.model.machine
	return m.Joints[m.Drive.Joint].Kind == Prismatic
}

func (st *State) groupName(g *group) string {
	names := make([]string, len(g.links))
	for i, l := range g.links {
		names[i] = st.model.linkName(l)
	}
	return strings.Join(names, " with ")
}

// stopGroup makes a Stop for a group of links, placed at a pin between two of
// them where there is one.
func (st *State) stopGroup(kind StopKind, g *group, detail, cure string) *Stop {
	s := &Stop{Kind: kind, Part: st.groupName(g), Driver: st.q, Slides: st.slides(), Detail: detail, Cure: cure}
	s.Place = st.pose[g.links[0]].Point(st.model.bodies[g.links[0]].center)
	st.number(g)
	inner := false
	for _, ci := range g.constraints {
		c := &st.model.constraints[ci]
		if c.kind != pinned && c.kind != guided || inner {
			continue
		}
		j := &st.model.machine.Joints[c.index]
		s.Place = st.pose[j.B].Point(j.At)
		inner = st.local[j.A] >= 0 && st.local[j.B] >= 0
	}
	return s
}

// stopDyad says where the dyad's links came in line, beyond which they do not
// meet.
func (st *State) stopDyad(g *group) *Stop {
	d := g.dyad
	a, b := st.pose[d.la].Point(d.a), st.pose[d.lb].Point(d.b)
	s := &Stop{Kind: DeadPoint, Part: st.groupName(g), Driver: st.q, Slides: st.slides(),
		Cure: "end the travel before it, or check the points and lengths"}
	if d.kind == rodAndSlider {
		base := st.pose[d.lb]
		p, u := base.Point(d.c), base.Turn(d.along)
		s.Place = p.Add(u.Scale(a.Sub(p).Dot(u)))
		s.Detail = fmt.Sprintf("the rod of %.1f mm stands square to the guide and reaches no further", d.r*1000)
		return s
	}
	span := b.Sub(a)
	l := span.Norm()
	s.Place = a
	if l > 0 { // where the common chord of both circles shrinks to a point
		s.Place = a.Add(span.Scale((1 + (d.r-d.s)*(d.r+d.s)/(l*l)) / 2))
	}
	s.Detail = fmt.Sprintf("links of %.1f mm and %.1f mm in line across %.1f mm", d.r*1000, d.s*1000, l*1000)
	return s
}

func (st *State) contactVelocity() vec {
	return st.velocity(st.model.machine.Contact.Link, st.contactPoint())
}

// turnsBack returns a Stop if between driver q, where the contact had the
// velocity before, and here it came to rest and turned back, and nil if it only
// went round a bend. In either case the state is left here.
func (st *State) turnsBack(q float64, before vec) error {
	here := st.q
	behind, beyond := q, here
	for math.Abs(beyond-behind) > finestStep {
		middle := (behind + beyond) / 2
		if err := st.MoveTo(middle); err != nil {
			return err
		}
		if st.contactVelocity().Dot(before) > 0 {
			behind = middle
		} else {
			beyond = middle
		}
	}
	if st.contactVelocity().Norm() > resting*before.Norm() {
		return st.MoveTo(here)
	}
	stop := &Stop{Kind: DeadPoint, Part: "contact", Driver: st.q, Slides: st.slides(), Place: st.contactPoint(),
		Detail: "it comes to rest and turns back while the machine moves on", Cure: "end the travel before it"}
	if err := st.MoveTo(here); err != nil {
		return err
	}
	return stop
}

func (st *State) stopLine(i, k int, err error) *Stop {
	l, now := &st.model.lines[i], &st.lines[i]
	a, b := &l.route[k], &l.route[k+1]
	return &Stop{Kind: RopeThrough, Part: l.part, Driver: st.q, Slides: st.slides(), Place: now.stations[k+1].At.Shift,
		Detail: fmt.Sprintf("between %q and %q: %s", a.Name, b.Name, tangentProblem(err)),
		Cure:   "end the travel before it, or move what it runs round"}
}

// ropeOff returns a Stop if a rope has run off the outline that ends it, or
// lifts off one between.
func (st *State) ropeOff() *Stop {
	for i := range st.lines {
		l := &st.model.lines[i]
		for k := range l.route {
			if left := l.lies(k, st.lines[i].spans); left < -closedLoose {
				return st.stopOff(i, k, -left)
			}
		}
	}
	return nil
}

func (st *State) stopOff(i, k int, missing float64) *Stop {
	l := &st.model.lines[i]
	s := &Stop{Kind: RopeOff, Part: l.part, Driver: st.q, Slides: st.slides(), Place: st.lines[i].stations[k].At.Shift,
		Detail: fmt.Sprintf("%.1f mm more rope is wanted than is wound on %q", missing*1000, l.route[k].Name),
		Cure:   "end the travel before it, or anchor the rope further round"}
	if k > 0 && k < len(l.route)-1 {
		s.Detail = fmt.Sprintf("it lifts off %q and would pass it straight", l.route[k].Name)
		s.Cure = "end the travel before it, or leave out what the rope does not touch"
	}
	return s
}

func (st *State) springSpent(part string, length float64) *Stop {
	return &Stop{Kind: SpringSpent, Part: part, Driver: st.q, Slides: st.slides(), Place: st.contactPoint(),
		Detail: fmt.Sprintf("it is %.1f mm long", length*1000), Cure: "end the travel before it, or check its stroke and lengths"}
}

func (st *State) slackStop(part string, at vec, tension float64) *Stop {
	return &Stop{Kind: RopeSlack, Part: part, Driver: st.q, Slides: st.slides(), Place: at,
		Detail: fmt.Sprintf("it would have to push with %.1f N", -tension), Cure: "check the side it is tied to and which way the travel runs, or end the travel before it"}
}

func (st *State) bindStop(at vec, frictionless float64) *Stop {
	return &Stop{Kind: Binds, Part: "machine", Driver: st.q, Slides: st.slides(), Place: at,
		Detail: fmt.Sprintf("friction grows faster than the force that should overcome it; without friction it would take %.1f N", frictionless),
		Cure:   "check the friction numbers"}
}

func (st *State) contactPoint() vec {
	c := &st.model.machine.Contact
	return st.pose[c.Link].Point(c.At)
}
