package report

import (
	"steelyard/evaluation"
	"steelyard/internal/draw"
)

// signSide is the side of a sign, mm; writers may be shown it at any size.
const signSide = 24

// Sign returns the load ribbon alone, the machine's sign in lists: a square in
// which thick means heavy and the ring is the start. It keeps the directions of
// the real path and is scaled to fill the square.
func Sign(e *evaluation.Evaluation, o Options) *draw.Scene {
	th := o.theme()
	s := draw.New(e.Name, th)
	s.Desc = e.Words(o.units())[0]
	s.Lang = "en"
	s.Text = signSide / 8.0
	page := s.AddPage(draw.Size{W: signSide, H: signSide})
	r := ribbonOf(e)
	for k := range r.force { // too small a picture to tell how sure it is
		r.low[k], r.high[k] = r.force[k], r.force[k]
	}
	width := 0.34 * signSide
	fr := fitRibbon(nothing(), r, width, page.Bounds().Inset(2))
	r.place(fr, width).draw(page, s.Text, th)
	return s
}
