package calibrate

import (
	"math"

	"steelyard/planar"
)

// reference is something of known size in the photo. Besides the view it has
// unknowns of its own: where it lies, and its size within its ±.
type reference interface {
	// taps returns what was tapped.
	taps() []Pixel
	// scale returns the known size over that found through back, which takes
	// pixels to places.
	scale(back *matrix) float64
	// start returns values of its unknowns, given back.
	start(back *matrix) []float64
	// widths returns the widths of its unknowns for central differences.
	widths() []float64
	// count returns the number of its residuals.
	count() int
	// residuals fills out, each in units of its standard deviation, where tap is
	// that of a tap in px. It reports false if v cannot see it.
	residuals(v *view, x []float64, tap float64, out []float64) bool
	// redrawn returns the reference as tapped and measured once more.
	redrawn(d *drawer) reference
	// inFront returns how far it is in front of the plane of motion, m.
	inFront() float64
}

// sizeError returns the standard deviation of a size with the given ±. A size
// without one counts as known to a hundred-thousandth, so that weights stay
// finite.
func sizeError(size, plus float64) float64 { return max(plus/2, 1e-5*size) }

// Widths of a place in m and of a direction in rad.
const (
	placeWidth = 1e-6
	turnWidth  = 1e-6
)

// misses fills out with the distances in px/tap from where m shows a place to
// where it was tapped.
func misses(m *matrix, place planar.Vec, tapped Pixel, tap float64, out []float64) bool {
	seen, w := m.through(place)
	miss := seen.Sub(tapped.vec()).Scale(1 / tap)
	out[0], out[1] = miss.X, miss.Y
	return w > 0
}

func (l Line) taps() []Pixel { return []Pixel{l.From, l.To} }

func (l Line) scale(back *matrix) float64 {
	from, _ := back.through(l.From.vec())
	to, _ := back.through(l.To.vec())
	return l.Length / to.Sub(from).Norm()
}

// start: middle, direction, length.
func (l Line) start(back *matrix) []float64 {
	from, _ := back.through(l.From.vec())
	to, _ := back.through(l.To.vec())
	mid := from.Lerp(to, 0.5)
	return []float64{mid.X, mid.Y, float64(to.Sub(from).Angle()), l.Length}
}

func (l Line) widths() []float64 { return []float64{placeWidth, placeWidth, turnWidth, placeWidth} }
func (l Line) count() int        { return 5 }
func (l Line) inFront() float64  { return l.Nearer }

func (l Line) residuals(v *view, x []float64, tap float64, out []float64) bool {
	m := v.seen(l.Nearer)
	mid, half := planar.Vec{X: x[0], Y: x[1]}, planar.Polar(x[3]/2, planar.Angle(x[2]))
	out[4] = (x[3] - l.Length) / sizeError(l.Length, l.Plus)
	return misses(&m, mid.Sub(half), l.From, tap, out[0:]) && misses(&m, mid.Add(half), l.To, tap, out[2:])
}

func (l Line) redrawn(d *drawer) reference {
	l.From, l.To = d.pixel(l.From), d.pixel(l.To)
	l.Length = d.size(l.Length, l.Plus)
	return l
}

func (r Rectangle) taps() []Pixel { return r.Corners[:] }

func (r Rectangle) scale(back *matrix) float64 {
	return math.Sqrt(r.Width * r.Height / math.Abs(polygonArea(back.places(r.Corners[:]))))
}

// start: middle, direction of the first side, width, height.
func (r Rectangle) start(back *matrix) []float64 {
	c := back.places(r.Corners[:])
	mid := c[0].Add(c[1]).Add(c[2]).Add(c[3]).Scale(0.25)
	along := c[1].Sub(c[0]).Add(c[2].Sub(c[3]))
	return []float64{mid.X, mid.Y, float64(along.Angle()), r.Width, r.Height}
}

func (r Rectangle) widths() []float64 {
	return []float64{placeWidth, placeWidth, turnWidth, placeWidth, placeWidth}
}
func (r Rectangle) count() int       { return 10 }
func (r Rectangle) inFront() float64 { return r.Nearer }

