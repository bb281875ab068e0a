package view

import (
	"context"

	"steelyard/evaluation"
	"steelyard/internal/server/api"
	"steelyard/profile"
)

// signPositions is how finely a sign's ribbon is drawn.
const signPositions = 41

// Card fills in what a machine's card in the room shows, at its default
// settings.
func Card(ctx context.Context, card api.SheetCard, text string) api.MachineCard {
	c := api.MachineCard{SheetCard: card, Settings: []api.Choice{}}
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
	e, _, err := o.Evaluate(ctx, b, &api.Look{Positions: signPositions})
	if err != nil {
		c.Trouble = Problems(err)[0].Message
		return c
	}
	r := e.Readings[profile.Lifting]
	c.Loads, c.Sign = r.Loads.String(), sign(e)
	return c
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
