package sketch

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/evaluation"
	"steelyard/exercise"
	"steelyard/planar"
)

// Person is a person at one row of the sweep, seen square to the machine's
// plane: the right side.
type Person struct {
	Meeting   *evaluation.Meeting
	Placement *exercise.Placement

	origin planar.Vec // of the contact on the sheet
	x, y   r3.Vec     // the plane's axes in space
}

// PersonAt returns the evaluation's person at a row where they can be.
func PersonAt(e *evaluation.Evaluation, row int) Person {
	m := e.Person
	p := Person{Meeting: m, Placement: &m.Rest.Placements[row], origin: e.Sweep.Contact[row]}
	sin, cos := math.Sincos(float64(e.Model.Machine().Plane.Tilt))
	p.x, p.y = r3.Vec{X: 1}, r3.Vec{Y: cos, Z: sin}
	if m.Rest.Setup.Station.FromFront {
		p.x, p.y = r3.Vec{Z: 1}, r3.Vec{Y: 1}
	}
	return p
}

// On returns where a point of space is seen on the sheet, m.
func (p *Person) On(v r3.Vec) planar.Vec {
	return p.origin.Add(p.Seen(r3.Sub(v, p.Placement.Contact)))
}

// Seen returns what is seen of a free vector.
func (p *Person) Seen(v r3.Vec) planar.Vec {
	return planar.Vec{X: r3.Dot(v, p.x), Y: r3.Dot(v, p.y)}
}

// Out returns the unit vector towards who looks at the sheet.
func (p *Person) Out() r3.Vec { return r3.Cross(p.x, p.y) }

// LegWorks reports whether it is the leg that meets the machine, not the arm.
func (p *Person) LegWorks() bool { return p.Placement.Toe != r3.Vec{} }

// Height returns the person's stature, m.
func (p *Person) Height() float64 { return p.Meeting.Person.Person.Height }
