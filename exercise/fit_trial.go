package exercise

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/mechanism"
	"steelyard/planar"
)

// Trial is one choice of settings and how it suits a person.
type Trial struct {
	Choice []int    // index into the values of each dial
	Err    error    // why the machine cannot be set so; then nothing else counts
	Equal  int      // other choices tried that are just as good
	Same   []string // dials that may stand anywhere without any difference

	Positions int          // along the travel
	Unreached int          // of them the body does not reach
	Short     float64      // m, the worst shortfall there
	OwnBeyond planar.Angle // the worst passing of a limit on the person's own sheet
	Beyond    planar.Angle // the worst passing of a usual limit
	Worst     Fault        // the one that is told
	WorstAt   float64      // m of travel, where it is
	Usable    [2]float64   // m of travel: the longest stretch without a fault; equal if there is none
	Travel    float64      // m, all of it

	HasAxis    bool
	Misaligned float64 // m, worst distance of the body joint from the machine's axis
	Off        r3.Vec  // m, from the axis to the joint: forward of the person, up, outward
	Joint      string  // that should be in line
	HasPad     bool
	Creep      float64 // m, the pad moves along the limb over the travel

	HasMargin bool
	Margin    float64 // m, by which the limb is shorter than straight where it is longest

	From, To planar.Angle // of the main coordinate, at the first and the last position reached
	Range    [2]planar.Angle
	Covered  float64 // share of the person's range between the least and the greatest angle

	Thirds [3]ThirdOfUse // lifting effort, lengthened to shortened
	Peak   float64       // the greatest effort of any joint, lifting
	loaded bool

	first, last int // positions of the usable stretch; last < first if there is none
	rank        int // of Worst
	enough      float64
	score       Score
}

// Used is the share of the travel that can be used: that of the longest stretch
// in which the body reaches the contact and no joint passes its limit.
func (t *Trial) Used() float64 {
	if t.Travel <= 0 {
		return 0
	}
	return (t.Usable[1] - t.Usable[0]) / t.Travel
}

// Fits reports whether enough of the travel can be used and no limit on the
// person's own sheet is passed anywhere.
func (t *Trial) Fits() bool {
	return t.Err == nil && t.OwnBeyond == 0 && t.Used() >= t.enough-1e-9 // rounding
}

// Shares returns the shares of the effort over the travel that fall in the
// lengthened, middle and shortened third; nothing where there is no effort.
func (t *Trial) Shares() [3]float64 {
	var out [3]float64
	total := 0.0
	for k, third := range t.Thirds {
		out[k] = third.Share * third.Mean
		total += out[k]
	}
	for k := range out {
		if total > 0 {
			out[k] /= total
		}
	}
	return out
}

// Values returns the value of each dial.
func (f *Fitting) Values(t *Trial) []Chosen {
	var out []Chosen
	for d, v := range t.Choice {
		out = append(out, Chosen{f.Dials[d].Name, f.Dials[d].Values[v]})
	}
	return out
}

// try measures one choice.
func (f *fitter) try(choice []int) *Trial {
	t := &Trial{Choice: choice, enough: f.enough}
	setup, sw, err := f.build(choice)
	if t.Err = err; err == nil {
		f.place(t, setup, sw)
		if f.out.Aim != NoAim && t.Unreached < t.Positions {
			f.effort(t, setup, sw)
		}
	}
	t.score = scoreOf(t, f.out.Aim)
	return t
}

// spot is what is seen at one position.
type spot struct {
	fault      Fault
	angle      planar.Angle // of the main coordinate
	along      float64      // m, of the pad along its limb
	slack      float64      // m
	misaligned float64      // m
	off        r3.Vec       // m, see offAxis
}

func (sp *spot) clean() bool { return sp.fault.Kind == NoFault }

// place goes along the travel and looks at reach, ranges and alignment.
func (f *fitter) place(t *Trial, s *Setup, sw *mechanism.Sweep) {
	b := f.out.Body
	t.Travel, t.Joint, t.HasAxis = sw.Travel[s.Len()-1], s.jointInLine(), s.Station.HasAxis
	t.HasPad = s.Station.Contact == Pad && s.Station.On != OnShoulders && s.Station.On != OnHips
	spots := make([]spot, s.Len())
	var pl Placement
	for i := range spots {
		sp := &spots[i]
		if sp.fault = s.Place(&pl, b, i); sp.fault.Kind == NotThere {
			continue // the machine's own gap is nobody's misfit
		}
		t.Positions++
		own := sp.fault.Kind == PastRange && slices.ContainsFunc(b.Person.Limits, func(l human.Limit) bool { return l.Motion == sp.fault.Motion })
		t.blame(sp.fault, own, sw.Travel[i])
		if !sp.fault.Placed() {
			continue
		}
		sp.angle, sp.along, sp.slack = angleOf(f.out.Action, &pl), pl.Along, slack(&pl)
		if t.HasAxis {
			sp.misaligned, sp.off = s.misalignment(&pl), s.offAxis(&pl)
		}
	}
	if t.Positions == 0 {
		t.Err = errors.New("the machine cannot be brought anywhere on its travel")
		return
	}
	t.use(spots, sw.Travel)
	t.measure(spots, s, b.Ranges[rangeOf(f.out.Action)])
}

// blame notes a fault. A limit on the person's own sheet is told before out of
// reach, that before a usual limit, and of each the worst.
func (t *Trial) blame(f Fault, own bool, at float64) {
	rank := 0
	switch {
	case f.Kind == NoFault:
		return
	case own:
		rank = 3
		t.OwnBeyond = max(t.OwnBeyond, planar.Angle(f.By))
	case f.Placed():
		rank = 1
		t.Beyond = max(t.Beyond, planar.Angle(f.By))
	default:
		rank = 2
		t.Unreached++
		t.Short = max(t.Short, f.By)
	}
	if rank > t.rank || rank == t.rank && f.By > t.Worst.By {
		t.rank, t.Worst, t.WorstAt = rank, f, at
	}
}

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
