package sheet

import (
	"bytes"
	"unicode"
	"unicode/utf8"

	"github.com/goccy/go-yaml/token"
)

// setPlainly returns the document with the scalar at path, which stands in the
// bytes from start to end, written as text; nil if the YAML parser has to be
// asked what becomes of it. It is what makes a number follow a finger: reading
// the sheet anew takes a hundred times as long.
//
// A plain number in the place of a plain number changes nothing about what the
// rest of the text means; only the columns behind it on its line move.
func (d *Document) setPlainly(path string, start, end int, text string) *Document {
	old := d.data[start:end]
	if !plainNumber(string(old)) || !plainNumber(text) {
		return nil
	}
	data := bytes.Join([][]byte{d.data[:start], []byte(text), d.data[end:]}, nil)
	if len(data) > mostBytes || lineLength(data, start) > mostLine {
		return nil
	}
	changed := *d
	changed.data = data
	changed.root = d.root.behind(d.find(path), utf8.RuneCountInString(text)-utf8.RuneCount(old))
	n := changed.find(path)
	n.text, n.tok = text, &token.Token{Type: token.StringType, Value: text, Origin: text}
	return &changed
}

// plainNumber reports whether YAML can only read the text as it stands, in a
// list, in a group and on a line of its own: a sign, a digit, and then letters,
// digits and what is written between numbers and units.
func plainNumber(text string) bool {
	last := ' '
	for i, c := range text {
		switch {
		case c == '-' || c == '+':
			if i > 0 {
				return false
			}
		case c == ' ' && last == ' ': // in front, or twice
			return false
		case unicode.IsDigit(c):
		case i == 0 || last == '-' || last == '+':
			return false // a digit comes first
		case !unicode.IsLetter(c) && c != ' ' && c != '.' && c != '/' && c != '±' && c != '°':
			return false
		}
		last = c
	}
	return last != ' ' && last != '-' && last != '+'
}

// lineLength returns the bytes of the line that place at is on.
func lineLength(data []byte, at int) int {
	from := bytes.LastIndexByte(data[:at], '\n') + 1
	to := bytes.IndexByte(data[at:], '\n')
	if to < 0 {
		return len(data) - from
	}
	return at + to - from
}

// behind returns a copy of the tree in which whatever stands on the line of
// mark, and behind it, is moved by so many columns.
func (n *node) behind(mark *node, by int) *node {
	moved := func(line, column int) int {
		if line == mark.line && column > mark.column {
			return column + by
		}
		return column
	}
	out := *n
	out.column = moved(n.line, n.column)
	out.entries = append([]entry(nil), n.entries...)
	for i := range out.entries {
		e := &out.entries[i]
		e.column, e.value = moved(e.line, e.column), e.value.behind(mark, by)
	}
	out.items = append([]*node(nil), n.items...)
	for i := range out.items {
		out.items[i] = out.items[i].behind(mark, by)
	}
	return &out
}
