package report

import (
	"steelyard/internal/draw"
	"steelyard/internal/sketch"
	"steelyard/mechanism"
	"steelyard/planar"
)

// armName names an arm in words.
func armName(a sketch.Arm) string {
	switch a.Kind {
	case sketch.LoadArm:
		return "load arm"
	case sketch.ContactArm:
		return "contact arm"
	}
	return "rope at the " + a.Of
}

// armsOf returns the arms at one place, about axes that stay.
func armsOf(m *mechanism.Machine, f *facts) []sketch.Arm { return f.Arms(sketch.Pinned(m)) }

// drawArm draws an arm as a dimension in its own colour, moved aside where it
// would lie on the link: a load arm below the load with the line of gravity
// running down to it, a contact arm behind the push, a cam's in its place.
func (s *stage) drawArm(a sketch.Arm, f *facts) {
	if s.frame.Len(a.Length()) < 0.3*s.text {
		return
	}
	var aside planar.Vec
	switch a.Kind {
	case sketch.LoadArm:
		aside.Y = min(0, s.below(a)-a.Axis.Y)
	case sketch.ContactArm:
		aside = f.Tangent.Scale(-s.metres(1.5))
	}
	s.extension(a.Axis, a.Axis.Add(aside))
	s.extension(a.Acts, a.Foot.Add(aside))
	from, to := s.frame.At(a.Axis.Add(aside)), s.frame.At(a.Foot.Add(aside))
	mid := from.Lerp(to, 0.5)
	pen := s.pen(0.16, s.th.Arm)
	s.Arrow(mid, from, pen)
	s.Arrow(mid, to, pen)
	s.armLength(a, from, to)
}

// below returns the height at which a load arm is drawn: under the weight and
// the axis.
func (s *stage) below(a sketch.Arm) float64 {
	low := min(a.Axis.Y, a.Acts.Y)
	for i := range s.m.Weights {
		if w := &s.m.Weights[i]; w.Mass > 0 && a.Of == w.Name && !isBlock(s.m, w) {
			r, _ := sketch.DiscRadius(w)
			low = min(low, a.Acts.Y-r)
		}
	}
	return low - s.metres(1)
}

// extension draws a thin dashed line, of a force or of a dimension.
func (s *stage) extension(a, b planar.Vec) {
	pen := s.pen(0.09, s.th.Arm)
	pen.Dash = []float64{0.55 * s.text, 0.35 * s.text}
	s.Stroke(draw.Polyline(s.frame.At(a), s.frame.At(b)), pen)
}

// armLength writes the length along the arm if it is long enough, else leaves
// it to the labels to find a place.
func (s *stage) armLength(a sketch.Arm, from, to draw.Point) {
	label := s.u.Short(a.Length())
	f := draw.Font{Size: s.text, Color: s.th.Arm, Bold: true}
	mid := from.Lerp(to, 0.5)
	if f.Measure(label)+1.5*s.text > to.Sub(from).Norm() {
		s.names.Add(mid, label)
		return
	}
	along := upright(to.Sub(from).Angle())
	wide := f.Measure(label) + 0.3*s.text
	at := mid.Add(draw.Towards(0.35*s.text, along+quarter))
	var halo draw.Path
	left := at.Sub(draw.Towards(wide/2, along))
	halo.Move(left).Line(left.Add(draw.Towards(wide, along)))
	for i := range 3 {
		up := draw.Towards(float64(i)*0.35*s.text, along+quarter)
		s.Stroke(draw.Polyline(left.Add(up), left.Add(up).Add(draw.Towards(wide, along))), draw.Pen{Width: 0.4 * s.text, Color: draw.Alpha(s.th.Paper, 0.75), Cap: draw.ButtCap})
	}
	s.TurnedText(at, along, label, f, draw.Centre)
}
