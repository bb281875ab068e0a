package draw

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"testing"

	"steelyard/planar"
)

// sample draws one of everything: a report page with a lever in three
// positions, a curve with thirds, a table and a caution, then the symbols.
// Its mechanics are made up for the picture.
func sample(th Theme) *Scene {
	s := New("Boathouse lever press", th)
	s.Desc = "A lever press in three positions with its moment arms, its load and a table."
	s.Lang = "en"
	f := s.Flow(A4, 15, "Boathouse gym · a model, not a measurement of safety")
	f.Title("Lever press, two 20 kg plates")
	f.Text("The load is drawn where it is felt: the ribbon along the path of the grip is as wide as the force there, and hatched where it is uncertain. Measured by Жанна Орлова and Ελένη Παππά.")
	f.Figure(95, "Side view", "The lever at start, middle and end of the lift.", drawLever)
	f.Caution("Start light and stop at pain. Keep to the machine maker's manual; pain or injury goes to a licensed professional.")
	f.Heading("Force over travel")
	f.Figure(70, "Force over travel", "Force rises to the middle and falls.", drawCurve)
	f.Heading("Readings")
	f.Table(readings())
	f.Figure(60, "Symbols", "One of each.", drawSymbols)
	f.Finish()
	return s
}

func readings() Table {
	t := Table{Columns: []Column{{Title: "Position"}, {Title: "Force (N)", Align: Right}, {Title: "Moment arm (mm)", Align: Right}, {Title: "Remark"}}}
	t.Rows = [][]string{
		{"start", "182 ± 9", "611", "The lever hangs below level, so the plates stand closer to the axis than its length."},
		{"middle", "214 ± 11", "720", "level"},
		{"end", "190 ± 10", "640", "—"},
	}
	return t
}

func drawLever(p *Page, box Rect) {
	s, th := p.scene, p.scene.Theme
	fr := Fit(planar.Vec{X: -0.4, Y: -0.1}, planar.Vec{X: 1.25, Y: 1.25}, box)
	axis := fr.At(planar.Vec{X: 0, Y: 0.6})
	p.GroundLine(fr.At(planar.Vec{X: -0.4}), fr.At(planar.Vec{X: 1.25}))
	names := Labels{Bounds: box, Font: s.Font(th.Ink)}

	grip := func(a planar.Angle) Point { return axis.Add(Towards(fr.Len(0.95), a)) }
	var r Ribbon
	for i := range 61 {
		a := planar.Angle(-30+float64(i)) * planar.Degree
		r.Path = append(r.Path, grip(a))
		w := 6 + 5*math.Cos(float64(a))
		r.Right = append(r.Right, w)
		r.Spread = append(r.Spread, 1.2)
	}
	p.Ribbon(r, th.Load)
	for i, a := range []planar.Angle{-30 * planar.Degree, 0, 30 * planar.Degree} {
		fade := []float64{1, 0.35, 0.35}[i]
		plate := axis.Add(Towards(fr.Len(0.72), a))
		p.Member(Capsule(axis, grip(a), 2.4, 1.6), Alpha(th.Link, fade))
		p.Stroke(Circle(plate, fr.Len(0.1)), Pen{Width: 0.8, Color: Alpha(th.Load, fade)})
		p.Arrow(plate, plate.Add(Point{0, 14}), Pen{Width: 0.6, Color: Alpha(th.Load, fade)})
		names.Add(grip(a), []string{"start", "middle", "end"}[i])
		names.Avoid(Rect{plate.X, plate.Y, 0, 0}.Inset(-fr.Len(0.1)))
		names.AvoidArea(Capsule(axis, grip(a), 2.4, 1.6))
	}
	names.AvoidArea(r.Outline())
	plate := axis.Add(Towards(fr.Len(0.72), -30*planar.Degree))
	p.Dimension(Point{axis.X, plate.Y + 8}, Point{plate.X, plate.Y + 8}, -6, "moment arm 611 mm")
	p.ArcArrow(axis, 9, -30*planar.Degree, 30*planar.Degree, Pen{Width: 0.5, Color: th.Arm})
	names.Avoid(p.GroundPin(axis))
	names.Add(axis, "axis of rotation φ")
	p.Labels(&names)
}

