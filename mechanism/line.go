package mechanism

import (
	"errors"
	"fmt"
	"math"

	"steelyard/planar"
)

// line is a route made ready: a rope's or an elastic element's.
type line struct {
	part     string // `rope "main"`
	route    Route
	anchors  [2]planar.Angle // normals at which the ends are fixed, counting turns; of outlines only
	fixed    [2]float64      // m, of outline at those normals
	initial  []planar.Angle  // direction of each span at the measured pose, counting turns along the route
	length   float64         // m, at the measured pose
	stations []planar.Wrapped
}

// fullWrap is the turn above which a station more likely lies on the wrong
// side than is wrapped nearly all round.
const fullWrap = 1.8 * math.Pi

func (md *Model) compileLines() error {
	m := &md.machine
	for i := range m.Ropes {
		if err := md.addLine(fmt.Sprintf("rope %q", m.Ropes[i].Name), m.Ropes[i].Route); err != nil {
			return err
		}
	}
	md.lineOf = make([]int, len(m.Elements))
	for i := range m.Elements {
		md.lineOf[i] = -1
		if e := &m.Elements[i]; len(e.Route) > 0 {
			md.lineOf[i] = len(md.lines)
			if err := md.addLine(fmt.Sprintf("element %q", e.Name), e.Route); err != nil {
				return err
			}
		}
	}
	return nil
}

// addLine lays the route at the measured pose, where every link's frame is the
// ground frame, and counts its turns there.
func (md *Model) addLine(part string, route Route) error {
	l := line{part: part, route: route, initial: make([]planar.Angle, len(route)-1), stations: make([]planar.Wrapped, len(route))}
	for k, s := range route {
		l.stations[k] = planar.Wrapped{Outline: s.Outline, At: planar.TurnThenShift(0, s.At), Side: s.Side}
	}
	spans := make([]planar.Span, len(route)-1)
	for k := range spans {
		if err := planar.FirstTangent(&l.stations[k], &l.stations[k+1], &spans[k]); err != nil {
			return l.refuse(k, err)
		}
		l.initial[k] = spans[k].Direction
		if k > 0 {
			turn, err := l.turnAt(k, l.initial[k]-l.initial[k-1])
			if err != nil {
				return err
			}
			l.initial[k] = l.initial[k-1] + turn
		}
	}
	if err := l.anchor(); err != nil {
		return err
	}
	l.length = l.layMeasured(spans)
	md.lines = append(md.lines, l)
	return nil
}

// turnAt returns the turn of the rope round station k, from the difference of
// the directions before and after it. Round an outline it has the outline's
// side; round a point it is the smaller one.
func (l *line) turnAt(k int, difference planar.Angle) (planar.Angle, error) {
	s := &l.route[k]
	turn := difference.Normalized()
	if s.Outline == nil {
		return turn, nil
	}
	side := planar.Angle(s.Side)
	if turn*side < 0 {
		turn += side * 2 * math.Pi
	}
	if turn*side > fullWrap {
		return 0, &PartError{l.part, fmt.Sprintf("as routed it would run %.0f° round %q", math.Abs(turn.Degrees()), s.Name),
			"check the side on which it passes, or leave it out if the rope does not touch it there"}
	}
	return turn + side*2*math.Pi*planar.Angle(s.Turns), nil
}

// anchor sets the normals at which outlines that end the route hold it.
func (l *line) anchor() error {
	last := len(l.route) - 1
	ends := [2]int{0, last}
	normals := [2]planar.Angle{
		l.initial[0] - planar.Angle(l.route[0].Side)*math.Pi/2,
		l.initial[last-1] - planar.Angle(l.route[last].Side)*math.Pi/2,
	}
	for i, k := range ends {
		s := &l.route[k]
		if s.Outline == nil {
			continue
		}
		toward := planar.Angle(s.Side) // the rope is wound from the anchor to the leaving normal of the first end, and from the arriving normal to the anchor of the last
		if i == 1 {
			toward = -toward
		}
		wound := (normals[i] - s.Anchor).Normalized()
		if wound*toward < 0 {
			wound += toward * 2 * math.Pi
		}
		if wound*toward > fullWrap && s.Turns == 0 {
			return &PartError{l.part, fmt.Sprintf("as anchored it would lie %.0f° round %q", math.Abs(wound.Degrees()), s.Name),
				"check the anchor's place and the side; if it really winds on so far, say one turn more"}
		}
		l.anchors[i] = normals[i] - wound - toward*2*math.Pi*planar.Angle(s.Turns)
		l.fixed[i] = s.Outline.Length(l.anchors[i])
	}
	return nil
}

// layMeasured shifts each span's count of turns to its direction along the
// route and returns the length of the whole.
func (l *line) layMeasured(spans []planar.Span) float64 {
	for k := range spans {
		shift := l.initial[k] - spans[k].Direction
		spans[k].Direction += shift
		spans[k].NormalFrom += shift
		spans[k].NormalTo += shift
	}
	return l.lay(spans)
}

// lay returns the length in m of the route whose spans are known: the straight
// pieces and what lies on the outlines.
func (l *line) lay(spans []planar.Span) float64 {
	total := 0.0
	for k := range l.route {
		total += l.lies(k, spans)
	}
	for k := range spans {
		total += spans[k].Length
	}
	return total
}

// lies returns the length in m that lies on station k: on an end from where it
// is fixed. It is negative where the rope has run off, or would have to lift
// off; nought at a point.
func (l *line) lies(k int, spans []planar.Span) float64 {
	s := &l.route[k]
	switch {
	case s.Outline == nil:
		return 0
	case k == 0:
		return float64(s.Side) * (s.Outline.Length(spans[0].NormalFrom) - l.fixed[0])
	case k == len(spans):
		return float64(s.Side) * (l.fixed[1] - s.Outline.Length(spans[k-1].NormalTo))
	}
	return planar.Arc(s.Outline, s.Side, spans[k-1].NormalTo, spans[k].NormalFrom)
}

// refuse turns a tangent that does not exist at the measured pose into an
// error about the route.
func (l *line) refuse(k int, err error) error {
	a, b := &l.route[k], &l.route[k+1]
	return &PartError{l.part, fmt.Sprintf("it cannot run from %q to %q: %s", a.Name, b.Name, tangentProblem(err)),
		"check the places, the radii and the sides on which it passes"}
}

func tangentProblem(err error) string {
	var over *planar.OverlapError
	var in *planar.InsideError
	switch {
	case errors.As(err, &over):
		return fmt.Sprintf("the two overlap by %.1f mm", -over.Gap*1000)
	case errors.As(err, &in):
		return fmt.Sprintf("one lies %.1f mm inside the other", in.Depth*1000)
	}
	return "both are at the same point"
}
