package draw

import (
	"math"

	"steelyard/planar"
)

// Point is a place on a page, or the step between two places: mm, x to the
// right, y down.
type Point struct{ X, Y float64 }

// Add returns p + q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns p - q: the step from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Scale returns k·p.
func (p Point) Scale(k float64) Point { return Point{k * p.X, k * p.Y} }

// Norm returns the length of p, mm.
func (p Point) Norm() float64 { return math.Hypot(p.X, p.Y) }

// Lerp returns the place at share t of the way from p to q.
func (p Point) Lerp(q Point, t float64) Point { return p.Add(q.Sub(p).Scale(t)) }

// Angle returns the direction of p as it looks: counter-clockwise positive
// from the right, in (-π, π].
func (p Point) Angle() planar.Angle { return planar.Angle(math.Atan2(-p.Y, p.X)) }

// Towards returns the step of length r (mm) in direction a, as it looks.
func Towards(r float64, a planar.Angle) Point {
	s, c := math.Sincos(float64(a))
	return Point{r * c, -r * s}
}

func (p Point) unit() Point {
	l := p.Norm()
	if l == 0 {
		return Point{}
	}
	return p.Scale(1 / l)
}

// left returns p turned a quarter counter-clockwise, as it looks.
func (p Point) left() Point { return Point{p.Y, -p.X} }

// reach is how far from the page's corner anything may lie, mm: a kilometre,
// where a thousandth of a mm still prints.
const reach = 1e6

// drawable reports whether p is a number within reach.
func (p Point) drawable() bool { return math.Abs(p.X) <= reach && math.Abs(p.Y) <= reach }

// Rect is an upright rectangle of a page, in mm, from its top left corner.
type Rect struct{ X, Y, W, H float64 }

// Right returns x of the right edge, mm.
func (r Rect) Right() float64 { return r.X + r.W }

// Bottom returns y of the lower edge, mm.
func (r Rect) Bottom() float64 { return r.Y + r.H }

// Centre returns the middle.
func (r Rect) Centre() Point { return Point{r.X + r.W/2, r.Y + r.H/2} }

// Inset returns r with each edge moved inwards by d (mm).
func (r Rect) Inset(d float64) Rect { return Rect{r.X + d, r.Y + d, r.W - 2*d, r.H - 2*d} }

// overlap returns the area common to r and q, in mm².
func (r Rect) overlap(q Rect) float64 {
	w := min(r.Right(), q.Right()) - max(r.X, q.X)
	h := min(r.Bottom(), q.Bottom()) - max(r.Y, q.Y)
	return max(0, w) * max(0, h)
}

type verb uint8

const (
	moveTo verb = iota
	lineTo
	cubicTo
	closePath
)

// segment ends at p[0] for move and line, at p[2] for a cubic.
type segment struct {
	verb verb
	p    [3]Point
}

// Path is an outline built step by step. The zero value is empty. Line, Quad
// and Cubic on an empty path start it. Filled paths use the nonzero rule.
type Path struct {
	segs []segment
	at   Point // pen position
}

// Move lifts the pen and sets it down at to: a new outline begins.
func (p *Path) Move(to Point) *Path { return p.add(segment{moveTo, [3]Point{to}}, to) }

// Line adds a straight edge.
func (p *Path) Line(to Point) *Path {
	if len(p.segs) == 0 {
		return p.Move(to)
	}
	return p.add(segment{lineTo, [3]Point{to}}, to)
}

// Cubic adds a Bézier curve with control points a and b.
func (p *Path) Cubic(a, b, to Point) *Path {
	if len(p.segs) == 0 {
		p.Move(a)
	}
	return p.add(segment{cubicTo, [3]Point{a, b, to}}, to)
}

// Quad adds a quadratic Bézier curve, raised to the cubic it equals.
func (p *Path) Quad(c, to Point) *Path {
	if len(p.segs) == 0 {
		p.Move(c)
	}
	return p.Cubic(p.at.Lerp(c, 2.0/3), to.Lerp(c, 2.0/3), to)
}

// Arc adds the arc of radius r (mm) about c from angle a to angle b, joined by
// a line to what is there already. It runs counter-clockwise when b > a, and
// may run past a full turn.
//
// Each quarter is one cubic, off the circle by less than 3e-4 r.
// Source: Goldapp, M., "Approximation of circular arcs by cubic polynomials",
// Computer Aided Geometric Design 8 (1991) 227-238.
func (p *Path) Arc(c Point, r float64, a, b planar.Angle) *Path {
	turn := float64(b - a)
	n := int(min(max(1, math.Ceil(math.Abs(turn)/(math.Pi/2)-1e-9)), 400))
	step := turn / float64(n)
	k := 4.0 / 3 * math.Tan(step/4) * r

	p.Line(c.Add(Towards(r, a)))
	for i := range n {
		from := a + planar.Angle(float64(i)*step)
		to := a + planar.Angle(float64(i+1)*step)
		start, end := c.Add(Towards(r, from)), c.Add(Towards(r, to))
		p.Cubic(start.Add(Towards(k, from).left()), end.Sub(Towards(k, to).left()), end)
	}
	return p
}

// Close joins the pen to the start of the current outline.
func (p *Path) Close() *Path {
	if n := len(p.segs); n == 0 || p.segs[n-1].verb == closePath {
		return p
	}
	start := p.at
	for i := len(p.segs) - 1; i >= 0; i-- {
		if p.segs[i].verb == moveTo {
			start = p.segs[i].p[0]
			break
		}
	}
	return p.add(segment{verb: closePath}, start)
}

// Append adds all outlines of q.
func (p *Path) Append(q Path) *Path {
	p.segs = append(p.segs, q.segs...)
	p.at = q.at
	return p
}

func (p *Path) add(s segment, at Point) *Path {
	p.segs = append(p.segs, s)
	p.at = at
	return p
}

func (p *Path) drawable() bool {
	for _, s := range p.segs {
		if !s.p[0].drawable() || !s.p[1].drawable() || !s.p[2].drawable() {
			return false
		}
	}
	return true
}

// Polyline returns the open path through pts.
func Polyline(pts ...Point) Path {
	var p Path
	for _, q := range pts {
		p.Line(q)
	}
	return p
}

// Polygon returns the closed path through pts.
func Polygon(pts ...Point) Path {
	p := Polyline(pts...)
	p.Close()
	return p
}

// Circle returns the circle of radius r (mm) about c.
func Circle(c Point, r float64) Path {
	var p Path
	p.Arc(c, r, 0, 2*math.Pi).Close()
	return p
}

// Path returns the outline of r.
func (r Rect) Path() Path {
	return Polygon(Point{r.X, r.Y}, Point{r.Right(), r.Y}, Point{r.Right(), r.Bottom()}, Point{r.X, r.Bottom()})
}
