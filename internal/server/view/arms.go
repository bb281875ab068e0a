package view

import (
	"fmt"

	"steelyard/evaluation"
	"steelyard/internal/server/api"
	"steelyard/internal/sketch"
	"steelyard/mechanism"
)

// farAxis bounds where an axis still explains something, m from the contact: a
// coupler's instant centre wanders off to infinity.
const farAxis = 3

// armKinds are the page's names of the kinds of arm.
var armKinds = map[sketch.ArmKind]api.ArmKind{sketch.LoadArm: api.LoadArm, sketch.ContactArm: api.ContactArm, sketch.RopeArm: api.RopeArm}

// arms returns the moment arms at one place, about what turns there.
func arms(p *sketch.Place) []api.Arm {
	out := []api.Arm{}
	for _, a := range p.Arms(p.State.Center) {
		if a.Kind != sketch.RopeArm && a.Axis.Sub(p.At).Norm() >= farAxis {
			continue
		}
		out = append(out, api.Arm{Kind: armKinds[a.Kind], Name: a.Of, Axis: place(a.Axis), Foot: place(a.Foot), Acts: place(a.Acts), Length: metres(a.Length())})
	}
	return out
}

// because says in one sentence why the force is what it is at a place.
func because(f *api.Frame, p *sketch.Place, force string, u evaluation.Formatter) string {
	if p.Main < 0 {
		return "Nothing loads the machine here."
	}
	main := &p.Shares[p.Main]
	says := fmt.Sprintf("It takes %s here: ", force)
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
