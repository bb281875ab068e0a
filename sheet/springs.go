package sheet

import (
	"fmt"

	"steelyard/mechanism"
)

// addElement adds something that acts along its route or about its pin.
func (r *reader) addElement(f *fields, law func(values) mechanism.Law) {
	e := element{name: f.name, kind: f.kind, joint: noJoint, law: law, at: f.node}
	if n := f.must("route", "list where it runs, from end to end: route: [frame hook, arm hook]"); n != nil {
		e.route = r.route(n, f.String())
	}
	r.plan.elements = append(r.plan.elements, e)
}

// addTurning adds something that acts about a pin.
func (r *reader) addTurning(f *fields, law func(values) mechanism.Law) {
	r.plan.elements = append(r.plan.elements, element{name: f.name, kind: f.kind, joint: r.about(f), law: law, at: f.node})
}

// readSpring reads a spring that pulls and pushes, or an extension spring,
// which only pulls.
func (r *reader) readSpring(f *fields) {
	k := f.mustNumber("rate", rate, "hang a known weight on it and divide its pull by the stretch, such as rate: 2 N/mm")
	free := f.mustNumber("free length", length, "measure it from end to end of its route without load")
	preload := f.number("preload", pull)
	pullOnly := f.kind == "extension spring"
	r.addElement(f, func(v values) mechanism.Law {
		return mechanism.Spring{Rate: v.at(k), Free: v.at(free), Preload: v.at(preload), PullOnly: pullOnly}
	})
}

// readTorsion reads a torsion spring, at rest where its pin is turned by
// `rests at` from the measured pose.
func (r *reader) readTorsion(f *fields) {
	k := f.mustNumber("rate", turnRate, "write its rate, such as rate: 1.5 N·m/deg")
	rest := f.number("rests at", angle)
	preload := f.number("preload", twist)
	r.addTurning(f, func(v values) mechanism.Law {
		return mechanism.Spring{Rate: v.at(k), Free: v.at(rest), Preload: v.at(preload)}
	})
}

// readGas reads a gas spring. Its label gives the force pushed out and in; the
// gas column follows from the two by Boyle's law, F·C = F′·(C - stroke).
func (r *reader) readGas(f *fields) {
	out := f.mustNumber("force", pull, "write the push when it is out, as on its label: force: 500 N")
	in := f.mustNumber("force in", pull, "write the push when it is all in; makers' tables give it, often 1.2 to 1.5 times the force out")
	long := f.mustNumber("length", length, "measure it from eye to eye when it is out")
	stroke := f.mustNumber("stroke", size, "measure how far its rod goes in")
	if out != none && in != none && r.at(in) <= r.at(out) {
		r.fault(f.node, fmt.Sprintf("%s pushes %.4g N all in and %.4g N out", f, r.at(in), r.at(out)), "the gas pushes harder when it is compressed", "check the two forces, they may be swapped")
	}
	r.addElement(f, func(v values) mechanism.Law {
		column := v.at(stroke) * v.at(in) / max(v.at(in)-v.at(out), 1e-6*v.at(in))
		return mechanism.GasSpring{Force: v.at(out), Extended: v.at(long), Column: column}
	})
}

// readBand reads a rubber band, from its rubber or from a table of pulls.
func (r *reader) readBand(f *fields) {
	f.onlyOne("pulls", "shear modulus")
	if n := f.take("pulls"); n != nil {
		r.addElement(f, r.pulls(n, f))
		return
	}
	free := f.mustNumber("free length", size, "measure it end to end without load, or list what a hanging scale shows: pulls: [[400 mm, 0 N], [600 mm, 80 N]]")
	width, thick := f.mustNumber("width", size, "measure one strand's width"), f.mustNumber("thickness", size, "measure one strand's thickness")
	strands := f.number("strands", count)
	shear := f.mustNumber("shear modulus", modulus, "take it from the maker, or list what a hanging scale shows under pulls:")
	r.addElement(f, func(v values) mechanism.Law {
		area := v.at(width) * v.at(thick)
		if strands != none {
			area *= v.at(strands)
		}
		return mechanism.Band{Free: v.at(free), Area: area, Shear: v.at(shear)}
	})
}

// pulls reads [[length, force], …], from short to long.
func (r *reader) pulls(n *node, f *fields) func(values) mechanism.Law {
	var x, y []num
	if n.kind != sequence || len(n.items) < 2 {
		r.fault(n, fmt.Sprintf("pulls of %s is %s", f, seen(n)), "it is at least two pairs of length and force", "write [[400 mm, 0 N], [600 mm, 80 N]]")
		n = &node{kind: sequence}
	}
	for i, item := range n.items {
		what := fmt.Sprintf("pull %d of %s", i+1, f)
		if item.kind != sequence || len(item.items) != 2 {
			r.fault(item, fmt.Sprintf("%s is %s", what, seen(item)), "it is a length and a force", "write [600 mm, 80 N]")
			continue
		}
		l := r.number(r.value(item.items[0]), length, fmt.Sprintf("%s, length %d", f.name, i+1), "the length at "+what)
		p := r.number(r.value(item.items[1]), pull, fmt.Sprintf("%s, pull %d", f.name, i+1), "the force of "+what)
		if l == none || p == none {
			continue
		}
		if k := len(x); k > 0 && r.at(l) <= r.at(x[k-1]) {
			r.fault(item, fmt.Sprintf("%s is at %.4g mm, after %.4g mm", what, 1000*r.at(l), 1000*r.at(x[k-1])), "the lengths grow from pair to pair", "list them from short to long")
		}
		x, y = append(x, l), append(y, p)
	}
	return func(v values) mechanism.Law {
		t := mechanism.Table{X: make([]float64, len(x)), F: make([]float64, len(y))}
		for i := range x {
			t.X[i], t.F[i] = v.at(x[i]), v.at(y[i])
		}
		return t
	}
}

func (r *reader) readSteady(f *fields) {
	force := f.mustNumber("force", thrust, "write its pull, such as force: 200 N")
	r.addElement(f, func(v values) mechanism.Law { return mechanism.Steady{Force: v.at(force)} })
}

func (r *reader) readSteadyMoment(f *fields) {
	m := f.mustNumber("moment", twist, "write its moment, such as moment: 30 N·m; plus resists counter-clockwise turning")
	r.addTurning(f, func(v values) mechanism.Law { return mechanism.Steady{Force: v.at(m)} })
}

func (r *reader) readDamper(f *fields) {
	c := f.mustNumber("damping", damping, "write its force over its speed, such as damping: 400 N·s/m")
	r.addElement(f, func(v values) mechanism.Law { return mechanism.Damper{Coefficient: v.at(c)} })
}
