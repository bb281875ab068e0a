package draw

import (
	"math"
	"slices"

	"steelyard/planar"
)

// Hatch fills path with parallel lines in direction angle, pitch mm apart. The
// lines are cut to the path by the nonzero rule, not clipped, so every format
// draws the same strokes. Lines of neighbouring areas meet, because they all
// count from the page's corner. The pen's cap is always butt.
func (p *Page) Hatch(path Path, angle planar.Angle, pitch float64, pen Pen) {
	if pitch > 0 && p.usable(path, "hatched area") {
		pen.Cap = ButtCap
		p.Stroke(hatchLines(path, angle, pitch), pen)
	}
}

// maxHatchLines bounds the work for an area far larger than its pitch.
const maxHatchLines = 5000

// crossing is where an outline crosses a hatch line: the place along it and
// the sense of the crossing.
type crossing struct {
	u   float64
	way int
}

// hatchLines works in axes u along the lines and v across them.
func hatchLines(path Path, angle planar.Angle, pitch float64) Path {
	along := Towards(1, angle)
	across := along.left()
	lines := flatten(path, 0.05)
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, l := range lines {
		for i, q := range l.pts {
			l.pts[i] = Point{q.X*along.X + q.Y*along.Y, q.X*across.X + q.Y*across.Y}
			lo, hi = min(lo, l.pts[i].Y), max(hi, l.pts[i].Y)
		}
	}
	var out Path
	first := math.Ceil(lo / pitch)
	if !(hi/pitch-first < maxHatchLines) {
		return out
	}
	for n := first; n*pitch < hi; n++ {
		v := n * pitch
		for _, s := range inside(crossings(lines, v)) {
			a, b := across.Scale(v).Add(along.Scale(s[0])), across.Scale(v).Add(along.Scale(s[1]))
			out.Move(a).Line(b)
		}
	}
	return out
}

func crossings(lines []outlinePts, v float64) []crossing {
	var xs []crossing
	for _, l := range lines {
		for i, a := range l.pts {
			b := l.pts[(i+1)%len(l.pts)]
			if (a.Y <= v) == (b.Y <= v) {
				continue
			}
			way := 1
			if a.Y > b.Y {
				way = -1
			}
			xs = append(xs, crossing{a.X + (b.X-a.X)*(v-a.Y)/(b.Y-a.Y), way})
		}
	}
	slices.SortFunc(xs, func(a, b crossing) int {
		switch {
		case a.u < b.u:
			return -1
		case a.u > b.u:
			return 1
		}
		return 0
	})
	return xs
}

// inside returns the stretches where the winding number is not zero.
func inside(xs []crossing) [][2]float64 {
	var out [][2]float64
	winding, start := 0, 0.0
	for _, x := range xs {
		if winding == 0 {
			start = x.u
		}
		winding += x.way
		if winding == 0 && x.u > start {
			out = append(out, [2]float64{start, x.u})
		}
	}
	return out
}
