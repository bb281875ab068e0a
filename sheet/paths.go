package sheet

import (
	"slices"
	"strconv"
	"strings"
)

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
			out = append(out, Leaf{n.path, n.text})
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
