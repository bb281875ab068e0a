package checks

import (
	"fmt"

	"steelyard/mechanism"
	"steelyard/planar"
)

// Shape is an outline in the plain numbers an engine reads, about the
// outline's own origin. A round one needs none: see [CaseOf].
type Shape struct {
	Ellipse *Ellipse
	Trace   []Point
}

// CaseOf writes the machine as a neutral case, with n positions from the start
// of its travel to its end. Shapes tells the engines what outlines that are
// not circles look like, since an outline itself only tells its supports.
//
// It returns an error for what the case cannot say: flywheels, laws other than
// springs, gas springs and bands, ropes bent over points, and upright stacks
// beside a leaning plane.
func CaseOf(m mechanism.Machine, shapes map[planar.Outline]Shape, n int) (Case, error) {
	if len(m.Wheels) > 0 {
		return Case{}, fmt.Errorf("checks: %s: flywheels are not in the case format", m.Name)
	}
	c := Case{
		Name:    m.Name,
		Gravity: mechanism.Gravity * m.Plane.Slope(),
		Links:   []Link{{}},
		Driver:  m.Drive.Joint,
		Contact: &Contact{Link: int(m.Contact.Link), At: pointOf(m.Contact.At)},
	}
	for _, l := range m.Links {
		if l.Upright && m.Plane.Tilt != 0 {
			return Case{}, fmt.Errorf("checks: %s: an upright link beside a leaning plane is not in the case format", m.Name)
		}
		c.Links = append(c.Links, Link{Mass: l.Mass, Inertia: l.Inertia, COM: pointOf(l.Center)})
	}
	for _, j := range m.Joints {
		c.Joints = append(c.Joints, jointOf(j))
	}
	for _, w := range m.Weights {
		c.Weights = append(c.Weights, Weight{Link: int(w.Link), At: pointOf(w.At), Mass: w.Mass, Inertia: w.Inertia})
	}
	for _, e := range m.Elements {
		if err := c.addElement(e, shapes); err != nil {
			return Case{}, fmt.Errorf("checks: %s: element %q: %w", m.Name, e.Name, err)
		}
	}
	for _, h := range m.Chains {
		c.Chains = append(c.Chains, Chain{int(h.Link), pointOf(h.At), h.Floor, h.Length, h.Density})
	}
	for _, r := range m.Ropes {
		rope, err := routeOf(r.Route, shapes)
		rope.Keep = true
		if err != nil {
			return Case{}, fmt.Errorf("checks: %s: rope %q: %w", m.Name, r.Name, err)
		}
		c.Ropes = append(c.Ropes, rope)
	}
	for i := range n {
		t := float64(i) / float64(n-1)
		c.At = append(c.At, m.Drive.From*(1-t)+m.Drive.To*t)
	}
	return c, nil
}

func pointOf(v planar.Vec) Point { return Point{v.X, v.Y} }

func jointOf(j mechanism.Joint) Joint {
	out := Joint{Kind: Pin, A: int(j.A), B: int(j.B), At: pointOf(j.At)}
	if j.Kind == mechanism.Prismatic {
		out.Kind, out.Axis = Slide, pointOf(planar.Polar(1, j.Along))
	}
	return out
}

// addElement adds a linear spring between two points as such, which every
// engine knows, and anything else with its law.
func (c *Case) addElement(e mechanism.Element, shapes map[planar.Outline]Shape) error {
	spring, linear := e.Law.(mechanism.Spring)
	if r := e.Route; linear && !spring.PullOnly && len(r) == 2 && r[0].Outline == nil && r[1].Outline == nil {
		c.Springs = append(c.Springs, Spring{
			A: int(r[0].Link), AtA: pointOf(r[0].At),
			B: int(r[1].Link), AtB: pointOf(r[1].At),
			Rate: spring.Rate, Free: spring.Free - spring.Preload/spring.Rate, // so that no preload is left
		})
		return nil
	}
	law, err := lawOf(e.Law)
	if err != nil {
		return err
	}
	out := Element{Joint: e.Joint, Law: law}
	if len(e.Route) > 0 {
		r, err := routeOf(e.Route, shapes)
		if err != nil {
			return err
		}
		out.Route = &r
	}
	c.Elements = append(c.Elements, out)
	return nil
}

func lawOf(l mechanism.Law) (Law, error) {
	switch l := l.(type) {
	case mechanism.Spring:
		if !l.PullOnly {
			return Law{"spring", map[string]float64{"rate": l.Rate, "free": l.Free, "preload": l.Preload}}, nil
		}
	case mechanism.GasSpring:
		return Law{"gas", map[string]float64{"force": l.Force, "extended": l.Extended, "column": l.Column}}, nil
	case mechanism.Band:
		return Law{"band", map[string]float64{"free": l.Free, "area": l.Area, "shear": l.Shear}}, nil
	}
	return Law{}, fmt.Errorf("the law %T is not in the case format", l)
}

func routeOf(route mechanism.Route, shapes map[planar.Outline]Shape) (Rope, error) {
	out := Rope{Over: []Outline{}}
	last := len(route) - 1
	for k, s := range route {
		if end := k / last; k == 0 || k == last {
			out.Ends[end] = endOf(s)
		}
		if s.Outline == nil {
			if k > 0 && k < last {
				return Rope{}, fmt.Errorf("it is bent over the point %q", s.Name)
			}
			continue
		}
		o, err := outlineOf(s, shapes)
		if err != nil {
			return Rope{}, err
		}
		out.Over = append(out.Over, o)
	}
	return out, nil
}

func endOf(s mechanism.Station) End {
	if s.Outline == nil {
		return End{Link: int(s.Link), At: pointOf(s.At)}
	}
	fixed := s.At.Add(planar.Touch(s.Outline, s.Anchor))
	return End{Link: int(s.Link), At: pointOf(fixed), Wound: true}
}

func outlineOf(s mechanism.Station, shapes map[planar.Outline]Shape) (Outline, error) {
	o := Outline{Link: int(s.Link), At: pointOf(s.At), Turn: CCW}
	if s.Side == planar.Right {
		o.Turn = CW
	}
	if c, ok := s.Outline.(planar.Circle); ok {
		o.At, o.Radius = pointOf(s.At.Add(c.Center)), c.Radius
		return o, nil
	}
	shape, ok := shapes[s.Outline]
	if !ok {
		return Outline{}, fmt.Errorf("the shape of %q is not told", s.Name)
	}
	o.Ellipse, o.Trace = shape.Ellipse, shape.Trace
	return o, nil
}
