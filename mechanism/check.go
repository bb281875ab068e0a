package mechanism

import (
	"fmt"
	"math"

	"steelyard/planar"
)

type vec = planar.Vec

// Limits of what can still be a gym machine. They catch a wrong unit before it
// becomes a wrong force.
const (
	farthest = 100.0 // m, of any point from the origin
	heaviest = 5000. // kg, of any one mass
)

// check refuses a description that no pose could make right. Everything after
// it may rely on finite numbers and valid indices.
func check(m *Machine) error {
	if len(m.Links) == 0 {
		return &PartError{"machine", "it has no moving link", "add the link that the hand or foot moves"}
	}
	if len(m.Links) > maxLinks {
		return &PartError{"machine", fmt.Sprintf("it has %d moving links, more than %d", len(m.Links), maxLinks), "leave out what does not carry load"}
	}
	for i := range m.Links {
		if err := checkLink(&m.Links[i]); err != nil {
			return err
		}
	}
	for _, step := range []func(*Machine) error{checkJoints, checkRoutes, checkElements, checkWeights, checkDrive} {
		if err := step(m); err != nil {
			return err
		}
	}
	return nil
}

func checkLink(l *Link) error {
	part := fmt.Sprintf("link %q", l.Name)
	return first(
		checkMass(part, "mass", l.Mass, "kg"),
		checkMass(part, "inertia", l.Inertia, "kg·m²"),
		checkPoint(part, "centre of mass", l.Center),
	)
}

func checkJoints(m *Machine) error {
	for i := range m.Joints {
		j := &m.Joints[i]
		part := fmt.Sprintf("joint %q", j.Name)
		if !m.has(j.A) || !m.has(j.B) {
			return &PartError{part, "it names a link that is not there", "use the links of this machine"}
		}
		if j.A == j.B {
			return &PartError{part, "it joins a link to itself", "name two different links"}
		}
		f := j.Friction
		err := first(
			checkPoint(part, "place", j.At),
			checkRange(part, "direction of its guide", float64(j.Along), -1e3, 1e3, "rad"),
			checkRange(part, "friction coefficient", f.Coefficient, 0, 2, ""),
			checkRange(part, "pin radius", f.Radius, 0, 1, "m"),
			checkRange(part, "bearing length", f.Bearing, 0, 10, "m"),
			checkRange(part, "drag", f.Drag, 0, 1e5, "N or N·m"),
		)
		if err != nil {
			return err
		}
	}
	return nil
}

func checkElements(m *Machine) error {
	for i := range m.Elements {
		e := &m.Elements[i]
		part := fmt.Sprintf("element %q", e.Name)
		if err := checkLaw(part, e.Law); err != nil {
			return err
		}
		if len(e.Route) > 0 {
			if err := checkRoute(m, part, e.Route); err != nil {
				return err
			}
			continue
		}
		if e.Joint < 0 || e.Joint >= len(m.Joints) || m.Joints[e.Joint].Kind != Revolute {
			return &PartError{part, "it acts about no pin", "name the pin it turns about"}
		}
		switch e.Law.(type) {
		case GasSpring, Band:
			return &PartError{part, "it acts about a pin but is measured by its length", "give the two ends it runs between"}
		}
	}
	return nil
}

func checkWeights(m *Machine) error {
	for _, w := range m.Weights {
		part := fmt.Sprintf("weight %q", w.Name)
		if !m.has(w.Link) {
			return &PartError{part, "it hangs on a link that is not there", "use the links of this machine"}
		}
		err := first(checkMass(part, "mass", w.Mass, "kg"), checkMass(part, "inertia", w.Inertia, "kg·m²"), checkPoint(part, "place", w.At))
		if err != nil {
			return err
		}
	}
	for _, c := range m.Chains {
		part := fmt.Sprintf("chain %q", c.Name)
		if !m.has(c.Link) {
			return &PartError{part, "it hangs on a link that is not there", "use the links of this machine"}
		}
		err := first(checkPoint(part, "place", c.At), checkRange(part, "length", c.Length, 0, 20, "m"),
			checkRange(part, "mass per metre", c.Density, 0, 100, "kg/m"), checkRange(part, "floor", c.Floor, -10, 10, "m"))
		if err != nil {
			return err
		}
	}
	for _, w := range m.Wheels {
		part := fmt.Sprintf("flywheel %q", w.Name)
		if w.Joint < 0 || w.Joint >= len(m.Joints) || m.Joints[w.Joint].Kind != Revolute {
			return &PartError{part, "it turns with no pin", "name the pin that turns it"}
		}
		if err := first(checkMass(part, "inertia", w.Inertia, "kg·m²"), checkRange(part, "gear ratio", w.Ratio, -1e3, 1e3, "")); err != nil {
			return err
		}
	}
	return nil
}

func checkDrive(m *Machine) error {
	d := m.Drive
	if d.Joint < 0 || d.Joint >= len(m.Joints) {
		return &PartError{"travel", "it follows a joint that is not there", "name the link that is turned or slid"}
	}
	limit, unit := 4*math.Pi, "rad"
	if m.Joints[d.Joint].Kind == Prismatic {
		limit, unit = 10, "m"
	}
	if err := first(checkRange("travel", "start", d.From, -limit, limit, unit), checkRange("travel", "end", d.To, -limit, limit, unit)); err != nil {
		return err
	}
	if d.From == d.To {
		return &PartError{"travel", fmt.Sprintf("it starts and ends at %g %s", d.From, unit), "give two different ends"}
	}
	if !m.has(m.Contact.Link) || m.Contact.Link == Ground {
		return &PartError{"contact", "it is on nothing that moves", "put it on a moving link"}
	}
	return first(
		checkPoint("contact", "place", m.Contact.At),
		checkRange("plane", "tilt", float64(m.Plane.Tilt), -math.Pi/2, math.Pi/2, "rad"),
		checkRange("plane", "offset", m.Plane.Offset, -10, 10, "m"),
	)
}

func (m *Machine) has(l LinkID) bool { return l >= 0 && int(l) <= len(m.Links) }

func checkMass(part, what string, v float64, unit string) error {
	return checkRange(part, what, v, 0, heaviest, unit)
}

func checkPoint(part, what string, p vec) error {
	return first(checkRange(part, what+" (x)", p.X, -farthest, farthest, "m"), checkRange(part, what+" (y)", p.Y, -farthest, farthest, "m"))
}

// checkRange refuses v outside [lo, hi]; NaN is outside everything.
func checkRange(part, what string, v, lo, hi float64, unit string) error {
	if v >= lo && v <= hi {
		return nil
	}
	return &PartError{part, fmt.Sprintf("its %s is %g %s, outside %g to %g %s", what, v, unit, lo, hi, unit), "check the number and its unit"}
}

func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
