package planar

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// wobbly returns n points round a random blob about 100 mm in radius that
// encloses the origin, and that may have hollows.
func wobbly(r *rand.Rand, n int) []Vec {
	var size, phase [4]float64
	for k := range size {
		size[k], phase[k] = 0.04*r.Float64()/float64(k+1), 2*math.Pi*r.Float64()
	}
	center := Vec{0.04 * r.NormFloat64() / 3, 0.04 * r.NormFloat64() / 3}
	points := make([]Vec, n)
	for i := range points {
		a := 2 * math.Pi * float64(i) / float64(n)
		radius := 0.1
		for k := range size {
			radius += size[k] * math.Cos(float64(k+1)*a+phase[k])
		}
		points[i] = center.Add(Polar(radius, Angle(a)))
	}
	return points
}

// someCorners marks about one point in six.
func someCorners(r *rand.Rand, n int) []int {
	var corners []int
	for i := range n {
		if r.IntN(6) == 0 {
			corners = append(corners, i)
		}
	}
	return corners
}

// must returns the outline of a constructor that cannot fail here.
func must[T any](o T, err error) T {
	if err != nil {
		panic(err)
	}
	return o
}

// outlines returns one of each kind, and random ones.
func outlines() map[string]Outline {
	r := rand.New(rand.NewPCG(1, 2))
	all := map[string]Outline{
		"circle":            Circle{Vec{0.02, -0.03}, 0.1},
		"ellipse":           must(EllipseFromAxes(Vec{0.02, -0.03}, 0.125, 0.078, 0.4)),
		"tall ellipse":      must(EllipseFromAxes(Vec{}, 0.03, 0.12, -2)),
		"log spiral":        must(LogSpiral(Spiral{Radius: 0.062, Growth: 0.22, To: 230 * Degree})),
		"arithmetic spiral": must(ArithmeticSpiral(Spiral{Pole: Vec{0.01, 0}, Tilt: 1, Radius: 0.05, Growth: 0.02, From: -1, To: 4})),
		"square":            must(Polygon(Vec{0.1, 0.1}, Vec{-0.1, 0.1}, Vec{-0.1, -0.1}, Vec{0.1, -0.1})),
	}
	for i := range 8 {
		n := 6 + r.IntN(30)
		all[fmt.Sprintf("smooth blob %d", i)] = must(TracedThrough(wobbly(r, n)))
		all[fmt.Sprintf("cornered blob %d", i)] = must(TracedThrough(wobbly(r, n), someCorners(r, n)...))
		all[fmt.Sprintf("polygon %d", i)] = must(Polygon(wobbly(r, n)...))
	}
	return all
}

// TestCauchy holds the perimeter against Cauchy's formula, perimeter = ∫h dφ
// over a turn.
//
// Source: L. A. Santaló, Integral Geometry and Geometric Probability, 1976,
// ch. 1, from memory.
func TestCauchy(t *testing.T) {
	const steps = 20000
	for name, o := range outlines() {
		sum := 0.0
		for i := range steps {
			h, _ := o.Support(2 * math.Pi * Angle(i) / steps)
			sum += h * 2 * math.Pi / steps
		}
		if perimeter := o.Length(2 * math.Pi); math.Abs(perimeter-sum) > 1e-8 {
			t.Errorf("%s: perimeter %.12f m, ∫h dφ %.12f m", name, perimeter, sum)
		}
	}
}

// TestSupportSlope holds h' against differences of h, and the touching point
// against the tangent: no other touching point may lie beyond it.
func TestSupportSlope(t *testing.T) {
	const step = 1e-6
	for name, o := range outlines() {
		r := rand.New(rand.NewPCG(3, 4))
		for range 300 {
			phi := Angle(20 * (r.Float64() - 0.5))
			h0, low := o.Support(phi - step)
			h1, high := o.Support(phi + step)
			slope := (h1 - h0) / (2 * step)
			if slope < min(low, high)-1e-7 || slope > max(low, high)+1e-7 {
				t.Fatalf("%s at %.3f rad: h' %.9f to %.9f m/rad, difference quotient %.9f", name, phi, low, high, slope)
			}
			h, _ := o.Support(phi)
			other := Touch(o, Angle(7*r.Float64()))
			if beyond := other.Dot(Polar(1, phi)) - h; beyond > 1e-12 {
				t.Fatalf("%s: a touching point lies %g m beyond the tangent at %.3f rad", name, beyond, phi)
			}
		}
	}
}

// TestLengthIsDistanceAlong holds Length against the chords of many close
// touching points, and checks that it never decreases: h + h″ >= 0.
func TestLengthIsDistanceAlong(t *testing.T) {
	const steps = 20000
	for name, o := range outlines() {
		const from, to = -1.3, 5.9
		chords := 0.0
		before, length := Touch(o, from), o.Length(from)
		for i := 1; i <= steps; i++ {
			phi := Angle(from + (to-from)*float64(i)/steps)
			p := Touch(o, phi)
			chords += p.Sub(before).Norm()
			before = p
			next := o.Length(phi)
			if next < length-1e-15 {
				t.Fatalf("%s: length falls by %g m at %.4f rad", name, length-next, phi)
			}
			length = next
		}
		// A chord is shorter than its arc by δ²/24 of it, δ = 4e-4 rad.
		if got := o.Length(to) - o.Length(from); math.Abs(got-chords) > 1e-8 {
			t.Errorf("%s: length %.12f m, sum of chords %.12f m", name, got, chords)
		}
	}
}

// TestTurnsCount: a whole turn further, the length is a perimeter more and the
// support the same.
func TestTurnsCount(t *testing.T) {
	for name, o := range outlines() {
		for _, phi := range []Angle{-9, -2.5, 0, 0.3, 3, 6.2, 40} {
			got, want := o.Length(phi+2*math.Pi)-o.Length(phi), o.Length(2*math.Pi)
			if math.Abs(got-want) > 1e-12 {
				t.Errorf("%s at %.1f rad: a turn is %.15f m, perimeter %.15f m", name, phi, got, want)
			}
			a, _ := o.Support(phi)
			b, _ := o.Support(phi + 2*math.Pi)
			if math.Abs(a-b) > 1e-14 {
				t.Errorf("%s at %.1f rad: h %.16f m, a turn later %.16f m", name, phi, a, b)
			}
		}
		if start := o.Length(0); start != 0 {
			t.Errorf("%s: length at normal 0 is %g m, want 0", name, start)
		}
	}
}

// TestEccentricCircle: the rope's moment arm on a round sheave of radius r, its
// centre e off the axis, is r + e cos φ (closed form).
func TestEccentricCircle(t *testing.T) {
	o := Circle{Vec{0.03, 0}, 0.1}
	for _, c := range []struct {
		name string
		phi  Angle
		want float64
	}{
		{"far side", 0, 0.13},
		{"60°", 60 * Degree, 0.115},
		{"square to the offset", 90 * Degree, 0.1},
		{"near side", 180 * Degree, 0.07},
	} {
		if h, _ := o.Support(c.phi); math.Abs(h-c.want) > 1e-15 {
			t.Errorf("%s: %.15f m, want %.15f m", c.name, h, c.want)
		}
	}
}
