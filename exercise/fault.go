package exercise

import (
	"fmt"

	"steelyard/human"
	"steelyard/planar"
)

// FaultKind tells why a body cannot be, or should not be, where the machine
// has it.
type FaultKind uint8

// The kinds of fault.
const (
	NoFault   FaultKind = iota
	NotThere            // the machine cannot reach the position
	TooFar              // the limb is too short for the contact
	TooNear             // the limb does not fold that far
	OffLimb             // the pad lies beyond the end of the segment it bears on, or at its joint
	PastRange           // a joint is outside its range of motion; the body is placed all the same
)

// Fault is what is wrong with a body at one position, as numbers; the zero
// value is nothing. Only PastRange leaves a placement that means something.
type Fault struct {
	Kind   FaultKind
	By     float64 // m short, too long, or beyond; of PastRange rad past the limit
	Limb   human.Kind
	Motion human.Action // of PastRange
	Limit  planar.Angle // of PastRange, in the sense of the motion
	Own    bool         // of PastRange: the limit is on the person's own sheet
	Count  int          // how many joints are past their range; the worst is told
}

// Placed reports whether the placement means something.
func (f Fault) Placed() bool { return f.Kind == NoFault || f.Kind == PastRange }

// String returns one sentence with its cure.
func (f Fault) String() string {
	mm := 1000 * f.By
	switch f.Kind {
	case NotThere:
		return "the machine cannot be brought here"
	case TooFar:
		return fmt.Sprintf("the %v is %.0f mm too short to reach; bring the seat or the contact closer", f.Limb, mm)
	case TooNear:
		return fmt.Sprintf("the contact is %.0f mm too close for the folded %v; move the seat or the contact away", mm, f.Limb)
	case OffLimb:
		return fmt.Sprintf("the pad lies %.0f mm off the segment it should bear on; move the pad or the seat", mm)
	case PastRange:
		return fmt.Sprintf("%v goes %.0f° past %s", f.Motion, planar.Angle(f.By).Degrees(), f.limit())
	}
	return ""
}

// limit says what is passed.
func (f Fault) limit() string {
	switch {
	case f.Own:
		return fmt.Sprintf("this person's limit of %.0f°", f.Limit.Degrees())
	case f.Motion == human.AnkleDorsiflex:
		return fmt.Sprintf("the usual limit of %.0f° of a foot that bears load, heel down", f.Limit.Degrees())
	}
	return fmt.Sprintf("the usual limit of %.0f°", f.Limit.Degrees())
}

// breach notes a joint angle outside its range; the worst is kept.
func (f *Fault) breach(motion human.Action, angle, limit planar.Angle, own bool) {
	by := float64(angle - limit)
	f.Count++
	if f.Kind != PastRange || by > f.By {
		f.Kind, f.By, f.Motion, f.Limit, f.Own = PastRange, by, motion, limit, own
	}
}

// touch is the rounding allowed at the end of a range: 1e-6 rad.
const touch = 1e-6

// check notes a coordinate outside its range.
func (f *Fault) check(r *human.Ranges, c human.Coordinate, angle planar.Angle) {
	switch i := &r[c]; {
	case angle > i.Max.Angle+touch:
		f.breach(c.Positive(), angle, i.Max.Angle, i.Max.Own())
	case angle < i.Min.Angle-touch:
		f.breach(c.Positive().Opposite(), -angle, -i.Min.Angle, i.Min.Own())
	}
}

func (f *Fault) checkArm(r *human.Ranges, a human.ArmAngles) {
	if b, bad := r.CheckShoulder(a); bad {
		f.breach(b.Motion, b.Angle, b.Limit.Angle, b.Limit.Own())
	}
	if a.PlaneKnown {
		f.check(r, human.ShoulderRotation, a.Rotation)
	}
	f.check(r, human.ElbowFlexion, a.Elbow)
}

func (f *Fault) checkLeg(r *human.Ranges, a human.LegAngles) {
	f.check(r, human.HipFlexion, a.HipFlexion)
	f.check(r, human.HipAbduction, a.HipAbduction)
	f.check(r, human.HipRotation, a.HipRotation)
	f.check(r, human.KneeFlexion, a.Knee)
	f.check(r, human.AnkleDorsiflexion, a.Ankle)
}
