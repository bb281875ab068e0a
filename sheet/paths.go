package sheet

import (
	"slices"
	"strconv"
	"strings"
)

// Text returns the single value that path leads to, without its quotes; "" if
// there is none. Places in a list are counted from 1; the two numbers of a place
// are also called x and y.
func (d *Document) Text(path string) string {
	if n := d.find(path); n != nil && n.kind == scalar {
		return n.text
	}
	return ""
}

// Line returns the line, from 1, of what path leads to; 0 if that is nothing.
func (d *Document) Line(path string) int {
	if n := d.find(path); n != nil {
		return n.line
	}
	return 0
}

// Keys lists what stands under path, in order: the keys of a group, or the
// places of a list from "1"; nil if path leads to no such thing.
func (d *Document) Keys(path string) []string {
	n := d.find(path)
	if n == nil {
		return nil
	}
	var out []string
	for i := range n.entries {
		out = append(out, n.entries[i].key)
	}
	for i := range n.items {
		out = append(out, strconv.Itoa(i+1))
	}
	return out
}

// List returns the single values of the list that path leads to; nil if it
// leads to none.
func (d *Document) List(path string) []string {
	n := d.find(path)
	if n == nil || n.kind != sequence {
		return nil
	}
	out := []string{}
	for _, item := range n.items {
		out = append(out, item.text)
	}
	return out
}

// find returns the value that a dotted path leads to, or nil. Places in a list
// are counted from 1; the two numbers of a place are also called x and y.
func (d *Document) find(path string) *node {
	n := d.root
	for key := range strings.SplitSeq(path, ".") {
		switch n.kind {
		case mapping:
			n = n.at(key)
		case sequence:
			n = n.item(key)
		default:
			n = nil
		}
		if n == nil {
			return nil
		}
	}
	return n
}

func (n *node) item(key string) *node {
	i, err := strconv.Atoi(key)
	if err != nil && len(n.items) == 2 {
		i = 1 + slices.Index([]string{"x", "y"}, key)
	}
	if i < 1 || i > len(n.items) {
		return nil
	}
	return n.items[i-1]
}

// Leaf is a single value of a sheet as it was written.
type Leaf struct {
	Path string // as [Document.Set] takes it
	Text string // without its quotes
	Line int    // from 1
}

// Leaves lists all single values in the sheet's order.
func (d *Document) Leaves() []Leaf {
	var out []Leaf
	var walk func(n *node)
	walk = func(n *node) {
		for i := range n.entries {
			walk(n.entries[i].value)
		}
		for _, item := range n.items {
			walk(item)
		}
		if n.kind == scalar {
			out = append(out, Leaf{n.path, n.text, n.line})
		}
	}
	walk(d.root)
	return out
}

// paths lists the ways to all single values.
func (d *Document) paths() []string {
	var out []string
	for _, l := range d.Leaves() {
		out = append(out, l.Path)
	}
	return out
}

func sortedNames(names []string) []string {
	slices.Sort(names)
	return slices.Compact(names)
}
