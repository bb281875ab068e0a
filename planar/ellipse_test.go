package planar

import (
	"math"
	"testing"
)

func TestEllipsePerimeter(t *testing.T) {
	for _, c := range []struct {
		name          string
		along, across float64
		want          float64 // m
	}{
		{"cam", 0.125, 0.078, 0.646318858915}, // mpmath, 12 digits
		{"turned", 0.078, 0.125, 0.646318858915},
		{"circle", 0.1, 0.1, 2 * math.Pi * 0.1},
		// 4a(1 + ½(ln(4a/b) - ½)(b/a)²) for b << a: J. E. Morton's limit of
		// 4aE(e), from memory; its next term is below 1e-9 m here.
		{"flattest", 0.1, 0.0001, 4 * 0.1 * (1 + 0.5*(math.Log(4000)-0.5)*1e-6)},
	} {
		e := must(EllipseFromAxes(Vec{0.3, 0.1}, c.along, c.across, 0.7))
		if got := e.Length(2 * math.Pi); math.Abs(got-c.want) > 1e-11 {
			t.Errorf("%s: %.12f m, want %.12f m", c.name, got, c.want)
		}
	}
}

// TestEllipseTouch: x = a cos t, y = b sin t on the ellipse has its normal along
// (b cos t, a sin t) (closed form).
func TestEllipseTouch(t *testing.T) {
	const a, b, tilt = 0.125, 0.078, 0.4
	center := Vec{0.2, -0.1}
	e := must(EllipseFromAxes(center, a, b, tilt))
	place := TurnThenShift(tilt, center)
	for i := range 50 {
		sin, cos := math.Sincos(float64(i) / 7)
		want := place.Point(Vec{a * cos, b * sin})
		phi := place.Turn(Vec{b * cos, a * sin}).Angle()
		if got := Touch(e, phi); got.Sub(want).Norm() > 1e-15 {
			t.Errorf("at t = %.3f: touches %v, want %v", float64(i)/7, got, want)
		}
	}
}

func TestEllipseRefuses(t *testing.T) {
	for _, c := range []struct {
		name                string
		center              Vec
		along, across, tilt float64
	}{
		{"no width", Vec{}, 0.1, 0, 0},
		{"negative axis", Vec{}, -0.1, 0.2, 0},
		{"a bar", Vec{}, 0.1, 0.00009, 0},
		{"millimetres taken for metres", Vec{}, 125, 78, 0},
		{"axis not a number", Vec{}, math.NaN(), 0.1, 0},
		{"centre not a number", Vec{math.NaN(), 0}, 0.2, 0.1, 0},
		{"endless tilt", Vec{}, 0.2, 0.1, math.Inf(1)},
	} {
		if _, err := EllipseFromAxes(c.center, c.along, c.across, Angle(c.tilt)); err == nil {
			t.Errorf("%s: accepted", c.name)
		}
	}
}
