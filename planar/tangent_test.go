package planar

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

// disc returns a disc of radius r at c, at rest.
func disc(c Vec, r float64, side Side) *Wrapped {
	return &Wrapped{Outline: Circle{c, r}, At: Rest(), Side: side}
}

// pin returns a point at rest.
func pin(p Vec) *Wrapped { return &Wrapped{Center: p, At: Rest(), Side: Left} }

// held returns an outline at rest.
func held(o Outline, side Side) *Wrapped { return &Wrapped{Outline: o, At: Rest(), Side: side} }

// moved returns w carried along by a further motion of its body.
func moved(w *Wrapped, turn Angle, shift Vec) *Wrapped {
	m := *w
	m.At = TurnThenShift(w.Turn+turn, w.At.Shift.turned(turn).Add(shift))
	m.Turn += turn
	return &m
}

func (v Vec) turned(a Angle) Vec { return TurnThenShift(a, Vec{}).Point(v) }

// once returns the angle equivalent to a that a rope, turning round an outline
// on the given side, comes to less than a turn after from.
func once(side Side, from, a Angle) Angle {
	return a.Near(from + Angle(side)*math.Pi)
}

// TestBeltLength closes a belt over two pulleys of diameter 200 mm and 100 mm,
// centres 500 mm apart.
//
// Source: open belt 2√(d² - (R-r)²) + π(R+r) + 2(R-r) asin((R-r)/d), crossed
// belt 2√(d² - (R+r)²) + (R+r)(π + 2 asin((R+r)/d)), evaluated with mpmath.
func TestBeltLength(t *testing.T) {
	for _, c := range []struct {
		name  string
		small Side
		want  float64 // m
	}{
		{"open", Left, 1.47624307726},
		{"crossed", Right, 1.51658589566},
	} {
		big, small := disc(Vec{}, 0.1, Left), disc(Vec{0.5, 0}, 0.05, c.small)
		var out, back Span
		if err := errors.Join(FirstTangent(big, small, &out), FirstTangent(small, big, &back)); err != nil {
			t.Fatal(err)
		}
		got := out.Length + back.Length +
			Arc(small.Outline, c.small, out.NormalTo, once(c.small, out.NormalTo, back.NormalFrom)) +
			Arc(big.Outline, Left, back.NormalTo, once(Left, back.NormalTo, out.NormalFrom))
		if math.Abs(got-c.want) > 1e-11 {
			t.Errorf("%s belt: %.12f m, want %.12f m", c.name, got, c.want)
		}
	}
}

// TestTangentTriangles has right triangles with whole sides (closed form).
func TestTangentTriangles(t *testing.T) {
	for _, c := range []struct {
		name           string
		a, b           *Wrapped
		unit           Vec
		length         float64
		from, to       Vec
		normFrom, norm Angle
	}{
		{"two pins", pin(Vec{1, 1}), pin(Vec{4, 5}), Vec{0.6, 0.8}, 5, Vec{1, 1}, Vec{4, 5}, 0, 0},
		// Radius 3, distance 5, tangent 4; foot of the altitude 9/5 before the centre.
		{"pin to sheave on the left", pin(Vec{}), disc(Vec{5, 0}, 3, Left), Vec{0.8, -0.6}, 4, Vec{}, Vec{3.2, -2.4}, 0, 0},
		{"pin to sheave on the right", pin(Vec{}), disc(Vec{5, 0}, 3, Right), Vec{0.8, 0.6}, 4, Vec{}, Vec{3.2, 2.4}, 0, 0},
		{"sheave to pin", disc(Vec{5, 0}, 3, Left), pin(Vec{}), Vec{-0.8, -0.6}, 4, Vec{3.2, 2.4}, Vec{}, 0, 0},
		// Radii 1 and 4 at distance 5: the difference is 3, the sum 5.
		{"open belt", disc(Vec{}, 1, Left), disc(Vec{5, 0}, 4, Left), Vec{0.8, -0.6}, 4, Vec{-0.6, -0.8}, Vec{2.6, -3.2}, 0, 0},
		{"open belt, other side", disc(Vec{}, 1, Right), disc(Vec{5, 0}, 4, Right), Vec{0.8, 0.6}, 4, Vec{-0.6, 0.8}, Vec{2.6, 3.2}, 0, 0},
		{"crossed belt", disc(Vec{}, 1, Left), disc(Vec{5, 0}, 2, Right), Vec{0.8, 0.6}, 4, Vec{0.6, -0.8}, Vec{3.8, 1.6}, 0, 0},
		{"crossed belt between touching sheaves", disc(Vec{}, 1, Left), disc(Vec{5, 0}, 4, Right), Vec{0, 1}, 0, Vec{1, 0}, Vec{1, 0}, 0, 0},
	} {
		var s Span
		if err := FirstTangent(c.a, c.b, &s); err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		for _, v := range [][2]Vec{{s.Unit, c.unit}, {s.From, c.from}, {s.To, c.to}} {
			if v[0].Sub(v[1]).Norm() > 1e-14 {
				t.Errorf("%s: got %v, want %v", c.name, v[0], v[1])
			}
		}
		if math.Abs(s.Length-c.length) > 1e-14 {
			t.Errorf("%s: length %.16f, want %g", c.name, s.Length, c.length)
		}
	}
}

