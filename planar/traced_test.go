package planar

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

// onCircle returns n points of a circle.
func onCircle(c Circle, n int) []Vec {
	points := make([]Vec, n)
	for i := range points {
		points[i] = c.Center.Add(Polar(c.Radius, 2*math.Pi*Angle(i)/Angle(n)))
	}
	return points
}

// worstArm returns the greatest difference of two moment arms over a turn.
func worstArm(a, b Outline) float64 {
	worst := 0.0
	for i := range 3600 {
		ha, _ := a.Support(Angle(i) * Degree / 10)
		hb, _ := b.Support(Angle(i) * Degree / 10)
		worst = max(worst, math.Abs(ha-hb))
	}
	return worst
}

// TestTracedCircle measures what the doc comment of TracedThrough claims, in
// mm: the claim must hold, and be no more than twice too careful.
func TestTracedCircle(t *testing.T) {
	circle := Circle{Vec{0.03, 0.01}, 0.1}
	for _, c := range []struct {
		points         int
		arm, perimeter float64 // mm
	}{
		{12, 0.021, 0.070},
		{24, 0.0013, 0.0042},
		{48, 0.00008, 0.0003},
	} {
		o := must(TracedThrough(onCircle(circle, c.points)))
		if arm := 1000 * worstArm(o, circle); arm > c.arm || arm < c.arm/2 {
			t.Errorf("%d points: moment arm is off by %.6f mm, claimed %.6f mm", c.points, arm, c.arm)
		}
		short := 1000 * (2*math.Pi*circle.Radius - o.Perimeter())
		if short > c.perimeter || short < c.perimeter/2 {
			t.Errorf("%d points: perimeter is short by %.6f mm, claimed %.6f mm", c.points, short, c.perimeter)
		}
		if area := math.Abs(o.Area()/(math.Pi*0.01) - 1); area > 3*c.perimeter/1000/0.6 {
			t.Errorf("%d points: area is off by the ratio %g", c.points, area)
		}
	}
}

// TestTracedEllipse and the half disc below do the same for a curve of changing
// curvature and for one with corners.
func TestTracedEllipse(t *testing.T) {
	e := must(EllipseFromAxes(Vec{}, 0.125, 0.078, 0))
	points := make([]Vec, 24)
	for i := range points {
		s, c := math.Sincos(2 * math.Pi * float64(i) / 24)
		points[i] = Vec{0.125 * c, 0.078 * s}
	}
	if arm := 1000 * worstArm(must(TracedThrough(points)), e); arm > 0.016 || arm < 0.008 {
		t.Errorf("24 points: moment arm is off by %.6f mm, claimed 0.016 mm", arm)
	}
}

func TestTracedHalfDisc(t *testing.T) {
	points := make([]Vec, 13)
	for i := range points {
		points[i] = Polar(0.1, math.Pi*Angle(i)/12)
	}
	o := must(TracedThrough(points, 0, 12))
	worst := 0.0
	for i := range 1000 {
		h, _ := o.Support(math.Pi * Angle(i) / 1000)
		worst = max(worst, 1000*math.Abs(h-0.1))
	}
	if worst > 0.006 || worst < 0.003 {
		t.Errorf("13 points: moment arm is off by %.6f mm, claimed 0.006 mm", worst)
	}
	if want := 0.2 + math.Pi*0.1; math.Abs(o.Perimeter()-want) > 5e-6 {
		t.Errorf("perimeter %.7f m, want %.7f m", o.Perimeter(), want)
	}
}

// TestReadingError measures the claim of the doc comment for points read to
// ±0.5 mm: 24 points on a circle, each off by up to that along and across.
func TestReadingError(t *testing.T) {
	circle := Circle{Vec{0.03, 0.01}, 0.1}
	r := rand.New(rand.NewPCG(9, 10))
	worst := 0.0
	for range 200 {
		points := onCircle(circle, 24)
		for i := range points {
			points[i] = points[i].Add(Vec{r.Float64() - 0.5, r.Float64() - 0.5}.Scale(0.001))
		}
		worst = max(worst, 1000*worstArm(must(TracedThrough(points)), circle))
	}
	if worst > 0.8 || worst < 0.4 {
		t.Errorf("moment arm is off by %.3f mm, claimed 0.8 mm", worst)
	}
}

