package sheet

import (
	"fmt"

	"steelyard/mechanism"
)

// ContactKind tells how the body meets the machine, which decides in what
// direction it can push.
type ContactKind string

// The kinds of contact.
const (
	Grip       ContactKind = "grip"        // force free in direction
	Pad        ContactKind = "pad"         // on a segment; rolls and slides, normal force only
	FootPlate  ContactKind = "foot plate"  // centre of pressure under the foot
	Strap      ContactKind = "strap"       // pulls only
	RopeHandle ContactKind = "rope handle" // along the rope
	Held       ContactKind = "held"        // a weight in the hand or strapped to a limb
)

var contactKinds = []string{string(Grip), string(Pad), string(FootPlate), string(Strap), string(RopeHandle), string(Held)}

// handle is the link that a rope handle on a path is.
const handle = "handle"

// readHandle adds the link and the joint of a rope handle that moves on a
// stated path, before ropes are tied to it.
func (r *reader) readHandle(n *node) {
	if n == nil || n.kind != mapping || n.at("at") == nil || (n.at("straight to") == nil && n.at("round") == nil && n.at("through") == nil) {
		return
	}
	f := &fields{r: r, node: n, kind: "contact"}
	f.onlyOne("straight to", "round", "through")
	at := f.point("at")
	if at == nowhere {
		return
	}
	l := link{name: handle, points: []pointID{at}, mass: none, inertia: none, center: at, path: true, at: n}
	j := joint{name: handle, a: mechanism.Ground, point: at, along: noDirection, grip: noGrip, at: n}
	j.b = r.addLink(l)
	switch {
	case n.at("straight to") != nil:
		j.kind = mechanism.Prismatic
		j.along.from, j.along.to = at, f.point("straight to")
		if j.along.to == nowhere || j.along.to == at {
			r.fault(n.at("straight to"), "the handle's path runs to where it starts", "a line needs two points", "name another point")
			return
		}
	case n.at("round") != nil:
		j.kind, j.point = mechanism.Revolute, f.point("round")
	default:
		var ok bool
		if j.point, ok = r.through(n.at("through"), at); !ok {
			return
		}
		j.kind = mechanism.Revolute
	}
	if j.point != nowhere {
		r.plan.joints = append(r.plan.joints, j)
	}
}

// through returns the centre of the arc through the handle and two more points.
func (r *reader) through(n *node, at pointID) (pointID, bool) {
	if n.kind != sequence || len(n.items) != 2 {
		r.fault(n, fmt.Sprintf(`"through" of contact is %s`, seen(n)), "an arc goes through the handle and two more points", "write through: [mid, end]")
		return nowhere, false
	}
	a, b := r.point(r.value(n.items[0]), `"through" of contact`), r.point(r.value(n.items[1]), `"through" of contact`)
	if a == nowhere || b == nowhere {
		return nowhere, false
	}
	return r.addPoint(point{name: "centre of the handle's path", x: none, y: none, round: true, circle: [3]pointID{at, a, b}, at: n, used: true}), true
}

// readContact reads `contact:`.
func (r *reader) readContact(n *node) {
	if n == nil {
		r.fault(r.doc.root, "the machine has no contact", "the force is told where the body meets the machine", "add contact: {kind: grip, at: and the name of a point}")
		return
	}
	f := r.fields(n, "contact", "")
	c := &r.plan.contact
	c.at = n
	if f.must("kind", "write kind: grip, or another of "+orList(contactKinds)) != nil {
		c.kind = ContactKind(f.choice("kind", contactKinds...))
	}
	c.point = f.mustPoint("at", "name the point where the hand or foot is")
	var ok bool
	if c.link, ok = f.carrier(c.point, n); ok && c.link == mechanism.Ground {
		r.fault(n, fmt.Sprintf("the contact %q is on the ground", r.plan.pointName(c.point)), "it is on a link that moves",
			"list the point under the link that is moved; a rope handle needs straight to:, round: or through:")
	}
	c.name = f.words("name")
	if c.name == "" && c.point != nowhere {
		c.name = r.plan.pointName(c.point)
	}
	for _, key := range []string{"straight to", "round", "through", "notes"} {
		f.take(key)
	}
	f.close()
}

