package server

import (
	"errors"
	"net/http"

	"steelyard/calibrate"
	"steelyard/calibrate/family"
	"steelyard/internal/server/api"
	"steelyard/internal/server/view"
	"steelyard/planar"
	"steelyard/quantity"
)

// getFamilies lists what a machine can be built from, with the questions.
func (s *Server) getFamilies(w http.ResponseWriter, r *http.Request) error {
	out := api.Families{Families: []api.Family{}}
	for _, f := range family.All() {
		out.Families = append(out.Families, questions(&f))
	}
	return send(w, r, out)
}

func questions(f *family.Family) api.Family {
	out := api.Family{ID: f.ID, Name: f.Name, About: f.About, Points: []api.PointAsk{}, Values: []api.ValueAsk{}}
	for _, p := range f.Points {
		out.Points = append(out.Points, api.PointAsk{Name: p.Name, Ask: p.Ask, Hint: p.Hint, Picture: p.Picture, Optional: p.Optional, Usual: api.Place{p.Usual.X, p.Usual.Y}})
	}
	for _, v := range f.Values {
		out.Values = append(out.Values, api.ValueAsk{Name: v.Name, Ask: v.Ask, Hint: v.Hint, Quantity: view.QuantityName(v.Unit.Dimension()), Unit: v.Unit.Symbol(),
			Low: v.Low, High: v.High, Step: v.Step, Usual: v.Usual})
	}
	if c := f.Cam; c != nil {
		out.Cam = &api.OutlineAsk{Name: c.Name, Ask: c.Ask, Hint: c.Hint, Picture: c.Picture, Least: c.Least, Usual: []api.Place{}}
		for _, p := range c.Usual {
			out.Cam.Usual = append(out.Cam.Usual, api.Place{p.X, p.Y})
		}
	}
	return out
}

// buildSheet makes a sheet from answers and shows what the machine does. An
// answer that cannot be used is refused with a sentence; answers that together
// make no machine are told beside the sheet's text, as far as it came.
func (s *Server) buildSheet(w http.ResponseWriter, r *http.Request) error {
	var in api.Build
	if err := read(r, &in); err != nil {
		return err
	}
	id := r.PathValue("id")
	f, ok := familyByID(id)
	if !ok {
		return &requestError{http.StatusNotFound, api.NotFound, "there is no such kind of machine; choose one from the list"}
	}
	answers, err := answersOf(&f, in)
	if err != nil {
		return err
	}
	text, err := family.Build(id, answers)
	var fault *calibrate.Fault
	switch {
	case errors.As(err, &fault):
		return unfit(err)
	case err != nil:
		return send(w, r, view.Unusable(string(text), err))
	}
	person, err := s.person(r.Context(), in.Look.Person)
	if err != nil {
		return err
	}
	return send(w, r, view.Preview(r.Context(), view.Read(string(text)), in.Look, person))
}

func familyByID(id string) (family.Family, bool) {
	for _, f := range family.All() {
		if f.ID == id {
			return f, true
		}
	}
	return family.Family{}, false
}

// answersOf reads answers in the units they were asked for.
func answersOf(f *family.Family, in api.Build) (family.Answers, error) {
	if len(in.Cam) > mostPoints || len(in.Name) > mostNote || len(in.Measured) > mostNote {
		return family.Answers{}, bad("the answers are longer than a sheet can be; shorten them")
	}
	a := family.Answers{Name: in.Name, Measured: in.Measured, Points: map[string]calibrate.Point{}, Values: map[string]quantity.Quantity{}}
	for _, p := range in.Points {
		a.Points[p.Name] = calibrate.Point{At: planar.Vec{X: p.At[0], Y: p.At[1]}, Plus: planar.Vec{X: p.Plus[0], Y: p.Plus[1]}}
	}
	for _, v := range in.Values {
		unit := quantity.NoUnit
		for _, ask := range f.Values {
			if ask.Name == v.Name {
				unit = ask.Unit
			}
		}
		if unit == quantity.NoUnit {
			return a, bad("nobody asked for %q; reload the page", v.Name)
		}
		a.Values[v.Name] = quantity.Of(v.Value, v.Plus, unit)
	}
	for _, p := range in.Cam {
		a.Cam = append(a.Cam, calibrate.Point{At: planar.Vec{X: p.At[0], Y: p.At[1]}, Plus: planar.Vec{X: p.Plus[0], Y: p.Plus[1]}})
	}
	return a, nil
}
