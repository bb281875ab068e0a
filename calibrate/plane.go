package calibrate

import (
	"fmt"
	"math"

	"steelyard/planar"
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