// TestBarbier: every outline of constant width w has the perimeter πw.
//
// Source: J.-É. Barbier, "Note sur le problème de l'aiguille et le jeu du joint
// couvert", Journal de mathématiques pures et appliquées 5 (1860), from memory.
func TestBarbier(t *testing.T) {
	const w = 0.2
	for _, sides := range []int{3, 5, 7} {
		// A Reuleaux polygon: the arc opposite to each corner is centred on it.
		radius := w / (2 * math.Cos(math.Pi/float64(2*sides)))
		const perArc = 8
		var points []Vec
		var corners []int
		for i := range sides {
			a := Polar(radius, 2*math.Pi*Angle(i)/Angle(sides))
			b := Polar(radius, 2*math.Pi*Angle(i+1)/Angle(sides))
			middle := Polar(radius, 2*math.Pi*(Angle(i)+0.5)/Angle(sides)+math.Pi)
			from, sweep := a.Sub(middle).Angle(), math.Pi/Angle(sides)
			corners = append(corners, len(points))
			for k := range perArc {
				points = append(points, middle.Add(Polar(w, from+sweep*Angle(k)/perArc)))
			}
			if end := middle.Add(Polar(w, from+sweep)); end.Sub(b).Norm() > 1e-15 {
				t.Fatalf("%d sides: arc ends at %v, want %v", sides, end, b)
			}
		}
		o := must(TracedThrough(points, corners...))
		if math.Abs(o.Perimeter()-math.Pi*w) > 2e-6 {
			t.Errorf("%d sides: perimeter %.8f m, want %.8f m", sides, o.Perimeter(), math.Pi*w)
		}
		for i := range 100 {
			phi := Angle(i) * 0.0314
			a, _ := o.Support(phi)
			b, _ := o.Support(phi + math.Pi)
			if math.Abs(a+b-w) > 5e-6 {
				t.Errorf("%d sides at %.3f rad: width %.7f m, want %.7f m", sides, phi, a+b, w)
			}
		}
	}
}

// TestPolygon: the support function of a polygon is the greatest p·n of its
// corners, its perimeter that of the hull (closed form).
func TestPolygon(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	for range 50 {
		points := wobbly(r, 3+r.IntN(20))
		o := must(Polygon(points...))
		for range 100 {
			phi := Angle(14 * (r.Float64() - 0.5))
			want := hullSupport(points, phi)
			if h, _ := o.Support(phi); math.Abs(h-want) > 1e-15 {
				t.Fatalf("at %.3f rad: h %.16f m, want %.16f m", phi, h, want)
			}
		}
		if area := polygonArea(points); math.Abs(o.Area()-area) > 1e-16 {
			t.Errorf("area %.17f m², want %.17f m²", o.Area(), area)
		}
	}
	square := must(Polygon(Vec{}, Vec{1, 0}, Vec{1, 1}, Vec{0, 1}))
	if math.Abs(square.Perimeter()-4) > 1e-14 {
		t.Errorf("perimeter of the unit square %.16f m, want 4 m", square.Perimeter())
	}
}

// hullSupport returns the greatest p·n over points, a second road to the
// support function of their hull.
func hullSupport(points []Vec, phi Angle) float64 {
	n, most := Polar(1, phi), math.Inf(-1)
	for _, p := range points {
		most = max(most, p.Dot(n))
	}
	return most
}

// worstFromCurve returns the greatest difference between the moment arm of a
// traced outline and that of very many points of its spline.
func worstFromCurve(o *Traced, points []Vec, corners []int) float64 {
	c := curveThrough(points, corners)
	dense := make([]Vec, 200*len(points))
	for i := range dense {
		dense[i], _ = c.at(float64(i) / 200)
	}
	worst := 0.0
	for i := range 360 {
		phi := Angle(i) * Degree
		h, _ := o.Support(phi)
		worst = max(worst, math.Abs(h-hullSupport(dense, phi)))
	}
	return worst
}

