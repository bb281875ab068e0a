package draw

import (
	"math"
	"math/rand/v2"
	"testing"

	"steelyard/planar"
)

func TestFrame(t *testing.T) {
	box := Rect{10, 20, 100, 50}
	f := Fit(planar.Vec{X: -1, Y: 0}, planar.Vec{X: 1, Y: 2}, box) // the height rules: 25 mm per m
	for _, c := range []struct {
		v    planar.Vec
		want Point
	}{
		{planar.Vec{X: 0, Y: 0}, Point{60, 70}},
		{planar.Vec{X: 1, Y: 2}, Point{85, 20}},
		{planar.Vec{X: -1, Y: 1}, Point{35, 45}},
	} {
		if got := f.At(c.v); got.Sub(c.want).Norm() > 1e-9 {
			t.Errorf("%v m falls at %v, want %v", c.v, got, c.want)
		}
		if back := f.Back(f.At(c.v)); back.Sub(c.v).Norm() > 1e-12 {
			t.Errorf("%v m comes back as %v", c.v, back)
		}
	}
	if got := f.Len(0.4); math.Abs(got-10) > 1e-9 {
		t.Errorf("0.4 m is %g mm, want 10", got)
	}
	for name, g := range map[string]Frame{
		"point": Fit(planar.Vec{X: 3, Y: 4}, planar.Vec{X: 3, Y: 4}, box),
		"level": Fit(planar.Vec{X: 3, Y: 4}, planar.Vec{X: 4, Y: 4}, box),
		"plumb": Fit(planar.Vec{X: 3, Y: 4}, planar.Vec{X: 3, Y: 5}, box),
	} {
		if c := g.At(planar.Vec{X: 3, Y: 4}); !(g.Scale > 0) || c.X < box.X-1e-9 || c.Y > box.Bottom()+1e-9 {
			t.Errorf("%s: scale %g, point at %v", name, g.Scale, c)
		}
	}
}

// A direction on the ground looks the same on the page.
func TestFrameKeepsAngles(t *testing.T) {
	f := Frame{Origin: Point{50, 50}, Scale: 30}
	for _, a := range []planar.Angle{0, 1, 3, -2} {
		d := f.At(planar.Polar(0.7, a)).Sub(f.At(planar.Vec{}))
		if got := d.Angle(); math.Abs(float64(got-a)) > 1e-12 || math.Abs(d.Norm()-21) > 1e-9 {
			t.Errorf("angle %.3f looks like %.3f, %.3f mm long", a, got, d.Norm())
		}
	}
}

// Hatch lines are stripes pitch apart: their length times the pitch is the
// area, to the error of a midpoint sum.
func TestHatchFillsTheArea(t *testing.T) {
	ring := Circle(Point{30, 30}, 20)
	var hole Path
	hole.Arc(Point{30, 30}, 10, 2*math.Pi, 0).Close()
	ring.Append(hole)
	twice := Circle(Point{30, 30}, 20)
	twice.Append(Circle(Point{40, 30}, 20))
	d := 10.0
	union := 2*math.Pi*400 - (2*400*math.Acos(d/40) - d/2*math.Sqrt(4*400-d*d)) // two discs less their lens

	for _, c := range []struct {
		name string
		path Path
		want float64
	}{
		{"rectangle", Rect{5, 5, 40, 30}.Path(), 1200},
		{"disc", Circle(Point{30, 30}, 20), math.Pi * 400},
		{"ring", ring, math.Pi * 300},
		{"discs that overlap", twice, union},
	} {
		for _, angle := range []planar.Angle{0.1, math.Pi / 4, 2} {
			const pitch = 0.2
			lines := hatchLines(c.path, angle, pitch)
			sum := 0.0
			for _, l := range flatten(lines, 1) {
				sum += length(l.pts)
			}
			if got := sum * pitch; math.Abs(got-c.want) > 0.01*c.want {
				t.Errorf("%s at %.2f: lines fill %.1f mm², want %.1f", c.name, angle, got, c.want)
			}
		}
	}
	if tooFine := hatchLines(Rect{0, 0, 1e5, 1e5}.Path(), 0, 0.001); len(tooFine.segs) != 0 {
		t.Errorf("an endless hatch drew %d lines", len(tooFine.segs))
	}
}

