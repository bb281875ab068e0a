package sheet

import (
	"bytes"
	"fmt"
	"strings"
)

// Field is a key and the text of its value.
type Field struct{ Key, Text string }

// AddItem puts an item with these fields at the end of the list under a key of
// the top level, and leaves every other byte of the sheet as it is. Without the
// key, it is written at the sheet's end.
//
// It does not look at what the fields mean: see [Document.Person]. It returns a
// *[Problem] if a text cannot stand there, or if the list is written in a way
// that another item cannot be put into.
func (d *Document) AddItem(section string, fields []Field) error {
	return d.grow(section, sequence, fields)
}

// AddKey puts one more key at the end of the mapping under a key of the top
// level, as [Document.AddItem] does with items. A key that stands there already
// is refused.
func (d *Document) AddKey(section string, f Field) error {
	if n := d.root.at(section); n != nil && n.at(f.Key) != nil {
		return d.problem(n.at(f.Key), fmt.Sprintf("%s has %q already", section, f.Key), "each stands there once", "change the number that is there")
	}
	return d.grow(section, mapping, []Field{f})
}

func (d *Document) grow(section string, kind nodeKind, fields []Field) error {
	for _, f := range fields {
		if !oneLine(f.Text) {
			return d.problem(d.root, fmt.Sprintf("%s of %s is to be %q", f.Key, section, shorten(f.Text)), "a value is one line of text", "leave out line breaks and outer spaces")
		}
	}
	for _, write := range []func(string) string{func(text string) string { return text }, quoted} {
		data, ok := d.with(section, kind, fields, write)
		if !ok {
			break
		}
		if changed, err := Read(d.Name, data); err == nil && changed.Kind == d.Kind && grew(d.root, changed.root, section, kind, fields) {
			*d = *changed
			return nil
		}
	}
	return d.problem(d.root, fmt.Sprintf("something is to be added to %s", section), "it is written in a way that nothing can be put into", "write it in the sheet's text")
}

// with returns the text with the fields added to a section.
func (d *Document) with(section string, kind nodeKind, fields []Field, write func(string) string) ([]byte, bool) {
	lines := strings.SplitAfter(string(d.data), "\n")
	newline := "\n"
	if bytes.Contains(d.data, []byte("\r\n")) {
		newline = "\r\n"
	}
	i := d.root.find(section)
	if i < 0 {
		if last := len(lines) - 1; lines[last] != "" {
			lines[last] += newline
		}
		added := section + ":" + newline + block("  ", kind, fields, write, newline)
		return []byte(strings.Join(lines, "") + added), true
	}
	e := &d.root.entries[i]
	if strings.ContainsAny(lines[e.line-1][len(section):], "{[") && e.value.line == e.line {
		return d.withinBrackets(e.value, kind, fields, write)
	}
	last, indent := lastOf(lines, e, kind)
	if !strings.HasSuffix(lines[last], "\n") {
		lines[last] += newline
	}
	lines[last] += block(indent, kind, fields, write, newline)
	return []byte(strings.Join(lines, "")), true
}

// lastOf returns the index of the last line of a section in block style, and the
// indent of what stands in it.
func lastOf(lines []string, section *entry, kind nodeKind) (last int, indent string) {
	last, indent = section.line-1, "  "
	first := true
	for i := section.line; i < len(lines); i++ {
		text := strings.TrimSpace(lines[i])
		if text == "" || strings.HasPrefix(text, "#") {
			continue
		}
		deep := len(lines[i]) - len(strings.TrimLeft(lines[i], " "))
		if deep < section.column && !(kind == sequence && deep == section.column-1 && strings.HasPrefix(text, "-")) {
			break
		}
		if first {
			first, indent = false, strings.Repeat(" ", deep)
		}
		last = i
	}
	return last, indent
}

// block writes fields as lines of their own.
func block(indent string, kind nodeKind, fields []Field, write func(string) string, newline string) string {
	var b strings.Builder
	for i, f := range fields {
		lead := indent
		if kind == sequence {
			lead += map[bool]string{true: "- ", false: "  "}[i == 0]
		}
		b.WriteString(lead + f.Key + ": " + write(f.Text) + newline)
	}
	return b.String()
}

// withinBrackets adds to a section that is written as {…} or […].
func (d *Document) withinBrackets(n *node, kind nodeKind, fields []Field, write func(string) string) ([]byte, bool) {
	last := n
	for len(last.entries)+len(last.items) > 0 {
		if k := len(last.entries); k > 0 {
			last = last.entries[k-1].value
		} else {
			last = last.items[len(last.items)-1]
		}
	}
	if last == n || last.tok == nil {
		return nil, false
	}
	_, end, ok := d.extent(last)
	var parts []string
	for _, f := range fields {
		parts = append(parts, f.Key+": "+write(f.Text))
	}
	added := ", " + strings.Join(parts, ", ")
	if kind == sequence {
		brace := bytes.IndexByte(d.data[end:], '}')
		if brace < 0 {
			return nil, false
		}
		end, added = end+brace+1, ", {"+strings.Join(parts, ", ")+"}"
	}
	return bytes.Join([][]byte{d.data[:end], []byte(added), d.data[end:]}, nil), ok
}

// grew reports whether b is a with just these fields added to a section.
func grew(a, b *node, section string, kind nodeKind, fields []Field) bool {
	i := a.find(section)
	if i >= 0 && len(a.entries) != len(b.entries) || i < 0 && len(b.entries) != len(a.entries)+1 {
		return false
	}
	for k := range a.entries {
		if b.entries[k].key != a.entries[k].key || k != i && !same(a.entries[k].value, b.entries[k].value) {
			return false
		}
	}
	had, has := &node{kind: kind}, b.at(section)
	if i >= 0 && a.entries[i].value.text == "" {
		had = a.entries[i].value
	}
	if has == nil || has.kind != kind || !sameStart(had, has) {
		return false
	}
	added := has.entries
	if kind == sequence {
		added = has.items[len(has.items)-1].entries
	} else {
		added = added[len(added)-1:]
	}
	for k, f := range fields {
		if len(added) != len(fields) || added[k].key != f.Key || added[k].value.kind != scalar || added[k].value.text != f.Text {
			return false
		}
	}
	return true
}

// sameStart reports whether b begins with all that a has, and has one more.
func sameStart(a, b *node) bool {
	if len(b.entries)+len(b.items) != len(a.entries)+len(a.items)+1 {
		return false
	}
	for k := range a.entries {
		if b.entries[k].key != a.entries[k].key || !same(a.entries[k].value, b.entries[k].value) {
			return false
		}
	}
	for k := range a.items {
		if !same(a.items[k], b.items[k]) {
			return false
		}
	}
	return true
}

// same reports whether two trees say the same.
func same(a, b *node) bool { return differsOnly(a, b, "\x00", "") }
