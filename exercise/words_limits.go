package exercise

import (
	"fmt"

	"steelyard/reference"
)

// maximumWords tells the predicted single and the load for repetitions.
func (r *Result) maximumWords() []string {
	p := r.Maximum
	switch {
	case p == nil:
		return nil
	case p.EmptyTooHeavy:
		return []string{"By these strengths the lift fails even with the load taken off; measure a strength of this person before believing that."}
	case p.Capped && p.Untested > 0:
		return []string{"No load is predicted: the " + enumerated(p.Doubtful) + " would be the limit, at angles nobody was tested at."}
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
		return fmt.Sprintf(" Over %.0f %% of the positions the %s may give out sooner, at angles nobody was tested at: start well below.", 100*p.Untested, enumerated(p.Doubtful))
	case p.Untested > 0:
		return " It rests on guesses: nobody was tested at any of these angles."
	}
	return ""
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
