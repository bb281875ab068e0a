package exercise

import (
	"fmt"
	"math"
	"strings"

	"steelyard/planar"
)

// straightBy is the margin to a straight limb below which the reader is told to
// stop short of locking it, m. Common practice, no source.
const straightBy = 0.010

// Reasons tells how a choice suits the person, a sentence each: what is wrong,
// alignment, reach, range, where it loads.
func (f *Fitting) Reasons(t *Trial) []string {
	if t.Err != nil {
		return []string{"The machine cannot be set so: " + t.Err.Error() + "."}
	}
	out := t.wrong()
	if t.HasAxis {
		out = append(out, t.alignment())
	}
	if t.HasMargin {
		out = append(out, t.reach())
	}
	if t.Unreached < t.Positions {
		out = append(out, fmt.Sprintf("%s from %.0f° to %.0f°: %.0f %% of this person's range of %.0f° to %.0f°.", sentence(rangeOf(f.Action).String()),
			t.From.Degrees(), t.To.Degrees(), 100*t.Covered, t.Range[0].Degrees(), t.Range[1].Degrees()))
	}
	if t.loaded {
		out = append(out, f.loads(t))
	}
	if len(t.Same) > 0 {
		same := sentence(enumerated(t.Same)) + " may stand anywhere: the fit stays as it is"
		if f.Aim == NoAim {
			same += "; what it does to the load, a search with an aim looks at"
		}
		out = append(out, same+".")
	}
	return out
}

// wrong tells what is out of reach or past a limit, and what is left.
func (t *Trial) wrong() []string {
	if t.Worst.Kind == NoFault {
		return []string{fmt.Sprintf("All %.0f mm of the travel can be used.", 1000*t.Travel)}
	}
	var out []string
	switch {
	case t.Used() == 0:
		out = append(out, "No part of the travel can be used.")
	default:
		out = append(out, fmt.Sprintf("Usable from %.0f to %.0f of %.0f mm of travel.", 1000*t.Usable[0], 1000*t.Usable[1], 1000*t.Travel))
	}
	what := lowerFirst(t.Worst.String())
	if t.rank == 1 {
		what += "; stop before it"
	}
	out = append(out, fmt.Sprintf("Worst at %.0f mm: %s.", 1000*t.WorstAt, what))
	if t.OwnBeyond > 0 {
		out = append(out, "That limit is on the person's own sheet: do not use it so without stops that keep clear of it.")
	}
	return out
}

// alignment tells how far the joint is from the machine's axis and what that does.
func (t *Trial) alignment() string {
	mm := 1000 * t.Misaligned
	s := fmt.Sprintf("The %s is %.0f mm from the machine's axis", t.Joint, mm)
	if where := t.whereabouts(); mm >= 2 && where != "" {
		s += " (" + where + ")"
	}
	switch {
	case t.Misaligned <= InLine:
		s += ": in line"
	case t.HasPad:
		s += fmt.Sprintf(": the pad creeps %.0f mm along the limb over the travel", 1000*t.Creep)
	}
	return s + "."
}

func (t *Trial) whereabouts() string {
	var parts []string
	for _, p := range [3]struct {
		by         float64
		more, less string
	}{{t.Off.Y, "above", "below"}, {t.Off.X, "in front", "behind"}, {t.Off.Z, "further out", "further in"}} {
		word := p.more
		if p.by < 0 {
			word = p.less
		}
		if mm := 1000 * math.Abs(p.by); mm >= 1 {
			parts = append(parts, fmt.Sprintf("%.0f mm %s", mm, word))
		}
	}
	return strings.Join(parts, ", ")
}

func (t *Trial) reach() string {
	if t.Margin < straightBy {
		return fmt.Sprintf("At its longest the limb is within %.0f mm of straight: stop short of locking it.", math.Ceil(1000*t.Margin))
	}
	return fmt.Sprintf("At its longest the limb reaches %.0f mm less than straight.", 1000*t.Margin)
}

func (f *Fitting) loads(t *Trial) string {
	s := t.Shares()
	if s == ([3]float64{}) {
		return fmt.Sprintf("No effort is known for %s here; the effort peaks at %s of what this person can produce.", f.Loaded(), inPercent(t.Peak))
	}
	return fmt.Sprintf("Effort of %s: %.0f %% in the lengthened third, %.0f %% in the middle, %.0f %% in the shortened; at the hardest place %s of what this person can produce in the joint that limits.",
		f.Loaded(), 100*s[0], 100*s[1], 100*s[2], inPercent(t.Peak))
}

// Trade tells how a choice compares with the best: what it gains, what it
// costs. It is empty for the best itself.
func (f *Fitting) Trade(t *Trial) string {
	best := &f.Best[0]
	if t == best {
		return ""
	}
	var gains, costs []string
	note := func(by, least float64, gain, cost string) {
		switch {
		case by >= least:
			gains = append(gains, fmt.Sprintf(gain, by))
		case -by >= least:
			costs = append(costs, fmt.Sprintf(cost, -by))
		}
	}
	if t.HasAxis && best.HasAxis {
		note(1000*(best.Misaligned-t.Misaligned), 1, "brings the "+t.Joint+" %.0f mm nearer the axis", "leaves the "+t.Joint+" %.0f mm further from the axis")
	}
	note(100*(t.Used()-best.Used()), 1, "lets %.0f %% more of the travel be used", "lets %.0f %% less of the travel be used")
	note((t.swept() - best.swept()).Degrees(), 1, "covers %.0f° more of the range", "covers %.0f° less of the range")
	if t.HasMargin && best.HasMargin {
		note(1000*(t.Margin-best.Margin), 5, "stays %.0f mm further from a straight limb", "comes %.0f mm closer to a straight limb")
	}
	mine, its := t.Shares(), best.Shares()
	third, what := Lengthened, "lengthened"
	if f.Aim == AimMiddle || f.Aim == AimShortened {
		third, what = int(f.Aim-AimLengthened), f.Aim.String()
	}
	if f.Aim == AimEven {
		note(100*(f.Aim.met(mine)-f.Aim.met(its)), 1, "spreads the effort more evenly by %.0f in 100", "spreads the effort less evenly by %.0f in 100")
	} else {
		note(100*(mine[third]-its[third]), 1, "puts %.0f %% more of the effort in the "+what+" third", "puts %.0f %% less of the effort in the "+what+" third")
	}
	note(100*(best.Peak-t.Peak), 2, "peaks %.0f points of effort lower", "peaks %.0f points of effort higher")
	return weighed(gains, costs)
}

func (t *Trial) swept() planar.Angle {
	return planar.Angle(t.Covered) * (t.Range[1] - t.Range[0])
}

// weighed joins gains and costs to a sentence about "it".
func weighed(gains, costs []string) string {
	switch {
	case len(gains) == 0 && len(costs) == 0:
		return "Against the best it makes no difference that can be told."
	case len(costs) == 0:
		return "Against the best it " + enumerated(gains) + "."
	case len(gains) == 0:
		return "Against the best it only " + enumerated(costs) + "."
	}
	return "Against the best it " + enumerated(gains) + ", but " + enumerated(costs) + "."
}
