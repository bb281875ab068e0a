package sheet

import (
	"fmt"

	"steelyard/human"
	"steelyard/planar"
	"steelyard/reference"
)

// Explain tells what was understood of the person, what a survey fills in, and
// what would make results closer.
func (p *Person) Explain() (Explanation, error) {
	b, warnings, err := human.NewBody(p.Person)
	if err != nil {
		return Explanation{}, err
	}
	var e Explanation
	who := &p.Person
	e.Understood = append(e.Understood, fmt.Sprintf("%s is %.2f m tall and weighs %.1f kg", p.called(), who.Height, who.Mass))
	if who.Sex != reference.Unstated {
		e.Understood = append(e.Understood, fmt.Sprintf("sex %v", who.Sex))
	} else {
		e.Missing = append(e.Missing, "the sex is not given: tables of women and of men are both used, and the bands cover both")
	}
	if who.Age > 0 {
		e.Understood = append(e.Understood, fmt.Sprintf("age %.0f years", who.Age))
	} else {
		e.Missing = append(e.Missing, "the age is not given: strength is taken as a young adult's")
	}
	e.lengths(b)
	for _, l := range who.Limits {
		e.Understood = append(e.Understood, fmt.Sprintf("%v goes to %.0f°", l.Motion, l.Angle.Degrees()))
	}
	e.strength(p)
	for _, a := range who.Avoid {
		e.Understood = append(e.Understood, fmt.Sprintf("stays away from: %s (shown beside results, not computed)", a))
	}
	for _, w := range append(p.Warnings, warnings...) {
		e.Assumed = append(e.Assumed, w.String())
	}
	return e, nil
}

func (p *Person) called() string {
	if p.Name == "" {
		return "the person"
	}
	return p.Name
}

// lengths tells where each length comes from that a machine may ask for.
func (e *Explanation) lengths(b *human.Body) {
	for d := range reference.NumDimensions {
		if d == reference.Stature || d == reference.Mass {
			continue
		}
		s := b.Size[d]
		line := fmt.Sprintf("%v %.0f±%.0f mm (%v)", d, 1000*s.Value, 2000*s.Spread, s.Origin)
		if s.Origin == human.Given {
			e.Understood = append(e.Understood, line)
		} else {
			e.Assumed = append(e.Assumed, line)
		}
	}
}

func (e *Explanation) strength(p *Person) {
	for _, s := range p.Person.Strength {
		e.Understood = append(e.Understood, fmt.Sprintf("%v gives %.0f N·m at %.0f°", s.Action, s.Moment, planar.Angle(s.Angle).Degrees()))
	}
	for _, l := range p.Lifts {
		e.Understood = append(e.Understood, fmt.Sprintf("lifted %.4g kg on %q %d times", l.Load, l.Machine, l.Repetitions))
	}
	if len(p.Person.Strength)+len(p.Lifts) == 0 {
		e.Missing = append(e.Missing, "no strength was measured: it comes from tables alone, whose people differ by a third and more")
	}
}
