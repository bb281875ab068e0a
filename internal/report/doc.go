// Package report shows one evaluation to a person: pages to print (PDF, SVG,
// PNG), one self-contained HTML file, and text for a terminal.
//
// All of them tell the same in the same order: what the machine is and how it
// is set, plain words, the side view with the load ribbon, the curve over the
// travel, the numbers, the settings, the measurements and how sure they make
// it, and what to take care of. Nothing here computes mechanics: every number
// is read from an [evaluation.Evaluation] or from the machine followed to a
// place by package mechanism.
//
// # The load ribbon
//
// The load is drawn where it is felt: along the contact's real path stands a
// band as wide as the force there, full up to what is certain and hatched from
// there to the furthest the measurements allow. Where the machine pushes the
// person on, the band stands on the path's other side; where there is no force
// to tell, only the path is dotted.
//
// # Files
//
//	report.go  html.go  terminal.go   the three forms
//	figures.go                        the pictures they share, and their words
//	facts.go  series.go               what is shown: a place of the travel, the curve
//	ribbon.go  sign.go                the load ribbon, and alone as a sign
//	sideview.go  names.go             the machine with its ribbon, and what is named in it
//	positions.go  arms.go             the machine three times with its moment arms
//	stage.go  machine.go              where a machine is drawn, and all of it
//	rope.go  load.go                  what pulls on it, what hangs on it
//	curve.go  stroke.go  braille.go   over travel, over time, in a terminal
//	tables.go  readings.go            numbers
//	person.go  person_figure.go       the person on it: body, three places, joints
//	person_joints.go
//	person_ribbon.go                  what they can produce, beside the ribbon
//	person_pages.go person_terminal.go in print, in a terminal
//	effort.go  effort_figure.go       what is asked over what there is
//	effort_table.go
//	picture.go                        the first figure alone
//	options.go  cautions.go           how it is written; care, and what the engine assumes
//
// The plain geometry of machine and person is package sketch's.
//
// Lengths on paper are mm; everything else is SI until it is written.
package report
