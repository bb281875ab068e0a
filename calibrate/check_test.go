package calibrate

import (
	"encoding/binary"
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"steelyard/planar"
	"steelyard/quantity"
)

// good returns a survey that works, square and 1 mm to the pixel.
func good() Survey {
	return Survey{Width: 2048, Height: 1536, Lines: []Line{{From: Pixel{500, 700}, To: Pixel{1500, 700}, Length: 1}}}
}

func round(cx, cy, along, across float64, n int) []Pixel {
	var out []Pixel
	for _, v := range rim(planar.Vec{}, 2, n) {
		out = append(out, Pixel{cx + along*v.X, cy + across*v.Y})
	}
	return out
}

func TestRefused(t *testing.T) {
	plate := func(rim []Pixel) func(s *Survey) {
		return func(s *Survey) { s.Lines, s.Plates = nil, []Plate{{Rim: rim, Diameter: 0.45}} }
	}
	rectangle := func(c ...Pixel) func(s *Survey) {
		return func(s *Survey) {
			s.Lines, s.Rectangles = nil, []Rectangle{{Corners: [4]Pixel(c), Width: 0.5, Height: 0.4}}
		}
	}
	bent := round(1000, 700, 200, 180, 8)
	bent[3].X += 40
	for _, row := range []struct {
		name string
		set  func(s *Survey)
		want string
	}{
		{"nothing known", func(s *Survey) { s.Lines = nil }, "nothing of known size"},
		{"no photo", func(s *Survey) { s.Width = 0 }, "the photo is 0 × 1536 px"},
		{"length of no pixels", func(s *Survey) { s.Lines[0].To = s.Lines[0].From }, "the known length is 0 px long in the photo; at least 20 are needed"},
		{"length of no millimetres", func(s *Survey) { s.Lines[0].Length = 0 }, "the known length is 0 mm; 10 mm to 20 m"},
		{"metres for millimetres", func(s *Survey) { s.Lines[0].Length = 450 }, "4.5e+05 mm; 10 mm to 20 m can be used; check the number and its unit"},
		{"± beyond sense", func(s *Survey) { s.Lines[0].Plus = 0.5 }, "± can be up to a quarter"},
		{"not a number", func(s *Survey) { s.Lines[0].From.X = math.NaN() }, "off the photo"},
		{"off the photo", func(s *Survey) { s.Lines[0].To.X = 3000 }, "3000 px right, 700 px down, off the photo of 2048 × 1536 px"},
		{"corners in a line", rectangle(Pixel{100, 100}, Pixel{400, 200}, Pixel{700, 300}, Pixel{100, 900}), "three corners nearly in a line"},
		{"corners crossing", rectangle(Pixel{100, 100}, Pixel{700, 700}, Pixel{700, 100}, Pixel{100, 700}), "tap the corners in order round it"},
		{"a corner inwards", rectangle(Pixel{100, 100}, Pixel{700, 100}, Pixel{300, 250}, Pixel{100, 700}), "points inwards"},
		{"corners all one", rectangle(Pixel{100, 100}, Pixel{100, 100}, Pixel{100, 100}, Pixel{100, 100}), "0 px large"},
		{"four rim places", plate(round(1000, 700, 200, 180, 4)), "has 4 places on its rim; 5 to 40"},
		{"rim on one side", plate(round(1000, 700, 200, 180, 16)[:7]), "of its rim; leave at most 150°"},
		{"rim on a line", plate([]Pixel{{100, 100}, {200, 200}, {300, 300}, {400, 400}, {500, 500}}), "no ellipse"},
		{"one rim place off", plate(bent), "off the ellipse through all of them"},
		{"plate edge on", plate(round(1000, 700, 200, 60, 8)), "is seen 73° off square; up to 60°"},
		{"plate too small", plate(round(1000, 700, 8, 7, 8)), "px across in the photo; at least 20"},
		{"plumb line lies", func(s *Survey) { s.Plumb = &[2]Pixel{{100, 100}, {900, 200}} }, "more than 45°"},
		{"plumb line upside down", func(s *Survey) { s.Plumb = &[2]Pixel{{100, 900}, {100, 200}} }, "upper place first"},
		{"plumb line of no length", func(s *Survey) { s.Plumb = &[2]Pixel{{100, 900}, {100, 900}} }, "the plumb line is 0 px long"},
		{"level line stands", func(s *Survey) { s.Level = &[2]Pixel{{100, 100}, {200, 900}} }, "off level"},
		{"both lines", func(s *Survey) {
			s.Plumb, s.Level = &[2]Pixel{{100, 100}, {100, 900}}, &[2]Pixel{{100, 100}, {900, 100}}
		}, "keep the better one"},
		{"a clumsy finger", func(s *Survey) { s.Tap = 1000 }, "0.01 to 100 px"},
		{"a lens of another world", func(s *Survey) { s.Lens = -1 }, "0.3 to 10 can be used"},
		{"sizes at odds", func(s *Survey) {
			s.Plates = []Plate{{Rim: round(1000, 700, 200, 200, 8), Diameter: 0.45}}
			s.Lines[0].Length = 3
		}, "contradict each other"},
	} {
		s := good()
		row.set(&s)
		_, err := s.Solve()
		var f *Fault
		if !errors.As(err, &f) || f.Cure == "" || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: %v; want …%s…", row.name, err, row.want)
		}
	}
}

