package reference

// Dimension is one body dimension as a tape or a caliper takes it. The
// definitions are those of the survey; where one is a difference of two of its
// heights, it says so.
type Dimension int

const (
	Stature Dimension = iota
	Mass
	UpperArm
	Forearm
	ForearmGrip
	Hand
	ShoulderBreadth
	DeltoidBreadth
	HipBreadth
	SeatBreadth
	Thigh
	Shank
	AnkleHeight
	Foot
	HeelToBall
	SittingHeight
	Trunk
	ElbowRest
	ButtockKnee
	ButtockPopliteal
	PoplitealHeight
	KneeHeightSitting
	ThighClearance
	ChestDepth
	NumDimensions // how many there are
)

// Dimensions holds one value for each [Dimension]: metres, but kilograms for
// [Mass].
type Dimensions [NumDimensions]float64

var dimensionNames = [NumDimensions]string{
	"stature", "mass", "upper arm", "forearm", "forearm to grip", "hand",
	"shoulder breadth", "deltoid breadth", "hip breadth", "seat breadth",
	"thigh", "shank", "ankle height", "foot", "heel to ball", "sitting height",
	"trunk", "elbow rest height", "buttock to knee", "buttock to knee hollow",
	"knee hollow height", "knee height sitting", "thigh clearance", "chest depth",
}

// how each dimension is taken, for a coach with a tape.
var dimensionHow = [NumDimensions]string{
	"standing height without shoes",
	"body mass",
	"bony tip of the shoulder to the top of the forearm bone at the outer elbow",
	"top of the forearm bone at the outer elbow to the bony point of the wrist, thumb side",
	"back of the bent elbow to the middle of a gripped rod",
	"wrist crease to the tip of the middle finger",
	"between the bony tips of the shoulders",
	"across the shoulder muscles at their widest",
	"across the hips at their widest, standing",
	"across the hips at their widest, sitting",
	"bony point at the side of the hip to the bony point at the outer knee",
	"bony point at the outer knee to the outer ankle bone",
	"floor to the outer ankle bone",
	"heel to the tip of the longest toe",
	"heel to the ball of the foot",
	"seat to the top of the head",
	"height of the bony tip of the shoulder less the height of the bony point at the side of the hip, standing",
	"seat to the bottom of the bent elbow",
	"back of the buttock to the front of the knee, sitting",
	"back of the buttock to the hollow of the knee, sitting",
	"floor to the hollow of the knee, sitting",
	"floor to the top of the knee, sitting",
	"seat to the top of the thigh",
	"front to back of the chest",
}

// String returns the plain name of the dimension.
func (d Dimension) String() string { return dimensionNames[d] }

// How tells how the dimension is measured on a person.
func (d Dimension) How() string { return dimensionHow[d] }

// ParseDimension returns the dimension with the given plain name.
func ParseDimension(name string) (Dimension, bool) {
	for d, n := range dimensionNames {
		if n == name {
			return Dimension(d), true
		}
	}
	return 0, false
}
