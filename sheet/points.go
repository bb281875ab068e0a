package sheet

import "fmt"

// readPoints reads `points:`, each `name: [forward, up]`.
func (r *reader) readPoints(n *node) {
	r.pointIDs = map[string]pointID{}
	r.named(n, "points", func(name string, e entry) {
		// One that cannot be read still has its name, or every use of it would be
		// told as a problem of its own.
		x, y, _ := r.pair(e.value, name, fmt.Sprintf("point %q", name))
		r.pointIDs[name] = r.addPoint(point{name: name, x: x, y: y, at: e.value})
	})
}

func (r *reader) addPoint(p point) pointID {
	r.plan.points = append(r.plan.points, p)
	r.members = append(r.members, nil)
	return pointID(len(r.plan.points) - 1)
}

// pair reads [forward, up].
func (r *reader) pair(n *node, label, what string) (x, y num, ok bool) {
	if n.kind != sequence || len(n.items) != 2 {
		r.fault(n, fmt.Sprintf("%s is %s", what, seen(n)), "a place is two numbers, forward and up",
			"write [forward, up], such as [412, 980 ± 3]; a decimal sign is a point, not a comma")
		return none, none, false
	}
	x = r.number(r.value(n.items[0]), place, label+", forward", "the forward distance of "+what)
	y = r.number(r.value(n.items[1]), place, label+", up", "the height of "+what)
	if x == none || y == none {
		return none, none, false
	}
	r.plan.numbers[x].Path = pathOf(n.items[0], r.plan.numbers[x].Path, n.path+".x")
	r.plan.numbers[y].Path = pathOf(n.items[1], r.plan.numbers[y].Path, n.path+".y")
	return x, y, true
}

// pathOf returns the friendlier path of a number that stands where it was
// written; one that a setting put there keeps the setting's.
func pathOf(n *node, path, friendly string) string {
	if path == n.path {
		return friendly
	}
	return path
}

// point reads the name of a point.
func (r *reader) point(n *node, what string) pointID {
	if n.kind != scalar || n.text == "" {
		r.fault(n, fmt.Sprintf("%s is %s", what, seen(n)), "it is the name of a point", "write a name from `points:`")
		return nowhere
	}
	id, ok := r.pointIDs[n.text]
	if !ok {
		r.fault(n, fmt.Sprintf("%s is %q", what, shorten(n.text)), "no point has that name",
			r.suggest(n.text, keys(r.pointIDs), "add it under `points:`, or use a name from there"))
		return nowhere
	}
	r.plan.points[id].used = true
	return id
}

// place reads a point's name or a place of its own, [forward, up].
func (r *reader) place(n *node, label, what string) pointID {
	if n.kind != sequence {
		return r.point(n, what)
	}
	x, y, ok := r.pair(n, label, what)
	if !ok {
		return nowhere
	}
	return r.addPoint(point{name: label, x: x, y: y, at: n, used: true})
}

// pointName returns how a point is called.
func (p *plan) pointName(id pointID) string { return p.points[id].name }
