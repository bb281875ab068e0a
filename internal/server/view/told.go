package view

import (
	"errors"
	"fmt"
	"regexp"
	"strings"

	"steelyard/sheet"
)

// packages are the parts of the program that begin their messages with their
// own name, which tells people nothing.
var packages = regexp.MustCompile(`(?m)(^|: )(?:calibrate|evaluation|exercise|human|mechanism|planar|profile|quantity|reference|sheet): `)

// Told is what an error says to people: without file, line and column, which
// the page shows in its own way, and without the names of packages.
func Told(err error) string {
	text := err.Error()
	for _, p := range problemsIn(err) {
		text = strings.ReplaceAll(text, p.Error(), sentence(p))
	}
	if located := (*sheet.Located)(nil); errors.As(err, &located) {
		text = strings.ReplaceAll(text, located.Error(), located.Err.Error())
	}
	for packages.MatchString(text) {
		text = packages.ReplaceAllString(text, "$1")
	}
	return text
}

// problemsIn returns the problems of a sheet that an error holds.
func problemsIn(err error) sheet.Problems {
	var many sheet.Problems
	if errors.As(err, &many) {
		return many
	}
	if one := (*sheet.Problem)(nil); errors.As(err, &one) {
		return sheet.Problems{one}
	}
	return nil
}

// sentence is a problem without its place.
func sentence(p *sheet.Problem) string { return fmt.Sprintf("%s, but %s; %s", p.What, p.Limit, p.Cure) }
