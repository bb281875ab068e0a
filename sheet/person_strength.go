package sheet

import (
	"fmt"

	"steelyard/human"
	"steelyard/planar"
)

// readStrength reads `strength:`, a list of what this person was measured to
// produce: a joint moment, a force by a hanging scale, or a known lift.
func (r *personReader) readStrength(n *node) {
	if n == nil {
		return
	}
	if n.kind != sequence {
		r.fault(n, fmt.Sprintf("strength is %s", seen(n)), "it is a list", "start each measurement with a dash: - {action: knee extension, angle: 60 deg, moment: 150 Nm}")
		return
	}
	for i, item := range n.items {
		f := r.fields(item, "strength", fmt.Sprint(i+1))
		f.onlyOne("action", "lift")
		if f.has("lift") {
			r.readLift(f)
		} else {
			r.readMoment(f)
		}
		f.close()
	}
}

// readMoment reads a moment at an angle, or the force of a hanging scale that
// pulls square to the limb at a distance from the joint. A ± is taken as two
// standard deviations. The weight of the limb itself is not taken off.
func (r *personReader) readMoment(f *fields) {
	name := f.words("action")
	if name == "" {
		r.fault(f.node, fmt.Sprintf("%s says neither action nor lift", f), "it takes one of them", "write action: knee extension, or lift: and the machine's name")
		return
	}
	a, ok := r.action(f.node.at("action"), name, f.String())
	s := human.Strength{Action: a, How: f.words("how")}
	f.onlyOne("moment", "force")
	angle, _, has := r.amount(f, "angle", jointAngle)
	if !has && !f.has("angle") {
		r.fault(f.node, fmt.Sprintf("%s has no angle", f), "strength depends on the joint's angle", "write angle: 60 deg")
	}
	s.Angle = planar.Angle(angle)
	switch {
	case f.has("force"):
		force, spread, _ := r.amount(f, "force", handForce)
		at, _, ok := r.amount(f, "at", leverArm)
		if !ok && !f.has("at") {
			r.fault(f.node, fmt.Sprintf("%s has a force and no distance", f), "a force makes a moment by its distance from the joint", "write at: 300 mm, measured along the limb from the joint to the strap")
		}
		s.Moment, s.Spread = force*at, spread/2*at
	case f.has("moment"):
		moment, spread, _ := r.amount(f, "moment", asked)
		s.Moment, s.Spread = moment, spread/2
	default:
		r.fault(f.node, fmt.Sprintf("%s says nothing that was measured", f), "it takes a moment, or a force and its distance", "write moment: 150 Nm, or force: 400 N and at: 350 mm")
	}
	if ok {
		r.places["strength: "+a.String()] = f.node
		r.out.Person.Strength = append(r.out.Person.Strength, s)
	}
}

// readLift reads a known lift on a known machine.
func (r *personReader) readLift(f *fields) {
	l := Lift{Machine: f.words("lift"), How: f.words("how"), Settings: map[string]string{}, place: f.node, Repetitions: 1}
	if f.must("load", "write load: 40 kg") != nil {
		l.Load, _, _ = r.amount(f, "load", lifted)
	}
	if n, _, ok := r.amount(f, "repetitions", reps); ok {
		l.Repetitions = int(n)
		if float64(l.Repetitions) != n {
			r.fault(f.node.at("repetitions"), fmt.Sprintf("repetitions of %s are %g", f, n), "it is a whole number", "count the full ones")
		}
	}
	r.named(f.take("settings"), "settings of "+f.String(), func(name string, e entry) {
		l.Settings[name] = r.words(e.value, "setting "+name)
	})
	r.out.Lifts = append(r.out.Lifts, l)
}
