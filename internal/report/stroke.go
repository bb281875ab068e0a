package report

import (
	"steelyard/internal/draw"
	"steelyard/mechanism"
)

// stroke draws force over time of one repetition, and dotted what the same
// places take at rest; where the load flies or a rope goes slack is named.
func (c canvas) stroke(st *mechanism.Stroke, box draw.Rect) {
	th, text := c.scene.Theme, c.scene.Text
	force, static := every(st.Force, c.u.force), every(st.Static, c.u.force)
	x := draw.Span("Time", "s", st.Time)
	x.Zones = tempoZones(st)
	y := draw.Span("Force along the path", c.u.force.Symbol(), force, static).FromZero().Round()
	keys := []draw.Key{
		{Label: "at this tempo", Pen: draw.Pen{Width: 0.22 * text, Color: th.Lift}},
		{Label: "same place at rest", Pen: draw.Pen{Width: 0.16 * text, Color: th.Hold, Dash: []float64{0.05 * text, 0.4 * text}}},
	}
	h := c.Legend(draw.Point{X: box.X, Y: box.Y}, box.W, keys) + 0.5*text
	pl := c.Plot(draw.Rect{X: box.X, Y: box.Y + h, W: box.W, H: box.H - h}, x, y)
	pl.Curve(st.Time, static, keys[1].Pen)
	pl.Curve(st.Time, force, keys[0].Pen)

	c.markStroke(pl, st, force)
}

// markStroke marks the peak and the dip with their numbers, and where the load
// flies or a rope goes slack.
func (c canvas) markStroke(pl draw.Plot, st *mechanism.Stroke, force []float64) {
	th, text := c.scene.Theme, c.scene.Text
	l := draw.Labels{Bounds: pl.Area, Font: c.scene.Font(th.Ink)}
	for _, k := range []int{st.Peak, st.Dip} {
		at := pl.At(st.Time[k], force[k])
		c.Fill(draw.Circle(at, 0.28*text), th.Lift)
		l.Add(at, c.u.Force(st.Force[k]))
	}
	for i := range st.Time {
		word := trouble(st, i)
		if word == "" {
			continue
		}
		at := pl.At(st.Time[i], force[i])
		c.Fill(draw.Circle(at, 0.2*text), th.Warn)
		if i == 0 || trouble(st, i-1) != word {
			l.Add(at, word)
		}
	}
	c.Labels(&l)
}

// trouble names what goes wrong in row i; nothing mostly.
func trouble(st *mechanism.Stroke, i int) string {
	switch {
	case st.Leaves[i]:
		return "load flies"
	case st.Slack[i] != "":
		return st.Slack[i] + " slack"
	}
	return ""
}

// tempoZones names the parts of the repetition.
func tempoZones(st *mechanism.Stroke) []draw.Zone {
	name := map[mechanism.Sense]string{mechanism.Lift: "lifting", mechanism.Hold: "pause", mechanism.Lower: "lowering"}
	var out []draw.Zone
	for i, t := range st.Time {
		if i > 0 && st.Sense[i] == st.Sense[i-1] {
			out[len(out)-1].Hi = t
			continue
		}
		if n := len(out); n > 0 {
			out[n-1].Hi = t
		}
		out = append(out, draw.Zone{Lo: t, Hi: t, Name: name[st.Sense[i]]})
	}
	return out
}
