package sheet

import (
	"fmt"
	"math"
	"slices"

	"steelyard/mechanism"
)

var noGrip = grip{none, none, none, none}

// addPins makes a pin of every point that two or more links share. With three
// links on one pin, each is pinned to the first; the ground comes first.
func (r *reader) addPins() {
	met := map[[2]linkID]pointID{}
	for p, carriers := range r.members {
		for i, b := range carriers {
			for _, a := range carriers[:i] {
				if q, ok := met[[2]linkID{a, b}]; ok {
					r.fault(r.plan.links[b].at, fmt.Sprintf("links %q and %q share the points %q and %q", r.plan.links[a].name, r.plan.links[b].name,
						r.plan.pointName(q), r.plan.pointName(pointID(p))), "two pins lock two links together", "make them one link, or let them share one point")
					continue
				}
				met[[2]linkID{a, b}] = pointID(p)
			}
			if i > 0 {
				r.addPin(pointID(p), carriers[0], b, len(carriers) > 2)
			}
		}
	}
}

func (r *reader) addPin(p pointID, a, b linkID, several bool) {
	name := r.plan.pointName(p)
	if several {
		name = fmt.Sprintf("%s (%s)", name, r.plan.links[b].name)
	}
	r.plan.joints = append(r.plan.joints, joint{name: name, kind: mechanism.Revolute, a: a, b: b, point: p,
		along: noDirection, grip: noGrip, at: r.plan.points[p].at})
}

// readPins reads `pins:`, the friction of pins.
func (r *reader) readPins(n *node) {
	r.named(n, "pins", func(name string, e entry) {
		f := r.fields(e.value, "pin", name)
		g := grip{f.number("friction", friction), f.number("diameter", size), none, f.number("drag", moment)}
		f.close()
		if g.coefficient != none && g.diameter == none {
			r.fault(e.value, fmt.Sprintf("%s has friction and no diameter", f), "pin friction acts at the pin's radius", "measure the pin and add `diameter:`")
		}
		found := false
		id, known := r.pointIDs[name]
		for i := range r.plan.joints {
			if j := &r.plan.joints[i]; known && j.kind == mechanism.Revolute && j.point == id {
				j.grip, j.at, found = g, e.value, true
			}
		}
		if !found {
			r.fault(e.value, fmt.Sprintf("pin %q stands under pins", name), "a pin is a point that two links share",
				r.suggest(name, r.pinNames(), "list the point under both links, or take the pin out"))
		}
	})
}

func (r *reader) pinNames() []string {
	var names []string
	for _, j := range r.plan.joints {
		if j.kind == mechanism.Revolute {
			names = append(names, r.plan.pointName(j.point))
		}
	}
	return names
}

// readSlides reads `slides:`, each `link: {along: …}`.
func (r *reader) readSlides(n *node) {
	r.named(n, "slides", func(name string, e entry) {
		f := r.fields(e.value, "slide", name)
		j := joint{name: name, kind: mechanism.Prismatic, point: nowhere, grip: noGrip, at: e.value}
		b, ok := r.linkIDs[name]
		if !ok || b == mechanism.Ground {
			r.fault(&node{line: e.line, column: e.column, path: e.value.path}, fmt.Sprintf("%q slides", name), "no moving link has that name",
				r.suggest(name, keys(r.linkIDs), "name a slide after the link that slides"))
		}
		j.b = b
		j.along, j.a = f.guide()
		if at := f.take("at"); at != nil {
			j.point = r.point(at, f.of("at"))
		}
		j.grip = grip{f.number("friction", friction), none, f.number("bearing", size), f.number("drag", pull)}
		f.close()
		if ok && j.a == j.b {
			r.fault(e.value, fmt.Sprintf("%s is guided by itself", f), "a link slides on another one", "let `along:` name points of the link that carries the guide")
		}
		r.plan.joints = append(r.plan.joints, j)
	})
}

var noDirection = direction{from: nowhere, to: nowhere, angle: none}

// guide reads the line of a slide and the link that carries it.
func (f *fields) guide() (direction, linkID) {
	n := f.must("along", "write along: [from point, to point], or up, forward, or an angle such as 75 deg")
	if n == nil {
		f.take("on")
		return noDirection, mechanism.Ground
	}
	d, ok := f.r.direction(n, f.of("along"), f.label("along"))
	if !ok || d.from == nowhere {
		if on := f.take("on"); on != nil {
			id, _ := f.r.link(on, f.of("on"))
			return d, id
		}
		return d, mechanism.Ground
	}
	id, ok := f.carrier(d.from, n)
	if ok && !slices.Contains(f.r.members[d.to], id) {
		f.r.fault(n, fmt.Sprintf("%s runs from %q to %q", f.of("along"), f.r.plan.pointName(d.from), f.r.plan.pointName(d.to)),
			"both points lie on the link that carries the guide", fmt.Sprintf("list both under link %q", f.r.plan.links[id].name))
	}
	return d, id
}

// direction reads [from, to], up, down, forward, back or an angle from forward.
func (r *reader) direction(n *node, what, label string) (direction, bool) {
	d := noDirection
	if n.kind == sequence && len(n.items) == 2 {
		d.from, d.to = r.point(r.value(n.items[0]), what), r.point(r.value(n.items[1]), what)
		if d.from == d.to && d.from != nowhere {
			r.fault(n, fmt.Sprintf("%s runs from %q to itself", what, r.plan.pointName(d.from)), "a line needs two points", "name two different points")
			return noDirection, false
		}
		if d.from == nowhere || d.to == nowhere {
			return noDirection, false
		}
		return d, true
	}
	if n.kind != scalar || n.text == "" {
		r.fault(n, fmt.Sprintf("%s is %s", what, seen(n)), "a direction is two points, a word or an angle",
			"write [from point, to point], or up, forward, or an angle such as 75 deg")
		return d, false
	}
	switch n.text {
	case "forward":
	case "up":
		d.fixed = math.Pi / 2
	case "back":
		d.fixed = math.Pi
	case "down":
		d.fixed = -math.Pi / 2
	default:
		d.angle = r.number(n, angle, label, what)
		return d, d.angle != none
	}
	return d, true
}
