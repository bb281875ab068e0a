package exercise

import (
	"math"
)

// mostForce is the force of one limb up to which the limit is looked for, N:
// ten times what a machine in a gym asks. Own choice.
const mostForce = 20_000.0

// produceTolerance is the relative error of Producible: less than a line's
// width in any picture.
const produceTolerance = 1e-3

// Producible returns, for each position of the travel, the force of one limb
// along the path (N) at which the greatest effort there becomes 1 in a slow
// lift: what this person can produce. It is +Inf where no joint limits the
// force, and 0 where the limb's own weight is already too much.
//
// Strengths that are guesses are left out, as in a [Prediction], so that what is
// found is the most the force can be. It stands in can where it is also what
// the person can do: where every joint left out would, even by its guess, bear
// it. The guesses lie low: the curves they follow fall away from where they
// were measured. Elsewhere can is NaN and the bound stands in most, which is NaN
// where can is told, where there is no bound and at gaps.
//
// The greatest effort passes 1 once as the force goes up, see
// TestEffortPassesOnce. Good to a part in a thousand.
func (r *Result) Producible() (can, most []float64) {
	can, most = make([]float64, r.Setup.Len()), make([]float64, r.Setup.Len())
	for i := range r.lifting {
		can[i], most[i] = math.NaN(), math.NaN()
		if r.Gap[i] != "" {
			continue
		}
		switch f, known := r.producibleAt(i); {
		case known:
			can[i] = f
		case !math.IsInf(f, 1):
			most[i] = f
		}
	}
	return can, most
}

// producibleAt returns the force at which the greatest effort at a position
// becomes 1, and whether the joints left out would bear it too.
func (r *Result) producibleAt(i int) (f float64, known bool) {
	tested, all := r.lifting[i].at(middleBand, true), r.lifting[i].at(middleBand, false)
	bound := mostForce
	if r.held() {
		bound = MostLoad
	}
	x := atOne(bound, produceTolerance, func(x float64) float64 { return r.effortUnder(&tested, x) })
	just := min(x, bound) * (1 - 2*produceTolerance)
	known = x == 0 || r.effortUnder(&all, just) <= 1
	if now := r.lifting[i].push.mass; r.held() && !math.IsInf(x, 1) {
		// what is held has the force along the path that its weight has there
		if now == 0 {
			return 0, known
		}
		x *= r.Lifting.Force[i] / now
	}
	return x, known
}

func (r *Result) held() bool { return r.Setup.Station.Contact == Held }

// effortUnder returns the greatest effort under a force of one limb along the
// path in N or, where a weight is held, under so many kg.
func (r *Result) effortUnder(st *stance, x float64) float64 {
	if !r.held() {
		_, z := st.solve(x, r.Direction)
		return z
	}
	loaded := *st
	loaded.rehold(x)
	_, z := loaded.solve(0, r.Direction)
	return z
}

// Hardest returns the position of the greatest effort among those where the
// strength is no guess, and whether there is one; else [Column.Peak].
func (c *Column) Hardest() (i int, known bool) {
	i = c.Peak
	for k, e := range c.Effort {
		if e > 0 && !c.Guessed(k) && (!known || e > c.Effort[i]) {
			i, known = k, true
		}
	}
	return i, known
}

// atOne returns where a function, below 1 at nothing, passes 1 for good, to a
// relative tolerance and never above: by regula falsi, as the efforts are nearly
// linear in the force. The end that stays counts for half, so that both close
// in.
//
// Source: Dowell, M. and Jarratt, P., "A modified regula falsi method for
// computing the root of an equation", BIT 11 (1971) 168: the Illinois
// algorithm (from memory).
func atOne(most, tolerance float64, effort func(float64) float64) float64 {
	const rounds = 100 // about ten are needed
	low, high := effort(0)-1, effort(most)-1
	if low > 0 {
		return 0
	}
	if high <= 0 {
		return math.Inf(1)
	}
	lo, hi, stayed := 0.0, most, 0
	for range rounds {
		if hi-lo <= tolerance*hi || hi < 1e-3 {
			break
		}
		mid := lo + (hi-lo)*low/(low-high)
		mid = min(max(mid, lo*(1+tolerance/2)), hi*(1-tolerance/2)) // else it may creep to one end
		if z := effort(mid) - 1; z > 0 {
			hi, high = mid, z
			if stayed < 0 {
				low /= 2
			}
			stayed = -1
		} else {
			lo, low = mid, z
			if stayed > 0 {
				high /= 2
			}
			stayed = 1
		}
	}
	return lo
}
