package mechanism

import (
	"fmt"

	"steelyard/planar"
)

func checkRoutes(m *Machine) error {
	for i := range m.Ropes {
		r := &m.Ropes[i]
		part := fmt.Sprintf("rope %q", r.Name)
		if err := checkRoute(m, part, r.Route); err != nil {
			return err
		}
		if r.onOneLink() {
			return &PartError{part, "nothing moves along it, both ends and all between are on the same link", "tie it to the link that it should pull"}
		}
	}
	return nil
}

func (r *Rope) onOneLink() bool {
	for _, s := range r.Route {
		if s.Link != r.Route[0].Link {
			return false
		}
	}
	return true
}

func checkRoute(m *Machine, part string, route Route) error {
	if len(route) < 2 {
		return &PartError{part, fmt.Sprintf("it has %d ends", len(route)), "say from where to where it runs"}
	}
	for i := range route {
		if err := checkStation(m, part, &route[i]); err != nil {
			return err
		}
	}
	return nil
}

// mostTurns bounds what winds on a drum; a strap machine has fewer than ten.
const mostTurns = 50

func checkStation(m *Machine, part string, s *Station) error {
	if !m.has(s.Link) {
		return &PartError{part, fmt.Sprintf("%q is on a link that is not there", s.Name), "use the links of this machine"}
	}
	if s.Outline != nil && s.Side != planar.Left && s.Side != planar.Right {
		return &PartError{part, fmt.Sprintf("it does not say on which side %q lies", s.Name), "say left or right, seen along the rope"}
	}
	if c, ok := s.Outline.(planar.Circle); ok { // other outlines are checked where they are made
		if !(c.Radius > 0 && c.Radius <= farthest) {
			return &PartError{part, fmt.Sprintf("%q has a radius of %g m, outside 0 to %g m", s.Name, c.Radius, farthest), "check the number and its unit"}
		}
		if err := checkPoint(part, fmt.Sprintf("%q, its centre", s.Name), c.Center); err != nil {
			return err
		}
	}
	return first(
		checkPoint(part, s.Name, s.At),
		checkRange(part, "anchor on "+s.Name, float64(s.Anchor), -1e3, 1e3, "rad"),
		checkRange(part, "number of whole turns on "+s.Name, float64(s.Turns), 0, mostTurns, ""),
		checkLoss(part, s.Name, s.Loss),
	)
}

func checkLoss(part, station string, l RopeLoss) error {
	given := 0
	for _, v := range []float64{l.Efficiency, l.Slip, l.Bearing} {
		if v != 0 {
			given++
		}
	}
	if given > 1 {
		return &PartError{part, fmt.Sprintf("%q loses in %d ways at once", station, given), "give one of efficiency, slip over a fixed post, or bearing friction"}
	}
	if l.Bearing != 0 && l.AxleOverRim == 0 {
		return &PartError{part, fmt.Sprintf("%q has bearing friction but its axle over rim is 0", station), "give the bearing's radius over the sheave's"}
	}
	return first(
		checkRange(part, "efficiency", l.Efficiency, 0, 1, ""),
		checkRange(part, "slip coefficient", l.Slip, 0, 2, ""),
		checkRange(part, "bearing coefficient", l.Bearing, 0, 1, ""),
		checkRange(part, "axle over rim", l.AxleOverRim, 0, 0.95, ""),
	)
}
