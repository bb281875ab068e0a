package evaluation

import (
	"steelyard/mechanism"
	"steelyard/profile"
)

// Curve returns the resistance curve of a sweep, and for each of its positions
// the row of the sweep it comes from. Rows that the machine cannot reach, or in
// which the contact stands still, have no place on the travel and are left out.
func Curve(sw *mechanism.Sweep) (profile.Curve, []int) {
	var c profile.Curve
	var rows []int
	gaps := false
	origin, load := 0.0, 0.0
	for i := range sw.Driver {
		if !sw.Posed[i] {
			continue
		}
		if len(rows) == 0 {
			origin, load = sw.Travel[i], sw.LoadTravel[i]
		}
		s := sw.Travel[i] - origin
		if n := len(c.Travel); n > 0 && s <= c.Travel[n-1] {
			continue
		}
		rows = append(rows, i)
		c.Travel = append(c.Travel, s)
		c.Hold, c.Lift, c.Lower = append(c.Hold, sw.Hold[i]), append(c.Lift, sw.Lift[i]), append(c.Lower, sw.Lower[i])
		c.Load = append(c.Load, sw.LoadTravel[i]-load)
		reason := reasonFor(sw.Stops[i])
		gaps = gaps || reason != profile.None
		c.Gap = append(c.Gap, reason)
	}
	if !gaps {
		c.Gap = nil
	}
	if len(c.Load) > 0 && c.Load[len(c.Load)-1] == 0 {
		c.Load = nil // nothing counts as the load
	}
	return c, rows
}

// reasonFor returns the profile's word for why there is no force.
func reasonFor(stop *mechanism.Stop) profile.Reason {
	if stop == nil {
		return profile.None
	}
	switch stop.Kind {
	case mechanism.DeadPoint, mechanism.Binds:
		return profile.DeadPoint
	case mechanism.RopeSlack, mechanism.RopeOff:
		return profile.Slack
	}
	return profile.OutOfReach
}
