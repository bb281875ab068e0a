package mechanism

import (
	"math"

	"steelyard/planar"
)

// chordTurn is the turn in rad between two points of an outline as a picture
// wants it: a circle of 100 mm is then off by 0.1 mm.
const chordTurn = math.Pi / 36

// Course returns the way of line i as it lies now, in points of the ground
// frame from its first end to its last: straight pieces, and what lies on
// outlines in short chords. Lines are counted as in [Machine.Lines].
func (st *State) Course(i int) []planar.Vec {
	l, now := &st.model.lines[i], &st.lines[i]
	last := len(now.spans) - 1
	way := now.arc(nil, 0, l.anchors[0], now.spans[0].NormalFrom)
	for k := range now.spans {
		way = append(way, now.spans[k].From, now.spans[k].To)
		if k < last {
			way = now.arc(way, k+1, now.spans[k].NormalTo, now.spans[k+1].NormalFrom)
		}
	}
	return now.arc(way, last+1, now.spans[last].NormalTo, l.anchors[1])
}

// arc adds the part of station k's outline between two normals of its own
// frame, both included; nothing for a point.
func (now *laid) arc(way []planar.Vec, k int, from, to planar.Angle) []planar.Vec {
	s := &now.stations[k]
	if s.Outline == nil {
		return way
	}
	n := 1 + int(math.Abs(float64(to-from))/chordTurn)
	for j := range n + 1 {
		t := planar.Angle(j) / planar.Angle(n)
		way = append(way, s.At.Point(planar.Touch(s.Outline, from*(1-t)+to*t)))
	}
	return way
}

// Station returns the axis of a station of line i and the outline about it, as
// they stand now, in points of the ground frame that do not repeat the first; a
// hollow place of a traced outline is shown as traced. The outline is nil for a
// point.
func (st *State) Station(i, station int) (axis planar.Vec, outline []planar.Vec) {
	s := &st.lines[i].stations[station]
	axis = s.At.Shift
	switch o := s.Outline.(type) {
	case nil:
		return axis, nil
	case *planar.Traced:
		for _, p := range o.Points() {
			outline = append(outline, s.At.Point(p))
		}
		return axis, outline
	default:
		n := int(2 * math.Pi / chordTurn)
		for j := range n {
			phi := 2 * math.Pi * planar.Angle(j) / planar.Angle(n)
			outline = append(outline, s.At.Point(planar.Touch(o, phi)))
		}
		return axis, outline
	}
}
