package view

import (
	"steelyard/evaluation"
	"steelyard/internal/server/api"
	"steelyard/internal/sketch"
	"steelyard/mechanism"
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

// normals returns the unit normals of the contact's path on the side where the
// ribbon stands.
func normals(e *evaluation.Evaluation) []api.Place {
	sign := sketch.OuterSide(e)
	out := make([]api.Place, len(e.Rows))
	for k, row := range e.Rows {
		out[k] = unit(e.Sweep.Tangent[row].Perp().Scale(sign))
	}
	return out
}

// stroke returns a repetition in columns; nil if there is none.
func stroke(s *mechanism.Stroke) *api.Stroke {
	if s == nil {
		return nil
	}
	return &api.Stroke{Time: each(s.Time, func(t float64) float64 { return round(t, 4) }), Travel: each(s.Travel, metres),
		Force: each(s.Force, newtons), Still: each(s.Static, newtons), Leaves: s.Leaves, Slack: s.Slack, Peak: s.Peak, Dip: s.Dip}
}
