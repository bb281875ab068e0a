package calibrate

import (
	"fmt"
	"math"
	"slices"

	"steelyard/planar"
	"steelyard/quantity"
)

const (
	// Repeats is how often a survey is repeated to find its errors, which are
	// then themselves good to about 7 %.
	Repeats = 100
	// seed draws the same errors for the same survey every time.
	seed = 1
	// furthest is how far from the origin in m a place may be. Beyond lies the
	// horizon, not a machine.
	furthest = 50
	// rimParts is the number of points of a rim for drawing.
	rimParts = 72
)

// Plane is the plane of motion found in a photo. It is safe for concurrent use.
type Plane struct {
	view      view
	fromPhoto matrix // pixels to places
	toPhoto   matrix
	repeats   [][]matrix // fromPhoto again and again, with errors drawn, for each of the views that explain the photo
	tap       float64    // px, standard deviation
	middle    planar.Vec
	rims      [][]Pixel
	survey    Survey
	split     bool
	sides     []Side // that decide between two planes
	misfit    float64
}

// Solve finds the plane. Errors are of type *[Fault].
func (s *Survey) Solve() (*Plane, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	t := s.task()
	views := s.preferred(t.views())
	if len(views) == 0 {
		return nil, &Fault{"the known sizes", "cannot lie in one plane as they are tapped", "check each tap, and that every size is in the right unit"}
	}
	best := views[0]
	split := len(views) > 1
	var sides []Side
	if split {
		sides = telling(&views[0].view, &views[1].view)
		flat := *t
		flat.bend, flat.bendError = 0, 0
		if f, ok := flat.from(best.x, mostSteps); ok && f.sum-best.sum < undecided {
			best = f
		}
	}
	p := &Plane{view: best.view, tap: t.tap, survey: *s, split: split, sides: sides, misfit: t.misfit(best.sum)}
	if p.misfit > farOut {
		return nil, &Fault{"the known sizes", fmt.Sprintf("contradict each other %.0f-fold of what their ± allows", p.misfit), "check each tap and size, and that all lie in one plane"}
	}
	var ok bool
	if p.fromPhoto, ok = s.upright(&best.view, nil); !ok {
		return nil, &Fault{"the plumb line", "reaches beyond the plane's horizon", "tap it on the machine"}
	}
	if p.toPhoto, ok = p.fromPhoto.inverse(); !ok {
		return nil, &Fault{"the plane", "is seen edge on", "take the photo from the side of the machine"}
	}
	p.rims = t.rims(&best)
	for _, r := range t.references {
		p.middle = p.middle.Add(mean(vecs(r.taps())).Scale(1 / float64(len(t.references))))
	}
	for i := range views {
		again := s.repeated(t, &views[i])
		p.repeats = append(p.repeats, again)
		if len(again) >= Repeats/2 {
			continue
		}
		return nil, &Fault{"the known sizes", "are too small in the photo to measure by", "use one that spans more of the photo, or tap more exactly"}
	}
	return p, nil
}

// task returns what is to be solved.
func (s *Survey) task() *task {
	t := &task{prior: s.camera(), origin: s.origin(), tap: s.tap()}
	for _, r := range s.Rectangles {
		t.references = append(t.references, r)
	}
	for _, p := range s.Plates {
		t.references = append(t.references, p)
	}
	for _, l := range s.Lines {
		t.references = append(t.references, l)
	}
	return t
}

// preferred leaves one of two views if the nearer side of the photo decides.
func (s *Survey) preferred(views []found) []found {
	if s.Near == AnySide || len(views) < 2 || views[0].nearer(s.Near) == views[1].nearer(s.Near) {
		return views
	}
	if views[0].nearer(s.Near) {
		return views[:1]
	}
	return views[1:]
}

// misfit returns the root of the sum of squares for each degree of freedom, of
// which there is at least one.
func (t *task) misfit(sum float64) float64 {
	free := ownResiduals - ownUnknowns
	for _, r := range t.references {
		free += r.count() - len(r.widths())
	}
	return math.Sqrt(sum / float64(max(1, free)))
}

// upright returns the homography from pixels to places, the plumb line up and
// forward to the right. With a drawer, the plumb line is tapped once more.
func (s *Survey) upright(v *view, d *drawer) (matrix, bool) {
	back, ok := v.seen(0).inverse()
	if !ok {
		return matrix{}, false
	}
	from, to, quarter := s.origin(), s.origin().Sub(planar.Vec{Y: 1}), planar.Angle(math.Pi/2)
	switch {
	case s.Plumb != nil:
		from, to = d.pixel(s.Plumb[1]).vec(), d.pixel(s.Plumb[0]).vec()
	case s.Level != nil:
		from, to, quarter = d.pixel(s.Level[0]).vec(), d.pixel(s.Level[1]).vec(), 0
		if s.Level[0].X > s.Level[1].X {
			from, to = to, from
		}
	default:
		quarter += planar.Angle(d.normal()) * levelError
	}
	a, wa := back.through(from)
	b, wb := back.through(to)
	if !(wa > 0 && wb > 0) || a == b {
		return matrix{}, false
	}
	sin, cos := math.Sincos(float64(quarter - b.Sub(a).Angle()))
	turn := matrix{cos, -sin, 0, sin, cos, 0, 0, 0, 1}
	if s.Mirror {
		turn[0], turn[1] = -turn[0], -turn[1]
	}
	return turn.times(back), true
}

