package draw

import (
	"image"
	"math"
)

// outlinePts is one outline of a path as straight pieces.
type outlinePts struct {
	pts    []Point
	closed bool
}

// flatten returns the outlines of p with each curve replaced by chords no
// further than tol (mm) from it.
//
// A chord of a curve cut in n lies within max|B″|/8n² of it, and |B″| of a
// cubic is at most 6 times its larger second difference.
// Source: linear interpolation error, Atkinson, "An Introduction to Numerical
// Analysis", 2nd ed. (1989), eq. 3.1.8; from memory.
func flatten(p Path, tol float64) []outlinePts {
	var out []outlinePts
	var cur outlinePts
	end := func() {
		if len(cur.pts) > 0 {
			out = append(out, cur)
		}
		cur = outlinePts{}
	}
	for _, s := range p.segs {
		switch s.verb {
		case moveTo:
			end()
			cur.pts = []Point{s.p[0]}
		case lineTo:
			cur.pts = append(cur.pts, s.p[0])
		case cubicTo:
			cur.pts = appendCubic(cur.pts, s.p, tol)
		case closePath:
			start := cur.pts[0]
			cur.closed = true
			end()
			cur.pts = []Point{start} // what follows a close starts there
		}
	}
	end()
	return dropLonePoints(out)
}

// dropLonePoints removes what is left by a close with nothing after it, and
// keeps single points that were drawn as such.
func dropLonePoints(lines []outlinePts) []outlinePts {
	out := lines[:0]
	for i, l := range lines {
		if len(l.pts) == 1 && i > 0 && lines[i-1].closed {
			continue
		}
		out = append(out, l)
	}
	return out
}

func appendCubic(pts []Point, c [3]Point, tol float64) []Point {
	p0 := pts[len(pts)-1]
	d1 := p0.Sub(c[0].Scale(2)).Add(c[1]).Norm()
	d2 := c[0].Sub(c[1].Scale(2)).Add(c[2]).Norm()
	n := int(min(max(1, math.Ceil(math.Sqrt(0.75*max(d1, d2)/tol))), 1000))
	for i := 1; i <= n; i++ {
		t := float64(i) / float64(n)
		a, b, e := p0.Lerp(c[0], t), c[0].Lerp(c[1], t), c[1].Lerp(c[2], t)
		pts = append(pts, a.Lerp(b, t).Lerp(b.Lerp(e, t), t))
	}
	return pts
}

// pixelBounds returns the pixels the outlines touch.
func pixelBounds(lines []outlinePts) image.Rectangle {
	lo, hi := Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, l := range lines {
		for _, q := range l.pts {
			lo = Point{min(lo.X, q.X), min(lo.Y, q.Y)}
			hi = Point{max(hi.X, q.X), max(hi.Y, q.Y)}
		}
	}
	if !(lo.X <= hi.X) {
		return image.Rectangle{}
	}
	const far = 1 << 24 // keeps a stray coordinate within an int
	return image.Rect(int(max(lo.X, -far)), int(max(lo.Y, -far)), int(min(hi.X, far))+1, int(min(hi.Y, far))+1).Inset(-1)
}
