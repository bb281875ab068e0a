package draw

import (
	"math"

	"steelyard/planar"
)

// Symbols grow with the scene's label size, so that a small picture keeps its
// proportions. Shapes of joints and ground follow textbook kinematic diagrams.

// thin is the pen of dimensions and auxiliary lines.
func (s *Scene) thin(c Color) Pen { return Pen{Width: 0.07 * s.Text, Color: c} }

// Arrow draws a line from a to b with a head at b, sized by the pen.
func (p *Page) Arrow(a, b Point, pen Pen) {
	l := b.Sub(a).Norm()
	if l == 0 {
		return
	}
	head := min(p.headLength(pen), l)
	p.Stroke(Polyline(a, b.Lerp(a, 0.8*head/l)), pen)
	p.head(b, b.Sub(a).Angle(), head, pen.Color)
}

// ArcArrow draws an arc about c from angle from to angle to with a head at its
// end: a moment or a turn. It runs counter-clockwise when to > from.
func (p *Page) ArcArrow(c Point, r float64, from, to planar.Angle, pen Pen) {
	if from == to || !(r > 0) {
		return
	}
	head := min(p.headLength(pen), r*math.Abs(float64(to-from)))
	way := planar.Angle(math.Copysign(1, float64(to-from)))
	back := way * planar.Angle(0.8*head/r)
	var arc Path
	arc.Arc(c, r, from, to-back)
	p.Stroke(arc, pen)
	p.head(c.Add(Towards(r, to)), to+way*math.Pi/2-back/2, head, pen.Color)
}

func (p *Page) headLength(pen Pen) float64 { return max(4*pen.Width, 0.6*p.scene.Text) }

// head fills an arrow head with its tip at tip.
func (p *Page) head(tip Point, dir planar.Angle, length float64, c Color) {
	d := Towards(length, dir)
	base, half := tip.Sub(d), d.left().Scale(0.35)
	p.Fill(Polygon(tip, base.Add(half), base.Add(d.Scale(0.2)), base.Sub(half)), c)
}

// Dimension draws the distance between a and b on a line offset mm to the left
// of a→b (negative: to the right), with its label above that line.
func (p *Page) Dimension(a, b Point, offset float64, label string) {
	d := b.Sub(a)
	if d.Norm() == 0 {
		return
	}
	s := p.scene
	pen := s.thin(s.Theme.Faint)
	n := d.unit().left().Scale(math.Copysign(1, offset))
	past := 0.4 * s.Text
	for _, q := range []Point{a, b} {
		p.Stroke(Polyline(q.Add(n.Scale(past)), q.Add(n.Scale(math.Abs(offset)+past))), pen)
	}
	a, b = a.Add(n.Scale(math.Abs(offset))), b.Add(n.Scale(math.Abs(offset)))
	mid := a.Lerp(b, 0.5)
	p.Arrow(mid, a, pen)
	p.Arrow(mid, b, pen)

	along := d.Angle()
	if d.X < 0 || d.X == 0 && d.Y > 0 { // keep the label upright, or reading upwards
		along += math.Pi
	}
	p.TurnedText(mid.Add(Towards(0.3*s.Text, along+math.Pi/2)), along, label, s.Font(s.Theme.Ink), Centre)
}

// GroundLine draws the surface a→b of the fixed link, hatched on its right.
func (p *Page) GroundLine(a, b Point) {
	s := p.scene
	d := b.Sub(a)
	depth := d.unit().left().Scale(-0.8 * s.Text)
	area := Polygon(a, b, b.Add(depth), a.Add(depth))
	p.Hatch(area, d.Angle()+math.Pi/4, 0.6*s.Text, s.thin(s.Theme.Ground))
	p.Stroke(Polyline(a, b), Pen{Width: 0.14 * s.Text, Color: s.Theme.Ground})
}

// Pin draws a revolute joint at c.
func (p *Page) Pin(c Point) {
	s := p.scene
	ring := Circle(c, 0.28*s.Text)
	p.Fill(ring, s.Theme.Paper)
	p.Stroke(ring, Pen{Width: 0.12 * s.Text, Color: s.Theme.Ink})
}

// GroundPin draws a revolute joint to the fixed link at c, a stand on hatched
// ground below it, and returns the area it takes.
func (p *Page) GroundPin(c Point) Rect {
	s := p.scene
	w, h := 0.8*s.Text, 1.2*s.Text
	stand := Polygon(c, Point{c.X + w, c.Y + h}, Point{c.X - w, c.Y + h})
	p.Fill(stand, s.Theme.Paper)
	p.Stroke(stand, Pen{Width: 0.12 * s.Text, Color: s.Theme.Ground})
	p.GroundLine(Point{c.X - 1.5*w, c.Y + h}, Point{c.X + 1.5*w, c.Y + h})
	p.Pin(c)
	return Rect{c.X - 1.5*w, c.Y, 3 * w, h + w}
}

// Sheave draws a grooved wheel of radius r (mm) on a pin at c.
func (p *Page) Sheave(c Point, r float64) {
	s := p.scene
	rim := Circle(c, r)
	p.Fill(rim, s.Theme.Paper)
	p.Fill(rim, Alpha(s.Theme.Link, 0.15))
	p.Stroke(rim, Pen{Width: 0.12 * s.Text, Color: s.Theme.Link})
	p.Pin(c)
}

// Rope draws a taut rope as a line, a slack one dashed.
func (p *Page) Rope(path Path, slack bool) {
	s := p.scene
	pen := Pen{Width: 0.22 * s.Text, Color: s.Theme.Rope}
	if slack {
		pen.Dash = []float64{0.6 * s.Text, 0.6 * s.Text}
	}
	p.Stroke(path, pen)
}

// Spring draws a zigzag of n turns and full width w (mm) from a to b, with a
// tenth of its length straight at either end.
func (p *Page) Spring(a, b Point, n int, w float64) {
	d := b.Sub(a)
	if d.Norm() == 0 || n < 1 || n > 1000 {
		return
	}
	side := d.unit().left().Scale(w / 2)
	zig := Polyline(a, a.Lerp(b, 0.1))
	for i := range 2 * n {
		t := 0.1 + 0.8*(float64(i)+0.5)/float64(2*n)
		zig.Line(a.Lerp(b, t).Add(side))
		side = side.Scale(-1)
	}
	zig.Line(a.Lerp(b, 0.9)).Line(b)
	p.Stroke(zig, Pen{Width: 0.14 * p.scene.Text, Color: p.scene.Theme.Link})
}

// Capsule returns the outline of a body with round ends of radius ra about a
// and rb about b (mm), joined by their outer tangents: a link or a limb. If
// one end holds the other, it is that end's circle.
func Capsule(a, b Point, ra, rb float64) Path {
	d := b.Sub(a)
	l := d.Norm()
	if l <= math.Abs(ra-rb) {
		if ra >= rb {
			return Circle(a, ra)
		}
		return Circle(b, rb)
	}
	lean := planar.Angle(math.Acos((ra - rb) / l)) // tangent points, from the line a→b
	dir := d.Angle()
	var p Path
	p.Arc(a, ra, dir+lean, dir+2*math.Pi-lean)
	p.Arc(b, rb, dir-lean, dir+lean)
	p.Close()
	return p
}

// Member draws a capsule as a light body with a firm edge.
func (p *Page) Member(body Path, c Color) {
	p.Fill(body, p.scene.Theme.Paper)
	p.Fill(body, Alpha(c, 0.18))
	p.Stroke(body, Pen{Width: 0.12 * p.scene.Text, Color: c})
}
