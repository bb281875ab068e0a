package planar

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestSplineJoins checks that value, slope and curvature join at every traced
// point that is no corner, for the closed and the open spline.
func TestSplineJoins(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for _, c := range []struct {
		name    string
		corners []int
	}{
		{"closed", nil},
		{"one corner", []int{4}},
		{"three corners", []int{0, 1, 7}},
	} {
		points := wobbly(r, 12)
		curve := curveThrough(points, c.corners)
		for i := range curve.pieces {
			before, after := &curve.pieces[(i+11)%12], &curve.pieces[i]
			p0, d0, dd0 := before.at(1)
			p1, d1, dd1 := after.at(0)
			if gap := max(p1.Sub(p0).Norm(), p1.Sub(points[i]).Norm()); gap > 1e-15 {
				t.Errorf("%s: point %d is missed by %g m", c.name, i, gap)
			}
			if curve.corner[i] {
				continue
			}
			if gap := d1.Sub(d0).Norm(); gap > 1e-13 {
				t.Errorf("%s: slope jumps by %g at point %d", c.name, gap, i)
			}
			if gap := dd1.Sub(dd0).Norm(); gap > 1e-11 {
				t.Errorf("%s: second derivative jumps by %g /m at point %d", c.name, gap, i)
			}
		}
	}
}

// TestCubicDerivatives holds the derivatives of a piece against differences.
func TestCubicDerivatives(t *testing.T) {
	c := cubic{from: Vec{1, 2}, to: Vec{4, 6}, bendFrom: Vec{0.3, -0.2}, bendTo: Vec{-0.1, 0.5}, chord: 5}
	const step = 1e-4 // of the chord, so 5e-4 in the parameter
	for _, x := range []float64{0.1, 0.4, 0.9} {
		low, dLow, _ := c.at(x - step)
		high, dHigh, _ := c.at(x + step)
		_, d, dd := c.at(x)
		if diff := high.Sub(low).Scale(1 / (2 * step * c.chord)).Sub(d).Norm(); diff > 1e-7 {
			t.Errorf("at %.1f: derivative differs from the quotient by %g", x, diff)
		}
		if diff := dHigh.Sub(dLow).Scale(1 / (2 * step * c.chord)).Sub(dd).Norm(); diff > 1e-10 {
			t.Errorf("at %.1f: second derivative differs from the quotient by %g", x, diff)
		}
	}
}

// TestOpenSplineKeepsParabolas: between two corners, points of a parabola that
// lie evenly along straight chords come back exactly, since the end pieces are
// parabolas (closed form). On three points the piece is the parabola through
// them with the chord lengths as parameter.
func TestOpenSplineKeepsParabolas(t *testing.T) {
	pieces := chordsThrough([]Vec{{-1, 1}, {0, 0}, {1, 1}})[:2]
	smoothOpen(pieces)
	for _, x := range []float64{0, 0.25, 0.5, 1} {
		p, _, _ := pieces[0].at(x)
		want := Vec{x - 1, (x - 1) * (x - 1)}
		if p.Sub(want).Norm() > 1e-15 {
			t.Errorf("at %.2f: %v, want %v", x, p, want)
		}
	}
}

// TestCyclicSolve holds the closed spline against the equations themselves,
// written out with their corner terms.
func TestCyclicSolve(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for _, n := range []int{3, 4, 5, 40} {
		pieces := chordsThrough(wobbly(r, n))
		smoothClosed(pieces)
		for i := range pieces {
			before, after := &pieces[(i+n-1)%n], &pieces[i]
			diag, upper, rhs := slopeRow(before, after)
			left := before.bendFrom.Scale(before.chord / 6).Add(after.bendFrom.Scale(diag)).Add(after.bendTo.Scale(upper))
			if diff := left.Sub(rhs).Norm(); diff > 1e-14 {
				t.Errorf("%d points: equation %d is off by %g", n, i, diff)
			}
		}
		if math.IsNaN(pieces[0].bendFrom.X) {
			t.Errorf("%d points: not a number", n)
		}
	}
}
