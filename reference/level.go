package reference

import (
	"math"
	"sync"
)

// Reference masses that turn an absolute published moment into one per
// kilogram: the typical man and woman that the compared studies are quoted
// for. Own choice, no source.
const (
	typicalMan   = 80.0 // kg
	typicalWoman = 65.0 // kg
)

// Level is one published figure for the moment of a joint action.
type Level struct {
	PerKg  float64 // N·m per kg of body mass; absolute figures are divided by 80 kg (men) or 65 kg (women)
	RelSD  float64 // standard deviation between people over the figure; NaN if not given
	Angle  float64 // rad, joint angle of the test; NaN if not given
	Source Source
}

// Levels returns the published figures for an action such as "elbow flexion"
// for women or men; none for an action that has its own curve or no figure.
//
// The sets differ: elbow flexion of an 80 kg man is 54, 62 or 77 N·m. For
// shoulder adduction at 90° one list gives as much as for abduction, while
// Ivey et al. 1985 give twice as much on isokinetic peaks.
func Levels(action string, sex Sex) []Level { return levels()[levelKey{action, sex}] }

type levelKey struct {
	action string
	sex    Sex
}

var levels = sync.OnceValue(func() map[levelKey][]Level {
	out := make(map[levelKey][]Level)
	for _, r := range rows("strength_levels.csv") {
		k := levelKey{r.text("action"), parseSex(r.text("sex"))}
		out[k] = append(out[k], level(r, k.sex))
	}
	return out
})

// level reads a row. Between the 5th and 95th percentile of a normal
// distribution lie 2 · 1.645 standard deviations.
func level(r row, sex Sex) Level {
	value, p5, p95 := r.number("value"), r.numberOrNaN("p5"), r.numberOrNaN("p95")
	l := Level{PerKg: value, RelSD: (p95 - p5) / (2 * 1.645) / value, Angle: r.numberOrNaN("angle_deg") * math.Pi / 180, Source: r.source()}
	if math.IsNaN(p95) { // one list's upper figure is unsure: use the lower half
		l.RelSD = (value - p5) / 1.645 / value
	}
	if r.text("unit") == "N·m" {
		l.PerKg /= map[Sex]float64{Male: typicalMan, Female: typicalWoman}[sex]
	}
	return l
}

// Shape is how the moment of an action changes with joint angle: factors of
// its largest value, joined by straight lines and level beyond the ends.
type Shape struct {
	Angle, Factor []float64 // rad, ascending; same length
	From, To      float64   // rad, range in which anything was tested
	Source        Source
}

// At returns the factor at an angle (rad).
func (s Shape) At(angle float64) float64 {
	last := len(s.Angle) - 1
	if angle <= s.Angle[0] {
		return s.Factor[0]
	}
	for i := 1; i <= last; i++ {
		if angle <= s.Angle[i] {
			t := (angle - s.Angle[i-1]) / (s.Angle[i] - s.Angle[i-1])
			return s.Factor[i-1] + t*(s.Factor[i]-s.Factor[i-1])
		}
	}
	return s.Factor[last]
}

// ShapeOf returns the shape of an action and whether the table has one.
func ShapeOf(action string) (Shape, bool) {
	s, ok := shapes()[action]
	return s, ok
}

var shapes = sync.OnceValue(func() map[string]Shape {
	out := make(map[string]Shape)
	for _, r := range rows("strength_shapes.csv") {
		a := r.text("action")
		s := out[a]
		s.Angle = append(s.Angle, r.number("angle_deg")*math.Pi/180)
		s.Factor = append(s.Factor, r.number("factor"))
		s.From, s.To = r.number("tested_from_deg")*math.Pi/180, r.number("tested_to_deg")*math.Pi/180
		s.Source = r.source()
		out[a] = s
	}
	return out
})
