package report

import (
	"math"
	"strconv"

	"steelyard/evaluation"
	"steelyard/internal/draw"
	"steelyard/mechanism"
	"steelyard/planar"
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
	if box.W < roomy*c.scene.Text {
		foot *= 2
	}
	box.H -= foot
	s := c.stage(e, box)
	width := ribbonShare * min(box.W, box.H)
	r := ribbonOf(e)
	s.frame = fitRibbon(machineBounds(s.m, places[:]), r, width, box.Inset(2*s.text))
	rib := r.place(s.frame, width)

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
	s.nameThirds(rib)
	s.nameStretches(rib)
	s.nameParts(places[1])
	c.Labels(&s.names)
	c.scales(rib, s, draw.Rect{X: box.X, Y: box.Bottom(), W: box.W, H: foot})
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
		for _, f := range []float64{p.low[k], p.high[k]} {
			if !math.IsNaN(f) {
				b.add(p.frame.Back(p.edge(k, f)), 0)
			}
		}
	}
}

// nameForces sets the force at the ends and where it is hardest beside the
// ribbon, with its range where there is room.
func (s *stage) nameForces(p placed, places [3]*facts) {
	for _, f := range places {
		if f.Name == middle {
			continue
		}
		text := f.Name + " " + s.u.Force(f.Force)
		if s.e.Band != nil && s.names.Bounds.W > roomy*s.text {
			in := s.e.Band.Between[f.K]
			text += " (" + between(in, s.u.force) + ")"
		}
		if math.Abs(f.Force) > p.full {
			text += ", far beyond the ribbon"
		}
		s.names.Add(p.edge(f.K, f.Force), text)
	}
}

// nameThirds writes the names of the thirds into the ribbon, all in one size,
// or beside it where they do not fit.
func (s *stage) nameThirds(p placed) {
	size := min(s.text, p.nameSize(s.text))
	for i, name := range thirdNames {
		k := p.middleOf(i)
		if math.IsNaN(p.force[k]) {
			continue
		}
		if size < 0.7*s.text {
			s.names.Add(p.edge(k, p.high[k]), name)
			continue
		}
		along := upright(p.tangent(k))
		at := p.edge(k, p.force[k]/2).Sub(draw.Towards(0.36*size, along+quarter))
		s.TurnedText(at, along, name, draw.Font{Size: size, Color: s.th.Ink}, draw.Centre)
	}
}

// nameSize returns the size of text, mm, at which the name of each third fits
// in the ribbon there.
func (p placed) nameSize(text float64) float64 {
	size := math.Inf(1)
	ends := []int{0, p.third[0], p.third[1], len(p.base) - 1}
	for i, name := range thirdNames {
		k := p.middleOf(i)
		if math.IsNaN(p.force[k]) {
			continue
		}
		long := p.edge(ends[i], p.force[k]/2).Sub(p.edge(ends[i+1], p.force[k]/2)).Norm()
		wide := math.Abs(p.force[k]) * p.perNewton
		em := draw.Font{Size: 1}.Measure(name)
		size = min(size, (long-0.5*text)/em, wide/1.4)
	}
	return size
}

// middleOf returns the position in the middle of third i.
func (r ribbon) middleOf(i int) int {
	ends := []int{0, r.third[0], r.third[1], len(r.base) - 1}
	return (ends[i] + ends[i+1]) / 2
}

var thirdNames = []string{"lengthened", "middle", "shortened"}

// upright turns a direction of writing so that it is not upside down.
func upright(a planar.Angle) planar.Angle {
	a = a.Normalized()
	if math.Abs(float64(a)) > float64(quarter)+1e-9 {
		a += math.Pi
	}
	return a
}

// nameStretches names where there is no force and where it helps.
func (s *stage) nameStretches(p placed) {
	for _, g := range gapsOf(&s.e.Curve) {
		s.names.Add(p.edge((g.first+g.last)/2, 0), g.words())
	}
	first := -1
	for k := range len(p.force) + 1 {
		helps := k < len(p.force) && p.force[k] < 0
		if helps && first < 0 {
			first = k
		}
		if !helps && first >= 0 {
			mid := (first + k - 1) / 2
			s.names.Add(p.edge(mid, p.force[mid]), "the machine pushes on here")
			first = -1
		}
	}
}

// nameParts names what the eye asks about: the axis, the contact, the loads,
// cams, springs and the links.
func (s *stage) nameParts(f *facts) {
	s.names.Add(s.frame.At(f.At), s.m.Contact.Name)
	for i := range s.m.Weights {
		if w := &s.m.Weights[i]; w.Mass > 0 {
			s.names.Add(s.frame.At(f.State.Pose(w.Link).Point(w.At)), w.Name+" "+s.u.Mass(w.Mass))
		}
	}
	if axis, ok := fixedAxis(s.m, s.m.Contact.Link); ok {
		s.names.Add(s.frame.At(axis), "axis of rotation")
	}
	s.nameLines(f)
	for i, l := range s.m.Links {
		if isStack(s.m, linkID(i+1)) || l.Name == s.m.Contact.Name {
			continue
		}
		if pieces := skeleton(s.m, linkID(i+1)); len(pieces) > 0 {
			at := f.State.Pose(linkID(i + 1)).Point(pieces[0][0].Lerp(pieces[0][1], 0.5))
			s.names.Add(s.frame.At(at), l.Name)
		}
	}
	for i := range s.m.Chains {
		c := &s.m.Chains[i]
		top := f.State.Pose(c.Link).Point(c.At)
		s.names.Add(s.frame.At(planar.Vec{X: top.X, Y: (top.Y + c.Floor) / 2}), c.Name)
	}
}

// nameLines names springs and their like, and cams.
func (s *stage) nameLines(f *facts) {
	for i := range lineCount(s.m) {
		if i >= len(s.m.Ropes) {
			piece := f.State.Spans(i)[0]
			s.names.Add(s.frame.At(piece.From.Lerp(piece.To, 0.5)), elementOf(s.m, i).Name)
		}
		for k, st := range routeOf(s.m, i) {
			if _, isRound := round(st.Outline); st.Outline != nil && !isRound {
				axis, _ := f.State.Station(i, k)
				s.names.Add(s.frame.At(axis), st.Name+" cam")
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
