package calibrate

import (
	"cmp"
	"math"
	"slices"

	"steelyard/planar"
)

// prior is what is known of camera and tilt without a reference, with standard
// deviations.
type prior struct {
	tilt, middle         planar.Vec // rad, px
	bend                 float64    // 1/px
	tiltError, bendError float64
	middleError          float64
}

// task is a view to be found from references.
type task struct {
	prior
	references []reference
	origin     planar.Vec
	tap        float64 // px
}

// The unknowns of a task are tilt a and b, the logarithm of the scale, bend and
// middle in standard deviations from what is known of them; then those of each
// reference.
const (
	ownUnknowns  = 6
	ownResiduals = 5
)

// found is a view that explains the references, with the sum of squares left.
type found struct {
	view
	x   []float64
	sum float64
}

// view returns the view that unknowns x stand for.
func (t *task) view(x []float64) view {
	return view{
		a: x[0], b: x[1], scale: math.Exp(x[2]),
		bend:   t.bend + t.bendError*x[3],
		middle: t.middle.Add(planar.Vec{X: x[4], Y: x[5]}.Scale(t.middleError)),
		origin: t.origin,
	}
}

// residuals implements [residuals].
func (t *task) residuals(x, out []float64) bool {
	v := t.view(x)
	if !(v.tilt() < math.Pi/2) || v.bend < 0 {
		return false
	}
	out[0], out[1] = (x[0]-t.tilt.X)/t.tiltError, (x[1]-t.tilt.Y)/t.tiltError
	out[2], out[3], out[4] = x[3], x[4], x[5]
	out, x = out[ownResiduals:], x[ownUnknowns:]
	for _, r := range t.references {
		if !r.residuals(&v, x, t.tap, out) {
			return false
		}
		out, x = out[r.count():], x[len(r.widths()):]
	}
	return true
}

// from returns the view that explains the references best, looked for from
// unknowns x in at most so many steps.
func (t *task) from(x []float64, steps int) (found, bool) {
	widths := []float64{1e-6, 1e-6, 1e-6, 1e-4, 1e-4, 1e-4}
	n := ownResiduals
	for _, r := range t.references {
		widths = append(widths, r.widths()...)
		n += r.count()
	}
	x, sum, ok := fit(t.residuals, x, widths, n, steps)
	if !ok {
		return found{}, false
	}
	return found{t.view(x), x, sum}, true
}

// guess returns unknowns for a tilt: the scale from the first reference, the
// others placed where they are then seen.
func (t *task) guess(tilt planar.Vec) ([]float64, bool) {
	x := []float64{tilt.X, tilt.Y, 0, 0, 0, 0}
	v := t.view(x)
	// At 1 px/m the perspective of one pixel's length is that at any scale: the
	// model depends on scale times place.
	back, ok := v.seenPixels().inverse()
	if !ok {
		return nil, false
	}
	first := t.references[0]
	for _, r := range t.references {
		for _, p := range r.taps() {
			if _, w := back.through(p.vec()); !(w > 0) {
				return nil, false
			}
		}
	}
	x[2] = -math.Log(first.scale(&back))
	if math.IsNaN(x[2]) || math.IsInf(x[2], 0) {
		return nil, false
	}
	for _, r := range t.references {
		v = t.view(x)
		back, ok := v.seen(r.inFront()).inverse()
		if !ok {
			return nil, false
		}
		x = append(x, r.start(&back)...)
	}
	return x, true
}

// seenPixels returns what the view would see at 1 px/m.
func (v view) seenPixels() matrix {
	v.scale = 1
	return v.seen(0)
}

const (
	// unlike is the least difference between two tilts that are not one, as a
	// share of the greater one; a tilt and its opposite differ by 2. Below
	// alike, in rad, all are one.
	unlike = 0.5
	alike  = 0.5 * planar.Degree
	// undecided is the difference of sums of squares below which taps do not
	// decide between two planes: three standard deviations.
	undecided = 9
)

// views returns the views that explain the references, the best one first, and
// after it another if it explains them about as well.
func (t *task) views() []found {
	var all []found
	for _, tilt := range t.starts() {
		if x, ok := t.guess(tilt); ok {
			if f, ok := t.from(x, mostSteps); ok {
				all = append(all, f)
			}
		}
	}
	slices.SortStableFunc(all, func(f, g found) int { return cmp.Compare(f.sum, g.sum) })
	if len(all) == 0 {
		return nil
	}
	for _, f := range all[1:] {
		apart := math.Hypot(f.a-all[0].a, f.b-all[0].b)
		if f.sum-all[0].sum < undecided && apart > max(float64(alike), unlike*max(f.tilt(), all[0].tilt())) {
			return []found{all[0], f}
		}
	}
	return all[:1]
}

// starts returns the tilts to begin from: square, all round, and the two that
// each plate's ellipse has.
func (t *task) starts() []planar.Vec {
	tilts := []planar.Vec{{}}
	for i := range 8 {
		tilts = append(tilts, planar.Polar(20*float64(planar.Degree), 45*planar.Degree*planar.Angle(i)))
	}
	for _, r := range t.references {
		if p, ok := r.(Plate); ok {
			if e, ok := ellipseThrough(vecs(p.Rim)); ok {
				tilt := e.tilt()
				tilts = append(tilts, tilt, tilt.Neg())
			}
		}
	}
	return tilts
}
