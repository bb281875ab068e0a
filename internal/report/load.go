package report

import (
	"math"

	"steelyard/internal/draw"
	"steelyard/internal/sketch"
	"steelyard/mechanism"
	"steelyard/planar"
)

const quarter planar.Angle = math.Pi / 2

// Sizes of stacks, m, whose height grows with their mass. For the eye only.
const (
	stackWide   = 0.26
	stackHeight = 0.006 // per kg
	stackLeast  = 0.10
	stackMost   = 0.70
	stackPlate  = 0.03
)

// isBlock reports whether the weight is drawn as a stack and not as a disc.
func isBlock(m *mechanism.Machine, w *mechanism.Weight) bool {
	return w.Inertia == 0 && isStack(m, w.Link)
}

func stackSize(w *mechanism.Weight) float64 {
	return min(max(stackHeight*w.Mass, stackLeast), stackMost)
}

// weightBox returns the corners of a weight's picture about its place, m.
func weightBox(m *mechanism.Machine, w *mechanism.Weight) (lo, hi planar.Vec) {
	if isBlock(m, w) {
		return planar.Vec{X: -stackWide / 2, Y: -stackSize(w)}, planar.Vec{X: stackWide / 2}
	}
	r, _ := sketch.DiscRadius(w)
	return planar.Vec{X: -r, Y: -r}, planar.Vec{X: r, Y: r}
}

// weightShape returns a disc, or for a stack the block that hangs below its
// rope's end.
func (s *stage) weightShape(f *facts, w *mechanism.Weight) draw.Path {
	at := f.State.Pose(w.Link).Point(w.At)
	if !isBlock(s.m, w) {
		r, _ := sketch.DiscRadius(w)
		return draw.Circle(s.frame.At(at), s.frame.Len(r))
	}
	lo, hi := weightBox(s.m, w)
	a, b := s.frame.At(at.Add(lo)), s.frame.At(at.Add(hi))
	return draw.Rect{X: a.X, Y: b.Y, W: b.X - a.X, H: a.Y - b.Y}.Path()
}

// loads draws plates as discs and stacks as blocks, each with its centre.
func (s *stage) loads(f *facts) {
	for i := range s.m.Weights {
		w := &s.m.Weights[i]
		if w.Mass == 0 {
			continue
		}
		shape := s.weightShape(f, w)
		s.names.AvoidLine(shape)
		if isBlock(s.m, w) {
			s.Fill(shape, mix(s.th.Load, s.th.Paper, 0.16))
			s.plates(f, w)
			s.Stroke(shape, s.pen(0.18, s.th.Load))
			continue
		}
		s.Fill(shape, draw.Alpha(s.th.Load, 0.14))
		s.Stroke(shape, s.pen(0.18, s.th.Load))
		at := s.frame.At(f.State.Pose(w.Link).Point(w.At))
		s.Fill(draw.Circle(at, 0.22*s.text), s.th.Load)
	}
	for i := range s.m.Chains {
		s.chain(f, &s.m.Chains[i])
	}
}

// plates rules a stack into plates.
func (s *stage) plates(f *facts, w *mechanism.Weight) {
	at := f.State.Pose(w.Link).Point(w.At)
	lo, hi := weightBox(s.m, w)
	for y := hi.Y - stackPlate; y > lo.Y+stackPlate/2; y -= stackPlate {
		a, b := s.frame.At(at.Add(planar.Vec{X: lo.X, Y: y})), s.frame.At(at.Add(planar.Vec{X: hi.X, Y: y}))
		s.Stroke(draw.Polyline(a, b), s.pen(0.06, s.th.Load))
	}
}

// chain draws a hanging chain as a row of dots down to the floor, and what
// lies there as a heap.
func (s *stage) chain(f *facts, c *mechanism.Chain) {
	top, foot := sketch.Hanging(f.State, c)
	pen := s.pen(0.3, s.th.Load)
	pen.Dash = []float64{0.01 * s.text, 0.45 * s.text}
	s.Stroke(draw.Polyline(s.frame.At(top), s.frame.At(foot)), pen)
	if foot.Y == c.Floor {
		at := s.frame.At(foot)
		wide := draw.Point{X: 0.9 * s.text}
		s.Stroke(draw.Polyline(at.Sub(wide), at.Add(wide)), pen)
		s.GroundLine(at.Sub(wide.Scale(2)), at.Add(wide.Scale(2)))
	}
}
