package sheet

import (
	"fmt"
	"math"

	"steelyard/planar"
)

// form is the shape of an outline about its axis.
type form interface {
	// outline returns the shape turned by start about the axis.
	outline(v values, start planar.Angle) (planar.Outline, error)
}

// across is the size of something round, as diameter or as radius.
type across struct{ diameter, radius num }

func (a across) radiusIn(v values) float64 {
	if a.radius != none {
		return v.at(a.radius)
	}
	return v.at(a.diameter) / 2
}

// across reads the diameter or the radius of something round.
func (f *fields) across(cure string) across {
	f.onlyOne("diameter", "radius")
	a := across{f.number("diameter", size), f.number("radius", size)}
	if !f.has("diameter") && !f.has("radius") {
		f.r.fault(f.node, fmt.Sprintf("%s has no diameter", f), "its size is needed", cure)
	}
	return a
}

// center is where the middle of a form lies from the axis.
type center struct{ x, y num }

var noCenter = center{none, none}

func (f *fields) center() center {
	n := f.take("centre")
	if n == nil {
		return noCenter
	}
	x, y, _ := f.r.pair(n, f.label("centre"), fmt.Sprintf("centre of %s", f))
	return center{x, y}
}

func (c center) in(v values, start planar.Angle) planar.Vec {
	return planar.TurnThenShift(start, planar.Vec{}).Point(planar.Vec{X: v.at(c.x), Y: v.at(c.y)})
}

// shape reads the outline of a cam, one of four.
func (f *fields) shape() form {
	names := []string{"circle", "ellipse", "spiral", "traced"}
	f.onlyOne(names...)
	var shape form
	for _, name := range names {
		n := f.take(name)
		switch {
		case n == nil || shape != nil:
		case name == "traced":
			shape = f.r.traced(n, f.name, fmt.Sprintf("the traced outline of %s", f), f.take("corners"))
		default:
			shape = f.r.curve(n, name, f.name)
		}
	}
	f.take("corners")
	if shape == nil {
		f.r.fault(f.node, fmt.Sprintf("%s has no outline", f), "it is one of "+orList(names), "trace it round with a pencil and write traced: [[x, y], …] from its axis")
		shape = circle{across: across{none, none}, center: noCenter}
	}
	return shape
}

func (r *reader) curve(n *node, name, label string) form {
	f := r.fields(n, name, label)
	defer f.close()
	switch name {
	case "ellipse":
		return ellipse{f.mustNumber("length", size, "measure it across the long way"), f.mustNumber("width", size, "measure it across the short way"),
			f.number("lean", angle), f.center()}
	case "spiral":
		s := spiral{from: f.mustNumber("start radius", size, "measure from the centre to where the spiral starts"),
			to:    f.mustNumber("end radius", size, "measure from the centre to where the spiral ends"),
			begin: f.number("start at", angle),
			sweep: f.mustNumber("sweep", angle, "say through how many degrees it runs, counter-clockwise"), center: f.center()}
		s.ratio = f.choice("grows", "evenly", "in proportion") == "in proportion"
		return newCached(s, s.from, s.to, s.begin, s.sweep, s.center.x, s.center.y)
	}
	return circle{f.across("measure across it"), f.center()}
}

// circle is a round form, centred or not.
type circle struct {
	across across
	center center
}

func (c circle) outline(v values, start planar.Angle) (planar.Outline, error) {
	return planar.Circle{Center: c.center.in(v, start), Radius: c.across.radiusIn(v)}, nil
}

// ellipse is an oval; lean is the direction of its length from forward.
type ellipse struct {
	length, width, lean num
	center              center
}

func (e ellipse) outline(v values, start planar.Angle) (planar.Outline, error) {
	return planar.EllipseFromAxes(e.center.in(v, start), v.at(e.length)/2, v.at(e.width)/2, v.angle(e.lean)+start)
}

// spiral is an arc of a spiral from one radius to another, closed by a straight.
type spiral struct {
	from, to, begin, sweep num
	center                 center
	ratio                  bool // grows by the same ratio with every degree
}

func (s spiral) outline(v values, start planar.Angle) (planar.Outline, error) {
	sweep := v.at(s.sweep)
	arc := planar.Spiral{Pole: s.center.in(v, start), Tilt: v.angle(s.begin) + start, Radius: v.at(s.from), To: planar.Angle(sweep)}
	if sweep != 0 && s.ratio {
		arc.Growth = math.Log(v.at(s.to)/v.at(s.from)) / sweep
		return planar.LogSpiral(arc)
	}
	if sweep != 0 {
		arc.Growth = (v.at(s.to) - v.at(s.from)) / sweep
	}
	return planar.ArithmeticSpiral(arc)
}
