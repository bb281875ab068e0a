package calibrate

import (
	"math"
	"math/rand/v2"
	"testing"

	"steelyard/planar"
)

// along returns points of an ellipse, at the given parts of a turn.
func along(e ellipse, parts ...float64) []planar.Vec {
	out := make([]planar.Vec, len(parts))
	for i, t := range parts {
		s, c := math.Sincos(2 * math.Pi * t)
		u, v := planar.Polar(e.major*c, e.angle), planar.Polar(e.minor*s, e.angle).Perp()
		out[i] = e.center.Add(u).Add(v)
	}
	return out
}

func TestEllipseExact(t *testing.T) {
	for _, row := range []struct {
		name  string
		e     ellipse
		parts []float64
	}{
		{"five points", ellipse{planar.Vec{X: 900, Y: 400}, 200, 150, 0.5}, []float64{0, 0.2, 0.4, 0.6, 0.8}},
		{"uneven", ellipse{planar.Vec{X: 10, Y: 2000}, 90, 80, -1.2}, []float64{0, 0.05, 0.1, 0.4, 0.55, 0.9}},
		{"flat", ellipse{planar.Vec{X: 500, Y: 500}, 300, 40, 1.5}, []float64{0.1, 0.2, 0.45, 0.6, 0.8, 0.95}},
		{"circle", ellipse{planar.Vec{X: 1000, Y: 800}, 222, 222, 0}, []float64{0, 0.15, 0.3, 0.5, 0.7, 0.85}},
	} {
		got, ok := ellipseThrough(along(row.e, row.parts...))
		if !ok {
			t.Errorf("%s: no ellipse", row.name)
			continue
		}
		turn := math.Abs(math.Sin(float64(got.angle - row.e.angle)))
		if row.e.major == row.e.minor {
			turn = 0
		}
		if off := got.center.Sub(row.e.center).Norm(); off > 1e-6 || math.Abs(got.major-row.e.major) > 1e-6 || math.Abs(got.minor-row.e.minor) > 1e-6 || turn > 1e-8 {
			t.Errorf("%s: got %+v; want %+v", row.name, got, row.e)
		}
	}
}

// TestEllipseNoisy bounds the error of the axes by that of a mean over the taps.
func TestEllipseNoisy(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 5))
	e := ellipse{planar.Vec{X: 900, Y: 400}, 200, 180, 0.5}
	var parts []float64
	for i := range 12 {
		parts = append(parts, float64(i)/12)
	}
	sum := 0.0
	const n = 300
	for range n {
		points := along(e, parts...)
		for i := range points {
			points[i] = points[i].Add(planar.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64()})
		}
		got, ok := ellipseThrough(points)
		if !ok {
			t.Fatal("no ellipse")
		}
		sum += (got.minor - e.minor) * (got.minor - e.minor)
	}
	// Of 12 radial errors of 1 px, the axis across takes the part that goes as
	// 1/2 - cos 2φ/2: variance (1/4·2 + 1)/12 of a least-squares fit of 1 and
	// cos 2φ, radius r = r₀ + r₂ cos 2φ, at φ = 90°: 1/12 + 2/12.
	if got, want := math.Sqrt(sum/n), math.Sqrt(3.0/12); math.Abs(got/want-1) > 0.15 {
		t.Errorf("standard deviation of the minor half axis %.3f px; want about %.3f px", got, want)
	}
}

func TestNoEllipse(t *testing.T) {
	for name, points := range map[string][]planar.Vec{
		"a line":     {{X: 0}, {X: 1}, {X: 2}, {X: 3}, {X: 4}},
		"one point":  {{X: 1}, {X: 1}, {X: 1}, {X: 1}, {X: 1}},
		"too few":    {{X: 0}, {X: 1}, {Y: 1}, {X: 1, Y: 2}},
		"no numbers": {{X: math.NaN()}, {X: 1}, {Y: 1}, {X: 1, Y: 2}, {X: 3, Y: 1}},
	} {
		if e, ok := ellipseThrough(points); ok && e.minor > 1e-6*e.major {
			t.Errorf("%s: %+v", name, e)
		}
	}
}
