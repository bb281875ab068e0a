package report

import (
	"math"

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
	vertical bool       // a line of gravity
}

func (a arm) length() float64 { return a.foot.Sub(a.axis).Norm() }

// perpendicular returns the foot of the perpendicular from axis on the line
// through at along the unit vector u.
func perpendicular(axis, at, u planar.Vec) planar.Vec {
	return at.Add(u.Scale(axis.Sub(at).Dot(u)))
}

// farAxis bounds where an axis still explains something, m from the contact: a
// coupler's instant centre wanders off to infinity.
const farAxis = 3

// armsOf returns the arms at one place: of the main load, of the contact
// force, and of each rope that winds on an outline which turns.
func armsOf(m *mechanism.Machine, f *facts) []arm {
	var out []arm
	if f.Main >= 0 {
		main := &f.Shares[f.Main]
		weighs := main.Kind == mechanism.LoadWeight || main.Kind == mechanism.OwnWeight
		if axis, ok := f.State.Center(main.Link); ok && weighs && axis.Sub(f.At).Norm() < farAxis {
			out = append(out, arm{"load arm", axis, planar.Vec{X: main.At.X, Y: axis.Y}, main.At, true})
		}
	}
	if axis, ok := f.State.Center(m.Contact.Link); ok && axis.Sub(f.At).Norm() < farAxis {
		out = append(out, arm{"contact arm", axis, perpendicular(axis, f.At, f.Tangent), f.At, false})
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
			if _, turns := f.State.Center(st.Link); st.Outline == nil || !turns {
				continue
			}
			piece := pieces[min(end, len(pieces)-1)]
			axis, _ := f.State.Station(i, end)
			u := piece.To.Sub(piece.From).Unit()
			touch := piece.From
			if end > 0 {
				touch = piece.To
			}
			out = append(out, arm{"rope at the " + st.Name, axis, perpendicular(axis, piece.From, u), touch, false})
		}
	}
	return out
}

// drawArm draws an arm as a dimension in its own colour: the line of the force
// dashed through the foot, and the arm with its length.
func (s *stage) drawArm(a arm) {
	if s.frame.Len(a.length()) < 0.5*s.text {
		return
	}
	axis, foot := s.frame.At(a.axis), s.frame.At(a.foot)
	s.actionLine(a)
	pen := s.pen(0.16, s.th.Arm)
	mid := axis.Lerp(foot, 0.5)
	s.Arrow(mid, axis, pen)
	s.Arrow(mid, foot, pen)
	d := foot.Sub(axis)
	along := d.Angle()
	if d.X < 0 {
		along += math.Pi
	}
	f := draw.Font{Size: s.text, Color: s.th.Arm, Bold: true}
	s.TurnedText(mid.Add(draw.Towards(0.4*s.text, along+quarter)), along, s.u.Short(a.length()), f, draw.Centre)
}

// actionLine dashes the line of the force from where it acts to the foot and a
// little beyond.
func (s *stage) actionLine(a arm) {
	from, to := s.frame.At(a.acts), s.frame.At(a.foot)
	pen := s.pen(0.1, s.th.Arm)
	pen.Dash = []float64{0.6 * s.text, 0.35 * s.text}
	if d := to.Sub(from); d.Norm() > 0 {
		to = to.Add(d.Scale(1.2 * s.text / d.Norm()))
	}
	s.Stroke(draw.Polyline(from, to), pen)
}
