package report

import (
	"steelyard/evaluation"
)

// care is what every report says about getting hurt.
var care = []string{
	"This is a model, not a measurement of safety. It cannot see wear, cracks, loose bolts or a wrong number in the sheet.",
	"Start light and add load in small steps. Stop at pain.",
	"Keep to the machine maker's manual and to local rules; where they say otherwise, they are right.",
	"Pain, injury or illness: ask a licensed professional before training on.",
	"A changed or built machine needs a competent engineer, guards, stops and a load test to the applicable standard before anyone gets in.",
}

// cautions are those of the sheet first, then everybody's.
func cautions(e *evaluation.Evaluation) []string {
	all := append([]string(nil), e.Sheet.Cautions...)
	if e.Person != nil {
		all = append(all, evaluation.PersonCaution)
	}
	return append(all, care...)
}

// assumes says what the engine takes for granted.
func assumes(e *evaluation.Evaluation) string {
	s := "Computed by Steelyard from the sheet alone: rigid links, ropes that do not stretch, everything in one plane, g = 9.80665 m/s². Forces are those at the contact, along its path, "
	if e.Rubs() {
		s += "in slow motion, with the friction the sheet states. "
	} else {
		s += "in slow motion, without friction, because the sheet states none. "
	}
	s += "Which third of the travel is the lengthened one assumes that lifting shortens the muscle."
	if e.Person != nil {
		s += " The body is rigid segments with a straight wrist; muscles that cross two joints do not couple their strengths."
	}
	if e.Band != nil {
		s += " Where a range is given, 19 of 20 machines that fit the measurements lie in it."
	}
	return s
}
