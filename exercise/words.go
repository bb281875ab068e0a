package exercise

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"steelyard/reference"
)

// Words says what the travel asks of this person, plain words first: where it
// is hardest and for what, what is out of reach or past a limit, how long the
// muscles are when they work, what could be lifted, and how sure that is.
func (r *Result) Words() []string {
	var w []string
	w = append(w, r.faultWords()...)
	w = append(w, r.headline())
	w = append(w, r.quietWords()...)
	w = append(w, r.untestedWords()...)
	w = append(w, r.lowering()...)
	w = append(w, r.tempoWords()...)
	w = append(w, r.thirdWords()...)
	w = append(w, r.maximumWords()...)
	w = append(w, r.alignWords()...)
	w = append(w, r.ankleWords()...)
	w = append(w, r.tipWords()...)
	w = append(w, r.forceWords())
	w = append(w, r.doubts()...)
	for _, note := range r.Body.Person.Avoid {
		w = append(w, "This person's sheet says to stay away from: "+note+".")
	}
	return w
}

// headline: hardest for the shoulder at the start, 82 % of what she can produce
// there.
func (r *Result) headline() string {
	p := &r.Lifting
	if p.Sticking < 0 {
		return "No strength is known, at the angles of this travel, for any joint that works, so no effort can be told."
	}
	c := &p.Joints[p.Limiting]
	i := p.Sticking
	text := fmt.Sprintf("Hardest for the %s %s, %s of what %s can produce there in %v", c.Joint.Body(), r.where(i), inPercent(c.Effort[i]), r.who(), c.Action[i])
	text += fmt.Sprintf(" (%s to %s over the band of that strength)", inPercent(c.Low[i]), inPercent(c.High[i]))
	if c.Guessed(i) {
		return text + ": a guess, for nobody was tested at such angles."
	}
	return text + "."
}

// inPercent writes an effort in per cent; what is beyond any use is said so.
func inPercent(e float64) string {
	if e >= 10 {
		return "far more than all"
	}
	return fmt.Sprintf("%.0f %%", 100*e)
}

func (r *Result) who() string {
	return [...]string{"this person", "she", "he"}[r.Body.Person.Sex]
}

// share returns how far along the travel a position is.
func (r *Result) share(i int) float64 {
	n := len(r.Travel) - 1
	if r.Travel[n] == r.Travel[0] {
		return 0
	}
	return (r.Travel[i] - r.Travel[0]) / (r.Travel[n] - r.Travel[0])
}

func (r *Result) where(i int) string {
	switch s := r.share(i); {
	case s < 0.05:
		return "at the start"
	case s > 0.95:
		return "at the end"
	case s > 0.4 && s < 0.6:
		return "half-way"
	default:
		return fmt.Sprintf("%.0f %% of the way up", 100*s)
	}
}

// quietWords says of the other body joints how far they go at the most.
func (r *Result) quietWords() []string {
	p := &r.Lifting
	if p.Sticking < 0 {
		return nil
	}
	limiting := p.Joints[p.Limiting].Joint.Body()
	var order []string
	most := map[string]float64{}
	for k := range p.Joints {
		c := &p.Joints[k]
		body := c.Joint.Body()
		if body == limiting {
			continue
		}
		if _, seen := most[body]; !seen {
			order = append(order, body)
		}
		for i, e := range c.Effort {
			if !c.Guessed(i) && r.Gap[i] == "" {
				most[body] = max(most[body], e)
			}
		}
	}
	var parts []string
	for _, body := range order {
		switch {
		case most[body] >= evenly*p.Peak():
			parts = append(parts, fmt.Sprintf("the %s is taxed as much, %s", body, inPercent(most[body])))
		case most[body] > 0:
			parts = append(parts, fmt.Sprintf("the %s never passes %s", body, inPercent(most[body])))
		}
	}
	if len(parts) == 0 {
		return nil
	}
	return []string{capital(strings.Join(parts, "; ")) + "."}
}

// untestedWords tells how much of the travel has no figure, or only a guess, for
// want of anybody tested at those angles.
func (r *Result) untestedWords() []string {
	p := &r.Lifting
	var out []string
	if first := slices.IndexFunc(p.Unknown, func(why string) bool { return why != "" }); first >= 0 {
		out = append(out, fmt.Sprintf("Over %.0f %% of the travel no effort is told: %s.", 100*r.over(func(i int) bool { return p.Unknown[i] != "" }), p.Unknown[first]))
	}
	for k := range p.Joints {
		c := &p.Joints[k]
		most := 0.0
		for i, e := range c.Effort {
			if c.Guessed(i) && !c.Untested[i] {
				most = max(most, e)
			}
		}
		if most > p.Peak() {
			out = append(out, fmt.Sprintf("Where the %s is bent further than anybody tested its effort might reach %s: a guess, and not counted.", c.Joint.Body(), inPercent(most)))
		}
	}
	return out
}

// over returns the share of the placed positions of which something holds.
func (r *Result) over(holds func(i int) bool) float64 {
	n, placed := 0, 0
	for i, gap := range r.Gap {
		if gap != "" {
			continue
		}
		placed++
		if holds(i) {
			n++
		}
	}
	return float64(n) / float64(max(1, placed))
}

// evenly is the share of the greatest effort from which another joint is taxed
// as much.
const evenly = 0.97

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