func drawCurve(p *Page, box Rect) {
	th := p.scene.Theme
	var xs, up, down, lo, hi []float64
	for i := range 101 {
		x := float64(i) / 100 * 0.62
		y := 180 + 60*math.Sin(x/0.62*math.Pi)
		if i > 70 && i < 76 {
			y = math.NaN()
		}
		xs, up, down = append(xs, x), append(up, y+12), append(down, y-12)
		lo, hi = append(lo, y+4), append(hi, y+20)
	}
	x := Span("Travel of the grip", "m", xs)
	x.Zones = []Zone{{0, 0.2067, "lengthened"}, {0.2067, 0.4133, "mid-range"}, {0.4133, 0.62, "shortened"}}
	y := Span("Force at the grip", "N", lo, hi).FromZero().Round()
	keys := []Key{
		{Label: "lifting", Pen: Pen{Width: 0.6, Color: th.Lift}},
		{Label: "lowering", Pen: Pen{Width: 0.6, Color: th.Lower, Dash: []float64{2, 1.4}}},
		{Label: "uncertain", Fill: th.Lift, Hatched: true},
	}
	h := p.Legend(Point{box.X, box.Y}, box.W, keys)
	pl := p.Plot(Rect{box.X, box.Y + h + 1, box.W, box.H - h - 1}, x, y)
	pl.Band(xs, lo, hi, th.Lift, true)
	pl.Band(xs, down, up, th.Hold, false)
	pl.Curve(xs, up, keys[0].Pen)
	pl.Curve(xs, down, keys[1].Pen)
}

func drawSymbols(p *Page, box Rect) {
	s, th := p.scene, p.scene.Theme
	at := func(i, j int) Point { return Point{box.X + 12 + 30*float64(i), box.Y + 14 + 28*float64(j)} }
	p.Pin(at(0, 0))
	p.GroundPin(at(1, 0))
	p.Sheave(at(2, 0), 7)
	var rope Path
	rope.Move(at(2, 0).Add(Point{-7, 14})).Arc(at(2, 0), 7, math.Pi, 0).Line(at(2, 0).Add(Point{7, 14}))
	p.Rope(rope, false)
	p.Spring(at(3, 0).Add(Point{-9, 0}), at(3, 0).Add(Point{9, 0}), 6, 5)
	p.Rope(Polyline(at(4, 0).Add(Point{-9, 0}), at(4, 0).Add(Point{9, 0})), true)
	p.Hatch(Circle(at(5, 0), 8), math.Pi/6, 1.2, Pen{Width: 0.25, Color: th.Ink})
	p.Member(Capsule(at(0, 1), at(0, 1).Add(Point{16, 8}), 5, 3), th.Person)
	p.Dimension(at(1, 1), at(1, 1).Add(Point{15, 8}), 5, "17 mm")
	p.ArcArrow(at(2, 1), 7, 0, 1.5*math.Pi, Pen{Width: 0.6, Color: th.Arm})
	p.Clip(Circle(at(3, 1), 8), func() {
		p.Fill(Rect{at(3, 1).X - 8, at(3, 1).Y - 8, 16, 8}.Path(), th.Warn)
		p.TextAt(at(3, 1).Add(Point{0, 4}), "clipped text", s.Font(th.Ink), Centre)
	})
	p.TurnedText(at(4, 1), 40*planar.Degree, "turned 40°", s.Font(th.Ink), Centre)
	p.TextAt(at(5, 1), "missing 山田", s.Font(th.Ink), Centre)
	p.Link(Rect{at(5, 1).X - 10, at(5, 1).Y - 4, 20, 6}, "https://example.org/")
}

func TestSampleInEveryFormat(t *testing.T) {
	dir := t.TempDir()
	for name, th := range map[string]Theme{"light": Light, "dark": Dark} {
		s := sample(th)
		for ext, write := range map[string]func(*bytes.Buffer) ([]string, error){
			"svg": func(b *bytes.Buffer) ([]string, error) { return WriteSVG(b, s) },
			"pdf": func(b *bytes.Buffer) ([]string, error) { return WritePDF(b, s) },
			"png": func(b *bytes.Buffer) ([]string, error) { return WritePNG(b, s, 100) },
		} {
			var b, again bytes.Buffer
			warnings, err := write(&b)
			if err != nil {
				t.Fatalf("%s.%s: %v", name, ext, err)
			}
			if len(warnings) != 1 {
				t.Errorf("%s.%s: warnings %q, want the one about 山田", name, ext, warnings)
			}
			if _, err := write(&again); err != nil || !bytes.Equal(b.Bytes(), again.Bytes()) {
				t.Errorf("%s.%s: a second writing differs (%v)", name, ext, err)
			}
			if err := os.WriteFile(filepath.Join(dir, name+"."+ext), b.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}
