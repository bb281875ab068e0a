package exercise

import (
	"fmt"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/planar"
)

// use finds the longest stretch of the travel without a fault.
func (t *Trial) use(spots []spot, travel []float64) {
	t.first, t.last = 0, -1
	start := -1
	for i := range spots {
		switch {
		case !spots[i].clean():
			start = -1
			continue
		case start < 0:
			start = i
		}
		if t.last < 0 || travel[i]-travel[start] > t.Usable[1]-t.Usable[0] {
			t.first, t.last, t.Usable = start, i, [2]float64{travel[start], travel[i]}
		}
	}
}

// measure fills in what holds over the stretch without a fault, or where there
// is none over all positions in which the body can be placed.
func (t *Trial) measure(spots []spot, s *Setup, limits human.Interval) {
	if t.last >= 0 {
		spots = spots[t.first : t.last+1]
	}
	spots = slices.DeleteFunc(slices.Clone(spots), func(sp spot) bool { return !sp.fault.Placed() })
	lo, hi := limits.Min.Angle, limits.Max.Angle
	t.Range = [2]planar.Angle{lo, hi}
	if len(spots) == 0 {
		return
	}
	first, last := &spots[0], &spots[len(spots)-1]
	t.HasMargin, t.Margin, t.From, t.To = s.straightens(), first.slack, first.angle, last.angle
	low, high, near, far := first.angle, first.angle, first.along, first.along
	for i := range spots {
		sp := &spots[i]
		low, high, near, far = min(low, sp.angle), max(high, sp.angle), min(near, sp.along), max(far, sp.along)
		t.Margin = min(t.Margin, sp.slack)
		if sp.misaligned >= t.Misaligned {
			t.Misaligned, t.Off = sp.misaligned, sp.off
		}
	}
	t.Creep = far - near
	t.Covered = float64(max(0, min(high, hi)-max(low, lo))) / float64(hi-lo)
}

// offAxis returns the shortest way from the machine's axis to the body joint (m):
// forward of the person, up and outward.
func (s *Setup) offAxis(pl *Placement) r3.Vec {
	along := r3.Cross(s.space.x, s.space.y)
	d := r3.Sub(pl.Joint, s.Axis)
	d = r3.Sub(d, r3.Scale(r3.Dot(d, along), along))
	d.X *= s.Station.ahead()
	return d
}

// slack is how much shorter a limb reaches than straight, m.
func slack(pl *Placement) float64 {
	p := &pl.Limb
	return r3.Norm(r3.Sub(p.Mid, p.Root)) + r3.Norm(r3.Sub(p.End, p.Mid)) - r3.Norm(r3.Sub(p.End, p.Root))
}

// straightens reports whether it matters how straight the limb gets: it reaches
// to a contact and its middle joint is not held straight on purpose.
func (s *Setup) straightens() bool {
	switch s.Exercise {
	case StandingCalfRaise, Fly, ReverseFly, LateralRaise:
		return false
	}
	on := s.Station.On
	return on == NoPart || on == OnShoulders || on == OnHips
}

// jointInLine names the body joint that Placement.Joint is.
func (s *Setup) jointInLine() string {
	switch {
	case s.Station.On == OnThigh || s.Station.On == OnTrunk:
		return "hip"
	case s.Station.On == OnUpperArm || catalogue[s.Exercise].elbowBack && s.Exercise.Limb() == human.Arm:
		return "shoulder"
	case s.Exercise == StandingCalfRaise || s.Exercise == SeatedCalfRaise:
		return "ankle"
	case s.Exercise.Limb() == human.Arm:
		return "elbow"
	}
	return "knee"
}

// actionAt returns the action the exercise trains at a joint named as a coach
// would, or its main one for no name.
func (e Exercise) actionAt(joint string) (human.Action, error) {
	if joint == "" {
		return e.Works()[0], nil
	}
	var names []string
	for _, a := range e.Works() {
		name := bodyJoint(a)
		if name == joint || a.String() == joint {
			return a, nil
		}
		names = append(names, a.String())
	}
	return 0, fmt.Errorf("%v trains no joint called %q; name the joint of one of these: %s", e, joint, strings.Join(names, ", "))
}
