package sheet

import "fmt"

// readSheaves reads `sheaves:`, round and centred on their axis.
func (r *reader) readSheaves(n *node) {
	r.named(n, "sheaves", func(name string, e entry) {
		f := r.fields(e.value, "sheave", name)
		o := outline{name: name, start: none, at: e.value}
		o.axis = f.mustPoint("at", "name the point of its axle: at: top axle")
		o.link, _ = f.carrier(o.axis, e.value)
		o.across = f.across("measure it in the groove: diameter: 90 mm")
		o.shape = circle{across: o.across, center: noCenter}
		o.loss = f.loss(true)
		f.close()
		r.addOutline(name, o)
	})
}

// readCams reads `cams:`, of any outline and turning with a link.
func (r *reader) readCams(n *node) {
	r.named(n, "cams", func(name string, e entry) {
		f := r.fields(e.value, "cam", name)
		o := outline{name: name, at: e.value}
		o.axis = f.mustPoint("axis", "name the point it is measured from: axis: axle")
		o.link, _ = f.carrier(o.axis, e.value)
		o.start = f.number("start", angle)
		o.shape = f.shape()
		o.loss = f.loss(false)
		f.close()
		r.addOutline(name, o)
	})
}

func (r *reader) addOutline(name string, o outline) {
	if _, taken := r.outlineIDs[name]; taken {
		r.fault(o.at, fmt.Sprintf("a sheave and a cam are both called %q", name), "ropes find them by name", "rename one")
	}
	r.outlineIDs[name] = outlineID(len(r.plan.outlines))
	r.plan.outlines = append(r.plan.outlines, o)
}

// loss reads what a rope loses in passing, in one of three ways.
func (f *fields) loss(bearing bool) loss {
	l := loss{f.number("efficiency", efficient), f.number("slip", friction), none, none}
	keys := []string{"efficiency", "slip"}
	if bearing {
		l.bearing, l.axle = f.number("bearing", bushing), f.number("axle", size)
		keys = append(keys, "bearing")
		if (l.bearing == none) != (l.axle == none) {
			f.r.fault(f.node, fmt.Sprintf("%s has one of bearing and axle", f), "bearing friction acts at the axle", "give both: the bearing's friction coefficient and the axle's diameter")
		}
	}
	f.onlyOne(keys...)
	return l
}
