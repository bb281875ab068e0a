package sketch

import (
	"math"
	"slices"

	"steelyard/mechanism"
	"steelyard/planar"
)

// sameSpot is the distance below which two places are one, m.
const sameSpot = 1e-6

// Places returns the places on a link where something acts on it or joins it,
// each once: its joints first.
func Places(m *mechanism.Machine, l mechanism.LinkID) []planar.Vec {
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
	for _, line := range m.Lines() {
		for i := range line.Route {
			add(line.Route[i].Link, line.Route[i].At)
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

// Skeleton returns a link as the simplest body that holds its places: straight
// pieces, first between its joints, then out to whatever else acts on it. A
// place off the pieces is joined to the nearest point of them, as a bracket is.
// A link with one place has no piece.
func Skeleton(m *mechanism.Machine, l mechanism.LinkID) [][2]planar.Vec {
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
