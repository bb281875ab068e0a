package demo

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"steelyard/mechanism"
	"steelyard/planar"
	"steelyard/sheet"
)

// families says of each family how a built machine shows that it belongs there.
// Nothing goes by names.
var families = []struct {
	name string
	has  func(e *exhibit) bool
}{
	{"lever of the first class", func(e *exhibit) bool { return leverClass(e) == 1 }},
	{"lever of the second class", func(e *exhibit) bool { return leverClass(e) == 2 }},
	{"lever of the third class", func(e *exhibit) bool { return leverClass(e) == 3 }},
	{"four-bar, load on the input link", func(e *exhibit) bool { return fourBarLoad(e) == onInput }},
	{"four-bar, load on the coupler", func(e *exhibit) bool { return fourBarLoad(e) == onCoupler }},
	{"four-bar, load on the rocker", func(e *exhibit) bool { return fourBarLoad(e) == onRocker }},
	{"parallelogram", parallelogram},
	{"six-bar, Watt I", func(e *exhibit) bool { return sixBar(e) == wattOne }},
	{"six-bar, Stephenson III", func(e *exhibit) bool { return sixBar(e) == stephensonThree }},
	{"slider-crank", sliderCrank},
	{"sled on inclined rails", func(e *exhibit) bool { return sled(e, 10, 80) }},
	{"carriage on level rails", func(e *exhibit) bool { return sled(e, -1, 1) }},
	{"bar on upright guides", func(e *exhibit) bool { return sled(e, 89, 91) }},

	{"rope 1:1", func(e *exhibit) bool { return tackle(e) == 1 }},
	{"rope 2:1", func(e *exhibit) bool { return tackle(e) == 2 }},
	{"rope 4:1", func(e *exhibit) bool { return tackle(e) == 4 }},
	{"redirect with changing wrap", func(e *exhibit) bool { return wrapChange(e) > 10*planar.Degree }},
	{"rope round either side", eitherSide},
	{"rope handle on a straight path", func(e *exhibit) bool { return ropeHandle(e, mechanism.Prismatic) }},
	{"rope handle on an arc", func(e *exhibit) bool { return ropeHandle(e, mechanism.Revolute) }},
	{"cam, circle off centre", cam(func(o planar.Outline) bool { c, ok := o.(planar.Circle); return ok && c.Center.Norm() > 0 })},
	{"cam, ellipse", cam(isEllipse)},
	{"cam, spiral", cam(isSpiral)},
	{"cam, traced with a hollow", cam(hollow)},

	{"plates on a horn", func(e *exhibit) bool {
		return weight(e, func(w mechanism.Weight) bool { return w.Load && w.Inertia > 0 && e.built.Contact != sheet.Held })
	}},
	{"weight stack", func(e *exhibit) bool {
		return link(e, func(l mechanism.Link, id mechanism.LinkID) bool { return l.Upright && guided(e, id) })
	}},
	{"a link's own weight", func(e *exhibit) bool {
		return link(e, func(l mechanism.Link, _ mechanism.LinkID) bool { return l.Mass > 0 && !l.Upright })
	}},
	{"counterweight", func(e *exhibit) bool {
		return weight(e, func(w mechanism.Weight) bool { return !w.Load && w.Mass > 0 })
	}},
	{"linear spring", element(func(x mechanism.Element) bool {
		s, ok := x.Law.(mechanism.Spring)
		return ok && len(x.Route) > 0 && !s.PullOnly
	})},
	{"extension spring", element(func(x mechanism.Element) bool { s, ok := x.Law.(mechanism.Spring); return ok && s.PullOnly })},
	{"torsion spring", element(func(x mechanism.Element) bool { _, ok := x.Law.(mechanism.Spring); return ok && len(x.Route) == 0 })},
	{"gas spring", element(func(x mechanism.Element) bool { _, ok := x.Law.(mechanism.GasSpring); return ok })},
	{"elastic band, neo-Hookean", element(func(x mechanism.Element) bool { _, ok := x.Law.(mechanism.Band); return ok })},
	{"elastic band, measured table", element(func(x mechanism.Element) bool { _, ok := x.Law.(mechanism.Table); return ok })},
	{"hanging chain", func(e *exhibit) bool { return len(e.built.Machine.Chains) > 0 }},
	{"constant force", element(func(x mechanism.Element) bool { _, ok := x.Law.(mechanism.Steady); return ok })},
	{"damper", element(func(x mechanism.Element) bool { _, ok := x.Law.(mechanism.Damper); return ok })},
	{"flywheel", func(e *exhibit) bool { return len(e.built.Machine.Wheels) > 0 }},
	{"free weight in the hand", func(e *exhibit) bool { return heldAt(e, 0.25, 0.4) }},
	{"free weight held on the trunk", func(e *exhibit) bool { return heldAt(e, 0.4, 0.6) }},
	{"free weight strapped to a leg", func(e *exhibit) bool { return heldAt(e, 0.6, 1) }},

	{"friction of pins", joint(mechanism.Revolute, func(f mechanism.JointFriction) bool { return f.Coefficient > 0 && f.Radius > 0 })},
	{"friction of sliders, with tipping", joint(mechanism.Prismatic, func(f mechanism.JointFriction) bool { return f.Coefficient > 0 && f.Bearing > 0 })},
	{"friction of stack guides", func(e *exhibit) bool {
		return slices.ContainsFunc(e.built.Machine.Joints, func(j mechanism.Joint) bool {
			return j.Kind == mechanism.Prismatic && j.B > 0 && e.built.Machine.Links[j.B-1].Upright && j.Friction.Drag > 0
		})
	}},
	{"sheave efficiency", loss(func(l mechanism.RopeLoss) bool { return l.Efficiency > 0 && l.Efficiency < 1 })},
	{"sheave bearing friction", loss(func(l mechanism.RopeLoss) bool { return l.Bearing > 0 && l.AxleOverRim > 0 })},
	{"rope dragged over a post", loss(func(l mechanism.RopeLoss) bool { return l.Slip > 0 })},

	{"tilted plane", func(e *exhibit) bool { a := tilt(e); return a > 1 && a < 89 }},
	{"level plane", func(e *exhibit) bool { return tilt(e) == 90 }},
	{"mirrored pair", func(e *exhibit) bool { return e.built.Machine.Plane.Mirrored }},
	{"plane offset sideways", func(e *exhibit) bool { return e.built.Machine.Plane.Offset != 0 }},
}

