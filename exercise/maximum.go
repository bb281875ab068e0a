package exercise

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/mechanism"
	"steelyard/profile"
)

// Prediction is the load at which the greatest effort of the whole lifting
// stroke becomes 1.
type Prediction struct {
	// Load in kg is what the machine calls its load, all of it, both limbs. Low
	// and High are for somebody as much weaker or stronger in every joint as
	// the bands of the strengths say. All are 0 where the machine has no load
	// that can be changed.
	Load, Low, High float64
	Present         float64 // kg, the load the machine has now
	// Factor is the same as a multiple of the machine's present force.
	Factor, FactorLow, FactorHigh float64
	Capped                        bool // the load is not the limit up to MostLoad or MostFactor
	EmptyTooHeavy                 bool // the effort passes 1 with no load at all
	// Untested is the share of the positions at which, under that load, a joint
	// may be asked for more than it has at an angle nobody tested; its strength
	// there is left out. Where it is above 0, all of the above is the most it can
	// be, and Doubtful names the joints. Where no strength is known anywhere it is
	// 1 and the guesses count.
	Untested float64
	Doubtful []string
}

// Bounds of a prediction.
const (
	MostLoad   = 2000.0 // kg
	MostFactor = 100.0
)

// ForRepetitions returns the range of loads (kg, or multiples of the present
// force where the machine has no load) for a number of repetitions with none
// left, by both equations of package human over the whole band, and the middle
// of the two for the predicted maximum. It is false outside 1 to
// human.MostRepetitions.
func (p *Prediction) ForRepetitions(n int) (middle float64, band profile.Interval, ok bool) {
	e, ok1 := human.Epley.Maximum(n)
	z, ok2 := human.Brzycki.Maximum(n)
	if !ok1 || !ok2 {
		return 0, profile.Interval{}, false
	}
	load, low, high := p.Load, p.Low, p.High
	if load == 0 {
		load, low, high = p.Factor, p.FactorLow, p.FactorHigh
	}
	return load * (1/e + 1/z) / 2, profile.Interval{Low: low / max(e, z), High: high / min(e, z)}, true
}

// predict finds the maximum: the greatest effort at the direction chosen for
// each load passes 1 once going up, see TestEffortPassesOnce. It
// holds for a slow lift: neither speed nor inertia counts.
func (r *Result) predict(sw *mechanism.Sweep) *Prediction {
	p := &Prediction{}
	r.tested = r.anyTested()
	now, fixed, perKg := r.loads(sw)
	share := 1 / r.Setup.Limbs()
	weight := func(i int, load float64) float64 { return (fixed[i] + perKg[i]*load) * share }
	factor := func(i int, k float64) float64 { return sw.Lift[i] * k * share }
	if perKg != nil {
		p.Present = now
		p.Load, p.Capped = r.atEffortOne(middleBand, weight, MostLoad)
		p.Low, _ = r.atEffortOne(lowBand, weight, MostLoad)
		p.High, _ = r.atEffortOne(highBand, weight, MostLoad)
		p.EmptyTooHeavy = p.Load == 0
	}
	if r.held() {
		r.doubtful(p, weight, p.Load) // what is held is its load
		return p
	}
	p.Factor, _ = r.atEffortOne(middleBand, factor, MostFactor)
	p.FactorLow, _ = r.atEffortOne(lowBand, factor, MostFactor)
	p.FactorHigh, _ = r.atEffortOne(highBand, factor, MostFactor)
	if perKg == nil {
		p.Capped = p.Factor >= MostFactor
		p.EmptyTooHeavy = p.Factor == 0
		r.doubtful(p, factor, p.Factor)
	} else {
		r.doubtful(p, weight, p.Load)
	}
	return p
}

// doubtful finds where the predicted load may already be too much for a joint
// whose strength is left out.
func (r *Result) doubtful(p *Prediction, force func(i int, load float64) float64, load float64) {
	if !r.tested {
		p.Untested = 1
		return
	}
	if p.EmptyTooHeavy {
		return
	}
	stances, rows := r.stancesWith(middleBand, false)
	beyond := 0
	for k := range stances {
		st, f := &stances[k], force(rows[k], load)
		if r.held() {
			st.rehold(load / r.Setup.Limbs())
		}
		x, z := st.solve(f, r.Direction)
		if z <= 1+2*predictTolerance {
			continue
		}
		beyond++
		for j := range st.n {
			d, m := &st.demands[j], st.moment(j, f, x)
			e, ok := d.effort(m)
			if name := d.joint.Body(); ok && e > 1 && d.guessed(m) && !slices.Contains(p.Doubtful, name) {
				p.Doubtful = append(p.Doubtful, name)
			}
		}
	}
	p.Untested = float64(beyond) / float64(max(1, len(rows)))
}

