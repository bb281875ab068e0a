package report

import (
	"math"
	"strings"

	"steelyard/evaluation"
	"steelyard/internal/draw"
)

// dots is a field of raised dots, 2 × 4 to a character, from the top left.
//
// Source: Unicode block U+2800, Braille Patterns.
type dots struct {
	columns, rows int // characters
	bits          []byte
}

// brailleBit is the bit of the dot in row y and column x of a character.
var brailleBit = [4][2]byte{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}

func newDots(columns, rows int) *dots {
	return &dots{columns, rows, make([]byte, columns*rows)}
}

// set raises the dot at x from the left and y from the top; one outside the
// field is left alone.
func (d *dots) set(x, y int) {
	if x >= 0 && y >= 0 && x < 2*d.columns && y < 4*d.rows {
		d.bits[y/4*d.columns+x/2] |= brailleBit[y%4][x%2]
	}
}

func (d *dots) row(r int) string {
	var b strings.Builder
	for _, bits := range d.bits[r*d.columns : (r+1)*d.columns] {
		if bits == 0 {
			b.WriteByte(' ')
		} else {
			b.WriteRune(0x2800 + rune(bits))
		}
	}
	return b.String()
}

// plot is the curve's place on the field.
type plot struct {
	*dots
	lo, hi float64 // of the upright axis
	length float64 // of the level axis
}

func (p plot) x(v float64) int { return int(math.Round(v / p.length * float64(2*p.columns-1))) }
func (p plot) y(v float64) int {
	return int(math.Round((p.hi - v) / (p.hi - p.lo) * float64(4*p.rows-1)))
}

// line joins neighbouring values dot by dot; of every repeat dots along the
// level axis it raises the first on.
func (p plot) line(xs, ys []float64, on, repeat int) {
	for i := 1; i < len(xs); i++ {
		if math.IsNaN(ys[i-1]) || math.IsNaN(ys[i]) {
			continue
		}
		x0, y0, x1, y1 := p.x(xs[i-1]), p.y(ys[i-1]), p.x(xs[i]), p.y(ys[i])
		n := max(x1-x0, y1-y0, y0-y1, 1)
		for k := range n + 1 {
			x := x0 + int(math.Round(float64(k)*float64(x1-x0)/float64(n)))
			if x%repeat < on {
				p.set(x, y0+int(math.Round(float64(k)*float64(y1-y0)/float64(n))))
			}
		}
	}
}

// shade dots the area between lo and hi, thinly, and both its edges.
func (p plot) shade(xs, lo, hi []float64) {
	for x := 0; x < 2*p.columns; x += 2 {
		k := nearest(xs, float64(x)/float64(2*p.columns-1)*p.length)
		if math.IsNaN(lo[k]) {
			continue
		}
		top, bottom := p.y(hi[k]), p.y(lo[k])
		for y := top; y <= bottom; y++ {
			if (x/2+y)%6 == 0 && x%4 == 0 {
				p.set(x, y)
			}
		}
		p.set(x, top)
		p.set(x, bottom)
	}
}

// apart reports whether lifting and lowering are two dots or more apart
// somewhere, so that both can be told.
func (p plot) apart(s series) bool {
	for i := range s.lift {
		if !math.IsNaN(s.lift[i]) && p.y(s.lower[i])-p.y(s.lift[i]) >= 2 {
			return true
		}
	}
	return false
}

// upright raises every fourth dot of a column, for the bounds of the thirds.
func (p plot) upright(v float64) {
	for y := 0; y < 4*p.rows; y += 4 {
		p.set(p.x(v), y)
	}
}

// plotRows is the height of the curve in a terminal, in lines.
const plotRows = 14

// curve draws force over travel with its axes, thirds and band.
func (t *terminal) curve(e *evaluation.Evaluation, u units) {
	s := seriesOf(e, u)
	y := forceAxis(e, u, s)
	ticks := draw.Ticks(y.Lo, y.Hi, 5)
	gutter := 0
	for _, k := range ticks {
		gutter = max(gutter, cells(k.Label))
	}
	p := plot{newDots(min(t.columns, prose)-gutter-3, plotRows), y.Lo, y.Hi, s.travel[len(s.travel)-1]}
	p.upright(p.length / 3)
	p.upright(p.length * 2 / 3)
	p.shade(s.travel, s.low, s.high)
	s.rubs = s.rubs && p.apart(s)
	if s.rubs {
		p.line(s.travel, s.lower, 2, 5)
	}
	p.line(s.travel, s.lift, 1, 1)

	t.line("Force at " + plain(the(e.Model.Machine().Contact.Name)) + " (" + u.force.Symbol() + ")")
	t.line(strings.Repeat(" ", gutter+2) + thirdsRule(p.columns))
	labels := map[int]string{}
	for _, k := range ticks {
		labels[p.y(k.Value)/4] = k.Label
	}
	t.plot(p, gutter, labels, u)
	t.line("")
	t.text(s.legend(e.Rubs()))
	for _, g := range gapsOf(&e.Curve) {
		t.text("From " + u.Length(e.Curve.Travel[g.first]) + " to " + u.Length(e.Curve.Travel[g.last]) + " " + g.words() + ".")
	}
}

// plot writes the dots between their axes; labels are by line.
func (t *terminal) plot(p plot, gutter int, labels map[int]string, u units) {
	for r := range p.rows {
		edge := "│"
		if labels[r] != "" {
			edge = "┤"
		}
		t.line(padded(labels[r], gutter, draw.Right) + " " + edge + p.row(r))
	}
	t.levelAxis(gutter, p, u)
}

// thirdsRule names the thirds over n columns.
func thirdsRule(n int) string {
	var b strings.Builder
	edge := "├"
	for i, name := range thirdNames {
		w := (i+1)*n/3 - i*n/3 - 1
		if w < len(name)+2 {
			name = name[:max(0, min(len(name), w))]
		}
		left := (w - len(name)) / 2
		b.WriteString(edge + strings.Repeat("─", max(0, left-1)) + " " + name + " " + strings.Repeat("─", max(0, w-left-len(name)-1)))
		edge = "┼"
	}
	return b.String() + "┤"
}

func (t *terminal) levelAxis(gutter int, p plot, u units) {
	rule := []rune(strings.Repeat("─", p.columns))
	figures := []rune(strings.Repeat(" ", p.columns+8))
	for _, k := range draw.Ticks(0, p.length, 9) {
		at := p.x(k.Value) / 2
		rule[min(at, p.columns-1)] = '┬'
		label := []rune(k.Label)
		copy(figures[max(0, at-len(label)/2):], label)
	}
	t.line(strings.Repeat(" ", gutter+1) + "└" + string(rule))
	t.line(strings.Repeat(" ", gutter+2) + string(figures))
	t.line(padded(titled("Travel", u.length), gutter+2+p.columns, draw.Right))
}

// legend says what the plot's marks mean; s.rubs tells whether lowering was
// drawn, rubs whether it differs at all.
func (s series) legend(rubs bool) string {
	text := "Full line: lifting, holding and lowering alike (no friction stated)"
	switch {
	case s.rubs:
		text = "Full line: lifting; broken line: lowering"
	case rubs:
		text = "Full line: lifting; lowering is too near to tell apart"
	}
	if s.banded {
		text += "; dots: where lifting may lie, 19 times in 20"
	}
	return text + "."
}
