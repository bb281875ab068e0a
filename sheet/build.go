package sheet

import (
	"math"
	"strings"

	"steelyard/mechanism"
	"steelyard/planar"
)

const quarterTurn = math.Pi / 2

// values are the numbers of a plan, in SI.
type values []float64

// at returns a number, 0 if it was not given.
func (v values) at(n num) float64 {
	if n == none {
		return 0
	}
	return v[n]
}

func (v values) angle(n num) planar.Angle { return planar.Angle(v.at(n)) }

func (p *plan) nominal() values {
	v := make(values, len(p.numbers))
	for i := range p.numbers {
		v[i] = p.numbers[i].Value
	}
	return v
}

// machine does the arithmetic from numbers to a machine.
func (p *plan) machine(v values) (mechanism.Machine, error) {
	at := p.places(v)
	m := mechanism.Machine{Name: p.name, Plane: mechanism.Plane{Tilt: v.angle(p.plane.tilt), Offset: v.at(p.plane.offset), Mirrored: p.plane.mirrored}}
	m.Links = p.buildLinks(v, at)
	m.Joints = p.buildJoints(v, at, m.Links)
	outlines, err := p.buildOutlines(v)
	if err != nil {
		return m, err
	}
	for i := range p.ropes {
		m.Ropes = append(m.Ropes, mechanism.Rope{Name: p.ropes[i].name, Route: p.buildRoute(p.ropes[i].route, v, at, outlines)})
	}
	for i := range p.elements {
		e := &p.elements[i]
		m.Elements = append(m.Elements, mechanism.Element{Name: e.name, Route: p.buildRoute(e.route, v, at, outlines), Joint: max(0, int(e.joint)), Law: e.law(v)})
	}
	p.buildLoads(&m, v, at)
	m.Drive = mechanism.Drive{Joint: int(p.drive.joint), From: v.at(p.drive.from), To: v.at(p.drive.to)}
	m.Contact = mechanism.Contact{Name: p.contact.name, Link: p.contact.link, At: at[p.contact.point]}
	return m, nil
}

// places returns where the points are, once settings have moved them.
func (p *plan) places(v values) []planar.Vec {
	at := make([]planar.Vec, len(p.points))
	for i := range p.points {
		at[i] = planar.Vec{X: v.at(p.points[i].x), Y: v.at(p.points[i].y)}
	}
	for i := range p.moves {
		mv := &p.moves[i]
		motion := planar.TurnThenShift(0, planar.Vec{})
		if mv.about != nowhere {
			motion = planar.TurnAbout(at[mv.about], v.angle(mv.amount))
		} else {
			motion.Shift = planar.Polar(v.at(mv.amount), mv.along.in(v, at))
		}
		for _, id := range mv.points {
			at[id] = motion.Point(at[id])
		}
	}
	for i := range p.points {
		if c := p.points[i].circle; p.points[i].round {
			at[i] = circleThrough(at[c[0]], at[c[1]], at[c[2]])
		}
	}
	return at
}

func (d direction) in(v values, at []planar.Vec) planar.Angle {
	switch {
	case d.from != nowhere:
		return at[d.to].Sub(at[d.from]).Angle()
	case d.angle != none:
		return v.angle(d.angle)
	}
	return planar.Angle(d.fixed)
}

// circleThrough returns the centre of the circle through three points: with a
// and b taken from c, it lies at (|a|² b⊥ - |b|² a⊥) / 2(b × a) from there.
// For points in line it lies at infinity.
func circleThrough(c, p, q planar.Vec) planar.Vec {
	a, b := p.Sub(c), q.Sub(c)
	w := b.Perp().Scale(a.Dot(a)).Sub(a.Perp().Scale(b.Dot(b)))
	return c.Add(w.Scale(1 / (2 * b.Cross(a))))
}

func (p *plan) buildLinks(v values, at []planar.Vec) []mechanism.Link {
	links := make([]mechanism.Link, len(p.links)-1)
	for i := range links {
		l := &p.links[i+1]
		out := mechanism.Link{Name: l.name, Mass: v.at(l.mass), Inertia: v.at(l.inertia), Upright: l.upright, Path: l.path}
		var span float64
		if len(l.points) > 0 {
			a, b := at[l.ends[0]], at[l.ends[1]]
			out.Center, span = a.Lerp(b, 0.5), b.Sub(a).Norm()
		}
		if l.center != nowhere {
			out.Center = at[l.center]
		}
		if l.inertia == none {
			out.Inertia = out.Mass * span * span / 12 // uniform bar
		}
		links[i] = out
	}
	return links
}

