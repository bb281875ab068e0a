package exercise

import (
	"fmt"
	"math"
	"slices"
	"strings"
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
	return []string{sentence(strings.Join(parts, "; ")) + "."}
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
		part := fmt.Sprintf("%s for %.0f %% of the way at %s", names[k], 100*third.Share, inPercent(third.Mean))
		if third.Guess {
			part += " (in part a guess)"
		}
		parts = append(parts, part)
	}
	return []string{fmt.Sprintf("The %v: %s (mean effort).", t.Muscle, strings.Join(parts, ", "))}
}
