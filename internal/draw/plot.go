package draw

import "math"

// Axis is one side of a plot: what it shows, in which unit, from where to
// where. Zones of the level axis are named above the plot and shaded in turn.
type Axis struct {
	Quantity, Unit string
	Lo, Hi         float64
	Zones          []Zone
}

// Zone is a named stretch of an axis.
type Zone struct {
	Lo, Hi float64
	Name   string
}

// Span returns an axis from the least to the greatest number of the series.
func Span(quantity, unit string, series ...[]float64) Axis {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, s := range series {
		for _, v := range s {
			if !math.IsNaN(v - v) {
				lo, hi = min(lo, v), max(hi, v)
			}
		}
	}
	return Axis{Quantity: quantity, Unit: unit, Lo: lo, Hi: hi}
}

// FromZero returns a stretched to hold zero, so that lengths do not mislead.
func (a Axis) FromZero() Axis {
	a.Lo, a.Hi = min(a.Lo, 0), max(a.Hi, 0)
	return a
}

// Round returns a widened to whole ticks.
func (a Axis) Round() Axis {
	a = a.usable()
	step := tickStep(a.Lo, a.Hi, ticksWanted)
	a.Lo, a.Hi = math.Floor(a.Lo/step+1e-9)*step, math.Ceil(a.Hi/step-1e-9)*step
	return a
}

// usable returns a with a finite width that floats can divide.
func (a Axis) usable() Axis {
	const far = 1e150
	if !(a.Lo >= -far && a.Hi <= far && a.Lo <= a.Hi) {
		a.Lo, a.Hi = 0, 1
	}
	if least := 1e-9 * max(math.Abs(a.Lo), math.Abs(a.Hi)); a.Hi-a.Lo <= least {
		grow := max(least, 0.5)
		a.Lo, a.Hi = a.Lo-grow, a.Hi+grow
	}
	return a
}

func (a Axis) label() string {
	if a.Unit == "" {
		return a.Quantity
	}
	return a.Quantity + " (" + a.Unit + ")"
}

// Plot is a pair of axes drawn on a page, ready for curves. Area is where
// they go.
type Plot struct {
	Area Rect
	X, Y Axis
	page *Page
}

// Plot draws axes that fill box, labels included, and returns them. The label
// of the upright axis lies above it, where it reads without turning the head.
func (p *Page) Plot(box Rect, x, y Axis) Plot {
	s := p.scene
	x, y = x.usable(), y.usable()
	f := s.Font(s.Theme.Ink)
	yTicks := Ticks(y.Lo, y.Hi, ticksWanted)
	gutter := 0.0
	for _, t := range yTicks {
		gutter = max(gutter, f.Measure(t.Label))
	}
	gap := 0.5 * s.Text
	top, bottom := f.Leading()+gap, 2*f.Leading()+2*gap
	if len(x.Zones) > 0 {
		top += f.Leading()
	}
	side := 1.5 * s.Text // room for half of the last label
	pl := Plot{
		Area: Rect{box.X + gutter + gap, box.Y + top, box.W - gutter - gap - side, box.H - top - bottom},
		X:    x, Y: y, page: p,
	}
	pl.zones()
	pl.axes(box, yTicks, gap)
	return pl
}

func (pl Plot) axes(box Rect, yTicks []Tick, gap float64) {
	s, p, a := pl.page.scene, pl.page, pl.Area
	f, small := s.Font(s.Theme.Ink), s.Font(s.Theme.Faint)
	grid := s.thin(Alpha(s.Theme.Faint, 0.4))
	for _, t := range yTicks {
		y := pl.At(pl.X.Lo, t.Value).Y
		p.Stroke(Polyline(Point{a.X, y}, Point{a.Right(), y}), grid)
		p.TextAt(Point{a.X - gap, small.middle(y)}, t.Label, small, Right)
	}
	for _, t := range pl.fittingTicks(small) {
		x := pl.At(t.Value, pl.Y.Lo).X
		p.Stroke(Polyline(Point{x, a.Bottom()}, Point{x, a.Bottom() + gap}), s.thin(s.Theme.Ink))
		p.TextAt(Point{x, a.Bottom() + gap + f.Leading()}, t.Label, small, Centre)
	}
	p.Stroke(Polyline(Point{a.X, a.Bottom()}, Point{a.Right(), a.Bottom()}), s.thin(s.Theme.Ink))
	p.TextAt(Point{box.X, box.Y + ascent*f.Size}, pl.Y.label(), f, Left)
	p.TextAt(Point{a.Right(), box.Bottom() - descent*f.Size}, pl.X.label(), f, Right)
}

