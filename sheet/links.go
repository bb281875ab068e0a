package sheet

import (
	"fmt"
	"slices"

	"steelyard/mechanism"
)

const ground = "ground"

// readLinks reads `links:`. Each is a list of the points it carries, or a group
// of keys when more is known about it.
func (r *reader) readLinks(n *node) {
	r.linkIDs = map[string]linkID{ground: mechanism.Ground}
	r.plan.links = []link{{name: ground, mass: none, inertia: none, center: nowhere, at: r.doc.root}}
	r.named(n, "links", func(name string, e entry) {
		l := link{name: name, mass: none, inertia: none, center: nowhere, at: e.value}
		if e.value.kind == mapping && name != ground {
			r.readLink(&l, e.value)
		} else {
			l.points = r.linkPoints(e.value, name)
		}
		if name == ground {
			r.plan.links[0] = l
			r.carry(mechanism.Ground, l.points)
			return
		}
		r.addLink(l)
	})
}

func (r *reader) readLink(l *link, n *node) {
	f := r.fields(n, "link", l.name)
	if list := f.must("points", "list the points it carries: points: [axis, grip]"); list != nil {
		l.points = r.linkPoints(list, l.name)
	}
	l.mass = f.number("mass", mass)
	l.inertia = f.number("inertia", inertia)
	l.upright = f.yes("upright")
	if c := f.take("centre"); c != nil {
		l.center = r.place(c, f.label("centre"), fmt.Sprintf("centre of %s", f))
	}
	f.close()
}

func (r *reader) linkPoints(n *node, name string) []pointID {
	var ids []pointID
	r.listed(n, fmt.Sprintf("link %q", name), func(item *node) {
		id := r.point(item, fmt.Sprintf("a point of link %q", name))
		switch {
		case id == nowhere:
		case slices.Contains(ids, id):
			r.fault(item, fmt.Sprintf("link %q lists %q twice", name, item.text), "a link carries a point once", "take one out")
		default:
			ids = append(ids, id)
		}
	})
	return ids
}

// addLink adds a moving link and lets it carry its points.
func (r *reader) addLink(l link) linkID {
	id := linkID(len(r.plan.links))
	if _, taken := r.linkIDs[l.name]; taken {
		r.fault(l.at, fmt.Sprintf("two links are called %q", l.name), "each link has a name of its own", "rename one")
	}
	r.linkIDs[l.name] = id
	r.plan.links = append(r.plan.links, l)
	r.carry(id, l.points)
	return id
}

func (r *reader) carry(id linkID, points []pointID) {
	for _, p := range points {
		r.members[p] = append(r.members[p], id)
	}
}

// link reads the name of a link.
func (r *reader) link(n *node, what string) (linkID, bool) {
	id, ok := r.linkIDs[n.text]
	if n.kind != scalar || !ok {
		r.fault(n, fmt.Sprintf("%s is %s", what, seen(n)), "no link has that name",
			r.suggest(n.text, keys(r.linkIDs), "the links are "+andList(keys(r.linkIDs))))
	}
	return id, ok && n.kind == scalar
}

// carrier returns the link that carries point p: the one named under `on:`, or
// the only one there is.
func (f *fields) carrier(p pointID, at *node) (linkID, bool) {
	r := f.r
	on := f.take("on")
	if on != nil {
		id, ok := r.link(on, f.of("on"))
		if !ok || p == nowhere {
			return id, ok
		}
		if !slices.Contains(r.members[p], id) {
			r.fault(on, fmt.Sprintf("%s is on link %q", f, on.text), fmt.Sprintf("that link does not carry point %q", r.plan.pointName(p)),
				fmt.Sprintf("list %q among the points of link %q", r.plan.pointName(p), on.text))
			return id, false
		}
		return id, true
	}
	if p == nowhere {
		return 0, false
	}
	switch carriers := r.members[p]; len(carriers) {
	case 1:
		return carriers[0], true
	case 0:
		r.fault(at, fmt.Sprintf("%s is at point %q", f, r.plan.pointName(p)), "no link carries that point",
			fmt.Sprintf("list it under the link it is fixed to, or under `%s:`", ground))
	default:
		r.fault(at, fmt.Sprintf("%s is at the pin %q", f, r.plan.pointName(p)), "a pin belongs to several links",
			"say which one with `on:`, one of "+orList(r.linkNames(carriers)))
	}
	return 0, false
}

func (r *reader) linkNames(ids []linkID) []string {
	var names []string
	for _, id := range ids {
		names = append(names, r.plan.links[id].name)
	}
	return names
}