// TestEveryFamilyIsThere prints which machines belong to which family.
func TestEveryFamilyIsThere(t *testing.T) {
	all := room(t)
	seen := map[string]bool{}
	for _, f := range families {
		var files []string
		for _, e := range all {
			if f.has(e) {
				files = append(files, strings.TrimSuffix(e.file, ".yaml"))
				seen[e.file] = true
			}
		}
		if len(files) == 0 {
			t.Errorf("no machine is a %s", f.name)
		}
		t.Logf("%-46s %s", f.name, strings.Join(files, ", "))
	}
	for _, e := range all {
		if !seen[e.file] {
			t.Errorf("%s belongs to no family", e.file)
		}
	}
}

// uses says of each use of a setting what it changes in the built machine.
var uses = []struct {
	name    string
	changes func(a, b *mechanism.Machine) bool
}{
	{"mass", weightsDiffer(func(x, y mechanism.Weight) bool { return x.Mass != y.Mass })},
	{"horn", weightsDiffer(func(x, y mechanism.Weight) bool { return x.At != y.At })},
	{"stop", func(a, b *mechanism.Machine) bool { return a.Drive.From != b.Drive.From }},
	{"spring or band", elementsDiffer(func(x, y mechanism.Element) bool { return !reflect.DeepEqual(x.Law, y.Law) })},
	{"hook", elementsDiffer(func(x, y mechanism.Element) bool { return !reflect.DeepEqual(x.Route, y.Route) })},
	{"handle or pad", func(a, b *mechanism.Machine) bool { return a.Contact.At != b.Contact.At }},
	{"pin hole", func(a, b *mechanism.Machine) bool {
		same := slices.EqualFunc(a.Joints, b.Joints, func(x, y mechanism.Joint) bool { return x.At == y.At })
		return a.Contact.At == b.Contact.At && !same
	}},
	{"sheave", stationsDiffer(func(x, y mechanism.Station) bool { return x.Outline != nil && x.At != y.At })},
	{"cam start", stationsDiffer(func(x, y mechanism.Station) bool { return x.At == y.At && x.Anchor != y.Anchor })},
}

// TestSettingsChangeWhatTheySay finds for each use of a setting a machine in
// which one value changes just that against the default.
func TestSettingsChangeWhatTheySay(t *testing.T) {
	found := make([][]string, len(uses))
	for _, e := range room(t) {
		did := make([]bool, len(uses))
		for _, choice := range ways(t, e.sheet) {
			b, err := e.sheet.Build(choice)
			if err != nil {
				t.Fatal(err)
			}
			for i, u := range uses {
				did[i] = did[i] || u.changes(&e.built.Machine, &b.Machine)
			}
		}
		for i := range uses {
			if did[i] {
				found[i] = append(found[i], strings.TrimSuffix(e.file, ".yaml"))
			}
		}
	}
	for i, u := range uses {
		if len(found[i]) == 0 {
			t.Errorf("no setting changes the %s", u.name)
		}
		t.Logf("%-16s %s", u.name, strings.Join(found[i], ", "))
	}
}

func weightsDiffer(differ func(x, y mechanism.Weight) bool) func(a, b *mechanism.Machine) bool {
	return func(a, b *mechanism.Machine) bool {
		for i := range a.Weights {
			if differ(a.Weights[i], b.Weights[i]) {
				return true
			}
		}
		return false
	}
}

func elementsDiffer(differ func(x, y mechanism.Element) bool) func(a, b *mechanism.Machine) bool {
	return func(a, b *mechanism.Machine) bool {
		for i := range a.Elements {
			if differ(a.Elements[i], b.Elements[i]) {
				return true
			}
		}
		return false
	}
}

func stationsDiffer(differ func(x, y mechanism.Station) bool) func(a, b *mechanism.Machine) bool {
	return func(a, b *mechanism.Machine) bool {
		for r := range a.Ropes {
			for k := range a.Ropes[r].Route {
				if differ(a.Ropes[r].Route[k], b.Ropes[r].Route[k]) {
					return true
				}
			}
		}
		return false
	}
}

func tilt(e *exhibit) float64 { return math.Abs(e.built.Machine.Plane.Tilt.Degrees()) }