// sides are the four ways in which a rope may run between two outlines.
var sides = [][2]Side{{Left, Left}, {Left, Right}, {Right, Left}, {Right, Right}}

// eachPair calls f with outlines of every kind, apart from each other and
// turned at random, and with pins.
func eachPair(seed uint64, f func(name string, r *rand.Rand, a, b *Wrapped)) {
	r := rand.New(rand.NewPCG(seed, 0))
	all := outlines()
	names := make([]string, 0, len(all))
	for name := range all {
		names = append(names, name)
	}
	slices.Sort(names)
	place := func(name string, side Side, at Vec) *Wrapped {
		turn := Angle(8 * r.NormFloat64())
		if r.IntN(6) == 0 {
			return &Wrapped{Center: Vec{0.1, 0.05}, At: TurnThenShift(turn, at), Turn: turn, Side: side}
		}
		return &Wrapped{Outline: all[name], At: TurnThenShift(turn, at), Turn: turn, Side: side}
	}
	for _, name := range names {
		for range 6 {
			other := names[r.IntN(len(names))]
			for _, side := range sides {
				at := Vec{0.1 * r.NormFloat64(), 0.1 * r.NormFloat64()}
				away := Polar(0.7+r.Float64(), Angle(7*r.Float64()))
				f(name+" to "+other, r, place(name, side[0], at), place(other, side[1], at.Add(away)))
			}
		}
	}
}

// beyond returns how far w reaches over the rope's line on the side on which
// it should not lie, m.
func beyond(w *Wrapped, s *Span) float64 {
	left := s.Unit.Perp().Scale(float64(w.Side))
	if w.Outline == nil {
		return math.Abs(w.At.Point(w.Center).Sub(s.From).Dot(left))
	}
	worst := math.Inf(-1)
	for i := range 400 {
		p := w.At.Point(Touch(w.Outline, Angle(i)*2*math.Pi/400))
		worst = max(worst, -p.Sub(s.From).Dot(left))
	}
	return worst
}

