package sheet

import (
	"errors"
	"fmt"
	"strings"

	"steelyard/mechanism"
)

// Located is an error of the computation with the place in the sheet of the
// part it names.
type Located struct {
	File         string
	Line, Column int
	Err          error
}

func (e *Located) Error() string {
	return fmt.Sprintf("%s:%d:%d: %v", e.File, e.Line, e.Column, e.Err)
}

// Unwrap returns the error of the computation.
func (e *Located) Unwrap() error { return e.Err }

// Locate adds to an error of package mechanism where in the sheet the part
// stands that it names, as a *[Located]. Other errors are returned as they are.
func (m *Machine) Locate(err error) error {
	var part *mechanism.PartError
	var freedom *mechanism.FreedomError
	var stop *mechanism.Stop
	at := ""
	switch {
	case errors.As(err, &part):
		at = part.Part
	case errors.As(err, &stop):
		at = stop.Part
	case errors.As(err, &freedom):
		for _, name := range append(freedom.Tight, freedom.Loose...) {
			at = name
			break
		}
	default:
		return err
	}
	line, column := m.placeOf(at)
	return &Located{m.doc.Name, line, column, err}
}

// sections says where a part of each kind may stand. A weight stack is a link,
// a joint and a weight at once; a rope handle a link and a joint.
var sections = map[string][]string{
	"link":     {"links", "loads"},
	"joint":    {"pins", "points", "slides", "loads"},
	"rope":     {"ropes"},
	"element":  {"loads"},
	"weight":   {"loads"},
	"chain":    {"loads"},
	"flywheel": {"loads"},
}

// placeOf returns the line and column of a part such as `link "arm"`; of the
// first line of the sheet if it is not found.
func (m *Machine) placeOf(part string) (line, column int) {
	kind, name, _ := strings.Cut(part, " ")
	name, _, _ = strings.Cut(strings.TrimPrefix(name, `"`), `"`)
	if pin, _, ok := strings.Cut(name, " ("); ok {
		name = pin // of three links at one pin
	}
	for _, section := range sections[kind] {
		if line, column, ok := m.doc.keyPlace(section, name); ok {
			return line, column
		}
	}
	top := kind
	if name == handle || sections[kind] != nil {
		top = "contact"
	}
	if line, column, ok := m.doc.keyPlace("", top); ok {
		return line, column
	}
	return m.doc.root.line, m.doc.root.column
}

// keyPlace returns where a key stands in a section, or at the top if section is
// empty.
func (d *Document) keyPlace(section, name string) (line, column int, ok bool) {
	n := d.root
	if section != "" {
		n = n.at(section)
	}
	if n == nil {
		return 0, 0, false
	}
	if i := n.find(name); i >= 0 {
		return n.entries[i].line, n.entries[i].column, true
	}
	return 0, 0, false
}
