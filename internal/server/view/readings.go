package view

import (
	"steelyard/evaluation"
	"steelyard/internal/server/api"
	"steelyard/profile"
)

func readings(e *evaluation.Evaluation) []api.Readings {
	out := []api.Readings{}
	for _, p := range []profile.Phase{profile.Holding, profile.Lifting, profile.Lowering} {
		out = append(out, reading(e.Readings[p]))
	}
	return out
}

func reading(r profile.Readings) api.Readings {
	out := api.Readings{Phase: phases[r.Phase], Loads: r.Loads.String(), Length: metres(r.Length), Covered: share(r.Covered),
		Start: mark(r.Start), End: mark(r.End), Peak: mark(r.Peak), Least: mark(r.Least), Mean: newtons(r.Mean),
		Flatness: share(r.Flatness), PeakToStart: share(r.PeakToStart), LiftRatio: share(r.LiftRatio),
		WorkUp: newtons(r.WorkUp), WorkDown: newtons(r.WorkDown), Lost: newtons(r.Lost)}
	for i, t := range r.Thirds {
		out.Thirds[i] = api.Third{Mean: newtons(t.Mean), Share: share(t.Share), Covered: share(t.Covered)}
	}
	return out
}

func mark(p profile.Point) api.Mark {
	return api.Mark{Share: share(p.Share), Travel: metres(p.Travel), Force: newtons(p.Force)}
}