// fittingTicks returns as many ticks on the level axis as leave room between
// their labels.
func (pl Plot) fittingTicks(f Font) []Tick {
	for n := ticksWanted; ; n-- {
		ticks := Ticks(pl.X.Lo, pl.X.Hi, n)
		need := 0.0
		for _, t := range ticks {
			need += f.Measure(t.Label) + f.Size
		}
		if need <= pl.Area.W || n == 2 {
			return ticks
		}
	}
}

// At returns where the values x and y fall on the page.
func (pl Plot) At(x, y float64) Point {
	return Point{
		pl.Area.X + pl.Area.W*(x-pl.X.Lo)/(pl.X.Hi-pl.X.Lo),
		pl.Area.Bottom() - pl.Area.H*(y-pl.Y.Lo)/(pl.Y.Hi-pl.Y.Lo),
	}
}

// Curve draws y over x, slices of one length. A value that is not a number
// leaves a gap.
func (pl Plot) Curve(xs, ys []float64, pen Pen) {
	pl.page.Clip(pl.Area.Inset(-pen.Width).Path(), func() {
		for _, run := range runs(xs, ys) {
			pl.page.Stroke(Polyline(pl.points(run, xs, ys)...), pen)
		}
	})
}

// Band fills between lo and hi over xs, slices of one length, solid and light,
// or hatched where the values are uncertain.
func (pl Plot) Band(xs, lo, hi []float64, c Color, hatched bool) {
	pl.page.Clip(pl.Area.Path(), func() {
		for _, run := range runs(xs, lo, hi) {
			area := between(pl.points(run, xs, lo), pl.points(run, xs, hi))
			if hatched {
				pl.page.uncertain(area, c)
			} else {
				pl.page.Fill(area, Alpha(c, 0.2))
			}
		}
	})
}

// zones shades every other zone, up to the strip above the area that holds
// the names. A name too long for its zone is set smaller.
func (pl Plot) zones() {
	s, p, a := pl.page.scene, pl.page, pl.Area
	for i, z := range pl.X.Zones {
		f := s.Font(s.Theme.Ink)
		left, right := max(pl.At(z.Lo, 0).X, a.X), min(pl.At(z.Hi, 0).X, a.Right())
		if !(right > left) {
			continue
		}
		if i%2 == 0 {
			p.Fill(Rect{left, a.Y - f.Leading(), right - left, a.H + f.Leading()}.Path(), Alpha(s.Theme.Faint, 0.12))
		}
		f.Size = min(f.Size, f.Size*(right-left)/f.Measure(z.Name))
		p.TextAt(Point{(left + right) / 2, a.Y - 0.35*s.Text}, z.Name, f, Centre)
	}
}

func (pl Plot) points(run [2]int, xs, ys []float64) []Point {
	var pts []Point
	for i := run[0]; i < run[1]; i++ {
		pts = append(pts, pl.At(xs[i], ys[i]))
	}
	return pts
}

// runs returns the stretches [from, to) where all series have numbers.
func runs(series ...[]float64) [][2]int {
	n := len(series[0])
	for _, s := range series {
		n = min(n, len(s))
	}
	var out [][2]int
	start := 0
	for i := 0; i <= n; i++ {
		gap := i == n
		for _, s := range series {
			gap = gap || math.IsNaN(s[i]-s[i])
		}
		if gap {
			if i > start {
				out = append(out, [2]int{start, i})
			}
			start = i + 1
		}
	}
	return out
}
