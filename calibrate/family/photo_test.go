package family_test

import (
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"testing"

	"steelyard/calibrate"
	"steelyard/calibrate/internal/pinhole"
	"steelyard/internal/draw"
	"steelyard/planar"
)

// A scene is a machine drawn by the project, with things of known size round it,
// each thing to be tapped in a colour of its own.
type scene struct {
	page  *draw.Page
	frame draw.Frame
	all   *draw.Scene
	next  uint8
}

// The scene shows x from -1.6 to 1.6 m and y from -0.2 to 2.2 m.
var sceneLow, sceneSize = planar.Vec{X: -1.6, Y: -0.2}, planar.Vec{X: 3.2, Y: 2.4}

// onPaper is the scale of the scene, mm for each m, and dpi that of its raster:
// 1 px for each mm of the machine.
const (
	onPaper = 250
	dpi     = 101.6
)

func newScene() *scene {
	s := &scene{all: draw.New("A machine", draw.Light)}
	s.page = s.all.AddPage(draw.Size{W: onPaper * sceneSize.X, H: onPaper * sceneSize.Y})
	s.frame = draw.Frame{Origin: draw.Point{X: -onPaper * sceneLow.X, Y: onPaper * (sceneLow.Y + sceneSize.Y)}, Scale: onPaper}
	return s
}

// colour returns one that nothing else in the scene has.
func (s *scene) colour() color.NRGBA {
	s.next++
	return color.NRGBA{R: 5 * s.next, G: 255 - 4*s.next, B: 40 + 90*(s.next%3), A: 255}
}

// bar draws a part of the machine between two places.
func (s *scene) bar(a, b planar.Vec) {
	s.page.Stroke(draw.Polyline(s.frame.At(a), s.frame.At(b)), draw.Pen{Width: 10, Color: draw.Light.Link})
}

// dot marks a place to be tapped, 14 mm in radius.
func (s *scene) dot(v planar.Vec) color.NRGBA {
	c := s.colour()
	s.page.Fill(draw.Circle(s.frame.At(v), s.frame.Len(0.014)), c)
	return c
}

// area fills an outline whose rim is to be tapped.
func (s *scene) area(outline []planar.Vec) color.NRGBA {
	c := s.colour()
	path := draw.Polyline(s.frame.Points(outline)...)
	path.Close()
	s.page.Fill(path, c)
	return c
}

// photo rasters the scene and takes a photo of it: each pixel shows the place
// its ray meets, between four pixels of the raster.
func (s *scene) photo(t *testing.T, c *pinhole.Camera) *image.RGBA {
	t.Helper()
	flat, _, err := draw.Raster(s.all, dpi)
	if err != nil {
		t.Fatal(err)
	}
	out := image.NewRGBA(image.Rect(0, 0, c.Width, c.Height))
	perMm := float64(flat.Rect.Dx()) / (onPaper * sceneSize.X)
	for y := range c.Height {
		for x := range c.Width {
			at := s.frame.At(c.Place(planar.Vec{X: float64(x) + 0.5, Y: float64(y) + 0.5}))
			out.SetRGBA(x, y, between(flat, at.X*perMm-0.5, at.Y*perMm-0.5))
		}
	}
	return out
}

// between returns the colour at x, y, bilinear; white off the picture.
func between(img *image.RGBA, x, y float64) color.RGBA {
	if !(x >= 0 && y >= 0 && x < float64(img.Rect.Dx()-1) && y < float64(img.Rect.Dy()-1)) {
		return color.RGBA{255, 255, 255, 255}
	}
	i, j := int(x), int(y)
	u, v := x-float64(i), y-float64(j)
	p, q := img.PixOffset(i, j), img.PixOffset(i, j+1)
	mix := func(k int) uint8 {
		top := float64(img.Pix[p+k])*(1-u) + float64(img.Pix[p+4+k])*u
		low := float64(img.Pix[q+k])*(1-u) + float64(img.Pix[q+4+k])*u
		return uint8(top*(1-v) + low*v + 0.5)
	}
	return color.RGBA{mix(0), mix(1), mix(2), 255}
}

// finger taps on a photo, each time off by sigma px.
type finger struct {
	photo *image.RGBA
	rng   *rand.Rand
	sigma float64
}

func (f *finger) tap(at planar.Vec) calibrate.Pixel {
	return calibrate.Pixel{X: at.X + f.sigma*f.rng.NormFloat64(), Y: at.Y + f.sigma*f.rng.NormFloat64()}
}

// is reports whether the photo shows the colour at a pixel and beside it, so
// that no blurred edge between two others passes for it.
func (f *finger) is(x, y int, c color.NRGBA) bool {
	want := color.RGBA{c.R, c.G, c.B, 255}
	return f.photo.RGBAAt(x, y) == want && f.photo.RGBAAt(x-1, y) == want && f.photo.RGBAAt(x+1, y) == want &&
		f.photo.RGBAAt(x, y-1) == want && f.photo.RGBAAt(x, y+1) == want
}

// middle returns the middle of all the photo shows in the colour, px.
func (f *finger) middle(t *testing.T, c color.NRGBA) planar.Vec {
	t.Helper()
	var sum planar.Vec
	n := 0.0
	for y := range f.photo.Rect.Dy() {
		for x := range f.photo.Rect.Dx() {
			if f.is(x, y, c) {
				sum = sum.Add(planar.Vec{X: float64(x) + 0.5, Y: float64(y) + 0.5})
				n++
			}
		}
	}
	if n < 20 {
		t.Fatalf("the photo shows %.0f px of a mark; at least 20 are wanted", n)
	}
	return sum.Scale(1 / n)
}

// dot taps a dot of the colour.
func (f *finger) dot(t *testing.T, c color.NRGBA) calibrate.Pixel { return f.tap(f.middle(t, c)) }

// rim taps n places on the edge of the area of a colour, which nothing covers
// near its edge, clockwise as seen.
func (f *finger) rim(t *testing.T, c color.NRGBA, n int) []calibrate.Pixel {
	t.Helper()
	from := f.middle(t, c)
	var out []calibrate.Pixel
	for i := range n {
		dir := planar.Polar(1, 2*math.Pi*planar.Angle(float64(i)+0.25)/planar.Angle(n))
		last := 0.0
		for r := 0.0; r < 400; r++ {
			if p := from.Add(dir.Scale(r)); f.is(int(math.Floor(p.X)), int(math.Floor(p.Y)), c) {
				last = r
			}
		}
		for f.blend(from.Add(dir.Scale(last)), c) < 0.5 {
			last += 0.05
		}
		out = append(out, f.tap(from.Add(dir.Scale(last))))
	}
	return out
}

// blend returns how far, from 0 to 1, the photo's colour is from c to white.
func (f *finger) blend(p planar.Vec, c color.NRGBA) float64 {
	got := between(f.photo, p.X-0.5, p.Y-0.5)
	return float64(got.R-c.R) / float64(255-c.R)
}
