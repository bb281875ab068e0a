package exercise

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/planar"
)

// placeLeg reaches from the hip to the ankle of a foot on a plate.
func (s *Setup) placeLeg(dst *Placement, b *human.Body, p *Point) Fault {
	hip := dst.Trunk.Hip(b.Links, human.Right)
	s.settle(dst, hip)
	dst.Sole = dst.Contact
	dst.Toe = s.sole(dst, hip, p.Turn)
	return s.stand(dst, b, hip)
}

// sole returns the direction from heel to toe of a foot on the plate. A plate
// whose slope is not stated is square to the path at the measured pose.
func (s *Setup) sole(dst *Placement, hip r3.Vec, turn planar.Angle) r3.Vec {
	slope := planar.Angle(s.Station.Plate.Value)
	if !s.Station.Plate.Given {
		t := s.points[0].Path
		slope, turn = planar.Angle(math.Atan2(t.X, -t.Y)), turn-s.points[0].Turn
	}
	sin, cos := math.Sincos(float64(slope + turn))
	return towardHip(dst, r3.Vec{X: cos, Y: sin}, hip)
}

// towardHip returns toe, or its reverse, so that the sole faces away from the
// hip.
func towardHip(dst *Placement, toe, hip r3.Vec) r3.Vec {
	if up := r3.Cross(dst.Trunk.Z, toe); r3.Dot(up, r3.Sub(hip, dst.Sole)) < 0 {
		return r3.Scale(-1, toe)
	}
	return toe
}

// pressure returns how far from the heel the plate bears, m.
func (s *Setup) pressure(l *human.Links) float64 {
	switch s.Station.Foot {
	case Heel:
		return l.HeelToAnkle
	case Ball:
		return l.HeelToBall
	}
	return l.Foot / 2
}

// ankle returns where the ankle is of a foot in the side view whose sole bears
// at a point.
func (s *Setup) ankle(dst *Placement, l *human.Links, at r3.Vec) r3.Vec {
	up := r3.Cross(dst.Trunk.Z, dst.Toe)
	along := s.pressure(l) - l.HeelToAnkle
	return r3.Add(at, r3.Sub(r3.Scale(l.AnkleHeight, up), r3.Scale(along, dst.Toe)))
}

// stand reaches from the hip to the ankle above dst.Sole.
func (s *Setup) stand(dst *Placement, b *human.Body, hip r3.Vec) Fault {
	ankle := s.ankle(dst, &b.Links, dst.Sole)
	f := reach(dst, b.Links.Leg(human.Right), hip, ankle, s.flare(), false)
	if f.Kind != NoFault {
		return f
	}
	dst.Joint = dst.Limb.Mid
	dst.Leg = dst.Trunk.LegAngles(human.Right, dst.Limb, dst.Toe)
	f.checkLeg(&b.Ranges, dst.Leg)
	return f
}
