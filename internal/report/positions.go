package report

import (
	"steelyard/evaluation"
	"steelyard/internal/draw"
)

// positions draws the machine three times side by side at one scale, each with
// its moment arms and the force along the path.
func (c canvas) positions(e *evaluation.Evaluation, places [3]*facts, box draw.Rect) {
	gap := 1.5 * c.scene.Text
	w := (box.W - 2*gap) / 3
	b := machineBounds(e.Model.Machine(), places[:])
	for i, f := range places {
		c.position(e, f, b, draw.Rect{X: box.X + float64(i)*(w+gap), Y: box.Y, W: w, H: box.H})
	}
}

// position draws one place under its name, with the lengths that explain the
// force below.
func (c canvas) position(e *evaluation.Evaluation, f *facts, b bounds, box draw.Rect) {
	th, text := c.scene.Theme, c.scene.Text
	bold := draw.Font{Size: text, Bold: true, Color: th.Ink}
	c.TextAt(draw.Point{X: box.X, Y: box.Y + text}, f.Name+": "+c.u.Force(f.Force), bold, draw.Left)
	arms := armsOf(e.Model.Machine(), f)
	lines := notes(c.u, f, arms)
	foot := float64(len(lines)) * 1.3 * text
	s := c.stage(e, box)
	view := draw.Rect{X: box.X, Y: box.Y + 1.4*text, W: box.W, H: box.H - foot - 2*text}
	s.frame = draw.Fit(b.lo, b.hi, view.Inset(1.6*text))
	c.Stroke(view.Path(), draw.Pen{Width: 0.05 * text, Color: draw.Alpha(th.Faint, 0.6)})
	c.Clip(view.Path(), func() {
		s.machine(f)
		for _, a := range arms {
			s.drawArm(a)
		}
		s.push(f, 0.2*min(view.W, view.H))
	})
	font := c.scene.Font(th.Ink)
	for i, line := range lines {
		c.TextAt(draw.Point{X: box.X, Y: view.Bottom() + float64(i+1)*1.3*text}, line, font, draw.Left)
	}
}

// notes lists where it is on the travel and the arms there.
func notes(u units, f *facts, arms []arm) []string {
	out := []string{u.Length(f.Travel) + " into the travel"}
	for _, a := range arms {
		out = append(out, a.name+" "+u.Short(a.length()))
	}
	return out
}
