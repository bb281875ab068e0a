package sketch

import (
	"steelyard/mechanism"
	"steelyard/planar"
)

// Wheel is a sheave or cam, and where the first line that passes it does.
type Wheel struct {
	*mechanism.Station
	Line, Index int // as [mechanism.State.Station] takes them
}

// Wheels lists sheaves and cams, each once though several lines may pass it.
func Wheels(m *mechanism.Machine) []Wheel {
	var out []Wheel
	seen := map[string]bool{}
	for i, line := range m.Lines() {
		for k := range line.Route {
			s := &line.Route[k]
			if s.Outline == nil || seen[s.Name] {
				continue
			}
			seen[s.Name] = true
			out = append(out, Wheel{s, i, k})
		}
	}
	return out
}

// Sheave returns the radius of an outline, m, if it is a circle about its own
// axis; anything else is a cam.
func Sheave(o planar.Outline) (radius float64, ok bool) {
	c, ok := o.(planar.Circle)
	return c.Radius, ok && c.Center == planar.Vec{}
}
