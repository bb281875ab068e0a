package planar

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
)

// TestArcSigns: laid round in the rope's sense an arc is positive, past the
// point where it would have to lift off it is negative; a pin holds none.
func TestArcSigns(t *testing.T) {
	o := Circle{Radius: 0.1}
	for _, c := range []struct {
		name     string
		o        Outline
		side     Side
		from, to Angle
		want     float64
	}{
		{"quarter turn to the left", o, Left, 0, math.Pi / 2, 0.1 * math.Pi / 2},
		{"quarter turn to the right", o, Right, 0, -math.Pi / 2, 0.1 * math.Pi / 2},
		{"two turns", o, Left, 1, 1 + 4*math.Pi, 0.4 * math.Pi},
		{"lifted off on the left", o, Left, 0, -0.2, -0.02},
		{"lifted off on the right", o, Right, 0, 0.2, -0.02},
		{"a pin", nil, Left, 0, 2, 0},
	} {
		if got := Arc(c.o, c.side, c.from, c.to); math.Abs(got-c.want) > 1e-15 {
			t.Errorf("%s: %.16f m, want %.16f m", c.name, got, c.want)
		}
	}
}

// ropeLength returns the length of a rope from the far end of a span to the
// body-frame normal ref on the outline it runs to.
func ropeLength(s *Span, w *Wrapped, ref Angle) float64 {
	return s.Length + Arc(w.Outline, w.Side, s.NormalTo, ref)
}

// TestLengthChangesByMomentArm turns cams about the origin and holds the
// change of rope length per rad, by differences, against the support function:
// by virtual work it is the rope's moment arm, dL/dq = Side · h.
func TestLengthChangesByMomentArm(t *testing.T) {
	const step = 1e-6
	r := rand.New(rand.NewPCG(31, 32))
	for name, o := range outlines() {
		for range 20 {
			w := &Wrapped{Outline: o, Side: Left}
			if r.IntN(2) == 0 {
				w.Side = Right
			}
			w.Turn = Angle(6 * r.NormFloat64())
			w.At = TurnThenShift(w.Turn, Vec{})
			from := pin(Polar(0.5+r.Float64(), Angle(7*r.Float64())))
			if r.IntN(2) == 0 {
				from = disc(from.Center, 0.1, Side(2*r.IntN(2)-1))
			}
			var s, less, more Span
			low, high := moved(w, -step, Vec{}), moved(w, step, Vec{})
			if err := errors.Join(FirstTangent(from, w, &s), CommonTangent(from, low, s.Direction, &less), CommonTangent(from, high, s.Direction, &more)); err != nil {
				t.Errorf("%s: %v", name, err)
				continue
			}
			// The far end may be a sheave at rest, whose arc changes too.
			arc := Arc(from.Outline, from.Side, less.NormalFrom, more.NormalFrom)
			got := (ropeLength(&more, high, s.NormalTo) - ropeLength(&less, low, s.NormalTo) + arc) / (2 * step)
			h, _ := o.Support(s.NormalTo)
			if want := float64(w.Side) * h; math.Abs(got-want) > 3e-7 {
				t.Errorf("%s, side %d: dL/dq %.9f m, moment arm %.9f m", name, w.Side, got, want)
			}
			if arm := s.To.Cross(s.Unit); math.Abs(arm-float64(w.Side)*h) > 1e-12 {
				t.Errorf("%s, side %d: To × Unit %.15f m, moment arm %.15f m", name, w.Side, arm, float64(w.Side)*h)
			}
		}
	}
}

// TestLengthChangesByPull shifts both ends and holds the change of length
// against the rope's direction: dL = Unit · (dTo - dFrom).
func TestLengthChangesByPull(t *testing.T) {
	const step = 1e-6
	eachPair(3, func(name string, r *rand.Rand, a, b *Wrapped) {
		da, db := Vec{r.NormFloat64(), r.NormFloat64()}, Vec{r.NormFloat64(), r.NormFloat64()}
		var s, less, more Span
		if err := errors.Join(
			FirstTangent(a, b, &s),
			CommonTangent(moved(a, 0, da.Scale(-step)), moved(b, 0, db.Scale(-step)), s.Direction, &less),
			CommonTangent(moved(a, 0, da.Scale(step)), moved(b, 0, db.Scale(step)), s.Direction, &more),
		); err != nil {
			t.Errorf("%s: %v", name, err)
			return
		}
		change := more.Length - less.Length +
			Arc(a.Outline, a.Side, less.NormalFrom, more.NormalFrom) + Arc(b.Outline, b.Side, more.NormalTo, less.NormalTo)
		if got, want := change/(2*step), s.Unit.Dot(db.Sub(da)); math.Abs(got-want) > 2e-6 {
			t.Errorf("%s: length changes by %.9f, want %.9f", name, got, want)
		}
	})
}