// TestSpanTouchesBoth: the line of the rope touches both outlines, each lies
// wholly on its side, and what the span tells of itself agrees.
func TestSpanTouchesBoth(t *testing.T) {
	eachPair(1, func(name string, r *rand.Rand, a, b *Wrapped) {
		var s Span
		if err := FirstTangent(a, b, &s); err != nil {
			t.Errorf("%s: %v", name, err)
			return
		}
		if over := max(beyond(a, &s), beyond(b, &s)); over > 1e-12 {
			t.Errorf("%s: an outline reaches %g m over the rope", name, over)
		}
		if miss := s.To.Sub(s.From).Sub(s.Unit.Scale(s.Length)).Norm(); miss > 3e-12 || s.Length <= 0 {
			t.Errorf("%s: length %g m misses the far end by %g m", name, s.Length, miss)
		}
		if miss := s.Unit.Sub(Polar(1, s.Direction)).Norm(); miss > 1e-14 {
			t.Errorf("%s: unit and direction differ by %g", name, miss)
		}
		for _, end := range []struct {
			w      *Wrapped
			normal Angle
			touch  Vec
		}{{a, s.NormalFrom, s.From}, {b, s.NormalTo, s.To}} {
			want := s.Direction - Angle(end.w.Side)*math.Pi/2 - end.w.Turn
			if end.normal != want {
				t.Errorf("%s: normal %g rad, want %g rad", name, end.normal, want)
			}
			if end.w.Outline == nil {
				continue
			}
			if miss := end.w.At.Point(Touch(end.w.Outline, end.normal)).Sub(end.touch).Norm(); miss > 1e-12 {
				t.Errorf("%s: touching point is off by %g m", name, miss)
			}
			h, _ := end.w.Outline.Support(end.normal)
			arm := end.touch.Sub(end.w.At.Shift).Cross(s.Unit)
			if want := float64(end.w.Side) * h; math.Abs(arm-want) > 1e-12 {
				t.Errorf("%s: moment of the unit rope force %.15f m, Side · h %.15f m", name, arm, want)
			}
		}

		guess := s.Direction + Angle(0.3*r.NormFloat64()) + Angle(2*math.Pi*float64(r.IntN(5)-2))
		var again Span
		if err := CommonTangent(a, b, guess, &again); err != nil {
			t.Errorf("%s: %v", name, err)
			return
		}
		if math.Abs(float64(again.Direction-s.Direction.Near(guess))) > 1e-11 {
			t.Errorf("%s: direction %.13f rad from guess %.3f rad, want %.13f rad", name, again.Direction, guess, s.Direction)
		}
	})
}

// TestSpanSymmetry: walked the other way, mirrored, and moved as a whole, the
// rope piece is the same.
func TestSpanSymmetry(t *testing.T) {
	eachPair(2, func(name string, r *rand.Rand, a, b *Wrapped) {
		var s, back, away Span
		turn, shift := Angle(9*r.NormFloat64()), Vec{r.NormFloat64(), r.NormFloat64()}
		a2, b2 := moved(a, turn, shift), moved(b, turn, shift)
		a1, b1 := *a, *b
		a1.Side, b1.Side = -a.Side, -b.Side
		if err := errors.Join(FirstTangent(a, b, &s), FirstTangent(&b1, &a1, &back), FirstTangent(a2, b2, &away)); err != nil {
			t.Errorf("%s: %v", name, err)
			return
		}
		if miss := max(back.From.Sub(s.To).Norm(), back.To.Sub(s.From).Norm()); miss > 1e-10 {
			t.Errorf("%s: walked backwards it is off by %g m", name, miss)
		}
		m := TurnThenShift(turn, shift)
		if miss := max(away.From.Sub(m.Point(s.From)).Norm(), away.To.Sub(m.Point(s.To)).Norm()); miss > 1e-10 {
			t.Errorf("%s: moved as a whole it is off by %g m", name, miss)
		}
	})
}

// TestMirroredSpan: a cam mirrored in the x axis, with the sides exchanged,
// gives the mirror image.
func TestMirroredSpan(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	for range 50 {
		points := wobbly(r, 12)
		mirrored := make([]Vec, len(points))
		for i, p := range points {
			mirrored[i] = Vec{p.X, -p.Y}
		}
		c, side := Vec{1, r.NormFloat64()}, sides[r.IntN(4)]
		var s, image Span
		if err := errors.Join(
			FirstTangent(held(must(TracedThrough(points)), side[0]), disc(c, 0.1, side[1]), &s),
			FirstTangent(held(must(TracedThrough(mirrored)), -side[0]), disc(Vec{c.X, -c.Y}, 0.1, -side[1]), &image),
		); err != nil {
			t.Fatal(err)
		}
		want := Vec{s.From.X, -s.From.Y}
		if math.Abs(image.Length-s.Length) > 1e-12 || image.From.Sub(want).Norm() > 1e-12 || math.Abs(float64(image.Direction+s.Direction)) > 1e-12 {
			t.Errorf("%v: length %.13f m, mirrored %.13f m; leaves at %v, want %v", side, s.Length, image.Length, image.From, want)
		}
	}
}

