package exercise

import (
	"steelyard/human"
	"steelyard/planar"
)

// Exercise is a row of the catalogue.
type Exercise int

// The exercises.
const (
	ChestPress Exercise = iota
	InclinePress
	OverheadPress
	Row
	Pulldown
	Fly
	ReverseFly
	LateralRaise
	Curl
	TricepsExtension
	LegPress
	Squat
	LegExtension
	SeatedLegCurl
	LyingLegCurl
	HipThrust
	HipAbduction
	HipAdduction
	StandingCalfRaise
	SeatedCalfRaise
	BackExtension
	NumExercises // how many there are
)

// entry is what the catalogue says of an exercise. Which muscles and joints
// work, and how the elbow is usually held, is common practice, no source.
type entry struct {
	name    string
	limb    human.Kind
	posture Posture
	works   []human.Action // that the person means to train, the main one first
	muscles []human.Muscle
	// flare is the swivel of the elbow, or of the knee, where a station says
	// nothing; see human.Limb.Reach.
	flare planar.Angle
	// elbowBack holds the elbow behind the line from shoulder to hand, as in a
	// fly; flare does not count.
	elbowBack bool
}

const deg = planar.Degree

var catalogue = [NumExercises]entry{
	ChestPress: {"chest press", human.Arm, Seated, []human.Action{human.ShoulderHorizontalAdduct, human.ElbowExtend, human.ShoulderFlex},
		[]human.Muscle{human.Pectorals, human.FrontDeltoid, human.TricepsShort, human.TricepsLong}, 60 * deg, false},
	InclinePress: {"incline press", human.Arm, Seated, []human.Action{human.ShoulderFlex, human.ShoulderHorizontalAdduct, human.ElbowExtend},
		[]human.Muscle{human.Pectorals, human.FrontDeltoid, human.TricepsShort, human.TricepsLong}, 50 * deg, false},
	OverheadPress: {"overhead press", human.Arm, Seated, []human.Action{human.ShoulderFlex, human.ShoulderAbduct, human.ElbowExtend},
		[]human.Muscle{human.FrontDeltoid, human.SideDeltoid, human.TricepsShort, human.TricepsLong}, 50 * deg, false},
	Row: {"row", human.Arm, Seated, []human.Action{human.ShoulderExtend, human.ElbowFlex, human.ShoulderHorizontalAbduct},
		[]human.Muscle{human.Latissimus, human.RearDeltoid, human.Biceps, human.Brachialis}, 25 * deg, false},
	Pulldown: {"pulldown", human.Arm, Seated, []human.Action{human.ShoulderExtend, human.ShoulderAdduct, human.ElbowFlex},
		[]human.Muscle{human.Latissimus, human.Biceps, human.Brachialis}, 60 * deg, false},
	Fly: {"fly", human.Arm, Seated, []human.Action{human.ShoulderHorizontalAdduct},
		[]human.Muscle{human.Pectorals, human.FrontDeltoid}, 0, true},
	ReverseFly: {"reverse fly", human.Arm, Seated, []human.Action{human.ShoulderHorizontalAbduct},
		[]human.Muscle{human.RearDeltoid}, 0, true},
	LateralRaise: {"lateral raise", human.Arm, Seated, []human.Action{human.ShoulderAbduct},
		[]human.Muscle{human.SideDeltoid}, 0, true},
	Curl: {"curl", human.Arm, Seated, []human.Action{human.ElbowFlex},
		[]human.Muscle{human.Biceps, human.Brachialis}, 0, false},
	TricepsExtension: {"triceps extension", human.Arm, Seated, []human.Action{human.ElbowExtend},
		[]human.Muscle{human.TricepsLong, human.TricepsShort}, 0, false},
	LegPress: {"leg press", human.Leg, Seated, []human.Action{human.KneeExtend, human.HipExtend},
		[]human.Muscle{human.Vasti, human.RectusFemoris, human.Glutes, human.Hamstrings}, 0, false},
	Squat: {"squat", human.Leg, Standing, []human.Action{human.KneeExtend, human.HipExtend},
		[]human.Muscle{human.Vasti, human.RectusFemoris, human.Glutes, human.Hamstrings}, 0, false},
	LegExtension: {"leg extension", human.Leg, Seated, []human.Action{human.KneeExtend},
		[]human.Muscle{human.Vasti, human.RectusFemoris}, 0, false},
	SeatedLegCurl: {"seated leg curl", human.Leg, Seated, []human.Action{human.KneeFlex},
		[]human.Muscle{human.Hamstrings, human.Gastrocnemius}, 0, false},
	LyingLegCurl: {"lying leg curl", human.Leg, LyingOnFront, []human.Action{human.KneeFlex},
		[]human.Muscle{human.Hamstrings, human.Gastrocnemius}, 0, false},
	HipThrust: {"hip thrust", human.Leg, LyingOnBack, []human.Action{human.HipExtend},
		[]human.Muscle{human.Glutes, human.Hamstrings, human.Vasti}, 0, false},
	HipAbduction: {"hip abduction", human.Leg, Seated, []human.Action{human.HipAbduct},
		[]human.Muscle{human.Abductors}, 0, false},
	HipAdduction: {"hip adduction", human.Leg, Seated, []human.Action{human.HipAdduct},
		[]human.Muscle{human.Adductors}, 0, false},
	StandingCalfRaise: {"standing calf raise", human.Leg, Standing, []human.Action{human.AnklePlantarflex},
		[]human.Muscle{human.Gastrocnemius, human.Soleus}, 0, false},
	SeatedCalfRaise: {"seated calf raise", human.Leg, Seated, []human.Action{human.AnklePlantarflex},
		[]human.Muscle{human.Soleus, human.Gastrocnemius}, 0, false},
	BackExtension: {"back extension", human.Leg, LyingOnFront, []human.Action{human.TrunkExtend},
		[]human.Muscle{human.BackExtensors, human.Glutes, human.Hamstrings}, 0, false},
}

// String returns the trade name.
func (e Exercise) String() string { return catalogue[e].name }

// Limb tells whether arms or legs work.
func (e Exercise) Limb() human.Kind { return catalogue[e].limb }

// Posture returns the usual posture.
func (e Exercise) Posture() Posture { return catalogue[e].posture }

// Works returns the actions the exercise means to train, the main one first.
func (e Exercise) Works() []human.Action { return catalogue[e].works }

// Muscles returns the groups it means to train, the main one first.
func (e Exercise) Muscles() []human.Muscle { return catalogue[e].muscles }

// ParseExercise returns the exercise with the given name.
func ParseExercise(name string) (Exercise, bool) {
	for e := range NumExercises {
		if catalogue[e].name == name {
			return e, true
		}
	}
	return 0, false
}

// ExerciseNames returns the names of all exercises, in the catalogue's order.
func ExerciseNames() []string {
	names := make([]string, NumExercises)
	for e := range names {
		names[e] = catalogue[e].name
	}
	return names
}
