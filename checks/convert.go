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
// It returns an error for what the case cannot say: chains, flywheels,
// elements other than linear springs between two points, and ropes bent over
// points.
func CaseOf(m mechanism.Machine, shapes map[planar.Outline]Shape, n int) (Case, error) {
	if len(m.Chains) > 0 || len(m.Wheels) > 0 {
		return Case{}, fmt.Errorf("checks: %s: chains and flywheels are not in the case format", m.Name)
	}
	c := Case{
		Name:    m.Name,
		Gravity: mechanism.Gravity * m.Plane.Slope(),
		Links:   []Link{{}},
		Driver:  m.Drive.Joint,
		Contact: &Contact{Link: int(m.Contact.Link), At: pointOf(m.Contact.At)},
	}
	for _, l := range m.Links {
		c.Links = append(c.Links, Link{Mass: l.Mass, Inertia: l.Inertia, COM: pointOf(l.Center)})
	}
	for _, j := range m.Joints {
		c.Joints = append(c.Joints, jointOf(j))
	}
	for _, w := range m.Weights {
		c.Weights = append(c.Weights, Weight{Link: int(w.Link), At: pointOf(w.At), Mass: w.Mass, Inertia: w.Inertia})
	}
	for _, e := range m.Elements {
		s, err := springOf(e)
		if err != nil {
			return Case{}, fmt.Errorf("checks: %s: %w", m.Name, err)
		}
		c.Springs = append(c.Springs, s)
	}
	for _, r := range m.Ropes {
		rope, err := ropeOf(r, shapes)
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

// springOf moves the free length so that no preload is left.
func springOf(e mechanism.Element) (Spring, error) {
	law, ok := e.Law.(mechanism.Spring)
	r := e.Route
	if !ok || law.PullOnly || len(r) != 2 || r[0].Outline != nil || r[1].Outline != nil {
		return Spring{}, fmt.Errorf("element %q is no linear spring between two points", e.Name)
	}
	return Spring{
		A: int(r[0].Link), AtA: pointOf(r[0].At),
		B: int(r[1].Link), AtB: pointOf(r[1].At),
		Rate: law.Rate, Free: law.Free - law.Preload/law.Rate,
	}, nil
}

func ropeOf(r mechanism.Rope, shapes map[planar.Outline]Shape) (Rope, error) {
	out := Rope{Keep: true, Over: []Outline{}}
	last := len(r.Route) - 1
	for k, s := range r.Route {
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
