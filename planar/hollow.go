package planar

import "math"

const (
	// leastHollow is the depth in m from which a hollow is worth telling: less
	// cannot be read off a tape.
	leastHollow = 1e-4
	// settlings of both ends of a bridge in turn. Each squares the error, which
	// begins at the distance of two samples.
	settlings = 4
)

// Hollow is a place of a traced outline that a rope bridges.
type Hollow struct {
	From, To    Vec     // ends of the straight bridge, m, counter-clockwise round the outline
	Depth       float64 // greatest distance of the outline from the bridge, m
	First, Last int     // indices of the traced points on its rims, in the order of tracing; 0 for a spiral

	fromX, toX float64 // parameters of From and To
}

// bridge moves the samples at the ends of each straight bridge between rim
// samples to where the bridge is tangent to the curve, and returns the hollows.
func bridge(c path, samples []sample, rim []int) []Hollow {
	var hollows []Hollow
	n := len(rim)
	for i, from := range rim {
		to := rim[(i+1)%n]
		if follows(from, to, len(samples)) {
			continue
		}
		for range settlings {
			if follows(rim[(i+n-1)%n], from, len(samples)) {
				settle(c, samples, from, samples[to].p)
			}
			if follows(to, rim[(i+2)%n], len(samples)) {
				settle(c, samples, to, samples[from].p)
			}
		}
		if h := hollowBetween(samples, from, to); h.Depth >= leastHollow {
			hollows = append(hollows, h)
		}
	}
	return hollows
}

// settle moves sample i along the curve, at most to its neighbours, to where
// the tangent passes through q. A corner stays.
func settle(c path, samples []sample, i int, q Vec) {
	s := &samples[i]
	if s.corner {
		return
	}
	lo, hi := around(samples, i, c.span())
	past := func(x float64) float64 {
		p, d := c.at(x)
		return d.Cross(q.Sub(p))
	}
	sign := math.Copysign(1, past(lo))
	if sign*past(hi) > 0 {
		return
	}
	for range halvings {
		if mid := (lo + hi) / 2; sign*past(mid) > 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	s.x = (lo + hi) / 2
	s.p, s.in = c.at(s.x)
	s.out = s.in
}

// around returns the parameters of the samples before and after sample i of a
// closed curve whose parameter grows by span in one round.
func around(samples []sample, i int, span float64) (lo, hi float64) {
	n := len(samples)
	lo, hi = samples[(i+n-1)%n].x, samples[(i+1)%n].x
	if i == 0 {
		lo -= span
	}
	if i == n-1 {
		hi += span
	}
	return lo, hi
}

// hollowBetween measures what lies between two samples and the bridge that
// joins them.
func hollowBetween(samples []sample, from, to int) Hollow {
	a, b, n := samples[from], samples[to], len(samples)
	h := Hollow{From: a.p, To: b.p, fromX: a.x, toX: b.x}
	inward := b.p.Sub(a.p).Unit().Perp()
	for k := (from + 1) % n; k != to; k = (k + 1) % n {
		h.Depth = max(h.Depth, samples[k].p.Sub(a.p).Dot(inward))
	}
	return h
}
