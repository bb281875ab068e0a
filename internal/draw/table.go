package draw

import "strings"

// Column heads a column of a table.
type Column struct {
	Title string
	Align Align
}

// Table is rows of cells under their columns. Short rows are padded, cells
// beyond the last column left out.
type Table struct {
	Columns []Column
	Rows    [][]string
}

// Table draws the heading and as many rows as fit box, and returns how many
// and the y below them. It draws nothing if not even one row fits.
func (p *Page) Table(box Rect, t Table) (rows int, bottom float64) {
	s := p.scene
	f, head := s.Font(s.Theme.Ink), s.Font(s.Theme.Ink)
	head.Bold = true
	widths := t.widths(f, head, box.W)
	titles := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		titles[i] = c.Title
	}
	y := box.Y + rowHeight(head, titles, widths)
	if len(t.Rows) > 0 && y+rowHeight(f, t.Rows[0], widths) > box.Bottom()+1e-6 {
		return 0, box.Y
	}
	p.row(Point{box.X, box.Y}, t, titles, head, widths)
	p.Stroke(Polyline(Point{box.X, y}, Point{box.Right(), y}), s.thin(s.Theme.Ink))
	for _, row := range t.Rows {
		h := rowHeight(f, row, widths)
		if y+h > box.Bottom()+1e-6 {
			break
		}
		p.row(Point{box.X, y}, t, row, f, widths)
		y += h
		p.Stroke(Polyline(Point{box.X, y}, Point{box.Right(), y}), s.thin(Alpha(s.Theme.Faint, 0.5)))
		rows++
	}
	return rows, y
}

func (p *Page) row(at Point, t Table, cells []string, f Font, widths []float64) {
	x := at.X
	for i, w := range widths {
		if i < len(cells) {
			p.Paragraph(Point{x + padding(f), at.Y + padding(f)/2}, w-2*padding(f), cells[i], f, t.Columns[i].Align)
		}
		x += w
	}
}

func padding(f Font) float64 { return 0.5 * f.Size }

func rowHeight(f Font, cells []string, widths []float64) float64 {
	most := 1
	for i, c := range cells {
		if i < len(widths) {
			most = max(most, len(f.Wrap(c, widths[i]-2*padding(f))))
		}
	}
	return float64(most)*f.Leading() + padding(f)
}

// widths shares total among the columns: each its longest word at least, the
// rest in proportion to what its longest line still wants.
//
// Source: W3C, CSS 2.1 (2011), 17.5.2.2, automatic table layout.
func (t Table) widths(f, head Font, total float64) []float64 {
	n := len(t.Columns)
	least, wanted := make([]float64, n), make([]float64, n)
	note := func(i int, f Font, cell string) {
		wanted[i] = max(wanted[i], f.Measure(cell)+2.2*padding(f))
		for _, w := range strings.Fields(cell) {
			least[i] = max(least[i], f.Measure(w)+2.2*padding(f))
		}
	}
	for i, c := range t.Columns {
		note(i, head, c.Title)
	}
	for _, row := range t.Rows {
		for i, cell := range row[:min(n, len(row))] {
			note(i, f, cell)
		}
	}
	return share(least, wanted, total)
}

func share(least, wanted []float64, total float64) []float64 {
	sumLeast, sumWanted := sum(least), sum(wanted)
	out := make([]float64, len(least))
	for i := range out {
		switch {
		case sumWanted <= total:
			out[i] = wanted[i] + (total-sumWanted)/float64(len(out))
		case sumLeast < total:
			out[i] = least[i] + (total-sumLeast)*(wanted[i]-least[i])/(sumWanted-sumLeast)
		default:
			out[i] = total * least[i] / sumLeast
		}
	}
	return out
}

func sum(vs []float64) float64 {
	s := 0.0
	for _, v := range vs {
		s += v
	}
	return s
}
