package draw

import (
	"bytes"
	"image"
	"image/png"
	"math"
	"testing"

	"steelyard/planar"
)

// perMM is the resolution of ten pixels per mm.
const perMM = 254

// rasterOf draws on a 20 mm × 10 mm page: 200 × 100 pixels.
func rasterOf(t *testing.T, draw func(p *Page)) *image.RGBA {
	t.Helper()
	s := New("", Light)
	p := s.AddPage(Size{20, 10})
	draw(p)
	img, _, err := Raster(s, perMM)
	if err != nil {
		t.Fatal(err)
	}
	if got := img.Bounds(); got != image.Rect(0, 0, 200, 100) {
		t.Fatalf("picture %v, want 200 × 100", got)
	}
	return img
}

// inked returns the area covered with black on white, mm².
func inked(img *image.RGBA) float64 {
	sum := 0.0
	for i := 0; i < len(img.Pix); i += 4 {
		sum += 1 - float64(img.Pix[i])/255
	}
	return sum / 100
}

func TestFilledRectangleCoversItsPixels(t *testing.T) {
	img := rasterOf(t, func(p *Page) { p.Fill(Rect{2, 3, 5, 4}.Path(), rgb(0)) })
	for y := range 100 {
		for x := range 200 {
			want := uint8(255)
			if x >= 20 && x < 70 && y >= 30 && y < 70 {
				want = 0
			}
			if got := img.RGBAAt(x, y).R; got != want {
				t.Fatalf("pixel (%d, %d): %d, want %d", x, y, got, want)
			}
		}
	}
}

// Expected by the "over" of Porter & Duff (1984); a pixel covered by half
// takes half the opacity.
func TestAlphaMixes(t *testing.T) {
	img := rasterOf(t, func(p *Page) {
		p.Fill(Rect{0, 0, 10, 10}.Path(), Color{R: 200, G: 100, B: 0, A: 255})
		p.Fill(Rect{5, 0, 10, 10}.Path(), Color{R: 0, G: 50, B: 250, A: 102})
		p.Fill(Rect{15, 0, 0.05, 10}.Path(), rgb(0))
	})
	for _, c := range []struct {
		name    string
		x       int
		r, g, b float64
	}{
		{"opaque", 20, 200, 100, 0},
		{"0.4 of blue over orange", 70, 120, 80, 100},
		{"0.4 of blue over white", 120, 153, 173, 253},
		{"half a pixel of black", 150, 127.5, 127.5, 127.5},
	} {
		got := img.RGBAAt(c.x, 50)
		if math.Abs(float64(got.R)-c.r) > 1 || math.Abs(float64(got.G)-c.g) > 1 || math.Abs(float64(got.B)-c.b) > 1 {
			t.Errorf("%s: %v, want (%g, %g, %g) ± 1", c.name, got, c.r, c.g, c.b)
		}
	}
}

