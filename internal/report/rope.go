package report

import (
	"math"

	"steelyard/internal/draw"
	"steelyard/internal/sketch"
	"steelyard/mechanism"
	"steelyard/planar"
)

// wheels draws sheaves and cams, each once though several ropes may pass it.
func (s *stage) wheels(f *facts) {
	for _, w := range sketch.Wheels(s.m) {
		axis, outline := f.State.Station(w.Line, w.Index)
		if r, ok := sketch.Sheave(w.Outline); ok {
			s.Sheave(s.frame.At(axis), s.frame.Len(r))
			s.names.AvoidArea(draw.Circle(s.frame.At(axis), s.frame.Len(r)))
			continue
		}
		cam := draw.Polygon(s.frame.Points(outline)...)
		s.Member(cam, s.th.Link)
		s.names.AvoidArea(cam)
		s.Pin(s.frame.At(axis))
	}
}

// lines draws ropes, springs and all else that pulls or pushes along a line or
// about a pin.
func (s *stage) lines(f *facts) {
	_, err := f.State.Force(mechanism.Hold)
	for i, line := range s.m.Lines() {
		way := draw.Polyline(s.frame.Points(f.State.Course(i))...)
		s.names.AvoidLine(way)
		if line.Element == nil {
			s.Rope(way, err == nil && f.State.Tension(i, mechanism.Hold) <= 0)
			continue
		}
		if len(line.Route) > 2 {
			s.Stroke(way, s.pen(0.14, s.th.Link))
		}
		s.element(line.Element, f.State.Spans(i))
	}
	for i := range s.m.Elements {
		if el := &s.m.Elements[i]; len(el.Route) == 0 {
			j := s.m.Joints[el.Joint]
			s.coil(s.frame.At(f.State.Pose(j.B).Point(j.At)))
		}
	}
	for i := range s.m.Wheels {
		j := s.m.Joints[s.m.Wheels[i].Joint]
		s.Stroke(draw.Circle(s.frame.At(f.State.Pose(j.B).Point(j.At)), 2.4*s.text), s.pen(0.3, mix(s.th.Load, s.th.Paper, 0.6)))
	}
}

// element draws the sign of an element's kind on the longest straight piece of
// its line.
func (s *stage) element(el *mechanism.Element, pieces []mechanism.Straight) {
	var longest mechanism.Straight
	for _, piece := range pieces {
		if piece.To.Sub(piece.From).Norm() >= longest.To.Sub(longest.From).Norm() {
			longest = piece
		}
	}
	a, b := s.frame.At(longest.From), s.frame.At(longest.To)
	switch el.Law.(type) {
	case mechanism.Spring:
		n := int(min(max(b.Sub(a).Norm()/(0.7*s.text), 4), 16))
		s.Spring(a, b, n, 1.3*s.text)
	case mechanism.GasSpring, mechanism.Damper:
		s.strut(a, b)
	case mechanism.Steady:
		s.Arrow(a, b, s.pen(0.14, s.th.Link))
		s.Arrow(b, a, s.pen(0.14, s.th.Link))
	default: // rubber
		s.Stroke(draw.Polyline(a, b), s.pen(0.5, s.th.Load))
		s.Stroke(draw.Polyline(a, b), s.pen(0.24, mix(s.th.Load, s.th.Paper, 0.25)))
	}
}

// strut draws a cylinder on a rod.
func (s *stage) strut(a, b draw.Point) {
	s.Stroke(draw.Polyline(a, b), s.pen(0.2, s.th.Link))
	s.Member(draw.Capsule(a.Lerp(b, 0.08), a.Lerp(b, 0.6), 0.4*s.text, 0.4*s.text), s.th.Link)
	s.Pin(a)
	s.Pin(b)
}

// coil draws a spring or brake about a pin: a spiral of two turns.
func (s *stage) coil(c draw.Point) {
	var p draw.Path
	const steps = 48
	for k := range steps + 1 {
		t := float64(k) / steps
		p.Line(c.Add(draw.Towards((0.5+1.1*t)*s.text, planar.Angle(4*math.Pi*t))))
	}
	s.Stroke(p, s.pen(0.12, s.th.Link))
}
