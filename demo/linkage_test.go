package demo

import (
	"math"
	"slices"

	"steelyard/mechanism"
	"steelyard/planar"
	"steelyard/sheet"
)

// This file recognises linkages by their joints.

// count returns how many joints of a kind the machine has.
func count(m *mechanism.Machine, kind mechanism.JointKind) int {
	n := 0
	for _, j := range m.Joints {
		if j.Kind == kind {
			n++
		}
	}
	return n
}

// leverClass returns 1, 2 or 3 for plates on one turning link: with the axis
// between load and contact, with the load between axis and contact, and with the
// contact between axis and load. It returns 0 for anything else.
func leverClass(e *exhibit) int {
	m := &e.built.Machine
	if len(m.Links) != 1 || count(m, mechanism.Revolute) != 1 || e.built.Contact == sheet.Held {
		return 0
	}
	i := slices.IndexFunc(m.Weights, func(w mechanism.Weight) bool { return w.Load && w.Mass > 0 })
	if i < 0 {
		return 0
	}
	load, contact := m.Weights[i].At.Sub(m.Joints[0].At), m.Contact.At.Sub(m.Joints[0].At)
	switch {
	case load.Dot(contact) < 0:
		return 1
	case load.Norm() < contact.Norm():
		return 2
	}
	return 3
}

// joined returns how many joints a link has.
func joined(m *mechanism.Machine, l mechanism.LinkID) int {
	n := 0
	for _, j := range m.Joints {
		if j.A == l || j.B == l {
			n++
		}
	}
	return n
}

// between reports whether a joint connects two links.
func between(m *mechanism.Machine, a, b mechanism.LinkID) bool {
	return slices.ContainsFunc(m.Joints, func(j mechanism.Joint) bool { return j.A == a && j.B == b || j.A == b && j.B == a })
}

func fourBar(m *mechanism.Machine) bool {
	return len(m.Links) == 3 && count(m, mechanism.Revolute) == 4 && len(m.Joints) == 4 && len(m.Ropes) == 0
}

type place int

const (
	elsewhere place = iota
	onInput         // the link that the travel turns against the ground
	onCoupler       // the link that is not pinned to the ground
	onRocker
)

// fourBarLoad returns on which link of a four-bar its plates are, and elsewhere
// for a parallelogram and for any other machine.
func fourBarLoad(e *exhibit) place {
	m := &e.built.Machine
	if !fourBar(m) || parallelogram(e) {
		return elsewhere
	}
	on := m.Weights[slices.IndexFunc(m.Weights, func(w mechanism.Weight) bool { return w.Load })].Link
	drive := m.Joints[m.Drive.Joint]
	switch {
	case !between(m, mechanism.Ground, on):
		return onCoupler
	case drive.A == mechanism.Ground && drive.B == on:
		return onInput
	}
	return onRocker
}

// parallelogram reports whether opposite pins of a four-bar are equally far
// apart, to 1 mm, and the loop is not crossed: both arms point the same way.
func parallelogram(e *exhibit) bool {
	m := &e.built.Machine
	if !fourBar(m) {
		return false
	}
	var arms []planar.Vec
	for l := mechanism.LinkID(1); l <= 3; l++ {
		if !between(m, mechanism.Ground, l) {
			continue
		}
		var ends [2]planar.Vec // at the ground, at the coupler
		for _, j := range m.Joints {
			switch {
			case j.A == mechanism.Ground && j.B == l || j.B == mechanism.Ground && j.A == l:
				ends[0] = j.At
			case j.A == l || j.B == l:
				ends[1] = j.At
			}
		}
		arms = append(arms, ends[1].Sub(ends[0]))
	}
	return len(arms) == 2 && arms[0].Sub(arms[1]).Norm() < 1e-3
}

type sixBarKind int

const (
	noSixBar sixBarKind = iota
	wattOne
	stephensonThree
	otherSixBar
)

