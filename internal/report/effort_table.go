package report

import (
	"slices"
	"strconv"
	"strings"

	"steelyard/evaluation"
	"steelyard/exercise"
	"steelyard/internal/draw"
	"steelyard/reference"
)

// Signs beside a number of a person that is to be trusted less.
const (
	weakSign     = "~" // before a strength that rests on little
	untestedSign = "*" // after an effort beyond the angles its source tested
)

// jointTable tells what is asked of each joint where that is hardest, at rest,
// lifting. The wide one says in words what a strength rests on.
func jointTable(e *evaluation.Evaluation, u units, wide bool) draw.Table {
	m := e.Person
	t := draw.Table{Columns: []draw.Column{{Title: "Joint"}}}
	t.Columns = append(t.Columns, numeric("Effort", "Range", titled("At", u.length), "Angle (°)", titled("Asked", u.moment()), titled("Can", u.moment()), "Lower")...)
	if m.Paced != nil {
		t.Columns = append(t.Columns, numeric("Tempo")...)
	}
	if wide {
		t.Columns = append(t.Columns, draw.Column{Title: "Goes through (°)", Align: draw.Right}, draw.Column{Title: "Strength rests on"})
	}
	for k := range m.Rest.Lifting.Joints {
		c := &m.Rest.Lifting.Joints[k]
		if !idle(c) {
			t.Rows = append(t.Rows, jointRow(e, u, c, wide))
		}
	}
	return t
}

// idle reports whether a joint is left out of the table: its effort reads 0.00.
func idle(c *exercise.Column) bool {
	i, _ := c.Hardest()
	return c.Available[i] > 0 && c.Effort[i] < 0.005
}

func jointRow(e *evaluation.Evaluation, u units, c *exercise.Column, wide bool) []string {
	m := e.Person
	i, _ := c.Hardest()
	row := []string{c.Joint.String()}
	unit := u.moment()
	if c.Available[i] == 0 {
		greatest := largest(c.Moment)
		row = append(row, "no strength known", "", "", "", decimal(unit.FromSI(abs(c.Moment[greatest])), 0), "", "")
	} else {
		can := decimal(unit.FromSI(c.Available[i]), 0)
		if c.Weakest.Weak() {
			can = weakSign + can
		}
		peak := decimal(c.Effort[i], 2)
		if c.Stretched[i] {
			peak += untestedSign
		}
		row = append(row, peak, spread(decimal(c.Low[i], 2), upTo(c.High[i])), decimal(u.length.FromSI(travelAt(e, i)), 1),
			decimal(c.Angle[i].Degrees(), 0), decimal(unit.FromSI(abs(c.Moment[i])), 0), can, peakOf(m.Rest.Lowering.Column(c.Joint)))
	}
	if m.Paced != nil {
		row = append(row, peakOf(m.Paced.Lifting.Column(c.Joint)))
	}
	if wide {
		row = append(row, anglesOf(m.Rest, c), restsOn(c))
	}
	return row
}

// farTop is the effort above which only "far over" is said of a band's end.
const farTop = 10.0

func upTo(x float64) string {
	if x > farTop {
		return "over " + decimal(farTop, 0)
	}
	return decimal(x, 2)
}

func peakOf(c *exercise.Column) string {
	if c == nil || c.Available[c.Peak] == 0 {
		return ""
	}
	i, _ := c.Hardest()
	return decimal(c.Effort[i], 2)
}

// largest returns where the numbers are greatest in size.
func largest(xs []float64) int {
	best := 0
	for i, x := range xs {
		if abs(x) > abs(xs[best]) {
			best = i
		}
	}
	return best
}

func abs(x float64) float64 { return max(x, -x) }

// anglesOf writes the range of a joint's angle along the travel, in degrees.
func anglesOf(r *exercise.Result, c *exercise.Column) string {
	first := true
	var lo, hi float64
	for i, a := range c.Angle {
		if r.Gap[i] != "" {
			continue
		}
		d := a.Degrees()
		if first {
			lo, hi, first = d, d, false
		}
		lo, hi = min(lo, d), max(hi, d)
	}
	return spread(decimal(lo, 0), decimal(hi, 0))
}

// travelAt returns how far along the travel a row of the sweep is, m.
func travelAt(e *evaluation.Evaluation, row int) float64 {
	return e.Sweep.Travel[row] - e.Sweep.Travel[e.Rows[0]]
}

