package planar

import (
	"math"
	"slices"
	"testing"
)

// TestNotch: a square of 200 mm with a notch 60 mm wide and 40 mm deep in its
// top side is bridged straight, and told (closed form).
func TestNotch(t *testing.T) {
	points := []Vec{{-0.1, -0.1}, {0.1, -0.1}, {0.1, 0.1}, {0.03, 0.1}, {0, 0.06}, {-0.03, 0.1}, {-0.1, 0.1}}
	back := slices.Clone(points)
	slices.Reverse(back)
	for _, c := range []struct {
		name        string
		points      []Vec
		first, last int
	}{
		{"counter-clockwise", points, 2, 6},
		{"clockwise", back, 0, 4},
	} {
		o := must(Polygon(c.points...))
		if math.Abs(o.Perimeter()-0.8) > 1e-14 || math.Abs(o.Area()-0.0388) > 1e-16 {
			t.Errorf("%s: perimeter %.16f m, want 0.8 m; area %.16f m², want 0.0388 m²", c.name, o.Perimeter(), o.Area())
		}
		hollows := o.Hollows()
		if len(hollows) != 1 {
			t.Fatalf("%s: hollows %v, want one", c.name, hollows)
		}
		h := hollows[0]
		if h.From != (Vec{0.1, 0.1}) || h.To != (Vec{-0.1, 0.1}) || math.Abs(h.Depth-0.04) > 1e-16 {
			t.Errorf("%s: bridge from %v to %v, %.4f m deep; want the top side, 0.04 m", c.name, h.From, h.To, h.Depth)
		}
		if h.First != c.first || h.Last != c.last {
			t.Errorf("%s: rims at points %d and %d, want %d and %d", c.name, h.First, h.Last, c.first, c.last)
		}
	}
}

// TestPeanut: the bridge over the waist of an oval of Cassini, (x²+y²)² -
// 2c²(x²-y²) = a⁴ - c⁴, touches it where y is greatest, at
// x² = (4c⁴ - a⁴)/4c², y = a²/2c, and is x² - less deep by y at the waist,
// √(a² - c²) (closed form from dy/dx = 0).
func TestPeanut(t *testing.T) {
	const a, c = 0.105, 0.1
	const n = 72
	points := make([]Vec, n)
	for i := range points {
		phi := 2 * math.Pi * float64(i) / n
		s2, c2 := math.Sincos(2 * phi)
		r2 := c*c*c2 + math.Sqrt(a*a*a*a-c*c*c*c*s2*s2)
		points[i] = Polar(math.Sqrt(r2), Angle(phi))
	}
	o := must(TracedThrough(points))
	top, x := a*a/(2*c), math.Sqrt(4*c*c*c*c-a*a*a*a)/(2*c)
	if h, _ := o.Support(quarter); math.Abs(h-top) > 2e-6 {
		t.Errorf("top at %.7f m, want %.7f m", h, top)
	}
	hollows := o.Hollows()
	if len(hollows) != 2 {
		t.Fatalf("hollows %v, want two", hollows)
	}
	for _, h := range hollows {
		if miss := max(math.Abs(math.Abs(h.From.X)-x), math.Abs(math.Abs(h.To.X)-x)); miss > 1e-4 {
			t.Errorf("bridge from %v to %v, want x = ±%.5f m", h.From, h.To, x)
		}
		if want := top - math.Sqrt(a*a-c*c); math.Abs(h.Depth-want) > 2e-5 {
			t.Errorf("%.6f m deep, want %.6f m", h.Depth, want)
		}
	}
}

// TestConvexHasNoHollow: nothing is told of an outline without one.
func TestConvexHasNoHollow(t *testing.T) {
	for name, o := range map[string]*Traced{
		"circle":             must(TracedThrough(onCircle(Circle{Vec{1, 1}, 0.1}, 12))),
		"point on a side":    must(Polygon(Vec{0, 0}, Vec{0.1, 0.03}, Vec{0.2, 0.06}, Vec{0, 0.2})),
		"spiral":             must(LogSpiral(Spiral{Radius: 0.062, Growth: 0.22, To: 230 * Degree})),
		"dip of 0.05 mm":     must(Polygon(Vec{0, 0}, Vec{0.1, 0.00005}, Vec{0.2, 0}, Vec{0.1, 0.1})),
		"smooth through two": must(TracedThrough([]Vec{{0, 0}, {0.1, 0}, {0.1, 0.1}, {0, 0.1}})),
	} {
		if hollows := o.Hollows(); len(hollows) != 0 {
			t.Errorf("%s: hollows %+v", name, hollows)
		}
	}
}
