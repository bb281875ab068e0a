package planar

import "math"

const (
	// angleTolerance is the Newton step in rad at which a direction is taken as
	// found. The steps square, so what is returned is better still.
	angleTolerance = 1e-12
	// offsetTolerance is the offset in m that is rounding only, for machines of
	// a few metres: 2⁻⁵² · 10 m.
	offsetTolerance = 2e-15
	// newtonReach is the largest step in rad still trusted to be near the
	// solution, and newtonSteps the most steps from the guess. Three are usual,
	// and all together stay within half a turn.
	newtonReach, newtonSteps = 0.35, 8
	// halvings of one sample interval reach rounding.
	halvings = 60
	// turnSamples is the number of directions looked at in a search of the whole
	// turn.
	turnSamples = 64
)

// converged reports whether a direction with this offset and length is found.
func converged(offset, length float64) bool {
	return math.Abs(offset) <= max(offsetTolerance, angleTolerance*length)
}

// follow turns the line, whose direction is a guess, into the rope's by
// Newton's method. It fails, rather than arrive somewhere else, if the guess
// is not close.
func (p *pair) follow(l *line) bool {
	for range newtonSteps {
		p.touch(l)
		g, length := l.offset(), l.length()
		if length <= 0 {
			return false
		}
		if converged(g, length) {
			return true
		}
		step := g / length
		if math.Abs(step) > newtonReach {
			return false
		}
		l.turn(step)
	}
	return false
}

// preference says which tangent to take where there are several.
type preference int8

const (
	nearest preference = iota // to the guess
	longest
)

// search finds a rope's direction within half a turn of guess by looking at
// the whole turn: where the offset falls through zero between two samples
// there is one.
func (p *pair) search(guess Angle, want preference) (Angle, error) {
	var best Angle
	found, bestScore := false, 0.0
	lo := guess - math.Pi
	first, _ := p.offset(lo)
	gLo := first
	for i := 1; i <= turnSamples; i++ {
		hi := guess - math.Pi + Angle(i)*(2*math.Pi/turnSamples)
		gHi, _ := p.offset(hi)
		if i == turnSamples {
			gHi = first // rounding must not hide a rope that runs along the seam
		}
		if gLo > 0 && gHi <= 0 {
			theta, length := p.bracketed(lo, hi)
			score := length
			if want == nearest {
				score = -math.Abs(float64(theta - guess))
			}
			if !found || score > bestScore {
				found, best, bestScore = true, theta, score
			}
		}
		lo, gLo = hi, gHi
	}
	if found {
		return best, nil
	}
	return p.graze(guess)
}

// bracketed returns the direction between lo and hi, where the offset falls
// from positive to not positive, and the span's length. Newton's steps are
// kept inside the bracket, which is halved where they leave it.
func (p *pair) bracketed(lo, hi Angle) (theta Angle, length float64) {
	theta = (lo + hi) / 2
	for range halvings {
		g, l := p.offset(theta)
		if l > 0 && converged(g, l) {
			return theta, l
		}
		if g > 0 {
			lo = theta
		} else {
			hi = theta
		}
		next := theta + Angle(g/l)
		if !(lo < next && next < hi) {
			next = (lo + hi) / 2
		}
		theta, length = next, l
	}
	return theta, length
}

// graze deals with an offset of one sign at all samples: the two outlines
// almost touch, touch or overlap. It finds where the offset comes closest to
// zero, which is where the two touching points lie opposite each other.
func (p *pair) graze(guess Angle) (Angle, error) {
	g, _ := p.offset(guess)
	sign := math.Copysign(1, g)
	lo, theta, hi := p.closest(guess, sign)
	g, _ = p.offset(theta)
	switch depth := sign * g; {
	case depth > touchTolerance:
		return 0, p.refusal(depth)
	case depth >= 0:
		return theta, nil
	case sign > 0: // the offset dips below zero between lo and hi
		theta, _ = p.bracketed(lo, theta)
	default: // it rises above zero
		theta, _ = p.bracketed(theta, hi)
	}
	return theta, nil
}

// closest returns the direction theta where sign·offset is least, and samples
// lo and hi on either side of it.
func (p *pair) closest(guess Angle, sign float64) (lo, theta, hi Angle) {
	const step = 2 * math.Pi / turnSamples
	lo, theta, hi = guess, guess, guess
	least := math.Inf(1)
	first := guess - math.Pi
	_, length := p.offset(first)
	for i := range turnSamples {
		a, b := first+Angle(i)*step, first+Angle(i+1)*step
		before := length
		_, length = p.offset(b)
		// The slope of sign·offset is -sign·length: it must fall at a and rise at b.
		if sign*before < 0 || sign*length >= 0 {
			continue
		}
		turning := p.opposite(a, b, sign)
		if g, _ := p.offset(turning); sign*g < least {
			least, lo, theta, hi = sign*g, a, turning, b
		}
	}
	return lo, theta, hi
}

// opposite returns the direction between lo and hi where sign·length changes
// from positive to negative: the touching points lie opposite each other. Where
// a straight side makes length jump there, it is on the side where length is
// not negative.
func (p *pair) opposite(lo, hi Angle, sign float64) Angle {
	for range halvings {
		mid := (lo + hi) / 2
		if _, length := p.offset(mid); sign*length > 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	if sign > 0 {
		return lo
	}
	return hi
}