// rims returns the plates' rims as the view sees them, for drawing.
func (t *task) rims(f *found) [][]Pixel {
	var rims [][]Pixel
	x := f.x[ownUnknowns:]
	for _, r := range t.references {
		if _, ok := r.(Plate); ok {
			m := f.seen(r.inFront())
			rim := make([]Pixel, rimParts)
			for i := range rim {
				at, _ := m.through(planar.Vec{X: x[0], Y: x[1]}.Add(planar.Polar(x[2]/2, 2*math.Pi/rimParts*planar.Angle(i))))
				rim[i] = Pixel(at)
			}
			rims = append(rims, rim)
		}
		x = x[len(r.widths()):]
	}
	return rims
}

// At returns the place under a pixel, m. It fails, with a *[Fault], beyond the
// horizon of the plane.
func (p *Plane) At(px Pixel) (planar.Vec, error) {
	at, w := p.fromPhoto.through(px.vec())
	if !(w > 0 && at.Norm() < furthest) {
		return planar.Vec{}, &Fault{placeOf(px), "is beyond the horizon of the plane of motion", "tap on the machine, or check the known sizes"}
	}
	return at, nil
}

// Measure returns the place under a pixel with the error it may have: that of
// this tap, and that of the plane, which other places share.
func (p *Plane) Measure(px Pixel) (Point, error) {
	at, err := p.At(px)
	if err != nil {
		return Point{}, err
	}
	var plus planar.Vec
	for _, again := range p.repeats {
		bias, spread, ok := deviation(again, px, at)
		if !ok {
			return Point{}, &Fault{placeOf(px), "is too close to the horizon of the plane of motion to be measured", "tap on the machine, or check the known sizes"}
		}
		plus.X = max(plus.X, math.Abs(bias.X)+quantity.Coverage*spread.X)
		plus.Y = max(plus.Y, math.Abs(bias.Y)+quantity.Coverage*spread.Y)
	}
	_, w := p.fromPhoto.through(px.vec())
	byX, byY := p.fromPhoto.slopes(at, w)
	tap := quantity.Coverage * p.tap
	return Point{at, planar.Vec{
		X: math.Sqrt(plus.X*plus.X + tap*tap*(byX.X*byX.X+byY.X*byY.X)),
		Y: math.Sqrt(plus.Y*plus.Y + tap*tap*(byX.Y*byX.Y+byY.Y*byY.Y)),
	}}, nil
}

// deviation returns by how much the places of a pixel in repeated surveys
// differ from at: their mean difference and their standard deviation. It fails
// if most have no place.
func deviation(again []matrix, px Pixel, at planar.Vec) (bias, spread planar.Vec, ok bool) {
	var squares planar.Vec
	n := 0.0
	for i := range again {
		q, w := again[i].through(px.vec())
		if d := q.Sub(at); w > 0 && q.Norm() < 2*furthest {
			bias = bias.Add(d)
			squares = squares.Add(planar.Vec{X: d.X * d.X, Y: d.Y * d.Y})
			n++
		}
	}
	bias, squares = bias.Scale(1/n), squares.Scale(1/n)
	spread = planar.Vec{X: math.Sqrt(max(0, squares.X-bias.X*bias.X)), Y: math.Sqrt(max(0, squares.Y-bias.Y*bias.Y))}
	return bias, spread, n > 0 && n >= float64(len(again))/2
}

// placeOf names a pixel.
func placeOf(px Pixel) string {
	return fmt.Sprintf("the place at %.0f px right, %.0f px down", px.X, px.Y)
}

// Pixel returns where the photo shows a place (m). It fails, with a *[Fault], if
// that lies behind the camera.
func (p *Plane) Pixel(at planar.Vec) (Pixel, error) {
	px, w := p.toPhoto.through(at)
	if !(w > 0) || !px.Finite() {
		return Pixel{}, &Fault{fmt.Sprintf("the place %.4g m forward, %.4g m up", at.X, at.Y), "lies behind the camera", "check the known sizes"}
	}
	return Pixel(px), nil
}

// FromPhoto returns the homography, row by row, that takes (right, down, 1) in
// px to w·(x, y, 1) in m.
func (p *Plane) FromPhoto() [9]float64 { return p.fromPhoto }

// ToPhoto returns the inverse of [Plane.FromPhoto].
func (p *Plane) ToPhoto() [9]float64 { return p.toPhoto }

// Tilt returns the angle between the camera's axis and the plane's normal.
func (p *Plane) Tilt() planar.Angle { return planar.Angle(p.view.tilt()) }

// Distance returns how far the camera was from the plane at the origin, m along
// its axis, as its lens makes it; +Inf if perspective was left out.
func (p *Plane) Distance() float64 { return 1 / (p.view.bend * p.view.scale) }

// PerPixel returns the length in m of one pixel in the middle of the references.
func (p *Plane) PerPixel() float64 {
	at, w := p.fromPhoto.through(p.middle)
	byX, byY := p.fromPhoto.slopes(at, w)
	return math.Sqrt(math.Abs(byX.Cross(byY)))
}

// Tap returns the ± in m of a tap alone in the middle of the references.
func (p *Plane) Tap() float64 { return quantity.Coverage * p.tap * p.PerPixel() }

// Ambiguous reports whether two planes explain the references alike, so that
// [Survey.Near] is wanted.
func (p *Plane) Ambiguous() bool { return p.split }

// Sides returns the two opposite sides of the photo between which [Survey.Near]
// decides if the plane is ambiguous; none if no side tells its two planes apart.
func (p *Plane) Sides() []Side { return slices.Clone(p.sides) }

// Rim returns the rim of a plate as the plane explains it, to be drawn over the
// photo.
func (p *Plane) Rim(plate int) []Pixel { return p.rims[plate] }