func TestTracedIsHullOfCurve(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	bridged := 0
	for range 20 {
		n := 6 + r.IntN(20)
		points, corners := wobbly(r, n), someCorners(r, n)
		o := must(TracedThrough(points, corners...))
		bridged += len(o.Hollows())
		if worst := worstFromCurve(o, points, corners); worst > 1e-6 {
			t.Errorf("%d points, corners %v: moment arm is off by %.9f m", n, corners, worst)
		}
	}
	if bridged == 0 {
		t.Error("no outline had a hollow")
	}
}

// TestJaggedIsHullOfCurve does the same for outlines nobody would cut, with
// dips finer than the samples; those refused are left out.
func TestJaggedIsHullOfCurve(t *testing.T) {
	r := rand.New(rand.NewPCG(19, 20))
	kept := 0
	for range 100 {
		n := 5 + r.IntN(30)
		points, corners := wobbly(r, n), someCorners(r, n)
		for i := range points {
			points[i] = points[i].Add(Vec{r.Float64() - 0.5, r.Float64() - 0.5}.Scale(0.01))
		}
		o, err := TracedThrough(points, corners...)
		if err != nil {
			continue
		}
		kept++
		if worst := worstFromCurve(o, points, corners); worst > 2e-5 {
			t.Errorf("%d points, corners %v: moment arm is off by %.9f m", n, corners, worst)
		}
	}
	if kept < 80 {
		t.Errorf("%d of 100 outlines accepted, want at least 80", kept)
	}
}

// TestConvexByConstruction: no piece has a negative radius of curvature.
func TestConvexByConstruction(t *testing.T) {
	for name, o := range outlines() {
		traced, ok := o.(*Traced)
		if !ok {
			continue
		}
		for i, p := range traced.pieces {
			end := 2 * math.Pi
			if i+1 < len(traced.pieces) {
				end = traced.pieces[i+1].start
			}
			if last := p.rho + p.slope*(end-p.start); p.rho < 0 || last < -1e-12 {
				t.Errorf("%s: radius of curvature %g to %g m in piece %d", name, p.rho, last, i)
			}
			if end < p.start || end-p.start > widestPiece+1e-12 {
				t.Errorf("%s: piece %d is %g rad wide", name, i, end-p.start)
			}
		}
	}
}

// TestRigidMotion: points moved first give the outline moved.
func TestRigidMotion(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 16))
	for range 20 {
		n := 6 + r.IntN(20)
		points, corners := wobbly(r, n), someCorners(r, n)
		turn := Angle(6 * r.Float64())
		motion := TurnThenShift(turn, Vec{r.NormFloat64(), r.NormFloat64()})
		moved := make([]Vec, n)
		for i, p := range points {
			moved[i] = motion.Point(p)
		}
		a, b := must(TracedThrough(points, corners...)), must(TracedThrough(moved, corners...))
		for range 50 {
			phi := Angle(7 * r.Float64())
			h, _ := a.Support(phi - turn)
			want := h + motion.Shift.Dot(Polar(1, phi))
			if h, _ := b.Support(phi); math.Abs(h-want) > 1e-12 {
				t.Errorf("at %.3f rad: h %.15f m, want %.15f m", phi, h, want)
			}
		}
	}
}

// TestTracingSense: traced the other way round, and mirrored, the outline is
// the same, and the mirror image.
func TestTracingSense(t *testing.T) {
	r := rand.New(rand.NewPCG(17, 18))
	for range 20 {
		n := 6 + r.IntN(20)
		points, corners := wobbly(r, n), someCorners(r, n)
		back, mirrored := slices.Clone(points), slices.Clone(points)
		slices.Reverse(back)
		backCorners := make([]int, len(corners))
		for i, c := range corners {
			backCorners[i] = n - 1 - c
		}
		for i := range mirrored {
			mirrored[i].Y = -mirrored[i].Y
		}
		a := must(TracedThrough(points, corners...))
		b := must(TracedThrough(back, backCorners...))
		m := must(TracedThrough(mirrored, corners...))
		for range 50 {
			phi := Angle(7 * r.Float64())
			want, _ := a.Support(phi)
			other, _ := b.Support(phi)
			image, _ := m.Support(-phi)
			if max(math.Abs(other-want), math.Abs(image-want)) > 1e-13 {
				t.Errorf("at %.3f rad: h %.15f m, backwards %.15f m, mirrored %.15f m", phi, want, other, image)
			}
		}
	}
}

