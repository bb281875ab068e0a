package draw

import "fmt"

// Flow fills pages from top to bottom and starts a new one when the next thing
// does not fit. Call Finish once at the end.
type Flow struct {
	Size   Size
	Margin float64 // mm on all sides
	Footer string  // repeated at the foot of each page, beside its number
	scene  *Scene
	pages  []*Page
	y      float64
}

// Flow returns a flow that appends pages of the given size to s. Body text is
// a fifth larger than labels.
func (s *Scene) Flow(size Size, margin float64, footer string) *Flow {
	f := &Flow{Size: size, Margin: margin, Footer: footer, scene: s}
	f.Break()
	return f
}

// Break starts a new page.
func (f *Flow) Break() {
	f.pages = append(f.pages, f.scene.AddPage(f.Size))
	f.y = f.Margin
}

// Page returns the page being filled.
func (f *Flow) Page() *Page { return f.pages[len(f.pages)-1] }

// Space leaves h mm empty.
func (f *Flow) Space(h float64) { f.y += h }

// Width is the width between the margins, mm.
func (f *Flow) Width() float64 { return f.Size.W - 2*f.Margin }

// left is the height that remains on the page, above the footer.
func (f *Flow) left() float64 {
	return f.Size.H - f.Margin - 2*f.scene.Text - f.y
}

func (f *Flow) body(c Color) Font { return Font{Size: 1.2 * f.scene.Text, Color: c} }

// Title sets s large at the head of a document.
func (f *Flow) Title(s string) {
	f.paragraph(s, Font{Size: 2.2 * f.scene.Text, Bold: true, Color: f.scene.Theme.Ink})
	f.y += f.scene.Text
}

// Heading sets s bold, with room for some lines of what follows.
func (f *Flow) Heading(s string) {
	font := Font{Size: 1.5 * f.scene.Text, Bold: true, Color: f.scene.Theme.Ink}
	if f.left() < 5*font.Leading() {
		f.Break()
	} else if f.y > f.Margin {
		f.y += 0.8 * font.Size
	}
	f.paragraph(s, font)
	f.y += 0.3 * font.Size
}

// Text sets a paragraph.
func (f *Flow) Text(s string) {
	f.paragraph(s, f.body(f.scene.Theme.Ink))
	f.y += 0.6 * f.scene.Text
}

// paragraph sets s line by line, over as many pages as it needs.
func (f *Flow) paragraph(s string, font Font) {
	for _, line := range font.Wrap(s, f.Width()) {
		if f.left() < font.Leading() && f.y > f.Margin {
			f.Break()
		}
		f.y = f.Page().lines(Point{f.Margin, f.y}, f.Width(), []string{line}, font, Left)
	}
}

// Caution sets s in a box with a warning sign, whole on one page.
func (f *Flow) Caution(s string) {
	font := f.body(f.scene.Theme.Ink)
	pad, sign := font.Size, 2.4*font.Size
	inner := f.Width() - 2*pad - sign - pad
	h := max(float64(len(font.Wrap(s, inner)))*font.Leading(), sign) + 2*pad
	f.Figure(h, "", "", func(p *Page, box Rect) {
		th := f.scene.Theme
		p.Fill(box.Path(), Alpha(th.Warn, 0.08))
		p.Fill(Rect{box.X, box.Y, 0.35 * pad, box.H}.Path(), th.Warn)
		p.warningSign(Rect{box.X + pad, box.Y + pad, sign, sign}, th.Warn)
		p.Paragraph(Point{box.X + 2*pad + sign, box.Y + pad}, inner, s, font, Left)
	})
}

// warningSign draws the general warning sign, a triangle with an exclamation
// mark. Source: ISO 7010, W001 (shape only).
func (p *Page) warningSign(r Rect, c Color) {
	tri := Polygon(Point{r.X + r.W/2, r.Y}, Point{r.Right(), r.Y + 0.88*r.H}, Point{r.X, r.Y + 0.88*r.H})
	p.Stroke(tri, Pen{Width: 0.09 * r.W, Color: c})
	f := Font{Size: 0.62 * r.H, Bold: true, Color: c}
	p.TextAt(Point{r.X + r.W/2, r.Y + 0.78*r.H}, "!", f, Centre)
}

// Figure gives draw a box of height h over the full width, whole on one page,
// as a layer with the title and description. Pass both empty for ornaments.
func (f *Flow) Figure(h float64, title, desc string, draw func(p *Page, box Rect)) {
	if f.left() < h && f.y > f.Margin {
		f.Break()
	}
	p := f.Page()
	box := Rect{f.Margin, f.y, f.Width(), h}
	if title == "" && desc == "" {
		draw(p, box)
	} else {
		p.Layer(title, desc, func() { draw(p, box) })
	}
	f.y += h + 0.8*f.scene.Text
}

// Table sets t over as many pages as it needs, its heading on each. A row
// higher than a page is left out and noted as a warning.
func (f *Flow) Table(t Table) {
	for {
		n, bottom := f.Page().Table(Rect{f.Margin, f.y, f.Width(), f.left()}, t)
		f.y = bottom + f.scene.Text
		t.Rows = t.Rows[n:]
		if len(t.Rows) == 0 {
			return
		}
		if n == 0 && bottom <= f.Margin {
			f.scene.stray("a table row higher than a page was left out: it starts %q", firstCell(t.Rows[0]))
			t.Rows = t.Rows[1:]
			f.y = f.Margin
			continue
		}
		f.Break()
	}
}

func firstCell(row []string) string {
	for _, c := range row {
		if c = clean(c); c != "" {
			return string([]rune(c)[:min(40, len([]rune(c)))])
		}
	}
	return ""
}

// Finish writes footers and page numbers.
func (f *Flow) Finish() {
	font := f.scene.Font(f.scene.Theme.Faint)
	for i, p := range f.pages {
		y := f.Size.H - f.Margin
		p.TextAt(Point{f.Margin, y}, f.Footer, font, Left)
		p.TextAt(Point{f.Size.W - f.Margin, y}, fmt.Sprintf("%d / %d", i+1, len(f.pages)), font, Right)
	}
}
