package view

import (
	"math"

	"steelyard/evaluation"
	"steelyard/internal/server/api"
	"steelyard/internal/sketch"
	"steelyard/mechanism"
	"steelyard/planar"
)

// picture adds the drawing and the frames that the look asks for.
func picture(p *api.Preview, e *evaluation.Evaluation, look *api.Look) error {
	var at []int
	switch look.Frames {
	case api.OneFrame:
		at = []int{nearestPosition(e, look.Share)}
	case api.AllFrames:
		for k := range e.Rows {
			at = append(at, k)
		}
	default:
		return nil
	}
	d := drawing(e)
	p.Drawing = &d
	st := e.Model.NewState()
	p.Frames = make([]api.Frame, 0, len(at))
	for _, k := range at {
		f, err := frame(e, st, k, Units(look.Imperial))
		if err != nil {
			return e.Sheet.Locate(err)
		}
		p.Frames = append(p.Frames, f)
	}
	return nil
}

// nearestPosition returns the position of the curve nearest to a share of its
// travel.
func nearestPosition(e *evaluation.Evaluation, share float64) int {
	travel := share * e.Curve.Length()
	best := 0
	for k, s := range e.Curve.Travel {
		if math.Abs(s-travel) < math.Abs(e.Curve.Travel[best]-travel) {
			best = k
		}
	}
	return best
}

// drawing returns what of the machine keeps its shape.
func drawing(e *evaluation.Evaluation) api.Drawing {
	m := e.Model.Machine()
	d := api.Drawing{Links: []api.LinkShape{}, Pins: pins(m), Guides: guides(e), Wheels: wheels(e), Weights: weights(m), Lines: lines(m),
		Contact: place(m.Contact.At), On: int(m.Contact.Link), Lean: share(float64(m.Plane.Tilt))}
	for l := range linkCount(m) {
		d.Links = append(d.Links, linkShape(m, l))
	}
	lo, hi := bounds(e, &d)
	d.Low, d.High = place(lo), place(hi)
	return d
}

func linkShape(m *mechanism.Machine, l mechanism.LinkID) api.LinkShape {
	s := api.LinkShape{Name: linkName(m, l), Places: places(sketch.Places(m, l)), Pieces: [][2]api.Place{}, Stack: isStack(m, l)}
	for _, piece := range sketch.Skeleton(m, l) {
		s.Pieces = append(s.Pieces, [2]api.Place{place(piece[0]), place(piece[1])})
	}
	return s
}

func pins(m *mechanism.Machine) []api.Pin {
	out := []api.Pin{}
	for i := range m.Joints {
		if j := &m.Joints[i]; j.Kind == mechanism.Revolute {
			out = append(out, api.Pin{Name: j.Name, At: place(j.At), On: int(j.B), Ground: j.A == mechanism.Ground || j.B == mechanism.Ground})
		}
	}
	return out
}

// guideRoom is how far a guide is drawn past the ends of the slider's way, m.
const guideRoom = 0.06

// guides draws each slider's guide over its whole way.
func guides(e *evaluation.Evaluation) []api.Guide {
	m := e.Model.Machine()
	out := []api.Guide{}
	for i := range m.Joints {
		j := &m.Joints[i]
		if j.Kind != mechanism.Prismatic {
			continue
		}
		along := planar.Polar(1, j.Along)
		lo, hi := 0.0, 0.0
		for _, row := range e.Rows {
			// The slider's point, seen from the link that carries the guide.
			p := e.Sweep.Pose(row, j.A).Back(e.Sweep.Pose(row, j.B).Point(j.At))
			d := p.Sub(j.At).Dot(along)
			lo, hi = min(lo, d), max(hi, d)
		}
		out = append(out, api.Guide{Name: j.Name, On: int(j.A),
			From: place(j.At.Add(along.Scale(lo - guideRoom))), To: place(j.At.Add(along.Scale(hi + guideRoom)))})
	}
	return out
}

// wheels lists sheaves and cams.
func wheels(e *evaluation.Evaluation) []api.Wheel {
	m, st := e.Model.Machine(), e.Model.NewState()
	out := []api.Wheel{}
	for _, s := range sketch.Wheels(m) {
		axis, outline := st.Station(s.Line, s.Index)
		w := api.Wheel{Name: s.Name, On: int(s.Link), Axis: place(axis), Outline: places(outline), Cam: true}
		if r, ok := sketch.Sheave(s.Outline); ok {
			w.Cam, w.Radius = false, metres(r)
		}
		out = append(out, w)
	}
	return out
}

func weights(m *mechanism.Machine) []api.Weight {
	out := []api.Weight{}
	for i := range m.Weights {
		w := &m.Weights[i]
		radius, stated := sketch.DiscRadius(w)
		out = append(out, api.Weight{Name: w.Name, On: int(w.Link), At: place(w.At), Mass: round(w.Mass, 3), Load: w.Load, Stack: isStack(m, w.Link),
			Radius: metres(radius), Stated: stated})
	}
	return out
}

func lines(m *mechanism.Machine) []api.Line {
	out := []api.Line{}
	for _, line := range m.Lines() {
		kind := api.RopeLine
		if line.Element != nil {
			kind = lineKind(line.Element.Law)
		}
		out = append(out, api.Line{Name: line.Name, Kind: kind})
	}
	return out
}

func lineKind(law mechanism.Law) api.LineKind {
	switch law.(type) {
	case mechanism.Spring:
		return api.SpringLine
	case mechanism.GasSpring:
		return api.GasLine
	case mechanism.Damper:
		return api.DamperLine
	case mechanism.Steady:
		return api.SteadyLine
	}
	return api.BandLine
}

// bounds returns the corners of all that is drawn along the travel.
func bounds(e *evaluation.Evaluation, d *api.Drawing) (lo, hi planar.Vec) {
	lo, hi = e.Sweep.Contact[e.Rows[0]], e.Sweep.Contact[e.Rows[0]]
	add := func(p planar.Vec, r float64) {
		lo = planar.Vec{X: min(lo.X, p.X-r), Y: min(lo.Y, p.Y-r)}
		hi = planar.Vec{X: max(hi.X, p.X+r), Y: max(hi.Y, p.Y+r)}
	}
	for _, row := range e.Rows {
		at := func(l int, p api.Place) planar.Vec { return e.Sweep.Pose(row, mechanism.LinkID(l)).Point(vec(p)) }
		for l := range d.Links {
			for _, p := range d.Links[l].Places {
				add(at(l, p), 0)
			}
		}
		for _, w := range d.Wheels {
			for _, p := range w.Outline {
				add(at(w.On, p), 0)
			}
		}
		for _, w := range d.Weights {
			add(at(w.On, w.At), w.Radius)
		}
		add(e.Sweep.Contact[row], 0)
	}
	return lo, hi
}
