package reference

import (
	"math"
	"sync"
)

// MotionRow is the mean range of one joint motion in one study.
//
// Soucie et al. 2011 measured passive motion, AAOS and Boone & Azen active
// motion; the two differ by a few degrees. Most cells of Soucie for adults are
// from memory, which agreed with all ten cells that could be checked.
type MotionRow struct {
	Motion         string // such as "knee flexion"
	Sex            Sex    // Unstated: the study gives one figure for both
	AgeFrom, AgeTo float64
	Mean           float64 // rad
	CILow, CIHigh  float64 // 95 % confidence interval of the mean, rad; NaN where not given
	Source         Source
}

// RangeOfMotion returns the row for a motion that fits the person best: the
// person's sex and the nearest age group. A figure for both sexes counts as
// good as one that is mixedSexes off in age. An age of 0 means not given and is
// read as 30. It reports false for a motion the table does not have.
func RangeOfMotion(motion string, sex Sex, age float64) (MotionRow, bool) {
	if age == 0 {
		age = 30
	}
	best, least := MotionRow{}, math.Inf(1)
	for _, r := range motionRows() {
		if r.Motion != motion {
			continue
		}
		if far := distance(r, sex, age); far < least {
			best, least = r, far
		}
	}
	return best, !math.IsInf(least, 1)
}

const (
	mixedSexes = 15.0  // years, own choice
	otherSex   = 100.0 // years: only when there is nothing else
)

// distance tells in years how badly a row fits a person.
func distance(r MotionRow, sex Sex, age float64) float64 {
	years := max(0, r.AgeFrom-age, age-r.AgeTo)
	switch r.Sex {
	case sex:
		return years
	case Unstated:
		return years + mixedSexes
	}
	return years + otherSex
}

var motionRows = sync.OnceValue(func() []MotionRow {
	var out []MotionRow
	rad := func(deg float64) float64 { return deg * math.Pi / 180 }
	for _, r := range rows("ranges_of_motion.csv") {
		out = append(out, MotionRow{
			Motion: r.text("motion"), Sex: parseSex(r.text("sex")),
			AgeFrom: r.number("age_from"), AgeTo: r.number("age_to"),
			Mean: rad(r.number("mean_deg")), CILow: rad(r.numberOrNaN("ci95_low_deg")), CIHigh: rad(r.numberOrNaN("ci95_high_deg")),
			Source: r.source(),
		})
	}
	return out
})
