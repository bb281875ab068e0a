package report

import (
	"math"
	"strings"

	"steelyard/evaluation"
	"steelyard/exercise"
	"steelyard/quantity"
)

// mostCurves is how many joints have a curve of their own; the table has all.
const mostCurves = 4

// effort is one joint along the travel, by position of the curve; gaps are NaN.
type effort struct {
	name         string
	col          *exercise.Column
	travel       []float64 // in the reader's unit
	lift, lower  []float64 // moment asked over moment available, at rest
	low, high    []float64 // of lifting: somebody stronger, somebody weaker
	paced        []float64 // lifting at the tempo; nil without one
	from, beyond []float64 // band where the strength is taken beyond what was tested; NaN elsewhere
	untested     bool      // it is somewhere
	peak         float64   // greatest effort of lifting among strengths that are no guess
	guessed      bool      // all of them are guesses
}

// effortsOf returns the joints that work, the hardest asked first.
func effortsOf(e *evaluation.Evaluation, u units) []effort {
	m := e.Person
	cols := m.Working()
	var out []effort
	for _, c := range cols[:min(len(cols), mostCurves)] {
		f := effort{name: c.Joint.String(), col: c, travel: every(e.Curve.Travel, u.length)}
		f.lift, f.low, f.high = along(e, m.Rest, c.Effort), along(e, m.Rest, c.Low), along(e, m.Rest, c.High)
		if lower := m.Rest.Lowering.Column(c.Joint); lower != nil {
			f.lower = along(e, m.Rest, lower.Effort)
		}
		if m.Paced != nil {
			if paced := m.Paced.Lifting.Column(c.Joint); paced != nil {
				f.paced = along(e, m.Paced, paced.Effort)
			}
		}
		f.markUntested(e)
		i, known := c.Hardest()
		f.peak, f.guessed = c.Effort[i], !known
		out = append(out, f)
	}
	return out
}

// markUntested keeps the band of the positions beyond what was tested, each
// with a neighbour so that there is something to fill.
func (f *effort) markUntested(e *evaluation.Evaluation) {
	f.from, f.beyond = nans(len(e.Rows)), nans(len(e.Rows))
	for k, row := range e.Rows {
		if f.col.Stretched[row] && !math.IsNaN(f.lift[k]) {
			f.untested = true
			f.from[k], f.beyond[k] = f.low[k], f.high[k]
		}
	}
}

// along takes a column of a result to the positions of the curve.
func along(e *evaluation.Evaluation, r *exercise.Result, column []float64) []float64 {
	out := nans(len(e.Rows))
	for k, row := range e.Rows {
		if r.Gap[row] == "" {
			out[k] = column[row]
		}
	}
	return out
}

func nans(n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = math.NaN()
	}
	return out
}

// Bounds of the effort axis: it always holds 1, and a band that runs away does
// not squash the curve.
const (
	leastTop  = 1.2
	bandShare = 1.6 // of the greatest effort
	mostTop   = 5.0
)

// effortTop returns where the effort axis of all joints ends: guesses may run
// off it.
func effortTop(all []effort) float64 {
	peak := 0.0
	for i := range all {
		peak = max(peak, all[i].peak)
	}
	return min(mostTop, max(leastTop, bandShare*peak))
}

// title names a joint with its peak.
func (f *effort) title() string {
	s := capitalised(f.name) + ": " + decimal(f.peak, 2) + " at the most"
	if f.guessed {
		s += ", a guess"
	}
	return s
}

func capitalised(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// moment is the unit of joint moments.
func (u units) moment() quantity.Unit {
	if u.system == quantity.Imperial {
		return quantity.PoundForceFoot
	}
	return quantity.NewtonMetre
}