// restsOn says where a joint's strength comes from, weak values as weak.
func restsOn(c *exercise.Column) string {
	s := c.Source.Text
	if c.Weakest.Weak() {
		s = "weak, " + c.Weakest.String() + ": " + s
	}
	return s
}

// strengthSources says of each joint in the table what its strength rests on.
func strengthSources(e *evaluation.Evaluation) []string {
	var out []string
	for k := range e.Person.Rest.Lifting.Joints {
		if c := &e.Person.Rest.Lifting.Joints[k]; !idle(c) && c.Source.Text != "" {
			out = append(out, capitalised(c.Joint.String())+": "+restsOn(c)+".")
		}
	}
	return out
}

// effortNotes explain the signs and the gaps of the joints' table.
// With a picture, that of the outline too.
func effortNotes(e *evaluation.Evaluation, picture bool) []string {
	out := []string{"Effort is the moment asked over the moment this person can produce at that angle; 1 is all there is. About two people in three lie in the range."}
	if picture {
		out = append(out, outlineNote)
	}
	weak := map[reference.Mark][]string{}
	untested := false
	for k := range e.Person.Rest.Lifting.Joints {
		c := &e.Person.Rest.Lifting.Joints[k]
		if idle(c) {
			continue
		}
		if c.Available[c.Peak] > 0 && c.Weakest.Weak() {
			weak[c.Weakest] = append(weak[c.Weakest], c.Joint.String())
		}
		untested = untested || slices.Contains(c.Stretched, true)
	}
	for mark := reference.Measured; mark <= reference.Interpolated; mark++ {
		if names := weak[mark]; len(names) > 0 {
			out = append(out, weakSign+" Weak: "+mark.String()+" ("+strings.Join(names, "; ")+").")
		}
	}
	if untested {
		out = append(out, untestedSign+" The strength there is taken beyond the angles its source tested.")
	}
	return out
}

const outlineNote = "The green line in the picture of the load is the force at which the effort would become 1: dashed where that strength is taken beyond what was tested, dotted where it lies further out than drawn, left out where nothing known limits it."

// muscleTable tells how much each muscle group is asked while it is long, in
// the middle and short.
func muscleTable(e *evaluation.Evaluation) draw.Table {
	t := draw.Table{Columns: append(worded("Muscle"), numeric("Lengthened", "Middle", "Shortened", "Length from", "to")...)}
	for _, m := range e.Person.Rest.Thirds {
		row := []string{m.Muscle.String()}
		for _, third := range m.Thirds {
			if third.Share == 0 {
				row = append(row, "not there")
				continue
			}
			row = append(row, decimal(third.Mean, 2)+" ("+percent(third.Share)+")")
		}
		lo, hi := ends(e.Person.Rest, m.Length)
		t.Rows = append(t.Rows, append(row, percent(lo), percent(hi)))
	}
	return t
}

// ends returns the least and the greatest number outside the gaps.
func ends(r *exercise.Result, xs []float64) (lo, hi float64) {
	first := true
	for i, x := range xs {
		if r.Gap[i] != "" {
			continue
		}
		if first {
			lo, hi, first = x, x, false
		}
		lo, hi = min(lo, x), max(hi, x)
	}
	return lo, hi
}

const muscleNote = "Mean effort in each third of the muscle's own length, and the share of the travel spent there. Long and short are within this person's own range of motion: 100 % is as long as the joints let it be."

// bodyTable lists the lengths that place the limb, and how each came about.
func bodyTable(e *evaluation.Evaluation, u units) draw.Table {
	t := draw.Table{Columns: []draw.Column{{Title: "Body length"}, {Title: titled("Value", u.length), Align: draw.Right}, {Title: titled("Spread", u.length), Align: draw.Right}, {Title: "Where it comes from"}}}
	for _, d := range e.Person.Dimensions() {
		s := e.Person.Body.Size[d]
		value := decimal(u.length.FromSI(s.Value), 1)
		if s.Source.Mark.Weak() {
			value = weakSign + value
		}
		t.Rows = append(t.Rows, []string{d.String(), value, "±" + strconv.FormatFloat(u.length.FromSI(s.Spread), 'f', 1, 64), s.Origin.String()})
	}
	return t
}
