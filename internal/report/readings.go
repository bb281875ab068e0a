package report

import (
	"steelyard/evaluation"
	"steelyard/internal/draw"
	"steelyard/profile"
)

// shown is which readings the table holds, in the order of interest.
var shown = []struct {
	reading profile.Reading
	place   profile.Reading // share of the travel at which it is read; Length for none
}{
	{profile.PeakForce, profile.PeakShare},
	{profile.LeastForce, profile.LeastShare},
	{profile.StartForce, profile.Length},
	{profile.EndForce, profile.Length},
	{profile.PeakToStart, profile.Length},
	{profile.Mean, profile.Length},
	{profile.MeanByWork, profile.Length},
	{profile.LengthenedMean, profile.Length},
	{profile.MiddleMean, profile.Length},
	{profile.ShortenedMean, profile.Length},
	{profile.LengthenedShare, profile.Length},
	{profile.MiddleShare, profile.Length},
	{profile.ShortenedShare, profile.Length},
	{profile.Flatness, profile.Length},
	{profile.LiftRatio, profile.Length},
	{profile.Length, profile.Length},
	{profile.WorkUp, profile.Length},
	{profile.WorkDown, profile.Length},
	{profile.Lost, profile.Length},
}

// readingsTable tells what is read from the lifting curve, and from the
// lowering curve where friction makes it another.
func readingsTable(e *evaluation.Evaluation, u units) draw.Table {
	t := draw.Table{Columns: []draw.Column{{Title: "Reading"}, {Title: "Lifting", Align: draw.Right}, {Title: "may lie between", Align: draw.Right}, {Title: "Lowering", Align: draw.Right}}}
	lift, lower := &e.Readings[profile.Lifting], &e.Readings[profile.Lowering]
	for _, s := range shown {
		if s.reading == profile.LiftRatio && lift.LiftRatio == 0 {
			continue
		}
		row := []string{s.reading.String(), at(lift, s.reading, s.place, u), "", ""}
		if e.Band != nil {
			in := e.Band.Reading(s.reading)
			row[2] = write(in.Low, s.reading, u) + " – " + write(in.High, s.reading, u)
		}
		if e.Rubs() && s.reading < profile.LiftRatio && s.reading != profile.Length {
			row[3] = at(lower, s.reading, s.place, u)
		}
		t.Rows = append(t.Rows, row)
	}
	return withoutEmpty(t)
}

// at writes a reading and, if it has one, its place on the travel.
func at(r *profile.Readings, q, place profile.Reading, u units) string {
	s := write(r.Value(q), q, u)
	if place != profile.Length {
		s += " at " + percent(r.Value(place))
	}
	return s
}

// write writes a value of the reading in the reader's units.
func write(x float64, q profile.Reading, u units) string {
	switch q.Unit() {
	case "N":
		return u.Force(x)
	case "J":
		return u.Work(x)
	case "m":
		return u.Length(x)
	}
	switch q {
	case profile.LengthenedShare, profile.MiddleShare, profile.ShortenedShare:
		return percent(x)
	}
	return decimal(x, 2)
}
