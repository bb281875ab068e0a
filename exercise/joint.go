package exercise

import (
	"steelyard/human"
)

// Joint is one axis of a body joint that a force can ask something of.
type Joint int

// The joints' axes.
const (
	ShoulderRaising Joint = iota // raises or lowers the upper arm in the plane it is in
	ShoulderAcross               // carries it across the body or back
	ShoulderTurning              // turns it about itself
	Elbow
	Hip     // flexion and extension
	HipSide // abduction and adduction
	Knee
	Ankle
	Trunk     // the back, at the joint of the spine with the sacrum
	NumJoints // how many there are
)

var jointNames = [NumJoints]string{"shoulder (raising)", "shoulder (across)", "shoulder (turning)", "elbow", "hip", "hip (sideways)", "knee", "ankle", "back"}

// String returns the name of the axis. Those of a shoulder and of a hip stand
// behind the joint's name, so that a list of columns keeps a joint together;
// sentences use Body.
func (j Joint) String() string { return jointNames[j] }

// Body returns the joint a coach would name.
func (j Joint) Body() string {
	return [NumJoints]string{"shoulder", "shoulder", "shoulder", "elbow", "hip", "hip", "knee", "ankle", "back"}[j]
}

// coordinate returns the angle the axis moves. For ShoulderRaising that depends
// on the plane the arm is in; see actionOf.
func (j Joint) coordinate() human.Coordinate {
	return [NumJoints]human.Coordinate{human.ShoulderFlexion, human.ShoulderHorizontal, human.ShoulderRotation, human.ElbowFlexion,
		human.HipFlexion, human.HipAbduction, human.KneeFlexion, human.AnkleDorsiflexion, human.TrunkFlexion}[j]
}

// actionOf names the action that gives a joint's moment its sign.
func (j Joint) actionOf(a human.ArmAngles, moment float64) human.Action {
	if j != ShoulderRaising {
		return human.ActionToward(j.coordinate(), moment)
	}
	front, side := a.Flexion(), a.Abduction()
	if abs(front) >= abs(side) {
		return human.ActionToward(human.ShoulderFlexion, moment*float64(front))
	}
	return human.ActionToward(human.ShoulderAbduction, moment*float64(side))
}

func abs[T ~float64](x T) T { return max(x, -x) }