// predictTolerance is the relative error of a predicted load.
const predictTolerance = 1e-6

// which part of the band of a strength counts.
type bandPart int

const (
	middleBand bandPart = iota
	lowBand
	highBand
)

// atEffortOne returns the greatest load at which no effort passes 1: from the
// greatest there is down to what the worst position bears, until none is worse.
// Each position is the worst once at most.
func (r *Result) atEffortOne(part bandPart, force func(i int, load float64) float64, most float64) (load float64, capped bool) {
	stances, rows := r.stancesWith(part, r.tested)
	effort := func(k int, load float64) float64 {
		st := stances[k]
		if r.held() {
			st.rehold(load / r.Setup.Limbs())
		}
		_, z := st.solve(force(rows[k], load), r.Direction)
		return z
	}
	for k := range stances {
		if effort(k, 0) > 1 {
			return 0, false
		}
	}
	load = most
	for range stances {
		worst, greatest := -1, 1.0
		for k := range stances {
			if z := effort(k, load); z > greatest {
				worst, greatest = k, z
			}
		}
		if worst < 0 {
			break
		}
		load = atOne(load, predictTolerance, func(x float64) float64 { return effort(worst, x) })
	}
	return load, load == most
}

// stancesWith returns the stances of the positions that are reached, with a part
// of the band of the strengths, and their rows.
func (r *Result) stancesWith(part bandPart, tested bool) (stances []stance, rows []int) {
	for i := range r.lifting {
		if r.Gap[i] == "" {
			stances, rows = append(stances, r.lifting[i].at(part, tested)), append(rows, i)
		}
	}
	return stances, rows
}

// anyTested reports whether any strength anywhere is no guess.
func (r *Result) anyTested() bool {
	for k := range r.Lifting.Joints {
		c := &r.Lifting.Joints[k]
		for i, can := range c.Available {
			if r.Gap[i] == "" && can > 0 && !c.Guessed(i) {
				return true
			}
		}
	}
	return false
}

// at returns the stance with the strengths of one part of their band, and, if
// asked, without those that are guesses.
func (st *stance) at(part bandPart, tested bool) stance {
	out := *st
	for i := range out.n {
		for k := range out.demands[i].can {
			can := &out.demands[i].can[k]
			if tested && out.demands[i].joint.guess(can.Extrapolated || can.Fallen) {
				out.demands[i].has[k] = false
			}
			switch part {
			case lowBand:
				can.Moment = max(can.Low, 1e-3*can.Moment)
			case highBand:
				can.Moment = can.High
			}
		}
	}
	return out
}

// rehold changes the weight held to m kg.
func (st *stance) rehold(m float64) {
	more := m - st.push.mass
	for i := range st.n {
		st.demands[i].base += more * st.demands[i].perKg
	}
	st.push.fixed = r3.Add(st.push.fixed, r3.Scale(more, st.push.perKg))
	st.push.mass = m
}

// loads returns the machine's present load (kg) and its lifting force as fixed
// part and part per kg, from a second sweep with half the load, or nil slices
// if it has none. Exact at rest as long as friction grows with the load.
func (r *Result) loads(sw *mechanism.Sweep) (now float64, fixed, perKg []float64) {
	m := *r.Setup.model.Machine()
	m.Weights = append([]mechanism.Weight(nil), m.Weights...)
	for i := range m.Weights {
		if w := &m.Weights[i]; w.Load {
			now += w.Mass
			w.Mass, w.Inertia = w.Mass/2, w.Inertia/2
		}
	}
	if now == 0 {
		return 0, nil, nil
	}
	half, err := mechanism.Compile(m)
	if err != nil {
		return now, nil, nil
	}
	other, err := half.Sweep(sw.Len())
	if err != nil {
		return now, nil, nil
	}
	fixed, perKg = make([]float64, sw.Len()), make([]float64, sw.Len())
	for i := range fixed {
		if sw.Stops[i] != nil || other.Stops[i] != nil {
			continue
		}
		perKg[i] = (sw.Lift[i] - other.Lift[i]) / (now / 2)
		fixed[i] = sw.Lift[i] - perKg[i]*now
		if math.Abs(fixed[i]) < 1e-9*math.Abs(sw.Lift[i]) {
			fixed[i] = 0
		}
	}
	return now, fixed, perKg
}
