package report

import (
	"steelyard/evaluation"
)

// person is the person's part of a printed report: words, pictures, tables.
func (p *pages) person(all []figure) {
	m := p.e.Person
	p.Break()
	p.Heading(personTitle(m))
	p.Text(exerciseLine(m))
	words := boundAll(m.Words())
	p.lead(words[0])
	for _, w := range words[1:] {
		p.Text(w)
	}
	for _, f := range all {
		p.captioned(f)
	}
	p.table("Joints, lifting at rest", jointTable(p.e, p.u, true))
	for _, s := range effortNotes(p.e, true) {
		p.small(s)
	}
	p.table("Muscles", muscleTable(p.e))
	p.small(muscleNote)
	p.table("Body", bodyTable(p.e, p.u))
}

// pagePerson is what the template shows of a person.
type pagePerson struct {
	Title, Line     string
	Lead            string
	Words           []string
	Figures         []pageFigure
	Joints, Muscles htmlTable
	Body            htmlTable
	Notes, Sources  []string
	MuscleNote      string
}

func pagePersonOf(e *evaluation.Evaluation, u units) *pagePerson {
	m := e.Person
	if m == nil {
		return nil
	}
	words := boundAll(m.Words())
	return &pagePerson{
		Title: personTitle(m), Line: exerciseLine(m), Lead: words[0], Words: words[1:],
		Joints:  htmlTableOf("Each joint where it is asked most, lifting at rest", jointTable(e, u, false)),
		Muscles: htmlTableOf("Muscles by thirds of their own length", muscleTable(e)),
		Body:    htmlTableOf("Body lengths", bodyTable(e, u)),
		Notes:   effortNotes(e, true), Sources: strengthSources(e), MuscleNote: muscleNote,
	}
}
