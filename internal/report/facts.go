package report

import (
	"math"

	"steelyard/evaluation"
	"steelyard/mechanism"
	"steelyard/planar"
	"steelyard/profile"
)

// facts is the machine at one place of its travel, ready to be drawn. The
// state stands there.
type facts struct {
	Name    string // "start", "hardest", "middle", "end"
	K       int    // position of the curve
	Row     int    // of the sweep
	Travel  float64
	Force   float64    // N, lifting
	At      planar.Vec // m, the contact
	Tangent planar.Vec // unit, towards the end of the travel

	State  *mechanism.State
	Shares []mechanism.Share // what each source asks of the contact
	Main   int               // the greatest of them; -1 for none
}

// factsAt brings the machine to position k of the curve, which has a force.
func factsAt(e *evaluation.Evaluation, name string, k int) (*facts, error) {
	row := e.Rows[k]
	f := &facts{Name: name, K: k, Row: row, Travel: e.Curve.Travel[k], Force: e.Curve.Lift[k],
		At: e.Sweep.Contact[row], Tangent: e.Sweep.Tangent[row], State: e.Model.NewState(), Main: -1}
	if err := f.State.MoveTo(e.Sweep.Driver[row]); err != nil {
		return nil, err
	}
	f.Shares = f.State.Shares()
	for i, s := range f.Shares {
		if s.Force != 0 && (f.Main < 0 || math.Abs(s.Force) > math.Abs(f.Shares[f.Main].Force)) {
			f.Main = i
		}
	}
	return f, nil
}

// atTheEnds is how close to an end of the travel, as a share of it, the peak is
// not worth a picture of its own: the middle is shown instead.
const atTheEnds = 0.1

// threePlaces returns the machine at the start, at its hardest (or in the
// middle, if it is hardest at an end) and at the end of what has a force.
func threePlaces(e *evaluation.Evaluation) ([3]*facts, error) {
	c := &e.Curve
	first, last := 0, len(c.Travel)-1
	for !c.Has(first) {
		first++
	}
	for !c.Has(last) {
		last--
	}
	names := [3]string{"Start", "Hardest", "End"}
	r := &e.Readings[profile.Lifting]
	place := r.Peak.Share
	switch {
	case place <= atTheEnds:
		names[0] = "Start, hardest"
	case place >= 1-atTheEnds:
		names[2] = "End, hardest"
	}
	if place <= atTheEnds || place >= 1-atTheEnds {
		names[1], place = "Middle", 0.5
	}
	var out [3]*facts
	for i, k := range [3]int{first, nearestWithForce(c, place*c.Length()), last} {
		var err error
		if out[i], err = factsAt(e, names[i], k); err != nil {
			return out, err
		}
	}
	return out, nil
}

// nearestWithForce returns the position nearest to a place on the travel that
// has a force.
func nearestWithForce(c *profile.Curve, travel float64) int {
	best := -1
	for k, s := range c.Travel {
		if c.Has(k) && (best < 0 || math.Abs(s-travel) < math.Abs(c.Travel[best]-travel)) {
			best = k
		}
	}
	return best
}

// attached returns the measured places on a link where something acts on it or
// joins it, each once.
func attached(m *mechanism.Machine, l mechanism.LinkID) []planar.Vec {
	var out []planar.Vec
	add := func(on mechanism.LinkID, at planar.Vec) {
		if on != l {
			return
		}
		for _, p := range out {
			if p.Sub(at).Norm() < 1e-6 {
				return
			}
		}
		out = append(out, at)
	}
	for _, j := range m.Joints {
		if j.Kind == mechanism.Revolute || j.A != mechanism.Ground || l != mechanism.Ground {
			add(j.A, j.At)
		}
		add(j.B, j.At)
	}
	routes := func(r mechanism.Route) {
		for _, s := range r {
			add(s.Link, s.At)
		}
	}
	for _, r := range m.Ropes {
		routes(r.Route)
	}
	for _, el := range m.Elements {
		routes(el.Route)
	}
	for _, w := range m.Weights {
		add(w.Link, w.At)
	}
	for _, c := range m.Chains {
		add(c.Link, c.At)
	}
	add(m.Contact.Link, m.Contact.At)
	return out
}

// tree joins places by their shortest network of straight pieces (Prim's
// algorithm): the simplest body that holds them all.
func tree(ps []planar.Vec) [][2]planar.Vec {
	var out [][2]planar.Vec
	if len(ps) == 0 {
		return nil
	}
	in := map[int]bool{0: true}
	for len(in) < len(ps) {
		a, b, least := 0, 0, math.Inf(1)
		for i := range ps {
			for j := range ps {
				if d := ps[i].Sub(ps[j]).Norm(); in[i] && !in[j] && d < least {
					a, b, least = i, j, d
				}
			}
		}
		in[b] = true
		out = append(out, [2]planar.Vec{ps[a], ps[b]})
	}
	return out
}
