package exercise

import (
	"fmt"
	"math"
	"slices"

	"steelyard/human"
	"steelyard/reference"
)

// help tells what would help where no setting fits: one more hole, another
// body, part of the travel.
func (f *fitter) help(t *Trial) []string {
	var out []string
	for d := range f.out.Dials {
		if s := f.furtherOn(t, d); s != "" {
			out = append(out, s)
		}
	}
	out = append(out, f.otherBody(t)...)
	if t.Used() > 0 {
		out = append(out, fmt.Sprintf("At the settings named, the stretch from %.0f to %.0f mm of the %.0f mm of travel is free of faults; stops that keep the machine within it would do.",
			1000*t.Usable[0], 1000*t.Usable[1], 1000*t.Travel))
	}
	return out
}

// mostMore is the number of further holes beyond which a setting is no help.
const mostMore = 10

// furtherOn tells, for a dial at its first or last hole, how much the last step
// there brought and how many more it would take.
func (f *fitter) furtherOn(t *Trial, d int) string {
	dial := &f.out.Dials[d]
	last := len(dial.Values) - 1
	back := slices.Clone(t.Choice)
	switch t.Choice[d] {
	case last:
		back[d]--
	case 0:
		back[d]++
	default:
		return ""
	}
	if last == 0 {
		return ""
	}
	before := f.at(back)
	unit, now, then := " mm", 1000*t.Short, 1000*before.Short
	switch {
	case t.OwnBeyond > 0:
		unit, now, then = "°", t.OwnBeyond.Degrees(), before.OwnBeyond.Degrees()
	case t.Unreached == 0:
		unit, now, then = "°", t.Beyond.Degrees(), before.Beyond.Degrees()
	}
	if before.Err != nil || then-now < 0.5 || t.Unreached > 0 && before.Unreached == 0 {
		return ""
	}
	more := int(math.Ceil(now/(then-now) - 1e-6)) // less rounding
	if more > mostMore {
		return ""
	}
	return fmt.Sprintf("%s stands at its end, %s: coming from %s brought %.0f%s of it and %.0f%s are left, so about %s more of the same size would be needed.",
		sentence(dial.Name), dial.Values[t.Choice[d]], dial.Values[back[d]], then-now, unit, now, unit, counted(more, "step"))
}

// most is how far a body dimension is changed to see whether that is what is in
// the way, and by what steps, m.
const (
	mostChange = 0.15
	changeStep = 0.005
)

// otherBody names the body dimensions that, a little longer or shorter and all
// else the same, would make the settings fit.
func (f *fitter) otherBody(t *Trial) []string {
	setup, sw, err := f.build(t.Choice)
	if err != nil {
		return nil
	}
	at := rig{setup, sw.Travel}
	type change struct {
		dimension reference.Dimension
		by        float64
	}
	var found []change
	for d := range reference.NumDimensions {
		if d == reference.Stature || d == reference.Mass {
			continue
		}
		if by, ok := wanted(f.out.Body, d, func(b *human.Body) bool { return f.holds(at, t, b) }); ok {
			found = append(found, change{d, by})
		}
	}
	slices.SortStableFunc(found, func(a, b change) int { return compareSize(a.by, b.by) })
	var out []string
	for _, c := range found[:min(2, len(found))] {
		word := "longer"
		if c.by < 0 {
			word = "shorter"
		}
		out = append(out, fmt.Sprintf("They would fit somebody who is the same but for the %v %.0f mm %s.", c.dimension, 1000*math.Abs(c.by), word))
	}
	return out
}

func compareSize(a, b float64) int {
	switch a, b = math.Abs(a), math.Abs(b); {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// wanted returns the least change of a body dimension that makes a body fit.
func wanted(b *human.Body, d reference.Dimension, holds func(*human.Body) bool) (by float64, ok bool) {
	size := b.Dimensions()
	other := *b
	for k := changeStep; k <= mostChange+changeStep/2; k += changeStep {
		for _, by := range [2]float64{k, -k} {
			changed := size
			changed[d] += by
			other.Links = human.LinksOf(changed)
			if changed[d] > 0 && holds(&other) {
				return by, true
			}
		}
	}
	return 0, false
}

// holds reports whether a body of the same limits would fit a setup.
func (f *fitter) holds(s rig, t *Trial, b *human.Body) bool {
	if t.OwnBeyond == 0 {
		return s.suits(b, math.Inf(1), f.enough)
	}
	return s.suits(b, math.Inf(1), 1)
}
