package report

import (
	"math"

	"steelyard/mechanism"
	"steelyard/planar"
)

// skeleton is a link as the simplest body that holds its places: straight
// pieces, first between its joints, then out to whatever else acts on it. A
// place off the pieces is joined to the nearest point of them, as a bracket is.
func skeleton(m *mechanism.Machine, l mechanism.LinkID) [][2]planar.Vec {
	var out [][2]planar.Vec
	var joined []planar.Vec // ends of pieces, and a lone place
	for _, group := range [2][]planar.Vec{jointsOf(m, l), actingOn(m, l)} {
		for len(group) > 0 {
			k, foot := closest(group, joined, out)
			if d := group[k].Sub(foot).Norm(); d > samePlace && len(joined) > 0 {
				out = append(out, [2]planar.Vec{foot, group[k]})
			}
			joined = append(joined, group[k])
			group = append(group[:k:k], group[k+1:]...)
		}
	}
	if len(out) == 0 && len(joined) > 0 {
		out = append(out, [2]planar.Vec{joined[0], joined[0]})
	}
	return out
}

// samePlace is the distance in m below which two places are one.
const samePlace = 1e-6

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
			if d := p.Sub(q).Norm(); d < least-samePlace {
				k, foot, least = i, q, d
			}
		}
	}
	return k, foot
}

// onPiece returns the point of a straight piece nearest to p.
func onPiece(p planar.Vec, piece [2]planar.Vec) planar.Vec {
	d := piece[1].Sub(piece[0])
	if d.Dot(d) == 0 {
		return piece[0]
	}
	return piece[0].Lerp(piece[1], min(1, max(0, p.Sub(piece[0]).Dot(d)/d.Dot(d))))
}

// jointsOf returns where the link is joined to others. A guide on the ground
// has no one place there.
func jointsOf(m *mechanism.Machine, l mechanism.LinkID) []planar.Vec {
	var out []planar.Vec
	for _, j := range m.Joints {
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
	for _, w := range m.Weights {
		add(w.Link, w.At)
	}
	for _, c := range m.Chains {
		add(c.Link, c.At)
	}
	add(m.Contact.Link, m.Contact.At)
	return out
}

// placesOf returns all of them.
func placesOf(m *mechanism.Machine, l mechanism.LinkID) []planar.Vec {
	return append(jointsOf(m, l), actingOn(m, l)...)
}
