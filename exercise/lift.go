package exercise

import (
	"errors"
	"fmt"

	"steelyard/human"
	"steelyard/mechanism"
	"steelyard/planar"
)

// ErrNoStrength is returned for a lift from which no strength follows.
var ErrNoStrength = errors.New("exercise: no joint with a known strength curve limits this lift, so it tells nothing; give a joint moment instead")

// liftSpread is the standard deviation of a strength read from a lift, over its
// value: how near to failure the set was, and the equations for repetitions.
// Working estimate, no source.
const liftSpread = 0.1

// StrengthFromLift returns what a known lift says of a person's strength. The
// result is that of the machine with the load that was lifted reps times, none
// left; capacity and sweep are those it was run with.
//
// The load for one repetition is the mean of both equations of package human.
// Under it the joint of the greatest effort gave all it could, at the angle
// where that is. Joints of less effort that are still asked for more than the
// published curve gives are known to be at least that strong, and are returned
// too. A joint that may be stronger than the lift shows stays as it was.
//
// It returns an error for repetitions outside 1 to human.MostRepetitions and
// [ErrNoStrength].
func (r *Result) StrengthFromLift(reps int, c *human.Capacity, sw *mechanism.Sweep) ([]human.Strength, error) {
	epley, ok1 := human.Epley.Maximum(reps)
	brzycki, ok2 := human.Brzycki.Maximum(reps)
	if !ok1 || !ok2 {
		return nil, fmt.Errorf("exercise: %d repetitions are outside 1 to %d; take a set that ended sooner", reps, human.MostRepetitions)
	}
	efforts := r.underLoad((epley+brzycki)/2, sw)
	var best *liftEffort
	for k := range efforts {
		if e := &efforts[k]; e.effort > 0 && (best == nil || e.effort > best.effort) {
			best = e
		}
	}
	if best == nil {
		return nil, ErrNoStrength
	}
	var out []human.Strength
	for k := range efforts {
		e := &efforts[k]
		can, ok := c.At(e.action, e.at, 0)
		if e != best && e.effort <= 1 || !ok {
			continue
		}
		how := fmt.Sprintf("from %d repetitions of the %v: all that the %s gave", reps, r.Setup.Exercise, e.joint.Body())
		if e != best {
			how = fmt.Sprintf("from %d repetitions of the %v: at least this", reps, r.Setup.Exercise)
		}
		// Between the shoulder's cardinal planes strength is a mixture; the
		// effort is what rescales it.
		m := can.Moment * e.effort
		out = append(out, human.Strength{Action: e.action, Angle: e.at, Moment: m, Spread: liftSpread * m, How: how})
	}
	return out, nil
}

// liftEffort is the greatest effort of one joint over a lift.
type liftEffort struct {
	joint  Joint
	action human.Action
	at     planar.Angle
	effort float64
}

// underLoad returns the greatest effort of each joint with the present load
// times k, leaving out guessed strengths. The shoulder's raising is told for
// the cardinal plane nearest.
func (r *Result) underLoad(k float64, sw *mechanism.Sweep) []liftEffort {
	now, fixed, perKg := r.loads(sw)
	out := make([]liftEffort, len(r.Lifting.Joints))
	for i := range r.lifting {
		if r.Gap[i] != "" {
			continue
		}
		st := r.lifting[i]
		f := sw.Lift[i] * k
		if perKg != nil {
			f = fixed[i] + perKg[i]*now*k
		}
		if st.push.mass > 0 {
			st.rehold(st.push.mass * k)
		}
		f /= r.Setup.Limbs()
		x, _ := st.solve(f, r.Direction)
		for j := range st.n {
			m := st.moment(j, f, x)
			d := &st.demands[j]
			effort, ok := d.effort(m)
			if c := &out[j]; ok && effort > c.effort && !d.guessed(m) {
				action, at := d.shown(&st.placement, m)
				*c = liftEffort{d.joint, action, at, effort}
			}
		}
	}
	return out
}

// guessed reports whether what is available for a moment is a guess.
func (d *demand) guessed(moment float64) bool {
	can := d.sense(moment)
	return can.Fallen || d.joint.guess(can.Extrapolated)
}

// sense returns what is available for a moment.
func (d *demand) sense(moment float64) *human.Available {
	if moment < 0 {
		return &d.can[1]
	}
	return &d.can[0]
}

// shown names the action and its angle for a moment, as a person would be
// measured in it.
func (d *demand) shown(p *Placement, moment float64) (a human.Action, at planar.Angle) {
	a, at = d.joint.actionOf(p.Arm, moment), d.angle
	switch a.Coordinate() {
	case human.ShoulderFlexion:
		at = p.Arm.Flexion()
	case human.ShoulderAbduction:
		at = p.Arm.Abduction()
	}
	return a, at
}
