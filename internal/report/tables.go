package report

import (
	"fmt"
	"math"
	"strings"

	"steelyard/evaluation"
	"steelyard/internal/draw"
	"steelyard/profile"
	"steelyard/quantity"
	"steelyard/sheet"
)

// places is how many rows of the sweep the travel table shows, both ends
// included.
const places = 11

// travelTable tells the force along the travel, at evenly spaced places.
func travelTable(e *evaluation.Evaluation, u units) draw.Table {
	t := draw.Table{Columns: numeric(titled("Travel", u.length))}
	if e.Rubs() {
		t.Columns = append(t.Columns, numeric(titled("Lift", u.force), titled("Hold", u.force), titled("Lower", u.force))...)
	} else {
		t.Columns = append(t.Columns, numeric(titled("Force", u.force))...)
	}
	if e.Band != nil {
		t.Columns = append(t.Columns, numeric(titled("Range of lift", u.force))...)
	}
	if e.Curve.Load != nil {
		t.Columns = append(t.Columns, numeric("Lift ratio")...)
	}
	t.Columns = append(t.Columns, numeric(titled("Eff. mass", u.mass))...)
	w := travelWriter{e, u, columnPlaces(u.force, e.Curve.Lift, e.Curve.Hold), columnPlaces(u.mass, e.Sweep.Mass)}
	for i := range places {
		row := w.row(nearest(e.Curve.Travel, e.Curve.Length()*float64(i)/(places-1)))
		for len(row) < len(t.Columns) {
			row = append(row, "")
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// travelWriter writes rows with as many decimal places in each column as suit
// all of it.
type travelWriter struct {
	e                       *evaluation.Evaluation
	u                       units
	forcePlaces, massPlaces int
}

// row writes position k of the curve.
func (w *travelWriter) row(k int) []string {
	c := &w.e.Curve
	row := []string{decimal(w.u.length.FromSI(c.Travel[k]), 1)}
	forces := [][]float64{c.Lift}
	if w.e.Rubs() {
		forces = [][]float64{c.Lift, c.Hold, c.Lower}
	}
	if !c.Has(k) {
		return append(row, c.Gap[k].String())
	}
	for _, f := range forces {
		row = append(row, decimal(w.u.force.FromSI(f[k]), w.forcePlaces))
	}
	if w.e.Band != nil {
		row = append(row, between(w.e.Band.Between[k], w.u.force, w.forcePlaces))
	}
	if c.Load != nil {
		row = append(row, decimal(w.e.Sweep.LiftRatio[w.e.Rows[k]], 2))
	}
	return append(row, decimal(w.u.mass.FromSI(w.e.Sweep.Mass[w.e.Rows[k]]), w.massPlaces))
}

func between(in profile.Interval, u quantity.Unit, places int) string {
	return spread(decimal(u.FromSI(in.Low), places), decimal(u.FromSI(in.High), places))
}

// nearest returns the index of the number in xs closest to x.
func nearest(xs []float64, x float64) int {
	best := 0
	for i, v := range xs {
		if math.Abs(v-x) < math.Abs(xs[best]-x) {
			best = i
		}
	}
	return best
}

// spread writes a range, or one number if its ends read the same. A dash would
// hide a minus.
func spread(low, high string) string {
	switch {
	case low == high:
		return low
	case strings.ContainsRune(low+high, '-'):
		return low + " to " + high
	}
	return low + " – " + high
}

func numeric(titles ...string) []draw.Column {
	var out []draw.Column
	for _, t := range titles {
		out = append(out, draw.Column{Title: t, Align: draw.Right})
	}
	return out
}

func worded(titles ...string) []draw.Column {
	var out []draw.Column
	for _, t := range titles {
		out = append(out, draw.Column{Title: t})
	}
	return out
}

// settingsLine says in one line how the machine is set.
func settingsLine(e *evaluation.Evaluation, u units) string {
	var all []string
	for _, c := range e.Built.Choices {
		all = append(all, fmt.Sprintf("%s %s", c.Setting, evaluation.Beside(c.Value, u)))
	}
	if len(all) == 0 {
		return "Nothing on it can be adjusted."
	}
	return "Set to " + strings.Join(all, ", ") + "."
}

// settingsTable tells how the machine is set and how else it could be.
func settingsTable(e *evaluation.Evaluation, u units) draw.Table {
	t := draw.Table{Columns: worded("Setting", "Now", "Can be", "Notes")}
	for _, s := range e.Sheet.Settings {
		t.Rows = append(t.Rows, []string{s.Name, evaluation.Beside(chosen(e.Built, s.Name), u), allowed(s, u), s.Notes})
	}
	return withoutEmpty(t)
}

func chosen(b *sheet.Built, setting string) string {
	for _, c := range b.Choices {
		if c.Setting == setting {
			return c.Value
		}
	}
	return ""
}

func allowed(s sheet.Setting, u units) string {
	if len(s.Values) == 0 {
		return evaluation.Beside(s.From, u) + " to " + evaluation.Beside(s.To, u) + " by " + evaluation.Beside(s.Step, u)
	}
	var all []string
	for _, v := range s.Values {
		all = append(all, evaluation.Beside(v, u))
	}
	return strings.Join(all, ", ")
}

// measurementsTable lists the numbers that carry a ±.
func measurementsTable(e *evaluation.Evaluation, u units) draw.Table {
	t := draw.Table{Columns: []draw.Column{{Title: "Measured"}, {Title: "Value", Align: draw.Right}, {Title: "How"}}}
	for _, m := range e.Built.Measurements {
		if m.Spread > 0 {
			q := quantity.Quantity{Value: m.Value, Spread: m.Spread, Unit: m.Unit}
			t.Rows = append(t.Rows, []string{m.Name, q.Format(u.system), m.How})
		}
	}
	return withoutEmpty(t)
}

// takenAsExact lists the numbers without a ±, as one sentence.
func takenAsExact(e *evaluation.Evaluation, u units) string {
	var all []string
	for _, m := range e.Built.Measurements {
		if m.Spread == 0 {
			all = append(all, m.Name+" "+quantity.Quantity{Value: m.Value, Unit: m.Unit}.Format(u.system))
		}
	}
	if len(all) == 0 {
		return ""
	}
	return "Without a ±, and so taken as exact: " + strings.Join(all, "; ") + "."
}

// again says which measurement to repeat first, and for what.
func again(e *evaluation.Evaluation, u units) []string {
	if e.Band == nil {
		return []string{"No number in the sheet carries a ±. Add one to each number that was measured, and the report will say how sure it is and what to measure again first."}
	}
	var out []string
	if n, ok := e.Band.Dominant(); ok {
		out = append(out, "Measure again first: "+n.Measurement.Name+". It makes up "+percent(n.Share)+" of the variance of the force; known exactly it would narrow the band from ±"+
			u.Force(n.Half)+" to ±"+u.Force(n.Without)+".")
		if peak, ok := e.Band.DominantFor(profile.PeakForce); ok && peak.Measurement.Name != n.Measurement.Name {
			out = append(out, "For the peak alone it is "+peak.Measurement.Name+": from ±"+u.Force(peak.Half)+" to ±"+u.Force(peak.Without)+".")
		}
	}
	return out
}

// withoutEmpty leaves out the columns in which no row says anything.
func withoutEmpty(t draw.Table) draw.Table {
	var out draw.Table
	out.Rows = make([][]string, len(t.Rows))
	for c, col := range t.Columns {
		said := false
		for _, row := range t.Rows {
			said = said || strings.TrimSpace(row[c]) != ""
		}
		if !said {
			continue
		}
		out.Columns = append(out.Columns, col)
		for r, row := range t.Rows {
			out.Rows[r] = append(out.Rows[r], row[c])
		}
	}
	return out
}
