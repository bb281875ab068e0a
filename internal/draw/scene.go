package draw

import (
	"fmt"
	"net/url"
	"strings"
	"time"

	"steelyard/planar"
)

// Size is the width and height of a page in mm.
type Size struct{ W, H float64 }

// A4 upright. Source: ISO 216.
var A4 = Size{210, 297}

// Pt is one typographic point in mm, for font sizes: 9*draw.Pt.
const Pt = 25.4 / 72

// Scene is a drawing of one or more pages, recorded to be written in any
// format.
type Scene struct {
	Title  string    // names the drawing to readers who cannot see it
	Desc   string    // says what it shows, in a sentence or two
	Lang   string    // language of the text, BCP 47; may be empty
	Date   time.Time // date of the document in a PDF; zero writes 1 January 1970
	Theme  Theme
	Text   float64 // em of labels in symbols, axes and tables, mm
	pages  []*Page
	strays []string // what was asked for and could not be recorded
}

// New returns an empty scene in the given colours, with 8-point labels.
func New(title string, th Theme) *Scene {
	return &Scene{Title: title, Theme: th, Text: 8 * Pt}
}

// AddPage appends a page covered with the theme's paper. A size that is not
// between 0 and a kilometre is replaced by A4, with a warning.
func (s *Scene) AddPage(size Size) *Page {
	if !(size.W > 0 && size.H > 0 && size.W <= reach && size.H <= reach) {
		s.stray("a page of %g mm × %g mm cannot be made; it became A4", size.W, size.H)
		size = A4
	}
	p := &Page{Size: size, scene: s}
	s.pages = append(s.pages, p)
	p.Fill(p.Bounds().Path(), s.Theme.Paper)
	return p
}

// Pages returns the pages in order.
func (s *Scene) Pages() []*Page { return s.pages }

// Page records what is drawn on it. Later things cover earlier ones.
type Page struct {
	Size  Size
	scene *Scene
	ops   []op
}

// Bounds returns the whole page.
func (p *Page) Bounds() Rect { return Rect{0, 0, p.Size.W, p.Size.H} }

// op is one entry of the display list. The set is closed: each writer switches
// over all of them.
type op interface{ isOp() }

type (
	fillOp struct {
		path  Path
		color Color
	}
	strokeOp struct {
		path Path
		pen  Pen
	}
	textOp struct {
		at    Point // left end of the baseline
		angle planar.Angle
		text  string // cleaned
		font  Font
	}
	clipOp struct {
		path Path
		ops  []op
	}
	layerOp struct {
		title, desc string
		ops         []op
	}
	linkOp struct {
		area Rect
		href string
	}
)

func (fillOp) isOp()   {}
func (strokeOp) isOp() {}
func (textOp) isOp()   {}
func (clipOp) isOp()   {}
func (layerOp) isOp()  {}
func (linkOp) isOp()   {}

// Cap is the end of a stroke.
type Cap uint8

const (
	RoundCap Cap = iota
	ButtCap
	SquareCap
)

// Join is the corner of a stroke. A miter longer than four pen widths is
// bevelled.
type Join uint8

const (
	RoundJoin Join = iota
	MiterJoin
	BevelJoin
)

const miterLimit = 4

// Pen is how a path is stroked. Width is in mm. Dash lists lengths of ink and
// gap in mm, in pairs, from the start of each outline; nil is solid. Caps and
// joins are round unless said.
type Pen struct {
	Width float64
	Color Color
	Dash  []float64
	Cap   Cap
	Join  Join
}

// Fill paints the inside of path.
func (p *Page) Fill(path Path, c Color) {
	if c.A > 0 && p.usable(path, "area") {
		p.ops = append(p.ops, fillOp{path, c})
	}
}

// Stroke draws along path. A pen without width or colour draws nothing.
func (p *Page) Stroke(path Path, pen Pen) {
	if pen.Width > 0 && pen.Width <= reach && pen.Color.A > 0 && p.usable(path, "line") {
		pen.Dash = usableDash(pen.Dash)
		p.ops = append(p.ops, strokeOp{path, pen})
	}
}

// usableDash returns the pattern, or nil if it has no length to repeat.
func usableDash(dash []float64) []float64 {
	sum := 0.0
	for _, d := range dash {
		if !(d >= 0) {
			return nil
		}
		sum += d
	}
	if len(dash)%2 == 1 || !(sum > 0 && sum < 1e6) {
		return nil
	}
	return dash
}

// usable reports whether path can be drawn. A path with a coordinate that is
// not a number, or out of reach, is noted as a warning and left out.
func (p *Page) usable(path Path, what string) bool {
	if !path.drawable() {
		p.scene.stray("a %s was left out: a coordinate is not a number or lies over a kilometre off the page", what)
		return false
	}
	return len(path.segs) > 0
}

// Clip draws what draw records only inside path.
func (p *Page) Clip(path Path, draw func()) {
	inner := p.record(draw)
	if p.usable(path, "clip outline") {
		p.ops = append(p.ops, clipOp{path, inner})
	}
}

// Layer groups what draw records under a title and description for readers who
// cannot see the picture. SVG carries both; PDF and PNG carry neither.
func (p *Page) Layer(title, desc string, draw func()) {
	p.ops = append(p.ops, layerOp{clean(title), clean(desc), p.record(draw)})
}

func (p *Page) record(draw func()) []op {
	outer := p.ops
	p.ops = nil
	draw()
	inner := p.ops
	p.ops = outer
	return inner
}

// Link makes area open href. Only http, https and mailto addresses are kept;
// any other is noted as a warning.
func (p *Page) Link(area Rect, href string) {
	u, err := url.Parse(href)
	if err != nil || (u.Scheme != "http" && u.Scheme != "https" && u.Scheme != "mailto") {
		p.scene.stray("the link %q was left out: only web and mail addresses can be linked", clean(href))
		return
	}
	if p.usable(area.Path(), "link") {
		p.ops = append(p.ops, linkOp{area, strings.ToValidUTF8(u.String(), "")})
	}
}

func (s *Scene) stray(format string, args ...any) {
	s.strays = append(s.strays, fmt.Sprintf(format, args...))
}
