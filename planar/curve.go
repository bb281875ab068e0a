package planar

import (
	"math"
	"slices"
)

const (
	// sampleTurn is the turn between samples of a curve, 2° in rad.
	sampleTurn = 2 * math.Pi / 180
	// backwards is the cosine of the angle between curve and chord from which the
	// curve is said to double back, 120°. The round end of a slim outline, with no
	// point at its tip, comes near 90°.
	backwards = -0.5
	// fewest and most samples on one piece of a curve between traced points.
	fewest, most = 4, 64
)

// curve is a closed curve through traced points, counter-clockwise: smooth, but
// for the corners. Its parameter x is i + t at the fraction t of piece i.
type curve struct {
	pieces   []cubic
	corner   []bool // at the start of each piece
	reversed bool   // against the order in which the points were traced
}

// curveThrough returns the curve through points that have passed checkTraced.
func curveThrough(points []Vec, corners []int) *curve {
	c := &curve{corner: make([]bool, len(points)), reversed: polygonArea(points) < 0}
	points = slices.Clone(points)
	if c.reversed {
		slices.Reverse(points)
	}
	c.pieces = chordsThrough(points)
	for _, i := range corners {
		c.corner[c.traced(i)] = true
	}
	first := slices.Index(c.corner, true)
	if first < 0 {
		smoothClosed(c.pieces)
		return c
	}
	c.smoothBetweenCorners(first)
	return c
}

// smoothBetweenCorners makes each run from one corner to the next a spline of
// its own.
func (c *curve) smoothBetweenCorners(first int) {
	n := len(c.pieces)
	run := make([]cubic, 0, n)
	for i := range n {
		run = append(run, c.pieces[(first+i)%n])
		if !c.corner[(first+i+1)%n] {
			continue
		}
		smoothOpen(run)
		for k, piece := range run {
			c.pieces[(first+i+1-len(run)+k)%n] = piece
		}
		run = run[:0]
	}
}

// traced turns the index of a piece into that of the traced point where it
// starts, and back.
func (c *curve) traced(i int) int {
	if c.reversed {
		return len(c.pieces) - 1 - i
	}
	return i
}

// rims returns the indices of the traced points at or just outside the
// parameters from and to, in the order of tracing.
func (c *curve) rims(from, to float64) (first, last int) {
	n := len(c.pieces)
	first = c.traced((int(math.Floor(from)) + n) % n)
	last = c.traced(int(math.Ceil(to)) % n)
	if c.reversed {
		first, last = last, first
	}
	return first, last
}

// span implements [path].
func (c *curve) span() float64 { return float64(len(c.pieces)) }

// at returns the point at x, which counts round and round, and the derivative.
func (c *curve) at(x float64) (p, d Vec) {
	n := len(c.pieces)
	i := math.Floor(x)
	p, d, _ = c.pieces[((int(i)%n)+n)%n].at(x - i)
	return p, d
}

// samples returns points of the curve about sampleTurn apart. It returns an
// error if the curve doubles back between two traced points, in a bulge that
// nobody traced, or crosses itself.
func (c *curve) samples() ([]sample, error) {
	var all []sample
	for i := range c.pieces {
		piece := &c.pieces[i]
		count := piece.sampleCount()
		for k := range count {
			t := float64(k) / float64(count)
			p, d, _ := piece.at(t)
			if chord := piece.to.Sub(piece.from); d.Dot(chord) <= backwards*d.Norm()*chord.Norm() {
				next := c.traced((i + 1) % len(c.pieces))
				return nil, atPoint(c.traced(i), "the smooth curve from here to point %d doubles back; trace more points there or mark a corner", next+1)
			}
			s := sample{x: float64(i) + t, p: p, in: d, out: d}
			if k == 0 && c.corner[i] {
				_, s.in, _ = c.pieces[(i+len(c.pieces)-1)%len(c.pieces)].at(1)
				s.corner = true
			}
			all = append(all, s)
		}
	}
	return all, c.checkLoops(all)
}

// checkLoops returns an error if the curve crosses itself.
func (c *curve) checkLoops(samples []sample) error {
	i, j, found := crossing(points(samples))
	if !found {
		return nil
	}
	a, b := c.traced(int(samples[i].x)), c.traced(int(samples[j].x))
	return atPoint(a, "the smooth curve near here meets the curve near point %d; trace more points there or mark corners", b+1)
}

// sampleCount returns the number of samples a piece needs for its turn.
func (c *cubic) sampleCount() int {
	if c.bendFrom == (Vec{}) && c.bendTo == (Vec{}) {
		return 1
	}
	turn := 0.0
	_, before, _ := c.at(0)
	for k := 1; k <= fewest; k++ {
		_, d, _ := c.at(float64(k) / fewest)
		turn += math.Abs(math.Atan2(before.Cross(d), before.Dot(d)))
		before = d
	}
	return int(min(most, max(fewest, math.Ceil(turn/sampleTurn))))
}

// area returns the area that the curve encloses, ½∮ P × dP, whose integrand has
// degree five, so that three Gauss points are exact.
func (c *curve) area() float64 {
	origin := c.pieces[0].from
	offset := math.Sqrt(0.15)
	sum := 0.0
	for i := range c.pieces {
		for _, g := range [3]struct{ t, w float64 }{{0.5 - offset, 5.0 / 18}, {0.5, 8.0 / 18}, {0.5 + offset, 5.0 / 18}} {
			p, d, _ := c.pieces[i].at(g.t)
			sum += g.w * c.pieces[i].chord * p.Sub(origin).Cross(d)
		}
	}
	return sum / 2
}
