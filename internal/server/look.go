package server

import (
	"context"
	"errors"
	"net/http"

	"steelyard/internal/server/api"
	"steelyard/internal/server/view"
	"steelyard/internal/store"
	"steelyard/sheet"
)

// text returns the text that is asked about: given, or stored; after the edits.
func (s *Server) text(ctx context.Context, in api.Ask) (*view.Text, error) {
	text := in.Text
	if text == "" {
		if in.Sheet == "" {
			return nil, bad("neither a text nor a stored sheet is named; reload the page")
		}
		sh, err := s.Store.Sheet(ctx, in.Sheet)
		if err != nil {
			return nil, err
		}
		text = sh.Text
	}
	if len(text) > store.MostText {
		return nil, &requestError{http.StatusRequestEntityTooLarge, api.TooLarge, "the sheet is larger than 256 kB; leave out what is no part of it"}
	}
	_, edited, err := s.recent.read(text).Resolve(in.Look.Settings, in.Edits)
	return edited, err
}

// person returns the person of a look; nil if it names none.
func (s *Server) person(ctx context.Context, id string) (*sheet.Person, error) {
	if id == "" {
		return nil, nil
	}
	sh, err := s.Store.Sheet(ctx, id)
	if err != nil {
		return nil, err
	}
	return view.Person(sh.Name, sh.Text)
}

// asked returns the text and the person that are asked about.
func (s *Server) asked(ctx context.Context, in api.Ask) (*view.Text, *sheet.Person, error) {
	text, err := s.text(ctx, in)
	if err != nil {
		return nil, nil, err
	}
	p, err := s.person(ctx, in.Look.Person)
	return text, p, err
}

// previewOf evaluates a machine quickly, with edits made to it.
func (s *Server) previewOf(ctx context.Context, in api.Ask) (api.Preview, error) {
	text, person, err := s.asked(ctx, in)
	if err != nil {
		return api.Preview{}, err
	}
	return view.Preview(ctx, text, in.Look, person), nil
}

// question reads what a request asks, with the text and the person it is about.
func (s *Server) question(r *http.Request) (in api.Ask, text *view.Text, person *sheet.Person, err error) {
	if err = read(r, &in); err == nil {
		text, person, err = s.asked(r.Context(), in)
	}
	return in, text, person, err
}

// preview evaluates a machine quickly: it is asked for every move of a finger.
func (s *Server) preview(w http.ResponseWriter, r *http.Request) error {
	var in api.Ask
	if err := read(r, &in); err != nil {
		return err
	}
	p, err := s.previewOf(r.Context(), in)
	if err != nil {
		return err
	}
	return send(w, r, p)
}

func (s *Server) explain(w http.ResponseWriter, r *http.Request) error {
	in, text, person, err := s.question(r)
	if err != nil {
		return err
	}
	return send(w, r, view.Explain(r.Context(), text, in.Look, person))
}

// readPerson reads a person's sheet.
func (s *Server) readPerson(w http.ResponseWriter, r *http.Request) error {
	var in api.AskPerson
	if err := read(r, &in); err != nil {
		return err
	}
	text, err := s.text(r.Context(), api.Ask{Text: in.Text, Sheet: in.Sheet, Edits: in.Edits})
	if err == nil && in.Strength != nil {
		text, err = text.WithStrength(*in.Strength)
	}
	if err == nil && in.Limit != nil {
		text, err = text.WithLimit(*in.Limit)
	}
	if err != nil {
		return err
	}
	return send(w, r, view.PersonSheet(text))
}

func (s *Server) compare(w http.ResponseWriter, r *http.Request) error {
	var in api.Compare
	if err := read(r, &in); err != nil {
		return err
	}
	if n := len(in.Items); n < 1 || n > view.MostCompared {
		return bad("%d machines were sent to be compared; choose one to %d", n, view.MostCompared)
	}
	var sides []view.Side
	for _, item := range in.Items {
		text, err := s.text(r.Context(), api.Ask{Text: item.Text, Sheet: item.Sheet})
		if err != nil && !errors.Is(err, store.ErrNotFound) { // the others are compared without it
			return err
		}
		sides = append(sides, view.Side{Label: item.Label, Sheet: item.Sheet, Text: text, Settings: item.Settings})
	}
	person, err := s.person(r.Context(), in.Person)
	if err != nil {
		return err
	}
	return send(w, r, view.Compare(r.Context(), sides, in.Phase, in.Imperial, person))
}
