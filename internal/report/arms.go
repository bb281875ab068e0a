package report

import (
	"steelyard/internal/draw"
	"steelyard/mechanism"
	"steelyard/planar"
)

// arm is a moment arm: the distance from an axis to the line a force acts
// along, m, ground frame.
type arm struct {
	name     string
	axis     planar.Vec
	foot     planar.Vec // of the perpendicular from the axis on the line
	acts     planar.Vec // where on the line the force acts
	of       string     // the load
	vertical bool       // a line of gravity
	cam      bool       // a rope's
}

func (a arm) length() float64 { return a.foot.Sub(a.axis).Norm() }

// perpendicular returns the foot of the perpendicular from axis on the line
// through at along the unit vector u.
func perpendicular(axis, at, u planar.Vec) planar.Vec {
	return at.Add(u.Scale(axis.Sub(at).Dot(u)))
}

// fixedAxis returns the ground pin about which a link turns, if it has one: an
// axis that stays, unlike the centre of a coupler.
func fixedAxis(m *mechanism.Machine, l mechanism.LinkID) (planar.Vec, bool) {
	for _, j := range m.Joints {
		if j.Kind == mechanism.Revolute && (j.A == mechanism.Ground && j.B == l || j.B == mechanism.Ground && j.A == l) {
			return j.At, true
		}
	}
	return planar.Vec{}, false
}

// armsOf returns the arms at one place: of the main load, of the contact
// force, and of each rope that winds on an outline which turns.
func armsOf(m *mechanism.Machine, f *facts) []arm {
	var out []arm
	if f.Main >= 0 {
		main := &f.Shares[f.Main]
		weighs := main.Kind == mechanism.LoadWeight || main.Kind == mechanism.OwnWeight
		if axis, ok := fixedAxis(m, main.Link); ok && weighs {
			out = append(out, arm{name: "load arm", axis: axis, foot: planar.Vec{X: main.At.X, Y: axis.Y}, acts: main.At, of: main.Name, vertical: true})
		}
	}
	if axis, ok := fixedAxis(m, m.Contact.Link); ok {
		out = append(out, arm{name: "contact arm", axis: axis, foot: perpendicular(axis, f.At, f.Tangent), acts: f.At})
	}
	return append(out, camArms(m, f)...)
}

// camArms returns the radius at which a rope's end pulls on each cam, drum or
// sheave that turns with its link.
func camArms(m *mechanism.Machine, f *facts) []arm {
	var out []arm
	for i := range m.Ropes {
		route := m.Ropes[i].Route
		pieces := f.State.Spans(i)
		for _, end := range []int{0, len(route) - 1} {
			st := &route[end]
			if _, turns := fixedAxis(m, st.Link); st.Outline == nil || !turns {
				continue
			}
			piece := pieces[min(end, len(pieces)-1)]
			axis, _ := f.State.Station(i, end)
			u := piece.To.Sub(piece.From).Unit()
			touch := piece.From
			if end > 0 {
				touch = piece.To
			}
			out = append(out, arm{name: "rope at the " + st.Name, axis: axis, foot: perpendicular(axis, piece.From, u), acts: touch, cam: true})
		}
	}
	return out
}

// drawArm draws an arm as a dimension in its own colour, moved aside where it
// would lie on the link: a load arm below the load with the line of gravity
// running down to it, a contact arm behind the push, a cam's in its place.
func (s *stage) drawArm(a arm, f *facts) {
	if s.frame.Len(a.length()) < 0.3*s.text {
		return
	}
	var aside planar.Vec
	switch {
	case a.vertical:
		aside.Y = min(0, s.below(a)-a.axis.Y)
	case !a.cam:
		aside = f.Tangent.Scale(-s.metres(1.5))
	}
	s.extension(a.axis, a.axis.Add(aside))
	s.extension(a.acts, a.foot.Add(aside))
	from, to := s.frame.At(a.axis.Add(aside)), s.frame.At(a.foot.Add(aside))
	mid := from.Lerp(to, 0.5)
	pen := s.pen(0.16, s.th.Arm)
	s.Arrow(mid, from, pen)
	s.Arrow(mid, to, pen)
	s.armLength(a, from, to)
}

// below returns the height at which a load arm is drawn: under the weight and
// the axis.
func (s *stage) below(a arm) float64 {
	low := min(a.axis.Y, a.acts.Y)
	for i := range s.m.Weights {
		if w := &s.m.Weights[i]; w.Mass > 0 && a.of == w.Name && !isBlock(s.m, w) {
			low = min(low, a.acts.Y-weightRadius(w))
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
func (s *stage) armLength(a arm, from, to draw.Point) {
	label := s.u.Short(a.length())
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
