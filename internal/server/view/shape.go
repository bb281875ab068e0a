package view

import (
	"math"
	"slices"

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
// joins it, each once: its joints first.
func attached(m *mechanism.Machine, l mechanism.LinkID) []planar.Vec {
	var out []planar.Vec
	for _, p := range append(jointsOn(m, l), actingOn(m, l)...) {
		if !slices.ContainsFunc(out, func(q planar.Vec) bool { return q.Sub(p).Norm() < sameSpot }) {
			out = append(out, p)
		}
	}
	return out
}

// jointsOn returns where the link is joined to others. A guide on the ground
// has no one place there.
func jointsOn(m *mechanism.Machine, l mechanism.LinkID) []planar.Vec {
	var out []planar.Vec
	for i := range m.Joints {
		j := &m.Joints[i]
		if j.B == l || j.A == l && (j.Kind == mechanism.Revolute || l != mechanism.Ground) {
			out = append(out, j.At)
		}
	}
	return out
}

// actingOn returns where ropes, springs, loads and the body act on the link.
func actingOn(m *mechanism.Machine, l mechanism.LinkID) []planar.Vec {
	var out []planar.Vec
	add := func(on mechanism.LinkID, at planar.Vec) {
		if on == l {
			out = append(out, at)
		}
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

// skeleton returns a link as the simplest body that holds its places, as in
// reports: straight pieces, first between its joints, then out to whatever else
// acts on it. A place off the pieces is joined to the nearest point of them, as
// a bracket is.
func skeleton(m *mechanism.Machine, l mechanism.LinkID) [][2]planar.Vec {
	var out [][2]planar.Vec
	var joined []planar.Vec
	for _, group := range [2][]planar.Vec{jointsOn(m, l), actingOn(m, l)} {
		for len(group) > 0 {
			k, foot := closest(group, joined, out)
			if len(joined) > 0 && group[k].Sub(foot).Norm() > sameSpot {
				out = append(out, [2]planar.Vec{foot, group[k]})
			}
			joined = append(joined, group[k])
			group = slices.Delete(group, k, k+1)
		}
	}
	return out
}

// closest returns the place nearest to what is joined already, and where on it
// it is to be joined; the first place if there is nothing yet.
func closest(group, joined []planar.Vec, pieces [][2]planar.Vec) (k int, foot planar.Vec) {
	least := math.Inf(1)
	for i, p := range group {
		for _, q := range joined {
			if d := p.Sub(q).Norm(); d < least {
				k, foot, least = i, q, d
			}
		}
		for _, piece := range pieces {
			q := onPiece(p, piece)
			if d := p.Sub(q).Norm(); d < least-sameSpot {
				k, foot, least = i, q, d
			}
		}
	}
	return k, foot
}

// onPiece returns the point of a straight piece nearest to p.
func onPiece(p planar.Vec, piece [2]planar.Vec) planar.Vec {
	d := piece[1].Sub(piece[0])
	return piece[0].Lerp(piece[1], min(1, max(0, p.Sub(piece[0]).Dot(d)/d.Dot(d))))
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
