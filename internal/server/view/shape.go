package view

import (
	"math"

	"steelyard/mechanism"
	"steelyard/planar"
)

// linkCount returns one past the last link, so that it can be ranged over.
func linkCount(m *mechanism.Machine) mechanism.LinkID {
	return mechanism.LinkID(len(m.Links) + 1)
}

func linkName(m *mechanism.Machine, l mechanism.LinkID) string {
	if l == mechanism.Ground {
		return "ground"
	}
	return m.Links[l-1].Name
}

// isStack reports whether the link is a weight stack, which hangs in its own
// upright guides.
func isStack(m *mechanism.Machine, l mechanism.LinkID) bool {
	return l != mechanism.Ground && m.Links[l-1].Upright
}

// sameSpot is the distance below which two places are one, m.
const sameSpot = 1e-6

// attached returns the measured places on a link where something acts on it or
// joins it, each once.
func attached(m *mechanism.Machine, l mechanism.LinkID) []planar.Vec {
	var out []planar.Vec
	add := func(on mechanism.LinkID, at planar.Vec) {
		if on != l {
			return
		}
		for _, p := range out {
			if p.Sub(at).Norm() < sameSpot {
				return
			}
		}
		out = append(out, at)
	}
	for i := range m.Joints {
		j := &m.Joints[i]
		if j.Kind == mechanism.Revolute || j.A != mechanism.Ground {
			add(j.A, j.At)
		}
		add(j.B, j.At)
	}
	for i := range lineCount(m) {
		for _, s := range routeOf(m, i) {
			add(s.Link, s.At)
		}
	}
	for i := range m.Weights {
		add(m.Weights[i].Link, m.Weights[i].At)
	}
	for i := range m.Chains {
		add(m.Chains[i].Link, m.Chains[i].At)
	}
	add(m.Contact.Link, m.Contact.At)
	return out
}

// network joins places by their shortest network of straight pieces (R. C. Prim,
// Shortest connection networks and some generalizations, Bell System Technical
// Journal 36, 1957, p. 1389): the simplest body that holds them all.
func network(ps []planar.Vec) [][2]planar.Vec {
	if len(ps) == 0 {
		return nil
	}
	in := make([]bool, len(ps))
	in[0] = true
	var out [][2]planar.Vec
	for range len(ps) - 1 {
		a, b, least := 0, 0, math.Inf(1)
		for i := range ps {
			for j := range ps {
				if d := ps[i].Sub(ps[j]).Norm(); in[i] && !in[j] && d < least {
					a, b, least = i, j, d
				}
			}
		}
		in[b] = true
		out = append(out, [2]planar.Vec{ps[a], ps[b]})
	}
	return out
}

// Lines are counted as package mechanism counts them: ropes first, then the
// elements that run along a route.

func lineCount(m *mechanism.Machine) int {
	n := len(m.Ropes)
	for i := range m.Elements {
		if len(m.Elements[i].Route) > 0 {
			n++
		}
	}
	return n
}

// elementOf returns the element that line i is; nil for a rope.
func elementOf(m *mechanism.Machine, i int) *mechanism.Element {
	i -= len(m.Ropes)
	for k := range m.Elements {
		if len(m.Elements[k].Route) == 0 {
			continue
		}
		if i == 0 {
			return &m.Elements[k]
		}
		i--
	}
	return nil
}

func routeOf(m *mechanism.Machine, i int) mechanism.Route {
	if i < len(m.Ropes) {
		return m.Ropes[i].Route
	}
	return elementOf(m, i).Route
}