func TestHorizon(t *testing.T) {
	c := aimed(target, 3, 25*deg, 0, 0, 0.75)
	s := c.survey(rand.New(rand.NewPCG(1, 1)), 0)
	s.Rectangles = []Rectangle{{Corners: [4]Pixel(c.taps(rand.New(rand.NewPCG(1, 1)), 0, box(planar.Vec{X: -0.1, Y: 0.5}, 0.6, 0.8)...)), Width: 0.6, Height: 0.8}}
	p, err := s.Solve()
	if err != nil {
		t.Fatal(err)
	}
	// Towards the right the plane goes away; its horizon is f/tan 25° from the middle.
	horizon := 1024 + 0.75*2048/math.Tan(25*math.Pi/180)
	for _, x := range []float64{horizon + 10, horizon + 1e6, horizon - 1e-9, math.NaN(), math.Inf(1)} {
		if m, err := p.Measure(Pixel{x, 768}); err == nil || !strings.Contains(err.Error(), "horizon") {
			t.Errorf("at %g px: %v, %v; want the horizon", x, m, err)
		}
	}
	if _, err := p.Pixel(planar.Vec{X: -100}); err == nil {
		t.Error("a place behind the camera is on the photo")
	}
}

func TestWords(t *testing.T) {
	s := good()
	p, err := s.Solve()
	if err != nil {
		t.Fatal(err)
	}
	all := strings.Join(p.Words(quantity.Metric), "\n")
	for _, want := range []string{
		"One pixel is 1 mm; a tap good to ±3 pixels is good to ±3 mm.",
		"A length cannot show whether the camera looked square",
		"Without a plumb line",
		// 1536 px of focal length at 1 mm to the pixel: 1.536 m. 100 mm in front
		// shows 1.536/1.436 as large.
		"about 1.5 m away", "measured 7.0 % too large", "Stand further off",
	} {
		if !strings.Contains(all, want) {
			t.Errorf("words lack %q:\n%s", want, all)
		}
	}
	s = Survey{Width: 2048, Height: 1536, Plates: []Plate{{Rim: round(1000, 700, 200, 180, 8), Diameter: 0.45}}}
	if p, err = s.Solve(); err != nil || !p.Ambiguous() || !strings.Contains(strings.Join(p.Words(quantity.Imperial), "\n"), "Say which side of the photo was nearer") {
		t.Errorf("one plate: %v; want a question for the nearer side", err)
	}
	if len(p.Rim(0)) != rimParts {
		t.Errorf("rim of %d points; want %d", len(p.Rim(0)), rimParts)
	}
	e, _ := ellipseThrough(vecs(s.Plates[0].Rim))
	for _, q := range p.Rim(0) {
		if e.off(q.vec()) > 0.5 {
			t.Errorf("rim drawn at %v, %.2f px off the taps' ellipse", q, e.off(q.vec()))
		}
	}
}

// FuzzSolve looks for a panic, or a number that is none, in what any taps give.
func FuzzSolve(f *testing.F) {
	f.Add(uint8(0), []byte("0123456789abcdef0123456789abcdef"))
	f.Add(uint8(1), []byte{10, 0, 10, 0, 200, 3, 10, 0, 200, 3, 200, 3, 10, 0, 200, 3})
	f.Add(uint8(2), []byte{0, 4, 0, 1, 0, 3, 0, 2, 200, 3, 200, 3, 10, 2, 200, 3, 9, 3, 100, 2, 7, 2})
	f.Add(uint8(9), []byte{})
	f.Fuzz(func(t *testing.T, kind uint8, data []byte) {
		var px []Pixel
		for ; len(data) >= 4; data = data[4:] {
			px = append(px, Pixel{float64(binary.LittleEndian.Uint16(data)) / 16, float64(binary.LittleEndian.Uint16(data[2:])) / 16})
		}
		for len(px) < 8 {
			px = append(px, Pixel{})
		}
		s := Survey{Width: 2048, Height: 1536, Near: Side(kind / 16 % 5), Cropped: kind&8 != 0, Plumb: &[2]Pixel{{900, 100}, {905, 1400}}}
		switch kind % 4 {
		case 0:
			s.Lines = []Line{{From: px[0], To: px[1], Length: 1}, {From: px[2], To: px[3], Length: 1.5, Plus: 0.1}, {From: px[4], To: px[5], Length: 1.5, Nearer: 0.2}}
		case 1:
			s.Rectangles = []Rectangle{{Corners: [4]Pixel(px[:4]), Width: 0.6, Height: 1, Plus: 0.01}}
		case 2:
			s.Plates = []Plate{{Rim: px, Diameter: 0.45}}
		case 3:
			s.Plates = []Plate{{Rim: px[:5], Diameter: 0.45, Nearer: -0.2}, {Rim: px[len(px)-5:], Diameter: 0.45}}
		}
		p, err := s.Solve()
		if err != nil {
			return
		}
		for _, x := range append(px[:4:4], Pixel{0, 0}, Pixel{2048, 1536}) {
			m, err := p.Measure(x)
			if err == nil && !(m.At.Finite() && m.Plus.Finite() && m.Plus.X >= 0 && m.Plus.Y >= 0) {
				t.Errorf("%v measured as %+v", x, m)
			}
		}
		p.Words(quantity.Metric)
	})
}
