package sheet

import (
	"bytes"
	"fmt"
	"strings"
)

// Kind tells what a sheet describes.
type Kind string

// KindMachine is a resistance machine.
const KindMachine Kind = "machine"

// newest is the newest version of each kind that this program reads. Every
// older version stays readable.
var newest = map[Kind]int{KindMachine: 1, KindPerson: 1}

// Document is one sheet as it was written, comments included.
type Document struct {
	Name    string // of the file, for messages
	Kind    Kind
	Version int

	data []byte
	root *node
}

// Read parses a sheet of any kind. The name is used in messages only.
//
// It returns a *[Problem] or [Problems] if the data is not a YAML document of
// a known kind and version. What the sheet says is not looked at yet: see
// [Document.Machine].
func Read(name string, data []byte) (*Document, error) {
	if err := guard(name, data); err != nil {
		return nil, err
	}
	// The parser counts a comment that ends in \r\n as two lines.
	text := bytes.ReplaceAll(bytes.TrimPrefix(data, byteOrderMark), []byte("\r\n"), []byte("\n"))
	root, err := parse(name, text)
	if err != nil {
		return nil, err
	}
	d := &Document{Name: name, data: bytes.Clone(data), root: root}
	if err := d.readKind(); err != nil {
		return nil, err
	}
	return d, nil
}

// Bytes returns the sheet's text: byte for byte what was read, except for
// what [Document.Set], AddItem and AddKey have changed.
func (d *Document) Bytes() []byte { return bytes.Clone(d.data) }

// readKind reads the first line, `steelyard: machine 1`.
func (d *Document) readKind() error {
	const cure = "start the sheet with the line `steelyard: machine 1`"
	head := d.root.at("steelyard")
	if head == nil {
		return d.problem(d.root, "the key steelyard is missing", "a sheet says its kind and version first", cure)
	}
	kind, version, _ := strings.Cut(head.text, " ")
	last, known := newest[Kind(kind)]
	if !known {
		return d.problem(head, fmt.Sprintf("the kind of sheet is %q", head.text), "the kinds are machine and person", cure)
	}
	d.Kind = Kind(kind)
	if _, err := fmt.Sscanf(version, "%d", &d.Version); err != nil || fmt.Sprint(d.Version) != version || d.Version < 1 {
		return d.problem(head, fmt.Sprintf("the version is %q", version), fmt.Sprintf("a version is a whole number from 1 to %d", last), cure)
	}
	if d.Version > last {
		return d.problem(head, fmt.Sprintf("the version is %d", d.Version), fmt.Sprintf("this program reads up to %d", last),
			"get a newer program, or write the sheet in version "+fmt.Sprint(last))
	}
	return nil
}

func (d *Document) problem(n *node, what, limit, cure string) *Problem {
	return &Problem{File: d.Name, Line: n.line, Column: n.column, Path: n.path, What: what, Limit: limit, Cure: cure}
}
