package view

import (
	"steelyard/evaluation"
	"steelyard/internal/server/api"
	"steelyard/internal/sketch"
	"steelyard/mechanism"
	"steelyard/planar"
)

// forces returns the arrows at one place.
func forces(e *evaluation.Evaluation, p *sketch.Place, row int) []api.Force {
	m := e.Model.Machine()
	out := []api.Force{{Kind: api.ContactForce, Name: m.Contact.Name, At: place(p.At), Vector: newton(p.Tangent.Scale(e.Sweep.Lift[row]))}}
	for i := range p.Shares {
		if s := &p.Shares[i]; sketch.Weighs(s) {
			g := mechanism.Gravity * m.Plane.Slope()
			if isStack(m, s.Link) {
				g = mechanism.Gravity
			}
			out = append(out, api.Force{Kind: api.WeightForce, Name: s.Name, At: place(s.At), Vector: newton(planar.Vec{Y: -g * massOf(m, s)})})
		}
	}
	for i := range m.Ropes {
		out = append(out, ropeForces(e, p.State, row, i)...)
	}
	for j := range m.Joints {
		r := e.Sweep.Reaction(row, j, mechanism.Hold)
		at := p.State.Pose(m.Joints[j].B).Point(m.Joints[j].At)
		out = append(out, api.Force{Kind: api.ReactionForce, Name: m.Joints[j].Name, At: place(at), Vector: newton(r.Force)})
	}
	return out
}

// newton rounds a force for sending.
func newton(f planar.Vec) api.Place { return api.Place{newtons(f.X), newtons(f.Y)} }

// massOf returns the mass of a source that weighs.
func massOf(m *mechanism.Machine, s *mechanism.Share) float64 {
	if s.Kind == mechanism.OwnWeight {
		return m.Links[s.Link-1].Mass
	}
	for i := range m.Weights {
		if m.Weights[i].Name == s.Name {
			return m.Weights[i].Mass
		}
	}
	return 0
}

// ropeForces returns a rope's pull on what each of its ends is tied to.
func ropeForces(e *evaluation.Evaluation, st *mechanism.State, row, rope int) []api.Force {
	pieces := st.Spans(rope)
	first, last := pieces[0], pieces[len(pieces)-1]
	t := e.Sweep.Tension(row, rope, mechanism.Hold)
	name := e.Model.Machine().Ropes[rope].Name
	return []api.Force{
		{Kind: api.RopeForce, Name: name, At: place(first.From), Vector: newton(first.To.Sub(first.From).Unit().Scale(t))},
		{Kind: api.RopeForce, Name: name, At: place(last.To), Vector: newton(last.From.Sub(last.To).Unit().Scale(t))},
	}
}
