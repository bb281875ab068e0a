package sheet

import (
	"errors"
	"fmt"
	"strings"

	"github.com/goccy/go-yaml"
)

// slipsOfTheKeyboard turns the parser's messages, known by a part of each, into
// words for people who write a sheet once a year. Rows are tried in order.
var slipsOfTheKeyboard = []struct{ part, what, limit, cure string }{
	{"reserved character", "a text starts with a sign that YAML keeps for itself", "plain text starts with a letter or digit", "put the text in quotes"},
	{"tab character", "a tab stands here", "YAML indents with spaces", "put spaces in the tab's place"},
	{"cannot start any token", "a tab stands here", "YAML indents with spaces", "put spaces in the tab's place"},
	{"mapping value is not allowed", "a colon stands where no key can be", "a line has one key, and the keys of a group line up",
		"line the keys up, and put a text that has a colon in quotes"},
	{"quoted text", "a quote is opened and not closed", "a quoted text ends with the quote it starts with", "close it"},
	{"']'", "a list in brackets is not closed properly", "it is written [one, two]", "check its brackets and commas"},
	{"'}'", "a group in braces is not closed properly", "it is written {key: value, key: value}", "check its braces, commas and colons"},
	{"implicit line break", "a line has neither a colon nor a dash", "a line is `key: value` or `- item`", "add the colon, or indent the line under the text it belongs to"},
	{"non-map value", "a line has no colon", "a line is `key: value`", "add the colon, or indent the line under the text it belongs to"},
	{"unexpected key", "a key stands here without a value", "a line is `key: value`", "write the value after the colon"},
	{"value is not allowed", "something stands behind a finished value", "a line is `key: value`", "take it out, or put the whole text in quotes"},
	{"block sequence entries", "a dash stands where no list can be", "a list starts on a line of its own", "start the list on the next line, or write it in [ ]"},
	{"escape character", "a backslash stands in double quotes", "there it starts a special sign", "use single quotes"},
}

// syntaxProblem puts a parser's message into a problem with its place.
func syntaxProblem(file string, err error) error {
	p := &Problem{File: file, What: "this is no YAML", Limit: "a sheet is YAML",
		Cure: "compare its indents and brackets with the example sheet"}
	var located yaml.Error
	if !errors.As(err, &located) {
		return p
	}
	message := located.GetMessage()
	p.What = fmt.Sprintf("the YAML breaks here (%s)", shorten(message))
	if t := located.GetToken(); t != nil && t.Position != nil {
		p.Line, p.Column = t.Position.Line, t.Position.Column
	}
	for _, s := range slipsOfTheKeyboard {
		if strings.Contains(message, s.part) {
			p.What, p.Limit, p.Cure = s.what, s.limit, s.cure
			break
		}
	}
	return p
}
