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
	Beyond    planar.Angle // the worst passing of a joint's limit
	Worst     Fault        // the one that is told
	WorstAt   float64      // m of travel, where it is
	OwnLimit  bool         // the limit passed is on the person's own sheet
	Usable    [2]float64   // m of travel: the longest stretch without a fault; equal if there is none
	Travel    float64      // m, all of it

	HasAxis    bool
	Misaligned float64 // m, worst distance of the body joint from the machine's axis
	Ahead, Up  float64 // m, the part of it forward (of the person; outward for a sheet drawn from in front) and up
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

	score Score
}

// Fits reports whether the body reaches every position within its limits.
func (t *Trial) Fits() bool { return t.Err == nil && t.Unreached == 0 && t.Beyond == 0 }

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
	t := &Trial{Choice: choice}
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

// place goes along the travel and looks at reach, ranges and alignment.
func (f *fitter) place(t *Trial, s *Setup, sw *mechanism.Sweep) {
	b := f.out.Body
	t.Travel, t.Joint = sw.Travel[s.Len()-1], s.jointInLine()
	w := walk{action: f.out.Action, interval: b.Ranges[rangeOf(f.out.Action)]}
	var pl Placement
	for i := range s.Len() {
		fault := s.Place(&pl, b, i)
		w.free(t, fault.Kind == NoFault, sw.Travel[i])
		if fault.Kind == NotThere {
			continue // the machine's own gap is nobody's misfit
		}
		t.Positions++
		if fault.Kind != NoFault {
			t.blame(fault, sw.Travel[i])
		}
		if fault.Placed() {
			w.see(t, s, &pl)
		}
	}
	w.finish(t, s)
	if t.Positions == 0 {
		t.Err = errors.New("the machine cannot be brought anywhere on its travel")
	}
	t.OwnLimit = t.Worst.Kind == PastRange && slices.ContainsFunc(b.Person.Limits, func(l human.Limit) bool { return l.Motion == t.Worst.Motion })
}

// blame notes a fault. Out of reach is told before past a limit, and of each
// the worst.
func (t *Trial) blame(f Fault, at float64) {
	var worse bool
	if f.Placed() {
		worse = t.Unreached == 0 && f.By > float64(t.Beyond)
		t.Beyond = max(t.Beyond, planar.Angle(f.By))
	} else {
		worse = t.Unreached == 0 || f.By > t.Short
		t.Unreached++
		t.Short = max(t.Short, f.By)
	}
	if worse {
		t.Worst, t.WorstAt = f, at
	}
}

// walk is what is carried from position to position.
type walk struct {
	action    human.Action
	interval  human.Interval
	seen      bool
	low, high planar.Angle
	near, far float64 // of a pad along its limb
	start     float64 // of the present stretch without a fault
	open      bool
}

// free lengthens or ends the stretch without a fault.
func (w *walk) free(t *Trial, ok bool, at float64) {
	if ok && !w.open {
		w.start = at
	}
	w.open = ok
	if ok && at-w.start > t.Usable[1]-t.Usable[0] {
		t.Usable = [2]float64{w.start, at}
	}
}

func (w *walk) see(t *Trial, s *Setup, pl *Placement) {
	angle := angleOf(w.action, pl)
	if !w.seen {
		w.low, w.high, t.From = angle, angle, angle
		w.near, w.far = pl.Along, pl.Along
		t.Margin = slack(pl)
	}
	w.seen = true
	w.low, w.high, t.To = min(w.low, angle), max(w.high, angle), angle
	w.near, w.far = min(w.near, pl.Along), max(w.far, pl.Along)
	t.Margin = min(t.Margin, slack(pl))
	if d, has := s.Misalignment(pl); has && d >= t.Misaligned {
		t.HasAxis, t.Misaligned = true, d
		off := r3.Sub(pl.Joint, s.Axis)
		t.Ahead, t.Up = off.X*s.Station.ahead(), off.Y
		if s.Station.FromFront {
			t.Ahead = off.Z
		}
	}
}

func (w *walk) finish(t *Trial, s *Setup) {
	t.HasPad = s.Station.Contact == Pad && s.Station.On != OnShoulders && s.Station.On != OnHips
	t.HasMargin = w.seen && s.straightens()
	if !w.seen {
		return
	}
	t.Creep = w.far - w.near
	lo, hi := w.interval.Min.Angle, w.interval.Max.Angle
	t.Range = [2]planar.Angle{lo, hi}
	t.Covered = float64(max(0, min(w.high, hi)-max(w.low, lo))) / float64(hi-lo)
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
