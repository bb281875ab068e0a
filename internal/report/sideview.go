package report

import (
	"math"
	"strconv"

	"steelyard/evaluation"
	"steelyard/internal/draw"
	"steelyard/mechanism"
)

func linkID(i int) mechanism.LinkID { return mechanism.LinkID(i) }

// ribbonShare is the greatest width of the ribbon over the lesser side of its
// picture.
const ribbonShare = 0.17

// roomy is the width of a picture, in ems of its labels, from which labels may
// be long.
const roomy = 40

// sideView draws the machine where it is hardest, faintly at both ends of the
// travel, with the load ribbon along the contact's path.
func (c canvas) sideView(e *evaluation.Evaluation, places [3]*facts, box draw.Rect) {
	foot := 1.8 * c.scene.Text
	if box.W < roomy*c.scene.Text || e.Person != nil {
		foot *= 2
	}
	box.H -= foot
	s := c.stage(e, box)
	width := ribbonShare * min(box.W, box.H)
	r := ribbonOf(e)
	all := machineBounds(s.m, places[:])
	body, seen := sidePerson(e, places[1])
	if seen {
		body.grow(&all)
	}
	room := r.roomIn(box, s.text)
	if r.can != nil {
		width *= outlineRoom
		room = room.Inset(s.text) // for the name of the sticking point
	}
	s.frame = fitRibbon(all, r, width, room)
	rib := r.place(s.frame, width)

	if seen {
		s.person(&body)
	}
	s.standing()
	rib.draw(c.Page, s.text, s.th)
	s.ghost(places[0])
	s.ghost(places[2])
	s.machine(places[1])
	s.push(places[1], width)

	for _, o := range rib.outlines() {
		s.names.AvoidArea(o)
	}
	s.nameForces(rib, places)
	s.nameOutline(rib)
	s.nameThirds(rib)
	s.nameStretches(rib)
	s.nameParts(places[1])
	c.Labels(&s.names)
	c.scales(rib, s, draw.Rect{X: box.X, Y: box.Bottom(), W: box.W, H: foot})
}

// roomIn returns the part of the box that machine and ribbon may fill: labels
// need the rest, most of it on the side on which the ribbon stands.
func (r ribbon) roomIn(box draw.Rect, text float64) draw.Rect {
	room := box.Inset(2 * text)
	labels := 4 * text
	if box.W >= roomy*text {
		labels = 12 * text
	}
	side := 0.0
	for _, n := range r.side {
		side += n.X / float64(len(r.side))
	}
	room.X += labels * max(0, -side)
	room.W -= labels * math.Abs(side)
	return room
}

// fitRibbon returns the frame that holds the machine and the ribbon, whose
// width is fixed on paper: found in a few rounds, each with the last scale.
func fitRibbon(machine bounds, r ribbon, width float64, box draw.Rect) draw.Frame {
	fr := draw.Frame{Scale: 100}
	for range 5 {
		b := machine
		r.place(fr, width).grow(&b)
		fr = draw.Fit(b.lo, b.hi, box)
	}
	return fr
}

// grow adds all the ribbon may cover to b.
func (p placed) grow(b *bounds) {
	for k := range p.base {
		b.add(p.base[k], 0)
		for _, f := range []float64{p.low[k], p.high[k], p.drawnCan(k)} {
			if !math.IsNaN(f) {
				b.add(p.frame.Back(p.edge(k, f)), 0)
			}
		}
	}
}

// scales draws the two measures of the picture: of force across the ribbon,
// and of length.
func (c canvas) scales(p placed, s *stage, box draw.Rect) {
	f := c.scene.Font(s.th.Ink)
	y := box.Y + 1.1*s.text
	base := y + 0.36*s.text
	if step := roundBelow(s.u.force.FromSI(p.full) / 2); step > 0 {
		w := s.u.force.ToSI(step) * p.perNewton
		c.Fill(draw.Rect{X: box.X, Y: y - 0.4*s.text, W: w, H: 0.8 * s.text}.Path(), ribbonFill(s.th))
		c.bar(draw.Point{X: box.X, Y: y}, w, s.text, s.th.Load)
		label := short(step) + " " + s.u.force.Symbol() + " of ribbon"
		if s.e.Band != nil {
			label += ", hatched where uncertain"
		}
		c.TextAt(draw.Point{X: box.X + w + 0.6*s.text, Y: base}, label, f, draw.Left)
	}
	y = box.Bottom() - 0.7*s.text // the same line, or the next
	base = y + 0.36*s.text
	if p.can != nil {
		from := draw.Point{X: box.X, Y: y}
		to := draw.Point{X: box.X + 2*s.text, Y: y}
		c.Stroke(draw.Polyline(from, to), draw.Pen{Width: 0.24 * s.text, Color: s.th.Person})
		c.TextAt(draw.Point{X: to.X + 0.6*s.text, Y: base}, "what "+s.e.Person.Name()+" can produce", f, draw.Left)
	}
	step := roundBelow(s.u.length.FromSI(box.W / s.frame.Scale / 6))
	w := s.frame.Len(s.u.length.ToSI(step))
	label := short(step) + " " + s.u.length.Symbol()
	c.TextAt(draw.Point{X: box.Right(), Y: base}, label, f, draw.Right)
	c.bar(draw.Point{X: box.Right() - f.Measure(label) - 0.6*s.text - w, Y: y}, w, s.text, s.th.Faint)
}

// roundBelow returns the greatest of 1, 2 and 5 times a power of ten that is
// not above x; 0 if x is not above 0.
func roundBelow(x float64) float64 {
	if !(x > 0) {
		return 0
	}
	ten := math.Pow(10, math.Floor(math.Log10(x)))
	for _, k := range []float64{5, 2} {
		if k*ten <= x {
			return k * ten
		}
	}
	return ten
}

// short writes a round number without needless decimals.
func short(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }

// bar draws a measuring bar from at to the right.
func (c canvas) bar(at draw.Point, w, text float64, col draw.Color) {
	pen := draw.Pen{Width: 0.12 * text, Color: col}
	end := draw.Point{X: at.X + w, Y: at.Y}
	tick := draw.Point{Y: 0.4 * text}
	c.Stroke(draw.Polyline(at, end), pen)
	c.Stroke(draw.Polyline(at.Sub(tick), at.Add(tick)), pen)
	c.Stroke(draw.Polyline(end.Sub(tick), end.Add(tick)), pen)
}
