package planar

import (
	"math"
	"testing"
)

// ground returns a disc of radius r at c, at rest.
func ground(c Vec, r float64, side Side) *Wrapped {
	return &Wrapped{Outline: Circle{c, r}, At: Rest(), Side: side}
}

// once returns the angle equivalent to a less than one turn ahead of from, in
// the sense in which a rope turns round an outline on its side.
func once(side Side, from, a Angle) Angle {
	return a.Near(from + Angle(side)*math.Pi)
}

// TestBeltLength closes a belt over two pulleys of diameter 200 mm and 100 mm,
// centres 500 mm apart.
//
// Source: belt-length formulas, 2√(d² - (R∓r)²) + π(R±r) + ..., evaluated with
// mpmath to 12 digits (reference/mechanics.md, where 200 and 100 are the
// diameters).
func TestBeltLength(t *testing.T) {
	for _, c := range []struct {
		name  string
		small Side
		want  float64 // m
	}{
		{"open", Left, 1.47624307726},
		{"crossed", Right, 1.51658589566},
	} {
		big, small := ground(Vec{}, 0.1, Left), ground(Vec{0.5, 0}, 0.05, c.small)
		var out, back Span
		if err := FirstTangent(big, small, &out); err != nil {
			t.Fatal(err)
		}
		if err := FirstTangent(small, big, &back); err != nil {
			t.Fatal(err)
		}
		got := out.Length + back.Length +
			Arc(small.Outline, c.small, out.NormalTo, once(c.small, out.NormalTo, back.NormalFrom)) +
			Arc(big.Outline, Left, back.NormalTo, once(Left, back.NormalTo, out.NormalFrom))
		if math.Abs(got-c.want) > 1e-11 {
			t.Errorf("%s belt: %.12f m, want %.12f m", c.name, got, c.want)
		}
	}
}
