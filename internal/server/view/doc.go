// Package view turns a sheet, set one way, into what the page shows: curve,
// drawing, words, the sheet taken apart; and a drag of the finger into an edit
// of the sheet. Nothing here computes mechanics, keeps anything, or knows of
// HTTP.
//
//	view.go                      a sheet and a look become a preview
//	curve.go  band.go  readings.go
//	drawing.go  shape.go         what of the picture keeps its shape
//	frame.go  arms.go  forces.go one place of the travel
//	body.go  person.go           the person in it, and along it
//	person_sheet.go              a person's sheet, as it was understood
//	text.go  structure.go        a text, read once, and taken apart
//	values.go  settings.go
//	edit.go  drag.go             changes of the sheet
//	sign.go  explain.go          small in a list, large in steps
//	compare.go compare_person.go
//	round.go                     what is sent, no finer than it shows
package view
