package planar

import (
	"math"
	"testing"
)

// benchCam is a cam as a coach traces it: 24 points round an oval with a hollow.
func benchCam(tb testing.TB) *Traced {
	points := make([]Vec, 24)
	for i := range points {
		a := Angle(i) * 2 * math.Pi / 24
		points[i] = Polar(0.1+0.03*math.Cos(float64(a))+0.008*math.Cos(2*float64(a)), a)
	}
	o, err := TracedThrough(points)
	if err != nil {
		tb.Fatal(err)
	}
	return o
}

func BenchmarkSupport(b *testing.B) {
	ellipse, err := EllipseFromAxes(Vec{0.02, 0}, 0.125, 0.078, 0.3)
	if err != nil {
		b.Fatal(err)
	}
	for _, c := range []struct {
		name    string
		outline Outline
	}{{"circle", Circle{Radius: 0.1}}, {"ellipse", ellipse}, {"traced", benchCam(b)}} {
		b.Run(c.name, func(b *testing.B) {
			sum, phi := 0.0, Angle(0)
			for b.Loop() {
				h, dh := c.outline.Support(phi)
				sum += h + dh
				phi += 0.37
			}
			if math.IsNaN(sum) {
				b.Fatal("not a number")
			}
		})
		b.Run(c.name+" length", func(b *testing.B) {
			sum, phi := 0.0, Angle(0)
			for b.Loop() {
				sum += c.outline.Length(phi)
				phi += 0.37
			}
			if math.IsNaN(sum) {
				b.Fatal("not a number")
			}
		})
	}
}

// BenchmarkCommonTangent follows a rope while one body turns by 1° a step, the
// step of a sweep over 101 poses.
func BenchmarkCommonTangent(b *testing.B) {
	cam := benchCam(b)
	sheave := &Wrapped{Outline: Circle{Radius: 0.05}, At: TurnThenShift(0, Vec{0.9, 0.4}), Side: Right}
	other := &Wrapped{Outline: cam, At: TurnThenShift(0.4, Vec{0.9, 0.4}), Turn: 0.4, Side: Right}
	for _, c := range []struct {
		name     string
		from, to *Wrapped
	}{
		{"circle-circle", &Wrapped{Outline: Circle{Radius: 0.1}, Side: Left}, sheave},
		{"point-circle", &Wrapped{Center: Vec{0.1, 0}, Side: Left}, sheave},
		{"traced-point", &Wrapped{Outline: cam, Side: Left}, &Wrapped{Center: Vec{0.9, 0.4}, At: Rest()}},
		{"traced-circle", &Wrapped{Outline: cam, Side: Left}, sheave},
		{"traced-traced", &Wrapped{Outline: cam, Side: Left}, other},
	} {
		poses := make([]Wrapped, 360)
		for i := range poses {
			poses[i] = *c.from
			poses[i].Turn = Angle(i) * Degree
			poses[i].At = TurnThenShift(poses[i].Turn, Vec{})
		}
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			var span Span
			if err := FirstTangent(&poses[0], c.to, &span); err != nil {
				b.Fatal(err)
			}
			i := 0
			for b.Loop() {
				if err := CommonTangent(&poses[i], c.to, span.Direction, &span); err != nil {
					b.Fatal(err)
				}
				i = (i + 1) % 360
			}
		})
	}
}

func BenchmarkFirstTangent(b *testing.B) {
	cam := benchCam(b)
	from := &Wrapped{Outline: cam, At: Rest(), Side: Left}
	to := &Wrapped{Outline: cam, At: TurnThenShift(0.4, Vec{0.9, 0.4}), Turn: 0.4, Side: Right}
	b.ReportAllocs()
	var span Span
	for b.Loop() {
		if err := FirstTangent(from, to, &span); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkClearance(b *testing.B) {
	for _, c := range []struct {
		name    string
		outline Outline
	}{{"circle", Circle{Radius: 0.1}}, {"traced", benchCam(b)}} {
		w := &Wrapped{Outline: c.outline, At: Rest()}
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if Clearance(w, Vec{-1, 0.3}, Vec{1, 0.2}) < 0 {
					b.Fatal("the line misses the outline")
				}
			}
		})
	}
}

func BenchmarkTracedThrough(b *testing.B) {
	points := benchCam(b).Points()
	step := len(points) / 48
	var traced []Vec
	for i := 0; i < len(points); i += step {
		traced = append(traced, points[i])
	}
	for b.Loop() {
		if _, err := TracedThrough(traced); err != nil {
			b.Fatal(err)
		}
	}
}
