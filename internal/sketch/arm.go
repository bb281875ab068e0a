package sketch

import (
	"steelyard/mechanism"
	"steelyard/planar"
)

// ArmKind tells what a moment arm belongs to.
type ArmKind uint8

const (
	LoadArm    ArmKind = iota // of the weight that asks most, to its line of gravity
	ContactArm                // of the force of the body
	RopeArm                   // of a rope on a cam, drum or sheave that turns with its link
)

// Arm is a moment arm: from an axis square to the line a force acts along.
type Arm struct {
	Kind ArmKind
	Of   string     // the load, the contact, or the cam
	Axis planar.Vec // m
	Foot planar.Vec // m, of the perpendicular from the axis on the line
	Acts planar.Vec // m, where on the line the force acts
}

// Length returns the arm's length, m.
func (a Arm) Length() float64 { return a.Foot.Sub(a.Axis).Norm() }

// Perpendicular returns the foot of the perpendicular from axis on the line
// through at along the unit vector u.
func Perpendicular(axis, at, u planar.Vec) planar.Vec {
	return at.Add(u.Scale(axis.Sub(at).Dot(u)))
}

// Axis returns what a link turns about, if the reader is to be shown it:
// [Pinned], or [mechanism.State.Center].
type Axis func(mechanism.LinkID) (planar.Vec, bool)

// Pinned returns the axes that stay, unlike the centre of a coupler: of a link
// pinned to the ground, that pin.
func Pinned(m *mechanism.Machine) Axis {
	return func(l mechanism.LinkID) (planar.Vec, bool) {
		for i := range m.Joints {
			j := &m.Joints[i]
			if j.Kind == mechanism.Revolute && (j.A == mechanism.Ground && j.B == l || j.B == mechanism.Ground && j.A == l) {
				return j.At, true
			}
		}
		return planar.Vec{}, false
	}
}

// Arms returns the moment arms about the axes to be shown: of the main load if
// it is a weight, of the contact force, then the [Place.RopeArms].
func (p *Place) Arms(axisOf Axis) []Arm {
	var out []Arm
	if p.Main >= 0 && Weighs(&p.Shares[p.Main]) {
		main := &p.Shares[p.Main]
		if axis, ok := axisOf(main.Link); ok {
			out = append(out, Arm{LoadArm, main.Name, axis, planar.Vec{X: main.At.X, Y: axis.Y}, main.At})
		}
	}
	c := &p.machine.Contact
	if axis, ok := axisOf(c.Link); ok {
		out = append(out, Arm{ContactArm, c.Name, axis, Perpendicular(axis, p.At, p.Tangent), p.At})
	}
	return append(out, p.RopeArms(axisOf)...)
}

// RopeArms returns the radius at which each rope's end pulls on a cam, drum or
// sheave whose link turns.
func (p *Place) RopeArms(axisOf Axis) []Arm {
	var out []Arm
	for i := range p.machine.Ropes {
		route := p.machine.Ropes[i].Route
		pieces := p.State.Spans(i)
		for _, end := range []int{0, len(route) - 1} {
			s := &route[end]
			if _, turns := axisOf(s.Link); s.Outline == nil || !turns {
				continue
			}
			piece := pieces[min(end, len(pieces)-1)]
			touch := piece.From
			if end > 0 {
				touch = piece.To
			}
			axis, _ := p.State.Station(i, end)
			along := piece.To.Sub(piece.From).Unit()
			out = append(out, Arm{RopeArm, s.Name, axis, Perpendicular(axis, piece.From, along), touch})
		}
	}
	return out
}