func (r Rectangle) residuals(v *view, x []float64, tap float64, out []float64) bool {
	m := v.seen(r.Nearer)
	mid, angle := planar.Vec{X: x[0], Y: x[1]}, planar.Angle(x[2])
	w, h := planar.Polar(x[3]/2, angle), planar.Polar(x[4]/2, angle).Perp()
	if r.clockwise() {
		h = h.Neg()
	}
	corners := [4]planar.Vec{mid.Sub(w).Sub(h), mid.Add(w).Sub(h), mid.Add(w).Add(h), mid.Sub(w).Add(h)}
	for i, c := range corners {
		if !misses(&m, c, r.Corners[i], tap, out[2*i:]) {
			return false
		}
	}
	out[8] = (x[3] - r.Width) / sizeError(r.Width, r.Plus)
	out[9] = (x[4] - r.Height) / sizeError(r.Height, r.Plus)
	return true
}

// clockwise reports which way the corners were tapped round, as one sees it.
func (r Rectangle) clockwise() bool { return polygonArea(vecs(r.Corners[:])) > 0 }

func (r Rectangle) redrawn(d *drawer) reference {
	for i, c := range r.Corners {
		r.Corners[i] = d.pixel(c)
	}
	r.Width, r.Height = d.size(r.Width, r.Plus), d.size(r.Height, r.Plus)
	return r
}

func (p Plate) taps() []Pixel { return p.Rim }

func (p Plate) scale(back *matrix) float64 {
	rim := back.places(p.Rim)
	mid, sum := mean(rim), 0.0
	for _, q := range rim {
		sum += q.Sub(mid).Norm()
	}
	return p.Diameter / 2 / (sum / float64(len(rim)))
}

// start: centre, diameter.
func (p Plate) start(back *matrix) []float64 {
	mid := mean(back.places(p.Rim))
	return []float64{mid.X, mid.Y, p.Diameter}
}

func (p Plate) widths() []float64 { return []float64{placeWidth, placeWidth, placeWidth} }
func (p Plate) count() int        { return len(p.Rim) + 1 }
func (p Plate) inFront() float64  { return p.Nearer }

// residuals of a plate are the distances of the taps from its rim as seen, in
// px/tap to first order: F/|∇F| with F the distance from the rim in the plane.
//
// Source: P. D. Sampson, "Fitting Conic Sections to 'Very Scattered' Data",
// Computer Graphics and Image Processing 18 (1982) 97, from memory.
func (p Plate) residuals(v *view, x []float64, tap float64, out []float64) bool {
	seen := v.seen(p.Nearer)
	back, ok := seen.inverse()
	if !ok {
		return false
	}
	mid := planar.Vec{X: x[0], Y: x[1]}
	for i, t := range p.Rim {
		at, w := back.through(t.vec())
		arm := at.Sub(mid)
		byX, byY := back.slopes(at, w)
		n := arm.Unit()
		slope := math.Hypot(n.Dot(byX), n.Dot(byY))
		if !(w > 0 && slope > 0) {
			return false
		}
		out[i] = (arm.Norm() - x[2]/2) / (slope * tap)
	}
	out[len(p.Rim)] = (x[2] - p.Diameter) / sizeError(p.Diameter, p.Plus)
	return true
}

func (p Plate) redrawn(d *drawer) reference {
	rim := make([]Pixel, len(p.Rim))
	for i, t := range p.Rim {
		rim[i] = d.pixel(t)
	}
	p.Rim = rim
	p.Diameter = d.size(p.Diameter, p.Plus)
	return p
}

// places returns where m takes each of taps.
func (m *matrix) places(taps []Pixel) []planar.Vec {
	out := make([]planar.Vec, len(taps))
	for i, t := range taps {
		out[i], _ = m.through(t.vec())
	}
	return out
}

func vecs(taps []Pixel) []planar.Vec {
	out := make([]planar.Vec, len(taps))
	for i, t := range taps {
		out[i] = t.vec()
	}
	return out
}

func mean(vs []planar.Vec) planar.Vec {
	var sum planar.Vec
	for _, v := range vs {
		sum = sum.Add(v)
	}
	return sum.Scale(1 / float64(len(vs)))
}

// polygonArea returns the area inside points, positive counter-clockwise where y
// goes up and clockwise where it goes down, as on a photo.
func polygonArea(points []planar.Vec) float64 {
	sum := 0.0
	for i := 1; i+1 < len(points); i++ {
		sum += points[i].Sub(points[0]).Cross(points[i+1].Sub(points[0]))
	}
	return sum / 2
}
