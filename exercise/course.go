package exercise

import (
	"sort"

	"steelyard/mechanism"
)

// smooth is the minimum-jerk course from 0 to 1, value and first two
// derivatives: the one mechanism.Tempo follows. T. Flash and N. Hogan, "The
// coordination of arm movements", J Neurosci 5 (1985) 1688 (from memory).
func smooth(t float64) (x, v, a float64) {
	return t * t * t * (10 + t*(6*t-15)), 30 * t * t * (1 - t) * (1 - t), 60 * t * (1 - t) * (1 - 2*t)
}

// when returns the t at which smooth reaches x in [0, 1], by halving.
func when(x float64) float64 {
	lo, hi := 0.0, 1.0
	for range 60 {
		t := (lo + hi) / 2
		if y, _, _ := smooth(t); y < x {
			lo = t
		} else {
			hi = t
		}
	}
	return (lo + hi) / 2
}

// gait is the speed (m/s) and acceleration (m/s²) of the contact along its path
// at a share of the travel, towards the end of the travel.
func gait(share, whole float64, tempo *mechanism.Tempo, lowering bool) (v, a float64) {
	if tempo == nil {
		return 0, 0
	}
	if lowering {
		_, v, a = smooth(when(1 - share))
		return -whole * v / tempo.Down, -whole * a / (tempo.Down * tempo.Down)
	}
	_, v, a = smooth(when(share))
	return whole * v / tempo.Up, whole * a / (tempo.Up * tempo.Up)
}

// strokeRows is how finely a repetition is played to read its forces from.
const strokeRows = 801

// forces returns the machine's force in N along the path at every position of
// the sweep, lifting or lowering; at a tempo with the machine's inertia and
// damping, straight between the rows of the stroke.
func forces(md *mechanism.Model, sw *mechanism.Sweep, tempo *mechanism.Tempo, lowering bool) ([]float64, error) {
	if tempo == nil {
		if lowering {
			return sw.Lower, nil
		}
		return sw.Lift, nil
	}
	r, err := md.Stroke(sw, *tempo, strokeRows)
	if err != nil {
		return nil, err
	}
	var at, force []float64
	sense := mechanism.Lift
	if lowering {
		sense = mechanism.Lower
	}
	for i, s := range r.Travel {
		if r.Sense[i] == sense {
			at, force = append(at, s), append(force, r.Force[i])
		}
	}
	if lowering {
		for i, j := 0, len(at)-1; i < j; i, j = i+1, j-1 {
			at[i], at[j], force[i], force[j] = at[j], at[i], force[j], force[i]
		}
	}
	out := make([]float64, sw.Len())
	for i, s := range sw.Travel {
		out[i] = between(at, force, s)
	}
	return out, nil
}

// between reads a table by straight lines; beyond its ends it keeps the end.
func between(x, y []float64, at float64) float64 {
	k := sort.SearchFloat64s(x, at)
	if k == 0 || k == len(x) || x[k] == x[k-1] {
		return y[min(k, len(x)-1)]
	}
	t := (at - x[k-1]) / (x[k] - x[k-1])
	return y[k-1] + t*(y[k]-y[k-1])
}
