package sheet

import (
	"fmt"
	"slices"
	"strings"
)

// fields reads the keys of one mapping. Each reading method says that a key is
// known; close refuses the rest, so that the keys of the language are written
// down once, where they are read.
type fields struct {
	r     *reader
	node  *node
	kind  string // of the thing, such as "link"
	name  string // given by the writer; may be empty
	asked []string
}

// fields opens a mapping. Anything else is refused and reads as empty.
func (r *reader) fields(n *node, kind, name string) *fields {
	f := &fields{r: r, node: n, kind: kind, name: name}
	if n.kind != mapping {
		what, cure := fmt.Sprintf("%s is %s", f, seen(n)), "indent one line for each thing to say about it"
		if n.kind == scalar && n.text == "" {
			what, cure = fmt.Sprintf("%s has nothing under it", f), "add them, or take the line out"
		}
		r.fault(n, what, "it is a list of `key: value` lines", cure)
		f.node = &node{kind: mapping, line: n.line, column: n.column, path: n.path}
	}
	return f
}

// String names the thing: link "arm".
func (f *fields) String() string {
	if f.name == "" {
		return f.kind
	}
	return fmt.Sprintf("%s %q", f.kind, f.name)
}

// of names what stands under a key: mass of link "arm". Keys that are no nouns
// go in quotes: "at" of contact.
func (f *fields) of(key string) string {
	if slices.Contains(noNouns, key) {
		return fmt.Sprintf("%q of %s", key, f)
	}
	return fmt.Sprintf("%s of %s", key, f)
}

var noNouns = []string{"about", "against", "along", "at", "between", "from", "grows", "mirrored", "on", "rests at",
	"round", "sets", "slide", "start at", "straight to", "tied", "to", "turn", "upright"}

// label is how a number under key is called in results: "arm, mass".
func (f *fields) label(key string) string {
	if f.name == "" {
		return f.kind + ", " + key
	}
	return f.name + ", " + key
}

// take returns the value under key as settings leave it, or nil.
func (f *fields) take(key string) *node {
	f.asked = append(f.asked, key)
	return f.r.value(f.node.at(key))
}

func (f *fields) has(key string) bool { return f.node.at(key) != nil }

// must is take for a key that has to be there.
func (f *fields) must(key, cure string) *node {
	n := f.take(key)
	if n == nil {
		f.r.fault(f.node, fmt.Sprintf("%s has no %q", f, key), "it needs one", cure)
	}
	return n
}

// number reads an optional number; none if the key is absent.
func (f *fields) number(key string, m measure) num {
	n := f.take(key)
	if n == nil {
		return none
	}
	return f.r.number(n, m, f.label(key), f.of(key))
}

// mustNumber reads a number that has to be there.
func (f *fields) mustNumber(key string, m measure, cure string) num {
	if f.must(key, cure) == nil {
		return none
	}
	return f.number(key, m)
}

// words reads an optional plain text.
func (f *fields) words(key string) string {
	n := f.take(key)
	if n == nil {
		return ""
	}
	return f.r.words(n, f.of(key))
}

// lines reads one text or a list of texts.
func (f *fields) lines(key string) []string {
	n := f.take(key)
	switch {
	case n == nil:
		return nil
	case n.kind == sequence:
		var out []string
		for _, item := range n.items {
			out = append(out, f.r.words(item, f.of(key)))
		}
		return out
	}
	return []string{f.r.words(n, f.of(key))}
}

// yes reads an optional yes or no.
func (f *fields) yes(key string) bool {
	n := f.take(key)
	if n == nil {
		return false
	}
	switch strings.ToLower(n.text) {
	case "yes", "true":
		return true
	case "no", "false":
		return false
	}
	f.r.fault(n, fmt.Sprintf("%s is %s", f.of(key), seen(n)), "it is yes or no", "write yes or no")
	return false
}

// choice reads a word out of a list.
func (f *fields) choice(key string, allowed ...string) string {
	n := f.take(key)
	if n == nil {
		return ""
	}
	if n.kind != scalar || !slices.Contains(allowed, n.text) {
		f.r.fault(n, fmt.Sprintf("%s is %s", f.of(key), seen(n)), "it is "+orList(allowed), f.r.suggest(n.text, allowed, "write one of these"))
		return ""
	}
	return n.text
}

// point reads an optional point's name.
func (f *fields) point(key string) pointID {
	n := f.take(key)
	if n == nil {
		return nowhere
	}
	return f.r.point(n, f.of(key))
}

// mustPoint reads a point's name that has to be there.
func (f *fields) mustPoint(key, cure string) pointID {
	if f.must(key, cure) == nil {
		return nowhere
	}
	return f.point(key)
}

// onlyOne refuses all but one of the keys that exclude one another.
func (f *fields) onlyOne(keys ...string) {
	first := ""
	for _, k := range keys {
		switch {
		case !f.has(k):
		case first == "":
			first = k
		default:
			f.r.fault(f.node.at(k), fmt.Sprintf("%s has both %q and %q", f, first, k), "it takes one of them", "take one out")
		}
	}
}

// close refuses keys that were not asked for.
func (f *fields) close() {
	for _, e := range f.node.entries {
		if !slices.Contains(f.asked, e.key) {
			at := &node{line: e.line, column: e.column, path: e.value.path}
			f.r.fault(at, fmt.Sprintf("%s has a key %q", f, shorten(e.key)), "it knows "+andList(f.asked), f.r.suggest(e.key, f.asked, "take the line out"))
		}
	}
}

// seen tells in words what stands at a node.
func seen(n *node) string {
	switch n.kind {
	case mapping:
		return "a group of keys"
	case sequence:
		return fmt.Sprintf("a list of %d", len(n.items))
	}
	if n.text == "" {
		return "empty"
	}
	return fmt.Sprintf("%q", shorten(n.text))
}

// shorten keeps a quoted text to a length that fits a message.
func shorten(text string) string {
	const most = 60
	if r := []rune(text); len(r) > most {
		return string(r[:most]) + "…"
	}
	return text
}
