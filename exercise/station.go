package exercise

import (
	"steelyard/planar"
)

// Posture is how the person is on the machine.
type Posture int

// The postures.
const (
	Seated Posture = iota
	Standing
	LyingOnBack
	LyingOnFront
	Kneeling
	numPostures
)

var postureNames = [numPostures]string{"seated", "standing", "lying on the back", "lying on the front", "kneeling"}

// String returns the posture in words.
func (p Posture) String() string { return postureNames[p] }

// PostureNames returns all postures in words, by Posture.
func PostureNames() []string { return postureNames[:] }

// Trunk is the usual slope of the trunk from the floor: 0 on the back, 90°
// upright, 180° on the front.
func (p Posture) Trunk() planar.Angle {
	switch p {
	case LyingOnBack:
		return 0
	case LyingOnFront:
		return 180 * deg
	}
	return 90 * deg
}

// Contact is how the body meets the machine.
type Contact int

// The kinds of contact.
const (
	Grip       Contact = iota // force free in direction
	Pad                       // on a segment; rolls and slides, normal force only
	FootPlate                 // centre of pressure under the foot
	Strap                     // round a segment, along the path
	RopeHandle                // along the rope
	Held                      // a weight in the hand or strapped on: its force is vertical
)

// Part is the part of the body a pad or strap bears on.
type Part int

// The parts.
const (
	NoPart Part = iota
	OnShank
	OnThigh
	OnUpperArm
	OnTrunk     // back or chest: the trunk turns about the hips
	OnShoulders // the body rises under it, feet on the ground
	OnHips
	OnKnees // on top of the bent knees
	numParts
)

var partNames = [numParts]string{"", "shank", "thigh", "upper arm", "trunk", "shoulders", "hips", "knees"}

// String returns the part in words.
func (p Part) String() string { return partNames[p] }

// PartNames returns the parts in words, by Part; the first is empty.
func PartNames() []string { return partNames[:] }

// Anchor is what holds the body in place.
type Anchor int

// The anchors.
const (
	NoAnchor    Anchor = iota // the contact itself places the body
	SeatAnchor                // where seat and back pad meet; without back pad, under the hips
	BenchAnchor               // the pad under the shoulders, or under the chest of who lies on the front
	FeetAnchor                // the ground under the ankles of a standing person
	KneesAnchor               // the pad under the knees of a kneeling person
	HipsAnchor                // the hip joints themselves
)

// Optional is a number that may not have been given.
type Optional struct {
	Value float64
	Given bool
}

// Or returns the number, or another if it was not given.
func (o Optional) Or(other float64) float64 {
	if o.Given {
		return o.Value
	}
	return other
}

// Some returns a number that is given.
func Some(x float64) Optional { return Optional{x, true} }

// Foot is where on the foot a plate or block bears.
type Foot int

// Places on the foot: the centre of pressure.
const (
	MidFoot Foot = iota
	Heel         // below the ankle
	Ball         // of the foot: toes on a block
)

// Station is where and how a body meets a machine: what a coach sees of seat,
// pads and handles. Points are on the machine's sheet, settings applied.
type Station struct {
	Exercises []Exercise // it serves, the usual one first
	Contact   Contact
	On        Part // of pads and straps
	Posture   Posture
	FacesBack bool // towards -x
	FromFront bool // the sheet is drawn from in front: its x axis points out to the side

	Anchor   Anchor
	At       planar.Vec   // m, of the anchor
	Trunk    planar.Angle // slope of the back from the floor: 0 lying on it, 90° upright, beyond leaning forward
	TrunkEnd Optional     // rad, of Trunk at the end of the travel, where it changes evenly on the way; OnShoulders only
	BackPad  bool         // the trunk rests on a pad at that slope
	Thigh    planar.Angle // slope from level of thighs that stay where they are, knee up positive; seated and on the front

	Loose   bool     // nothing but the body holds the load on the shoulders, as with a bar: the ground's pressure then moves along the foot
	OneLimb bool     // one arm or leg works, not both
	Width   Optional // m between both hands or feet, at the measured pose
	Height  Optional // m of the contact above the floor at the measured pose, where the sheet's plane does not tell
	Forward Optional // m, where the plane of a sheet drawn from in front stands
	Flare   Optional // rad, elbows or knees out; see human.Limb.Reach

	PadRadius float64      // m from the contact to the middle of the limb
	Foot      Foot         // what stands on the plate
	Plate     Optional     // rad, slope of the foot plate from the floor at the measured pose
	Feet      planar.Vec   // m, where the feet stand; borne loads only
	HasFeet   bool         //
	Axis      planar.Vec   // m, machine axis a body joint should be in line with
	HasAxis   bool         //
	Rests     bool         // the segment nearer the trunk rests: its joint with the trunk is not asked
	Bend      planar.Angle // flexion kept of the elbow or knee beyond a pad on upper arm or thigh
}
