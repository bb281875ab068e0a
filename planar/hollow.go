package planar

const (
	// leastHollow is the depth in m from which a hollow is worth telling: less
	// cannot be read off a tape.
	leastHollow = 1e-4
	// settleTurn is how far in rad a bridge may turn when its ends settle; they
	// start a few samples of 2° off at most.
	settleTurn = 0.2
)

// Hollow is a place of a traced outline that a rope bridges.
type Hollow struct {
	From, To    Vec     // ends of the straight bridge, m, counter-clockwise round the outline
	Depth       float64 // greatest distance of the outline from the bridge, m
	First, Last int     // indices of the traced points on its rims, in the order of tracing; 0 for a spiral

	fromX, toX float64 // parameters of From and To
}

// bridge moves the samples at the ends of each straight bridge between rim
// samples to where the bridge is tangent to the path, and returns the hollows.
// An end that carries two bridges stays.
func bridge(c path, samples []sample, rim []int) []Hollow {
	var hollows []Hollow
	n := len(rim)
	for i, from := range rim {
		to := rim[(i+1)%n]
		if follows(from, to, len(samples)) {
			continue
		}
		a, b := newEnd(c, samples, from), newEnd(c, samples, to)
		a.fixed = a.fixed || !follows(rim[(i+n-1)%n], from, len(samples))
		b.fixed = b.fixed || !follows(to, rim[(i+2)%n], len(samples))
		samples[from], samples[to] = settle(a, b)
		if h := hollowBetween(samples, from, to); h.Depth >= leastHollow {
			hollows = append(hollows, h)
		}
	}
	return hollows
}

// bridgeEnd is a sample that carries a bridge, and how far along the path it may move.
type bridgeEnd struct {
	c      path
	s      sample
	lo, hi float64
	fixed  bool
}

func newEnd(c path, samples []sample, i int) bridgeEnd {
	lo, hi := around(samples, i, c.span())
	return bridgeEnd{c, samples[i], lo, hi, samples[i].corner}
}

// foremost returns the sample furthest along n.
func (e *bridgeEnd) foremost(n Vec) sample {
	if e.fixed {
		return e.s
	}
	lo, hi := e.lo, e.hi
	for range halvings {
		if mid := (lo + hi) / 2; e.ahead(mid, n) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return sampleAt(e.c, (lo+hi)/2)
}

// ahead reports whether the path at x still goes along n.
func (e *bridgeEnd) ahead(x float64, n Vec) bool {
	_, d := e.c.at(x)
	return d.Dot(n) > 0
}

// settle returns the ends a and b of a bridge moved to where it touches both.
//
// The bridge's normal is where both are equally far along it. As the normal
// turns counter-clockwise, the first end falls behind the second.
func settle(a, b bridgeEnd) (from, to sample) {
	if a.fixed && b.fixed {
		return a.s, b.s
	}
	chord := b.s.p.Sub(a.s.p).Angle() - quarter
	lo, hi := chord-settleTurn, chord+settleTurn
	for range halvings {
		n := Polar(1, (lo+hi)/2)
		from, to = a.foremost(n), b.foremost(n)
		if from.p.Sub(to.p).Dot(n) > 0 {
			lo = (lo + hi) / 2
		} else {
			hi = (lo + hi) / 2
		}
	}
	return from, to
}

// around returns bounds within which sample i may move without meeting its
// neighbours, on a closed curve whose parameter grows by span in one round.
func around(samples []sample, i int, span float64) (lo, hi float64) {
	const keep = 0.9 // of the way, so that neighbours never coincide
	n, x := len(samples), samples[i].x
	lo, hi = samples[(i+n-1)%n].x, samples[(i+1)%n].x
	if i == 0 {
		lo -= span
	}
	if i == n-1 {
		hi += span
	}
	return x + keep*(lo-x), x + keep*(hi-x)
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
