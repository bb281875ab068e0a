package draw

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

func TestMissing(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"Latin", "Zoë Łukasz Ćırı – ½ × 20 kg", ""},
		{"Greek", "Ελένη Παππά, crank angle φ, τ [N·m]", ""},
		{"Cyrillic", "Жанна Орлова, Ґанна Їжак", ""},
		{"Armenian and Georgian", "Արամ, თამარ", ""},
		{"signs", "±°²³µΔ≤≥≈−→√∞…“”‘’€", ""},
		{"decomposed accents are composed", "Zoe\u0308", ""},
		{"each once, in order", "山田 and 山本", "山田本"},
		{"right to left", "שלום", "שלום"},
		{"joined letters", "سلام", "سلام"},
		{"beyond the basic plane", "lift 🏋", "🏋"},
		{"invisible signs are dropped", "a\u200bb\u00adc\ufe0f", ""},
	} {
		if got := string(Missing(c.text)); got != c.want {
			t.Errorf("%s: missing %q, want %q", c.name, got, c.want)
		}
	}
}

func TestClean(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"line breaks and tabs", " a\r\n\tb  c ", "a b c"},
		{"not UTF-8", "a\xffb", "a\uFFFDb"},
		{"control characters", "a\x00b\x1b", "a\uFFFDb\uFFFD"},
		{"what XML forbids", "a\uFFFEb\uFFFF", "a\uFFFDb\uFFFD"},
		{"hard spaces stay", "12\u202f000\u00a0N", "12\u202f000\u00a0N"},
		{"composed", "e\u0301", "é"},
	} {
		if got := clean(c.in); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// The PDF library reads the font's tables by itself and rounds each advance to
// a thousandth of an em.
func TestMeasureAgreesWithThePDFLibrary(t *testing.T) {
	doc := fpdf.New("P", "mm", "A4", "")
	doc.AddUTF8FontFromBytes("f", "", regularTTF)
	doc.AddUTF8FontFromBytes("f", "B", boldTTF)
	for _, text := range []string{"Force at the grip (N)", "Жанна Орлова", "Ελένη Παππά φ", "WAVE — ±3.5° ½"} {
		for _, f := range []Font{{Size: 3}, {Size: 10, Bold: true}} {
			style := map[bool]string{false: "", true: "B"}[f.Bold]
			doc.SetFont("f", style, f.Size/Pt)
			got, want := f.Measure(text), doc.GetStringWidth(text)
			if tol := 0.0006 * f.Size * float64(utf8.RuneCountInString(text)); math.Abs(got-want) > tol {
				t.Errorf("%q size %g bold %t: %.4f mm, want %.4f ± %.4f", text, f.Size, f.Bold, got, want, tol)
			}
		}
	}
	if doc.Err() {
		t.Fatal(doc.Error())
	}
}

// Advances in units of 2048 per em, read from the hmtx table with fontTools
// 4.38 (Debian 12).
func TestMeasureOneRune(t *testing.T) {
	for text, units := range map[string]float64{"A": 1401, "\u00a0": 651, "φ": 1351, "ж": 1845} {
		if got := (Font{Size: 2048}).Measure(text); got != units {
			t.Errorf("%q is %g units wide, want %g", text, got, units)
		}
	}
}

func TestFontMetrics(t *testing.T) {
	for name, face := range map[string]*sfnt.Font{"regular": regular(), "bold": bold()} {
		var buf sfnt.Buffer
		m, err := face.Metrics(&buf, fixed.I(em), font.HintingNone)
		if err != nil || face.UnitsPerEm() != em {
			t.Fatalf("%s: %d units per em (%v), want %d", name, face.UnitsPerEm(), err, em)
		}
		for what, pair := range map[string][2]float64{
			"ascent":     {float64(m.Ascent) / 64 / em, ascent},
			"descent":    {float64(m.Descent) / 64 / em, descent},
			"cap height": {math.Abs(float64(m.CapHeight)) / 64 / em, capHeight}, // negative in the library's y-down axes
		} {
			if math.Abs(pair[0]-pair[1]) > 0.5/em {
				t.Errorf("%s %s: the font says %.5f em, we say %.5f", name, what, pair[0], pair[1])
			}
		}
	}
}

// Whatever the alignment, the display list holds the left end.
func TestAlignmentIsAMeasuredShift(t *testing.T) {
	s := New("", Light)
	p := s.AddPage(A4)
	f := Font{Size: 4, Color: Light.Ink}
	text := "crank angle φ, τ [N·m]"
	w := f.Measure(text)
	for a, want := range map[Align]float64{Left: 100, Centre: 100 - w/2, Right: 100 - w} {
		p.TextAt(Point{100, 50}, text, f, a)
		got := p.ops[len(p.ops)-1].(textOp).at
		if math.Abs(got.X-want) > 1e-9 || got.Y != 50 {
			t.Errorf("alignment %d: left end at %v, want (%.3f, 50)", a, got, want)
		}
	}
	p.TurnedText(Point{100, 50}, math.Pi/2, text, f, Right)
	if got := p.ops[len(p.ops)-1].(textOp).at; math.Abs(got.X-100) > 1e-9 || math.Abs(got.Y-50-w) > 1e-9 {
		t.Errorf("turned up: left end at %v, want (100, %.3f)", got, 50+w)
	}
}

func TestWrap(t *testing.T) {
	f := Font{Size: 4}
	for _, c := range []struct {
		name, text string
		width      float64
		want       []string
	}{
		{"fits", "one line", 100, []string{"one line"}},
		{"breaks at spaces", "one two", f.Measure("one tw"), []string{"one", "two"}},
		{"keeps its own breaks", "one\ntwo\n\nthree", 100, []string{"one", "two", "", "three"}},
		{"cuts a long word", "iiii", f.Measure("ii") + 0.01, []string{"ii", "ii"}},
		{"one rune a line at least", "ab", 0, []string{"a", "b"}},
		{"empty", "", 10, []string{""}},
	} {
		got := f.Wrap(c.text, c.width)
		if strings.Join(got, "|") != strings.Join(c.want, "|") {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
	for _, line := range f.Wrap(strings.Repeat("Widths hold for every line of a paragraph. ", 20), 61) {
		if w := f.Measure(line); w > 61+1e-9 {
			t.Errorf("line %q is %.3f mm wide, want at most 61", line, w)
		}
	}
}

func FuzzText(f *testing.F) {
	for _, s := range []string{"", "Force (N)", "\xff\xfe", "a\x00<b>&\"'", "]]>", "Ελένη 山田 שלום 🏋", "e\u0301\u0301", "\u2028x\ufeff", "\\()%s"} {
		f.Add(s, 3.0, 10.0, 20.0)
	}
	f.Fuzz(func(t *testing.T, text string, size, x, y float64) {
		s := New(text, Light)
		s.Desc, s.Lang = text, text
		flow := s.Flow(Size{60, 60}, 5, text)
		flow.Text(text)
		flow.Table(Table{Columns: []Column{{Title: text}, {Title: "n", Align: Right}}, Rows: [][]string{{text, text, text}, {text}}})
		p := flow.Page()
		p.Layer(text, text, func() {
			p.TextAt(Point{x, y}, text, Font{Size: size, Color: Light.Ink}, Centre)
			p.Stroke(Polyline(Point{x, y}, Point{y, x}), Pen{Width: size, Color: Light.Warn, Dash: []float64{x, y}})
			p.Hatch(Circle(Point{x, y}, size), 1, x, Pen{Width: 1, Color: Light.Ink})
		})
		p.Link(Rect{x, y, size, size}, text)
		flow.Finish()

		var svg bytes.Buffer
		if _, err := WriteSVG(&svg, s); err != nil {
			t.Fatal(err)
		}
		if err := wellFormed(svg.Bytes()); err != nil {
			t.Fatalf("not XML: %v", err)
		}
		if _, err := WritePDF(io.Discard, s); err != nil {
			t.Fatal(err)
		}
		if _, _, err := Raster(s, 20); err != nil && len(s.Pages()) < 500 {
			t.Fatal(err)
		}
	})
}

// wellFormed reads XML to its end.
func wellFormed(doc []byte) error {
	d := xml.NewDecoder(bytes.NewReader(doc))
	for {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			return nil
		} else if err != nil {
			return err
		}
	}
}
