package report

import (
	"io"
	"strings"
	"unicode"

	"golang.org/x/text/width"

	"steelyard/evaluation"
	"steelyard/internal/draw"
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
	t.text(settingsLine(e, u))
	t.line("")
	for _, s := range e.Words(u) {
		t.text(s)
	}
	t.line("")
	t.curve(e, u)
	t.line("")
	t.table(travelTable(e, u))
	if e.Person != nil {
		t.person(e, u)
	}
	t.line("")
	for _, s := range cautions(e) {
		t.text("! " + s)
	}
	_, err := io.WriteString(w, t.out.String())
	return err
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

// text sets a paragraph.
func (t *terminal) text(s string) {
	for _, line := range wrapped(s, min(t.columns, prose)) {
		t.line(line)
	}
}

// wrapped breaks s at spaces into lines of so many columns, not between a
// number and its unit. A longer word has a line of its own.
func wrapped(s string, columns int) []string {
	var lines []string
	line, used := "", 0
	for _, word := range strings.Split(plain(bound(s)), " ") {
		word = strings.ReplaceAll(word, nbsp, " ")
		w := cells(word)
		if w == 0 {
			continue
		}
		if used > 0 && used+1+w > columns {
			lines = append(lines, line)
			line, used = "", 0
		}
		if used > 0 {
			line, used = line+" ", used+1
		}
		line, used = line+word, used+w
	}
	if used > 0 {
		lines = append(lines, line)
	}
	return lines
}

// table sets columns side by side, each as wide as its widest cell. A title
// breaks at its spaces, so that figures stay close.
func (t *terminal) table(tab draw.Table) {
	widths := make([]int, len(tab.Columns))
	titles := make([][]string, len(tab.Columns))
	high, total := 0, 2*(len(widths)-1)
	for c, col := range tab.Columns {
		for _, row := range tab.Rows {
			if c < len(row) {
				widths[c] = max(widths[c], cells(plain(row[c])))
			}
		}
		for _, word := range strings.Fields(plain(col.Title)) {
			widths[c] = max(widths[c], cells(word))
		}
		titles[c] = wrapped(col.Title, widths[c])
		high, total = max(high, len(titles[c])), total+widths[c]
	}
	for i := range high {
		t.row(tab, widths, func(c int) string {
			if k := i - (high - len(titles[c])); k >= 0 {
				return titles[c][k]
			}
			return ""
		})
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
		case r == '\u00a0':
			return r
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r), unicode.Is(unicode.Cf, r), r == unicode.ReplacementChar:
			return -1
		}
		return r
	}, s)
}
