package draw

import (
	"fmt"
	"io"
	"math"
	"strings"
	"time"
	"unicode/utf16"

	"codeberg.org/go-pdf/fpdf"
)

// WritePDF writes the scene as a PDF with its fonts embedded and subset, text
// that can be selected and searched, links, title and language. Bytes depend
// on the scene alone. It returns warnings a person should see.
func WritePDF(w io.Writer, s *Scene) ([]string, error) {
	if len(s.pages) == 0 {
		return nil, fmt.Errorf("draw: a PDF needs at least one page")
	}
	doc := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: s.pages[0].Size.W, Ht: s.pages[0].Size.H}})
	doc.SetCatalogSort(true)
	date := s.Date
	if date.IsZero() {
		date = time.Unix(0, 0).UTC()
	}
	doc.SetCreationDate(date)
	doc.SetModificationDate(date)
	doc.SetTitle(clean(s.Title), true)
	doc.SetSubject(clean(s.Desc), true)
	doc.SetProducer("steelyard", true)
	doc.SetLang(langTag(s.Lang))
	doc.SetAutoPageBreak(false, 0)
	doc.AddUTF8FontFromBytes(pdfFamily, "", regularTTF)
	doc.AddUTF8FontFromBytes(pdfFamily, "B", boldTTF)

	pw := pdfWriter{doc: doc, warnings: s.newWarnings("a box")}
	for _, p := range s.pages {
		pw.page(p)
	}
	return pw.list, doc.Output(w)
}

const pdfFamily = "dejavu"

// langTag keeps the letters of a language tag, since the library writes it
// unescaped.
func langTag(s string) string {
	return strings.Map(func(r rune) rune {
		if r == '-' || r >= '0' && r <= '9' || r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z' {
			return r
		}
		return -1
	}, s)
}

// pdfWriter draws by PDF operators, each entry of the display list between q
// and Q so that none depends on the one before. The library keeps the file,
// the fonts and the transparency states.
//
// Source of the operators: ISO 32000-1:2008, tables 51, 57, 59, 60, 61.
type pdfWriter struct {
	doc *fpdf.Fpdf
	k   float64 // points per mm
	warnings
}

// page turns the PDF's axes (points, y up) into the page's (mm, y down).
func (w *pdfWriter) page(p *Page) {
	w.doc.AddPageFormat("P", fpdf.SizeType{Wd: p.Size.W, Ht: p.Size.H})
	w.k = w.doc.GetConversionRatio()
	w.printf("q %s 0 0 %s 0 %s cm", long(w.k), long(-w.k), long(p.Size.H*w.k))
	w.ops(p.ops)
	w.printf("Q")
}

func (w *pdfWriter) ops(list []op) {
	for _, o := range list {
		switch o := o.(type) {
		case fillOp:
			w.begin(o.color)
			w.printf("%s rg\n%s f\nQ", rgbOps(o.color), pathOps(o.path))
		case strokeOp:
			w.begin(o.pen.Color)
			w.printf("%s\n%s S\nQ", penOps(o.pen), pathOps(o.path))
		case textOp:
			w.text(o)
		case clipOp:
			w.printf("q\n%s W n", pathOps(o.path))
			w.ops(o.ops)
			w.printf("Q")
		case layerOp:
			w.ops(o.ops)
		case linkOp:
			w.doc.LinkString(o.area.X, o.area.Y, o.area.W, o.area.H, o.href)
		}
	}
}

// begin saves the graphics state and sets the opacity.
func (w *pdfWriter) begin(c Color) {
	w.printf("q")
	w.doc.SetAlpha(float64(c.A)/255, "Normal")
}

// text writes the runs the font can set as text and draws a box for each rune
// it cannot, over an invisible sign that copies and searches as the rune
// itself (ActualText, ISO 32000-1:2008, 14.9.4).
func (w *pdfWriter) text(o textOp) {
	w.missing(o.text)
	at, run := o.at, ""
	flush := func() {
		if run != "" {
			w.run(o, at, run, "", "")
			at = at.Add(Towards(o.font.width(run), o.angle))
			run = ""
		}
	}
	for _, r := range o.text {
		if has(r) {
			run += string(r)
			continue
		}
		flush()
		w.begin(o.font.Color)
		w.printf("%s rg\n%s f\nQ", rgbOps(o.font.Color), pathOps(glyphBox(o, at, r)))
		w.run(o, at, "\uFFFD", fmt.Sprintf("/Span <</ActualText <FEFF%s>>> BDC 3 Tr", utf16Hex(r)), "EMC")
		at = at.Add(Towards(o.font.advance(r), o.angle))
	}
	flush()
}

// run writes s in a frame of its own, points along and above the baseline,
// between the operators before and after.
func (w *pdfWriter) run(o textOp, at Point, s, before, after string) {
	u := Towards(1/w.k, o.angle)
	v := u.left()
	style := ""
	if o.font.Bold {
		style = "B"
	}
	w.begin(o.font.Color)
	w.printf("%s %s %s %s %s %s cm %s rg", long(u.X), long(u.Y), long(v.X), long(v.Y), num(at.X), num(at.Y), rgbOps(o.font.Color))
	w.doc.SetFont(pdfFamily, style, o.font.Size*w.k)
	_, h := w.doc.GetPageSize()
	w.printf("%s", before)
	w.doc.Text(0, h, s)
	w.printf("%s Q", after)
}

func (w *pdfWriter) printf(format string, args ...any) {
	w.doc.RawWriteStr(fmt.Sprintf(format, args...))
}

func pathOps(p Path) string {
	var b strings.Builder
	for _, s := range p.segs {
		switch s.verb {
		case moveTo:
			b.WriteString(pair(s.p[0]) + " m ")
		case lineTo:
			b.WriteString(pair(s.p[0]) + " l ")
		case cubicTo:
			b.WriteString(pair(s.p[0]) + " " + pair(s.p[1]) + " " + pair(s.p[2]) + " c ")
		case closePath:
			b.WriteString("h ")
		}
	}
	return b.String()
}

func penOps(p Pen) string {
	cap := [...]int{RoundCap: 1, ButtCap: 0, SquareCap: 2}[p.Cap]
	join := [...]int{RoundJoin: 1, MiterJoin: 0, BevelJoin: 2}[p.Join]
	dash := make([]string, len(p.Dash))
	for i, d := range p.Dash {
		dash[i] = num(d)
	}
	return fmt.Sprintf("%s RG %s w %d J %d j %d M [%s] 0 d", rgbOps(p.Color), num(p.Width), cap, join, miterLimit, strings.Join(dash, " "))
}

func rgbOps(c Color) string {
	return num(float64(c.R)/255) + " " + num(float64(c.G)/255) + " " + num(float64(c.B)/255)
}

func utf16Hex(r rune) string {
	s := ""
	for _, u := range utf16.Encode([]rune{r}) {
		s += fmt.Sprintf("%04X", u)
	}
	return s
}

// long prints a matrix entry, finer than a coordinate because it multiplies
// one.
func long(v float64) string { return fmt.Sprintf("%.7f", math.Round(v*1e7)/1e7+0) }
