package view

import (
	"context"
	"slices"

	"steelyard/evaluation"
	"steelyard/internal/server/api"
	"steelyard/profile"
	"steelyard/sheet"
)

// signPositions is how finely a sign's ribbon is drawn.
const signPositions = 41

// Card fills in what a machine's card in the room shows, at its default
// settings, and how it fits a person if one is given.
func Card(ctx context.Context, card api.SheetCard, text string, person *sheet.Person) api.MachineCard {
	c := api.MachineCard{SheetCard: card, Settings: []api.Choice{}, Exercises: []string{}, Muscles: []string{}}
	o, err := Open(card.Name, text)
	if err != nil {
		c.Trouble = Problems(err)[0].Message
		return c
	}
	c.Notes = o.Machine.Notes
	b, err := o.Set(nil)
	if err != nil {
		c.Trouble = Problems(err)[0].Message
		return c
	}
	c.Contact, c.Settings = string(b.Contact), choices(b)
	c.Exercises, c.Muscles = serves(b)
	e, _, err := o.Evaluate(ctx, b, &api.Look{Positions: signPositions})
	if err != nil {
		c.Trouble = Problems(err)[0].Message
		return c
	}
	r := e.Readings[profile.Lifting]
	c.Loads, c.Sign = r.Loads.String(), sign(e)
	if person != nil {
		c.Fit = fitOf(e, person)
	}
	return c
}

// serves names the exercises that a machine's station serves and the muscles
// that these train, each once.
func serves(b *sheet.Built) (exercises, muscles []string) {
	exercises, muscles = []string{}, []string{}
	st, ok := b.Station()
	if !ok {
		return exercises, muscles
	}
	for _, x := range st.Exercises {
		exercises = append(exercises, x.String())
		for _, m := range x.Muscles() {
			if name := m.String(); !slices.Contains(muscles, name) {
				muscles = append(muscles, name)
			}
		}
	}
	return exercises, muscles
}

// sign returns the small ribbon that stands for a machine.
func sign(e *evaluation.Evaluation) *api.Sign {
	r := e.Readings[profile.Lifting]
	s := &api.Sign{Normal: normals(e), Peak: newtons(r.Peak.Force), Mean: newtons(r.Mean), Travel: metres(r.Length), Ratio: share(r.LiftRatio)}
	for k, row := range e.Rows {
		s.Path = append(s.Path, place(e.Sweep.Contact[row]))
		s.Force = append(s.Force, known(e.Curve.Has(k), newtons(e.Curve.Lift[k])))
	}
	for i, t := range r.Thirds {
		s.Thirds[i] = newtons(t.Mean)
	}
	return s
}