// Areas of figures from elementary geometry, mm².
func TestInkedArea(t *testing.T) {
	b := rgb(0)
	line := func(pen Pen, pts ...Point) func(*Page) {
		return func(p *Page) { pen.Color = b; p.Stroke(Polyline(pts...), pen) }
	}
	for _, c := range []struct {
		name string
		draw func(p *Page)
		want float64
	}{
		{"disc", func(p *Page) { p.Fill(Circle(Point{10, 5}, 4), b) }, math.Pi * 16},
		{"ring", func(p *Page) { p.Stroke(Circle(Point{10, 5}, 3), Pen{Width: 1, Color: b}) }, 2 * math.Pi * 3},
		{"hole, wound the other way", func(p *Page) {
			ring := Circle(Point{10, 5}, 4)
			var hole Path
			hole.Arc(Point{10, 5}, 2, 2*math.Pi, 0).Close()
			ring.Append(hole)
			p.Fill(ring, b)
		}, math.Pi * 12},
		{"butt line", line(Pen{Width: 2, Cap: ButtCap}, Point{3, 2}, Point{9, 8}), 2 * 6 * math.Sqrt2},
		{"round line", line(Pen{Width: 2}, Point{3, 5}, Point{15, 5}), 24 + math.Pi},
		{"square line", line(Pen{Width: 2, Cap: SquareCap}, Point{3, 5}, Point{15, 5}), 28},
		{"round dot", line(Pen{Width: 2}, Point{5, 5}, Point{5, 5}), math.Pi},
		// A right angle of two legs of 5 and 4 along the axis of a pen 2 wide
		// overlaps in a quarter square of 1 and misses one at the corner.
		{"miter corner", line(Pen{Width: 2, Cap: ButtCap, Join: MiterJoin}, Point{3, 3}, Point{8, 3}, Point{8, 7}), 2*5 + 2*4 - 1 + 1},
		{"bevel corner", line(Pen{Width: 2, Cap: ButtCap, Join: BevelJoin}, Point{3, 3}, Point{8, 3}, Point{8, 7}), 2*5 + 2*4 - 1 + 0.5},
		{"round corner", line(Pen{Width: 2, Cap: ButtCap}, Point{3, 3}, Point{8, 3}, Point{8, 7}), 2*5 + 2*4 - 1 + math.Pi/4},
		{"dashes", line(Pen{Width: 1, Cap: ButtCap, Dash: []float64{2, 1}}, Point{3, 5}, Point{13, 5}), 2 + 2 + 2 + 1},
		{"dash round a corner", line(Pen{Width: 1, Cap: ButtCap, Join: MiterJoin, Dash: []float64{6, 1}}, Point{3, 3}, Point{8, 3}, Point{8, 8}), 6 + 3},
		{"clipped", func(p *Page) {
			p.Clip(Circle(Point{10, 5}, 4), func() {
				p.Clip(Rect{0, 0, 20, 5}.Path(), func() { p.Fill(p.Bounds().Path(), b) })
			})
		}, math.Pi * 8},
		{"off the page", func(p *Page) { p.Fill(Rect{-1e5, -50, 2e5, 55}.Path(), b) }, 20 * 5},
	} {
		got := inked(rasterOf(t, c.draw))
		if math.Abs(got-c.want) > 0.01*c.want {
			t.Errorf("%s: %.3f mm², want %.3f ± 1 %%", c.name, got, c.want)
		}
	}
}

// Ink of a letter: the stem of "l" in DejaVu Sans is a plain rectangle, 184 by
// 1556 of 2048 units (read from its glyf table).
func TestTextIsDrawn(t *testing.T) {
	f := Font{Size: 8, Color: rgb(0)}
	const want = 184.0 * 1556 / 2048 / 2048 * 64
	for _, angle := range []planar.Angle{0, math.Pi / 2, 1} {
		img := rasterOf(t, func(p *Page) { p.TurnedText(Point{10, 9}, angle, "l", f, Left) })
		if got := inked(img); math.Abs(got-want) > 0.02*want {
			t.Errorf("turned %.2f: %.3f mm², want %.3f", angle, got, want)
		}
	}
	blank := inked(rasterOf(t, func(p *Page) {}))
	if box := inked(rasterOf(t, func(p *Page) { p.TextAt(Point{2, 9}, "山", f, Left) })); blank != 0 || box < 1 {
		t.Errorf("a missing glyph inks %.3f mm², want a visible box; blank page %.3f", box, blank)
	}
}

func TestPagesMeetWithoutSeam(t *testing.T) {
	s := New("", Dark)
	s.AddPage(Size{30.3, 20.7})
	s.AddPage(Size{30.3, 20.7})
	img, _, err := Raster(s, 100)
	if err != nil {
		t.Fatal(err)
	}
	for y := range img.Rect.Dy() {
		if c := img.RGBAAt(5, y); c.A != 255 || c.R != Dark.Paper.R {
			t.Fatalf("row %d shows %v, want paper", y, c)
		}
	}
}

func TestPNG(t *testing.T) {
	var b bytes.Buffer
	if _, err := WritePNG(&b, small(), 100); err != nil {
		t.Fatal(err)
	}
	cfg, err := png.DecodeConfig(&b)
	if err != nil || cfg.Width != 236 || cfg.Height != 157 { // 60 × 40 mm at 100 per inch
		t.Errorf("%d × %d (%v), want 236 × 157", cfg.Width, cfg.Height, err)
	}
	for _, dpi := range []float64{0, -1, 1e6, math.NaN(), math.Inf(1)} {
		if _, err := WritePNG(&b, small(), dpi); err == nil {
			t.Errorf("%g dpi: no error", dpi)
		}
	}
}
