package planar

import "math"

// straight is the turn in rad along an edge below which it is taken as
// straight: over 100 mm the two differ by less than 2 nm.
const straight = 1e-7

// node is a point of a convex outline with the normals of the tangents there.
// They run counter-clockwise from in to out and differ at a corner only.
type node struct {
	p       Vec
	in, out Angle
}

// rollThrough returns the convex outline through nodes, which go once round it
// counter-clockwise. Normals must not decrease from one to the next, and the
// chord between two nodes must have its normal between theirs.
func rollThrough(nodes []node) roll {
	var r roll
	for i, n := range nodes {
		next := nodes[(i+1)%len(nodes)]
		if i+1 == len(nodes) {
			next.in += 2 * math.Pi
		}
		r.turn(n.p, n.in, n.out, 0, 0)
		r.edge(n.p, next.p, n.out, next.in)
	}
	r.startAtZero()
	r.measure()
	r.index()
	return r
}

// edge adds the outline from p to q with normals from there to there. In
// between, the radius of curvature grows evenly, ρ = m + k·s with s the angle
// from the middle normal. Going along it then carries the point by
//
//	2 m sin a             along the middle tangent
//	2 k (sin a - a cos a)  inward
//
// where a is half the turn, which gives m and k. Should the radius turn out
// negative at an end, the chord with a corner at either end is a convex outline
// in any case.
func (r *roll) edge(p, q Vec, from, to Angle) {
	d := q.Sub(p)
	middle := (from + to) / 2
	if to-from > straight {
		a := float64(to-from) / 2
		sin, cos := math.Sincos(a)
		normal := Polar(1, middle)
		m := d.Dot(normal.Perp()) / (2 * sin)
		k := -d.Dot(normal) / (2 * (sin - a*cos))
		if math.Abs(k)*a <= m {
			r.turn(p, from, to, m-k*a, k)
			return
		}
	}
	chord := min(max((d.Angle()-quarter).Near(middle), from), to)
	r.turn(p, from, chord, 0, 0)
	r.turn(q, chord, to, 0, 0)
}

// turn adds the part of the outline that begins at p with normal from and ends
// with normal to, its radius of curvature being rho + slope·t.
func (r *roll) turn(p Vec, from, to Angle, rho, slope float64) {
	if to <= from {
		return
	}
	n := Polar(1, from)
	next := piece{start: float64(from), h: p.Dot(n), dh: p.Dot(n.Perp()), rho: rho, slope: slope}
	count := math.Ceil(float64(to-from) / widestPiece)
	for range int(count) {
		r.pieces = append(r.pieces, next)
		next = next.at(float64(to-from) / count)
	}
}

// startAtZero renumbers the pieces from the one that holds normal 0, which it
// cuts there, and brings their normals into [0, 2π).
func (r *roll) startAtZero() {
	const turn = 2 * math.Pi
	zero := math.Ceil(r.pieces[0].start/turn) * turn
	cut := 0
	for cut+1 < len(r.pieces) && r.pieces[cut+1].start <= zero {
		cut++
	}
	rolled := []piece{r.pieces[cut].at(zero - r.pieces[cut].start)}
	rolled = append(rolled, r.pieces[cut+1:]...)
	rolled = append(rolled, r.pieces[:cut]...)
	if r.pieces[cut].start < zero {
		rolled = append(rolled, r.pieces[cut])
	}
	for i := range rolled {
		start := rolled[i].start - zero
		if i >= len(r.pieces)-cut {
			start += turn
		}
		rolled[i].start = min(max(0, start), turn)
	}
	r.pieces = rolled
}

// measure fills in the lengths. Where the outline is straight, h' jumps by the
// length of the straight part.
func (r *roll) measure() {
	length := 0.0
	for i := range r.pieces {
		p, width, next := &r.pieces[i], 2*math.Pi-r.pieces[i].start, &r.pieces[0]
		if i+1 < len(r.pieces) {
			next = &r.pieces[i+1]
			width = next.start - p.start
		}
		p.length = length
		_, dh := p.support(width)
		length = p.lengthAt(width) + max(0, next.dh-dh)
	}
	r.perimeter = length
}
