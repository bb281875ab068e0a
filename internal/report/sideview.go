package report

import (
	"fmt"
	"math"

	"steelyard/evaluation"
	"steelyard/internal/draw"
	"steelyard/mechanism"
	"steelyard/planar"
)

func linkID(i int) mechanism.LinkID { return mechanism.LinkID(i) }

// ribbonShare is the greatest width of the ribbon over the lesser side of its
// picture.
const ribbonShare = 0.15

// sideView draws the machine where it is hardest, faintly at both ends of the
// travel, with the load ribbon along the contact's path.
func (c canvas) sideView(e *evaluation.Evaluation, places [3]*facts, box draw.Rect) {
	s := c.stage(e, box)
	keys := 2.2 * s.text
	box.H -= keys
	width := ribbonShare * min(box.W, box.H)
	r := ribbonOf(e)
	s.frame = fitRibbon(machineBounds(s.m, places[:]), r, width, box.Inset(2.2*s.text))
	rib := r.place(s.frame, width)

	s.standing()
	rib.draw(c.Page, s.text, s.th)
	for _, i := range []int{0, 2} {
		s.ghost(places[i])
	}
	for _, o := range rib.outlines() {
		s.names.AvoidArea(o)
	}
	main := places[1]
	s.machine(main)
	s.push(main, width)
	s.nameForces(rib, places)
	s.nameThirds(rib)
	s.nameGaps(rib)
	s.nameParts(main)
	c.Labels(&s.names)
	c.ribbonKeys(rib, s, draw.Rect{X: box.X, Y: box.Bottom(), W: box.W, H: keys})
}

// fitRibbon returns the frame that holds the machine and the ribbon, whose
// width is fixed on paper: found in a few rounds, each with the last scale.
func fitRibbon(machine bounds, r ribbon, width float64, box draw.Rect) draw.Frame {
	fr := draw.Fit(machine.lo, machine.hi, box)
	for range 4 {
		b, p := machine, r.place(fr, width)
		for k := range p.base {
			b.add(p.base[k], 0)
			for _, f := range []float64{p.low[k], p.high[k]} {
				if !math.IsNaN(f) {
					b.add(fr.Back(p.edge(k, f)), 0)
				}
			}
		}
		fr = draw.Fit(b.lo, b.hi, box)
	}
	return fr
}

// nameForces sets the force at the three places beside the ribbon.
func (s *stage) nameForces(p placed, places [3]*facts) {
	for _, f := range places {
		s.names.Add(p.edge(f.K, f.Force), f.Name+" "+s.u.Force(f.Force))
	}
}

func (s *stage) nameThirds(p placed) {
	last := len(p.base) - 1
	ends := []int{0, p.third[0], p.third[1], last}
	for i, name := range []string{"lengthened", "middle", "shortened"} {
		k := (ends[i] + ends[i+1]) / 2
		if !math.IsNaN(p.high[k]) {
			s.names.Add(p.edge(k, p.high[k]), name)
		}
	}
}

func (s *stage) nameGaps(p placed) {
	for _, g := range gapsOf(&s.e.Curve) {
		s.names.Add(p.edge((g.first+g.last)/2, 0), g.words())
	}
}

// nameParts names what the eye asks about: the axis, the contact, the loads,
// cams, springs and the links.
func (s *stage) nameParts(f *facts) {
	if axis, ok := s.axis(f, s.m.Contact.Link); ok {
		s.names.Add(s.frame.At(axis), "axis of rotation")
	}
	s.names.Add(s.frame.At(f.At), s.m.Contact.Name)
	for i := range s.m.Weights {
		if w := &s.m.Weights[i]; w.Mass > 0 {
			s.names.Add(s.frame.At(f.State.Pose(w.Link).Point(w.At)), w.Name+" "+s.u.Mass(w.Mass))
		}
	}
	for i := range lineCount(s.m) {
		if el := elementOf(s.m, i); i >= len(s.m.Ropes) {
			piece := f.State.Spans(i)[0]
			s.names.Add(s.frame.At(piece.From.Lerp(piece.To, 0.5)), el.Name)
		}
		for k, st := range routeOf(s.m, i) {
			if _, isRound := round(st.Outline); st.Outline != nil && !isRound {
				axis, _ := f.State.Station(i, k)
				s.names.Add(s.frame.At(axis), st.Name+" cam")
			}
		}
	}
	for i, l := range s.m.Links {
		if ps := attached(s.m, linkID(i+1)); len(ps) > 1 && !isStack(s.m, linkID(i+1)) {
			piece := tree(ps)[0]
			pose := f.State.Pose(linkID(i + 1))
			s.names.Add(s.frame.At(pose.Point(piece[0].Lerp(piece[1], 0.5))), l.Name)
		}
	}
}

// axis returns the point about which the link turns, if it lies in the
// picture.
func (s *stage) axis(f *facts, l mechanism.LinkID) (planar.Vec, bool) {
	c, ok := f.State.Center(l)
	if !ok {
		return c, false
	}
	at := s.frame.At(c)
	b := s.names.Bounds
	return c, at.X > b.X && at.X < b.Right() && at.Y > b.Y && at.Y < b.Bottom()
}

// ribbonKeys draws the scales: of force across the ribbon, of length along the
// ground.
func (c canvas) ribbonKeys(p placed, s *stage, box draw.Rect) {
	f := c.scene.Font(s.th.Ink)
	y := box.Y + 0.6*box.H
	x := box.X
	if step := draw.Ticks(0, s.u.force.FromSI(p.full), 3); len(step) > 1 && p.perNewton > 0 {
		w := s.u.force.ToSI(step[1].Value) * p.perNewton
		c.Fill(draw.Rect{X: x, Y: y - 0.4*s.text, W: w, H: 0.8 * s.text}.Path(), mix(s.th.Load, s.th.Paper, 0.34))
		c.bar(draw.Point{X: x, Y: y}, w, s.text, s.th.Load)
		label := "ribbon width " + step[1].Label + " " + s.u.force.Symbol()
		if s.e.Band != nil {
			label += ", hatched where uncertain"
		}
		c.TextAt(draw.Point{X: x + w + 0.6*s.text, Y: y + 0.36*s.text}, label, f, draw.Left)
	}
	length, name := s.scaleBar()
	w := s.frame.Len(length)
	right := box.Right()
	label := name + " to scale"
	c.TextAt(draw.Point{X: right, Y: y + 0.36*s.text}, label, f, draw.Right)
	c.bar(draw.Point{X: right - f.Measure(label) - 0.6*s.text - w, Y: y}, w, s.text, s.th.Faint)
}

// scaleBar returns a round length that is a tenth to a quarter of the view.
func (s *stage) scaleBar() (metres float64, name string) {
	wide := s.names.Bounds.W / s.frame.Scale / 6
	if s.u.length == 0 {
		return 0, ""
	}
	ticks := draw.Ticks(0, s.u.length.FromSI(2*wide), 3)
	return s.u.length.ToSI(ticks[1].Value), fmt.Sprintf("%s %s", ticks[1].Label, s.u.length.Symbol())
}

// bar draws a measuring bar from at to the right.
func (c canvas) bar(at draw.Point, w, text float64, col draw.Color) {
	pen := draw.Pen{Width: 0.12 * text, Color: col}
	end := draw.Point{X: at.X + w, Y: at.Y}
	tick := draw.Point{Y: 0.4 * text}
	c.Stroke(draw.Polyline(at, end), pen)
	c.Stroke(draw.Polyline(at.Sub(tick), at.Add(tick)), pen)
	c.Stroke(draw.Polyline(end.Sub(tick), end.Add(tick)), pen)
}
