package human

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/planar"
)

// LegAngles are the joint angles of a leg; doc.go has zeros and senses.
type LegAngles struct {
	HipFlexion   planar.Angle // in the pelvis's side view, (-π, π]
	HipAbduction planar.Angle // of the thigh out of that view, [-π/2, π/2]
	HipRotation  planar.Angle // of the thigh about itself, lateral positive, (-π, π]
	Knee         planar.Angle // flexion
	Ankle        planar.Angle // dorsiflexion, [-π/2, π/2]
}

// legAxes are the unit axes of the hip's angles for a thigh along u: flexion
// about the pelvis, rotation about the thigh, abduction about the line at
// right angles to both (Grood & Suntay 1983, J Biomech Eng 105:136, from
// memory). The thigh must not point straight out to the side.
func legAxes(pelvis Frame, s Side, u r3.Vec) (flexion, abduction, rotation r3.Vec) {
	floating, _ := across(r3.Cross(u, pelvis.Z), u)
	return pelvis.Z, r3.Scale(s.out(), floating), r3.Scale(s.out(), u)
}

// LegAngles returns the joint angles of a leg in a pose, against the pelvis.
// toe is the direction from heel to toe along the sole (unit, ground frame).
func (pelvis Frame) LegAngles(s Side, p Pose, toe r3.Vec) LegAngles {
	u := p.Upper()
	c := pelvis.TurnBack(u)
	_, _, rotation := legAxes(pelvis, s, u)
	// With no rotation the knee's hinge points to the left, square to the thigh.
	neutral, _ := across(r3.Scale(-1, pelvis.Z), u)
	return LegAngles{
		HipFlexion:   planar.Angle(math.Atan2(c.X, -c.Y)),
		HipAbduction: planar.Angle(math.Asin(min(1, max(-1, s.out()*c.Z)))),
		HipRotation:  turnBetween(neutral, p.Hinge, rotation),
		Knee:         p.Flexion(),
		Ankle:        planar.Angle(math.Asin(min(1, max(-1, -r3.Dot(toe, p.Lower()))))),
	}
}

// PlaceLeg returns the pose of a leg with the given joint angles and the
// direction of its sole from heel to toe, the inverse of [Frame.LegAngles].
func (l Limb) PlaceLeg(pelvis Frame, hip r3.Vec, a LegAngles) (p Pose, toe r3.Vec) {
	sf, cf := math.Sincos(float64(a.HipFlexion))
	sa, ca := math.Sincos(float64(a.HipAbduction))
	u := pelvis.Turn(r3.Vec{X: ca * sf, Y: -ca * cf, Z: l.Side.out() * sa})
	_, _, rotation := legAxes(pelvis, l.Side, u)
	neutral, _ := across(r3.Scale(-1, pelvis.Z), u)
	p = l.place(hip, u, turnAbout(neutral, rotation, a.HipRotation), a.Knee)
	return p, p.Toe(a.Ankle)
}

// Toe returns the direction of the sole from heel to toe for an ankle
// dorsiflexed by the given angle, the foot in the plane in which the knee bends.
func (p Pose) Toe(dorsiflexion planar.Angle) r3.Vec {
	v := p.Lower()
	s, c := math.Sincos(float64(dorsiflexion))
	return r3.Sub(r3.Scale(c, r3.Cross(v, p.Hinge)), r3.Scale(s, v))
}

// LegMoments are the internal moments of a leg's joints in N·m, each on the
// distal segment and positive in the sense of its angle. The hip's three are
// parts of one moment along axes that are not at right angles when the thigh
// is abducted: each is the moment that works through its own angle.
type LegMoments struct {
	HipFlexion, HipAbduction, HipRotation float64
	Knee                                  float64 // flexion
	KneeOffAxis                           float64 // size of what bears on the knee's ligaments
	Ankle                                 float64 // dorsiflexion
}

// LegMoments resolves the net moments at hip, knee and ankle (N·m, ground
// frame, on the distal segment) about the anatomical axes of a pose.
func (pelvis Frame) LegMoments(s Side, p Pose, hip, knee, ankle r3.Vec) LegMoments {
	flexion, abduction, rotation := legAxes(pelvis, s, p.Upper())
	bend := r3.Dot(knee, p.Hinge)
	return LegMoments{
		HipFlexion:   r3.Dot(hip, flexion),
		HipAbduction: r3.Dot(hip, abduction),
		HipRotation:  r3.Dot(hip, rotation),
		Knee:         bend,
		KneeOffAxis:  r3.Norm(r3.Sub(knee, r3.Scale(bend, p.Hinge))),
		Ankle:        -r3.Dot(ankle, p.Hinge),
	}
}
