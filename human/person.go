package human

import (
	"fmt"

	"steelyard/planar"
	"steelyard/reference"
)

// Person is what is known about somebody. Only Height and Mass are required.
type Person struct {
	Height   float64       // m, without shoes
	Mass     float64       // kg
	Sex      reference.Sex // Unstated: both halves of every table are used
	Age      float64       // years; 0 is not given
	Lengths  []Length      // measured body dimensions
	Limits   []Limit       // measured or advised ends of joint motion
	Strength []Strength    // measured joint moments
	Avoid    []string      // what the coach wrote down to stay away from
	Segments reference.SegmentSet
}

// Length is a body dimension measured on this person.
type Length struct {
	Dimension reference.Dimension // not Stature and not Mass
	Value     float64             // m
	Spread    float64             // m, one standard deviation of the measuring; 0 is taken as exact
}

// Limit ends a motion of this person: flexing a knee to 110° at most is
// {KneeFlex, 110°}; lacking 10° to a straight knee is {KneeExtend, -10°}.
type Limit struct {
	Motion Action
	Angle  planar.Angle // reached in the sense of the motion
}

// Strength is a joint moment this person was measured to produce.
type Strength struct {
	Action Action
	Angle  planar.Angle // of the action's coordinate
	Speed  float64      // rad/s, positive while the action shortens its muscles; 0 is held
	Moment float64      // N·m, one limb; the trunk whole
	Spread float64      // N·m, one standard deviation; 0 is taken as a tenth of the moment
	How    string       // what was measured, for the reader
}

// InputError tells what is wrong with what was said about a person. Its text
// is one sentence with value, limit and cure.
type InputError struct {
	Place string // field, such as "height" or "lengths: thigh"
	Text  string
}

func (e *InputError) Error() string { return "human: " + e.Place + ": " + e.Text }

// Warning is something to show beside results that are computed all the same.
type Warning struct {
	Place string
	Text  string
}

// String returns place and text.
func (w Warning) String() string { return w.Place + ": " + w.Text }

func refuse(place, format string, args ...any) error {
	return &InputError{place, fmt.Sprintf(format, args...)}
}

func warn(place, format string, args ...any) Warning {
	return Warning{place, fmt.Sprintf(format, args...)}
}
