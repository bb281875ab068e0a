package report

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"golang.org/x/text/width"

	"steelyard/evaluation"
	"steelyard/internal/draw"

	"unicode"
)

// The narrowest and the widest text that is still easy to read, in columns.
const (
	narrowest = 40
	widest    = 160
	prose     = 100 // lines of sentences no longer than this
)

// Terminal writes the evaluation as text of so many columns: words first, then
// a curve, then the table. Columns outside 40 to 160 are brought within. Names
// of any script keep the table aligned as far as the terminal follows Unicode's
// East Asian widths.
func Terminal(w io.Writer, e *evaluation.Evaluation, columns int, o Options) error {
	t := terminal{columns: min(max(columns, narrowest), widest), bold: o.Bold}
	u := o.units()
	t.heading(e.Name)
	t.text(settingsLine(e))
	t.line("")
	for _, s := range e.Words(u) {
		t.text(s)
	}
	t.line("")
	t.curve(e, u)
	t.line("")
	t.table(travelTable(e, u))
	t.line("")
	for _, s := range cautions(e) {
		t.text("! " + s)
	}
	b := bufio.NewWriter(w)
	b.WriteString(t.out.String())
	return b.Flush()
}

type terminal struct {
	out     strings.Builder
	columns int
	bold    bool
}

func (t *terminal) line(s string) { t.out.WriteString(strings.TrimRight(s, " ") + "\n") }

func (t *terminal) heading(s string) {
	if s = plain(s); t.bold {
		s = "\x1b[1m" + s + "\x1b[0m"
	}
	t.line(s)
}

// text sets a paragraph, breaking lines at spaces.
func (t *terminal) text(s string) {
	limit := min(t.columns, prose)
	line, used := "", 0
	for _, word := range strings.Fields(plain(s)) {
		w := cells(word)
		if used > 0 && used+1+w > limit {
			t.line(line)
			line, used = "", 0
		}
		if used > 0 {
			line, used = line+" ", used+1
		}
		line, used = line+word, used+w
	}
	if used > 0 {
		t.line(line)
	}
}

// table sets columns side by side, each as wide as its widest cell. A title
// breaks at its spaces, so that figures stay close.
func (t *terminal) table(tab draw.Table) {
	titles := make([][]string, len(tab.Columns))
	widths := make([]int, len(tab.Columns))
	high := 0
	for c, col := range tab.Columns {
		titles[c] = strings.Fields(plain(col.Title))
		high = max(high, len(titles[c]))
		for _, word := range titles[c] {
			widths[c] = max(widths[c], cells(word))
		}
		for _, row := range tab.Rows {
			if c < len(row) {
				widths[c] = max(widths[c], cells(plain(row[c])))
			}
		}
	}
	for i := range high {
		t.row(tab, widths, func(c int) string {
			if k := i - (high - len(titles[c])); k >= 0 {
				return titles[c][k]
			}
			return ""
		})
	}
	total := 2 * (len(widths) - 1)
	for _, w := range widths {
		total += w
	}
	t.line(strings.Repeat("─", total))
	for _, row := range tab.Rows {
		t.row(tab, widths, func(c int) string {
			if c < len(row) {
				return plain(row[c])
			}
			return ""
		})
	}
}

func (t *terminal) row(tab draw.Table, widths []int, cell func(c int) string) {
	var b strings.Builder
	for c, w := range widths {
		if c > 0 {
			b.WriteString("  ")
		}
		b.WriteString(padded(cell(c), w, tab.Columns[c].Align))
	}
	t.line(b.String())
}

// padded fills s up to w columns.
func padded(s string, w int, a draw.Align) string {
	room := max(0, w-cells(s))
	before := room * int(a) / 2
	return strings.Repeat(" ", before) + s + strings.Repeat(" ", room-before)
}

// cells returns how many columns s takes: two for wide characters, none for
// marks that sit on the one before.
//
// Source: Unicode Standard Annex 11, East Asian Width (W and F).
func cells(s string) int {
	n := 0
	for _, r := range s {
		switch {
		case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf):
		case width.LookupRune(r).Kind() == width.EastAsianWide, width.LookupRune(r).Kind() == width.EastAsianFullwidth:
			n += 2
		default:
			n++
		}
	}
	return n
}

// plain leaves out what could steer a terminal or turn its text around:
// control characters, escape codes' first byte among them, and marks of
// writing direction. A line break becomes a space.
func plain(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r), unicode.Is(unicode.Cf, r), r == unicode.ReplacementChar:
			return -1
		}
		return r
	}, s)
}

// settingsLine says in one line how the machine is set.
func settingsLine(e *evaluation.Evaluation) string {
	var all []string
	for _, c := range e.Built.Choices {
		all = append(all, fmt.Sprintf("%s %s", c.Setting, c.Value))
	}
	if len(all) == 0 {
		return "Nothing on it can be adjusted."
	}
	return "Set to " + strings.Join(all, ", ") + "."
}
