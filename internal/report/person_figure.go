package report

import (
	"strings"

	"steelyard/evaluation"
	"steelyard/internal/draw"
)

// personPlace is the machine with the person on it at one place.
type personPlace struct {
	*facts
	body figureOf
}

// personPlaces returns three places at which the person can be: the first, the
// sticking point (or the middle, if that is at an end), the last.
func personPlaces(e *evaluation.Evaluation) ([]personPlace, error) {
	m := e.Person
	var rows []int // of the curve, with somebody there
	for k, row := range e.Rows {
		if m.Rest.Gap[row] == "" {
			rows = append(rows, k)
		}
	}
	if len(rows) == 0 {
		return nil, nil
	}
	first, last := rows[0], rows[len(rows)-1]
	names, ks := [3]string{"Start", middle, "End"}, [3]int{first, rows[len(rows)/2], last}
	if first > 0 {
		names[0] = "First reached"
	}
	if last < len(e.Rows)-1 {
		names[2] = "Last reached"
	}
	if stick := stickingAt(e); stick >= 0 {
		share := func(k int) float64 { return (e.Curve.Travel[stick] - e.Curve.Travel[k]) / e.Curve.Length() }
		switch {
		case share(first) < atTheEnds:
			ks[0], names[0] = stick, "Sticking point"
		case -share(last) < atTheEnds:
			ks[2], names[2] = stick, "Sticking point"
		default:
			ks[1], names[1] = stick, "Sticking point"
		}
	}
	var out []personPlace
	for i, k := range ks {
		f, err := factsAt(e, names[i], k)
		if err != nil {
			return nil, err
		}
		out = append(out, personPlace{f, personAt(e, f.Row)})
	}
	return out, nil
}

// stickingAt returns the position of the curve at which the person's effort is
// greatest, or -1.
func stickingAt(e *evaluation.Evaluation) int {
	for k, row := range e.Rows {
		if row == e.Person.Rest.Lifting.Sticking {
			return k
		}
	}
	return -1
}

// persons draws the person on the machine at three places, side by side or, in
// a tall box, one under another.
func (c canvas) persons(e *evaluation.Evaluation, places []personPlace, box draw.Rect) {
	gap := 1.5 * c.scene.Text
	b := personBounds(places)
	n := float64(len(places))
	for i := range places {
		part := draw.Rect{X: box.X + float64(i)*(box.W+gap)/n, Y: box.Y, W: (box.W - (n-1)*gap) / n, H: box.H}
		if box.H > box.W {
			part = draw.Rect{X: box.X, Y: box.Y + float64(i)*(box.H+gap)/n, W: box.W, H: (box.H - (n-1)*gap) / n}
		}
		c.personView(e, &places[i], b, part)
	}
}

// personBounds holds the working part of the person at all places, and the
// machine's contact.
func personBounds(places []personPlace) bounds {
	b := nothing()
	for i := range places {
		places[i].body.growWorking(&b)
		b.add(places[i].At, 0)
	}
	return b
}

// personView draws one place under its name, with the numbers of each joint
// below.
func (c canvas) personView(e *evaluation.Evaluation, p *personPlace, b bounds, box draw.Rect) {
	th, text := c.scene.Theme, c.scene.Text
	bold := draw.Font{Size: text, Bold: true, Color: th.Ink}
	c.TextAt(draw.Point{X: box.X, Y: box.Y + text}, p.Name, bold, draw.Left)
	lines := append([]string{c.u.Length(p.Travel) + " into the travel"}, p.body.lines(c.u)...)
	view := draw.Rect{X: box.X, Y: box.Y + 1.4*text, W: box.W, H: box.H - c.scene.Font(th.Ink).Leading()*float64(mostLines(e)) - 2*text}
	c.Stroke(view.Path(), draw.Pen{Width: 0.05 * text, Color: mix(th.Faint, th.Paper, 0.6)})

	s := c.stage(e, view)
	s.names.Font = draw.Font{Size: labelSize * text, Color: th.Ink}
	s.frame = draw.Fit(b.lo, b.hi, view.Inset(framing*text))
	c.Clip(view.Path(), func() {
		s.machineBehind(p.facts)
		s.person(&p.body)
		s.contact(p.facts)
		s.drawJoints(&p.body)
		c.Labels(&s.names)
	})
	c.Paragraph(draw.Point{X: box.X, Y: view.Bottom() + 0.5*text}, box.W, strings.Join(lines, "\n"), c.scene.Font(th.Ink), draw.Left)
}