func (p *plan) buildJoints(v values, at []planar.Vec, links []mechanism.Link) []mechanism.Joint {
	joints := make([]mechanism.Joint, len(p.joints))
	for i := range joints {
		j := &p.joints[i]
		out := mechanism.Joint{Name: j.name, Kind: j.kind, A: j.a, B: j.b, Along: j.along.in(v, at), Friction: mechanism.JointFriction{
			Coefficient: v.at(j.grip.coefficient), Radius: v.at(j.grip.diameter) / 2, Bearing: v.at(j.grip.bearing), Drag: v.at(j.grip.drag)}}
		switch {
		case j.point != nowhere:
			out.At = at[j.point]
		case j.along.from != nowhere:
			foot, u := at[j.along.from], planar.Polar(1, out.Along)
			out.At = foot.Add(u.Scale(links[j.b-1].Center.Sub(foot).Dot(u)))
		default:
			out.At = links[j.b-1].Center
		}
		joints[i] = out
	}
	return joints
}

func (p *plan) buildOutlines(v values) ([]planar.Outline, error) {
	outlines := make([]planar.Outline, len(p.outlines))
	for i := range p.outlines {
		o, err := p.outlines[i].shape.outline(v, v.angle(p.outlines[i].start))
		if err != nil {
			return nil, &outlineError{&p.outlines[i], err}
		}
		outlines[i] = o
	}
	return outlines, nil
}

// outlineError says which sheave or cam has no usable outline.
type outlineError struct {
	of  *outline
	err error
}

func (e *outlineError) Error() string { return e.of.name + ": " + e.err.Error() }

// sentence splits a message of package planar into what is wrong and a cure.
func (e *outlineError) sentence() (limit, cure string) {
	text := strings.TrimPrefix(e.err.Error(), "planar: ")
	limit, cure, ok := strings.Cut(text, "; ")
	if !ok {
		cure = "measure it again"
	}
	return limit, cure
}

func (p *plan) buildRoute(route []station, v values, at []planar.Vec, outlines []planar.Outline) mechanism.Route {
	if len(route) == 0 {
		return nil
	}
	out := make(mechanism.Route, len(route))
	for i := range route {
		s := &route[i]
		t := mechanism.Station{Name: s.name, Link: s.link, At: at[s.point], Turns: s.turns}
		if s.outline != noOutline {
			o := &p.outlines[s.outline]
			t.Outline, t.Side = outlines[s.outline], s.side
			if s.tiedAt != nowhere {
				t.Anchor = normalTowards(t.Outline, at[s.tiedAt].Sub(t.At).Angle())
			} else if s.tied != none {
				t.Anchor = normalTowards(t.Outline, v.angle(s.tied)+v.angle(o.start))
			}
			if s.loss.bearing != none {
				t.Loss.AxleOverRim = v.at(s.loss.axle) / 2 / o.across.radiusIn(v)
			}
		}
		t.Loss.Efficiency, t.Loss.Slip, t.Loss.Bearing = v.at(s.loss.efficiency), v.at(s.loss.slip), v.at(s.loss.bearing)
		out[i] = t
	}
	return out
}

// normalTowards returns the outward normal at the place of an outline that is
// seen from its origin in direction a, within half a turn of a. It is good to
// 1e-6 rad where the origin lies inside.
//
// On the way round a convex outline the direction of the touching point grows
// with that of the normal, so their difference changes sign once: halving.
func normalTowards(o planar.Outline, a planar.Angle) planar.Angle {
	lo, hi := a-quarterTurn, a+quarterTurn
	for range 22 {
		mid := (lo + hi) / 2
		if planar.Touch(o, mid).Angle().Near(a) < a {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

func (p *plan) buildLoads(m *mechanism.Machine, v values, at []planar.Vec) {
	for i := range p.weights {
		w := &p.weights[i]
		out := mechanism.Weight{Name: w.name, Link: w.link, At: at[w.point], Mass: v.at(w.mass), Load: w.load}
		radius := v.at(w.diameter) / 2
		out.Inertia = out.Mass * radius * radius / 2 // solid disc
		m.Weights = append(m.Weights, out)
	}
	for i := range p.chains {
		c := &p.chains[i]
		m.Chains = append(m.Chains, mechanism.Chain{Name: c.name, Link: c.link, At: at[c.point], Floor: v.at(c.floor), Length: v.at(c.length), Density: v.at(c.density)})
	}
	for i := range p.wheels {
		w := &p.wheels[i]
		out := mechanism.Flywheel{Name: w.name, Joint: int(w.joint), Inertia: v.at(w.inertia), Ratio: 1}
		if w.inertia == none {
			radius := v.at(w.diameter) / 2
			out.Inertia = v.at(w.mass) * radius * radius / 2
		}
		if w.gear != none {
			out.Ratio = v.at(w.gear)
		}
		m.Wheels = append(m.Wheels, out)
	}
}
