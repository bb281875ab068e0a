package server

import (
	"context"
	"errors"
	"net/http"
	"slices"

	"steelyard/internal/server/api"
	"steelyard/internal/store"
)

// mostHistory is how many states a history shows.
const mostHistory = 200

// mostTries bounds how often a change is made anew because another one came
// between.
const mostTries = 5

// bothKept says that a change was added to somebody else's.
const bothKept = "This sheet was changed elsewhere meanwhile. Both changes are kept; look once more whether they fit together."

// changeSheet edits single values. Where the sheet has moved on, but not at
// these values, the edit is made to the sheet as it now stands.
func (s *Server) changeSheet(w http.ResponseWriter, r *http.Request) error {
	var in api.Change
	if err := read(r, &in); err != nil {
		return err
	}
	if len(in.Edits) == 0 {
		return bad("no edit was sent; reload the page")
	}
	for range mostTries {
		sh, merged, err := s.change(r.Context(), r.PathValue("id"), in)
		var again *store.ConflictError
		if errors.As(err, &again) {
			continue
		}
		if err != nil {
			return err
		}
		return s.saved(w, r, sh, in.Look, merged)
	}
	return errors.New("the sheet changes faster than it can be written")
}

// change makes the edits once. A bare *store.ConflictError means that another
// write came between reading and writing.
func (s *Server) change(ctx context.Context, id string, in api.Change) (sh store.Sheet, merged string, err error) {
	now, err := s.Store.Sheet(ctx, id)
	if err != nil {
		return sh, "", err
	}
	from := s.recent.read(now.Text)
	if in.Revision != now.Revision {
		old, err := s.Store.TextAt(ctx, id, in.Revision)
		if err != nil {
			return sh, "", err
		}
		from = s.recent.read(old)
		merged = bothKept
	}
	var settings []api.Choice
	if in.Look != nil {
		settings = in.Look.Settings
	}
	values, yours, err := from.Resolve(settings, in.Edits)
	if err != nil {
		return sh, "", err
	}
	current := s.recent.read(now.Text)
	if now.Removed || !slices.Equal(from.Stand(values), current.Stand(values)) {
		return sh, "", s.explained(ctx, &store.ConflictError{From: in.Revision, Current: now}, yours.String())
	}
	text, err := current.Write(values)
	if err != nil {
		return sh, "", err
	}
	sh, err = s.Store.Write(ctx, id, now.Revision, text.String(), "changed")
	return sh, merged, err
}

func (s *Server) undo(w http.ResponseWriter, r *http.Request) error {
	return s.step(w, r, s.Store.Undo)
}

func (s *Server) redo(w http.ResponseWriter, r *http.Request) error {
	return s.step(w, r, s.Store.Redo)
}

func (s *Server) step(w http.ResponseWriter, r *http.Request, way func(context.Context, string, int) (store.Sheet, error)) error {
	var in api.Step
	if err := read(r, &in); err != nil {
		return err
	}
	sh, err := way(r.Context(), r.PathValue("id"), in.Revision)
	if err != nil {
		return s.explained(r.Context(), err, "")
	}
	return s.saved(w, r, sh, in.Look, "")
}

func (s *Server) getHistory(w http.ResponseWriter, r *http.Request) error {
	all, err := s.Store.History(r.Context(), r.PathValue("id"), mostHistory)
	if err != nil {
		return err
	}
	out := api.History{Revisions: []api.Revision{}}
	for _, x := range all {
		out.Revisions = append(out.Revisions, api.Revision{Revision: x.Number, Saved: x.Saved, What: x.What, Text: x.Text})
	}
	return send(w, r, out)
}
