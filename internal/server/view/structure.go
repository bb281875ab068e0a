package view

import (
	"slices"
	"strings"

	"steelyard/internal/server/api"
	"steelyard/mechanism"
	"steelyard/planar"
	"steelyard/sheet"
)

// structure takes the sheet apart, with settings as built.
func (o *Opened) structure(b *sheet.Built) api.Structure {
	x := b.Explain()
	s := api.Structure{Name: o.Machine.Name, Notes: o.Machine.Notes, Measured: o.Machine.Measured, Cautions: list(o.Machine.Cautions),
		Contact: string(b.Contact), Points: o.points(b), Links: o.links(b), Loads: []api.Load{}, Settings: o.settings(b), Values: o.values(b),
		Cams: o.cams(b), Understood: list(x.Understood), Assumed: list(x.Assumed), Missing: list(x.Missing)}
	for _, l := range o.Document.Keys("loads") {
		s.Loads = append(s.Loads, api.Load{Name: l, Kind: o.Document.Text("loads." + l + ".kind")})
	}
	return s
}

// list never returns nil, which JSON would write as null.
func list(texts []string) []string { return append([]string{}, texts...) }

// linkPoints returns the names of the points that a link lists.
func (o *Opened) linkPoints(link string) []string {
	path := "links." + link
	if points := o.Document.List(path); points != nil {
		return points
	}
	return list(o.Document.List(path + ".points"))
}

func (o *Opened) links(b *sheet.Built) []api.Link {
	out := []api.Link{{Name: "ground", Points: o.linkPoints("ground")}}
	for i := range b.Machine.Links {
		l := &b.Machine.Links[i]
		out = append(out, api.Link{Name: l.Name, Points: o.linkPoints(l.Name), Mass: round(l.Mass, 3), Center: place(l.Center)})
	}
	return out
}

// points lists the named places where they now are.
func (o *Opened) points(b *sheet.Built) []api.Point {
	by := measurements(b)
	at := o.spots(b)
	out := []api.Point{}
	for _, name := range o.Document.Keys("points") {
		p := api.Point{Name: name, At: place(at[name]), Links: []string{}}
		for k, axis := range []string{"x", "y"} {
			p.Plus[k] = metres(by[o.pointPath(name, axis)].Spread)
		}
		for _, l := range append([]string{"ground"}, linkNames(b)...) {
			if slices.Contains(o.linkPoints(l), name) {
				p.Links = append(p.Links, l)
			}
		}
		p.Pin, p.Fixed = len(p.Links) > 1, slices.Contains(p.Links, "ground")
		out = append(out, p)
	}
	return out
}

func linkNames(b *sheet.Built) []string {
	var out []string
	for i := range b.Machine.Links {
		out = append(out, b.Machine.Links[i].Name)
	}
	return out
}

// pointPath returns the path to one coordinate of a point, as measurements and
// edits name it.
func (o *Opened) pointPath(point, axis string) string {
	return o.placePath("points."+point, axis)
}

// placePath returns the path to one number of a place.
func (o *Opened) placePath(place, axis string) string {
	number := map[string]string{"x": "1", "y": "2"}[axis]
	if grouped := place + "." + number + ".is"; o.Document.Text(grouped) != "" {
		return grouped
	}
	return place + "." + axis
}

func measurements(b *sheet.Built) map[string]sheet.Measurement {
	out := map[string]sheet.Measurement{}
	for _, m := range b.Measurements {
		out[m.Path] = m
	}
	return out
}

// spots returns where every named point is in the measured pose, m: where the
// machine has it if something stands there, since a setting may have moved it,
// and else as written.
func (o *Opened) spots(b *sheet.Built) map[string]planar.Vec {
	by, at := measurements(b), map[string]planar.Vec{}
	for _, name := range o.Document.Keys("points") {
		at[name] = planar.Vec{X: by[o.pointPath(name, "x")].Value, Y: by[o.pointPath(name, "y")].Value}
	}
	put := func(name string, p planar.Vec) {
		if _, known := at[name]; known {
			at[name] = p
		}
	}
	m := &b.Machine
	for i := range m.Joints {
		if j := &m.Joints[i]; j.Kind == mechanism.Revolute {
			name, _, _ := strings.Cut(j.Name, " (")
			put(name, j.At)
		}
	}
	for _, l := range m.Lines() {
		for _, s := range l.Route {
			o.putStation(put, s)
		}
	}
	for i := range m.Weights {
		put(o.Document.Text("loads."+m.Weights[i].Name+".at"), m.Weights[i].At)
	}
	for i := range m.Chains {
		put(o.Document.Text("loads."+m.Chains[i].Name+".at"), m.Chains[i].At)
	}
	put(o.Document.Text("contact.at"), m.Contact.At)
	return at
}

// putStation puts the point a rope ends at, or the axis of its sheave or cam.
func (o *Opened) putStation(put func(string, planar.Vec), s mechanism.Station) {
	if s.Outline == nil {
		put(s.Name, s.At)
		return
	}
	put(o.Document.Text("sheaves."+s.Name+".at"), s.At)
	put(o.Document.Text("cams."+s.Name+".axis"), s.At)
}

// cams lists the traced cams that a rope runs over, with their points.
func (o *Opened) cams(b *sheet.Built) []api.Cam {
	out := []api.Cam{}
	for _, name := range o.Document.Keys("cams") {
		c := api.Cam{Name: name, Points: []api.Place{}}
		axis, start, found := o.camFrame(b, name)
		if !found || len(o.Document.Keys("cams."+name+".traced")) == 0 {
			continue
		}
		c.Axis = place(axis)
		turn := planar.TurnThenShift(start, axis)
		for _, v := range o.vertices(b, name) {
			c.Points = append(c.Points, place(turn.Point(v)))
		}
		out = append(out, c)
	}
	return out
}

// camFrame returns a cam's axis in the measured pose and the turn it is started
// with; false if no rope runs over it.
func (o *Opened) camFrame(b *sheet.Built, cam string) (axis planar.Vec, start planar.Angle, ok bool) {
	s, ok := stationAt(&b.Machine, cam)
	if !ok {
		return planar.Vec{}, 0, false
	}
	return s.At, o.camStart(b, cam), true
}

// camStart returns the turn that a cam is started with. A setting may give it,
// and its measurement then stands with the setting under the same name.
func (o *Opened) camStart(b *sheet.Built, cam string) planar.Angle {
	for _, m := range b.Measurements {
		if m.Name == cam+", start" {
			return planar.Angle(m.Value)
		}
	}
	return 0
}

// vertices returns the traced points of a cam from its axis, before it is
// turned by its start, m.
func (o *Opened) vertices(b *sheet.Built, cam string) []planar.Vec {
	by := measurements(b)
	var out []planar.Vec
	for _, number := range o.Document.Keys("cams." + cam + ".traced") {
		path := o.vertexPath(cam, number)
		out = append(out, planar.Vec{X: by[path("x")].Value, Y: by[path("y")].Value})
	}
	return out
}

// vertexPath returns the way to a coordinate of a traced point.
func (o *Opened) vertexPath(cam, number string) func(axis string) string {
	return func(axis string) string { return o.placePath("cams."+cam+".traced."+number, axis) }
}
