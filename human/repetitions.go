package human

import "steelyard/reference"

// Repetition is a published equation between the load lifted for a number of
// repetitions, none left, and the load lifted once.
type Repetition int

const (
	// Epley is 1RM = w·(1 + r/30), Epley B 1985, Boyd Epley Workout. One
	// repetition is taken as the load itself, which the equation is not meant
	// for.
	Epley Repetition = iota
	// Brzycki is 1RM = w·36/(37 - r), Brzycki M 1993, J Phys Educ Recreat
	// Dance 64:88.
	Brzycki
)

// Both equations were seen in several pages that agree; the publications
// themselves are from memory.
var repetitionSource = [...]reference.Source{
	Epley:   {Text: "Epley 1985: load × (1 + repetitions/30)", Mark: reference.Retrieved},
	Brzycki: {Text: "Brzycki 1993: load × 36/(37 - repetitions)", Mark: reference.Retrieved},
}

// String returns the name of the equation's author.
func (e Repetition) String() string { return [...]string{"Epley", "Brzycki"}[e] }

// Source returns the equation in words and its source.
func (e Repetition) Source() reference.Source { return repetitionSource[e] }

// Repetitions accepted, and up to which both equations are commonly held good.
const (
	MostRepetitions    = 20
	TrustedRepetitions = 10
	brzyckiEnd         = 37
	epleyPerRepetition = 30
)

// Maximum returns the load lifted once over the load lifted reps times, and
// whether reps is within 1 to [MostRepetitions]. Beyond [TrustedRepetitions]
// the two equations part and either is rough. They agree at 10.
func (e Repetition) Maximum(reps int) (float64, bool) {
	if reps < 1 || reps > MostRepetitions {
		return 0, false
	}
	if reps == 1 {
		return 1, true
	}
	if e == Brzycki {
		return (brzyckiEnd - 1) / float64(brzyckiEnd-reps), true
	}
	return 1 + float64(reps)/epleyPerRepetition, true
}
