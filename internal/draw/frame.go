package draw

import "steelyard/planar"

// Frame places the ground frame (m, x forward, y up) on a page. Directions
// look the same in both, so an angle needs no conversion.
type Frame struct {
	Origin Point   // where the ground frame's origin falls
	Scale  float64 // mm on the page per m
}

// Fit returns the frame that shows the points lo to hi (m) as large as box
// allows, at one scale both ways, centred. A single point is shown at
// 100 mm per m.
func Fit(lo, hi planar.Vec, box Rect) Frame {
	size := hi.Sub(lo)
	scale := 100.0
	switch {
	case size.X > 0 && size.Y > 0:
		scale = min(box.W/size.X, box.H/size.Y)
	case size.X > 0:
		scale = box.W / size.X
	case size.Y > 0:
		scale = box.H / size.Y
	}
	f := Frame{Scale: scale}
	f.Origin = box.Centre().Sub(f.At(lo.Lerp(hi, 0.5)))
	return f
}

// At returns where v (m) falls on the page.
func (f Frame) At(v planar.Vec) Point {
	return Point{f.Origin.X + v.X*f.Scale, f.Origin.Y - v.Y*f.Scale}
}

// Back returns the ground point (m) shown at p.
func (f Frame) Back(p Point) planar.Vec {
	return planar.Vec{X: (p.X - f.Origin.X) / f.Scale, Y: (f.Origin.Y - p.Y) / f.Scale}
}

// Len returns a length of m metres in mm on the page.
func (f Frame) Len(m float64) float64 { return m * f.Scale }

// Points returns where each of vs falls.
func (f Frame) Points(vs []planar.Vec) []Point {
	pts := make([]Point, len(vs))
	for i, v := range vs {
		pts[i] = f.At(v)
	}
	return pts
}
