package evaluation

import (
	"fmt"
	"slices"
	"strings"

	"steelyard/exercise"
	"steelyard/human"
	"steelyard/reference"
)

// Words says how the person gets on with the machine, plain words first: where
// it is hardest and for which joint, what is out of reach or past a limit and
// which setting would help, what load, and what all of it rests on.
func (m *Meeting) Words(f Formatter) []string {
	words := m.said(f)
	for _, h := range m.Helps[:min(len(m.Helps), mostHelps)] {
		words = append(words, capital(h.String())+".")
	}
	words = append(words, m.grounds()...)
	for _, w := range m.Warnings {
		words = append(words, capital(w.String())+".")
	}
	for _, note := range m.Person.Person.Avoid {
		words = append(words, "This person's sheet says to stay away from: "+note+". The computation does not read that; check the result against it.")
	}
	return words
}

// mostHelps is how many settings that would help are named.
const mostHelps = 3

// grounds says what lengths and strengths rest on.
func (m *Meeting) grounds() []string {
	var words []string
	byOrigin := map[human.Origin][]string{}
	for _, d := range m.Dimensions() {
		o := m.Body.Size[d].Origin
		byOrigin[o] = append(byOrigin[o], d.String())
	}
	var parts []string
	for _, o := range []human.Origin{human.Given, human.FromSurvey, human.FromStature} {
		if names := byOrigin[o]; len(names) > 0 {
			parts = append(parts, fmt.Sprintf("%s: %s", originWords[o], list(names)))
		}
	}
	words = append(words, "Body lengths "+strings.Join(parts, "; ")+".")
	return append(words, m.weak()...)
}

var originWords = map[human.Origin]string{
	human.Given:       "measured",
	human.FromSurvey:  "expected by the survey of people like this one",
	human.FromStature: "as a fraction of the height",
}

// weak names the strengths that rest on little.
func (m *Meeting) weak() []string {
	byMark := map[reference.Mark][]string{}
	var own []string
	for _, c := range m.Working() {
		switch {
		case c.Rescaled:
			own = append(own, c.Joint.String())
		case c.Weakest.Weak():
			byMark[c.Weakest] = append(byMark[c.Weakest], c.Joint.String())
		}
	}
	var parts, words []string
	for k := reference.Measured; k <= reference.Interpolated; k++ {
		if names := byMark[k]; len(names) > 0 {
			parts = append(parts, list(names)+" ("+k.String()+")")
		}
	}
	if len(own) > 0 {
		words = append(words, "The strength of "+list(own)+" is set by a measurement of this person.")
	}
	if len(parts) > 0 {
		words = append(words, "Weak ground: the strength of "+strings.Join(parts, "; of ")+". One measured moment or lift of this person would replace it.")
	}
	return words
}

// Dimensions lists the body lengths that place this limb on this machine.
func (m *Meeting) Dimensions() []reference.Dimension {
	dims := []reference.Dimension{reference.UpperArm, reference.ForearmGrip, reference.ShoulderBreadth, reference.Trunk}
	if m.Rest.Setup.Exercise.Limb() == human.Leg {
		dims = []reference.Dimension{reference.Thigh, reference.Shank, reference.AnkleHeight, reference.Foot, reference.HipBreadth}
	}
	if m.Rest.Setup.Station.Anchor == exercise.SeatAnchor {
		dims = append(dims, reference.SittingHeight, reference.ButtockKnee)
	}
	return dims
}

// leastEffort is the peak effort from which a joint counts as working: an
// effort below that reads 0.0.
const leastEffort = 0.05

// Working returns the joints that work at rest, lifting, the hardest asked
// first.
func (m *Meeting) Working() []*exercise.Column {
	var out []*exercise.Column
	for k := range m.Rest.Lifting.Joints {
		if c := &m.Rest.Lifting.Joints[k]; c.Effort[c.Peak] >= leastEffort {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b *exercise.Column) int {
		return int(sign(b.Effort[b.Peak] - a.Effort[a.Peak]))
	})
	return out
}

// list writes "a, b and c".
func list(names []string) string {
	if n := len(names); n > 1 {
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
	return strings.Join(names, "")
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
