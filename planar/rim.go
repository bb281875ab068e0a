package planar

import (
	"math"
	"slices"
)

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

// crowdings is how often samples are added at a bump between two bridges. Each
// time, what is missed there falls to a quarter.
const crowdings = 3

// rolled returns the outline that a rope sees of a curve.
func rolled(c path, samples []sample) *Traced {
	t := &Traced{area: c.area(), points: points(samples)}
	rim := rimOf(samples)
	for range crowdings {
		more := crowded(c, samples, rim)
		if len(more) == len(samples) {
			break
		}
		samples, rim = more, rimOf(more)
	}
	t.hollows = bridge(c, samples, rim)
	t.roll = rollThrough(nodes(samples, stillConvex(samples, rim)))
	return t
}

func points(samples []sample) []Vec {
	all := make([]Vec, len(samples))
	for i, s := range samples {
		all[i] = s.p
	}
	return all
}

// rimOf returns the indices of the samples that a rope touches,
// counter-clockwise. A corner that points inward is never one, though a dip
// finer than the samples may leave it on their hull.
func rimOf(samples []sample) []int {
	return slices.DeleteFunc(hull(points(samples)), func(i int) bool {
		return samples[i].in.Cross(samples[i].out) < 0
	})
}

// stillConvex returns rim without the samples that lie inside once others have
// moved.
func stillConvex(samples []sample, rim []int) []int {
	moved := make([]sample, len(rim))
	for i, k := range rim {
		moved[i] = samples[k]
	}
	kept := hull(points(moved))
	for i, k := range kept {
		kept[i] = rim[k]
	}
	return kept
}

// crowded adds a sample on either side of each that alone carries two bridges,
// so that each bridge gets an end of its own. A corner carries them as it is.
func crowded(c path, samples []sample, rim []int) []sample {
	n := len(rim)
	alone := make(map[int]bool)
	for i, k := range rim {
		alone[k] = !samples[k].corner &&
			!follows(rim[(i+n-1)%n], k, len(samples)) && !follows(k, rim[(i+1)%n], len(samples))
	}
	var more []sample
	for i, s := range samples {
		if !alone[i] {
			more = append(more, s)
			continue
		}
		lo, hi := around(samples, i, c.span())
		more = append(more, sampleAt(c, (lo+s.x)/2), s, sampleAt(c, (s.x+hi)/2))
	}
	return more
}

// sampleAt returns the sample at x, which is no corner.
func sampleAt(c path, x float64) sample {
	p, d := c.at(x)
	return sample{x: x, p: p, in: d, out: d}
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