// TestTracedCircleTangent: a circle traced finely gives the tangent of the
// circle, which is in closed form.
func TestTracedCircleTangent(t *testing.T) {
	traced := must(TracedThrough(onCircle(Circle{Radius: 0.1}, 96)))
	for _, side := range sides {
		var got, want Span
		sheave := disc(Vec{0.6, 0.2}, 0.05, side[1])
		if err := errors.Join(FirstTangent(held(traced, side[0]), sheave, &got), FirstTangent(disc(Vec{}, 0.1, side[0]), sheave, &want)); err != nil {
			t.Fatal(err)
		}
		if miss := max(got.From.Sub(want.From).Norm(), got.To.Sub(want.To).Norm()); miss > 1e-6 || math.Abs(got.Length-want.Length) > 1e-6 {
			t.Errorf("%v: off by %g m, length %.9f m, want %.9f m", side, miss, got.Length, want.Length)
		}
	}
}

// TestTangentRefuses lists ends that no rope joins, with the depth in closed
// form.
func TestTangentRefuses(t *testing.T) {
	square := must(Polygon(Vec{-0.1, -0.1}, Vec{0.1, -0.1}, Vec{0.1, 0.1}, Vec{-0.1, 0.1}))
	small := must(TracedThrough(onCircle(Circle{Radius: 0.05}, 96)))
	shifted := func(o Outline, by Vec, side Side) *Wrapped {
		return &Wrapped{Outline: o, At: TurnThenShift(0, by), Side: side}
	}
	for _, c := range []struct {
		name  string
		a, b  *Wrapped
		gap   float64 // m, of an *OverlapError
		depth float64 // m, of an *InsideError
	}{
		{"sheaves overlap 20 mm, crossed", disc(Vec{}, 0.1, Left), disc(Vec{0.13, 0}, 0.05, Right), -0.02, 0},
		{"the same from the other side", disc(Vec{}, 0.1, Right), disc(Vec{0.13, 0}, 0.05, Left), -0.02, 0},
		{"square overlaps sheave 10 mm", held(square, Left), disc(Vec{0.14, 0.02}, 0.05, Right), -0.01, 0},
		{"square overlaps square 30 mm", held(square, Right), shifted(square, Vec{0.06, 0.17}, Left), -0.03, 0},
		{"pin in a sheave", pin(Vec{0.07, 0}), disc(Vec{}, 0.1, Left), 0, 0.03},
		{"pin in a square", held(square, Left), pin(Vec{0.02, -0.06}), 0, 0.04},
		{"sheave in a sheave", disc(Vec{0.02, 0}, 0.05, Left), disc(Vec{}, 0.1, Left), 0, 0.03},
		{"round cam in a square", held(square, Left), shifted(small, Vec{0.01, 0.02}, Left), 0, 0.03},
		{"concentric sheaves", disc(Vec{}, 0.05, Right), disc(Vec{}, 0.1, Right), 0, 0.05},
	} {
		s := Span{Length: 7}
		err := FirstTangent(c.a, c.b, &s)
		var overlap *OverlapError
		var inside *InsideError
		switch {
		case errors.As(err, &overlap):
			if math.Abs(overlap.Gap-c.gap) > 1e-7 {
				t.Errorf("%s: gap %.9f m, want %.9f m", c.name, overlap.Gap, c.gap)
			}
		case errors.As(err, &inside):
			if math.Abs(inside.Depth-c.depth) > 1e-7 {
				t.Errorf("%s: depth %.9f m, want %.9f m", c.name, inside.Depth, c.depth)
			}
			if inside.Point != strings.HasPrefix(c.name, "pin") {
				t.Errorf("%s: told of a point: %t", c.name, inside.Point)
			}
		default:
			t.Errorf("%s: got %v", c.name, err)
		}
		if s != (Span{Length: 7}) {
			t.Errorf("%s: the span was changed", c.name)
		}
	}
	if err := FirstTangent(pin(Vec{1, 2}), pin(Vec{1, 2}), new(Span)); !errors.Is(err, ErrCoincide) {
		t.Errorf("two pins in one place: got %v", err)
	}
}

