package sheet

import (
	"fmt"

	"steelyard/mechanism"
	"steelyard/planar"
)

// settingsOverrule tells where a setting's value replaces another number.
func (t *teller) settingsOverrule(b *Built) {
	for _, o := range t.plan.overruled {
		t.assumed("%s is %s by a setting, not %s as it says there", o.path, o.now, o.written)
	}
}

// gaps tells what is missing for good results.
func (t *teller) gaps() {
	t.unused()
	t.frictionless()
	t.bridged()
	if len(t.machine.Weights)+len(t.machine.Chains)+len(t.machine.Elements)+len(t.machine.Wheels) == 0 {
		t.missing("no load is given: only the links' own weight resists")
	}
	load := false
	for _, w := range t.machine.Weights {
		load = load || w.Load
	}
	if !load {
		t.missing("no plates, stack or free weight is given, so there is no lift ratio")
	}
	spread := 0
	for i := range t.plan.numbers {
		if t.plan.numbers[i].Spread > 0 {
			spread++
		}
	}
	if spread == 0 {
		t.missing("no number has a ±, so the results will have no error band")
	} else {
		t.understood("%d of %s carry a ± that goes through to the results", spread, counted(len(t.plan.numbers), "number"))
	}
}

// frictionless tells which joints and sheaves have no friction.
func (t *teller) frictionless() {
	var joints, sheaves []string
	for i := range t.plan.joints {
		if t.machine.Joints[i].Friction == (mechanism.JointFriction{Radius: t.machine.Joints[i].Friction.Radius, Bearing: t.machine.Joints[i].Friction.Bearing}) && t.plan.joints[i].name != handle {
			joints = append(joints, fmt.Sprintf("%q", t.plan.joints[i].name))
		}
	}
	for i := range t.plan.outlines {
		if o := &t.plan.outlines[i]; o.loss == noLoss && t.between(outlineID(i)) {
			sheaves = append(sheaves, fmt.Sprintf("%q", o.name))
		}
	}
	if len(joints) > 0 {
		t.assumed("no friction in %s", list(joints, " and "))
	}
	if len(sheaves) > 0 {
		t.assumed("no loss at %s", list(sheaves, " and "))
	}
}

// between reports whether a rope runs on past the outline.
func (t *teller) between(id outlineID) bool {
	for i := range t.plan.ropes {
		route := t.plan.ropes[i].route
		for k := 1; k < len(route)-1; k++ {
			if route[k].outline == id {
				return true
			}
		}
	}
	return false
}

// unused tells which points, sheaves and cams nothing refers to.
func (t *teller) unused() {
	for i := range t.plan.points {
		if p := &t.plan.points[i]; !p.used {
			t.missing("point %q is not used by anything", p.name)
		}
	}
	for i := range t.plan.outlines {
		if o := &t.plan.outlines[i]; !o.used {
			t.missing("no rope runs over %q", o.name)
		}
	}
}

// bridged tells where a rope does not follow a traced outline into a hollow.
func (t *teller) bridged() {
	for i := range t.plan.outlines {
		o := &t.plan.outlines[i]
		c, ok := o.shape.(*cached)
		if !ok {
			continue
		}
		if trace, ok := c.made.(*planar.Traced); ok {
			for _, h := range trace.Hollows() {
				t.assumed("the rope bridges the hollow of cam %q between traced points %d and %d, %.1f mm deep", o.name, h.First+1, h.Last+1, 1000*h.Depth)
			}
		}
	}
}
