package report

import (
	"math"

	"steelyard/internal/draw"
	"steelyard/internal/sketch"
	"steelyard/mechanism"
	"steelyard/planar"
)

// machine draws all of it at one place: what stands still first, what moves in
// front.
func (s *stage) machine(f *facts) {
	s.standing()
	s.rails(f)
	s.wheels(f)
	for i := range s.m.Links {
		s.link(f, mechanism.LinkID(i+1))
	}
	s.lines(f)
	s.pins(f)
	s.loads(f)
	s.contact(f)
}

// standing hints at the fixed link: straight pieces between the places where
// it carries something.
func (s *stage) standing() {
	pen := s.pen(0.5, mix(s.th.Ground, s.th.Paper, 0.25))
	for _, piece := range piecesOf(s.m, mechanism.Ground) {
		s.Stroke(draw.Polyline(s.frame.At(piece[0]), s.frame.At(piece[1])), pen)
	}
}

// link draws one moving link as a body through its places. One that only
// stands for the way of a hand has no body: its radius is hinted at.
func (s *stage) link(f *facts, l mechanism.LinkID) {
	if s.isPath(l) {
		s.radius(f, l)
		return
	}
	body := s.body(f, l)
	for _, p := range body {
		s.Stroke(p, s.pen(0.24, s.th.Link))
	}
	for _, p := range body {
		s.Fill(p, mix(s.th.Link, s.th.Paper, 0.22))
		s.names.AvoidArea(p)
	}
}

// body returns the outlines whose union is the link; none for a weight stack,
// which is drawn as a load.
func (s *stage) body(f *facts, l mechanism.LinkID) []draw.Path {
	if isStack(s.m, l) {
		return nil
	}
	var out []draw.Path
	r, pose := 0.38*s.text, f.State.Pose(l)
	for _, piece := range piecesOf(s.m, l) {
		out = append(out, draw.Capsule(s.frame.At(pose.Point(piece[0])), s.frame.At(pose.Point(piece[1])), r, r))
	}
	return out
}

// piecesOf returns the straight pieces of a link; for one with a lone place, a
// piece without length there.
func piecesOf(m *mechanism.Machine, l mechanism.LinkID) [][2]planar.Vec {
	pieces := sketch.Skeleton(m, l)
	if places := sketch.Places(m, l); len(pieces) == 0 && len(places) > 0 {
		pieces = append(pieces, [2]planar.Vec{places[0], places[0]})
	}
	return pieces
}

// isPath reports whether the link stands for the way of a hand.
func (s *stage) isPath(l mechanism.LinkID) bool { return l != mechanism.Ground && s.m.Links[l-1].Path }

// radius hints at the point that a hand goes round.
func (s *stage) radius(f *facts, l mechanism.LinkID) {
	axis, ok := sketch.Pinned(s.m)(l)
	if !ok || l != s.m.Contact.Link {
		return
	}
	pen := s.pen(0.12, s.th.Faint)
	pen.Dash = []float64{0.3 * s.text, 0.4 * s.text}
	s.Stroke(draw.Polyline(s.frame.At(axis), s.frame.At(f.At)), pen)
}

// ghost draws where the machine also stands: its links and weights, faint.
func (s *stage) ghost(f *facts) {
	for i := range s.m.Links {
		if s.isPath(mechanism.LinkID(i + 1)) {
			continue
		}
		body := s.body(f, mechanism.LinkID(i+1))
		for _, p := range body {
			s.Stroke(p, s.pen(0.16, mix(s.th.Link, s.th.Paper, 0.4)))
		}
		for _, p := range body {
			s.Fill(p, mix(s.th.Link, s.th.Paper, 0.08))
		}
	}
	pen := s.pen(0.1, mix(s.th.Load, s.th.Paper, 0.55))
	pen.Dash = []float64{0.5 * s.text, 0.4 * s.text}
	for i := range s.m.Weights {
		if w := &s.m.Weights[i]; w.Mass > 0 {
			s.Stroke(s.weightShape(f, w), pen)
		}
	}
}

// pins draws the joints: with a stand where they are fixed to the ground.
func (s *stage) pins(f *facts) {
	for _, j := range s.m.Joints {
		at := s.frame.At(f.State.Pose(j.B).Point(j.At))
		switch {
		case j.Kind == mechanism.Prismatic, s.isPath(j.A), s.isPath(j.B):
		case j.A == mechanism.Ground || j.B == mechanism.Ground:
			s.names.Avoid(s.GroundPin(at))
		default:
			s.Pin(at)
		}
	}
}

// rails draws the guides of sliders: over the whole travel where they stand
// still, a sleeve round the slider where another link carries them.
func (s *stage) rails(f *facts) {
	for _, j := range s.m.Joints {
		if j.Kind != mechanism.Prismatic || s.isPath(j.B) {
			continue
		}
		dir := f.State.Pose(j.A).Turn(planar.Polar(1, j.Along))
		at := f.State.Pose(j.B).Point(j.At)
		lo, hi := s.slides(j, at, dir)
		room := s.metres(1.4)
		a, b := at.Add(dir.Scale(lo-room)), at.Add(dir.Scale(hi+room))
		off := dir.Perp().Scale(s.metres(0.5))
		for _, side := range []planar.Vec{off, off.Neg()} {
			s.Stroke(draw.Polyline(s.frame.At(a.Add(side)), s.frame.At(b.Add(side))), s.pen(0.14, s.th.Ground))
		}
	}
}

// slides returns how far, in m along dir from at, the slider goes on a fixed
// guide; 0, 0 on a moving one.
func (s *stage) slides(j mechanism.Joint, at, dir planar.Vec) (lo, hi float64) {
	if j.A != mechanism.Ground {
		return 0, 0
	}
	for _, row := range s.e.Rows {
		d := s.e.Sweep.Pose(row, j.B).Point(j.At).Sub(at).Dot(dir)
		lo, hi = min(lo, d), max(hi, d)
	}
	return lo, hi
}

// isStack reports whether the link is a weight stack: something that only goes
// up and down in guides of its own, and that no body touches.
func isStack(m *mechanism.Machine, l mechanism.LinkID) bool {
	if l == mechanism.Ground || l == m.Contact.Link {
		return false
	}
	for _, j := range m.Joints {
		if j.B == l && j.Kind == mechanism.Prismatic && j.A == mechanism.Ground {
			return m.Links[l-1].Upright || math.Abs(math.Cos(float64(j.Along))) < 0.01
		}
	}
	return false
}

// contact draws where the body meets the machine, square to its path, and the
// force there along the path.
func (s *stage) contact(f *facts) {
	at, along := s.frame.At(f.At), f.Tangent.Angle()
	across := draw.Towards(1.1*s.text, along+quarter)
	s.Stroke(draw.Polyline(at.Add(across), at.Sub(across)), s.pen(0.75, s.th.Paper))
	s.Stroke(draw.Polyline(at.Add(across), at.Sub(across)), s.pen(0.5, s.th.Person))
	s.Fill(draw.Circle(at, 0.3*s.text), s.th.Paper)
	s.Stroke(draw.Circle(at, 0.3*s.text), s.pen(0.16, s.th.Person))
}

// push draws the force of the body on the machine, most mm long where it is
// greatest.
func (s *stage) push(f *facts, most float64) {
	full := ceiling(s.e)
	if full == 0 || f.Force == 0 {
		return
	}
	long := most * min(1, max(-1, f.Force/full))
	tip := s.frame.At(f.At).Add(draw.Towards(long, f.Tangent.Angle()))
	s.Arrow(s.frame.At(f.At), tip, s.pen(0.28, s.th.Person))
}
