package sheet

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"unicode/utf8"
)

func TestReadingAndWritingChangesNothing(t *testing.T) {
	for name, data := range goodSheets(t) {
		for _, text := range [][]byte{data, bytes.ReplaceAll(data, []byte("\n"), []byte("\r\n"))} {
			d, err := Read(name, text)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(d.Bytes(), text) {
				t.Errorf("%s: written back differs from what was read", name)
			}
		}
	}
}

// TestSet changes one value and expects the rest byte for byte.
func TestSet(t *testing.T) {
	const text = "# top\r\nsteelyard: machine 1 # kind\nname: 'it''s' # a comment\npoints:   # é\n  äxis: [0, 1120 ± 3]  # ±\n  \"b c\": [ 31 in ,  4 ]\nnotes: \"a\\tb\"\ncautions:\n- one\n- two\n"
	for _, c := range []struct{ name, path, to, old, now string }{
		{"number behind non-ASCII", "points.äxis.y", "1130 ± 2", "1120 ± 3", "1130 ± 2"},
		{"by place", "points.äxis.1", "-5 mm", "[0,", "[-5 mm,"},
		{"before a spaced comma", "points.b c.x", "30 1/2 in", "31 in", "30 1/2 in"},
		{"last in a list", "points.b c.y", "5", "4 ]", "5 ]"},
		{"single quotes", "name", "hers", "'it''s'", "hers"},
		{"double quotes", "notes", "plain", `"a\tb"`, "plain"},
		{"text that needs quotes", "name", "a: b # c", "'it''s'", "'a: b # c'"},
		{"text with a quote", "name", "it's: so", "'it''s'", "'it''s: so'"},
		{"comma within brackets", "points.äxis.x", "1,5", "[0,", "['1,5',"},
		{"list item", "cautions.2", "three", "- two", "- three"},
		{"text that looks like an alias", "cautions.1", "*one", "- one", "- '*one'"},
		{"text that looks like a number", "name", "010", "'it''s'", "010"},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, err := Read("a.yaml", []byte(text))
			if err != nil {
				t.Fatal(err)
			}
			if err := d.Set(c.path, c.to); err != nil {
				t.Fatal(err)
			}
			want := bytes.Replace([]byte(text), []byte(c.old), []byte(c.now), 1)
			if !bytes.Equal(d.Bytes(), want) {
				t.Errorf("got\n%s\nwant\n%s", d.Bytes(), want)
			}
			if got := d.find(c.path).text; got != c.to {
				t.Errorf("reads %q, want %q", got, c.to)
			}
		})
	}
}

func TestBadSet(t *testing.T) {
	for _, c := range []struct {
		name, path, to string
		row            badRow
	}{
		{"unknown path", "links.arm.mas", "3 kg", badRow{place: "0:0", what: `"links.arm.mas"`, limit: "no such value", cure: `did you mean "links.arm.mass"?`}},
		{"group", "links.arm", "3 kg", badRow{place: "16:5", what: "a group of keys", limit: "one value on one line", cure: "by hand"}},
		{"list", "links.arm.points", "axis", badRow{place: "16:13", what: "a list of 4", limit: "one value on one line", cure: "by hand"}},
		{"two lines", "name", "a\nb", badRow{place: "2:7", what: `"a\nb"`, limit: "one line", cure: "line breaks"}},
		{"nothing", "name", "", badRow{place: "2:7", what: `""`, limit: "one line", cure: "outer spaces"}},
		{"another kind of sheet", "steelyard", "person 1", badRow{place: "1:12", what: `"person 1"`, limit: "cannot stand there", cure: "plain text"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, err := Read("bad.yaml", []byte(base))
			if err != nil {
				t.Fatal(err)
			}
			c.row.check(t, d.Set(c.path, c.to))
			if string(d.Bytes()) != base {
				t.Error("the sheet was changed all the same")
			}
		})
	}
}

