package sheet

import (
	"bytes"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/goccy/go-yaml/token"
)

// Set changes the one value that path leads to, such as points.horn.x, and
// leaves every other byte of the sheet as it is. Places in a list are counted
// from 1; the two numbers of a place are also called x and y.
//
// Set does not look at what the value means: see [Document.Machine]. It returns
// a *[Problem] if there is no single value on one line at path, or if the text
// cannot stand there.
func (d *Document) Set(path, text string) error {
	n := d.find(path)
	if n == nil {
		return &Problem{File: d.Name, Path: path, What: fmt.Sprintf("%q is to be changed", shorten(path)), Limit: "the sheet has no such value",
			Cure: suggest(path, d.paths(), "write the keys that lead to it, joined by dots, such as links.arm.mass")}
	}
	if n.kind != scalar || n.tok == nil {
		return d.problem(n, fmt.Sprintf("%q is to be changed, which is %s", path, seen(n)), "one value on one line can be changed", "change the file by hand")
	}
	if !oneLine(text) {
		return d.problem(n, fmt.Sprintf("%q is to become %q", path, shorten(text)), "a value is one line of text", "leave out line breaks and outer spaces")
	}
	start, end, ok := d.extent(n)
	if !ok {
		return d.problem(n, fmt.Sprintf("%q is to be changed, which runs over several lines", path), "one value on one line can be changed", "change the file by hand")
	}
	if changed := d.setPlainly(path, start, end, text); changed != nil {
		*d = *changed
		return nil
	}
	for _, written := range []string{text, quoted(text)} {
		data := bytes.Join([][]byte{d.data[:start], []byte(written), d.data[end:]}, nil)
		if changed, err := Read(d.Name, data); err == nil && changed.Kind == d.Kind && differsOnly(d.root, changed.root, n.path, text) {
			*d = *changed
			return nil
		}
	}
	return d.problem(n, fmt.Sprintf("%q is to become %q", path, shorten(text)), "that cannot stand there", "write it as plain text")
}

// oneLine reports whether a text can be a value: something, on one line, without
// outer spaces.
func oneLine(text string) bool {
	return text != "" && strings.TrimSpace(text) == text && !strings.ContainsFunc(text, unicode.IsControl)
}

// extent returns where in the file the scalar n stands, quotes included.
func (d *Document) extent(n *node) (start, end int, ok bool) {
	raw := n.tok.Value
	if n.tok.Type == token.SingleQuoteType || n.tok.Type == token.DoubleQuoteType {
		raw = strings.TrimSpace(n.tok.Origin)
	}
	for line := 1; line < n.line; line++ {
		next := bytes.IndexByte(d.data[start:], '\n')
		if next < 0 {
			return 0, 0, false
		}
		start += next + 1
	}
	if n.line == 1 && bytes.HasPrefix(d.data, byteOrderMark) {
		start += len(byteOrderMark)
	}
	for range n.column - 1 {
		_, size := utf8.DecodeRune(d.data[start:])
		start += size
	}
	return start, start + len(raw), bytes.HasPrefix(d.data[start:], []byte(raw))
}

// quoted writes text between single quotes, where YAML takes all but the quote
// itself as it is.
func quoted(text string) string { return "'" + strings.ReplaceAll(text, "'", "''") + "'" }

// differsOnly reports whether two trees are alike but for the text at path.
func differsOnly(a, b *node, path, text string) bool {
	if a.kind != b.kind || len(a.entries) != len(b.entries) || len(a.items) != len(b.items) {
		return false
	}
	if a.path == path && a.kind == scalar {
		return b.text == text
	}
	for i := range a.entries {
		if a.entries[i].key != b.entries[i].key || !differsOnly(a.entries[i].value, b.entries[i].value, path, text) {
			return false
		}
	}
	for i := range a.items {
		if !differsOnly(a.items[i], b.items[i], path, text) {
			return false
		}
	}
	return a.text == b.text
}
