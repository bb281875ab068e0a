package exercise

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/planar"
)

// padLine returns the direction of a straight segment from a joint that passes
// a pad's centre at a distance r on the side away from the motion t, how far
// along it the pad bears, and the way it pushes the pad.
//
// With e the direction from joint to pad at distance d and w the part of t
// across e, the segment turns off e by β, sin β = r/d:
//
//	u = cos β e - sin β w,  n = sin β e + cos β w,  along = d cos β
//
// Then along·u + r·n = d·e, and n is square to u. It reports false if the joint
// lies within the pad.
func padLine(joint, pad, t r3.Vec, r float64) (u, n r3.Vec, along float64, ok bool) {
	v := r3.Sub(pad, joint)
	d := r3.Norm(v)
	if d <= r || d == 0 {
		return u, n, 0, false
	}
	e := r3.Scale(1/d, v)
	w := r3.Sub(t, r3.Scale(r3.Dot(t, e), e))
	k := r3.Norm(w)
	if k == 0 {
		return u, n, 0, false
	}
	w = r3.Scale(1/k, w)
	sin := r / d
	cos := math.Sqrt((1 - sin) * (1 + sin))
	u = r3.Sub(r3.Scale(cos, e), r3.Scale(sin, w))
	n = r3.Add(r3.Scale(sin, e), r3.Scale(cos, w))
	return u, n, d * cos, true
}

// placePad turns the segment that a pad or strap bears on about its joint.
func (s *Setup) placePad(dst *Placement, b *human.Body) Fault {
	l := &b.Links
	var length float64
	switch s.Station.On {
	case OnShank:
		dst.Joint, length = r3.Add(dst.Trunk.Hip(*l, human.Right), r3.Scale(l.Thigh, s.thigh(dst))), l.Shank
	case OnThigh:
		dst.Joint, length = dst.Trunk.Hip(*l, human.Right), l.Thigh
	case OnUpperArm:
		dst.Joint, length = dst.Trunk.Shoulder(*l, human.Right), l.UpperArm
	case OnTrunk:
		dst.Joint, length = dst.Trunk.Origin, l.Trunk+shoulderPad
	}
	s.settle(dst, dst.Joint)
	u, n, along, ok := padLine(dst.Joint, dst.Contact, dst.Path, s.Station.PadRadius)
	if !ok {
		return Fault{Kind: OffLimb, By: s.Station.PadRadius, Limb: s.Exercise.Limb()}
	}
	dst.Along, dst.Normal = along, n
	if along > length {
		return Fault{Kind: OffLimb, By: along - length, Limb: s.Exercise.Limb()}
	}
	return s.turnSegment(dst, b, u)
}

// thigh returns the direction of a thigh that stays where it is.
func (s *Setup) thigh(dst *Placement) r3.Vec {
	if p := s.Station.Posture; p == LyingOnBack || p == LyingOnFront && s.Station.On != OnTrunk {
		return r3.Scale(-1, dst.Trunk.Y)
	}
	sin, cos := math.Sincos(float64(s.Station.Thigh))
	return r3.Vec{X: s.Station.ahead() * cos, Y: sin}
}

// turnSegment lays out the limb whose padded segment runs along u.
func (s *Setup) turnSegment(dst *Placement, b *human.Body, u r3.Vec) (f Fault) {
	l := &b.Links
	c := dst.Trunk.TurnBack(u)
	switch s.Station.On {
	case OnShank:
		hip := dst.Trunk.Hip(*l, human.Right)
		dst.Limb = human.Pose{Root: hip, Mid: dst.Joint, End: r3.Add(dst.Joint, r3.Scale(l.Shank, u)), Hinge: r3.Scale(-1, dst.Trunk.Z)}
		dst.Toe = dst.Limb.Toe(0)
		dst.Leg = dst.Trunk.LegAngles(human.Right, dst.Limb, dst.Toe)
		f.checkLeg(&b.Ranges, dst.Leg)
	case OnThigh:
		a := human.LegAngles{HipFlexion: planar.Angle(math.Atan2(c.X, -c.Y)), HipAbduction: planar.Angle(math.Asin(max(-1, min(1, c.Z)))), Knee: s.Station.Bend}
		dst.Limb, dst.Toe = l.Leg(human.Right).PlaceLeg(dst.Trunk, dst.Joint, a)
		dst.Leg = a
		f.checkLeg(&b.Ranges, a)
	case OnUpperArm:
		a := human.ArmAngles{Elevation: planar.Angle(math.Atan2(math.Hypot(c.X, c.Z), -c.Y)), Plane: planar.Angle(math.Atan2(c.X, c.Z)), Elbow: s.Station.Bend}
		dst.Limb = l.Arm(human.Right).PlaceArm(dst.Trunk, dst.Joint, a)
		dst.Arm = dst.Trunk.ArmAngles(human.Right, dst.Limb)
		f.checkArm(&b.Ranges, dst.Arm)
	case OnTrunk:
		dst.Trunk = s.Station.trunkFrame(dst.Joint, s.slopeOf(u))
		thigh := s.thigh(dst)
		hip := dst.Trunk.Hip(*l, human.Right)
		knee := r3.Add(hip, r3.Scale(l.Thigh, thigh))
		dst.Limb = human.Pose{Root: hip, Mid: knee, End: r3.Add(knee, r3.Scale(l.Shank, thigh)), Hinge: r3.Scale(-1, dst.Trunk.Z)}
		dst.Toe = dst.Limb.Toe(0)
		dst.Leg = dst.Trunk.LegAngles(human.Right, dst.Limb, dst.Toe)
		dst.HipsAngle = dst.Leg.HipFlexion
		f.check(&b.Ranges, human.HipFlexion, dst.Leg.HipFlexion)
	}
	return f
}

// slopeOf returns the slope from the floor of a trunk that points along u.
func (s *Setup) slopeOf(u r3.Vec) planar.Angle {
	return planar.Angle(math.Atan2(u.Y, -s.Station.ahead()*u.X))
}
