package exercise

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/planar"
)

// foot puts the sole of a borne load's foot on the ground and turns the toe
// along it.
func (s *Setup) foot(dst *Placement, hip r3.Vec) {
	st := &s.Station
	dst.Sole = r3.Vec{X: st.Feet.X, Y: st.Feet.Y, Z: hip.Z}
	if st.Width.Given {
		dst.Sole.Z = st.Width.Value / 2
	}
	sin, cos := math.Sincos(st.Plate.Value)
	dst.Toe = towardHip(dst, r3.Vec{X: cos, Y: sin}, hip)
}

// placeUnderShoulders hangs the trunk, at its slope, from the shoulder pads and
// reaches with the legs to the ground.
func (s *Setup) placeUnderShoulders(dst *Placement, b *human.Body, p *Point) Fault {
	l := &b.Links
	dst.Contact.Z = 0
	slope := s.Station.Trunk
	slope += (planar.Angle(s.Station.TrunkEnd.Or(float64(slope))) - slope) * planar.Angle(p.Share)
	f := s.Station.trunkFrame(dst.Contact, slope)
	dst.Trunk = s.Station.trunkFrame(r3.Sub(dst.Contact, r3.Scale(l.Trunk+shoulderPad, f.Y)), slope)
	hip := dst.Trunk.Hip(*l, human.Right)
	s.foot(dst, hip)
	if s.Exercise == StandingCalfRaise {
		dst.Sole.Z = hip.Z
		return s.raiseHeel(dst, b, hip, hip, l.Thigh+l.Shank)
	}
	return s.stand(dst, b, hip)
}

// placeUnderHips lays the back on the bench and the hips under the pad, and
// reaches with the legs to the ground.
func (s *Setup) placeUnderHips(dst *Placement, b *human.Body) Fault {
	st, l := &s.Station, &b.Links
	dst.Contact.Z = 0
	hips := r3.Sub(dst.Contact, r3.Scale(st.PadRadius, dst.Path))
	bench := r3.Vec{X: st.At.X, Y: st.At.Y}
	u, _, along, ok := padLine(hips, bench, r3.Vec{Y: -1}, l.BackToHip)
	if !ok || along > l.Trunk+shoulderPad {
		return Fault{Kind: OffLimb, By: along - l.Trunk - shoulderPad, Limb: human.Leg}
	}
	dst.Along = along
	dst.Trunk = st.trunkFrame(hips, s.slopeOf(u))
	hip := dst.Trunk.Hip(*l, human.Right)
	s.foot(dst, hip)
	return s.stand(dst, b, hip)
}

// placeUnderKnees turns the thighs up to the knee pad and stands the shanks on
// the balls of the feet.
func (s *Setup) placeUnderKnees(dst *Placement, b *human.Body) Fault {
	st, l := &s.Station, &b.Links
	dst.Trunk = st.trunk(l)
	hip := dst.Trunk.Hip(*l, human.Right)
	s.settle(dst, hip)
	u, n, along, ok := padLine(hip, dst.Contact, dst.Path, st.PadRadius)
	if !ok || along > l.Thigh {
		return Fault{Kind: OffLimb, By: along - l.Thigh, Limb: human.Leg}
	}
	dst.Along, dst.Normal = along, n
	s.foot(dst, hip)
	knee := r3.Add(hip, r3.Scale(l.Thigh, u))
	return s.raiseHeel(dst, b, hip, knee, l.Shank)
}

// raiseHeel closes the chain from a joint, over a straight link to the ankle,
// to the ball of the foot on a block: two links of which the second runs from
// ankle to ball. The ankle lies on the side of the heel.
//
// With v from ankle to ball, a along the sole and h the ankle's height,
// v = a·toe - h·up and Z×v = a·up + h·toe, so toe = (a·v + h·Z×v)/(a² + h²).
func (s *Setup) raiseHeel(dst *Placement, b *human.Body, hip, from r3.Vec, length float64) Fault {
	l := &b.Links
	a, h := l.HeelToBall-l.HeelToAnkle, l.AnkleHeight
	link := human.Limb{Kind: human.Leg, Side: human.Right, Upper: length, Lower: math.Hypot(a, h)}
	heel := r3.Scale(-1, dst.Toe)
	d := r3.Norm(r3.Sub(dst.Sole, from))
	if d > link.Upper+link.Lower || d < math.Abs(link.Upper-link.Lower) {
		return Fault{Kind: TooFar, By: math.Max(d-link.Upper-link.Lower, math.Abs(link.Upper-link.Lower)-d), Limb: human.Leg}
	}
	p, err := link.ReachToward(from, dst.Sole, heel)
	if err != nil {
		return Fault{Kind: TooFar, Limb: human.Leg}
	}
	v := r3.Sub(dst.Sole, p.Mid)
	dst.Toe = r3.Unit(r3.Add(r3.Scale(a, v), r3.Scale(h, r3.Cross(dst.Trunk.Z, v))))
	knee := from
	if from == hip {
		knee = r3.Add(hip, r3.Scale(l.Thigh/length, r3.Sub(p.Mid, hip)))
	}
	dst.Limb = human.Pose{Root: hip, Mid: knee, End: p.Mid, Hinge: r3.Scale(-1, dst.Trunk.Z)}
	dst.Joint = p.Mid
	dst.Leg = dst.Trunk.LegAngles(human.Right, dst.Limb, dst.Toe)
	var f Fault
	f.checkLeg(&b.Ranges, dst.Leg)
	return f
}
