package exercise

import (
	"math"

	"steelyard/human"
	"steelyard/mechanism"
	"steelyard/planar"
)

// rangeOf is the coordinate whose range counts for an action. The back's own
// bend is not told apart from that of the hips, so the hips' counts.
func rangeOf(a human.Action) human.Coordinate {
	if c := a.Coordinate(); c != human.TrunkFlexion {
		return c
	}
	return human.HipFlexion
}

// angleOf returns the angle of an action's coordinate.
func angleOf(a human.Action, pl *Placement) planar.Angle { return pl.Posture()[rangeOf(a)] }

// bodyJoint returns the joint an action is of, as a coach would name it.
func bodyJoint(a human.Action) string {
	if a.Coordinate() == human.TrunkFlexion {
		return Trunk.Body()
	}
	for j := range NumJoints {
		if j.coordinate() == a.Coordinate() {
			return j.Body()
		}
	}
	return ShoulderRaising.Body() // abduction, which raises the arm too
}

// load fills in the effort of a trial that was only placed.
func (f *fitter) load(t *Trial) {
	if t.loaded || t.Err != nil || t.Unreached == t.Positions {
		return
	}
	if setup, sw, err := f.build(t.Choice); err == nil {
		f.effort(t, setup, sw)
	}
}

// effort works out where the machine loads the muscle or joint that counts,
// lifting slowly, in the force direction that Run would choose.
func (f *fitter) effort(t *Trial, s *Setup, sw *mechanism.Sweep) {
	r := &Result{Setup: s, Body: f.out.Body, Travel: sw.Travel, Direction: s.direction(Options{})}
	if r.place(sw) != nil {
		return
	}
	for i := range r.Gap {
		if t.last >= t.first && (i < t.first || i > t.last) {
			r.Gap[i] = "not used"
		}
	}
	var err error
	if r.Lifting, err = r.phase(f.capacity, sw, Options{}, false); err != nil {
		return
	}
	t.loaded, t.Peak = true, r.Lifting.Peak()
	if f.out.OfMuscle {
		t.Thirds = r.thirdsOf(f.stretch, s.Exercise.Muscles()[0]).Thirds
		return
	}
	t.Thirds = r.thirdsOfAction(f.out.Action)
}

// thirdsOfAction is thirdsOf for the action of one joint: its muscles count as
// long where its angle is furthest back in the person's range.
func (r *Result) thirdsOfAction(a human.Action) [3]ThirdOfUse {
	length, effort := make([]float64, len(r.Gap)), make([]float64, len(r.Gap))
	i := r.Body.Ranges[rangeOf(a)]
	for k := range r.Gap {
		p := &r.Placements[k]
		length[k] = float64((angleOf(a, p) - i.Min.Angle) / (i.Max.Angle - i.Min.Angle))
		if a.Sign() > 0 {
			length[k] = 1 - length[k]
		}
		for j := range r.Lifting.Joints {
			c := &r.Lifting.Joints[j]
			if share := shareOf(a, c, p, k); share > 0 {
				effort[k] = max(effort[k], c.Effort[k]*share)
			}
		}
	}
	return weigh(length, effort, r.Travel, r.Gap)
}

// weigh sorts effort into thirds of a length, each position counting with its
// half of the travel to its neighbours. The means leave out where there is no
// figure, which is NaN.
func weigh(length, effort, travel []float64, gap []string) (thirds [3]ThirdOfUse) {
	var known [3]float64
	total := 0.0
	last := len(travel) - 1
	for i := range travel {
		if gap[i] != "" {
			continue
		}
		w := (travel[min(i+1, last)] - travel[max(i-1, 0)]) / 2
		k := thirdOf(length[i])
		thirds[k].Share += w
		total += w
		if !math.IsNaN(effort[i]) {
			thirds[k].Mean += w * effort[i]
			known[k] += w
		}
	}
	for k := range thirds {
		if known[k] > 0 {
			thirds[k].Mean /= known[k]
		}
		if total > 0 {
			thirds[k].Share /= total
		}
	}
	return thirds
}
