package mechanism

import (
	"math"
	"math/rand/v2"
	"slices"

	"steelyard/planar"
)

// This file moves, mirrors and shakes whole descriptions, for the properties
// that must survive it.

// onPoints applies f to every point of the description and returns the result.
func onPoints(m Machine, f func(vec) vec) Machine {
	m = clone(m)
	m.Chains = slices.Clone(m.Chains)
	for i := range m.Links {
		m.Links[i].Center = f(m.Links[i].Center)
	}
	for i := range m.Joints {
		m.Joints[i].At = f(m.Joints[i].At)
	}
	for i := range m.Weights {
		m.Weights[i].At = f(m.Weights[i].At)
	}
	for i := range m.Chains {
		m.Chains[i].At = f(m.Chains[i].At)
	}
	for _, route := range routes(&m) {
		for k := range route {
			route[k].At = f(route[k].At)
		}
	}
	m.Contact.At = f(m.Contact.At)
	return m
}

// routes returns every route of the machine, its own to change.
func routes(m *Machine) []Route {
	var list []Route
	for i := range m.Ropes {
		m.Ropes[i].Route = slices.Clone(m.Ropes[i].Route)
		list = append(list, m.Ropes[i].Route)
	}
	for i := range m.Elements {
		m.Elements[i].Route = slices.Clone(m.Elements[i].Route)
		list = append(list, m.Elements[i].Route)
	}
	return list
}

// shifted is the machine moved by d.
func shifted(m Machine, d vec) Machine {
	m = onPoints(m, d.Add)
	for i := range m.Chains {
		m.Chains[i].Floor += d.Y
	}
	return m
}

// turned is a machine without outlines or chains turned about the origin.
func turned(m Machine, by planar.Angle) Machine {
	m = onPoints(m, planar.TurnThenShift(by, vec{}).Point)
	for i := range m.Joints {
		m.Joints[i].Along += by
	}
	return m
}

// mirrorImage is an outline reflected in its own y axis.
type mirrorImage struct{ planar.Outline }

func (o mirrorImage) Support(phi planar.Angle) (h, dh float64) {
	h, dh = o.Outline.Support(math.Pi - phi)
	return h, -dh
}

func (o mirrorImage) Length(phi planar.Angle) float64 {
	return o.Outline.Length(math.Pi) - o.Outline.Length(math.Pi-phi)
}

// mirrored is the machine reflected in the y axis: what turned one way turns
// the other.
func mirrored(m Machine) Machine {
	m = onPoints(m, func(p vec) vec { return vec{X: -p.X, Y: p.Y} })
	for i := range m.Joints {
		m.Joints[i].Along = math.Pi - m.Joints[i].Along
	}
	for _, route := range routes(&m) {
		for k := range route {
			s := &route[k]
			s.Side, s.Anchor = -s.Side, math.Pi-s.Anchor
			if s.Outline != nil {
				s.Outline = mirrorImage{s.Outline}
			}
		}
	}
	for i := range m.Elements {
		if len(m.Elements[i].Route) > 0 {
			continue
		}
		switch l := m.Elements[i].Law.(type) {
		case Spring:
			m.Elements[i].Law = Spring{Rate: l.Rate, Free: -l.Free, Preload: -l.Preload}
		case Steady:
			m.Elements[i].Law = Steady{-l.Force}
		}
	}
	if m.Joints[m.Drive.Joint].Kind == Revolute {
		m.Drive.From, m.Drive.To = -m.Drive.From, -m.Drive.To
	}
	return m
}

// rewritten is the same machine with its links numbered backwards and every
// joint but the driven one named from its other link.
func rewritten(m Machine) Machine {
	m = clone(m)
	n := LinkID(len(m.Links))
	other := func(l LinkID) LinkID {
		if l == Ground {
			return Ground
		}
		return n + 1 - l
	}
	slices.Reverse(m.Links)
	for i := range m.Joints {
		j := &m.Joints[i]
		j.A, j.B = other(j.A), other(j.B)
		if i != m.Drive.Joint {
			j.A, j.B = j.B, j.A
		}
	}
	for i := range m.Weights {
		m.Weights[i].Link = other(m.Weights[i].Link)
	}
	for i := range m.Chains {
		m.Chains[i].Link = other(m.Chains[i].Link)
	}
	for _, route := range routes(&m) {
		for k := range route {
			route[k].Link = other(route[k].Link)
		}
	}
	for i := range m.Elements {
		e := &m.Elements[i]
		if len(e.Route) > 0 || e.Joint == m.Drive.Joint {
			continue
		}
		switch l := e.Law.(type) { // about a joint now named from its other link
		case Spring:
			e.Law = Spring{Rate: l.Rate, Free: -l.Free, Preload: -l.Preload}
		case Steady:
			e.Law = Steady{-l.Force}
		}
	}
	m.Contact.Link = other(m.Contact.Link)
	return m
}

// shaken is a machine of one of the families with every measured number moved
// at random. Whatever the points, they are one assembled pose.
func shaken(r *rand.Rand, c classic) Machine {
	noise := func(size float64) float64 { return size * (2*r.Float64() - 1) }
	m := onPoints(c.m, func(p vec) vec { return p.Add(vec{X: noise(0.05), Y: noise(0.05)}) })
	for i := range m.Links {
		m.Links[i].Mass += 3 * r.Float64()
		m.Links[i].Inertia += 0.1 * r.Float64()
	}
	for i := range m.Weights {
		m.Weights[i].Mass *= 0.5 + r.Float64()
	}
	for i := range m.Joints {
		m.Joints[i].Along += planar.Angle(noise(0.1))
	}
	for _, route := range routes(&m) {
		for k := range route {
			if o, ok := route[k].Outline.(planar.Circle); ok {
				o.Radius *= 1 + noise(0.1)
				route[k].Outline = o
			}
		}
	}
	m.Drive.From, m.Drive.To = m.Drive.From*(0.5+0.4*r.Float64()), m.Drive.To*(0.5+0.4*r.Float64())
	return m
}
