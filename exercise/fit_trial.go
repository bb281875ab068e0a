package exercise

import (
	"errors"
	"slices"

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
