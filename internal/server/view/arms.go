package view

import (
	"fmt"
	"math"

	"steelyard/evaluation"
	"steelyard/internal/server/api"
	"steelyard/mechanism"
	"steelyard/planar"
)

// farAxis bounds where an axis still explains something, m from the contact: a
// coupler's instant centre wanders off to infinity.
const farAxis = 3

// arms returns the moment arms at one place: of the main load, of the contact
// force, and of each rope that winds on an outline which turns.
func arms(m *mechanism.Machine, st *mechanism.State, contact, tangent planar.Vec, sources []mechanism.Share) []api.Arm {
	out := []api.Arm{}
	if i := mainSource(sources); i >= 0 {
		main := &sources[i]
		axis, turns := st.Center(main.Link)
		if turns && weighs(main) && axis.Sub(contact).Norm() < farAxis {
			out = append(out, arm(api.LoadArm, main.Name, axis, planar.Vec{X: main.At.X, Y: axis.Y}, main.At))
		}
	}
	if axis, turns := st.Center(m.Contact.Link); turns && axis.Sub(contact).Norm() < farAxis {
		out = append(out, arm(api.ContactArm, m.Contact.Name, axis, perpendicular(axis, contact, tangent), contact))
	}
	return append(out, ropeArms(m, st)...)
}

func weighs(s *mechanism.Share) bool {
	return s.Kind == mechanism.LoadWeight || s.Kind == mechanism.OwnWeight
}

// mainSource returns the source that asks most; -1 if none asks anything.
func mainSource(sources []mechanism.Share) int {
	best := -1
	for i, s := range sources {
		if s.Force != 0 && (best < 0 || math.Abs(s.Force) > math.Abs(sources[best].Force)) {
			best = i
		}
	}
	return best
}

func arm(kind api.ArmKind, name string, axis, foot, acts planar.Vec) api.Arm {
	return api.Arm{Kind: kind, Name: name, Axis: place(axis), Foot: place(foot), Acts: place(acts), Length: metres(foot.Sub(axis).Norm())}
}

// perpendicular returns the foot of the perpendicular from axis on the line
// through at along the unit vector u.
func perpendicular(axis, at, u planar.Vec) planar.Vec {
	return at.Add(u.Scale(axis.Sub(at).Dot(u)))
}

// ropeArms returns the radius at which a rope's end pulls on each cam, drum or
// sheave that turns with its link.
func ropeArms(m *mechanism.Machine, st *mechanism.State) []api.Arm {
	var out []api.Arm
	for i := range m.Ropes {
		route := m.Ropes[i].Route
		pieces := st.Spans(i)
		for _, end := range []int{0, len(route) - 1} {
			s := &route[end]
			if _, turns := st.Center(s.Link); s.Outline == nil || !turns {
				continue
			}
			piece := pieces[min(end, len(pieces)-1)]
			touch := piece.From
			if end > 0 {
				touch = piece.To
			}
			axis, _ := st.Station(i, end)
			out = append(out, arm(api.RopeArm, s.Name, axis, perpendicular(axis, piece.From, piece.To.Sub(piece.From).Unit()), touch))
		}
	}
	return out
}

// forces returns the arrows at one place.
func forces(e *evaluation.Evaluation, st *mechanism.State, row int, sources []mechanism.Share) []api.Force {
	m := e.Model.Machine()
	out := []api.Force{{Kind: api.ContactForce, Name: m.Contact.Name, At: place(e.Sweep.Contact[row]), Vector: newton(e.Sweep.Tangent[row].Scale(e.Sweep.Lift[row]))}}
	for i := range sources {
		if s := &sources[i]; weighs(s) {
			g := mechanism.Gravity * m.Plane.Slope()
			if isStack(m, s.Link) {
				g = mechanism.Gravity
			}
			out = append(out, api.Force{Kind: api.WeightForce, Name: s.Name, At: place(s.At), Vector: newton(planar.Vec{Y: -g * massOf(m, s)})})
		}
	}
	for i := range m.Ropes {
		out = append(out, ropeForces(e, st, row, i)...)
	}
	for j := range m.Joints {
		r := e.Sweep.Reaction(row, j, mechanism.Hold)
		at := st.Pose(m.Joints[j].B).Point(m.Joints[j].At)
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

// because says in one sentence why the force is what it is at a place.
func because(f *api.Frame, sources []mechanism.Share, force float64, u evaluation.Formatter) string {
	i := mainSource(sources)
	if i < 0 {
		return "Nothing loads the machine here."
	}
	main := &sources[i]
	says := fmt.Sprintf("It takes %s here: ", u.Force(force))
	load, contact := armOf(f, api.LoadArm), armOf(f, api.ContactArm)
	if load != nil && contact != nil && load.Axis == contact.Axis {
		side := "in front of"
		if load.Foot[0] < load.Axis[0] {
			side = "behind"
		}
		return says + fmt.Sprintf("the weight of the %s acts %s %s the axis, the contact force %s from it.", main.Name, u.Short(load.Length), side, u.Short(contact.Length))
	}
	if rope := armOf(f, api.RopeArm); rope != nil && contact != nil && rope.Axis == contact.Axis {
		return says + fmt.Sprintf("the rope leaves the %s %s from its axis, the contact force acts %s from it.", rope.Name, u.Short(rope.Length), u.Short(contact.Length))
	}
	verb := "lifts"
	if main.Kind == mechanism.Elastic {
		verb = "stretches"
	}
	return says + fmt.Sprintf("each %s of the contact %s the %s by %s.", u.Short(0.1), verb, main.Name, u.Short(0.1*main.Rise))
}

func armOf(f *api.Frame, kind api.ArmKind) *api.Arm {
	for i := range f.Arms {
		if f.Arms[i].Kind == kind {
			return &f.Arms[i]
		}
	}
	return nil
}
