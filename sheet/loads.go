package sheet

import (
	"fmt"
	"slices"

	"steelyard/mechanism"
)

// loadReaders says how each kind of load is read.
var loadReaders = map[string]func(r *reader, f *fields){
	"plates":           (*reader).readWeight,
	"counterweight":    (*reader).readWeight,
	"free weight":      (*reader).readWeight,
	"weight stack":     (*reader).readStack,
	"chain":            (*reader).readChain,
	"spring":           (*reader).readSpring,
	"extension spring": (*reader).readSpring,
	"torsion spring":   (*reader).readTorsion,
	"gas spring":       (*reader).readGas,
	"band":             (*reader).readBand,
	"steady force":     (*reader).readSteady,
	"steady moment":    (*reader).readSteadyMoment,
	"damper":           (*reader).readDamper,
	"flywheel":         (*reader).readWheel,
}

// readStacks adds the links that weight stacks are, before ropes are tied to
// them.
func (r *reader) readStacks(n *node) {
	r.eachLoad(n, func(kind string, f *fields) {
		if kind == "weight stack" {
			r.addStackLink(f)
		}
	})
	r.stacked = true
}

// readLoads reads `loads:`, each with its kind.
func (r *reader) readLoads(n *node) {
	r.eachLoad(n, func(kind string, f *fields) {
		loadReaders[kind](r, f)
		f.take("notes")
		f.close()
	})
}

func (r *reader) eachLoad(n *node, each func(kind string, f *fields)) {
	if n == nil || (!r.stacked && n.kind != mapping) {
		return
	}
	quiet := len(r.problems)
	r.named(n, "loads", func(name string, e entry) {
		f := r.fields(e.value, "load", name)
		kind := ""
		if f.must("kind", "write kind: plates, or another of "+orList(keys(loadReaders))) != nil {
			kind = f.choice("kind", keys(loadReaders)...)
		}
		if kind != "" {
			f.kind = kind
			each(kind, f)
		}
	})
	if !r.stacked {
		r.problems = r.problems[:quiet] // all of it is found again by readLoads
	}
}

// readWeight reads plates, counterweights and free weights: a mass at a point.
func (r *reader) readWeight(f *fields) {
	w := weight{name: f.name, load: f.kind != "counterweight", at: f.node}
	w.point = f.mustPoint("at", "name the point it hangs at, such as at: horn")
	w.link, _ = f.carrier(w.point, f.node)
	w.mass = f.mustNumber("mass", mass, "write what it weighs, such as mass: 40 kg")
	w.diameter = f.number("diameter", size)
	r.plan.weights = append(r.plan.weights, w)
}

// addStackLink makes the link on guides that a weight stack is.
func (r *reader) addStackLink(f *fields) {
	l := link{name: f.name, mass: none, inertia: none, center: nowhere, upright: true, at: f.node}
	if at := f.point("at"); at != nowhere {
		l.points, l.center = []pointID{at}, at
	}
	id := r.addLink(l)
	r.stackLinks[f.node] = id
}

// readStack reads a weight stack: it hangs from a point and slides on guides.
func (r *reader) readStack(f *fields) {
	id := r.stackLinks[f.node]
	at := f.mustPoint("at", "name the point where its rope is tied")
	j := joint{name: f.name, kind: mechanism.Prismatic, a: mechanism.Ground, b: id, point: at, along: noDirection, at: f.node}
	j.along.fixed = quarterTurn
	if f.has("along") {
		j.along, j.a = f.guide()
	} else if on := f.take("on"); on != nil {
		j.a, _ = r.link(on, f.of("on"))
	}
	j.grip = grip{f.number("guide friction", friction), none, f.number("guide length", size), f.number("guide drag", pull)}
	w := weight{name: f.name, link: id, point: at, load: true, diameter: none, at: f.node}
	w.mass = f.mustNumber("mass", mass, "write what is lifted, top plate included, such as mass: 40 kg")
	r.plan.joints = append(r.plan.joints, j)
	r.plan.weights = append(r.plan.weights, w)
}

func (r *reader) readChain(f *fields) {
	c := chain{name: f.name, at: f.node}
	c.point = f.mustPoint("at", "name the point it hangs from")
	c.link, _ = f.carrier(c.point, f.node)
	c.floor = f.number("floor", place)
	c.length = f.mustNumber("length", length, "measure it from the point it hangs from to its end")
	c.density = f.mustNumber("mass per metre", density, "weigh it and divide by its length, such as 5 kg/m")
	r.plan.chains = append(r.plan.chains, c)
}

// readWheel reads a flywheel that turns with a pin.
func (r *reader) readWheel(f *fields) {
	w := wheel{name: f.name, at: f.node}
	w.joint = r.about(f)
	f.onlyOne("inertia", "mass")
	w.inertia, w.mass, w.diameter = f.number("inertia", inertia), f.number("mass", mass), f.number("diameter", size)
	if w.inertia == none && (w.mass == none || w.diameter == none) {
		r.fault(f.node, fmt.Sprintf("%s has no inertia", f), "it is needed", "write inertia: 0.2 kg·m², or mass: and diameter: of a solid disc")
	}
	w.gear = f.number("gear", gearing)
	r.plan.wheels = append(r.plan.wheels, w)
}

// about reads the pin that something turns with. With three links on it,
// `between:` names two of them.
func (r *reader) about(f *fields) jointID {
	p := f.mustPoint("about", "name the pin it turns about")
	between := f.take("between")
	if p == nowhere {
		return noJoint
	}
	var ids []linkID
	r.listed(between, f.of("between"), func(n *node) {
		if id, ok := r.link(n, f.of("between")); ok {
			ids = append(ids, id)
		}
	})
	return r.pinAt(p, ids, f)
}

func (r *reader) pinAt(p pointID, ids []linkID, f *fields) jointID {
	var found []jointID
	for i, j := range r.plan.joints {
		wanted := len(ids) == 0 || (len(ids) == 2 && slices.Contains(ids, j.a) && slices.Contains(ids, j.b))
		if j.kind == mechanism.Revolute && j.point == p && wanted {
			found = append(found, jointID(i))
		}
	}
	name := r.plan.pointName(p)
	switch {
	case len(found) == 1:
		return found[0]
	case len(found) > 1:
		r.fault(f.node, fmt.Sprintf("%s turns about %q", f, name), "more than two links meet at that pin", "say between which two with between: [link, link], the first of them "+orList(r.linkNames(r.members[p][:1])))
	case len(ids) > 0:
		r.fault(f.node, fmt.Sprintf("%s turns about %q between %s", f, name, andList(r.linkNames(ids))), "those two are not pinned to one another there", "name two links of that pin, one of them "+orList(r.linkNames(firstOf(r.members[p]))))
	default:
		r.fault(f.node, fmt.Sprintf("%s turns about %q", f, name), "no two links share that point", "name a pin, "+orList(sortedNames(r.pinNames())))
	}
	return noJoint
}

func firstOf(ids []linkID) []linkID { return ids[:min(1, len(ids))] }
