package human

import (
	"steelyard/planar"
	"steelyard/reference"
)

// Muscle is a muscle group a coach names.
type Muscle int

const (
	Biceps Muscle = iota
	Brachialis
	TricepsLong
	TricepsShort
	FrontDeltoid
	SideDeltoid
	RearDeltoid
	Pectorals
	Latissimus
	Glutes
	Hamstrings
	RectusFemoris
	Vasti
	HipFlexors
	Adductors
	Abductors
	Gastrocnemius
	Soleus
	TibialisAnterior
	BackExtensors
	Abdominals
	NumMuscles // how many there are
)

// String returns the name of the group.
func (m Muscle) String() string { return muscles[m].name }

// Works returns the actions the group produces, its main one first.
func (m Muscle) Works() []Action { return muscles[m].works }

// Source tells what the group's length rests on.
func (m Muscle) Source() reference.Source { return muscles[m].source }

// muscle describes how the length of a group follows the joints.
type muscle struct {
	name   string
	works  []Action
	paths  []path
	pull   *pull // the shoulder's broad muscles
	source reference.Source
}

// path is one joint a muscle crosses: the change of its length in arbitrary
// units, the same for all paths of one muscle.
type path struct {
	joint  Coordinate
	length func(planar.Angle) float64
}

// muscles is the table of groups. A muscle that crosses one joint needs no
// moment arm: its place between longest and shortest follows from its sense
// alone, taken even over the angle.
var muscles = [NumMuscles]muscle{
	Biceps:       twoJoint("biceps", []Action{ElbowFlex, ShoulderFlex}, published("biceps brachii", ElbowFlexion), published("biceps brachii", ShoulderFlexion)),
	Brachialis:   twoJoint("brachialis", []Action{ElbowFlex}, published("brachialis", ElbowFlexion)),
	TricepsLong:  twoJoint("triceps, long head", []Action{ElbowExtend, ShoulderExtend}, published("triceps brachii", ElbowFlexion), published("triceps long head", ShoulderFlexion)),
	TricepsShort: twoJoint("triceps, short heads", []Action{ElbowExtend}, published("triceps brachii", ElbowFlexion)),

	FrontDeltoid: shoulderMuscle("front deltoid", []Action{ShoulderFlex, ShoulderHorizontalAdduct}, pull{-0.6, -0.7, 0.4, 3}),
	SideDeltoid:  shoulderMuscle("side deltoid", []Action{ShoulderAbduct}, pull{0, -1, 0, 3}),
	RearDeltoid:  shoulderMuscle("rear deltoid", []Action{ShoulderHorizontalAbduct, ShoulderExtend}, pull{0.8, -0.4, -0.45, 3}),
	Pectorals:    shoulderMuscle("pectorals", []Action{ShoulderHorizontalAdduct, ShoulderAdduct}, pull{-0.35, 0.15, 0.92, 0.45}),
	Latissimus:   shoulderMuscle("latissimus", []Action{ShoulderExtend, ShoulderAdduct}, pull{0.25, 0.85, 0.46, 0.2}),

	Glutes:           oneJoint("gluteus maximus", HipExtend),
	Hamstrings:       twoJoint("hamstrings", []Action{HipExtend, KneeFlex}, tendon("semimembranosus", "hip", HipFlexion), tendon("semimembranosus", "knee", KneeFlexion)),
	RectusFemoris:    twoJoint("rectus femoris", []Action{KneeExtend, HipFlex}, tendon("rectus femoris", "hip", HipFlexion), tendon("rectus femoris", "knee", KneeFlexion)),
	Vasti:            oneJoint("vasti", KneeExtend),
	HipFlexors:       oneJoint("hip flexors", HipFlex),
	Adductors:        oneJoint("hip adductors", HipAdduct),
	Abductors:        oneJoint("hip abductors", HipAbduct),
	Gastrocnemius:    twoJoint("gastrocnemius", []Action{AnklePlantarflex, KneeFlex}, tendon("gastrocnemius", "ankle", AnkleDorsiflexion), tendon("gastrocnemius", "knee", KneeFlexion)),
	Soleus:           twoJoint("soleus", []Action{AnklePlantarflex}, tendon("soleus", "ankle", AnkleDorsiflexion)),
	TibialisAnterior: oneJoint("tibialis anterior", AnkleDorsiflex),
	BackExtensors:    oneJoint("back extensors", TrunkExtend),
	Abdominals:       oneJoint("abdominals", TrunkFlex),
}

// sourced is a path with where it comes from.
type sourced struct {
	path
	source reference.Source
}

func twoJoint(name string, works []Action, paths ...sourced) muscle {
	m := muscle{name: name, works: works}
	for _, p := range paths {
		m.paths = append(m.paths, p.path)
		m.source = joinSources(m.source, p.source)
	}
	return m
}

func oneJoint(name string, a Action) muscle {
	return muscle{
		name: name, works: []Action{a},
		paths:  []path{{a.Coordinate(), func(angle planar.Angle) float64 { return -a.Sign() * float64(angle) }}},
		source: reference.Source{Text: "one joint: even over its angle, by its sense", Mark: reference.Estimate},
	}
}

// published integrates a moment-arm polynomial of Pigeon, Yahia & Feldman 1996:
// the length changes by minus the arm for each radian. Simpson's rule over
// pieces of a few degrees is exact to far below a micrometre for these
// polynomials of at most fifth degree.
func published(muscle string, joint Coordinate) sourced {
	a, ok := reference.ArmOf("Pigeon", muscle, joint.String())
	if !ok {
		panic("human: no moment arm for " + muscle)
	}
	arm := func(angle float64) float64 { return a.At(angle) }
	if joint == ShoulderFlexion {
		constant := a.At(0)
		arm = func(float64) float64 { return constant }
	}
	length := func(angle planar.Angle) float64 {
		const pieces = 32
		h := float64(angle) / pieces
		sum := 0.0
		for i := range pieces {
			x := float64(i) * h
			sum += h / 6 * (arm(x) + 4*arm(x+h/2) + arm(x+h))
		}
		return -sum
	}
	return sourced{path{joint, length}, a.Source}
}

// tendon takes a published change of length with angle. Both joints of one
// muscle are in fractions of the same segment.
func tendon(muscle, joint string, c Coordinate) sourced {
	t, ok := reference.TendonOf(muscle, joint)
	if !ok {
		panic("human: no length for " + muscle + " at the " + joint)
	}
	return sourced{path{c, func(angle planar.Angle) float64 { return t.Length(float64(angle)) }}, t.Source}
}
