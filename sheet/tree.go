package sheet

import (
	"fmt"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"
)

// node is a value of the document with its place. Scalars keep their source
// text, so that 010, 1_000 or .nan mean here what they look like and not what
// YAML makes of them.
type node struct {
	kind         nodeKind
	line, column int
	path         string
	stands       string // of a setting's value, the path it stands in for

	text    string       // of a scalar, without its quotes
	tok     *token.Token // of a scalar that stands on one line
	entries []entry      // of a mapping, in order
	items   []*node      // of a sequence
}

type nodeKind uint8

const (
	scalar nodeKind = iota
	mapping
	sequence
)

type entry struct {
	key          string
	line, column int
	value        *node
}

// target returns the path of the place that n's text is read for.
func (n *node) target() string {
	if n.stands != "" {
		return n.stands
	}
	return n.path
}

// at returns the value under key, or nil.
func (n *node) at(key string) *node {
	if i := n.find(key); i >= 0 {
		return n.entries[i].value
	}
	return nil
}

func (n *node) find(key string) int {
	for i := range n.entries {
		if n.entries[i].key == key {
			return i
		}
	}
	return -1
}

// parse reads YAML into a tree, and refuses what a sheet has no use for:
// anchors and aliases, tags, merge keys, several documents.
func parse(file string, data []byte) (root *node, err error) {
	defer func() {
		if r := recover(); r != nil { // of the parser, on a document it cannot take
			root, err = nil, &Problem{File: file, What: "this text confuses the YAML reader",
				Limit: "a sheet is YAML", Cure: "compare its indents and brackets with the example sheet"}
		}
	}()
	f, err := parser.ParseBytes(data, parser.ParseComments, parser.AllowDuplicateMapKey())
	if err != nil {
		return nil, syntaxProblem(file, err)
	}
	g := grower{file: file}
	for _, doc := range f.Docs {
		if _, empty := doc.Body.(*ast.CommentGroupNode); empty || doc.Body == nil {
			continue
		}
		if root != nil {
			g.refuse(doc.Body, "a second document starts here", "a file holds one sheet", "put it in a file of its own")
			break
		}
		root = g.node(doc.Body, "", 0)
	}
	if root == nil && len(g.problems) == 0 {
		return nil, &Problem{File: file, What: "the file is empty", Limit: "a sheet starts with its kind and version",
			Cure: "start it with the line `steelyard: machine 1`"}
	}
	return root, g.problems.sorted()
}

// grower turns the parser's tree into ours.
type grower struct {
	file     string
	problems Problems
}

func (g *grower) node(n ast.Node, path string, depth int) *node {
	out := &node{path: path}
	if t := n.GetToken(); t != nil && t.Position != nil {
		out.line, out.column = t.Position.Line, t.Position.Column
	}
	if depth > mostNested {
		g.refuse(n, "things are nested too deep here", fmt.Sprintf("a sheet goes at most %d deep", mostNested), "flatten it")
		return out
	}
	switch n := n.(type) {
	case *ast.MappingNode:
		g.mapping(out, n.Values, depth)
	case *ast.MappingValueNode:
		g.mapping(out, []*ast.MappingValueNode{n}, depth)
	case *ast.SequenceNode:
		out.kind = sequence
		for i, v := range n.Values {
			out.items = append(out.items, g.node(v, join(path, fmt.Sprint(i+1)), depth+1))
		}
	case *ast.StringNode:
		out.text, out.tok = n.Value, n.Token
	case *ast.LiteralNode:
		out.text = n.Value.Value
	case *ast.NullNode:
		if n.Token.Type == token.NullType {
			out.text, out.tok = n.Token.Value, n.Token
		}
	case *ast.IntegerNode, *ast.FloatNode, *ast.BoolNode, *ast.InfinityNode, *ast.NanNode:
		out.text, out.tok = n.GetToken().Value, n.GetToken()
	default:
		what, cure := foreign(n)
		g.refuse(n, what, "a sheet says each thing in its place", cure)
	}
	return out
}

func (g *grower) mapping(out *node, values []*ast.MappingValueNode, depth int) {
	out.kind = mapping
	seen := map[string]int{}
	for i, v := range values {
		key, ok := g.key(v.Key)
		if !ok {
			continue
		}
		t := v.Key.GetToken()
		e := entry{key: key, line: t.Position.Line, column: t.Position.Column}
		if i == 0 {
			out.line, out.column = e.line, e.column
		}
		if line, again := seen[key]; again {
			g.refuse(v.Key, fmt.Sprintf("%q stands here a second time", shorten(key)),
				fmt.Sprintf("it is already on line %d", line), "keep one of the two")
			continue
		}
		seen[key] = e.line
		e.value = g.node(v.Value, join(out.path, key), depth+1)
		if e.value.line == 0 || (e.value.text == "" && e.value.kind == scalar) {
			e.value.line, e.value.column = e.line, e.column
		}
		out.entries = append(out.entries, e)
	}
}

func (g *grower) key(k ast.MapKeyNode) (string, bool) {
	switch k := k.(type) {
	case *ast.StringNode:
		return k.Value, true
	case *ast.IntegerNode, *ast.FloatNode, *ast.BoolNode, *ast.NullNode, *ast.InfinityNode, *ast.NanNode:
		return k.GetToken().Value, true
	}
	what, cure := foreign(k)
	g.refuse(k, what, "a name is plain text in front of a colon", cure)
	return "", false
}

// foreign names a piece of YAML that sheets do not use.
func foreign(n ast.Node) (what, cure string) {
	switch n.(type) {
	case *ast.AnchorNode:
		return "an anchor (&) stands here", "take it out and write the value where it is needed; a text that starts with & goes in quotes"
	case *ast.AliasNode:
		return "an alias (*) stands here", "write the value itself; a text that starts with * goes in quotes"
	case *ast.TagNode:
		return "a tag (!) stands here", "take it out; a text that starts with ! goes in quotes"
	case *ast.MergeKeyNode:
		return "a merge key (<<) stands here", "write the values themselves"
	case *ast.MappingKeyNode:
		return "a question mark starts a key here", "write `name: value`; a text that starts with ? goes in quotes"
	case *ast.DirectiveNode:
		return "a directive (%) stands here", "take the line out"
	}
	return "something stands here that is no name, number, text or list", "compare with the example sheet"
}

func (g *grower) refuse(n ast.Node, what, limit, cure string) {
	p := &Problem{File: g.file, What: what, Limit: limit, Cure: cure}
	if t := n.GetToken(); t != nil && t.Position != nil {
		p.Line, p.Column = t.Position.Line, t.Position.Column
	}
	g.problems = append(g.problems, p)
}

// join appends a key to a dotted path.
func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}
