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

// Write writes the evaluation in the format that ext names: .pdf, .svg or .png.
// Warnings are sentences a person should see, such as a name the
// embedded font cannot set.
func Write(w io.Writer, ext string, e *evaluation.Evaluation, o Options) (warnings []string, err error) {
	switch strings.ToLower(ext) {
	case ".pdf":
		return draw.WritePDF(w, Scene(e, o))
	case ".svg":
		return draw.WriteSVG(w, Scene(e, o))
	case ".png":
		return draw.WritePNG(w, Scene(e, o), dpi)
	}
	return nil, fmt.Errorf("a report cannot be written as %q; end the file's name in .pdf, .svg or .png", ext)
}

// Scene returns the report on A4 pages.
func Scene(e *evaluation.Evaluation, o Options) *draw.Scene {
	th := draw.Light
	if o.Dark {
		th = draw.Dark
	}
	s := draw.New(e.Name, th)
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

// first is what one needs to know: words and pictures.
func (p *pages) first() {
	p.Title(p.e.Name)
	p.Text(settingsLine(p.e))
	for _, w := range p.e.Words(p.u) {
		p.Text(w)
	}
	places, err := threePlaces(p.e)
	if err != nil {
		p.Text(err.Error())
		return
	}
	for _, f := range figures(p.e, places) {
		p.Figure(f.height, f.title, f.desc, func(pg *draw.Page, box draw.Rect) {
			f.draw(canvas{pg, p.scene, p.u}, box)
		})
	}
}

func (p *pages) numbers() {
	p.Heading("Along the travel")
	p.Table(travelTable(p.e, p.u))
	p.Heading("Readings")
	p.Table(readingsTable(p.e, p.u))
}

func (p *pages) sources() {
	if t := settingsTable(p.e); len(t.Rows) > 0 {
		p.Heading("Settings")
		p.Table(t)
	}
	p.Heading("Measurements")
	for _, s := range again(p.e, p.u) {
		p.Text(s)
	}
	if t := measurementsTable(p.e, p.u); len(t.Rows) > 0 {
		p.Table(t)
	}
	if s := takenAsExact(p.e, p.u); s != "" {
		p.Text(s)
	}
}

func (p *pages) care() {
	p.Heading("Take care")
	p.Caution(strings.Join(cautions(p.e), "\n"))
	p.Text(assumes(p.e))
}

func footer(o Options) string {
	s := "Steelyard · a model, not a measurement of safety"
	if !o.Date.IsZero() {
		s += " · " + o.Date.Format("2 January 2006")
	}
	return s
}

// figure is a picture of the report with what a reader who cannot see it is
// told.
type figure struct {
	title, desc string
	height      float64 // mm on an A4 page
	draw        func(c canvas, box draw.Rect)
}

func figures(e *evaluation.Evaluation, places [3]*facts) []figure {
	out := []figure{
		{"Side view with the load ribbon", "desc", 105, func(c canvas, box draw.Rect) { c.sideView(e, places, box) }},
		{"Start, middle, end", "desc", 80, func(c canvas, box draw.Rect) { c.positions(e, places, box) }},
		{"Force over travel", "desc", 75, func(c canvas, box draw.Rect) { c.curve(e, box) }},
	}
	if e.Stroke != nil {
		out = append(out, figure{"Force over time", "desc", 65, func(c canvas, box draw.Rect) { c.stroke(e.Stroke, box) }})
	}
	return out
}
