package planar

import (
	"math"
	"testing"
)

func TestAngleNear(t *testing.T) {
	for _, c := range []struct {
		name    string
		a, b    Angle
		wantDeg float64
	}{
		{"same turn", 10 * Degree, 20 * Degree, 10},
		{"a turn on", 10 * Degree, 350 * Degree, 370},
		{"a turn back", 350 * Degree, 10 * Degree, -10},
		{"six turns on", -90 * Degree, 1900 * Degree, 2070},
		{"just under half a turn", 179 * Degree, 0, 179},
		{"just over half a turn", 181 * Degree, 0, -179},
	} {
		if got := c.a.Near(c.b).Degrees(); math.Abs(got-c.wantDeg) > 1e-11 {
			t.Errorf("%s: %.12f°, want %g°", c.name, got, c.wantDeg)
		}
	}
}

func TestAngleNormalized(t *testing.T) {
	for _, c := range []struct{ deg, want float64 }{
		{0, 0}, {90, 90}, {180, 180}, {-180, 180}, {190, -170}, {-190, 170}, {720, 0}, {3690, 90},
	} {
		if got := (Angle(c.deg) * Degree).Normalized().Degrees(); math.Abs(got-c.want) > 1e-11 {
			t.Errorf("%g°: %.12f°, want %g°", c.deg, got, c.want)
		}
	}
}

func TestMotion(t *testing.T) {
	// A quarter turn counter-clockwise about (1, 1) takes (2, 1) to (1, 2).
	m := TurnAbout(Vec{1, 1}, 90*Degree)
	for _, c := range []struct {
		name      string
		got, want Vec
	}{
		{"point", m.Point(Vec{2, 1}), Vec{1, 2}},
		{"centre", m.Point(Vec{1, 1}), Vec{1, 1}},
		{"free vector", m.Turn(Vec{1, 0}), Vec{0, 1}},
		{"and back", m.Back(Vec{1, 2}), Vec{2, 1}},
		{"free vector and back", m.TurnBack(Vec{0, 1}), Vec{1, 0}},
		{"at rest", Rest().Point(Vec{3, 4}), Vec{3, 4}},
		{"turn, then shift", TurnThenShift(math.Pi, Vec{5, 0}).Point(Vec{1, 2}), Vec{4, -2}},
	} {
		if c.got.Sub(c.want).Norm() > 1e-15 {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
	if got := m.Angle().Degrees(); math.Abs(got-90) > 1e-13 {
		t.Errorf("turn %g°, want 90°", got)
	}
}
