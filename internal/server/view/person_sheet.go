package view

import (
	"steelyard/internal/server/api"
	"steelyard/sheet"
)

// PersonSheet takes a person's sheet apart.
func PersonSheet(text *Text) api.PersonSheet {
	out := api.PersonSheet{Text: text.text, Problems: []api.SheetProblem{}, Entries: []api.SheetEntry{}, Avoid: []string{}, Warnings: []string{},
		Understood: []string{}, Assumed: []string{}, Missing: []string{}}
	d, err := text.document()
	if err != nil {
		out.Problems = Problems(err)
		return out
	}
	p, err := d.Person()
	if err != nil {
		out.Problems = Problems(err)
		return out
	}
	out.Name, out.Height, out.Mass, out.Sex = p.Name, metres(p.Person.Height), newtons(p.Person.Mass), p.Person.Sex.String()
	if p.Person.Age != 0 {
		out.Age = &p.Person.Age
	}
	out.Avoid = list(p.Person.Avoid)
	for _, w := range p.Warnings {
		out.Warnings = append(out.Warnings, w.String())
	}
	out.Entries = entries(d)
	x, err := p.Explain()
	if err != nil {
		out.Problems = Problems(err)
		return out
	}
	out.Understood, out.Assumed, out.Missing = list(x.Understood), list(x.Assumed), list(x.Missing)
	return out
}

// entries lists all single values of a sheet.
func entries(d *sheet.Document) []api.SheetEntry {
	out := []api.SheetEntry{}
	for _, l := range d.Leaves() {
		if l.Text != "" {
			out = append(out, api.SheetEntry{Path: l.Path, Text: l.Text, Line: l.Line})
		}
	}
	return out
}
