// Package exercise puts a person on a machine: where the body is along the
// machine's travel, what moment the force asks of each joint, and how much that
// is of what the person can produce there.
//
// The files are the stages:
//
//	catalogue.go  station.go            the exercises; where and how the body meets a machine
//	setup.go                            the contact along the travel, in space
//	body.go                             where the trunk is
//	place.go  leg.go  pad.go  borne.go  the body at one position
//	fault.go                            out of reach, past a joint's range
//	push.go                             the contact force on the body
//	joint.go  demand.go  trunk.go       joint moments, linear in that force
//	direction.go                        which way to push where that is free
//	course.go  motion.go                speed and acceleration at a tempo
//	run.go  column.go                   the table along the travel
//	align.go                            joint against machine axis, creep of a pad
//	maximum.go  thirds.go  produce.go   predicted load; lengthened, middle, shortened
//	free.go  free_bar.go                the same exercise with a free weight or cable
//	lift.go                             strength from a known lift
//	words.go  words_place.go  words_limits.go  phrases.go
//	document.go  document_fill.go
//
// The settings are searched for one person, and people of a survey counted whom
// a machine fits; both stand on Setup.Place:
//
//	fit.go  fit_search.go  fit_workers.go             the search, all choices or climbing
//	fit_trial.go  fit_measure.go  fit_load.go         one choice: place, and load
//	fit_score.go  fit_help.go                         what is better; what would help
//	fit_words.go  fit_reasons.go  fit_document.go     the telling
//	population.go  population_count.go                people drawn, placed and counted
//	population_cause.go                               what keeps the others out
//	population_words.go  population_document.go
//
// # Frame, sides, signs
//
// The ground frame of packages mechanism and human: x forward on the sheet, y
// up, z to the right of a person who faces +x. SI units. Only the right side is
// computed; the left is its mirror image. A machine's force is shared evenly
// by two limbs unless the machine is mirrored, whose forces are of one side.
//
//	contact force  F   N     of one limb on the machine along the path, as mechanism
//	joint moment       N·m   internal, on the distal segment, in the sense of its angle
//	effort             -     moment asked over moment available; 1 is all there is
//
// # Limits of the model
//
// Segments are rigid, the wrist is straight, the head and pelvis follow the
// trunk. Muscles that cross two joints do not couple their strengths. Strength
// is that of a whole joint action; where its source is weak, the result says
// so. It does not tell whether a load is safe: a machine's manual and a
// licensed professional come first.
package exercise
