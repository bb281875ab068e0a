package sheet

import (
	"fmt"
	"strings"
	"unicode"

	"steelyard/quantity"
)

// reader reads a machine sheet under one choice of settings into a plan.
type reader struct {
	doc      *Document
	problems Problems
	chosen   map[*node]*node    // what a setting puts in the place of a scalar
	measures map[string]measure // what each path that holds a number takes
	plan     *plan

	notes, measured string
	cautions        []string

	settings     []*setting
	chosenValues []*node // of each setting, its amount or text
	picked       []Choice

	pointIDs   map[string]pointID
	linkIDs    map[string]linkID
	outlineIDs map[string]outlineID
	members    [][]linkID // of each point, the links that carry it

	stacked    bool             // weight stacks are links by now
	stackLinks map[*node]linkID // of each weight stack
	routes     []routed
}

// routed is a route whose words are still to be turned into sides.
type routed struct {
	node  *node
	route []station
	what  string
}

// value returns what stands at n as settings leave it.
func (r *reader) value(n *node) *node {
	if v, ok := r.chosen[n]; ok {
		return v
	}
	return n
}

// fault notes a problem at n.
func (r *reader) fault(n *node, what, limit, cure string) {
	r.problems = append(r.problems, r.doc.problem(n, what, limit, cure))
}

// suggest is the function of that name, for as long as anybody will read it:
// looking for the nearest name takes time.
func (r *reader) suggest(name string, allowed []string, otherwise string) string {
	if len(r.problems) >= mostSuggested {
		return otherwise
	}
	return suggest(name, allowed, otherwise)
}

// mostSuggested is the number of problems for which a name is suggested.
const mostSuggested = 3 * mostProblems

// words reads plain text.
func (r *reader) words(n *node, what string) string {
	if n.kind != scalar {
		r.fault(n, fmt.Sprintf("%s is %s", what, seen(n)), "it is plain text", "put the text in quotes, or behind `|` on lines of its own")
		return ""
	}
	return strings.TrimSpace(n.text)
}

// named goes through a mapping of names chosen by the writer.
func (r *reader) named(n *node, what string, each func(name string, at entry)) {
	if n == nil {
		return
	}
	if n.kind != mapping {
		if n.kind == scalar && n.text == "" {
			r.fault(n, what+" has nothing under it", "it is a list of `name: …` lines", "add them, or take the line out")
		} else {
			r.fault(n, fmt.Sprintf("%s is %s", what, seen(n)), "it is a list of `name: …` lines", "give each of them a name and a line of its own")
		}
		return
	}
	for i, e := range n.entries {
		if i == mostNamed {
			r.fault(e.value, fmt.Sprintf("%q is number %d under %s", shorten(e.key), i+1, what), fmt.Sprintf("there are at most %d", mostNamed), "leave out what does not change the force")
			return
		}
		if r.nameable(e) {
			each(e.key, e)
		}
	}
}

// mostNamed is the number of points, of links, of ropes and so on in a machine.
const mostNamed = 200

// longestName keeps messages and drawings readable.
const longestName = 40

// nameable refuses names that could not stand in a path or on a command line.
func (r *reader) nameable(e entry) bool {
	bad := strings.IndexFunc(e.key, func(c rune) bool {
		return !(unicode.IsLetter(c) || unicode.IsMark(c) || unicode.IsDigit(c) || c == ' ' || c == '-' || c == '\'' || c == '_')
	})
	if e.key != "" && bad < 0 && len([]rune(e.key)) <= longestName && strings.TrimSpace(e.key) == e.key {
		return true
	}
	at := &node{line: e.line, column: e.column, path: e.value.path}
	r.fault(at, fmt.Sprintf("the name is %q", shorten(e.key)),
		fmt.Sprintf("a name has 1 to %d letters, digits, spaces, - and '", longestName), "choose such a name")
	return false
}

// listed goes through a list, which may also be a single value.
func (r *reader) listed(n *node, what string, each func(n *node)) {
	switch {
	case n == nil:
	case n.kind == sequence:
		for _, item := range n.items {
			each(r.value(item))
		}
	case n.kind == scalar && n.text != "":
		each(n)
	default:
		r.fault(n, fmt.Sprintf("%s is %s", what, seen(n)), "it is a list", "write it as [one, two]")
	}
}

// keys returns the names of a mapping in order.
func keys[T any](m map[string]T) []string {
	out := make([]string, 0, len(m))
	for k := range m {
		out = append(out, k)
	}
	return sortedNames(out)
}

// at returns a number of the sheet as it stands.
func (r *reader) at(n num) float64 { return r.plan.numbers[n].Value }

// written returns a number with its unit.
func (r *reader) written(n num) string {
	q := r.plan.numbers[n]
	return quantity.Quantity{Value: q.Value, Spread: q.Spread, Unit: q.Unit}.String()
}