// sixBar tells the two kinds apart by the two links of a six-bar that have three
// joints. Watt: these two are joined; first form: the ground is neither.
// Stephenson: they are not joined; third form: the ground is one of them.
// Source: J. J. Uicker, G. R. Pennock, J. E. Shigley, Theory of Machines and
// Mechanisms, ch. 1, isomers of the six-bar (from memory).
func sixBar(e *exhibit) sixBarKind {
	m := &e.built.Machine
	if len(m.Links) != 5 || len(m.Joints) != 7 || count(m, mechanism.Revolute) != 7 || len(m.Ropes) != 0 {
		return noSixBar
	}
	var ternary []mechanism.LinkID
	for l := mechanism.Ground; l <= 5; l++ {
		if joined(m, l) == 3 {
			ternary = append(ternary, l)
		}
	}
	if len(ternary) != 2 {
		return otherSixBar
	}
	grounded := ternary[0] == mechanism.Ground
	switch touching := between(m, ternary[0], ternary[1]); {
	case touching && !grounded:
		return wattOne
	case !touching && grounded:
		return stephensonThree
	}
	return otherSixBar
}

func sliderCrank(e *exhibit) bool {
	m := &e.built.Machine
	slides := slices.ContainsFunc(m.Joints, func(j mechanism.Joint) bool { return j.Kind == mechanism.Prismatic && j.A == mechanism.Ground })
	return len(m.Links) == 3 && count(m, mechanism.Revolute) == 3 && count(m, mechanism.Prismatic) == 1 && slides && len(m.Ropes) == 0
}

// sled reports whether the contact's link has its own mass and slides on ground
// rails that rise by an angle in degrees.
func sled(e *exhibit, from, to float64) bool {
	m := &e.built.Machine
	return m.Links[m.Contact.Link-1].Mass > 0 && slices.ContainsFunc(m.Joints, func(j mechanism.Joint) bool {
		rise := math.Abs(math.Asin(math.Sin(float64(j.Along)))) * 180 / math.Pi
		return j.Kind == mechanism.Prismatic && j.A == mechanism.Ground && j.B == m.Contact.Link && rise > from && rise < to
	})
}

// guided reports whether a link slides on the ground.
func guided(e *exhibit, l mechanism.LinkID) bool {
	return slices.ContainsFunc(e.built.Machine.Joints, func(j mechanism.Joint) bool {
		return j.Kind == mechanism.Prismatic && j.A == mechanism.Ground && j.B == l
	})
}

// heldAt reports whether a weight moves with the hand or a limb at a distance in
// m from the joint it goes round: from the elbow a hand is 0.25 to 0.4 m away, from
// the hip the chest 0.4 to 0.6 m and an ankle beyond (common practice, no source).
func heldAt(e *exhibit, from, to float64) bool {
	m := &e.built.Machine
	if e.built.Contact != sheet.Held || len(m.Joints) != 1 {
		return false
	}
	r := m.Contact.At.Sub(m.Joints[0].At).Norm()
	return weight(e, func(w mechanism.Weight) bool { return w.Link == m.Contact.Link && w.At == m.Contact.At }) && r > from && r < to
}

func weight(e *exhibit, is func(mechanism.Weight) bool) bool {
	return slices.ContainsFunc(e.built.Machine.Weights, is)
}

func link(e *exhibit, is func(mechanism.Link, mechanism.LinkID) bool) bool {
	for i, l := range e.built.Machine.Links {
		if is(l, mechanism.LinkID(i+1)) {
			return true
		}
	}
	return false
}

func element(is func(mechanism.Element) bool) func(*exhibit) bool {
	return func(e *exhibit) bool { return slices.ContainsFunc(e.built.Machine.Elements, is) }
}

func joint(kind mechanism.JointKind, is func(mechanism.JointFriction) bool) func(*exhibit) bool {
	return func(e *exhibit) bool {
		return slices.ContainsFunc(e.built.Machine.Joints, func(j mechanism.Joint) bool { return j.Kind == kind && is(j.Friction) })
	}
}
