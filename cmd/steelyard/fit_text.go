package main

import (
	"strings"
	"unicode/utf8"

	"steelyard/exercise"
)

// cellMost is the widest a cell of a table may be, in columns.
const cellMost = 20

// textPage is text for a terminal of so many columns.
type textPage struct {
	out     strings.Builder
	columns int
}

func (t *textPage) line(s string) { t.out.WriteString(strings.TrimRight(s, " ") + "\n") }

// text writes a sentence over as many lines as it needs, those after the first
// a little further in.
func (t *textPage) text(indent, s string) {
	line := indent
	for i, word := range strings.Fields(s) {
		switch {
		case i == 0:
			line += word
		case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > t.columns:
			t.line(line)
			line = indent + "  " + word
		default:
			line += " " + word
		}
	}
	t.line(line)
}

// held tells which settings were not searched.
func (t *textPage) held(held []exercise.Chosen) {
	if len(held) > 0 {
		t.text("", "Held: "+settingsOf(held)+".")
	}
}

// table writes rows of equal length: the first column to the left, the others
// to the right. Where that is too wide, cells of the first column are cut short.
func (t *textPage) table(rows [][]string) {
	widths := make([]int, len(rows[0]))
	others := 0
	for c := len(widths) - 1; c >= 0; c-- {
		for _, row := range rows {
			most := cellMost
			if c == 0 {
				most = max(cellMost/2, t.columns-others)
			}
			row[c] = shortened(row[c], most)
			widths[c] = max(widths[c], utf8.RuneCountInString(row[c]))
		}
		others += widths[c] + 2
	}
	for _, row := range rows {
		line := ""
		for c, cell := range row {
			pad := strings.Repeat(" ", widths[c]-utf8.RuneCountInString(cell))
			if c == 0 {
				line += cell + pad
			} else {
				line += "  " + pad + cell
			}
		}
		t.line(line)
	}
}

func shortened(s string, most int) string {
	if r := []rune(s); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return s
}