func (r *Result) lowering() []string {
	up, down := r.Lifting.Peak(), r.Lowering.Peak()
	if up == 0 || math.Abs(up-down) < 0.03*up {
		return nil
	}
	return []string{fmt.Sprintf("Lowering takes %s at the most, lifting %s.", inPercent(down), inPercent(up))}
}

func (r *Result) tempoWords() []string {
	if r.Still == nil {
		return nil
	}
	return []string{fmt.Sprintf("At this tempo lifting takes %s at the most; held still it would be %s.", inPercent(r.Lifting.Peak()), inPercent(r.Still.Peak()))}
}

// thirdWords tells the main muscle's thirds.
func (r *Result) thirdWords() []string {
	if len(r.Thirds) == 0 {
		return nil
	}
	t := &r.Thirds[0]
	names := [3]string{"long", "middling", "short"}
	var parts []string
	for k, third := range t.Thirds {
		if third.Share < 0.005 {
			parts = append(parts, "never "+names[k])
			continue
		}
		parts = append(parts, fmt.Sprintf("%s for %.0f %% of the way at %s", names[k], 100*third.Share, inPercent(third.Mean)))
	}
	return []string{fmt.Sprintf("The %v: %s (mean effort).", t.Muscle, strings.Join(parts, ", "))}
}

// maximumWords tells the predicted single and the load for repetitions.
func (r *Result) maximumWords() []string {
	p := r.Maximum
	switch {
	case p == nil:
		return nil
	case p.EmptyTooHeavy:
		return []string{"By these strengths the lift fails even with the load taken off; measure a strength of this person before believing that."}
	case p.Capped && p.Untested > 0:
		return []string{"No load is predicted: " + joined(p.Doubtful) + " would be the limit, at angles nobody was tested at."}
	case p.Capped:
		return []string{"No joint limits the load within anything a machine could carry."}
	}
	const usual = 8
	unit := func(x float64) string { return fmt.Sprintf("%.0f kg", x) }
	what, load, low, high := "load", p.Load, p.Low, p.High
	if p.Load == 0 {
		what, load, low, high = "force", p.Factor, p.FactorLow, p.FactorHigh
		unit = func(x float64) string { return fmt.Sprintf("%.1f times the present one", x) }
	}
	bound := "about"
	if len(p.Doubtful) > 0 {
		bound = "at most"
	}
	text := fmt.Sprintf("One slow lift should be possible up to a %s of %s %s (%s to %s)", what, bound, unit(load), unit(low), unit(high))
	if middle, band, ok := p.ForRepetitions(usual); ok {
		text += fmt.Sprintf(", %d repetitions up to %s %s (%s to %s)", usual, bound, unit(middle), unit(band.Low), unit(band.High))
	}
	text += ". The first is where an effort becomes 100 %, the second follows from it by Epley's and Brzycki's equations."
	if r.anyGap() {
		text += " Only the part of the travel that can be reached is counted."
	}
	return []string{text + p.doubtWords()}
}

// doubtWords tells what the predicted load does not know.
func (p *Prediction) doubtWords() string {
	switch {
	case len(p.Doubtful) > 0:
		return fmt.Sprintf(" Over %.0f %% of the positions %s may give out sooner, at angles nobody was tested at: start well below.", 100*p.Untested, joined(p.Doubtful))
	case p.Untested > 0:
		return " It rests on guesses: nobody was tested at any of these angles."
	}
	return ""
}

// joined writes "the hip, the knee or the ankle".
func joined(bodies []string) string {
	text := "the " + bodies[0]
	for i, body := range bodies[1:] {
		between := ", the "
		if i == len(bodies)-2 {
			between = " or the "
		}
		text += between + body
	}
	return text
}

func (r *Result) anyGap() bool {
	for _, g := range r.Gap {
		if g != "" {
			return true
		}
	}
	return false
}

// forceWords tells how the force's direction came about, and whose it is.
func (r *Result) forceWords() string {
	limbs := "each figure is of one limb, which takes half of the machine's force"
	switch {
	case r.Setup.Mirrored:
		limbs = "each figure is of one side, whose arm of the machine is its own"
	case r.Setup.Station.OneLimb:
		limbs = "one limb takes all of the force"
	}
	return fmt.Sprintf("The force acts %v; %s.", r.Direction, limbs)
}

// doubts names the joints whose strength rests on memory, estimates or our own
// interpolation.
func (r *Result) doubts() []string {
	weak := map[string]reference.Mark{}
	var order []string
	stretched := false
	for k := range r.Lifting.Joints {
		c := &r.Lifting.Joints[k]
		for i := range c.Stretched {
			stretched = stretched || c.Stretched[i] && r.Gap[i] == ""
		}
		if !c.Weakest.Weak() || c.Rescaled {
			continue
		}
		if _, seen := weak[c.Joint.Body()]; !seen {
			order = append(order, c.Joint.Body())
		}
		weak[c.Joint.Body()] = weak[c.Joint.Body()].Weakest(c.Weakest)
	}
	var out []string
	for _, body := range order {
		out = append(out, fmt.Sprintf("The strength of the %s is weakly founded (%v); a measured moment or a known lift would mend that.", body, weak[body]))
	}
	if stretched {
		out = append(out, "Some strengths are taken beyond the angles or speeds their sources tested; those places are marked.")
	}
	return out
}
