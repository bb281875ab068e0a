package report

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"steelyard/evaluation"
	"steelyard/internal/draw"
)

func terminalText(t testing.TB, e *evaluation.Evaluation, columns int, o Options) string {
	t.Helper()
	var b bytes.Buffer
	if err := Terminal(&b, e, columns, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// The layout of curve and table only: their numbers are checked against closed
// forms elsewhere.
func TestTerminalLayout(t *testing.T) {
	for _, name := range []string{"level", "rough"} {
		e, u := evaluated(t, name), Options{}.units()
		tm := terminal{columns: 76}
		tm.curve(e, u)
		tm.table(travelTable(e, u))
		path := filepath.Join("testdata", name+".txt")
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if got := tm.out.String(); got != string(want) {
			t.Errorf("%s: the layout has changed; if it is better, keep it in %s:\n%s", name, path, got)
		}
	}
}

func TestNoLineIsTooLong(t *testing.T) {
	for _, name := range machines {
		e := evaluated(t, name)
		for _, columns := range []int{60, 80, 200} {
			for _, line := range strings.Split(terminalText(t, e, columns, Options{}), "\n") {
				if n := cells(line); n > min(columns, widest) {
					t.Errorf("%s at %d columns: %d columns in %q", name, columns, n, line)
				}
			}
		}
	}
}

func TestCellsFollowUnicode(t *testing.T) {
	// Unicode Standard Annex 11, East Asian Width.
	for s, want := range map[string]int{"": 0, "arm": 3, "μοχλός": 6, "рычаг": 5, "腕": 2, "ベース": 6, "한글": 4, "ﾍﾞ": 2, "Ａ": 2, "e\u0301": 1, "ذراع": 4} {
		if got := cells(s); got != want {
			t.Errorf("cells(%q) = %d, want %d", s, got, want)
		}
	}
}

func TestTableStaysAligned(t *testing.T) {
	tm := terminal{columns: 80}
	tm.table(draw.Table{
		Columns: []draw.Column{{Title: "Part"}, {Title: "Value (N)", Align: draw.Right}, {Title: "x", Align: draw.Right}},
		Rows:    [][]string{{"arm", "1", "|"}, {"μοχλός", "22", "|"}, {"ベース腕", "333", "|"}, {"ذراع", "4444", "|"}, {"short"}},
	})
	lines := strings.Split(strings.TrimRight(tm.out.String(), "\n"), "\n")
	for _, line := range lines[len(lines)-5 : len(lines)-1] {
		if before, _, ok := strings.Cut(line, "|"); !ok || cells(before) != 8+2+5+2 {
			t.Errorf("column ends at %d in %q, want 17", cells(before), line)
		}
	}
}

func TestPlainTakesTheSteeringOut(t *testing.T) {
	for s, want := range map[string]string{
		"\x1b[31mred\x1b[0m":      "[31mred[0m", // without its escape an escape code is letters
		"a\u202egnp\u202c b":      "agnp b",
		"two\nlines\tand\rreturn": "two lines and return",
		"bell\a \u0085next":       "bell  next",
		"ﻋرض":                     "ﻋرض",
	} {
		if got := plain(s); got != want {
			t.Errorf("plain(%q) = %q, want %q", s, got, want)
		}
	}
}

func TestBoldOnlyWhenAsked(t *testing.T) {
	e := evaluated(t, "level")
	if text := terminalText(t, e, 80, Options{}); strings.Contains(text, "\x1b") {
		t.Error("an escape code though none was asked for")
	}
	if text := terminalText(t, e, 80, Options{Bold: true}); !strings.HasPrefix(text, "\x1b[1mLevel\x1b[0m\n") {
		t.Errorf("starts with %.20q, want the name in bold", text)
	}
}

func TestBrailleDots(t *testing.T) {
	// Unicode 15, block U+2800: dots 1 2 3 7 down the left, 4 5 6 8 down the right.
	for _, row := range []struct {
		x, y int
		want string
	}{{0, 0, "⠁ "}, {0, 1, "⠂ "}, {0, 2, "⠄ "}, {0, 3, "⡀ "}, {1, 0, "⠈ "}, {1, 1, "⠐ "}, {1, 2, "⠠ "}, {1, 3, "⢀ "}, {3, 3, " ⢀"}, {4, 0, "  "}, {0, -1, "  "}} {
		d := newDots(2, 1)
		d.set(row.x, row.y)
		if got := d.row(0); got != row.want {
			t.Errorf("dot %d,%d is %q, want %q", row.x, row.y, got, row.want)
		}
	}
}

func TestBrailleLineIsUnbroken(t *testing.T) {
	p := plot{newDots(20, 10), 0, 100, 1}
	p.line([]float64{0, 0.4, 0.45, 1}, []float64{5, 10, 95, 60}, 1, 1)
	for x := range 40 {
		raised := false
		for y := range 40 {
			raised = raised || p.bits[y/4*20+x/2]&brailleBit[y%4][x%2] != 0
		}
		if !raised {
			t.Errorf("no dot in column %d", x)
		}
	}
}
