package report

import (
	"strings"

	"steelyard/evaluation"
	"steelyard/internal/draw"
	"steelyard/profile"
)

// curve draws force over travel: the thirds named and shaded, each phase with a
// dash of its own, the band hatched, gaps named.
func (c canvas) curve(e *evaluation.Evaluation, box draw.Rect) {
	th, text := c.scene.Theme, c.scene.Text
	s := seriesOf(e, c.u)
	x := draw.Span("Travel of "+the(e.Model.Machine().Contact.Name), c.u.length.Symbol(), s.travel)
	x.Zones = thirds(x.Hi)
	y := forceAxis(e, c.u, s)

	keys := phaseKeys(s, th, text)
	h := c.Legend(draw.Point{X: box.X, Y: box.Y}, box.W, keys) + 0.5*text
	pl := c.Plot(draw.Rect{X: box.X, Y: box.Y + h, W: box.W, H: box.H - h}, x, y)
	if s.banded {
		pl.Band(s.travel, s.low, s.high, th.Lift, true)
	}
	if s.rubs {
		pl.Curve(s.travel, s.lower, keys[1].Pen)
		pl.Curve(s.travel, s.hold, keys[2].Pen)
	}
	pl.Curve(s.travel, s.lift, keys[0].Pen)
	c.markGaps(pl, e)
	c.markPoints(pl, e)
}

// the puts an article before a name that has none.
func the(name string) string {
	for _, first := range []string{"the ", "both ", "a "} {
		if strings.HasPrefix(name, first) {
			return name
		}
	}
	return "the " + name
}

func thirds(length float64) []draw.Zone {
	return []draw.Zone{
		{Lo: 0, Hi: length / 3, Name: thirdNames[0]},
		{Lo: length / 3, Hi: 2 * length / 3, Name: thirdNames[1]},
		{Lo: 2 * length / 3, Hi: length, Name: thirdNames[2]},
	}
}

// phaseKeys are the pens of the phases with their names; lifting first.
func phaseKeys(s series, th draw.Theme, text float64) []draw.Key {
	keys := []draw.Key{{Label: "lifting", Pen: draw.Pen{Width: 0.22 * text, Color: th.Lift}}}
	if s.rubs {
		keys = append(keys,
			draw.Key{Label: "lowering", Pen: draw.Pen{Width: 0.2 * text, Color: th.Lower, Dash: []float64{0.8 * text, 0.5 * text}}},
			draw.Key{Label: "holding, no friction", Pen: draw.Pen{Width: 0.16 * text, Color: th.Hold, Dash: []float64{0.05 * text, 0.4 * text}}})
	} else {
		keys[0].Label = "lifting, holding and lowering (no friction stated)"
	}
	if s.banded {
		keys = append(keys, draw.Key{Label: "lifting may lie here", Fill: th.Lift, Hatched: true})
	}
	return keys
}

// markGaps names the stretches without a force.
func (c canvas) markGaps(pl draw.Plot, e *evaluation.Evaluation) {
	th, text := c.scene.Theme, c.scene.Text
	for _, g := range gapsOf(&e.Curve) {
		from, to := c.u.length.FromSI(e.Curve.Travel[g.first]), c.u.length.FromSI(e.Curve.Travel[g.last])
		a, b := pl.At(from, 0), pl.At(to, 0)
		zone := draw.Rect{X: a.X, Y: pl.Area.Y, W: max(b.X-a.X, 0.2*text), H: pl.Area.H}
		c.Fill(zone.Path(), draw.Alpha(th.Warn, 0.1))
		f := c.scene.Font(th.Warn)
		c.TurnedText(draw.Point{X: (a.X+b.X)/2 + 0.35*text, Y: pl.Area.Bottom() - 0.5*text}, quarter, g.words(), f, draw.Left)
	}
}

// markPoints marks the peak and the least force with their numbers.
func (c canvas) markPoints(pl draw.Plot, e *evaluation.Evaluation) {
	th, text := c.scene.Theme, c.scene.Text
	l := draw.Labels{Bounds: pl.Area, Font: c.scene.Font(th.Ink)}
	r := &e.Readings[profile.Lifting]
	var line []draw.Point
	for k := range e.Curve.Travel {
		if e.Curve.Has(k) {
			line = append(line, pl.At(c.u.length.FromSI(e.Curve.Travel[k]), c.u.force.FromSI(e.Curve.Lift[k])))
		}
	}
	l.AvoidLine(draw.Polyline(line...))
	points := []profile.Point{r.Peak, r.Least}
	if c.u.Force(r.Peak.Force) == c.u.Force(r.Least.Force) {
		points = points[:1]
	}
	for _, p := range points {
		label := c.u.Force(p.Force)
		at := pl.At(c.u.length.FromSI(p.Travel), c.u.force.FromSI(p.Force))
		if at.Y < pl.Area.Y {
			at.Y, label = pl.Area.Y, label+", off the picture"
		}
		c.Fill(draw.Circle(at, 0.28*text), th.Lift)
		l.Add(at, label)
	}
	c.Labels(&l)
}
