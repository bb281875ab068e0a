package draw

import (
	"math"

	"steelyard/planar"
)

// Labels collects names for points of a picture and sets them where they
// cover least. Bounds is where they may stand; earlier labels choose first.
type Labels struct {
	Bounds Rect
	Font   Font
	items  []pointLabel
	boxes  []Rect
	lines  []outlinePts
}

type pointLabel struct {
	at   Point
	text string
}

// Add asks for a label beside at.
func (l *Labels) Add(at Point, text string) {
	if text = clean(text); text != "" && at.drawable() {
		l.items = append(l.items, pointLabel{at, text})
	}
}

// Avoid keeps labels off a rectangle.
func (l *Labels) Avoid(r Rect) { l.boxes = append(l.boxes, r) }

// AvoidLine keeps labels off a line.
func (l *Labels) AvoidLine(p Path) { l.lines = append(l.lines, flatten(p, 0.5)...) }

// AvoidArea keeps labels off the edge and the inside of an area.
func (l *Labels) AvoidArea(p Path) {
	l.AvoidLine(p)
	l.AvoidLine(hatchLines(p, 0, l.Font.Size/2))
}

// Labels writes all labels of l. Each tries eight directions at growing
// distance and takes the place of least overlap; one far from its point gets a
// leader line.
func (p *Page) Labels(l *Labels) {
	f := l.Font
	taken := append([]Rect(nil), l.boxes...)
	for _, it := range l.items {
		dot := Rect{it.at.X, it.at.Y, 0, 0}.Inset(-0.35 * f.Size)
		taken = append(taken, dot)
	}
	for _, it := range l.items {
		box, far := l.place(it, taken)
		taken = append(taken, box)
		if far {
			p.Stroke(Polyline(it.at, nearest(box, it.at)), p.scene.thin(p.scene.Theme.Faint))
		}
		p.Fill(box.Path(), Alpha(p.scene.Theme.Paper, 0.75))
		p.TextAt(Point{box.X, f.middle(box.Centre().Y)}, it.text, f, Left)
	}
}

// place returns the best box for the label and whether it needs a leader.
func (l *Labels) place(it pointLabel, taken []Rect) (best Rect, far bool) {
	w, h := l.Font.width(it.text), 1.1*l.Font.Size
	least := math.Inf(1)
	for ring, gap := range []float64{0.8, 2, 3.5, 6} {
		for _, quarter := range []planar.Angle{0.25, 1.75, 0.75, 1.25, 0, 1, 0.5, 1.5} {
			c := it.at.Add(beside(quarter*math.Pi, w, h, gap*l.Font.Size))
			box := Rect{c.X - w/2, c.Y - h/2, w, h}
			cost := l.cost(box, taken) + 0.05*w*h*float64(ring)
			if cost < least-1e-9 {
				best, far, least = box, ring > 1, cost
			}
		}
	}
	return best, far
}

// beside returns the step from a point to the centre of a w × h box standing
// gap away in direction dir.
func beside(dir planar.Angle, w, h, gap float64) Point {
	d := Towards(1, dir)
	edge := func(v, half float64) float64 {
		if math.Abs(v) < 1e-9 {
			return 0
		}
		return math.Copysign(half, v)
	}
	return Point{edge(d.X, w/2) + gap*d.X, edge(d.Y, h/2) + gap*d.Y}
}

// cost adds up, in mm², what a box covers: labels and areas, lines at the
// text's height, and most of all what lies off bounds.
func (l *Labels) cost(box Rect, taken []Rect) float64 {
	sum := 5 * (box.W*box.H - box.overlap(l.Bounds))
	for _, r := range taken {
		sum += box.overlap(r)
	}
	for _, line := range l.lines {
		n := len(line.pts) - 1
		if line.closed {
			n++
		}
		for i := range n {
			sum += 0.3 * box.H * box.within(line.pts[i], line.pts[(i+1)%len(line.pts)])
		}
	}
	return sum
}

// within returns the length of a-b inside r.
//
// Source: Liang, Y.-D. and Barsky, B., "A new concept and method for line
// clipping", ACM Transactions on Graphics 3 (1984) 1-22.
func (r Rect) within(a, b Point) float64 {
	d := b.Sub(a)
	t0, t1 := 0.0, 1.0
	for _, e := range [4][2]float64{{-d.X, a.X - r.X}, {d.X, r.Right() - a.X}, {-d.Y, a.Y - r.Y}, {d.Y, r.Bottom() - a.Y}} {
		switch step, room := e[0], e[1]; {
		case step == 0 && room < 0:
			return 0
		case step < 0:
			t0 = max(t0, room/step)
		case step > 0:
			t1 = min(t1, room/step)
		}
	}
	if t1 <= t0 {
		return 0
	}
	return (t1 - t0) * d.Norm()
}

// nearest returns the point of r closest to p.
func nearest(r Rect, p Point) Point {
	return Point{min(max(p.X, r.X), r.Right()), min(max(p.Y, r.Y), r.Bottom())}
}
