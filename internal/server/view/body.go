package view

import (
	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/evaluation"
	"steelyard/internal/server/api"
	"steelyard/internal/sketch"
)

// bodyAt returns the person at a row, seen from the right side; nil if there is
// none.
func bodyAt(e *evaluation.Evaluation, row int) *api.Body {
	if e.Person == nil || !e.Person.Rest.Faults[row].Placed() {
		return nil
	}
	p := sketch.PersonAt(e, row)
	out := api.Body{Segments: segments(p.Trunk(), false)}
	joint := func(name string, at r3.Vec) {
		out.Joints = append(out.Joints, api.BodyJoint{Name: name, At: place(p.On(at))})
	}
	q, limb := &p.Placement.Limb, segments(p.Limb(), true)
	if !p.LegWorks() {
		out.Segments = append(out.Segments, segments(p.Leg(p.IdleLeg()), false)...)
		out.Segments = append(out.Segments, limb...)
		joint("shoulder", q.Root)
		joint("elbow", q.Mid)
		return &out
	}
	body, toe := e.Person.Body, p.Placement.Toe
	foot := p.Foot(body.SolePoint(*q, toe, 0), body.SolePoint(*q, toe, body.Links.Foot))
	out.Segments = append(append(out.Segments, limb...), segments([]sketch.Segment{foot}, true)...)
	joint("hip", q.Root)
	joint("knee", q.Mid)
	joint("ankle", q.End)
	return &out
}

func segments(all []sketch.Segment, works bool) []api.Segment {
	out := make([]api.Segment, len(all))
	for i, s := range all {
		out[i] = api.Segment{Name: s.Name, From: place(s.From), To: place(s.To), Near: metres(s.Near), Far: metres(s.Far), Works: works}
	}
	return out
}