// TestTracedRefuses lists points nobody can trace, with the reason told.
func TestTracedRefuses(t *testing.T) {
	for _, c := range []struct {
		name    string
		points  []Vec
		corners []int
		point   int // as told; 0 for the whole outline
		reason  string
	}{
		{"none", nil, nil, 0, "has 0 points; give 3 to 1000"},
		{"two", []Vec{{0, 0}, {1, 0}}, nil, 0, "has 2 points"},
		{"too many", make([]Vec, 1001), nil, 0, "has 1001 points"},
		{"corner missing", []Vec{{0, 0}, {1, 0}, {0, 1}}, []int{3}, 0, "corner marked at point 4, but only points 1 to 3"},
		{"not a number", []Vec{{0, 0}, {math.NaN(), 0}, {0, 1}}, nil, 2, "(NaN mm, 0 mm)"},
		{"endless", []Vec{{0, 0}, {1, 0}, {0, math.Inf(-1)}}, nil, 3, "check its coordinates"},
		{"millimetres taken for metres", []Vec{{0, 0}, {120, 0}, {0, 80}}, nil, 2, "further than 100 m"},
		{"same point twice", []Vec{{0, 0}, {1, 0}, {1, 0.000001}, {0, 1}}, nil, 2, "point 3 lies only 0.001 mm away"},
		{"last point repeats the first", []Vec{{0, 0}, {1, 0}, {0, 1}, {0, 0}}, nil, 4, "point 1 lies only 0 mm away"},
		{"on one line", []Vec{{0, 0}, {0.1, 0.1}, {0.3, 0.3}, {0.2, 0.2}}, nil, 0, "lie on one line 424.3 mm long"},
		{"bow tie", []Vec{{0, 0}, {0.1, 0.1}, {0.1, 0}, {0, 0.1}}, nil, 1, "to point 2 meets the side from point 3 to point 4"},
		{"point on a side", []Vec{{0, 0}, {1, 0}, {1, 1}, {0.5, 0}, {0, 1}}, nil, 1, "meets the side from point"},
		{"spike", []Vec{{0, 0}, {1, 0}, {2, 0}, {1.5, 0}, {1, 1}}, nil, 3, "turns straight back"},
		{"loop in a narrow notch", []Vec{{0, 0}, {0.1, 0}, {0.1, 0.1}, {0.0501, 0.1}, {0.05, 0.01}, {0.0499, 0.1}, {0, 0.1}}, nil, 4, "meets the curve near point 5; trace more points there or mark corners"},
		{"bulge nobody traced", []Vec{{0.02, 0.01}, {0.06, 0.03}, {0.08, 0.09}, {0.01, 0.07}, {0, 0.09}}, nil, 5, "from here to point 1 doubles back; trace more points there or mark a corner"},
	} {
		_, err := TracedThrough(c.points, c.corners...)
		var traceErr *TraceError
		if !errors.As(err, &traceErr) {
			t.Errorf("%s: got %v, want a *TraceError", c.name, err)
			continue
		}
		if traceErr.Point != c.point || !strings.Contains(err.Error(), c.reason) {
			t.Errorf("%s: %q at point %d, want %q at point %d", c.name, err, traceErr.Point, c.reason, c.point)
		}
	}
}

// TestPointsIsACopy: an outline cannot be altered from outside.
func TestPointsIsACopy(t *testing.T) {
	points := []Vec{{0, 0}, {1, 0}, {0, 1}}
	o := must(Polygon(points...))
	points[1] = Vec{9, 9}
	o.Points()[0] = Vec{9, 9}
	if got := o.Points(); got[0] != (Vec{0, 0}) || got[1] != (Vec{1, 0}) {
		t.Errorf("points are %v", got)
	}
}
