package human

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/planar"
)

// Kind tells an arm from a leg: their middle joints bend opposite ways.
type Kind int

const (
	Arm Kind = iota
	Leg
)

// String returns "arm" or "leg".
func (k Kind) String() string { return [...]string{"arm", "leg"}[k] }

// Limb is an arm or a leg as two straight links.
type Limb struct {
	Kind         Kind
	Side         Side
	Upper, Lower float64 // m, > 0: shoulder to elbow or hip to knee; elbow to grip or wrist, knee to ankle
}

// Arm returns the limb from the shoulder to the grip, wrist straight.
func (l Links) Arm(s Side) Limb { return Limb{Arm, s, l.UpperArm, l.ElbowToGrip} }

// ArmToWrist returns the limb from the shoulder to the wrist.
func (l Links) ArmToWrist(s Side) Limb { return Limb{Arm, s, l.UpperArm, l.Forearm} }

// Leg returns the limb from the hip to the ankle.
func (l Links) Leg(s Side) Limb { return Limb{Leg, s, l.Thigh, l.Shank} }

// Pose is a limb in space, in the ground frame.
type Pose struct {
	Root, Mid, End r3.Vec // m: shoulder, elbow, hand; or hip, knee, ankle
	// Hinge is the unit axis about which the lower link bends against the upper
	// one: positive turns are flexion. It is known for a straight limb too.
	Hinge r3.Vec
}

// Upper returns the unit vector from root to middle.
func (p Pose) Upper() r3.Vec { return r3.Unit(r3.Sub(p.Mid, p.Root)) }

// Lower returns the unit vector from middle to end.
func (p Pose) Lower() r3.Vec { return r3.Unit(r3.Sub(p.End, p.Mid)) }

// Flexion returns the bend of the middle joint, 0 straight, in [0, π]. It is
// negative if the joint is bent backwards about its hinge.
func (p Pose) Flexion() planar.Angle { return turnBetween(p.Upper(), p.Lower(), p.Hinge) }

// ReachError tells that a limb cannot span from its root to a point.
type ReachError struct {
	Limb      Limb
	Span      float64 // m, from root to end
	Near, Far float64 // m, the spans it can take
}

func (e *ReachError) Error() string {
	joint := map[Kind]string{Arm: "shoulder", Leg: "hip"}[e.Limb.Kind]
	if e.Span > e.Far {
		return fmt.Sprintf("human: the %v %v of %.3f m is %.3f m short of a point %.3f m from the %s; bring the contact or the seat closer",
			e.Limb.Side, e.Limb.Kind, e.Far, e.Span-e.Far, e.Span, joint)
	}
	return fmt.Sprintf("human: a point %.3f m from the %s is too close for the %v %v, which folds to %.3f m; move the contact or the seat away",
		e.Span, joint, e.Limb.Side, e.Limb.Kind, e.Near)
}

// SwivelError tells that a swivel means nothing because the end lies straight
// out to the side of the root.
type SwivelError struct{ Limb Limb }

func (e *SwivelError) Error() string {
	mid := map[Kind]string{Arm: "elbow", Leg: "knee"}[e.Limb.Kind]
	return fmt.Sprintf("human: the %v %v points straight out to the side, where a swivel has no zero; say which way the %s points instead",
		e.Limb.Side, e.Limb.Kind, mid)
}

// Two relative tolerances: straight is the rounding still taken as a straight
// limb; sideways is how near the side axis the swivel loses its zero.
const (
	straight = 1e-12
	sideways = 1e-6
)

// Reach returns the pose that takes the end of the limb from its root to end,
// in closed form. The middle joint lies on a circle about the line from root to
// end; swivel picks the place on it:
//
//	0     in the plane of that line and the body's forward axis: an elbow below
//	      and behind, a knee in front, as in a plain side view
//	+90°  straight out to the side: elbow flared, knee out
//
// Only the axes of body matter, those of the trunk for an arm, of the pelvis
// for a leg. It returns a *[ReachError] when the span is out of reach and a
// *[SwivelError] when the end lies straight out to the side; use
// [Limb.ReachToward] there.
func (l Limb) Reach(body Frame, root, end r3.Vec, swivel planar.Angle) (Pose, error) {
	a := r3.Unit(r3.Sub(end, root))
	side, n := across(body.Z, a)
	if n < sideways {
		return Pose{}, &SwivelError{l}
	}
	s, c := math.Sincos(float64(swivel))
	// For an arm that hangs (a = -y) side is +z and a×side is -x: an elbow
	// behind. A knee goes the other way.
	zero := r3.Cross(a, side)
	if l.Kind == Leg {
		zero = r3.Scale(-1, zero)
	}
	return l.reach(root, end, a, r3.Add(r3.Scale(c, zero), r3.Scale(s*l.Side.out(), side)))
}

// ReachToward is [Limb.Reach] with the middle joint on the side of the line
// that toward points to (a free vector, not along the line).
func (l Limb) ReachToward(root, end, toward r3.Vec) (Pose, error) {
	a := r3.Unit(r3.Sub(end, root))
	m, n := across(toward, a)
	if n <= sideways*r3.Norm(toward) {
		return Pose{}, &SwivelError{l}
	}
	return l.reach(root, end, a, m)
}

// reach places the middle joint off the line of direction a towards m.
func (l Limb) reach(root, end, a, m r3.Vec) (Pose, error) {
	d := r3.Norm(r3.Sub(end, root))
	far, near := l.Upper+l.Lower, math.Abs(l.Upper-l.Lower)
	if !(d > 0 && d <= far*(1+straight) && d >= near*(1-straight)) { // also refuses a place that is no number
		return Pose{}, &ReachError{l, d, near, far}
	}
	// The middle joint stands s along the line and h off it:
	//   s = (d² + u² - w²) / 2d,  h² = (u - s)(u + s)
	s := (d*d + (l.Upper-l.Lower)*(l.Upper+l.Lower)) / (2 * d)
	h := math.Sqrt(max(0, (l.Upper-s)*(l.Upper+s)))
	mid := r3.Add(root, r3.Add(r3.Scale(s, a), r3.Scale(h, m)))
	// Flexion turns upper = s·a + h·m towards lower = (d-s)·a - h·m, that is
	// about upper × lower ∝ m × a.
	return Pose{root, mid, end, r3.Cross(m, a)}, nil
}

// Swivel returns the swivel of a pose, the inverse of [Limb.Reach], in
// (-π, π]. It returns a *[SwivelError] where the swivel has no zero.
func (l Limb) Swivel(body Frame, p Pose) (planar.Angle, error) {
	a := r3.Unit(r3.Sub(p.End, p.Root))
	side, n := across(body.Z, a)
	if n < sideways {
		return 0, &SwivelError{l}
	}
	zero := r3.Cross(a, side)
	if l.Kind == Leg {
		zero = r3.Scale(-1, zero)
	}
	m := r3.Cross(a, p.Hinge)
	return planar.Angle(math.Atan2(l.Side.out()*r3.Dot(m, side), r3.Dot(m, zero))), nil
}
