package human

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/planar"
)

// ArmAngles are the joint angles of an arm; doc.go has zeros and senses.
type ArmAngles struct {
	Elevation planar.Angle // of the upper arm from hanging along the trunk, [0, π]
	Plane     planar.Angle // of elevation: 0 out to the side, +90° forward, beyond that across, (-π, π]
	Rotation  planar.Angle // of the upper arm about itself, lateral positive, (-π, π]
	Elbow     planar.Angle // flexion
	// PlaneKnown is false within a few degrees of hanging and of straight
	// overhead, where the plane means little; overhead the rotation too.
	PlaneKnown bool
}

// planeBlur is how near to hanging or overhead the plane of elevation stops
// meaning anything: a millimetre of tape is a degree there. Own choice.
const planeBlur = 5 * planar.Degree

// Flexion is the part of the elevation towards the front: all of it when the
// arm rises straight ahead, none when it rises to the side.
func (a ArmAngles) Flexion() planar.Angle {
	return a.Elevation * planar.Angle(math.Sin(float64(a.Plane)))
}

// Abduction is the part of the elevation towards the side.
func (a ArmAngles) Abduction() planar.Angle {
	return a.Elevation * planar.Angle(math.Cos(float64(a.Plane)))
}

// armAxes are the unit axes of the shoulder's components for an upper arm
// along u: elevation (raises the arm in its plane), horizontal (carries it
// forward and across) and rotation (turns it outward), at right angles to one
// another. At hanging and overhead, where the plane is free, it is taken as
// forward.
func armAxes(trunk Frame, s Side, u r3.Vec) (elevation, horizontal, rotation r3.Vec) {
	elevation, n := across(r3.Cross(u, trunk.Y), u) // down × arm
	if n < sideways {
		elevation, _ = across(trunk.Z, u)
	}
	return elevation, r3.Scale(s.out(), r3.Cross(elevation, u)), r3.Scale(s.out(), u)
}

// ArmAngles returns the joint angles of an arm in a pose, against the trunk.
func (trunk Frame) ArmAngles(s Side, p Pose) ArmAngles {
	u := p.Upper()
	c := trunk.TurnBack(u)
	level := math.Hypot(c.X, c.Z)
	a := ArmAngles{Elevation: planar.Angle(math.Atan2(level, -c.Y)), Elbow: p.Flexion()}
	a.Plane = planar.Angle(math.Atan2(c.X, s.out()*c.Z))
	if level < sideways {
		a.Plane = math.Pi / 2 // the same choice as armAxes
	}
	a.PlaneKnown = a.Elevation > planeBlur && a.Elevation < math.Pi-planeBlur

	elevation, _, rotation := armAxes(trunk, s, u)
	neutral := turnAbout(trunk.Z, elevation, a.Elevation)
	a.Rotation = turnBetween(neutral, p.Hinge, rotation)
	return a
}

// PlaceArm returns the pose of an arm with the given joint angles, the inverse
// of [Frame.ArmAngles].
func (l Limb) PlaceArm(trunk Frame, shoulder r3.Vec, a ArmAngles) Pose {
	se, ce := math.Sincos(float64(a.Elevation))
	sp, cp := math.Sincos(float64(a.Plane))
	u := trunk.Turn(r3.Vec{X: se * sp, Y: -ce, Z: l.Side.out() * se * cp})
	elevation, _, rotation := armAxes(trunk, l.Side, u)
	hinge := turnAbout(turnAbout(trunk.Z, elevation, a.Elevation), rotation, a.Rotation)
	return l.place(shoulder, u, hinge, a.Elbow)
}

// place lays out a limb from its root: upper link along u, bent about hinge.
func (l Limb) place(root, u, hinge r3.Vec, flexion planar.Angle) Pose {
	mid := r3.Add(root, r3.Scale(l.Upper, u))
	lower := turnAbout(u, hinge, flexion)
	return Pose{root, mid, r3.Add(mid, r3.Scale(l.Lower, lower)), hinge}
}

// ArmMoments are the internal moments of an arm's joints in N·m, each on the
// distal segment and positive in the sense of its angle.
//
// The shoulder's three parts lie on axes at right angles, so they make up the
// whole moment and do not overlap: Elevation raises the arm in the vertical
// plane it is in, Horizontal carries it forward and across, Rotation turns it
// outward about itself. Within a few degrees of hanging and of overhead the
// first two swap roles from pose to pose; see [Capacity.Shoulder].
type ArmMoments struct {
	Elevation, Horizontal, Rotation float64
	Elbow                           float64 // flexion
	ElbowOffAxis                    float64 // size of what bears on the elbow's ligaments and the forearm's rotators
}

// ArmMoments resolves the net moments at shoulder and elbow (N·m, ground
// frame, on the distal segment) about the anatomical axes of a pose.
func (trunk Frame) ArmMoments(s Side, p Pose, shoulder, elbow r3.Vec) ArmMoments {
	elevation, horizontal, rotation := armAxes(trunk, s, p.Upper())
	flexion := r3.Dot(elbow, p.Hinge)
	return ArmMoments{
		Elevation:    r3.Dot(shoulder, elevation),
		Horizontal:   r3.Dot(shoulder, horizontal),
		Rotation:     r3.Dot(shoulder, rotation),
		Elbow:        flexion,
		ElbowOffAxis: r3.Norm(r3.Sub(elbow, r3.Scale(flexion, p.Hinge))),
	}
}
