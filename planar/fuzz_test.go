package planar

import (
	"encoding/binary"
	"errors"
	"math"
	"testing"
)

// numbers reads data as float64s.
func numbers(data []byte) []float64 {
	var all []float64
	for ; len(data) >= 8; data = data[8:] {
		all = append(all, math.Float64frombits(binary.LittleEndian.Uint64(data)))
	}
	return all
}

// bytesOf is the reverse of numbers.
func bytesOf(points []Vec) []byte {
	var data []byte
	for _, p := range points {
		data = binary.LittleEndian.AppendUint64(data, math.Float64bits(p.X))
		data = binary.LittleEndian.AppendUint64(data, math.Float64bits(p.Y))
	}
	return data
}

// tracedFrom reads points from data and marks the corners of a bit mask.
func tracedFrom(data []byte, marks uint64) (*Traced, error) {
	values := numbers(data)
	points := make([]Vec, len(values)/2)
	var corners []int
	for i := range points {
		points[i] = Vec{values[2*i], values[2*i+1]}
		if marks>>(i%64)&1 == 1 {
			corners = append(corners, i)
		}
	}
	return TracedThrough(points, corners...)
}

// FuzzTraced: any points are refused with a reason or give a convex outline
// with finite numbers.
func FuzzTraced(f *testing.F) {
	f.Add(bytesOf([]Vec{{0, 0}, {0.1, 0}, {0.1, 0.1}, {0, 0.1}}), uint64(0))
	f.Add(bytesOf([]Vec{{0, 0}, {0.1, 0}, {0.1, 0.1}, {0.05, 0.02}, {0, 0.1}}), uint64(0b10011))
	f.Add(bytesOf([]Vec{{0, 0}, {100, 0}, {0, 1e-4}}), uint64(0))
	f.Add(bytesOf(onCircle(Circle{Vec{1, 2}, 0.1}, 12)), uint64(1))
	f.Fuzz(func(t *testing.T, data []byte, marks uint64) {
		if len(data) > 16*64 {
			return
		}
		o, err := tracedFrom(data, marks)
		if err != nil {
			return
		}
		perimeter := o.Perimeter()
		if !(perimeter > 0 && perimeter < 1e4) || !(o.Area() > 0) {
			t.Fatalf("perimeter %g m, area %g m²", perimeter, o.Area())
		}
		last := 0.0
		for i := range 400 {
			phi := Angle(i) * 2 * math.Pi / 400
			h, dh := o.Support(phi)
			length := o.Length(phi)
			if math.Abs(h) > 1000 || math.Abs(dh) > 1000 || math.IsNaN(h+dh) {
				t.Fatalf("h %g m, h' %g m at %g rad", h, dh, phi)
			}
			if !(length >= last-1e-12*perimeter && length <= perimeter*(1+1e-12)) {
				t.Fatalf("length %g m after %g m at %g rad, perimeter %g m", length, last, phi, perimeter)
			}
			last = length
			for _, p := range []Vec{Touch(o, phi+1), Touch(o, phi+3)} {
				if over := p.Dot(Polar(1, phi)) - h; over > 1e-9*(perimeter+1) {
					t.Fatalf("the outline reaches %g m over its tangent at %g rad", over, phi)
				}
			}
		}
	})
}

// FuzzCommonTangent: whatever the pose, a rope piece is refused with a reason or
// is finite and touches both ends.
func FuzzCommonTangent(f *testing.F) {
	cam := bytesOf(benchCam(f).Points()[:30])
	f.Add(cam, uint64(0), 0.5, 0.2, 1.0, 0.05, 0.3, true)
	f.Add(bytesOf([]Vec{{0, 0}, {0.1, 0}, {0.1, 0.1}, {0, 0.1}}), uint64(15), 0.15, 0.05, 0.0, 0.05, 3.0, false)
	f.Add(bytesOf([]Vec{{0, 0}, {0.1, 0}, {0.1, 0.1}}), uint64(7), 0.1, 0.1, 0.0, 0.0, 0.0, false)
	f.Fuzz(func(t *testing.T, data []byte, marks uint64, x, y, turn, radius, guess float64, crossed bool) {
		if len(data) > 16*32 {
			return
		}
		for _, v := range []float64{x, y, turn, guess} {
			if !(math.Abs(v) <= 100) {
				return
			}
		}
		if !(radius >= 0 && radius <= 100) {
			return
		}
		o, err := tracedFrom(data, marks)
		if err != nil {
			return
		}
		cam := &Wrapped{Outline: o, At: TurnThenShift(Angle(turn), Vec{}), Turn: Angle(turn), Side: Left}
		side := Left
		if crossed {
			side = Right
		}
		for _, other := range []*Wrapped{
			{Outline: Circle{Radius: radius}, At: TurnThenShift(0, Vec{x, y}), Side: side},
			{Outline: o, At: TurnThenShift(1, Vec{x, y}), Turn: 1, Side: side},
		} {
			var s Span
			if err := CommonTangent(cam, other, Angle(guess), &s); err != nil {
				checkRefusal(t, err)
				continue
			}
			if !s.From.Finite() || !s.To.Finite() || math.Abs(s.Unit.Norm()-1) > 1e-12 || !(s.Length >= 0) {
				t.Fatalf("span %+v", s)
			}
			if math.Abs(float64(s.Direction)-guess) > math.Pi+1e-9 {
				t.Fatalf("direction %g rad from guess %g rad", s.Direction, guess)
			}
			scale := 1 + o.Perimeter() + radius + math.Hypot(x, y)
			if over := max(beyond(cam, &s), beyond(other, &s)); over > 1e-8*scale {
				t.Fatalf("an outline reaches %g m over the rope %+v", over, s)
			}
			if clear := Clearance(cam, s.From, s.To); !(math.Abs(clear) <= 1000) {
				t.Fatalf("clearance %g m", clear)
			}
		}
	})
}

func checkRefusal(t *testing.T, err error) {
	var overlap *OverlapError
	var inside *InsideError
	switch {
	case errors.As(err, &overlap):
		if !(overlap.Gap < 0) {
			t.Fatalf("refused for a gap of %g m", overlap.Gap)
		}
	case errors.As(err, &inside):
		if !(inside.Depth > 0) {
			t.Fatalf("refused for a depth of %g m", inside.Depth)
		}
	default:
		t.Fatal(err)
	}
}
