package view

import (
	"strconv"
	"strings"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"
)

// node is a value of a sheet's text: a scalar with its text, or something with
// children. It is only made of texts that package sheet has accepted.
type node struct {
	key      string // under which it stands; its number, from 1, in a list
	text     string
	line     int
	children []*node
	list     bool
}

// parse returns the tree of a sheet's text.
func parse(text string) *node {
	root := &node{}
	f, err := parser.ParseBytes([]byte(strings.TrimPrefix(text, "\ufeff")), 0)
	if err != nil {
		return root
	}
	for _, doc := range f.Docs {
		if doc.Body != nil {
			fill(root, doc.Body)
		}
	}
	return root
}

func fill(n *node, from ast.Node) {
	if t := from.GetToken(); t != nil && t.Position != nil {
		n.line = t.Position.Line
	}
	switch from := from.(type) {
	case *ast.MappingNode:
		for _, v := range from.Values {
			n.add(v.Key.GetToken().Value, v.Value)
		}
	case *ast.MappingValueNode:
		n.add(from.Key.GetToken().Value, from.Value)
	case *ast.SequenceNode:
		n.list = true
		for i, v := range from.Values {
			n.add(strconv.Itoa(i+1), v)
		}
	case *ast.LiteralNode:
		n.text = from.Value.Value
	case *ast.NullNode:
	default:
		n.text = from.GetToken().Value
	}
}

func (n *node) add(key string, from ast.Node) {
	child := &node{key: key}
	fill(child, from)
	n.children = append(n.children, child)
}

// at returns what stands at the end of a way of keys; an empty node if nothing
// does. The two places of a pair are also called x and y.
func (n *node) at(keys ...string) *node {
	for _, k := range keys {
		n = n.child(k)
	}
	return n
}

func (n *node) child(key string) *node {
	if n.list && len(n.children) == 2 {
		switch key {
		case "x":
			key = "1"
		case "y":
			key = "2"
		}
	}
	for _, c := range n.children {
		if c.key == key {
			return c
		}
	}
	return &node{}
}

// value returns the scalar that carries a number: itself, or what stands under
// is in a group, with the rest of the way to it.
func (n *node) value() (scalar *node, rest string) {
	if is := n.child("is"); is.text != "" {
		return is, ".is"
	}
	return n, ""
}

// find returns what a dotted path leads to.
func (n *node) find(path string) *node { return n.at(strings.Split(path, ".")...) }

// texts returns the texts of a list.
func (n *node) texts() []string {
	out := []string{}
	for _, c := range n.children {
		out = append(out, c.text)
	}
	return out
}
