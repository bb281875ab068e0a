package evaluation

import (
	"fmt"
	"slices"
	"strings"

	"steelyard/exercise"
	"steelyard/human"
	"steelyard/reference"
)

// Words says how the person gets on with the machine, plain words first: what is
// out of reach or past a limit and which setting would help, where it is
// hardest and for which joint, what load, and what all of it rests on.
func (m *Meeting) Words() []string {
	words := m.Rest.Words()
	words = slices.Insert(words, min(1, len(words)), m.helpWords()...)
	if p := m.Paced; p != nil && p.Lifting.Sticking >= 0 {
		words = append(words, fmt.Sprintf("At the tempo lifting takes %.0f %% at the most, of the %s; at rest %.0f %%.",
			100*p.Lifting.Peak(), p.Lifting.Joints[p.Lifting.Limiting].Joint.Body(), 100*m.Rest.Lifting.Peak()))
	}
	words = append(words, m.Notes...)
	words = append(words, m.grounds()...)
	for _, w := range m.Warnings {
		words = append(words, capital(w.String())+".")
	}
	return words
}

// helpWords names the settings that would help most.
func (m *Meeting) helpWords() []string {
	if m.troubled() && len(m.Helps) == 0 {
		return []string{"No single setting of this machine mends that."}
	}
	var words []string
	for _, h := range m.Helps[:min(len(m.Helps), mostHelps)] {
		words = append(words, capital(h.String())+".")
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
	var own []string
	for _, c := range m.Working() {
		if c.Rescaled {
			own = append(own, c.Joint.String())
		}
	}
	if len(own) > 0 {
		words = append(words, "The strength of "+list(own)+" is set by a measurement of this person.")
	}
	return words
}

var originWords = map[human.Origin]string{
	human.Given:       "measured",
	human.FromSurvey:  "expected by the survey of people like this one",
	human.FromStature: "as a fraction of the height",
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
		if c := &m.Rest.Lifting.Joints[k]; hardest(c) >= leastEffort {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b *exercise.Column) int { return int(sign(hardest(b) - hardest(a))) })
	return out
}

func hardest(c *exercise.Column) float64 {
	i, _ := c.Hardest()
	return c.Effort[i]
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
