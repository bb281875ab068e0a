package draw

import (
	"math"
	"testing"

	"steelyard/planar"
)

func TestArcStaysOnItsCircle(t *testing.T) {
	c, r := Point{3, -2}, 50.0
	for _, ends := range [][2]planar.Angle{{0, 2 * math.Pi}, {1, -2}, {0.3, 0.4}, {-1, 9}} {
		var p Path
		p.Arc(c, r, ends[0], ends[1])
		pts := flatten(p, 1e-4)[0].pts
		for _, q := range pts {
			if off := math.Abs(q.Sub(c).Norm() - r); off > 3e-4*r {
				t.Fatalf("arc %v: %.5f mm off the circle, want at most %.5f", ends, off, 3e-4*r)
			}
		}
		want := r * math.Abs(float64(ends[1]-ends[0]))
		if got := length(pts); math.Abs(got-want) > 3e-4*want {
			t.Errorf("arc %v: length %.4f mm, want %.4f", ends, got, want)
		}
	}
}

func TestArcTurnsCounterClockwiseAsItLooks(t *testing.T) {
	var p Path
	p.Arc(Point{}, 1, 0, math.Pi/2)
	end := p.at
	if math.Abs(end.X) > 1e-12 || math.Abs(end.Y+1) > 1e-12 {
		t.Errorf("a quarter from the right ends at %v, want the top (0, -1)", end)
	}
}

// A chord of the flattened curve must lie within the tolerance of the true
// curve, here the parabola y = x² as a quadratic Bézier.
func TestFlattenKeepsTolerance(t *testing.T) {
	var p Path
	p.Move(Point{-10, 100}).Quad(Point{0, -100}, Point{10, 100})
	const tol = 0.01
	pts := flatten(p, tol)[0].pts
	for i := 1; i < len(pts); i++ {
		mid := pts[i-1].Lerp(pts[i], 0.5)
		if gap := mid.Y - mid.X*mid.X; gap > tol+1e-9 || gap < -1e-9 {
			t.Errorf("chord %d: %.5f mm above the parabola, want 0 to %g", i, gap, tol)
		}
	}
}

func TestCloseReturnsToTheStart(t *testing.T) {
	var p Path
	p.Move(Point{1, 1}).Line(Point{5, 1}).Line(Point{5, 4}).Close().Line(Point{0, 0})
	lines := flatten(p, 0.1)
	if len(lines) != 2 || !lines[0].closed || lines[1].closed {
		t.Fatalf("outlines %v, want a closed and an open one", lines)
	}
	if got := lines[1].pts[0]; got != (Point{1, 1}) {
		t.Errorf("what follows a close starts at %v, want (1, 1)", got)
	}
}

// Tangents of two circles: ends lie on their circle, and the tangent is
// upright to both radii. For l = 10, radii 5 and 2 the tangent has length
// √(10² - 3²).
func TestCapsule(t *testing.T) {
	a, b := Point{0, 0}, Point{10, 0}
	p := Capsule(a, b, 5, 2)
	var tangents []float64
	pen := Point{}
	for _, s := range p.segs {
		end := s.p[0]
		if s.verb == cubicTo {
			end = s.p[2]
		}
		if s.verb == closePath {
			end = p.segs[0].p[0]
		}
		if s.verb == lineTo || s.verb == closePath {
			tangents = append(tangents, end.Sub(pen).Norm())
		}
		pen = end
	}
	if len(tangents) != 2 {
		t.Fatalf("%d straight sides, want 2", len(tangents))
	}
	for _, l := range tangents {
		if want := math.Sqrt(91); math.Abs(l-want) > 1e-9 {
			t.Errorf("tangent %.6f mm, want %.6f", l, want)
		}
	}
	if inner := Capsule(a, Point{1, 0}, 5, 2); len(inner.segs) != len(func() []segment { c := Circle(a, 5); return c.segs }()) {
		t.Errorf("an end inside the other gives %d segments, want the circle's", len(inner.segs))
	}
}

func TestRectWithin(t *testing.T) {
	r := Rect{0, 0, 10, 10}
	for _, c := range []struct {
		name string
		a, b Point
		want float64
	}{
		{"through", Point{-5, 5}, Point{15, 5}, 10},
		{"inside", Point{2, 2}, Point{5, 6}, 5}, // 3-4-5
		{"outside", Point{-5, 12}, Point{15, 12}, 0},
		{"past the corner", Point{-5, 4}, Point{4, -5}, 0},
		{"diagonal", Point{-10, -10}, Point{20, 20}, 10 * math.Sqrt2},
		{"a point", Point{5, 5}, Point{5, 5}, 0},
	} {
		if got := r.within(c.a, c.b); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %.4f mm inside, want %.4f", c.name, got, c.want)
		}
	}
}
