package report

import (
	"steelyard/evaluation"
	"steelyard/internal/draw"
)

// efforts draws a plot for each working joint, two in a row where there is
// room: lifting, lowering, the band, the line of all there is.
func (c canvas) efforts(e *evaluation.Evaluation, box draw.Rect) {
	all := effortsOf(e, c.u)
	if len(all) == 0 {
		return
	}
	th, text := c.scene.Theme, c.scene.Text
	h := c.Legend(draw.Point{X: box.X, Y: box.Y}, box.W, effortKeys(all, th, text)) + 0.5*text
	box.Y, box.H = box.Y+h, box.H-h
	columns := 1
	if len(all) > 1 && box.W > roomy*text {
		columns = 2
	}
	rows := (len(all) + columns - 1) / columns
	gap := text
	top := effortTop(all)
	for i := range all {
		part := draw.Rect{W: (box.W - float64(columns-1)*gap) / float64(columns), H: (box.H - float64(rows-1)*gap) / float64(rows)}
		part.X = box.X + float64(i%columns)*(part.W+gap)
		part.Y = box.Y + float64(i/columns)*(part.H+gap)
		c.effort(&all[i], top, part)
	}
}

// effort draws one joint.
func (c canvas) effort(f *effort, top float64, box draw.Rect) {
	th, text := c.scene.Theme, c.scene.Text
	x := draw.Span("Travel", c.u.length.Symbol(), f.travel)
	x.Zones = thirds(x.Hi)
	y := draw.Axis{Quantity: f.title(), Lo: 0, Hi: top}
	pl := c.Plot(box, x, y)
	keys := effortKeys([]effort{*f}, th, text)
	pl.Band(f.travel, f.low, f.high, th.Lift, false)
	pl.Band(f.travel, f.from, f.beyond, th.Warn, true)
	pl.Curve([]float64{x.Lo, x.Hi}, []float64{1, 1}, keys[0].Pen)
	if f.lower != nil {
		pl.Curve(f.travel, f.lower, keys[2].Pen)
	}
	if f.paced != nil {
		pl.Curve(f.travel, f.paced, keys[3].Pen)
	}
	pl.Curve(f.travel, f.lift, keys[1].Pen)
}

// effortKeys are the pens of the effort curves: all there is, lifting,
// lowering, at the tempo; then the bands.
func effortKeys(all []effort, th draw.Theme, text float64) []draw.Key {
	dash := func(on, off float64) []float64 { return []float64{on * text, off * text} }
	keys := []draw.Key{
		{Label: "all there is", Pen: draw.Pen{Width: 0.16 * text, Color: th.Warn}},
		{Label: "lifting", Pen: draw.Pen{Width: 0.22 * text, Color: th.Lift}},
		{Label: "lowering", Pen: draw.Pen{Width: 0.2 * text, Color: th.Lower, Dash: dash(0.8, 0.5)}},
	}
	untested, paced := false, false
	for i := range all {
		untested = untested || all[i].untested
		paced = paced || all[i].paced != nil
	}
	if paced {
		keys = append(keys, draw.Key{Label: "lifting at the tempo", Pen: draw.Pen{Width: 0.18 * text, Color: th.Hold, Dash: dash(0.05, 0.4)}})
	}
	keys = append(keys, draw.Key{Label: "two people in three", Fill: draw.Alpha(th.Lift, 0.2)})
	if untested {
		keys = append(keys, draw.Key{Label: "strength beyond what was tested", Fill: th.Warn, Hatched: true})
	}
	return keys
}

// effortShare returns the height of the effort plots over their width.
func effortShare(all []effort, wide bool) float64 {
	rows := len(all)
	switch {
	case !wide:
		return 0.12 + 0.5*float64(rows)
	case rows > 1:
		return 0.08 + 0.31*float64((rows+1)/2)
	}
	return 0.5
}

// effortWords describes the plots for who cannot see them.
func effortWords(all []effort) string {
	s := "Moment asked over moment available along the travel, 1 being all there is."
	for i := range all {
		s += " " + all[i].title() + "."
	}
	return s + " The table below has the numbers."
}
