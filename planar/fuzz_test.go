package planar

import (
	"encoding/binary"
	"errors"
	"math"
	"testing"
)

// tracedFrom reads points as pairs of 16-bit whole numbers, times unit in m, and
// marks the corners of a bit mask.
func tracedFrom(data []byte, unit float64, marks uint64) (*Traced, error) {
	var points []Vec
	var corners []int
	for i := 0; len(data) >= 4; i++ {
		x, y := int16(binary.LittleEndian.Uint16(data)), int16(binary.LittleEndian.Uint16(data[2:]))
		points = append(points, Vec{float64(x) * unit, float64(y) * unit})
		if marks>>(i%64)&1 == 1 {
			corners = append(corners, i)
		}
		data = data[4:]
	}
	return TracedThrough(points, corners...)
}

// bytesOf is the reverse, for points in tenths of a millimetre.
func bytesOf(points ...Vec) []byte {
	var data []byte
	for _, p := range points {
		data = binary.LittleEndian.AppendUint16(data, uint16(int16(math.Round(p.X*1e4))))
		data = binary.LittleEndian.AppendUint16(data, uint16(int16(math.Round(p.Y*1e4))))
	}
	return data
}

// FuzzTraced: any points are refused with a reason or give a convex outline
// with finite numbers.
func FuzzTraced(f *testing.F) {
	f.Add(bytesOf(Vec{0, 0}, Vec{0.1, 0}, Vec{0.1, 0.1}, Vec{0, 0.1}), 1e-4, uint64(0))
	f.Add(bytesOf(Vec{0, 0}, Vec{0.1, 0}, Vec{0.1, 0.1}, Vec{0.05, 0.02}, Vec{0, 0.1}), 1e-4, uint64(0b10011))
	f.Add(bytesOf(Vec{0, 0}, Vec{1, 0}, Vec{0, 1e-4}), 2e-3, uint64(0))
	f.Add(bytesOf(onCircle(Circle{Vec{1, 2}, 0.1}, 12)...), 1e-4, uint64(1))
	f.Add(bytesOf(benchCam(f).Points()...), 1e-4, uint64(0))
	// The turn of a whole tip in a small part of one span between points.
	f.Add([]byte("\x00\x0000\xf4\xf4\xf4\xf4\xf4\xf4010001\f\x01200010"), 0.002857142857142857, uint64(29))
	f.Fuzz(func(t *testing.T, data []byte, unit float64, marks uint64) {
		if len(data) > 4*256 {
			return
		}
		o, err := tracedFrom(data, unit, marks)
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
	f.Add(bytesOf(benchCam(f).Points()...), uint64(0), 0.5, 0.2, 1.0, 0.05, 0.3, true)
	f.Add(bytesOf(Vec{0, 0}, Vec{0.1, 0}, Vec{0.1, 0.1}, Vec{0, 0.1}), uint64(15), 0.15, 0.05, 0.0, 0.05, 3.0, false)
	f.Add(bytesOf(Vec{0, 0}, Vec{0.1, 0}, Vec{0.1, 0.1}), uint64(7), 0.1, 0.1, 0.0, 0.0, 0.0, false)
	// A rope straight against the guess, on the seam of the search.
	f.Add(bytesOf(Vec{0, 0}, Vec{0.1, 0}, Vec{0.1, 0.1}), uint64(7), -26.9, 0.1, 0.0, 0.0, 0.0, false)
	f.Fuzz(func(t *testing.T, data []byte, marks uint64, x, y, turn, radius, guess float64, crossed bool) {
		if len(data) > 4*256 {
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
		o, err := tracedFrom(data, 1e-4, marks)
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
