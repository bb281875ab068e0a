package demo

import (
	"math"
	"slices"

	"steelyard/mechanism"
	"steelyard/planar"
)

// This file recognises ropes and cams by their routes and outlines.

// tackle returns how many parts of the first rope carry a load on guides, for a
// rope that ends at a handle: two for each moving sheave, one for an end tied to
// what moves. It returns 0 for anything else, or if the lift ratio does not
// bear the count out to within a fifth, which leaves room for a rope that runs
// at an angle to the handle's path.
func tackle(e *exhibit) int {
	m := &e.built.Machine
	if len(m.Ropes) == 0 || len(m.Weights) == 0 || !guided(e, m.Weights[0].Link) {
		return 0
	}
	route := m.Ropes[0].Route
	if last := route[len(route)-1]; last.Link != m.Contact.Link || last.Outline != nil {
		return 0
	}
	parts := 0
	for _, s := range route[1 : len(route)-1] {
		if s.Link != mechanism.Ground {
			parts += 2
		}
	}
	if route[0].Link != mechanism.Ground {
		parts++
	}
	if best := slices.Max(e.sweep.LiftRatio); math.Abs(best*float64(parts)-1) > 0.2 {
		return 0
	}
	return parts
}

// wrapChange returns the greatest change, over the travel, of how far a rope is
// bent round a sheave on the ground.
func wrapChange(e *exhibit) planar.Angle {
	m := &e.built.Machine
	st := e.model.NewState()
	most := planar.Angle(0)
	for r, rope := range m.Ropes {
		for k := 1; k+1 < len(rope.Route); k++ {
			if s := rope.Route[k]; s.Outline == nil || s.Link != mechanism.Ground {
				continue
			}
			lo, hi := math.Inf(1), math.Inf(-1)
			for _, q := range e.sweep.Driver {
				if st.MoveTo(q) != nil {
					return 0
				}
				spans := st.Spans(r)
				in, out := spans[k-1].To.Sub(spans[k-1].From), spans[k].To.Sub(spans[k].From)
				bend := math.Abs(math.Atan2(in.Cross(out), in.Dot(out)))
				lo, hi = min(lo, bend), max(hi, bend)
			}
			most = max(most, planar.Angle(hi-lo))
		}
	}
	return most
}

// eitherSide reports whether one rope has sheaves on its left and on its right.
func eitherSide(e *exhibit) bool {
	for _, rope := range e.built.Machine.Ropes {
		side := func(s planar.Side) bool {
			return slices.ContainsFunc(rope.Route[1:len(rope.Route)-1], func(x mechanism.Station) bool { return x.Outline != nil && x.Side == s })
		}
		if side(planar.Left) && side(planar.Right) {
			return true
		}
	}
	return false
}

// ropeHandle reports whether a rope ends at the contact, on a link without mass
// of its own that a stated path guides.
func ropeHandle(e *exhibit, kind mechanism.JointKind) bool {
	m := &e.built.Machine
	l := m.Contact.Link
	path := slices.ContainsFunc(m.Joints, func(j mechanism.Joint) bool { return j.Kind == kind && j.A == mechanism.Ground && j.B == l })
	end := slices.ContainsFunc(m.Ropes, func(r mechanism.Rope) bool { return r.Route[len(r.Route)-1].Link == l })
	return path && end && m.Links[l-1].Mass == 0
}

// cam wants an outline, on the contact's own link, at the end of a rope.
func cam(is func(planar.Outline) bool) func(*exhibit) bool {
	return func(e *exhibit) bool {
		m := &e.built.Machine
		return slices.ContainsFunc(m.Ropes, func(r mechanism.Rope) bool {
			last := r.Route[len(r.Route)-1]
			return last.Outline != nil && last.Link == m.Contact.Link && is(last.Outline)
		})
	}
}

func isEllipse(o planar.Outline) bool { _, ok := o.(*planar.Ellipse); return ok }

// isSpiral reports whether the touching points of an outline, over a quarter turn
// or more, move away from the axis in proportion to their direction.
func isSpiral(o planar.Outline) bool {
	const step = 5 * planar.Degree
	run, last := planar.Angle(0), 0.0
	for phi := planar.Angle(0); phi < 4*math.Pi; phi += step {
		a, b := planar.Touch(o, phi), planar.Touch(o, phi+step)
		turn := float64(b.Angle().Near(a.Angle()) - a.Angle())
		growth := (b.Norm() - a.Norm()) / turn
		if math.Abs(turn) < 1e-3 || math.Abs(growth) < 1e-3 || math.Abs(growth-last) > 1e-6 {
			run, last = 0, growth
			continue
		}
		if run += planar.Angle(math.Abs(turn)); run > math.Pi/2 {
			return true
		}
	}
	return false
}

func hollow(o planar.Outline) bool {
	traced, ok := o.(*planar.Traced)
	return ok && len(traced.Hollows()) > 0
}

func loss(is func(mechanism.RopeLoss) bool) func(*exhibit) bool {
	return func(e *exhibit) bool {
		return slices.ContainsFunc(e.built.Machine.Ropes, func(r mechanism.Rope) bool {
			return slices.ContainsFunc(r.Route, func(s mechanism.Station) bool { return is(s.Loss) })
		})
	}
}
