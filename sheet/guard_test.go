package sheet

import (
	"strings"
	"testing"
)

// badDocuments are refused before, or while, the YAML is parsed. Place 0:0
// means the file as a whole.
var badDocuments = []struct {
	name, text string
	row        badRow
}{
	{"empty", "", badRow{place: "0:0", what: "the file is empty", limit: "kind and version", cure: "steelyard: machine 1"}},
	{"comments only", "# nothing\n", badRow{place: "0:0", what: "the file is empty", limit: "kind and version", cure: "steelyard: machine 1"}},
	{"giant", strings.Repeat("a", mostBytes+1), badRow{place: "0:0", what: "256 KB", limit: "at most 256 KB", cure: "picture"}},
	{"picture", "\x89PNG\r\n\x1a\n", badRow{place: "1:1", what: "byte 0x89", limit: "UTF-8", cure: "plain text"}},
	{"zero byte", "name: a\nb: \x00\n", badRow{place: "2:4", what: "byte 0x00", limit: "UTF-8", cure: "plain text"}},
	{"old encoding", "name: M\xfcller\n", badRow{place: "1:8", what: "byte 0xfc", limit: "UTF-8", cure: "UTF-8"}},
	{"lone carriage return", "a: 1\rb: 2\n", badRow{place: "1:5", what: "byte 0x0d", limit: "UTF-8", cure: "plain text"}},
	{"deep brackets", "a: " + strings.Repeat("[", 65), badRow{place: "1:68", what: "nested too deep", limit: "64 brackets", cure: "never closed"}},
	{"deep brackets over lines", "a:\n" + strings.Repeat("- {b: [\n", 40), badRow{place: "34:3", what: "nested too deep", limit: "64 brackets", cure: "never closed"}},
	{"deep dashes", strings.Repeat("- ", 65) + "x", badRow{place: "1:129", what: "nested too deep", limit: "64", cure: "never closed"}},
	{"deep indent", "a:\n" + strings.Repeat(" ", 201) + "b: 1\n", badRow{place: "2:201", what: "nested too deep", limit: "200 columns", cure: "never closed"}},
	{"long line", "a: " + strings.Repeat("x", 5000), badRow{place: "1:4001", what: "longer than 4000", limit: "at most 4000", cure: "break long lines"}},
	{"many lines", strings.Repeat("#\n", 2501), badRow{place: "2501:1", what: "line 2501", limit: "at most 2500", cure: "leave out"}},
	{"many marks", "a: " + strings.Repeat("[],\n", 1) + strings.Repeat(strings.Repeat("1,", 1000)+"\n", 13), badRow{place: "13:1994", what: "number 12001", limit: "at most 12000", cure: "leave out"}},

	{"bracket never closed", "steelyard: machine 1\npoints: {a: [1, 2}\n", badRow{place: "2:18", what: "a list in brackets is not closed", limit: "[one, two]", cure: "brackets and commas"}},
	{"quote never closed", "steelyard: machine 1\nname: \"Lever\n", badRow{place: "2:7", what: "a quote is opened", limit: "ends with the quote", cure: "close it"}},
	{"tab for indent", "steelyard: machine 1\npoints:\n\ta: [1, 2]\n", badRow{place: "3:1", what: "a tab", limit: "with spaces", cure: "put spaces"}},
	{"wrong indent", "steelyard: machine 1\n name: a\n", badRow{place: "1:12", what: "a colon stands", limit: "line up", cure: "line the keys up"}},
	{"two colons", "name: a: b\n", badRow{place: "1:7", what: "a colon stands", limit: "one key", cure: "in quotes"}},
	{"brace never closed", "steelyard: machine 1\nplane: {tilt: 1\n", badRow{place: "2:8", what: "a group in braces", limit: "{key: value", cure: "braces"}},
	{"line without a colon", "steelyard: machine 1\npoints\n", badRow{place: "2:1", what: "a line has no colon", limit: "key: value", cure: "add the colon"}},
	{"sign that YAML keeps", "name: @home\n", badRow{place: "1:7", what: "keeps for itself", limit: "a letter or digit", cure: "in quotes"}},
	{"list behind a key", "name: - a\n", badRow{place: "1:7", what: "a dash stands", limit: "line of its own", cure: "next line"}},
	{"backslash", "name: \"a\\zb\"\n", badRow{place: "1:10", what: "a backslash", limit: "special sign", cure: "single quotes"}},
	{"anchor", "name: &a b\n", badRow{place: "1:7", what: "an anchor (&)", limit: "in its place", cure: "take it out"}},
	{"alias", "name: *a\n", badRow{place: "1:7", what: "an alias (*)", limit: "in its place", cure: "write the value itself"}},
	{"tag", "name: !!str b\n", badRow{place: "1:7", what: "a tag (!)", limit: "in its place", cure: "take it out"}},
	{"merge key", "<<: {a: 1}\n", badRow{place: "1:1", what: "a merge key (<<)", limit: "plain text in front of a colon", cure: "write the values themselves"}},
	{"question mark key", "? a\n: b\n", badRow{place: "1:1", what: "a question mark", limit: "plain text in front of a colon", cure: "name: value"}},
	{"directive", "%YAML 1.2\n---\nsteelyard: machine 1\n", badRow{place: "1:1", what: "a directive (%)", limit: "in its place", cure: "take the line out"}},
	{"two documents", "steelyard: machine 1\n---\nsteelyard: machine 1\n", badRow{place: "3:10", what: "a second document", limit: "one sheet", cure: "file of its own"}},

	{"list", "- a\n", badRow{place: "1:1", what: "the key steelyard is missing", limit: "kind and version first", cure: "steelyard: machine 1"}},
	{"no kind", "name: Lever\n", badRow{place: "1:1", what: "the key steelyard is missing", limit: "kind and version first", cure: "steelyard: machine 1"}},
	{"unknown kind", "steelyard: machin 1\n", badRow{place: "1:12", what: `"machin 1"`, limit: "the kinds are machine and person", cure: "steelyard: machine 1"}},
	{"no version", "steelyard: machine\n", badRow{place: "1:12", what: `the version is ""`, limit: "from 1 to 1", cure: "steelyard: machine 1"}},
	{"version from the future", "steelyard: machine 2\n", badRow{place: "1:12", what: "the version is 2", limit: "reads up to 1", cure: "newer program"}},
	{"version that is none", "steelyard: machine 1.5\n", badRow{place: "1:12", what: `"1.5"`, limit: "whole number", cure: "steelyard: machine 1"}},
	{"nothing but a kind", "steelyard: machine 1\n", badRow{place: "1:1", what: `the sheet has no "points"`, limit: "needs one", cure: "points:"}},
}

func TestBadDocuments(t *testing.T) {
	for _, c := range badDocuments {
		t.Run(c.name, func(t *testing.T) {
			_, err := machineOf("bad.yaml", c.text)
			c.row.check(t, err)
		})
	}
}

func TestByteOrderMarkIsKept(t *testing.T) {
	data := append([]byte("\xef\xbb\xbf"), base...)
	d, err := Read("marked.yaml", data)
	if err != nil {
		t.Fatal(err)
	}
	if got := string(d.Bytes()); got != string(data) {
		t.Errorf("got %q…, want the mark kept", got[:20])
	}
	if err := d.Set("steelyard", "machine 1"); err != nil {
		t.Error(err)
	}
}
