package view

import (
	"math"

	"steelyard/evaluation"
	"steelyard/internal/server/api"
	"steelyard/mechanism"
	"steelyard/planar"
)

// curve returns the columns over the travel.
func curve(e *evaluation.Evaluation) api.Curve {
	sw, n := e.Sweep, len(e.Rows)
	c := api.Curve{DriverUnit: "rad", Travel: each(e.Curve.Travel, metres), Rubs: e.Rubs(),
		Driver: make([]float64, n), LoadTravel: make([]float64, n), Contact: make([]api.Place, n), Gap: make([]*string, n),
		Hold: make([]*float64, n), Lift: make([]*float64, n), Lower: make([]*float64, n), LiftRatio: make([]*float64, n), Mass: make([]*float64, n)}
	m := e.Model.Machine()
	if m.Joints[m.Drive.Joint].Kind == mechanism.Prismatic {
		c.DriverUnit = "m"
	}
	c.Normal = normals(e)
	for k, i := range e.Rows {
		has := e.Curve.Has(k)
		c.Driver[k], c.Contact[k] = sw.Driver[i], place(sw.Contact[i])
		c.LoadTravel[k] = metres(sw.LoadTravel[i] - sw.LoadTravel[e.Rows[0]])
		c.Hold[k], c.Lift[k], c.Lower[k] = known(has, newtons(sw.Hold[i])), known(has, newtons(sw.Lift[i])), known(has, newtons(sw.Lower[i]))
		c.LiftRatio[k], c.Mass[k] = known(has, share(sw.LiftRatio[i])), known(has, newtons(sw.Mass[i]))
		if stop := sw.Stops[i]; stop != nil {
			text := stop.Error()
			c.Gap[k] = &text
		}
	}
	return c
}

// straightTurn is the turn of the path below which it counts as straight.
const straightTurn = 5 * planar.Degree

// normals returns the unit normals of the contact's path on the side where the
// ribbon stands: on the outer side of a bent path, where it cannot fold; on a
// straight one on the side away from the machine.
func normals(e *evaluation.Evaluation) []api.Place {
	sign := outerSide(e)
	out := make([]api.Place, len(e.Rows))
	for k, row := range e.Rows {
		out[k] = unit(e.Sweep.Tangent[row].Perp().Scale(sign))
	}
	return out
}

// outerSide returns +1 if the outer side lies left of the way, else -1.
func outerSide(e *evaluation.Evaluation) float64 {
	turn := planar.Angle(0)
	for k := 1; k < len(e.Rows); k++ {
		turn += (e.Sweep.Tangent[e.Rows[k]].Angle() - e.Sweep.Tangent[e.Rows[k-1]].Angle()).Normalized()
	}
	if math.Abs(float64(turn)) > float64(straightTurn) {
		return math.Copysign(1, float64(-turn))
	}
	m, middle := e.Model.Machine(), e.Rows[len(e.Rows)/2]
	var sum planar.Vec
	n := 0.0
	for l := range linkCount(m) {
		for _, p := range attached(m, l) {
			sum, n = sum.Add(e.Sweep.Pose(middle, l).Point(p)), n+1
		}
	}
	away := e.Sweep.Contact[middle].Sub(sum.Scale(1 / n))
	return math.Copysign(1, e.Sweep.Tangent[middle].Cross(away))
}

// stroke returns a repetition in columns; nil if there is none.
func stroke(s *mechanism.Stroke) *api.Stroke {
	if s == nil {
		return nil
	}
	return &api.Stroke{Time: each(s.Time, func(t float64) float64 { return round(t, 4) }), Travel: each(s.Travel, metres),
		Force: each(s.Force, newtons), Still: each(s.Static, newtons), Leaves: s.Leaves, Slack: s.Slack, Peak: s.Peak, Dip: s.Dip}
}