// TestSetDoesNotReachAMachine keeps a machine as it was read.
func TestSetDoesNotReachAMachine(t *testing.T) {
	d, err := Read("a.yaml", []byte(base))
	if err != nil {
		t.Fatal(err)
	}
	m, err := d.Machine()
	if err != nil {
		t.Fatal(err)
	}
	if err := d.Set("links.arm.mass", "11 kg"); err != nil {
		t.Fatal(err)
	}
	if got := mustBuild(t, m, nil).Machine.Links[0].Mass; got != 10 {
		t.Errorf("the machine read before weighs %g kg, want 10 kg", got)
	}
	again, err := d.Machine()
	if err != nil {
		t.Fatal(err)
	}
	if got := mustBuild(t, again, nil).Machine.Links[0].Mass; got != 11 {
		t.Errorf("the machine read after weighs %g kg, want 11 kg", got)
	}
}

// TestSetPlainly writes random numbers over every plain number of each good
// sheet and expects the document that is read from the changed bytes, places
// included.
func TestSetPlainly(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	tried := 0
	for name, data := range goodSheets(t) {
		for _, text := range [][]byte{data, bytes.ReplaceAll(data, []byte("\n"), []byte("\r\n"))} {
			d, err := Read(name, text)
			if err != nil {
				t.Fatal(err)
			}
			for _, path := range d.paths() {
				to := plainTexts[random.IntN(len(plainTexts))]
				n := d.find(path)
				if n == nil || n.tok == nil || !plainNumber(n.text) { // nil: a key of it has a dot
					continue
				}
				start, end, ok := d.extent(n)
				if !ok {
					continue
				}
				changed := d.setPlainly(path, start, end, to)
				if changed == nil {
					continue // quotes
				}
				tried++
				anew, err := Read(name, changed.data)
				if err != nil {
					t.Fatalf("%s: %s = %s: %v", name, path, to, err)
				}
				if got, want := drawn(changed.root), drawn(anew.root); got != want {
					t.Fatalf("%s: %s = %s: got\n%s\nwant\n%s", name, path, to, got, want)
				}
				d = changed
			}
		}
	}
	if tried < 500 {
		t.Errorf("only %d numbers were changed", tried)
	}
}

var plainTexts = []string{"0", "-5", "12.5 mm", "1120 ± 3", "+3 1/2 in", "31 in", "90°", "0x1f", "1e5", "-0.25 ± 0.01 m", "1_000", "7 kg/m", "010", "5 µm"}

// drawn writes a tree with all that later steps read of it.
func drawn(n *node) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s %d %d:%d %q", n.path, n.kind, n.line, n.column, n.text)
	if n.tok != nil {
		fmt.Fprintf(&b, " %q", n.tok.Value)
	}
	b.WriteString("\n")
	for _, e := range n.entries {
		fmt.Fprintf(&b, "%s %d:%d\n%s", e.key, e.line, e.column, drawn(e.value))
	}
	for _, item := range n.items {
		b.WriteString(drawn(item))
	}
	return b.String()
}

// FuzzPlainNumber expects of whatever counts as a plain number that YAML reads
// it as it stands, wherever a number may stand.
func FuzzPlainNumber(f *testing.F) {
	for _, text := range plainTexts {
		f.Add(text)
	}
	for _, text := range []string{"1 2", "1  2", "-", ".5", "1:2", "1 #2", "1-2", "~", "1/", "2 ±", "0o7", "1.", "3_"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if !plainNumber(text) || !utf8.ValidString(text) || len(text) > 1000 {
			return
		}
		d, err := Read("a", []byte("steelyard: machine 1\na: "+text+" # c\nb: ["+text+", "+text+"]\nc: {d: "+text+"}\ne:\n- "+text+"\n"))
		if err != nil {
			t.Fatal(err)
		}
		for _, path := range []string{"a", "b.1", "b.2", "c.d", "e.1"} {
			if got := d.Text(path); got != text {
				t.Errorf("%s reads %q, want %q", path, got, text)
			}
		}
	})
}
