package human

// Coordinate is one anatomical joint angle; doc.go has the table of zeros and
// senses.
type Coordinate int

const (
	ShoulderFlexion    Coordinate = iota // elevation towards the front
	ShoulderAbduction                    // elevation towards the side
	ShoulderHorizontal                   // plane of elevation: across the body is positive
	ShoulderRotation
	ElbowFlexion
	HipFlexion
	HipAbduction
	HipRotation
	KneeFlexion
	AnkleDorsiflexion
	TrunkFlexion
	NumCoordinates // how many there are
)

// Action is what a muscle group does at a joint: motion along a coordinate in
// its positive or negative sense. The action of coordinate c in its positive
// sense is 2c, in its negative sense 2c+1.
type Action int

const (
	ShoulderFlex Action = iota
	ShoulderExtend
	ShoulderAbduct
	ShoulderAdduct
	ShoulderHorizontalAdduct
	ShoulderHorizontalAbduct
	ShoulderRotateOut
	ShoulderRotateIn
	ElbowFlex
	ElbowExtend
	HipFlex
	HipExtend
	HipAbduct
	HipAdduct
	HipRotateOut
	HipRotateIn
	KneeFlex
	KneeExtend
	AnkleDorsiflex
	AnklePlantarflex
	TrunkFlex
	TrunkExtend
	NumActions // how many there are
)

var actionNames = [NumActions]string{
	"shoulder flexion", "shoulder extension",
	"shoulder abduction", "shoulder adduction",
	"shoulder horizontal adduction", "shoulder horizontal abduction",
	"shoulder lateral rotation", "shoulder medial rotation",
	"elbow flexion", "elbow extension",
	"hip flexion", "hip extension",
	"hip abduction", "hip adduction",
	"hip lateral rotation", "hip medial rotation",
	"knee flexion", "knee extension",
	"ankle dorsiflexion", "ankle plantarflexion",
	"trunk flexion", "trunk extension",
}

// String returns the trade name of the action, such as "knee extension".
func (a Action) String() string { return actionNames[a] }

// Coordinate returns the coordinate the action moves.
func (a Action) Coordinate() Coordinate { return Coordinate(a / 2) }

// Sign is +1 for an action that makes its coordinate grow, else -1.
func (a Action) Sign() float64 { return float64(1 - 2*(a%2)) }

// Opposite returns the action that undoes a.
func (a Action) Opposite() Action { return a ^ 1 }

// String returns the name of the coordinate, that of its positive action.
func (c Coordinate) String() string { return c.Positive().String() }

// Positive returns the action that makes the coordinate grow.
func (c Coordinate) Positive() Action { return Action(2 * c) }

// ActionToward returns the action that produces a moment of the given sign
// along a coordinate.
func ActionToward(c Coordinate, moment float64) Action {
	if moment < 0 {
		return c.Positive().Opposite()
	}
	return c.Positive()
}

// ParseAction returns the action with the given trade name.
func ParseAction(name string) (Action, bool) {
	for a, n := range actionNames {
		if n == name {
			return Action(a), true
		}
	}
	return 0, false
}
