package view

import (
	"steelyard/human"
	"steelyard/internal/server/api"
	"steelyard/sheet"
)

// PersonSheet takes a person's sheet apart.
func PersonSheet(text *Text) api.PersonSheet {
	out := api.PersonSheet{Text: text.text, Problems: []api.SheetProblem{}, Entries: []api.SheetEntry{}, Avoid: []string{}, Motions: motions(), Warnings: []string{},
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

// motions names what a strength or a limit can be of.
func motions() []string {
	out := make([]string, human.NumActions)
	for a := range out {
		out[a] = human.Action(a).String()
	}
	return out
}

// WithStrength returns the text with one more measured strength. What it says
// is looked at by [PersonSheet].
func (t *Text) WithStrength(s api.NewStrength) (*Text, error) {
	var fields []sheet.Field
	for _, f := range []sheet.Field{{Key: "action", Text: s.Motion}, {Key: "angle", Text: s.Angle}, {Key: "moment", Text: s.Moment},
		{Key: "force", Text: s.Force}, {Key: "at", Text: s.At}, {Key: "how", Text: s.How}} {
		if f.Text != "" {
			fields = append(fields, f)
		}
	}
	return t.grown(func(d *sheet.Document) error { return d.AddItem("strength", fields) })
}

// WithLimit returns the text with one more limit of a joint.
func (t *Text) WithLimit(l api.NewLimit) (*Text, error) {
	return t.grown(func(d *sheet.Document) error { return d.AddKey("limits", sheet.Field{Key: l.Motion, Text: l.Angle}) })
}

func (t *Text) grown(add func(*sheet.Document) error) (*Text, error) {
	d, err := t.document()
	if err != nil {
		return nil, err
	}
	changed := *d
	if err := add(&changed); err != nil {
		return nil, err
	}
	return written(&changed), nil
}
