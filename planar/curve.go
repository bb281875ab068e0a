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
	// fewest samples are taken between two traced points.
	fewest = 4
	// finest is how often the step between two samples may be halved.
	finest = 8
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

// samples returns points of the curve at most sampleTurn apart. It returns an
// error if the curve doubles back between two traced points, in a bulge that
// nobody traced, or crosses itself.
func (c *curve) samples() ([]sample, error) {
	var all []sample
	for i := range c.pieces {
		piece := &c.pieces[i]
		for k, t := range piece.fractions() {
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

// fractions returns where on the piece to take samples, from 0 to before 1: as
// many evenly as its whole turn asks for, and more where it turns faster.
func (c *cubic) fractions() []float64 {
	if c.bendFrom == (Vec{}) && c.bendTo == (Vec{}) {
		return []float64{0}
	}
	direction := func(t float64) Vec { _, d, _ := c.at(t); return d }
	turn := 0.0
	for k := range fewest {
		turn += turnBetween(direction(float64(k)/fewest), direction(float64(k+1)/fewest))
	}
	count := math.Ceil(max(fewest, turn/sampleTurn))
	var all []float64
	for k := range int(count) {
		all = c.halve(all, float64(k)/count, float64(k+1)/count, finest)
	}
	return all
}

// halve appends the fractions from lo to before hi, so close that the piece
// turns by no more than sampleTurn from one to the next, unless that takes more
// than left halvings.
func (c *cubic) halve(all []float64, lo, hi float64, left int) []float64 {
	_, a, _ := c.at(lo)
	_, b, _ := c.at(hi)
	if left == 0 || turnBetween(a, b) <= sampleTurn {
		return append(all, lo)
	}
	mid := (lo + hi) / 2
	all = c.halve(all, lo, mid, left-1)
	return c.halve(all, mid, hi, left-1)
}

// turnBetween returns the angle between two directions, rad in [0, π].
func turnBetween(v, w Vec) float64 { return math.Abs(math.Atan2(v.Cross(w), v.Dot(w))) }

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