// readTravel reads `travel:`, the joint that is followed from stop to stop.
func (r *reader) readTravel(n *node) {
	if n == nil {
		r.fault(r.doc.root, "the machine has no travel", "it moves from one stop to another", "add travel: {turn: arm, from: 0 deg, to: 60 deg}, counted from the measured pose")
		return
	}
	f := r.fields(n, "travel", "")
	d := &r.plan.drive
	d.at, d.joint = n, noJoint
	f.onlyOne("turn", "slide")
	m := angle
	switch {
	case f.has("slide"):
		m = shift
		d.joint = r.slideOf(f)
	case f.has("turn"):
		d.joint = r.turnOf(f)
	default:
		r.fault(n, "travel says nothing that moves", "it follows a link that turns or slides", "write turn: arm, or slide: sled")
	}
	for _, key := range []string{"turn", "slide", "about", "against"} {
		f.take(key)
	}
	d.from = f.mustNumber("from", m, "say where it starts, counted from the measured pose")
	d.to = f.mustNumber("to", m, "say where it ends, counted from the measured pose")
	f.close()
	if d.from != none && d.to != none && r.at(d.from) == r.at(d.to) {
		r.fault(n, fmt.Sprintf("the travel runs from %s to %s", r.written(d.from), r.written(d.to)), "its ends differ", "measure both stops from the measured pose")
	}
}

func (r *reader) slideOf(f *fields) jointID {
	id, ok := r.link(f.take("slide"), f.of("slide"))
	if !ok {
		return noJoint
	}
	for i, j := range r.plan.joints {
		if j.kind == mechanism.Prismatic && j.b == id {
			return jointID(i)
		}
	}
	r.fault(f.node, fmt.Sprintf("travel slides %q", r.plan.links[id].name), "that link has no guide", "add it under `slides:`, or write turn:")
	return noJoint
}

// turnOf finds the pin of the link that travel turns, and makes that link the
// second of the joint, whose turn counts.
func (r *reader) turnOf(f *fields) jointID {
	id, ok := r.link(f.take("turn"), f.of("turn"))
	about, against := f.point("about"), linkID(-1)
	if n := f.take("against"); n != nil {
		if a, ok := r.link(n, f.of("against")); ok {
			against = a
		}
	}
	if !ok {
		return noJoint
	}
	var found []jointID
	for i, j := range r.plan.joints {
		other := j.a
		if j.a == id {
			other = j.b
		}
		if j.kind == mechanism.Revolute && (j.a == id || j.b == id) && (about == nowhere || j.point == about) && (against < 0 || other == against) {
			found = append(found, jointID(i))
		}
	}
	if len(found) != 1 {
		r.notOnePin(f, id, found)
		return noJoint
	}
	if j := &r.plan.joints[found[0]]; j.a == id {
		j.a, j.b = j.b, j.a
	}
	return found[0]
}

func (r *reader) notOnePin(f *fields, id linkID, found []jointID) {
	name := r.plan.links[id].name
	if len(found) == 0 {
		r.fault(f.node, fmt.Sprintf("travel turns %q", name), "there it has no pin", "name one of its pins with about:, and what it turns against with against:")
		return
	}
	var pins []string
	for _, j := range found {
		pins = append(pins, r.plan.pointName(r.plan.joints[j].point))
	}
	r.fault(f.node, fmt.Sprintf("travel turns %q", name), fmt.Sprintf("that link has %d pins there", len(found)),
		fmt.Sprintf("say which with about: %s, and against which link with against:", orList(sortedNames(pins))))
}

func (r *reader) readPlane(n *node) {
	r.plan.plane = plane{tilt: none, offset: none}
	if n == nil {
		return
	}
	f := r.fields(n, "plane", "")
	r.plan.plane = plane{f.number("tilt", lean), f.number("offset", shift), f.yes("mirrored")}
	f.close()
}
