package profile

import "math"

const (
	// peakTolerance ends the bisection, relative to the load.
	peakTolerance = 1e-9

	// peakSteps bounds both the doubling and the halving of the bracket.
	peakSteps = 100
)

// solvePeak returns the load in kg at which the peak is want.
//
// Over the positions alone the peak is max(a + b·load) ≤ want exactly when
// every position holds, which is an interval of loads; its ends are the loads
// sought. The refined peak is at least as high, so the answer lies from that
// end towards the inside of the interval.
func (m Loadable) solvePeak(want float64) (load float64, ok bool) {
	low, high := math.Inf(-1), math.Inf(1)
	for i, b := range m.PerLoad {
		if !onSegment(m.Gap, len(m.Travel), i) {
			continue
		}
		limit := (want - m.Fixed[i]) / b
		switch {
		case b > 0:
			high = min(high, limit)
		case b < 0:
			low = max(low, limit)
		case m.Fixed[i] > want:
			return 0, false
		}
	}
	end, inward := high, -1.
	if m.slopeOf(Mean) < 0 || math.IsInf(high, 1) {
		end, inward = low, 1
	}
	if low > high || math.IsInf(end, 0) {
		return 0, false
	}
	return m.refinePeak(want, end, inward)
}

// refinePeak brackets the load from the end of the interval inward, where the
// refined peak falls below want, and bisects.
func (m Loadable) refinePeak(want, end, inward float64) (float64, bool) {
	over := func(load float64) bool {
		o, err := read(m.At(load), Partial{}, Holding)
		return err == nil && o.values[PeakForce].v > want
	}
	if !over(end) {
		return end, true
	}
	scale := math.Abs(end) + 1
	in, step := end, scale*1e-4
	for range peakSteps {
		in = end + inward*step
		if !over(in) {
			break
		}
		step *= 2
	}
	if over(in) {
		return 0, false
	}
	out := end
	for range peakSteps {
		if math.Abs(out-in) <= peakTolerance*scale {
			break
		}
		if mid := (in + out) / 2; over(mid) {
			out = mid
		} else {
			in = mid
		}
	}
	return in, true
}
