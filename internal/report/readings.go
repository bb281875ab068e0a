package report

import (
	"steelyard/evaluation"
	"steelyard/internal/draw"
	"steelyard/profile"
)

// shown is which readings the table holds, in the order of interest.
var shown = []profile.Reading{
	profile.PeakForce, profile.PeakShare, profile.LeastForce, profile.LeastShare,
	profile.StartForce, profile.EndForce, profile.PeakToStart,
	profile.Mean, profile.MeanByWork,
	profile.LengthenedMean, profile.MiddleMean, profile.ShortenedMean,
	profile.LengthenedShare, profile.MiddleShare, profile.ShortenedShare,
	profile.Flatness, profile.LiftRatio, profile.Length,
	profile.WorkUp, profile.WorkDown, profile.Lost,
}

// readingsTable tells what is read from the lifting curve, and from the
// lowering curve where friction makes it another.
func readingsTable(e *evaluation.Evaluation, u units) draw.Table {
	t := draw.Table{Columns: append(worded("Reading"), numeric("Lift", "Range", "Lower")...)}
	lift, lower := &e.Readings[profile.Lifting], &e.Readings[profile.Lowering]
	for _, q := range shown {
		if q == profile.LiftRatio && e.Curve.Load == nil || (q == profile.WorkDown || q == profile.Lost) && !e.Rubs() {
			continue
		}
		if k := int(q) - int(profile.LengthenedMean); k >= 0 && k < 3 && lift.Thirds[k].Covered == 0 {
			t.Rows = append(t.Rows, []string{q.String(), "no force", "", ""})
			continue
		}
		row := []string{q.String(), written(lift.Value(q), q, u), "", ""}
		if e.Band != nil {
			in := e.Band.Reading(q)
			row[2] = spread(written(in.Low, q, u), written(in.High, q, u))
		}
		if e.Rubs() && byPhase(q) {
			row[3] = written(lower.Value(q), q, u)
		}
		t.Rows = append(t.Rows, row)
	}
	return withoutEmpty(t)
}

// byPhase reports whether lifting and lowering each have such a reading.
func byPhase(q profile.Reading) bool {
	switch q {
	case profile.Length, profile.LiftRatio, profile.WorkUp, profile.WorkDown, profile.Lost:
		return false
	}
	return true
}

// written writes a value of the reading in the reader's units.
func written(x float64, q profile.Reading, u units) string {
	switch q.Unit() {
	case "N":
		return u.Force(x)
	case "J":
		return u.Work(x)
	case "m":
		return u.Length(x)
	}
	switch q {
	case profile.PeakShare, profile.LeastShare, profile.LengthenedShare, profile.MiddleShare, profile.ShortenedShare:
		return percent(x)
	}
	return decimal(x, 2)
}
