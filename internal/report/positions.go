package report

import (
	"steelyard/evaluation"
	"steelyard/internal/draw"
	"steelyard/internal/sketch"
)

// positions draws the machine three times at one scale, side by side or, in a
// tall box, one under another: each with its moment arms and the force along
// the path.
func (c canvas) positions(e *evaluation.Evaluation, places [3]*facts, box draw.Rect) {
	gap := 1.5 * c.scene.Text
	b := machineBounds(e.Model.Machine(), places[:])
	for i, f := range places {
		part := draw.Rect{X: box.X + float64(i)*(box.W+gap)/3, Y: box.Y, W: (box.W - 2*gap) / 3, H: box.H}
		if box.H > box.W {
			part = draw.Rect{X: box.X, Y: box.Y + float64(i)*(box.H+gap)/3, W: box.W, H: (box.H - 2*gap) / 3}
		}
		c.position(e, f, b, part)
	}
}

// position draws one place under its name, with the lengths that explain the
// force below.
func (c canvas) position(e *evaluation.Evaluation, f *facts, b bounds, box draw.Rect) {
	th, text := c.scene.Theme, c.scene.Text
	bold := draw.Font{Size: text, Bold: true, Color: th.Ink}
	c.TextAt(draw.Point{X: box.X, Y: box.Y + text}, f.Name+": "+c.u.Force(f.Force), bold, draw.Left)
	arms := armsOf(e.Model.Machine(), f)
	lines := notes(e, c.u, f, arms)
	view := draw.Rect{X: box.X, Y: box.Y + 1.4*text, W: box.W, H: box.H - 1.3*text*float64(len(lines)) - 2*text}
	c.Stroke(view.Path(), draw.Pen{Width: 0.05 * text, Color: mix(th.Faint, th.Paper, 0.6)})

	s := c.stage(e, view)
	s.names.Font = draw.Font{Size: text, Bold: true, Color: th.Arm}
	room := view.Inset(1.6 * text)
	room.H -= 1.2 * text
	s.frame = draw.Fit(b.lo, b.hi, room)
	c.Clip(view.Path(), func() {
		s.machine(f)
		s.push(f, 0.2*min(view.W, view.H))
		for _, a := range arms {
			s.drawArm(a, f)
		}
		c.Labels(&s.names)
	})
	for i, line := range lines {
		font := c.scene.Font(th.Ink)
		if i >= len(lines)-len(arms) {
			font.Color = th.Arm
		}
		c.TextAt(draw.Point{X: box.X, Y: view.Bottom() + float64(i+1)*1.3*text}, line, font, draw.Left)
	}
}

// notes says where it is on the travel, how the load moves there, and the arms.
func notes(e *evaluation.Evaluation, u units, f *facts, arms []sketch.Arm) []string {
	out := []string{u.Length(f.Travel) + " into the travel"}
	if e.Curve.Load != nil {
		out = append(out, "lift ratio "+decimal(e.Sweep.LiftRatio[f.Row], 2))
	}
	for _, a := range arms {
		out = append(out, armName(a)+" "+u.Short(a.Length()))
	}
	return out
}
