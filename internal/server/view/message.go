package view

import (
	"fmt"
	"strings"

	"steelyard/profile"
)

// thirdOf names the third of the movement that a share of it lies in.
func thirdOf(share float64) string {
	switch {
	case share < 1.0/3:
		return "first third"
	case share <= 2.0/3:
		return "middle third"
	}
	return "last third"
}

// message is the stroke in a few lines, ready to be sent to a client.
func (t teller) message() string {
	lines := append([]string{t.intro()}, t.verdict()...)
	return strings.Join(append(lines, "A model, not a measurement of safety. Start light and stop at pain."), "\n")
}

// verdict says where it is hard and where easy, how sure that is, and whose
// force it is.
func (t teller) verdict() []string {
	r := t.lifting()
	lines := []string{t.loads()}
	most, least := t.ranged(profile.PeakForce), t.ranged(profile.LeastForce)
	switch {
	case most == least:
		lines = append(lines, fmt.Sprintf("It takes %s.", most))
	case r.Loads == profile.Evenly:
		lines = append(lines, fmt.Sprintf("At the most it takes %s, at the least %s.", most, least))
	default:
		lines = append(lines, fmt.Sprintf("The hardest moment comes in the %s of the movement, %s; the easiest in the %s, %s.", thirdOf(r.Peak.Share), most, thirdOf(r.Least.Share), least))
	}
	if r.Loads != profile.Unknown {
		lines = append(lines, fmt.Sprintf("On average %s in the first third, %s in the middle, %s in the last.",
			t.u.Force(r.Thirds[profile.Lengthened].Mean), t.u.Force(r.Thirds[profile.Middle].Mean), t.u.Force(r.Thirds[profile.Shortened].Mean)))
	}
	if t.e.Band != nil {
		lines = append(lines, "The ranges tell how closely the machine was measured.")
	}
	if t.Side != "" {
		lines = append(lines, fmt.Sprintf("Both sides move alike; every number is for %s.", t.Side))
	}
	return lines
}

// loads is the verdict, as sure as the measurements allow.
func (t teller) loads() string {
	where := t.lifting().Loads
	said := map[profile.Where]string{
		profile.Unknown: "Too little of the movement has a force to say where it is heaviest.", profile.AtStart: "On the whole it is heaviest at the start of the movement.",
		profile.AtMiddle: "On the whole it is heaviest in the middle of the movement.", profile.AtEnd: "On the whole it is heaviest at the end of the movement.",
		profile.Evenly: "It is about as heavy all the way.",
	}[where]
	if b := t.e.Band; b != nil && where != profile.Unknown {
		if _, sure := b.Verdict.Loads(); !sure {
			said = strings.TrimSuffix(said, ".") + ", as far as the measurements can tell."
		}
	}
	return said
}

// ranged is a force of lifting with the range that it may lie in, if that is
// known.
func (t teller) ranged(q profile.Reading) string {
	text := t.u.Force(t.lifting().Value(q))
	if t.e.Band == nil {
		return text
	}
	in := t.e.Band.Reading(q)
	return fmt.Sprintf("%s (%s to %s)", text, t.u.Force(in.Low), t.u.Force(in.High))
}
