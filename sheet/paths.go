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

// paths lists the ways to all single values.
func (d *Document) paths() []string {
	var out []string
	var walk func(n *node)
	walk = func(n *node) {
		for i := range n.entries {
			walk(n.entries[i].value)
		}
		for _, item := range n.items {
			walk(item)
		}
		if n.kind == scalar {
			out = append(out, n.path)
		}
	}
	walk(d.root)
	return out
}

func sortedNames(names []string) []string {
	slices.Sort(names)
	return slices.Compact(names)
}
