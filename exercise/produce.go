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
// force, and 0 at gaps and where the limb's own weight is already too much.
// Strengths that are guesses are left out, as in a [Prediction].
//
// The greatest effort passes 1 once as the force goes up, see
// TestEffortPassesOnce. Good to a part in a thousand.
func (r *Result) Producible() []float64 {
	out := make([]float64, r.Setup.Len())
	for i := range r.lifting {
		if r.Gap[i] != "" {
			continue
		}
		if r.Setup.Station.Contact == Held {
			out[i] = r.heldAtOne(i)
			continue
		}
		st := r.lifting[i].at(middleBand, r.tested)
		out[i] = atOne(mostForce, func(f float64) float64 {
			_, z := st.solve(f, r.Direction)
			return z
		})
	}
	return out
}

// Hardest returns the position of the greatest effort among those where the
// strength is no guess, and whether there is one; else [Column.Peak].
func (c *Column) Hardest() (i int, known bool) {
	i = c.Peak
	for k, e := range c.Effort {
		if e > 0 && !c.Joint.guess(c.Stretched[k]) && (!known || e > c.Effort[i]) {
			i, known = k, true
		}
	}
	return i, known
}

// heldAtOne returns the part along the path of the weight held that makes the
// greatest effort 1: it grows with the mass.
func (r *Result) heldAtOne(i int) float64 {
	now := r.lifting[i].push.mass
	if now == 0 {
		return 0
	}
	m := atOne(MostLoad, func(m float64) float64 {
		st := r.lifting[i].at(middleBand, r.tested)
		st.rehold(m)
		return st.greatest(0, [2]float64{})
	})
	if math.IsInf(m, 1) {
		return m
	}
	return r.Lifting.Force[i] * m / now
}

// atOne returns where a function, below 1 at nothing, passes 1 for good.
func atOne(most float64, effort func(float64) float64) float64 {
	if effort(0) > 1 {
		return 0
	}
	if effort(most) <= 1 {
		return math.Inf(1)
	}
	lo, hi := 0.0, most
	for hi-lo > produceTolerance*hi && hi > 1e-3 {
		mid := (lo + hi) / 2
		if lo > 0 { // the answer's order of magnitude is known
			mid = math.Sqrt(lo * hi)
		}
		if effort(mid) > 1 {
			hi = mid
		} else {
			lo = mid
		}
	}
	return lo
}
