package view

import (
	"fmt"
	"math"
	"slices"

	"steelyard/internal/server/api"
	"steelyard/mechanism"
	"steelyard/planar"
	"steelyard/sheet"
)

// furthest is how far out a place may be dragged, m: package sheet's own bound.
const furthest = 100

// beyond is how far outside its travel a machine may be held while it is
// dragged, rad or m: rounding, on its way over the page and back.
const beyond = 1e-6

// handle is something in the sheet that a finger holds: two coordinates, and
// where it is seen for given ones.
type handle struct {
	name  string
	paths [2]string
	raw   planar.Vec // m, as written
	turn  planar.Angle
}

// dragPoint finds the coordinates with which a point is seen at d.To.
func (t *Text) dragPoint(settings []api.Choice, d *api.PointDrag) ([]api.ValueEdit, *Text, error) {
	find := func(o *Opened, b *sheet.Built) (handle, planar.Vec, error) {
		h := handle{name: fmt.Sprintf("point %q", d.Point), paths: [2]string{o.pointPath(d.Point, "x"), o.pointPath(d.Point, "y")}}
		at, ok := o.spots(b)[d.Point]
		if !ok {
			return h, at, &EditError{fmt.Sprintf("the sheet has no point %q", d.Point), "open the machine again"}
		}
		link := mechanism.Ground
		for _, name := range linkNames(b) {
			if slices.Contains(o.linkPoints(name), d.Point) {
				link = linkByName(&b.Machine, name)
			}
		}
		return seen(b, h, link, at, d.Driver)
	}
	return t.drag(settings, d.To, find)
}

// dragVertex finds the coordinates with which a traced point of a cam is seen
// at d.To.
func (t *Text) dragVertex(settings []api.Choice, d *api.CamDrag) ([]api.ValueEdit, *Text, error) {
	find := func(o *Opened, b *sheet.Built) (handle, planar.Vec, error) {
		path := o.vertexPath(d.Cam, fmt.Sprint(d.Vertex))
		h := handle{name: fmt.Sprintf("point %d of cam %q", d.Vertex, d.Cam), paths: [2]string{path("x"), path("y")}}
		vertices := o.vertices(b, d.Cam)
		axis, start, ok := o.camFrame(b, d.Cam)
		if !ok || d.Vertex < 1 || d.Vertex > len(vertices) {
			return h, planar.Vec{}, &EditError{fmt.Sprintf("the sheet has no point %d of a traced cam %q", d.Vertex, d.Cam), "open the machine again"}
		}
		h.turn = start
		at := planar.TurnThenShift(start, axis).Point(vertices[d.Vertex-1])
		return seen(b, h, carrier(&b.Machine, d.Cam), at, d.Driver)
	}
	return t.drag(settings, d.To, find)
}

// seen completes a handle whose place in the measured pose is at: where it is
// seen in the pose of that driver, or in the measured pose without one.
func seen(b *sheet.Built, h handle, link mechanism.LinkID, at planar.Vec, driver *float64) (handle, planar.Vec, error) {
	by := measurements(b)
	x, okX := by[h.paths[0]]
	y, okY := by[h.paths[1]]
	if !okX || !okY {
		return h, at, setElsewhere(h.name)
	}
	h.raw = planar.Vec{X: x.Value, Y: y.Value}
	if driver == nil || link == mechanism.Ground {
		return h, at, nil
	}
	if d := &b.Machine.Drive; !(*driver >= min(d.From, d.To)-beyond && *driver <= max(d.From, d.To)+beyond) {
		return h, at, &EditError{"the machine was to stand outside its travel", "drag it in a pose that it reaches"}
	}
	md, err := mechanism.Compile(b.Machine)
	if err != nil {
		return h, at, &EditError{err.Error(), "drag it in the measured pose"}
	}
	st := md.NewState()
	if err := st.MoveTo(*driver); err != nil {
		return h, at, &EditError{err.Error(), "drag it in the measured pose"}
	}
	h.turn += st.Turn(link)
	return h, st.Pose(link).Point(at), nil
}

// mostSteps bounds the search of [drag]. In the measured pose the first step is
// exact; elsewhere the whole machine moves when a point of it is changed, and
// three or four steps do.
const mostSteps = 8

// closeEnough is the distance in m at which a dragged place is where it should
// be: as finely as it is written.
const closeEnough = 1e-4

