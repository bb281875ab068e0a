package report

import (
	"math"

	"steelyard/evaluation"
	"steelyard/internal/draw"
	"steelyard/internal/sketch"
	"steelyard/mechanism"
	"steelyard/planar"
)

// stage is where a machine is drawn: a page, the place of the ground frame on
// it, and the reader's colours and units.
type stage struct {
	*draw.Page
	e     *evaluation.Evaluation
	m     *mechanism.Machine
	frame draw.Frame
	th    draw.Theme
	text  float64 // em of labels, mm
	u     units
	names draw.Labels
}

// canvas is a page together with what every figure needs to draw on it.
type canvas struct {
	*draw.Page
	scene *draw.Scene
	u     units
}

func (c canvas) stage(e *evaluation.Evaluation, box draw.Rect) *stage {
	return &stage{Page: c.Page, e: e, m: e.Model.Machine(), th: c.scene.Theme, text: c.scene.Text, u: c.u,
		names: draw.Labels{Bounds: box, Font: c.scene.Font(c.scene.Theme.Ink)}}
}

// mix returns the opaque colour that c with opacity a shows over paper.
func mix(c, paper draw.Color, a float64) draw.Color {
	blend := func(x, y uint8) uint8 { return uint8(math.Round(a*float64(x) + (1-a)*float64(y))) }
	return draw.Color{R: blend(c.R, paper.R), G: blend(c.G, paper.G), B: blend(c.B, paper.B), A: 255}
}

func (s *stage) pen(width float64, c draw.Color) draw.Pen {
	return draw.Pen{Width: width * s.text, Color: c}
}

// metres returns the length in m that w ems of a label cover.
func (s *stage) metres(w float64) float64 { return w * s.text / s.frame.Scale }

// bounds is a growing upright rectangle of the ground frame, m.
type bounds struct{ lo, hi planar.Vec }

func nothing() bounds {
	inf := math.Inf(1)
	return bounds{planar.Vec{X: inf, Y: inf}, planar.Vec{X: -inf, Y: -inf}}
}

func (b *bounds) add(p planar.Vec, r float64) {
	b.lo = planar.Vec{X: min(b.lo.X, p.X-r), Y: min(b.lo.Y, p.Y-r)}
	b.hi = planar.Vec{X: max(b.hi.X, p.X+r), Y: max(b.hi.Y, p.Y+r)}
}

// machineBounds returns what the machine takes up at the given places.
func machineBounds(m *mechanism.Machine, places []*facts) bounds {
	b := nothing()
	for _, p := range sketch.Places(m, mechanism.Ground) {
		b.add(p, 0)
	}
	for _, f := range places {
		for i := range m.Links {
			l := mechanism.LinkID(i + 1)
			for _, p := range sketch.Places(m, l) {
				b.add(f.State.Pose(l).Point(p), 0)
			}
		}
		for i := range m.Weights {
			if w := &m.Weights[i]; w.Mass > 0 {
				lo, hi := weightBox(m, w)
				at := f.State.Pose(w.Link).Point(w.At)
				b.add(at.Add(lo), 0)
				b.add(at.Add(hi), 0)
			}
		}
		for i, line := range m.Lines() {
			for _, p := range f.State.Course(i) {
				b.add(p, 0)
			}
			for k := range line.Route {
				_, outline := f.State.Station(i, k)
				for _, p := range outline {
					b.add(p, 0)
				}
			}
		}
		for i := range m.Chains {
			_, foot := sketch.Hanging(f.State, &m.Chains[i])
			b.add(foot, 0)
		}
	}
	return b
}
