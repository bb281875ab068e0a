package sheet

import (
	"fmt"
	"strings"

	"steelyard/mechanism"
)

func (t *teller) link(i int) {
	l, m := &t.plan.links[i+1], &t.machine.Links[i]
	if l.path {
		return // told with the joint that makes the path
	}
	for _, w := range t.plan.weights {
		if w.link == linkID(i+1) && l.name == w.name {
			return // a weight stack is told among the loads
		}
	}
	names := make([]string, len(l.points))
	for k, p := range l.points {
		names[k] = t.plan.pointName(p)
	}
	carries := ""
	if len(names) > 0 {
		carries = ", with " + list(names, " and ")
	}
	if l.mass == none {
		t.understood("link %q%s", l.name, carries)
		t.missing("the mass of link %q is not given and taken as 0", l.name)
		return
	}
	t.understood("link %q weighs %s%s", l.name, t.number(l.mass), carries)
	if m.Mass == 0 {
		return
	}
	if l.center == nowhere && len(names) > 1 {
		t.assumed("link %q balances half-way between %q and %q, its points furthest apart, at %.0f mm forward and %.0f mm up", l.name,
			t.plan.pointName(l.ends[0]), t.plan.pointName(l.ends[1]), 1000*m.Center.X, 1000*m.Center.Y)
	}
	if l.inertia == none && !t.slides(linkID(i+1)) {
		t.assumed("link %q resists turning like a uniform bar of its length, %.3g kg·m²", l.name, m.Inertia)
	}
}

func (t *teller) joint(i int) {
	j := &t.plan.joints[i]
	a, b := t.linkName(j.a), t.linkName(j.b)
	switch {
	case t.plan.links[j.b].path && j.kind == mechanism.Revolute:
		t.understood("the hand goes round %q", t.plan.pointName(j.point))
		return
	case t.plan.links[j.b].path:
		t.understood("the hand goes along a straight line")
		return
	case j.kind == mechanism.Revolute:
		t.understood("%s turns on %s at %q%s", b, a, t.plan.pointName(j.point), t.grip(j.grip))
	case j.along.from != nowhere:
		t.understood("%s slides on %s along the line from %q to %q%s", b, a, t.plan.pointName(j.along.from), t.plan.pointName(j.along.to), t.grip(j.grip))
	default:
		t.understood("%s slides on %s at %.1f° from forward%s", b, a, t.machine.Joints[i].Along.Degrees(), t.grip(j.grip))
	}
	if j.grip.coefficient != none && j.kind == mechanism.Prismatic && j.grip.bearing == none {
		t.assumed("the guide of %q bears at one place: without a bearing length its tipping adds no friction", j.name)
	}
}

func (t *teller) linkName(id linkID) string {
	if id == mechanism.Ground {
		return "the ground"
	}
	return fmt.Sprintf("%q", t.plan.links[id].name)
}

func (t *teller) grip(g grip) string {
	var parts []string
	if g.coefficient != none {
		parts = append(parts, "friction coefficient "+t.number(g.coefficient))
	}
	if g.drag != none {
		parts = append(parts, "drag "+t.number(g.drag))
	}
	if len(parts) == 0 {
		return ""
	}
	return ", with " + list(parts, " and ")
}

// route tells a route with each turn as it was taken.
func (t *teller) route(route []station) string {
	parts := make([]string, len(route))
	for i := range route {
		s := &route[i]
		parts[i] = fmt.Sprintf("%q", s.name)
		if s.outline != noOutline {
			way := "clockwise"
			if s.side > 0 {
				way = "counter-clockwise"
			}
			parts[i] = fmt.Sprintf("%s %q (so %s round it)", s.pass, s.name, way)
			if strings.HasSuffix(s.pass, "round") {
				parts[i] = fmt.Sprintf("%s %q", s.pass, s.name)
			}
		}
	}
	n := len(parts) - 1
	if n == 1 {
		return "from " + parts[0] + " to " + parts[1]
	}
	return "from " + strings.Join(append(parts[:n:n], "to "+parts[n]), ", ")
}

func (t *teller) loads() {
	for i := range t.plan.weights {
		w := &t.plan.weights[i]
		role := "counts as the load"
		if !w.load {
			role = "balances"
		}
		t.understood("%q, %s at %q on %s, %s", w.name, t.number(w.mass), t.plan.pointName(w.point), t.linkName(w.link), role)
		if w.diameter == none && !t.slides(w.link) {
			t.assumed("%q is a mass in one point: without a diameter its own turning is not counted", w.name)
		}
	}
	for i := range t.plan.chains {
		c := &t.plan.chains[i]
		t.understood("chain %q, %s of %s, hangs from %q", c.name, t.number(c.length), t.number(c.density), t.plan.pointName(c.point))
		if c.floor == none {
			t.assumed("chain %q lies at height 0 mm", c.name)
		}
	}
	for i := range t.plan.elements {
		e := &t.plan.elements[i]
		if len(e.route) > 0 {
			t.understood("%s %q acts along the line %s", e.kind, e.name, t.route(e.route))
		} else {
			t.understood("%s %q acts about %q", e.kind, e.name, t.plan.joints[e.joint].name)
		}
	}
	for i := range t.plan.wheels {
		w, m := &t.plan.wheels[i], &t.machine.Wheels[i]
		t.understood("flywheel %q, %.3g kg·m², turns %.3g times as fast as %q", w.name, m.Inertia, m.Ratio, t.plan.joints[w.joint].name)
	}
}

// slides reports whether a link only slides on the ground, so that nothing on
// it turns.
func (t *teller) slides(id linkID) bool {
	for _, j := range t.plan.joints {
		if j.kind == mechanism.Prismatic && j.b == id && j.a == mechanism.Ground {
			return true
		}
	}
	return false
}

func (t *teller) contact() {
	c, d := &t.plan.contact, &t.plan.drive
	j := &t.plan.joints[d.joint]
	verb := "slides"
	if j.kind == mechanism.Revolute {
		verb = "turns"
	}
	t.understood("the body meets the machine at %q on %s (%s)", c.name, t.linkName(c.link), c.kind)
	t.understood("%s %s from %s to %s, counted from the measured pose", t.linkName(j.b), verb, t.number(d.from), t.number(d.to))
	if p := t.plan.plane; p.tilt != none || p.offset != none || p.mirrored {
		var parts []string
		if p.tilt != none {
			parts = append(parts, "leans "+t.number(p.tilt)+" from upright")
		}
		if p.offset != none {
			parts = append(parts, "lies "+t.number(p.offset)+" to the side")
		}
		if p.mirrored {
			parts = append(parts, "has a mirrored twin, and forces are told for one of the two")
		}
		t.understood("the plane it moves in %s", list(parts, " and "))
	}
}
