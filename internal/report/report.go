package report

import (
	"fmt"
	"io"
	"strings"

	"steelyard/evaluation"
	"steelyard/internal/draw"
)

// dpi of a PNG report: 1240 pixels across A4, sharp on a phone.
const dpi = 150

// Write writes the evaluation in the format that ext names: .html, .pdf, .svg or
// .png. Warnings are sentences a person should see, such as a name the embedded
// font cannot set.
func Write(w io.Writer, ext string, e *evaluation.Evaluation, o Options) (warnings []string, err error) {
	switch strings.ToLower(ext) {
	case ".html", ".htm":
		return nil, WriteHTML(w, e, o)
	case ".pdf":
		return draw.WritePDF(w, Scene(e, o))
	case ".svg":
		return draw.WriteSVG(w, Scene(e, o))
	case ".png":
		return draw.WritePNG(w, Scene(e, o), dpi)
	}
	return nil, fmt.Errorf("a report cannot be written as %q; end the file's name in .html, .pdf, .svg or .png", ext)
}

// Scene returns the report on A4 pages.
func Scene(e *evaluation.Evaluation, o Options) *draw.Scene {
	s := draw.New(e.Name, o.theme())
	s.Lang, s.Date = "en", o.Date
	s.Desc = strings.Join(e.Words(o.units()), " ")
	p := pages{e: e, u: o.units(), Flow: s.Flow(draw.A4, 14, footer(o)), scene: s}
	p.first()
	p.numbers()
	p.sources()
	p.care()
	p.Finish()
	return s
}

// pages sets the report as a flow.
type pages struct {
	*draw.Flow
	e     *evaluation.Evaluation
	u     units
	scene *draw.Scene
}

// first is what one needs to know: words and pictures. The side view and the
// curve share what the words leave of the page.
func (p *pages) first() {
	p.Title(p.e.Name)
	p.Text(settingsLine(p.e, p.u))
	words := p.e.Words(p.u)
	p.lead(words[0])
	for _, w := range words[1:] {
		p.Text(w)
	}
	all := figures(p.e, p.u)
	gaps := 4 * captionHeight * p.scene.Text // captions, the space between and the foot
	room := p.Size.H - p.Margin - p.y() - gaps - curveShare*p.Width()
	all[0].page = min(max(room/p.Width(), 0.42), 0.62)
	var own, persons []figure
	for _, f := range all {
		if f.person {
			persons = append(persons, f)
		} else {
			own = append(own, f)
		}
	}
	for i, f := range own {
		if i == onFirstPage && p.e.Person != nil {
			p.person(persons)
		}
		p.captioned(f)
	}
}

// onFirstPage is how many figures go with the machine's words.
const onFirstPage = 2

// y returns how far down the page the flow has come, mm.
func (p *pages) y() (y float64) {
	p.Figure(0, "", "", func(_ *draw.Page, box draw.Rect) { y = box.Y })
	return y
}

func (p *pages) captioned(f figure) {
	above := captionHeight * p.scene.Text
	p.Figure(f.page*p.Width()+above, f.title, f.desc, func(pg *draw.Page, box draw.Rect) {
		font := draw.Font{Size: 1.1 * p.scene.Text, Bold: true, Color: p.scene.Theme.Ink}
		pg.TextAt(draw.Point{X: box.X, Y: box.Y + p.scene.Text}, f.title, font, draw.Left)
		f.draw(canvas{pg, p.scene, p.u}, draw.Rect{X: box.X, Y: box.Y + above, W: box.W, H: box.H - above})
	})
}

// captionHeight is the room for a figure's title, in ems of labels.
const captionHeight = 2

// lead sets the one sentence to remember.
func (p *pages) lead(s string) {
	p.set(s, draw.Font{Size: 1.35 * p.scene.Text, Bold: true, Color: p.scene.Theme.Ink})
}

// set sets a paragraph in a font of its own, whole on one page.
func (p *pages) set(s string, f draw.Font) {
	h := float64(len(f.Wrap(s, p.Width()))) * f.Leading()
	p.Figure(h, "", "", func(pg *draw.Page, box draw.Rect) {
		pg.Paragraph(draw.Point{X: box.X, Y: box.Y}, box.W, s, f, draw.Left)
	})
}

func (p *pages) numbers() {
	p.table("Along the travel", travelTable(p.e, p.u))
	p.table("Readings", readingsTable(p.e, p.u))
}

func (p *pages) sources() {
	if t := settingsTable(p.e, p.u); len(t.Rows) > 0 {
		p.table("Settings", t)
	}
	p.Heading("Measurements")
	for _, s := range again(p.e, p.u) {
		p.Text(s)
	}
	if t := measurementsTable(p.e, p.u); len(t.Rows) > 0 {
		p.Table(t)
	}
	if s := takenAsExact(p.e, p.u); s != "" {
		p.small(s)
	}
}

// keep starts a new page unless so many lines of labels still fit.
func (p *pages) keep(lines float64) {
	if p.Size.H-p.Margin-p.y() < 1.8*lines*p.scene.Text {
		p.Break()
	}
}

// fewest is how many rows of a table stand together at the foot of a page.
const fewest = 12

// table sets a table under its heading, a long one perhaps over two pages.
func (p *pages) table(heading string, t draw.Table) {
	p.keep(float64(min(len(t.Rows), fewest) + 4))
	p.Heading(heading)
	p.Table(t)
}

func (p *pages) care() {
	p.keep(16)
	p.Heading("Take care")
	p.Caution("• " + strings.Join(cautions(p.e), "\n• "))
	p.small(assumes(p.e))
}

// small sets what few will read, in one piece.
func (p *pages) small(s string) {
	p.set(s, p.scene.Font(p.scene.Theme.Faint))
}

func footer(o Options) string {
	s := "Steelyard · a model, not a measurement of safety"
	if !o.Date.IsZero() {
		s += " · " + o.Date.Format("2 January 2006")
	}
	return s
}
