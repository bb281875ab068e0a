package draw

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"hash/fnv"
	"io"
	"math"
	"strconv"
	"strings"
)

// svgFonts is asked of the reader's machine, in this order. Each line of text
// also carries its measured width, so that another font is squeezed or spread
// to the same place.
const svgFonts = "'DejaVu Sans', Verdana, sans-serif"

// WriteSVG writes the scene as one SVG image in mm, pages one under another.
// The scene's title and description, and those of its layers, are carried for
// screen readers. It returns warnings a person should see.
func WriteSVG(w io.Writer, s *Scene) ([]string, error) {
	width, height := s.extent()
	sw := svgWriter{warnings: s.newWarnings("the reader's own font, or a box,")}

	for y, i := 0.0, 0; i < len(s.pages); i++ {
		sw.page(s.pages[i], y, len(s.pages) > 1)
		y += s.pages[i].Size.H
	}
	var out bytes.Buffer
	fmt.Fprintf(&out, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s" role="%s"%s font-family="%s">`+"\n",
		num(width), num(height), num(width), num(height), s.role(), attr("xml:lang", s.Lang), svgFonts)
	out.WriteString(described(s.Title, s.Desc))
	body := strings.ReplaceAll(sw.body.String(), idMark, "d"+digest(sw.body.Bytes())+"-")
	out.WriteString(body)
	out.WriteString("</svg>\n")
	_, err := w.Write(out.Bytes())
	return sw.list, err
}

type svgWriter struct {
	body  bytes.Buffer
	clips int
	warnings
}

// idMark stands for the prefix of ids until the body is known. Ids must differ
// between drawings on one web page, and stay the same on every run.
const idMark = "\x00"

func digest(body []byte) string {
	h := fnv.New64a()
	h.Write(body)
	return strconv.FormatUint(h.Sum64(), 36)
}

// role returns "img", which shows a picture to screen readers as one thing with
// a title, or "group" if it has links or titled layers to be reached.
//
// Source: W3C, Accessible Rich Internet Applications 1.2 (2023), role img:
// children are presentational.
func role(list []op) string {
	for _, o := range list {
		switch o := o.(type) {
		case linkOp:
			return "group"
		case layerOp:
			if o.title != "" || role(o.ops) == "group" {
				return "group"
			}
		case clipOp:
			if role(o.ops) == "group" {
				return "group"
			}
		}
	}
	return "img"
}

func (s *Scene) role() string {
	for _, p := range s.pages {
		if role(p.ops) == "group" {
			return "group"
		}
	}
	return "img"
}

func (w *svgWriter) page(p *Page, y float64, several bool) {
	if several {
		w.printf(`<svg y="%s" width="%s" height="%s">`+"\n", num(y), num(p.Size.W), num(p.Size.H))
	}
	w.ops(p.ops)
	if several {
		w.printf("</svg>\n")
	}
}

func (w *svgWriter) ops(list []op) {
	for _, o := range list {
		switch o := o.(type) {
		case fillOp:
			w.printf(`<path d="%s"%s/>`+"\n", pathData(o.path), paint("fill", o.color))
		case strokeOp:
			w.printf(`<path d="%s" fill="none"%s/>`+"\n", pathData(o.path), penAttrs(o.pen))
		case textOp:
			w.text(o)
		case clipOp:
			w.clips++
			id := idMark + strconv.Itoa(w.clips)
			w.printf(`<clipPath id="%s"><path d="%s"/></clipPath>`+"\n", id, pathData(o.path))
			w.printf(`<g clip-path="url(#%s)">`+"\n", id)
			w.ops(o.ops)
			w.printf("</g>\n")
		case layerOp:
			w.layer(o)
		case linkOp:
			w.printf(`<a%s><path d="%s" fill="none" pointer-events="all"/></a>`+"\n", attr("href", o.href), pathData(o.area.Path()))
		}
	}
}

func (w *svgWriter) layer(o layerOp) {
	kind := ""
	if o.title != "" {
		kind = attr("role", role(o.ops))
	}
	w.printf("<g%s>\n%s", kind, described(o.title, o.desc))
	w.ops(o.ops)
	w.printf("</g>\n")
}

func (w *svgWriter) text(o textOp) {
	w.missing(o.text)
	turn := ""
	if o.angle != 0 {
		turn = fmt.Sprintf(` transform="rotate(%s %s %s)"`, num(-o.angle.Degrees()), num(o.at.X), num(o.at.Y))
	}
	weight := ""
	if o.font.Bold {
		weight = ` font-weight="bold"`
	}
	w.printf(`<text x="%s" y="%s" font-size="%s"%s textLength="%s" lengthAdjust="spacingAndGlyphs"%s%s>%s</text>`+"\n",
		num(o.at.X), num(o.at.Y), num(o.font.Size), weight, num(o.font.width(o.text)), paint("fill", o.font.Color), turn, escape(o.text))
}

func (w *svgWriter) printf(format string, args ...any) { fmt.Fprintf(&w.body, format, args...) }

func described(title, desc string) string {
	var b strings.Builder
	if title = clean(title); title != "" {
		fmt.Fprintf(&b, "<title>%s</title>\n", escape(title))
	}
	if desc = clean(desc); desc != "" {
		fmt.Fprintf(&b, "<desc>%s</desc>\n", escape(desc))
	}
	return b.String()
}

func pathData(p Path) string {
	var b strings.Builder
	for _, s := range p.segs {
		switch s.verb {
		case moveTo:
			b.WriteString("M" + pair(s.p[0]))
		case lineTo:
			b.WriteString("L" + pair(s.p[0]))
		case cubicTo:
			b.WriteString("C" + pair(s.p[0]) + " " + pair(s.p[1]) + " " + pair(s.p[2]))
		case closePath:
			b.WriteString("Z")
		}
	}
	return b.String()
}

func penAttrs(p Pen) string {
	s := paint("stroke", p.Color) + attr("stroke-width", num(p.Width))
	if p.Cap != ButtCap {
		s += attr("stroke-linecap", [...]string{"round", "butt", "square"}[p.Cap])
	}
	if p.Join != MiterJoin {
		s += attr("stroke-linejoin", [...]string{"round", "miter", "bevel"}[p.Join])
	}
	if p.Dash != nil {
		parts := make([]string, len(p.Dash))
		for i, d := range p.Dash {
			parts[i] = num(d)
		}
		s += attr("stroke-dasharray", strings.Join(parts, " "))
	}
	return s
}

func paint(what string, c Color) string {
	s := fmt.Sprintf(` %s="#%02x%02x%02x"`, what, c.R, c.G, c.B)
	if c.A < 255 {
		s += attr(what+"-opacity", num(float64(c.A)/255))
	}
	return s
}

func attr(name, value string) string {
	if value == "" {
		return ""
	}
	return fmt.Sprintf(` %s="%s"`, name, escape(value))
}

func escape(s string) string {
	var b bytes.Buffer
	xml.EscapeText(&b, []byte(s)) // writing to a buffer does not fail
	return b.String()
}

func pair(p Point) string { return num(p.X) + " " + num(p.Y) }

// num prints to a thousandth, which is a micrometre on the page: finer than
// any press, and coarse enough that rounding on another processor stays
// hidden.
func num(v float64) string {
	s := strconv.FormatFloat(math.Round(v*1000)/1000, 'f', -1, 64)
	if s == "-0" {
		return "0"
	}
	return s
}
