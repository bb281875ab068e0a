package planar

import "math"

// path is a closed curve, counter-clockwise, that a rope may be laid round.
type path interface {
	// at returns the point and a vector along the curve at the parameter x,
	// which grows by span in one round.
	at(x float64) (p, d Vec)
	span() float64
	area() float64 // enclosed, m²
}

// sample is a point of a path with the directions in which the path arrives
// there and leaves. They differ at a corner only.
type sample struct {
	x       float64
	p       Vec
	in, out Vec
	corner  bool
}

// rolled returns the outline that a rope sees of a curve.
func rolled(c path, samples []sample) *Traced {
	t := &Traced{area: c.area(), points: make([]Vec, len(samples))}
	for i, s := range samples {
		t.points[i] = s.p
	}
	rim := hull(t.points)
	t.hollows = bridge(c, samples, rim)
	t.roll = rollThrough(nodes(samples, rim))
	return t
}

// follows reports whether sample to comes right after from.
func follows(from, to, n int) bool { return to == (from+1)%n }

// nodes returns the rim samples as nodes of a convex outline. A tangent that
// would cut the hull is turned into the nearest that does not.
func nodes(samples []sample, rim []int) []node {
	n := len(rim)
	chords := make([]Angle, n) // normals of the hull's sides
	for i := range rim {
		side := samples[rim[(i+1)%n]].p.Sub(samples[rim[i]].p)
		chords[i] = side.Angle() - quarter
		if i > 0 {
			chords[i] = max(chords[i-1], chords[i].Near(chords[i-1]))
		}
	}
	all := make([]node, n)
	for i := range rim {
		s := &samples[rim[i]]
		before, after := chords[(i+n-1)%n], chords[i]
		if i == 0 {
			before -= 2 * math.Pi
		}
		all[i] = node{p: s.p, in: before, out: after}
		if follows(rim[(i+n-1)%n], rim[i], len(samples)) {
			all[i].in = clampNormal(s.in, before, after)
		}
		if follows(rim[i], rim[(i+1)%n], len(samples)) {
			all[i].out = clampNormal(s.out, all[i].in, after)
		}
	}
	return all
}

// clampNormal returns the outward normal of direction d brought between lo and hi.
func clampNormal(d Vec, lo, hi Angle) Angle {
	normal := (d.Angle() - quarter).Near((lo + hi) / 2)
	return min(max(normal, lo), hi)
}
