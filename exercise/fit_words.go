package exercise

import (
	"fmt"
	"slices"
	"strings"
)

// Words tells the outcome, a sentence each: what was tried, whether anything
// fits, what else the person's sheet says.
func (f *Fitting) Words() []string {
	words := []string{f.search()}
	fits := fmt.Sprintf("over %.0f %% of the travel or more the body reaches the contact and no joint passes its usual limit, and none on the person's own sheet anywhere.", 100*f.Enough)
	switch {
	case f.Fits && f.Tried == 1:
		words = append(words, "It fits: "+fits)
	case f.Fits:
		words = append(words, fmt.Sprintf("%s of %s tried fit: %s", number(f.Fit), number(f.Tried), fits))
	case f.Tried == 1:
		words = append(append(words, "It does not fit. Fitting means that "+fits), f.advice()...)
	default:
		words = append(append(words, "Nothing fits; the least bad choice is shown. Fitting means that "+fits), f.advice()...)
	}
	if f.Failed > 0 {
		words = append(words, fmt.Sprintf("The machine itself cannot be set to %s of them.", number(f.Failed)))
	}
	for _, note := range f.Body.Person.Avoid {
		words = append(words, "This person's sheet says to stay away from: "+note+". The search does not read that; check the settings against it.")
	}
	return words
}

// advice tells somebody whom nothing fits what to do.
func (f *Fitting) advice() []string {
	return append(slices.Clone(f.Help), "Until then leave this machine, or use the part of the travel that is free of faults, lightly; check where the sheet puts seat, pads and feet before believing it.")
}

// search says how many choices were tried and what that proves.
func (f *Fitting) search() string {
	switch {
	case f.Possible == 1:
		return "There is nothing to choose: the machine was tried as it is set."
	case f.Proven:
		return fmt.Sprintf("All %s choices of the settings were tried, so none is better than the first by the order of importance used here.", number(f.Possible))
	}
	return fmt.Sprintf("%s of %s possible choices were tried, climbing from %d places; a better one may have been missed. Hold some settings fixed to have all of the rest tried.",
		number(f.Tried), number(f.Possible), climbers)
}

// Order tells in which order the search weighs what it finds.
func (f *Fitting) Order() string {
	order := []string{"limits on the person's own sheet", "travel that can be used", fmt.Sprintf("joint in line with the machine's axis (within %.0f mm counts as in line)", 1000*InLine)}
	if f.Aim != NoAim {
		order = append(order, "the aim: "+f.aimWords())
	}
	return "Most important first: " + strings.Join(append(order, "range of motion covered"), "; ") + "."
}

func (f *Fitting) aimWords() string {
	if f.Aim == AimEven {
		return "effort spread evenly over the three thirds of " + f.Loaded()
	}
	return fmt.Sprintf("effort in the %v third of %s", f.Aim, f.Loaded())
}

// Loaded names what the thirds are of: the main muscle, or the named joint.
func (f *Fitting) Loaded() string {
	if f.OfMuscle {
		return f.Exercise.Muscles()[0].String()
	}
	return f.Action.String()
}