// drag finds the coordinates with which a handle is seen at to, by Broyden's
// method: the first guess takes the link as if it stayed where it is.
//
// Source: C. G. Broyden, A class of methods for solving nonlinear simultaneous
// equations, Math. Comp. 19 (1965) 577 (from memory).
func (t *Text) drag(settings []api.Choice, to api.Place, find func(*Opened, *sheet.Built) (handle, planar.Vec, error)) (best []api.ValueEdit, changed *Text, err error) {
	if !(math.Abs(to[0]) <= furthest && math.Abs(to[1]) <= furthest) {
		return nil, nil, &EditError{"a point is dragged more than 100 m from the origin", "let go of it nearer by"}
	}
	h, at, err := t.look(settings, find)
	if err != nil {
		return nil, nil, err
	}
	miss, bestMiss := vec(to).Sub(at), math.Inf(1)
	jacobian := planar.TurnThenShift(h.turn, planar.Vec{})
	inverse := [4]float64{jacobian.Cos, jacobian.Sin, -jacobian.Sin, jacobian.Cos} // of d seen / d raw, row by row
	for range mostSteps {
		step := apply(inverse, miss)
		values, next, err := h.moved(t, h.raw.Add(step))
		if err != nil {
			return nil, nil, err
		}
		if best == nil {
			best, changed = values, next // what a rigid machine would need
		}
		there, nowAt, err := next.look(settings, find)
		if err != nil {
			return best, changed, nil // it cannot be put together like that; the page shows why
		}
		gone, seen := there.raw.Sub(h.raw), nowAt.Sub(at)
		h, at, t = there, nowAt, next
		miss = vec(to).Sub(at)
		if miss.Norm() < bestMiss {
			best, changed, bestMiss = values, next, miss.Norm()
		}
		if bestMiss < closeEnough || gone.Norm() == 0 {
			break
		}
		inverse = corrected(inverse, gone, seen)
	}
	return best, changed, nil
}

// look opens the text and finds the handle in it.
func (t *Text) look(settings []api.Choice, find func(*Opened, *sheet.Built) (handle, planar.Vec, error)) (handle, planar.Vec, error) {
	o, err := t.opened()
	if err != nil {
		return handle{}, planar.Vec{}, err
	}
	b, err := o.Set(settings)
	if err != nil {
		return handle{}, planar.Vec{}, err
	}
	return find(o, b)
}

// moved returns the values to write for other coordinates, and the text with
// them written.
func (h handle) moved(t *Text, raw planar.Vec) ([]api.ValueEdit, *Text, error) {
	d, err := t.document()
	if err != nil {
		return nil, nil, err
	}
	var values []api.ValueEdit
	for k, x := range [2]float64{raw.X, raw.Y} {
		written, err := rewritten(d.Text(h.paths[k]), min(max(x, -furthest), furthest))
		if err != nil {
			return nil, nil, err
		}
		values = append(values, api.ValueEdit{Path: h.paths[k], Text: written})
	}
	next, err := t.Write(values)
	return values, next, err
}

func apply(m [4]float64, v planar.Vec) planar.Vec {
	return planar.Vec{X: m[0]*v.X + m[1]*v.Y, Y: m[2]*v.X + m[3]*v.Y}
}

// corrected is Broyden's update of the inverse H for a step s that was seen as
// y: H + (s - H y) sᵀH / (sᵀ H y).
func corrected(m [4]float64, s, y planar.Vec) [4]float64 {
	hy := apply(m, y)
	d := s.Dot(hy)
	if math.Abs(d) < 1e-6*s.Dot(s) {
		return m
	}
	left := s.Sub(hy).Scale(1 / d)
	right := planar.Vec{X: s.X*m[0] + s.Y*m[2], Y: s.X*m[1] + s.Y*m[3]}
	return [4]float64{m[0] + left.X*right.X, m[1] + left.X*right.Y, m[2] + left.Y*right.X, m[3] + left.Y*right.Y}
}

func linkByName(m *mechanism.Machine, name string) mechanism.LinkID {
	for i := range m.Links {
		if m.Links[i].Name == name {
			return mechanism.LinkID(i + 1)
		}
	}
	return mechanism.Ground
}

// carrier returns the link that a sheave or cam is on.
func carrier(m *mechanism.Machine, outline string) mechanism.LinkID {
	s, _ := stationAt(m, outline) // the zero link is the ground
	return s.Link
}

// stationAt returns where a rope runs over a sheave or cam; false if none does.
func stationAt(m *mechanism.Machine, outline string) (mechanism.Station, bool) {
	for _, l := range m.Lines() {
		for _, s := range l.Route {
			if s.Outline != nil && s.Name == outline {
				return s, true
			}
		}
	}
	return mechanism.Station{}, false
}
