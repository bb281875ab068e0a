package draw

import "math"

// outline returns the area a pen covers along lines (pixels, k pixels per mm)
// as convex pieces of one sense of rotation, so that their coverages add up
// and never cancel.
func outline(lines []outlinePts, pen Pen, k float64) []outlinePts {
	if pen.Dash != nil {
		lines = dashed(lines, pen.Dash, k)
	}
	s := stroker{h: pen.Width * k / 2, pen: pen}
	for _, l := range lines {
		s.line(l)
	}
	return s.out
}

// stroker collects the pieces of strokes of half width h (pixels).
type stroker struct {
	h   float64
	pen Pen
	out []outlinePts
}

func (s *stroker) line(l outlinePts) {
	pts := distinct(l.pts)
	if len(pts) == 1 {
		s.dot(pts[0])
		return
	}
	if l.closed && pts[0] == pts[len(pts)-1] {
		pts = pts[:len(pts)-1]
	}
	n := len(pts)
	last := n - 1 // pieces
	if l.closed {
		last = n
	}
	for i := range last {
		a, b := pts[i], pts[(i+1)%n]
		d := b.Sub(a).unit().left().Scale(s.h)
		s.piece(a.Add(d), b.Add(d), b.Sub(d), a.Sub(d))
		if i+1 < last || l.closed {
			s.join(a, b, pts[(i+2)%n])
		}
	}
	if !l.closed {
		s.end(pts[1], pts[0])
		s.end(pts[n-2], pts[n-1])
	}
}

// join fills the wedge left open at b between the pieces a-b and b-c.
func (s *stroker) join(a, b, c Point) {
	d1, d2 := b.Sub(a).unit(), c.Sub(b).unit()
	n1, n2 := d1.left().Scale(s.h), d2.left().Scale(s.h)
	if d1.X*d2.Y-d1.Y*d2.X < 0 { // turns left as it looks: the right side opens
		n1, n2 = n1.Scale(-1), n2.Scale(-1)
	}
	switch s.pen.Join {
	case RoundJoin:
		s.fan(b, n1, n2)
	case MiterJoin:
		half := n1.Add(n2).Scale(0.5)
		if r := half.Norm() / s.h; r*miterLimit >= 1 {
			s.piece(b, b.Add(n1), b.Add(half.Scale(1/(r*r))), b.Add(n2))
			return
		}
		fallthrough
	case BevelJoin:
		s.piece(b, b.Add(n1), b.Add(n2))
	}
}

// end caps the line that arrives at b from a.
func (s *stroker) end(a, b Point) {
	d := b.Sub(a).unit().Scale(s.h)
	n := d.left()
	switch s.pen.Cap {
	case RoundCap:
		s.fan(b, n, d)
		s.fan(b, d, n.Scale(-1))
	case SquareCap:
		s.piece(b.Add(n), b.Add(n).Add(d), b.Sub(n).Add(d), b.Sub(n))
	}
}

func (s *stroker) dot(c Point) {
	r := Point{s.h, 0}
	switch s.pen.Cap {
	case RoundCap:
		for range 4 {
			s.fan(c, r, r.left())
			r = r.left()
		}
	case SquareCap:
		s.piece(Point{c.X - s.h, c.Y - s.h}, Point{c.X + s.h, c.Y - s.h}, Point{c.X + s.h, c.Y + s.h}, Point{c.X - s.h, c.Y + s.h})
	}
}

// chordGap is how far a chord may lie from the round it stands for, pixels.
const chordGap = 1.0 / 32

// fan fills the sector about c between the arms u and v, the shorter way.
func (s *stroker) fan(c, u, v Point) {
	turn := math.Atan2(u.X*v.Y-u.Y*v.X, u.X*v.X+u.Y*v.Y)
	step := 2 * math.Acos(1-chordGap/max(s.h, chordGap))
	n := int(min(max(1, math.Ceil(math.Abs(turn)/step)), 256))

	pts := []Point{c}
	for i := range n + 1 {
		sin, cos := math.Sincos(turn * float64(i) / float64(n))
		pts = append(pts, c.Add(Point{u.X*cos - u.Y*sin, u.X*sin + u.Y*cos}))
	}
	s.piece(pts...)
}

// piece adds a polygon, turned to the common sense.
func (s *stroker) piece(pts ...Point) {
	area := 0.0
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		area += p.X*q.Y - p.Y*q.X
	}
	if area < 0 {
		for i, j := 0, len(pts)-1; i < j; i, j = i+1, j-1 {
			pts[i], pts[j] = pts[j], pts[i]
		}
	}
	s.out = append(s.out, outlinePts{pts: pts, closed: true})
}

func distinct(pts []Point) []Point {
	out := pts[:1:1]
	for _, p := range pts[1:] {
		if p != out[len(out)-1] {
			out = append(out, p)
		}
	}
	return out
}

// maxDashes bounds the pieces of one outline; a finer pattern looks solid.
const maxDashes = 5000

// dashed cuts outlines (pixels) into the inked pieces of a pattern (mm).
func dashed(lines []outlinePts, dash []float64, k float64) []outlinePts {
	var out []outlinePts
	sum := 0.0
	for _, d := range dash {
		sum += d * k
	}
	for _, l := range lines {
		pts := l.pts
		if l.closed {
			pts = append(pts[:len(pts):len(pts)], pts[0])
		}
		if length(pts) > maxDashes*sum {
			out = append(out, l)
			continue
		}
		out = append(out, cut(pts, dash, k)...)
	}
	return out
}

func cut(pts []Point, dash []float64, k float64) []outlinePts {
	var out []outlinePts
	i, left := 0, dash[0]*k // entry of the pattern, what is left of it
	piece := []Point{pts[0]}
	end := func() {
		if i%2 == 0 {
			out = append(out, outlinePts{pts: piece})
		}
	}
	for j := 1; j < len(pts); j++ {
		a, b := pts[j-1], pts[j]
		l := b.Sub(a).Norm()
		for l > left {
			a = a.Lerp(b, left/l)
			l -= left
			piece = append(piece, a)
			end()
			i = (i + 1) % len(dash)
			left = dash[i] * k
			piece = []Point{a}
		}
		left -= l
		piece = append(piece, b)
	}
	end()
	return out
}

func length(pts []Point) float64 {
	sum := 0.0
	for i := 1; i < len(pts); i++ {
		sum += pts[i].Sub(pts[i-1]).Norm()
	}
	return sum
}
