package draw

import "math"

// Ribbon is a band along a path whose width tells a quantity, for instance a
// force along the contact's path. Left and Right are how far it reaches to
// either side at each point of Path, seen along it, in mm; Spread is the
// uncertainty of that reach, ± mm, or nil. A side that is nil stays empty.
// Slices are as long as Path.
type Ribbon struct {
	Path        []Point
	Left, Right []float64
	Spread      []float64
}

// Ribbon fills r: solid up to what is certain, hatched from there to the
// furthest it may reach, with a line along what is expected.
func (p *Page) Ribbon(r Ribbon, c Color) {
	if len(r.Path) < 2 {
		return
	}
	for _, side := range []struct {
		reach []float64
		sign  float64
	}{{r.Left, 1}, {r.Right, -1}} {
		if len(side.reach) == len(r.Path) {
			p.ribbonSide(r, side.reach, side.sign, c)
		}
	}
	p.Stroke(Polyline(r.Path...), Pen{Width: 0.1 * p.scene.Text, Color: c})
}

func (p *Page) ribbonSide(r Ribbon, reach []float64, sign float64, c Color) {
	normals := sideways(r.Path)
	edge := func(k float64) []Point {
		pts := make([]Point, len(r.Path))
		for i, q := range r.Path {
			w := reach[i]
			if len(r.Spread) == len(r.Path) {
				w += k * r.Spread[i]
			}
			pts[i] = q.Add(normals[i].Scale(sign * max(0, w)))
		}
		return pts
	}
	sure := edge(-1)
	p.Fill(between(r.Path, sure), Alpha(c, 0.35))
	if r.Spread != nil {
		p.uncertain(between(sure, edge(1)), c)
	}
	p.Stroke(Polyline(edge(0)...), Pen{Width: 0.12 * p.scene.Text, Color: c})
}

// uncertain hatches an area within a faint edge, the sign for what a ± leaves
// open in every picture.
func (p *Page) uncertain(area Path, c Color) {
	p.Hatch(area, math.Pi/4, 0.45*p.scene.Text, p.scene.thin(c))
	p.Stroke(area, p.scene.thin(Alpha(c, 0.5)))
}

// Outline returns the closed edge of r without its spread.
func (r Ribbon) Outline() Path {
	normals := sideways(r.Path)
	edge := func(reach []float64, sign float64) []Point {
		pts := make([]Point, len(r.Path))
		for i, q := range r.Path {
			pts[i] = q
			if len(reach) == len(r.Path) {
				pts[i] = q.Add(normals[i].Scale(sign * max(0, reach[i])))
			}
		}
		return pts
	}
	return between(edge(r.Left, 1), edge(r.Right, -1))
}

// between returns the area between two edges that run side by side.
func between(a, b []Point) Path {
	p := Polyline(a...)
	for i := len(b) - 1; i >= 0; i-- {
		p.Line(b[i])
	}
	p.Close()
	return p
}

// sideways returns the unit normal on the left of the path at each point,
// halfway between its neighbours' where the path bends. Repeated points take
// the direction of the path about them.
func sideways(pts []Point) []Point {
	out := make([]Point, len(pts))
	for i := range pts {
		before, after := step(pts, i, -1), step(pts, i, 1)
		d := after.unit().Sub(before.unit())
		if d.Norm() < 1e-9 { // a reversal: follow what comes next
			d = after
		}
		out[i] = d.unit().left()
	}
	return out
}

// step returns the way from pts[i] to the nearest different point in direction
// dir, or zero at the end.
func step(pts []Point, i, dir int) Point {
	for j := i + dir; j >= 0 && j < len(pts); j += dir {
		if pts[j] != pts[i] {
			return pts[j].Sub(pts[i])
		}
	}
	return Point{}
}