// Along an arc of radius R a ribbon reaching w to the outside has the area of
// a ring sector, φ/2·((R+w)² − R²), here to the error of 1° chords.
func TestRibbonOutline(t *testing.T) {
	var r Ribbon
	for i := range 91 {
		r.Path = append(r.Path, Point{100, 100}.Add(Towards(60, planar.Angle(i)*planar.Degree)))
		r.Right = append(r.Right, 8) // counter-clockwise: the right side is outside
	}
	want := math.Pi / 4 * (68*68 - 60*60)
	if got := math.Abs(area(r.Outline())); math.Abs(got-want) > 0.002*want {
		t.Errorf("outer ribbon %.2f mm², want %.2f", got, want)
	}
	r.Left = r.Right
	want = math.Pi / 4 * (68*68 - 52*52)
	if got := math.Abs(area(r.Outline())); math.Abs(got-want) > 0.002*want {
		t.Errorf("both sides %.2f mm², want %.2f", got, want)
	}
}

// area returns the signed area of a polygon, mm² (shoelace formula).
func area(p Path) float64 {
	sum := 0.0
	pts := flatten(p, 0.01)[0].pts
	for i, a := range pts {
		b := pts[(i+1)%len(pts)]
		sum += (a.X*b.Y - a.Y*b.X) / 2
	}
	return sum
}

func TestSidewaysAtRepeatedPoints(t *testing.T) {
	pts := []Point{{0, 0}, {0, 0}, {5, 0}, {5, 0}, {5, 0}}
	for i, n := range sideways(pts) {
		if n.Sub(Point{0, -1}).Norm() > 1e-12 { // left of a path to the right is up
			t.Errorf("normal %d is %v, want (0, -1)", i, n)
		}
	}
}

// Symbols must survive the degenerate input a wrong document can lead to.
func TestSymbolsOfNoSize(t *testing.T) {
	s := New("", Light)
	p := s.AddPage(A4)
	before := len(p.ops)
	q := Point{10, 10}
	p.Arrow(q, q, Pen{Width: 1, Color: Light.Ink})
	p.ArcArrow(q, 5, 1, 1, Pen{Width: 1, Color: Light.Ink})
	p.ArcArrow(q, 0, 1, 2, Pen{Width: 1, Color: Light.Ink})
	p.Dimension(q, q, 5, "0 mm")
	p.Spring(q, q, 5, 3)
	p.Spring(q, Point{20, 10}, 0, 3)
	p.Ribbon(Ribbon{Path: []Point{q}}, Light.Load)
	if len(p.ops) != before {
		t.Errorf("%d entries drawn for symbols of no size", len(p.ops)-before)
	}
	if len(s.strays) != 0 {
		t.Errorf("warnings %q, want none", s.strays)
	}
}

// Dimension labels never hang upside down.
func TestDimensionLabelsAreUpright(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		s := New("", Light)
		p := s.AddPage(A4)
		a := planar.Angle(2 * math.Pi * r.Float64())
		p.Dimension(Point{100, 100}, Point{100, 100}.Add(Towards(30, a)), 10*(r.Float64()-0.5), "30 mm")
		got := p.ops[len(p.ops)-1].(textOp).angle
		if got < -math.Pi/2-1e-9 || got > math.Pi/2+1e-9 {
			t.Errorf("dimension at %.0f°: label at %.0f°, want −90 to 90", a.Degrees(), got.Degrees())
		}
	}
}

func TestLabelsKeepApart(t *testing.T) {
	s := New("", Light)
	p := s.AddPage(Size{100, 100})
	l := Labels{Bounds: p.Bounds(), Font: s.Font(Light.Ink)}
	wall := Rect{50, 0, 30, 100}
	l.Avoid(wall)
	for i := range 8 {
		l.Add(Point{30 + float64(i%2), 40 + 2*float64(i/2)}, "point")
	}
	l.Add(Point{99, 1}, "at the corner")
	p.Labels(&l)

	var boxes []Rect
	for _, o := range p.ops {
		if o, ok := o.(textOp); ok {
			boxes = append(boxes, Rect{o.at.X, o.at.Y - capHeight*o.font.Size, o.font.width(o.text), capHeight * o.font.Size})
		}
	}
	if len(boxes) != 9 {
		t.Fatalf("%d labels drawn, want 9", len(boxes))
	}
	for i, b := range boxes {
		if b.X < 0 || b.Y < 0 || b.Right() > 100 || b.Bottom() > 100 {
			t.Errorf("label %d at %v leaves the page", i, b)
		}
		if i < 8 && b.overlap(wall) > 0 {
			t.Errorf("label %d at %v covers what it should avoid", i, b)
		}
		for j := range i {
			if b.overlap(boxes[j]) > 0 {
				t.Errorf("labels %d and %d overlap: %v, %v", j, i, boxes[j], b)
			}
		}
	}
}
