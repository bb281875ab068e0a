package calibrate

import (
	"math"
	"math/rand/v2"
	"testing"

	"steelyard/planar"
)

// squareTo returns the homography that takes the unit square's corners (0, 0),
// (1, 0), (1, 1), (0, 1) to q, in closed form.
//
// Source: P. S. Heckbert, Fundamentals of Texture Mapping and Image Warping,
// master's thesis, Berkeley 1989, section 2.2.3, from memory.
func squareTo(q [4]planar.Vec) matrix {
	sum := q[0].Sub(q[1]).Add(q[2]).Sub(q[3])
	d1, d2 := q[1].Sub(q[2]), q[3].Sub(q[2])
	g, h := sum.Cross(d2)/d1.Cross(d2), d1.Cross(sum)/d1.Cross(d2)
	a := q[1].Sub(q[0]).Add(q[1].Scale(g))
	b := q[3].Sub(q[0]).Add(q[3].Scale(h))
	return matrix{a.X, b.X, q[0].X, a.Y, b.Y, q[0].Y, g, h, 1}
}

// TestRectangleClosedForm compares distances on a photo measured by a rectangle
// with those by the closed form of four corners, which knows no camera; also on
// photos cropped off their middle.
func TestRectangleClosedForm(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	const width, height = 0.7, 0.9
	for i := range 8 {
		angle := func() planar.Angle { return 22 * deg * planar.Angle(2*rng.Float64()-1) }
		c := aimed(target, 2.5+rng.Float64(), angle(), angle(), angle(), 0.6+0.5*rng.Float64())
		s := c.survey(rng, 0)
		if i%2 == 1 { // cut off a part on the left and above
			cut := Pixel{300 * rng.Float64(), 200 * rng.Float64()}
			for _, p := range []*Pixel{s.Origin, &s.Plumb[0], &s.Plumb[1]} {
				p.X, p.Y = p.X-cut.X, p.Y-cut.Y
			}
			s.Width, s.Height, s.Cropped = s.Width-int(cut.X), s.Height-int(cut.Y), true
		}
		shift := planar.Vec{X: float64(s.Width - 2048), Y: float64(s.Height - 1536)}
		var corners [4]Pixel
		var quad [4]planar.Vec
		for j, v := range box(planar.Vec{X: -0.1, Y: 0.4}, width, height) {
			quad[j] = c.sees(v, 0).vec().Add(shift)
			corners[j] = Pixel(quad[j])
		}
		s.Rectangles = []Rectangle{{Corners: corners, Width: width, Height: height}}
		p, err := s.Solve()
		if err != nil {
			t.Errorf("camera %d: %v", i, err)
			continue
		}
		unit, ok := squareTo(quad).inverse()
		if !ok {
			t.Fatal("the four corners have no inverse")
		}
		a, b := Pixel{500, 500}, Pixel{1300, 1000}
		at := func(px Pixel) planar.Vec {
			u, _ := unit.through(px.vec())
			return planar.Vec{X: width * u.X, Y: height * u.Y}
		}
		pa, _ := p.At(a)
		pb, _ := p.At(b)
		got, want := pb.Sub(pa).Norm(), at(b).Sub(at(a)).Norm()
		if math.Abs(got-want) > 3e-4 {
			t.Errorf("camera %d: distance %.3f mm; want %.3f mm", i, 1000*got, 1000*want)
		}
	}
}

// TestCrossRatio holds what every homography keeps: of four points in line, the
// ratio (AC·BD)/(BC·AD).
func TestCrossRatio(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	for range 100 {
		v := view{a: 0.5 * rng.NormFloat64() / 2, b: 0.5 * rng.NormFloat64() / 2, scale: 500, bend: 1.0 / 1500, middle: planar.Vec{X: 1000, Y: 700}, origin: planar.Vec{X: 900, Y: 800}}
		m := v.seen(0)
		from, along := planar.Vec{X: rng.Float64(), Y: rng.Float64()}, planar.Polar(0.3, planar.Angle(6*rng.Float64()))
		ratio := func(at func(k float64) planar.Vec) float64 {
			a, b, c, d := at(0), at(0.4), at(0.5), at(1)
			return c.Sub(a).Norm() * d.Sub(b).Norm() / (c.Sub(b).Norm() * d.Sub(a).Norm())
		}
		got := ratio(func(k float64) planar.Vec { q, _ := m.through(from.Add(along.Scale(k))); return q })
		if want := 0.5 * 0.6 / (0.1 * 1); math.Abs(got-want) > 1e-9 {
			t.Errorf("cross-ratio %.12f; want %g", got, want)
		}
		back, ok := m.inverse()
		q, _ := m.through(from)
		if again, _ := back.through(q); !ok || again.Sub(from).Norm() > 1e-12 {
			t.Errorf("there and back: %v; want %v", again, from)
		}
	}
}

// TestTurned compares the tilt's matrix with what a rotation must be, and its
// size and axis.
func TestTurned(t *testing.T) {
	for _, w := range []planar.Vec{{}, {X: 1e-9}, {X: 0.3, Y: -0.4}, {Y: 1}} {
		r := (&view{a: w.X, b: w.Y}).turned()
		trace := r[0][0] + r[1][1] + r[2][2]
		if want := 1 + 2*math.Cos(w.Norm()); math.Abs(trace-want) > 1e-12 {
			t.Errorf("%v: trace %g; want %g", w, trace, want)
		}
		for i := range 3 {
			for j := range 3 {
				want := 0.0
				if i == j {
					want = 1
				}
				if got := r[i][0]*r[j][0] + r[i][1]*r[j][1] + r[i][2]*r[j][2]; math.Abs(got-want) > 1e-12 {
					t.Errorf("%v: rows %d and %d give %g; want %g", w, i, j, got, want)
				}
			}
			axis := [3]float64{w.X, w.Y, 0}
			if got := r[i][0]*w.X + r[i][1]*w.Y; math.Abs(got-axis[i]) > 1e-12 {
				t.Errorf("%v: the axis moves to %g; want %g", w, got, axis[i])
			}
		}
	}
}
