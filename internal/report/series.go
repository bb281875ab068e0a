package report

import (
	"math"
	"slices"

	"steelyard/evaluation"
	"steelyard/internal/draw"
	"steelyard/profile"
)

// series is the curve in the reader's units, gaps as NaN.
type series struct {
	travel, lift, hold, lower []float64
	low, high                 []float64 // of the band; all NaN without one
	rubs, banded              bool
}

func seriesOf(e *evaluation.Evaluation, u units) series {
	c := &e.Curve
	s := series{travel: every(c.Travel, u.length), rubs: e.Rubs(), banded: e.Band != nil}
	s.lift, s.hold, s.lower = every(c.Lift, u.force), every(c.Hold, u.force), every(c.Lower, u.force)
	s.low, s.high = make([]float64, len(c.Travel)), make([]float64, len(c.Travel))
	for i := range c.Travel {
		s.low[i], s.high[i] = math.NaN(), math.NaN()
		if !c.Has(i) {
			s.lift[i], s.hold[i], s.lower[i] = math.NaN(), math.NaN(), math.NaN()
		} else if s.banded {
			s.low[i], s.high[i] = u.force.FromSI(e.Band.Between[i].Low), u.force.FromSI(e.Band.Between[i].High)
		}
	}
	return s
}

// gapsOf lists the stretches without a force: first and last position, reason.
func gapsOf(c *profile.Curve) []gap {
	var out []gap
	for i := range c.Travel {
		if c.Has(i) {
			continue
		}
		if n := len(out); n > 0 && out[n-1].last == i-1 && out[n-1].reason == c.Gap[i] {
			out[n-1].last = i
			continue
		}
		out = append(out, gap{i, i, c.Gap[i]})
	}
	return out
}

type gap struct {
	first, last int
	reason      profile.Reason
}

// words says in a few words why there is no force.
func (g gap) words() string {
	switch g.reason {
	case profile.DeadPoint:
		return "no force: dead point"
	case profile.Slack:
		return "no force: rope slack"
	}
	return "out of reach"
}

// spike is how many times the force that nine places in ten keep below is still
// drawn to scale; a dead point would squash all the rest.
const spike = 3

// ceiling returns the greatest size of force in N that pictures are scaled to:
// of the lifting force and its band, unless a spike of them stands far above
// the rest.
func ceiling(e *evaluation.Evaluation) float64 {
	var sizes []float64
	for k, f := range e.Curve.Lift {
		if e.Curve.Has(k) {
			size := max(math.Abs(f), math.Abs(e.Curve.Lower[k]))
			if e.Band != nil {
				size = max(size, math.Abs(e.Band.Between[k].Low), math.Abs(e.Band.Between[k].High))
			}
			sizes = append(sizes, size)
		}
	}
	slices.Sort(sizes)
	return min(sizes[len(sizes)-1], spike*sizes[9*(len(sizes)-1)/10])
}

// forceAxis spans all of the curve, save for spikes far above the rest.
func forceAxis(e *evaluation.Evaluation, u units, s series) draw.Axis {
	y := draw.Span("Force along the path", u.force.Symbol(), s.lift, s.hold, s.lower, s.low, s.high).FromZero()
	full := u.force.FromSI(ceiling(e))
	y.Lo, y.Hi = max(y.Lo, -full), min(y.Hi, full)
	return y.Round()
}