// TestNarrowGap: a crossed rope squeezes through any gap, down to outlines that
// touch. It leaves the corner c of the square and runs to a round of radius r,
// so that its length is √(|c - m|² - r²), m the round's centre (closed form).
func TestNarrowGap(t *testing.T) {
	square := held(must(Polygon(Vec{-0.1, -0.1}, Vec{0.1, -0.1}, Vec{0.1, 0.1}, Vec{-0.1, 0.1})), Left)
	round := must(TracedThrough(onCircle(Circle{Radius: 0.05}, 96)))
	for _, gap := range []float64{1e-2, 1e-4, 1e-6, 1e-8, 1e-10, 0, -1e-10} {
		center := Vec{0.15 + gap, 0.02}
		at := &Wrapped{Outline: round, At: TurnThenShift(0, center), Side: Right}
		var s Span
		if err := FirstTangent(square, at, &s); err != nil {
			t.Errorf("gap %g m: %v", gap, err)
			continue
		}
		if over := max(beyond(square, &s), beyond(at, &s)); over > 1e-8 {
			t.Errorf("gap %g m: an outline reaches %g m over the rope", gap, over)
		}
		d := center.Sub(Vec{0.1, -0.1}).Norm()
		if want := math.Sqrt(d*d - 0.05*0.05); math.Abs(s.Length-want) > 1e-6 {
			t.Errorf("gap %g m: length %.9f m, want %.9f m", gap, s.Length, want)
		}
	}
}

// TestOverlappingSheavesOpenBelt: sheaves that overlap in side view, one behind
// the other, still have their outer tangents. The belt formula holds.
func TestOverlappingSheavesOpenBelt(t *testing.T) {
	var s Span
	if err := FirstTangent(disc(Vec{}, 0.1, Left), disc(Vec{0.08, 0}, 0.05, Left), &s); err != nil {
		t.Fatal(err)
	}
	if want := math.Sqrt(0.08*0.08 - 0.05*0.05); math.Abs(s.Length-want) > 1e-15 {
		t.Errorf("length %.15f m, want %.15f m", s.Length, want)
	}
}

// TestFollowingCountsTurns follows a rope from a pin to a cam turned three times
// round: the direction stays continuous, and so does the normal, which ends
// three turns back.
func TestFollowingCountsTurns(t *testing.T) {
	cam := held(benchCam(t), Left)
	var s Span
	if err := FirstTangent(pin(Vec{0.6, 0.3}), cam, &s); err != nil {
		t.Fatal(err)
	}
	first, before := s, s
	for i := 1; i <= 3*120; i++ {
		turn := Angle(i) * 3 * Degree
		w := moved(cam, turn, Vec{})
		if err := CommonTangent(pin(Vec{0.6, 0.3}), w, before.Direction, &s); err != nil {
			t.Fatal(err)
		}
		if jump := math.Abs(float64(s.Direction - before.Direction)); jump > 0.1 {
			t.Fatalf("direction jumps by %g rad at %g°", jump, turn.Degrees())
		}
		before = s
	}
	if math.Abs(float64(s.Direction-first.Direction)) > 1e-10 || math.Abs(float64(s.NormalTo-first.NormalTo)+6*math.Pi) > 1e-10 {
		t.Errorf("after three turns: direction off by %g rad, normal by %g rad, want 0 and -6π",
			s.Direction-first.Direction, s.NormalTo-first.NormalTo)
	}
}

// TestTangentAllocatesNothing, since it runs for every rope piece of every pose.
func TestTangentAllocatesNothing(t *testing.T) {
	cam := held(benchCam(t), Left)
	other := moved(cam, 1, Vec{0.8, 0.1})
	var s Span
	if n := testing.AllocsPerRun(100, func() {
		if err := errors.Join(FirstTangent(cam, other, &s), CommonTangent(cam, other, s.Direction, &s)); err != nil {
			t.Fatal(err)
		}
		Clearance(cam, Vec{-1, 0.05}, Vec{1, 0})
	}); n != 0 {
		t.Errorf("%g allocations", n)
	}
}
