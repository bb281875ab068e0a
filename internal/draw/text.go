package draw

import (
	_ "embed"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/norm"

	"steelyard/planar"
)

// The two faces; licence in fonts/LICENSE.
var (
	//go:embed fonts/DejaVuSans.ttf
	regularTTF []byte
	//go:embed fonts/DejaVuSans-Bold.ttf
	boldTTF []byte

	regular = sync.OnceValue(func() *sfnt.Font { return mustParse(regularTTF) })
	bold    = sync.OnceValue(func() *sfnt.Font { return mustParse(boldTTF) })
)

func mustParse(ttf []byte) *sfnt.Font {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic(fmt.Sprintf("draw: embedded font: %v", err))
	}
	return f
}

// em is the size at which glyphs are read: the units per em of both faces, so
// that outlines come out unrounded.
const em = 2048

// Metrics of DejaVu Sans 2.37 in ems: its hhea table and the height of H.
const (
	ascent    = 1901.0 / em
	descent   = 483.0 / em
	capHeight = 1493.0 / em
)

// Font is how a line of text looks. Size is the em in mm.
type Font struct {
	Size  float64
	Bold  bool
	Color Color
}

// Font returns the scene's label font in colour c.
func (s *Scene) Font(c Color) Font { return Font{Size: s.Text, Color: c} }

// Leading is the distance from baseline to baseline, mm.
func (f Font) Leading() float64 { return 1.3 * f.Size }

func (f Font) face() *sfnt.Font {
	if f.Bold {
		return bold()
	}
	return regular()
}

// Measure returns the width of one line of text in mm, as all three formats
// set it: the sum of the advances, without kerning.
func (f Font) Measure(s string) float64 { return f.width(clean(s)) }

// width measures text that is clean, or a part of such.
func (f Font) width(s string) float64 {
	w := 0.0
	for _, r := range s {
		w += f.advance(r)
	}
	return w
}

// advance returns the width of one rune in mm. A rune the font lacks takes a
// box: a full em where wide scripts live, else a letter's width.
func (f Font) advance(r rune) float64 {
	if !has(r) {
		if r >= 0x1100 {
			return f.Size
		}
		return 0.6 * f.Size
	}
	face := 0
	if f.Bold {
		face = 1
	}
	return float64(advances()[face][r]) / em * f.Size
}

// lacking marks a rune without a glyph among advances.
const lacking = math.MaxUint16

// advances returns the advance of each rune up to U+FFFF in the regular and
// the bold face, in units of the em.
var advances = sync.OnceValue(func() *[2][1 << 16]uint16 {
	var out [2][1 << 16]uint16
	var buf sfnt.Buffer
	for i, face := range []*sfnt.Font{regular(), bold()} {
		for r := range out[i] {
			out[i][r] = lacking
			if g, err := face.GlyphIndex(&buf, rune(r)); err == nil && g != 0 {
				if a, err := face.GlyphAdvance(&buf, g, fixed.I(em), font.HintingNone); err == nil {
					out[i][r] = uint16(a.Round())
				}
			}
		}
	}
	return &out
})

// joining holds scripts whose letters run from right to left or change shape
// with their neighbours, which PDF and PNG cannot set.
var joining = []*unicode.RangeTable{
	unicode.Arabic, unicode.Hebrew, unicode.Syriac, unicode.Thaana, unicode.Nko, unicode.Lao,
}

// has reports whether PDF and PNG can set r. Beyond U+FFFF lies what the PDF
// library cannot encode.
func has(r rune) bool {
	if r > 0xffff || unicode.In(r, joining...) {
		return false
	}
	a := advances()
	return a[0][r] != lacking && a[1][r] != lacking
}

// Missing returns the runes of text that PDF and PNG cannot set, each once, in
// order of appearance.
func Missing(text string) []rune {
	var out []rune
	for _, r := range clean(text) {
		if !has(r) && !slices.Contains(out, r) {
			out = append(out, r)
		}
	}
	return out
}

// clean returns s as one line that every format can carry: valid UTF-8 in
// composed form, spaces in place of line breaks and tabs, single and none at
// the ends. Control characters show as U+FFFD; invisible ones are left out.
func clean(s string) string {
	s = norm.NFC.String(strings.ToValidUTF8(s, "\uFFFD"))
	s = strings.Map(func(r rune) rune {
		switch {
		case r == '\u00a0' || r == '\u2009' || r == '\u202f':
			return r
		case unicode.IsSpace(r):
			return ' '
		case unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Variation_Selector, r):
			return -1
		case unicode.IsControl(r) || r&0xfffe == 0xfffe || !utf8.ValidRune(r):
			return '\uFFFD'
		}
		return r
	}, s)
	return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return r == ' ' }), " ")
}

// Align says which end of a line of text sits at its point.
type Align uint8

const (
	Left Align = iota
	Centre
	Right
)

// TextAt writes one line of text with its baseline at at.
func (p *Page) TextAt(at Point, s string, f Font, a Align) { p.TurnedText(at, 0, s, f, a) }

// TurnedText writes one line of text whose baseline runs through at in
// direction angle, as it looks. The display list only knows the left end: the
// other alignments are a step back along the baseline.
func (p *Page) TurnedText(at Point, angle planar.Angle, s string, f Font, a Align) {
	s = clean(s)
	if s == "" || f.Color.A == 0 || !(f.Size > 0 && f.Size <= reach) {
		return
	}
	angle = angle.Normalized()
	at = at.Sub(Towards(f.width(s)*float64(a)/2, angle))
	if !at.drawable() {
		p.scene.stray("the text %q was left out: its place is not a number or lies over a kilometre off the page", s)
		return
	}
	p.ops = append(p.ops, textOp{at, angle, s, f})
}

// middle returns the baseline at which capitals stand centred on y.
func (f Font) middle(y float64) float64 { return y + capHeight*f.Size/2 }
