package report

import (
	"steelyard/evaluation"
	"steelyard/internal/draw"
)

// Picture returns the report's first figure alone, the machine with its load
// ribbon, at the size of half a desk's screen: for a message or a page.
func Picture(e *evaluation.Evaluation, o Options) *draw.Scene {
	u := o.units()
	f := figures(e, u)[0]
	s := draw.New(e.Name+": "+f.title, o.theme())
	s.Desc = f.desc
	s.Lang = "en"
	s.Text = 9.5 * draw.Pt
	page := s.AddPage(draw.Size{W: wideFigure, H: f.wide * wideFigure})
	f.draw(canvas{page, s, u}, page.Bounds().Inset(0.5))
	return s
}