// Room about the body for labels and the arrow of the force, and the size of
// labels, in ems.
const (
	framing   = 2.8
	labelSize = 0.9
)

// machineBehind draws the machine faintly, as what the person is on.
func (s *stage) machineBehind(f *facts) {
	s.standing()
	s.ghost(f)
	pen := s.pen(0.12, mix(s.th.Rope, s.th.Paper, 0.5))
	for i := range s.m.Lines() {
		s.Stroke(draw.Polyline(s.frame.Points(f.State.Course(i))...), pen)
	}
}

// lines tells each joint's effort and moment, and what leans out of the picture.
func (f *figureOf) lines(u units) []string {
	var out []string
	unit := u.moment()
	for _, j := range f.joints() {
		if !j.known {
			continue
		}
		effort := decimal(j.greatest, 2)
		if j.untested {
			effort += untestedSign
		}
		out = append(out, j.name+" "+effort+": "+decimal(unit.FromSI(j.asked), 0)+" "+unit.Symbol()+" asked")
	}
	if s := f.slants(); s != "" {
		out = append(out, s)
	}
	return out
}

// mostLines is how many lines stand below a view.
func mostLines(e *evaluation.Evaluation) int {
	names := map[string]bool{}
	for k := range e.Person.Rest.Lifting.Joints {
		names[e.Person.Rest.Lifting.Joints[k].Joint.Body()] = true
	}
	return 1 + len(names) + slantLines
}

// slantLines is the room for what leans out of the picture.
const slantLines = 2

// personWords describes the figure for who cannot see it.
func personWords(places []personPlace, u units) string {
	var all []string
	for i := range places {
		p := &places[i]
		var joints []string
		for _, j := range p.body.joints() {
			joints = append(joints, strings.TrimSpace(j.name+" "+j.angle)+", effort "+decimal(j.greatest, 2))
		}
		all = append(all, p.Name+" at "+u.Length(p.Travel)+": "+strings.Join(joints, "; ")+".")
	}
	return strings.Join(all, " ")
}

// personShare returns the height of the views over the figure's width for so
// many of them in a row: as the body needs, with room for labels and lines.
func personShare(places []personPlace, inRow float64) float64 {
	b := personBounds(places)
	size := b.hi.Sub(b.lo)
	shape := max(0.5, min(1.4, size.Y/max(size.X, 1e-6)))
	return 0.85*shape/inRow + 0.19 + 0.12/inRow
}

// personFigures are the pictures of the person on the machine.
func personFigures(e *evaluation.Evaluation, u units) []figure {
	var out []figure
	if places, err := personPlaces(e); err == nil && len(places) > 0 {
		out = append(out, figure{title: "With " + e.Person.Name() + " on it, at three places", desc: personWords(places, u),
			page: personShare(places, 3), wide: 1.1 * personShare(places, 3), slim: 3 * personShare(places, 1),
			draw: func(c canvas, box draw.Rect) { c.persons(e, places, box) }, person: true})
	}
	if all := effortsOf(e, u); len(all) > 0 {
		out = append(out, figure{title: "Effort: what is asked over what there is", desc: effortWords(all), page: effortShare(all, true),
			wide: 1.1 * effortShare(all, true), slim: effortShare(all, false),
			draw: func(c canvas, box draw.Rect) { c.efforts(e, box) }, person: true})
	}
	return out
}
