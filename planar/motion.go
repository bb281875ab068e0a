package planar

import "math"

// Motion is a rigid motion of the plane: a turn about the origin, then a
// shift. The zero value is not a motion; use Rest.
type Motion struct {
	Cos, Sin float64 // of the turn
	Shift    Vec
}

// Rest returns the motion that leaves everything in place.
func Rest() Motion { return Motion{Cos: 1} }

// TurnThenShift returns the motion that turns by a about the origin and then
// shifts by d.
func TurnThenShift(a Angle, d Vec) Motion {
	s, c := math.Sincos(float64(a))
	return Motion{c, s, d}
}

// TurnAbout returns the motion that turns by a about the point p.
func TurnAbout(p Vec, a Angle) Motion {
	m := TurnThenShift(a, Vec{})
	m.Shift = p.Sub(m.Turn(p))
	return m
}

// Point returns where the motion takes the point p.
func (m Motion) Point(p Vec) Vec { return m.Turn(p).Add(m.Shift) }

// Turn returns the free vector v turned; shifts do not change it.
func (m Motion) Turn(v Vec) Vec {
	return Vec{m.Cos*v.X - m.Sin*v.Y, m.Sin*v.X + m.Cos*v.Y}
}

// Back returns the point that the motion takes to p.
func (m Motion) Back(p Vec) Vec { return m.TurnBack(p.Sub(m.Shift)) }

// TurnBack undoes Turn.
func (m Motion) TurnBack(v Vec) Vec {
	return Vec{m.Cos*v.X + m.Sin*v.Y, -m.Sin*v.X + m.Cos*v.Y}
}

// Angle returns the turn in (-π, π].
func (m Motion) Angle() Angle { return Angle(math.Atan2(m.Sin, m.Cos)) }
