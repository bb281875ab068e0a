package planar

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestClearance(t *testing.T) {
	square := must(Polygon(Vec{-0.1, -0.1}, Vec{0.1, -0.1}, Vec{0.1, 0.1}, Vec{-0.1, 0.1}))
	sheave := Circle{Radius: 0.1}
	for _, c := range []struct {
		name     string
		o        Outline
		from, to Vec
		want     float64 // m
	}{
		{"beside a sheave", sheave, Vec{-1, 0.3}, Vec{1, 0.3}, 0.2},
		{"ends before a sheave", sheave, Vec{0.7, 0.4}, Vec{0.3, 0.4}, 0.4},
		{"cuts a sheave", sheave, Vec{-1, 0.06}, Vec{1, 0.06}, -0.04},
		{"a point", sheave, Vec{0.3, 0.4}, Vec{0.3, 0.4}, 0.4},
		{"beside a square", square, Vec{-1, 0.3}, Vec{1, 0.3}, 0.2},
		{"beside it, walked backwards", square, Vec{1, 0.3}, Vec{-1, 0.3}, 0.2},
		{"under a square", square, Vec{-1, -0.3}, Vec{1, -0.3}, 0.2},
		{"past a corner", square, Vec{0.1, 0.4}, Vec{0.4, 0.1}, 0.3 / math.Sqrt2},
		{"ends before a corner", square, Vec{0.13, 0.14}, Vec{1, 0.9}, 0.05},
		{"ends before a side", square, Vec{0.14, 0.03}, Vec{1, 0.03}, 0.04},
		{"along a side", square, Vec{0.1, -1}, Vec{0.1, 1}, 0},
		{"a point by a square", square, Vec{0.13, 0.14}, Vec{0.13, 0.14}, 0.05},
		{"cuts a square", square, Vec{-1, 0.07}, Vec{1, 0.07}, -0.03},
		{"ends in a square", square, Vec{-1, 0.02}, Vec{-0.06, 0.02}, -0.04},
		{"a pin on the way", nil, Vec{-1, 0.3}, Vec{1, 0.3}, 0.3},
	} {
		place := TurnThenShift(0.7, Vec{0.3, -0.2})
		w := &Wrapped{Outline: c.o, At: place, Turn: 0.7}
		if got := Clearance(w, place.Point(c.from), place.Point(c.to)); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%s: %.15f m, want %.15f m", c.name, got, c.want)
		}
	}
}

// TestClearanceOfPolygon holds the distance between a rope piece and a convex
// polygon against a second road to it: the least distance of an end of either
// from the other.
func TestClearanceOfPolygon(t *testing.T) {
	r := rand.New(rand.NewPCG(41, 42))
	for range 300 {
		points := wobbly(r, 5+r.IntN(8))
		var corners []Vec
		for _, i := range hull(points) {
			corners = append(corners, points[i])
		}
		o := must(Polygon(corners...))
		a := Polar(0.25+0.3*r.Float64(), Angle(7*r.Float64()))
		b := a.Add(Polar(0.5*r.Float64(), Angle(7*r.Float64())))
		want := math.Inf(1)
		crosses := false
		for i, p := range corners {
			q := corners[(i+1)%len(corners)]
			want = min(want, p.fromSegment(a, b), a.fromSegment(p, q), b.fromSegment(p, q))
			crosses = crosses || meet(a, b, p, q)
		}
		got := Clearance(held(o, Left), a, b)
		if crosses && got > 0 || !crosses && math.Abs(got-want) > 1e-12 {
			t.Errorf("from %v to %v: %.15f m, want %.15f m (crosses: %t)", a, b, got, want, crosses)
		}
	}
}
