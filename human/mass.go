package human

import (
	"math"

	"steelyard/reference"
)

// SegmentMass is the inertia of one segment of a person.
type SegmentMass struct {
	Mass   float64 // kg
	Length float64 // m, between its ends
	Centre float64 // m, centre of mass from the proximal end (trunk and head: from the line of the hips; foot: from the heel)
	// Moments of inertia about the centre of mass, kg·m²: about the forward,
	// the long and the sideways axis of the segment. About the long axis 0
	// where the set gives none.
	Forward, Long, Sideways float64
	Source                  reference.Source
}

// headShare is crown to base of the neck over stature: 242.9 mm at 1741 mm,
// de Leva 1996, Table 4.
const headShare = 242.9 / 1741

// Segment returns the inertia of one segment, from the set the person's sheet
// chose.
func (b *Body) Segment(s reference.Segment) SegmentMass { return b.segments[s] }

// segment computes one segment. Dempster's hand ends at the knuckles, taken
// here at the grip, and its foot runs from the ankle to the ball.
func (b *Body) segment(s reference.Segment) SegmentMass {
	set := b.Person.Segments
	r := reference.SegmentOf(set, b.Person.Sex, s)
	length := b.lengthOf(s, set)
	centre := r.Centre * length
	switch {
	case s == reference.SegTrunk && set == reference.DeLeva:
		centre = length - centre // counted from the shoulders in the table
	case s == reference.SegHead:
		centre = b.Links.HipToCrown - headShare*b.Person.Height/2
	case s == reference.SegFoot && set == reference.Dempster:
		centre += b.Links.HeelToAnkle
	}
	m := r.Mass * b.Person.Mass
	inertia := func(gyration float64) float64 {
		if math.IsNaN(gyration) {
			return 0
		}
		return m * gyration * gyration * length * length
	}
	return SegmentMass{m, length, centre, inertia(r.Sagittal), inertia(r.Long), inertia(r.Transverse), r.Source}
}

func (b *Body) lengthOf(s reference.Segment, set reference.SegmentSet) float64 {
	l := b.Links
	switch {
	case s == reference.SegHead:
		return headShare * b.Person.Height
	case s == reference.SegTrunk:
		return l.Trunk
	case s == reference.SegUpperArm:
		return l.UpperArm
	case s == reference.SegForearm:
		return l.Forearm
	case s == reference.SegHand && set == reference.Dempster:
		return l.ElbowToGrip - l.Forearm
	case s == reference.SegHand:
		return l.Hand
	case s == reference.SegThigh:
		return l.Thigh
	case s == reference.SegShank:
		return l.Shank
	case s == reference.SegFoot && set == reference.Dempster:
		return l.HeelToBall - l.HeelToAnkle
	case s == reference.SegFoot:
		return l.Foot
	}
	panic("human: no segment " + s.String())
}
