package server

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"strconv"

	"steelyard/internal/server/api"
	"steelyard/internal/server/view"
	"steelyard/internal/store"
	"steelyard/sheet"
)

// conflictError is the store's, with the sheet as the page knows it and the
// text that was not written.
type conflictError struct {
	*store.ConflictError
	current api.Sheet
	yours   string
}

// sheet completes a stored sheet for the page.
func (s *Server) sheet(ctx context.Context, sh store.Sheet) (api.Sheet, error) {
	out := api.Sheet{SheetCard: card(sh), Text: sh.Text, Undo: sh.Undos, Redo: sh.Redos}
	b, has, err := s.Store.Backdrop(ctx, sh.ID)
	if err != nil || !has {
		return out, err
	}
	out.Backdrop = backdrop(b)
	return out, nil
}

// saved answers a write: with the sheet, and what it now does if the page wants
// to know.
func (s *Server) saved(w http.ResponseWriter, r *http.Request, sh store.Sheet, look *api.Look, merged string) error {
	out := api.Saved{Merged: merged}
	var err error
	if out.Sheet, err = s.sheet(r.Context(), sh); err != nil {
		return err
	}
	if look != nil && sh.Kind == string(api.KindMachine) {
		person, err := s.person(r.Context(), look.Person)
		if err != nil {
			return err
		}
		p := view.Preview(r.Context(), s.recent.read(sh.Text), *look, person)
		out.Preview = &p
	}
	return send(w, r, out)
}

// explained adds to a conflict what the page needs to show both versions.
func (s *Server) explained(ctx context.Context, err error, yours string) error {
	var c *store.ConflictError
	if !errors.As(err, &c) {
		return err
	}
	current, sheetErr := s.sheet(ctx, c.Current)
	if sheetErr != nil {
		return sheetErr
	}
	return &conflictError{c, current, yours}
}

func (s *Server) createSheet(w http.ResponseWriter, r *http.Request) error {
	var in api.NewSheet
	if err := read(r, &in); err != nil {
		return err
	}
	sh, err := s.Store.Create(r.Context(), in.Text, "")
	if err != nil {
		return err
	}
	return s.saved(w, r, sh, in.Look, "")
}

func (s *Server) getSheet(w http.ResponseWriter, r *http.Request) error {
	sh, err := s.Store.Sheet(r.Context(), r.PathValue("id"))
	if err != nil {
		return err
	}
	out, err := s.sheet(r.Context(), sh)
	if err != nil {
		return err
	}
	return send(w, r, out)
}

func (s *Server) writeSheet(w http.ResponseWriter, r *http.Request) error {
	var in api.Write
	if err := read(r, &in); err != nil {
		return err
	}
	sh, err := s.Store.Write(r.Context(), r.PathValue("id"), in.Revision, in.Text, "saved")
	if err != nil {
		return s.explained(r.Context(), err, in.Text)
	}
	return s.saved(w, r, sh, in.Look, "")
}

// removeSheet hides a sheet.
func (s *Server) removeSheet(w http.ResponseWriter, r *http.Request) error {
	revision, err := strconv.Atoi(r.URL.Query().Get("revision"))
	if err != nil {
		return bad("the revision to be removed is missing; reload the page")
	}
	if _, err := s.Store.Remove(r.Context(), r.PathValue("id"), revision); err != nil {
		return s.explained(r.Context(), err, "")
	}
	return s.getRoom(w, r)
}

func (s *Server) recoverSheet(w http.ResponseWriter, r *http.Request) error {
	sh, err := s.Store.Recover(r.Context(), r.PathValue("id"))
	if err != nil {
		return err
	}
	return s.saved(w, r, sh, nil, "")
}

func (s *Server) forgetSheet(w http.ResponseWriter, r *http.Request) error {
	if err := s.Store.Forget(r.Context(), r.PathValue("id")); err != nil {
		return err
	}
	return s.getRoom(w, r)
}

func (s *Server) getExample(w http.ResponseWriter, r *http.Request) error {
	text := sheet.Example(sheet.Kind(r.PathValue("kind")))
	if text == nil {
		return &requestError{http.StatusNotFound, api.NotFound, "there is no example of that kind of sheet; ask for machine"}
	}
	w.Header().Set("Content-Type", api.YAML)
	return write(w, r, http.StatusOK, text)
}

// Bounds on readings.
const (
	mostReadings = 500
	mostNote     = 1000
	mostTravel   = 100 // m
	mostForce    = 1e6 // N
)

func (s *Server) getReadings(w http.ResponseWriter, r *http.Request) error {
	all, err := s.Store.Readings(r.Context(), r.PathValue("id"))
	if err != nil {
		return err
	}
	out := api.ForceReadings{Readings: []api.ForceReading{}}
	for _, x := range all {
		f := api.ForceReading{Travel: x.Travel, Force: x.Force, Plus: x.Plus, Note: x.Note}
		if err := json.Unmarshal([]byte(x.Settings), &f.Settings); err != nil {
			return fmt.Errorf("settings of a reading: %w", err)
		}
		out.Readings = append(out.Readings, f)
	}
	return send(w, r, out)
}

func (s *Server) setReadings(w http.ResponseWriter, r *http.Request) error {
	var in api.ForceReadings
	if err := read(r, &in); err != nil {
		return err
	}
	if len(in.Readings) > mostReadings {
		return bad("%d readings were sent and a machine keeps %d; leave some out", len(in.Readings), mostReadings)
	}
	var all []store.Reading
	for i, f := range in.Readings {
		if !(f.Travel >= 0 && f.Travel <= mostTravel) || !(f.Force >= -mostForce && f.Force <= mostForce) || !(f.Plus >= 0 && f.Plus <= mostForce) || len(f.Note) > mostNote {
			return bad("reading %d is outside what a machine can show; check its travel, force and ±", i+1)
		}
		settings, err := json.Marshal(append([]api.Choice{}, f.Settings...))
		if err != nil {
			return err
		}
		all = append(all, store.Reading{Travel: f.Travel, Force: f.Force, Plus: f.Plus, Settings: string(settings), Note: f.Note})
	}
	if err := s.Store.SetReadings(r.Context(), r.PathValue("id"), all); err != nil {
		return err
	}
	return s.getReadings(w, r)
}
