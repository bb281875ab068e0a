package report

import (
	"strings"

	"steelyard/evaluation"
)

// effortRows is the height of one joint's effort in a terminal, in lines.
const effortRows = 7

// person writes who is on the machine and how they get on: words, effort
// curves, tables.
func (t *terminal) person(e *evaluation.Evaluation, u units) {
	m := e.Person
	t.line("")
	t.heading(personTitle(m))
	t.text(exerciseLine(m))
	t.line("")
	for _, s := range m.Words() {
		t.text(s)
	}
	t.line("")
	all := effortsOf(e, u)
	for i := range all {
		t.effort(&all[i], effortTop(all), u)
	}
	if len(all) > 0 {
		t.text(effortLegend(all))
		t.line("")
	}
	t.table(jointTable(e, u, false))
	for _, s := range effortNotes(e, false) {
		t.text(s)
	}
	t.line("")
	t.table(muscleTable(e))
	t.text(muscleNote)
	t.line("")
	t.table(bodyTable(e, u))
}

// effort draws one joint's effort over the travel, with all there is as a line.
func (t *terminal) effort(f *effort, top float64, u units) {
	gutter := 3
	p := plot{newDots(min(t.columns, prose)-gutter-3, effortRows), 0, top, f.travel[len(f.travel)-1]}
	p.upright(p.length / 3)
	p.upright(p.length * 2 / 3)
	p.shade(f.travel, f.low, f.high)
	if f.lower != nil {
		p.line(f.travel, f.lower, 2, 5)
	}
	p.line(f.travel, f.lift, 1, 1)
	for x := 0; x < 2*p.columns; x += 2 {
		p.set(x, p.y(1))
	}
	t.line(f.title())
	labels := map[int]string{p.y(0) / 4: "0", p.y(1) / 4: "1"}
	t.plot(p, gutter, labels, u)
}

// effortLegend says what the lines of the effort curves mean.
func effortLegend(all []effort) string {
	s := "Effort over the travel. Full line: lifting; broken line: lowering; level dots: all there is (1); scattered dots: where two people in three lie"
	var beyond []string
	for i := range all {
		if all[i].untested {
			beyond = append(beyond, all[i].name)
		}
	}
	if len(beyond) > 0 {
		s += ". Part of the strength of " + strings.Join(beyond, ", ") + " is beyond the angles that were tested"
	}
	return s + "."
}

// personTitle heads the person's part.
func personTitle(m *evaluation.Meeting) string {
	return capitalised(m.Rest.Setup.Exercise.String()) + ", with " + m.Name() + " on it"
}

// exerciseLine says who and how in one line.
func exerciseLine(m *evaluation.Meeting) string {
	p := &m.Person.Person
	s := decimal(p.Height, 2) + " m, " + decimal(p.Mass, 0) + " kg"
	if p.Sex != 0 {
		s += ", " + p.Sex.String()
	}
	if p.Age != 0 {
		s += ", " + decimal(p.Age, 0) + " years"
	}
	return s + "; " + m.Rest.Setup.Station.Posture.String() + "; the limb pushes " + m.Rest.Direction.String() + "."
}
