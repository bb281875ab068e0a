package report

import (
	"math"

	"steelyard/evaluation"
	"steelyard/internal/sketch"
	"steelyard/profile"
)

// facts is the machine at one place of its travel, ready to be drawn. The
// state stands there.
type facts struct {
	sketch.Place
	Name   string  // "start", "hardest", "middle", "end"
	K      int     // position of the curve
	Row    int     // of the sweep
	Travel float64 // m
	Force  float64 // N, lifting
}

// factsAt brings the machine to position k of the curve, which has a force.
func factsAt(e *evaluation.Evaluation, name string, k int) (*facts, error) {
	row := e.Rows[k]
	p, err := sketch.PlaceAt(e, e.Model.NewState(), row)
	if err != nil {
		return nil, err
	}
	return &facts{Place: p, Name: name, K: k, Row: row, Travel: e.Curve.Travel[k], Force: e.Curve.Lift[k]}, nil
}

// atTheEnds is how close to an end of the travel, as a share of it, the peak is
// not worth a picture of its own: the middle is shown instead.
const atTheEnds = 0.1

// threePlaces returns the machine at the start, at its hardest (or in the
// middle, if it is hardest at an end) and at the end of what has a force.
func threePlaces(e *evaluation.Evaluation) ([3]*facts, error) {
	c := &e.Curve
	first, last := 0, len(c.Travel)-1
	for !c.Has(first) {
		first++
	}
	for !c.Has(last) {
		last--
	}
	names, share := threeNames(&e.Readings[profile.Lifting])
	var out [3]*facts
	for i, k := range [3]int{first, nearestWithForce(c, share*c.Length()), last} {
		var err error
		if out[i], err = factsAt(e, names[i], k); err != nil {
			return out, err
		}
	}
	if names[1] == hardest {
		out[1].Force = e.Readings[profile.Lifting].Peak.Force
	}
	return out, nil
}

const (
	hardest = "Hardest"
	middle  = "Middle"
)

// threeNames names the three places and returns the share of the travel at
// which the second lies.
func threeNames(r *profile.Readings) (names [3]string, share float64) {
	peak := r.Peak.Share
	switch {
	case r.Loads == profile.Evenly:
		return [3]string{"Start", middle, "End"}, 0.5
	case peak <= atTheEnds:
		return [3]string{"Start, hardest", middle, "End"}, 0.5
	case peak >= 1-atTheEnds:
		return [3]string{"Start", middle, "End, hardest"}, 0.5
	}
	return [3]string{"Start", hardest, "End"}, peak
}

// nearestWithForce returns the position nearest to a place on the travel that
// has a force.
func nearestWithForce(c *profile.Curve, travel float64) int {
	best := -1
	for k, s := range c.Travel {
		if c.Has(k) && (best < 0 || math.Abs(s-travel) < math.Abs(c.Travel[best]-travel)) {
			best = k
		}
	}
	return best
}
