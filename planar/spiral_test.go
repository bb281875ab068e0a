package planar

import (
	"math"
	"testing"
)

// TestLogSpiral: the length of an arc is (r₂ - r₁)√(1 + k²)/k, and the moment
// arm about the pole r/√(1 + k²) (closed forms; the first evaluated with mpmath
// to 12 digits).
func TestLogSpiral(t *testing.T) {
	const k = 0.22
	pole := Vec{0.3, -0.2}
	o := must(LogSpiral(Spiral{Pole: pole, Tilt: 0.5, Radius: 0.062, Growth: k, To: 230 * Degree}))

	// The normal lies atan k behind the radius.
	lag := Angle(0.5 - math.Atan(k))
	if got := o.Length(230*Degree+lag-1e-12) - o.Length(lag); math.Abs(got-0.409311338324) > 1e-10 {
		t.Errorf("length of the arc %.12f m, want 0.409311338324 m", got)
	}
	for _, deg := range []Angle{0, 1, 37.3, 120, 229} {
		phi := deg*Degree + lag
		h, _ := o.Support(phi)
		want := 0.062 * math.Exp(k*float64(deg*Degree)) / math.Sqrt(1+k*k)
		if got := h - pole.Dot(Polar(1, phi)); math.Abs(got-want) > 1e-10 {
			t.Errorf("moment arm at %g°: %.12f m, want %.12f m", deg, got, want)
		}
	}
}

// TestArithmeticSpiral: touching points lie on r = r₀ + cφ, and the length is
// c/2 (u√(1 + u²) + asinh u), u = r/c (closed form).
func TestArithmeticSpiral(t *testing.T) {
	const r0, c = 0.05, 0.02
	o := must(ArithmeticSpiral(Spiral{Radius: r0, Growth: c, From: -1, To: 2.5}))
	normal := func(phi float64) Angle { return Angle(phi - math.Atan(c/(r0+c*phi))) }
	along := func(phi float64) float64 {
		u := (r0 + c*phi) / c
		return c / 2 * (u*math.Sqrt(1+u*u) + math.Asinh(u))
	}
	for _, phi := range []float64{-0.9, 0, 0.77, 2.4} {
		want := Polar(r0+c*phi, Angle(phi))
		if got := Touch(o, normal(phi)); got.Sub(want).Norm() > 1e-8 {
			t.Errorf("at φ = %g: touches %v, want %v", phi, got, want)
		}
		if got, want := o.Length(normal(phi))-o.Length(normal(0)), along(phi)-along(0); math.Abs(got-want) > 3e-9 {
			t.Errorf("length to φ = %g: %.12f m, want %.12f m", phi, got, want)
		}
	}
}

// TestSpiralArea holds the closed forms against the shoelace formula on points
// of the spiral 2° apart, too small by about δ²/6 = 2e-4 of itself.
func TestSpiralArea(t *testing.T) {
	for name, o := range map[string]*Traced{
		"log":        must(LogSpiral(Spiral{Radius: 0.062, Growth: 0.22, To: 230 * Degree})),
		"circle":     must(LogSpiral(Spiral{Radius: 0.062, To: 300 * Degree})),
		"shrinking":  must(LogSpiral(Spiral{Radius: 0.2, Growth: -0.1, To: 300 * Degree})),
		"arithmetic": must(ArithmeticSpiral(Spiral{Radius: 0.05, Growth: 0.02, From: -1, To: 2.5})),
	} {
		want := polygonArea(o.Points())
		if ratio := o.Area() / want; ratio < 1 || ratio > 1+3e-4 {
			t.Errorf("%s: area %.9f m², polygon %.9f m²", name, o.Area(), want)
		}
	}
}

// TestSpiralBridgesItsStep: nearly a whole turn leaves a step between first and
// last point, which a rope bridges.
func TestSpiralBridgesItsStep(t *testing.T) {
	o := must(ArithmeticSpiral(Spiral{Radius: 0.062, Growth: 0.03, To: 330 * Degree}))
	if hollows := o.Hollows(); len(hollows) != 1 || hollows[0].Depth < 0.03 {
		t.Errorf("hollows %+v, want one deeper than 30 mm", hollows)
	}
}

func TestSpiralRefuses(t *testing.T) {
	for _, c := range []struct {
		name string
		s    Spiral
	}{
		{"no arc", Spiral{Radius: 0.1, Growth: 0.1}},
		{"backwards", Spiral{Radius: 0.1, From: 2, To: 1}},
		{"over itself", Spiral{Radius: 0.1, Growth: 0.1, To: 7}},
		{"no radius", Spiral{Growth: 0, To: 3}},
		{"runs into its pole", Spiral{Radius: 0.1, Growth: -40, To: 3}},
		{"growth not a number", Spiral{Radius: 0.1, Growth: math.NaN(), To: 3}},
		{"pole not a number", Spiral{Radius: 0.1, Pole: Vec{math.NaN(), 0}, To: 3}},
		{"endless tilt", Spiral{Radius: 0.1, Tilt: Angle(math.Inf(1)), To: 3}},
		{"millimetres taken for metres", Spiral{Radius: 120, To: 3}},
	} {
		if _, err := LogSpiral(c.s); err == nil {
			t.Errorf("%s: log spiral accepted", c.name)
		}
		if _, err := ArithmeticSpiral(c.s); err == nil {
			t.Errorf("%s: arithmetic spiral accepted", c.name)
		}
	}
}
