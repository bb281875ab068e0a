package exercise

import (
	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/planar"
)

// Placement is a body on a machine at one position: the right side.
type Placement struct {
	Trunk   human.Frame
	Limb    human.Pose // that works: shoulder, elbow, grip; or hip, knee, ankle
	Toe     r3.Vec     // unit, heel to toe; legs only
	Contact r3.Vec     // m, where the machine bears
	Sole    r3.Vec     // m, centre of pressure under the foot; zero where no foot pushes
	Path    r3.Vec     // unit, towards the end of the travel

	Arm       human.ArmAngles // angles of the arm, where arms work
	Leg       human.LegAngles // angles of the leg, where legs work
	HipsAngle planar.Angle    // flexion of hips and back together, which nothing tells apart; OnTrunk only, else 0

	Along  float64 // m, of a pad from the joint along its segment
	Normal r3.Vec  // unit, the way a pad's segment pushes it
	Joint  r3.Vec  // m, the body joint that should be in line with the machine's axis
}

// Place writes to dst where a body is at position i, and returns what is wrong
// with that. It does not allocate: this is the light entry for searches, that
// looks at place, reach and range of motion and at no force.
func (s *Setup) Place(dst *Placement, b *human.Body, i int) Fault {
	p := &s.points[i]
	if p.Gone {
		return Fault{Kind: NotThere}
	}
	return s.place(dst, b, p)
}

func (s *Setup) place(dst *Placement, b *human.Body, p *Point) Fault {
	st := &s.Station
	*dst = Placement{Contact: p.At, Path: p.Path}
	switch st.On {
	case OnShoulders:
		return s.placeUnderShoulders(dst, b, p)
	case OnHips:
		return s.placeUnderHips(dst, b)
	case OnKnees:
		return s.placeUnderKnees(dst, b)
	}
	dst.Trunk = st.trunk(&b.Links)
	switch {
	case st.On != NoPart:
		return s.placePad(dst, b)
	case s.Exercise.Limb() == human.Arm:
		return s.placeArm(dst, b)
	}
	return s.placeLeg(dst, b, p)
}

// settle fills a coordinate of the contact that the sheet leaves open from a
// point of the limb.
func (s *Setup) settle(dst *Placement, from r3.Vec) {
	switch s.space.free {
	case zFree:
		dst.Contact.Z = from.Z
	case yFree:
		dst.Contact.Y = from.Y
	}
}

// flare returns the swivel of the limb.
func (s *Setup) flare() planar.Angle {
	return planar.Angle(s.Station.Flare.Or(float64(catalogue[s.Exercise].flare)))
}

// reach places a limb whose end is given. It reports a fault instead of asking
// the limb for what it cannot do, so that nothing is allocated.
func reach(dst *Placement, l human.Limb, root, end r3.Vec, swivel planar.Angle, back bool) Fault {
	d := r3.Norm(r3.Sub(end, root))
	far, near := l.Upper+l.Lower, l.Upper-l.Lower
	if near < 0 {
		near = -near
	}
	const rounding = 1e-12
	switch {
	case !(d <= far*(1+rounding)):
		return Fault{Kind: TooFar, By: d - far, Limb: l.Kind}
	case d < near*(1-rounding) || d == 0:
		return Fault{Kind: TooNear, By: near - d, Limb: l.Kind}
	}
	var err error
	if !back {
		dst.Limb, err = l.Reach(dst.Trunk, root, end, swivel)
	}
	if back || err != nil { // straight out to the side a swivel has no zero
		dst.Limb, err = l.ReachToward(root, end, r3.Scale(-1, dst.Trunk.X))
	}
	if err != nil {
		dst.Limb, _ = l.ReachToward(root, end, r3.Add(dst.Trunk.Z, r3.Scale(-1, dst.Trunk.Y)))
	}
	return Fault{}
}

// placeArm reaches from the shoulder to the handle.
func (s *Setup) placeArm(dst *Placement, b *human.Body) Fault {
	l := b.Links.Arm(human.Right)
	shoulder := dst.Trunk.Shoulder(b.Links, human.Right)
	s.settle(dst, shoulder)
	f := reach(dst, l, shoulder, dst.Contact, s.flare(), catalogue[s.Exercise].elbowBack)
	if f.Kind != NoFault {
		return f
	}
	dst.Joint = dst.Limb.Mid
	if catalogue[s.Exercise].elbowBack {
		dst.Joint = shoulder
	}
	dst.Arm = dst.Trunk.ArmAngles(human.Right, dst.Limb)
	f.checkArm(&b.Ranges, dst.Arm)
	return f
}
