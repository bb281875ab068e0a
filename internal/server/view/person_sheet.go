package view

import "steelyard/internal/server/api"

// PersonSheet takes a person's sheet apart.
func PersonSheet(text string) api.PersonSheet {
	out := api.PersonSheet{Text: text, Problems: []api.SheetProblem{}, Entries: []api.SheetEntry{}, Avoid: []string{}, Warnings: []string{},
		Understood: []string{}, Assumed: []string{}, Missing: []string{}}
	p, err := Person("the sheet", text)
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
	entries(parse(text), "", &out.Entries)
	x, err := p.Explain()
	if err != nil {
		out.Problems = Problems(err)
		return out
	}
	out.Understood, out.Assumed, out.Missing = list(x.Understood), list(x.Assumed), list(x.Missing)
	return out
}

// entries lists all single values under n, which stands at path.
func entries(n *node, path string, into *[]api.SheetEntry) {
	if len(n.children) == 0 && n.text != "" {
		*into = append(*into, api.SheetEntry{Path: path, Text: n.text, Line: n.line})
	}
	for _, c := range n.children {
		at := c.key
		if path != "" {
			at = path + "." + c.key
		}
		entries(c, at, into)
	}
}
