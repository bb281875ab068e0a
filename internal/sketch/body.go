package sketch

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/exercise"
	"steelyard/human"
	"steelyard/planar"
)

// Segment is a body segment seen from the side: a tapered capsule.
type Segment struct {
	Name      string
	From, To  planar.Vec // m, proximal and distal end
	Near, Far float64    // m, half thickness at them
}

// Half thicknesses of segments over the person's height, for the eye only.
const (
	trunkThick    = 0.060
	neckThick     = 0.022
	headThick     = 0.055
	shoulderThick = 0.032
	elbowThick    = 0.023
	wristThick    = 0.017
	handThick     = 0.024
	thighThick    = 0.044
	kneeThick     = 0.030
	ankleThick    = 0.020
	footThick     = 0.014
)

// headBelow is how far the centre of the head is below the crown, over the
// person's height, for the eye only.
const headBelow = 0.068

func (p *Person) segment(name string, from, to r3.Vec, near, far float64) Segment {
	h := p.Height()
	return Segment{name, p.On(from), p.On(to), near * h, far * h}
}

// Trunk returns trunk, neck and head.
func (p *Person) Trunk() []Segment {
	l, t := &p.Meeting.Body.Links, &p.Placement.Trunk
	shoulders := t.Point(r3.Vec{Y: l.Trunk})
	head := t.Point(r3.Vec{Y: l.HipToCrown - headBelow*p.Height()})
	return []Segment{
		p.segment("trunk", t.Origin, shoulders, trunkThick, trunkThick),
		p.segment("neck", shoulders, head, neckThick, neckThick),
		p.segment("head", head, head, headThick, headThick),
	}
}

// LowerTrunk returns the lower half of the trunk.
func (p *Person) LowerTrunk() Segment {
	t := &p.Placement.Trunk
	return p.segment("trunk", t.Origin, t.Point(r3.Vec{Y: p.Meeting.Body.Links.Trunk / 2}), trunkThick, trunkThick)
}

// Girdles returns what joins the two shoulders, and the two hips: seen where
// the person is not seen square from the side.
func (p *Person) Girdles() []Segment {
	l, t := p.Meeting.Body.Links, &p.Placement.Trunk
	return []Segment{
		p.segment("shoulders", t.Shoulder(l, human.Left), t.Shoulder(l, human.Right), elbowThick, elbowThick),
		p.segment("hips", t.Hip(l, human.Left), t.Hip(l, human.Right), kneeThick, kneeThick),
	}
}

// Limb returns the two long segments of the limb that works.
func (p *Person) Limb() []Segment {
	q := &p.Placement.Limb
	if p.LegWorks() {
		return p.Leg(q.Root, q.Mid, q.End)
	}
	return []Segment{
		p.segment("upper arm", q.Root, q.Mid, shoulderThick, elbowThick),
		p.segment("forearm", q.Mid, q.End, elbowThick, wristThick),
	}
}

// Hand returns the hand at the end of the arm that works.
func (p *Person) Hand() Segment {
	end := p.Placement.Limb.End
	return p.segment("hand", end, end, handThick, handThick)
}

// Leg returns thigh and shank of a leg.
func (p *Person) Leg(hip, knee, ankle r3.Vec) []Segment {
	return []Segment{
		p.segment("thigh", hip, knee, thighThick, kneeThick),
		p.segment("shank", knee, ankle, kneeThick, ankleThick),
	}
}

// Foot returns a foot from its heel to its toe.
func (p *Person) Foot(heel, toe r3.Vec) Segment {
	return p.segment("foot", heel, toe, footThick, footThick)
}

// FootThick returns half the thickness of a foot, m.
func (p *Person) FootThick() float64 { return footThick * p.Height() }

// IdleLeg hints at where a leg is that does not work, as the posture has it.
func (p *Person) IdleLeg() (hip, knee, ankle r3.Vec) {
	l, t, st := &p.Meeting.Body.Links, &p.Placement.Trunk, &p.Meeting.Rest.Setup.Station
	forward := math.Copysign(1, t.X.X)
	thigh, shank := r3.Scale(-1, t.Y), r3.Vec{Y: -1}
	switch st.Posture {
	case exercise.Seated:
		sin, cos := math.Sincos(float64(st.Thigh))
		thigh = r3.Vec{X: forward * cos, Y: sin}
	case exercise.Standing, exercise.LyingOnFront:
		shank = thigh
	case exercise.Kneeling:
		shank = r3.Vec{X: -forward}
	}
	hip = t.Hip(*l, human.Right)
	knee = r3.Add(hip, r3.Scale(l.Thigh, thigh))
	return hip, knee, r3.Add(knee, r3.Scale(l.Shank, shank))
}
