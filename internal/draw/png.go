package draw

import (
	"fmt"
	"image"
	"image/png"
	"io"
	"math"

	"golang.org/x/image/draw"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

// maxPixels bounds the memory of a raster to 160 MB: A4 at 600 dpi fits.
const maxPixels = 40e6

// WritePNG writes the scene as a PNG of dpi pixels per inch, pages one under
// another. It returns warnings a person should see.
func WritePNG(w io.Writer, s *Scene, dpi float64) ([]string, error) {
	img, warnings, err := Raster(s, dpi)
	if err != nil {
		return nil, err
	}
	return warnings, png.Encode(w, img)
}

// Raster draws the scene at dpi pixels per inch.
func Raster(s *Scene, dpi float64) (*image.RGBA, []string, error) {
	width, height := s.extent()
	k := dpi / 25.4
	cols, rows := math.Round(width*k), math.Round(height*k)
	if !(cols >= 1 && rows >= 1 && cols*rows <= maxPixels) {
		return nil, nil, fmt.Errorf("draw: a picture of %.0f mm × %.0f mm at %g dpi is not between 1 and %.0f million pixels; change dpi", width, height, dpi, maxPixels/1e6)
	}
	r := raster{img: image.NewRGBA(image.Rect(0, 0, int(cols), int(rows))), k: k, warnings: s.newWarnings("a box")}
	y := 0.0
	for _, p := range s.pages {
		r.page = image.Rect(0, int(math.Round(y*k)), int(math.Round(p.Size.W*k)), int(math.Round((y+p.Size.H)*k)))
		r.scale = Point{float64(r.page.Dx()) / p.Size.W, float64(r.page.Dy()) / p.Size.H}
		r.ops(p.ops, clip{bounds: r.page})
		y += p.Size.H
	}
	return r.img, r.list, nil
}

// raster paints on an image. Coverage is exact area per pixel, colours mix in
// sRGB as browsers and PDF viewers do.
type raster struct {
	img   *image.RGBA
	k     float64         // pixels per mm
	page  image.Rectangle // whole pixels of the current page
	scale Point           // k, stretched so that the page fills them
	z     vector.Rasterizer
	buf   sfnt.Buffer
	warnings
}

// clip limits painting to bounds and, if mask is not nil, to its coverage.
type clip struct {
	bounds image.Rectangle
	mask   *image.Alpha
}

func (r *raster) ops(list []op, c clip) {
	for _, o := range list {
		switch o := o.(type) {
		case fillOp:
			r.paint(r.flat(o.path), o.color, c)
		case strokeOp:
			r.paint(outline(r.flat(o.path), o.pen, r.k), o.pen.Color, c)
		case textOp:
			r.missing(o.text)
			r.paint(r.glyphs(o), o.font.Color, c)
		case clipOp:
			mask := r.cover(r.flat(o.path), c)
			r.ops(o.ops, clip{mask.Rect, mask})
		case layerOp:
			r.ops(o.ops, c)
		}
	}
}

// flat returns the path's outlines in pixels.
func (r *raster) flat(p Path) []outlinePts {
	lines := flatten(p, chordGap/r.k)
	for _, l := range lines {
		for i, q := range l.pts {
			l.pts[i] = Point{q.X * r.scale.X, q.Y*r.scale.Y + float64(r.page.Min.Y)}
		}
	}
	return lines
}

// cover returns how much of each pixel the outlines fill, within c.
func (r *raster) cover(lines []outlinePts, c clip) *image.Alpha {
	box := pixelBounds(lines).Intersect(c.bounds)
	mask := image.NewAlpha(box)
	if box.Empty() {
		return mask
	}
	r.z.Reset(box.Dx(), box.Dy())
	for _, l := range lines {
		for i, q := range l.pts {
			x, y := float32(q.X-float64(box.Min.X)), float32(q.Y-float64(box.Min.Y))
			if i == 0 {
				r.z.MoveTo(x, y)
			} else {
				r.z.LineTo(x, y)
			}
		}
		r.z.ClosePath()
	}
	r.z.Draw(mask, box, image.Opaque, image.Point{})
	if c.mask != nil {
		for y := box.Min.Y; y < box.Max.Y; y++ {
			for x := box.Min.X; x < box.Max.X; x++ {
				i := mask.PixOffset(x, y)
				mask.Pix[i] = uint8((uint32(mask.Pix[i])*uint32(c.mask.AlphaAt(x, y).A) + 127) / 255)
			}
		}
	}
	return mask
}

func (r *raster) paint(lines []outlinePts, col Color, c clip) {
	mask := r.cover(lines, c)
	draw.DrawMask(r.img, mask.Rect, image.NewUniform(col), image.Point{}, mask, mask.Rect.Min, draw.Over)
}

// glyphs returns the outlines of a line of text, in pixels.
func (r *raster) glyphs(o textOp) []outlinePts {
	var all Path
	at := o.at
	for _, c := range o.text {
		if has(c) {
			all.Append(r.glyph(o, at, c))
		} else {
			all.Append(glyphBox(o, at, c))
		}
		at = at.Add(Towards(o.font.advance(c), o.angle))
	}
	return r.flat(all)
}

// glyph returns the outline of one rune standing at at.
func (r *raster) glyph(o textOp, at Point, c rune) Path {
	var p Path
	face := o.font.face()
	g, _ := face.GlyphIndex(&r.buf, c)
	segs, err := face.LoadGlyph(&r.buf, g, fixed.I(em), nil)
	if err != nil {
		return p
	}
	u := Towards(o.font.Size/em/64, o.angle)
	place := func(q fixed.Point26_6) Point {
		return at.Add(u.Scale(float64(q.X))).Sub(u.left().Scale(float64(q.Y)))
	}
	for _, s := range segs {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			p.Close()
			p.Move(place(s.Args[0]))
		case sfnt.SegmentOpLineTo:
			p.Line(place(s.Args[0]))
		case sfnt.SegmentOpQuadTo:
			p.Quad(place(s.Args[0]), place(s.Args[1]))
		case sfnt.SegmentOpCubeTo:
			p.Cubic(place(s.Args[0]), place(s.Args[1]), place(s.Args[2]))
		}
	}
	p.Close()
	return p
}
