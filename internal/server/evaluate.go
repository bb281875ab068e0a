package server

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"time"

	"steelyard/internal/server/api"
	"steelyard/internal/server/view"
	"steelyard/internal/store"
)

// evaluate samples the error band, which takes seconds, and tells by events how
// far it is. It ends when who asked has gone. A result is kept, and given at
// once the next time.
func (s *Server) evaluate(w http.ResponseWriter, r *http.Request) error {
	in, text, person, err := s.question(r)
	if err != nil {
		return err
	}
	digest, err := s.inputDigest(r.Context(), text.String(), in.Look)
	if err != nil {
		return err
	}
	kept, has, err := s.Store.Evaluation(r.Context(), digest, s.Engine)
	if err != nil {
		return err
	}
	e := newEvents(w)
	if has {
		return e.send("done", json.RawMessage(kept))
	}
	select {
	case s.sample <- struct{}{}:
		defer func() { <-s.sample }()
	case <-r.Context().Done():
		return gone(r.Context().Err())
	}
	result, err := view.Sampled(r.Context(), text, in.Look, person, func(done, total int) {
		e.send("progress", api.Progress{Done: done, Total: total}) // whoever left also ends the context
	})
	if err != nil {
		return s.failByEvent(e, r, err)
	}
	data, err := json.Marshal(result)
	if err != nil {
		return s.failByEvent(e, r, err)
	}
	if err := s.Store.PutEvaluation(r.Context(), digest, s.Engine, data); err != nil && r.Context().Err() == nil {
		s.Log.Warn("a result could not be kept", "error", err) // it is only made again
	}
	return e.send("done", json.RawMessage(data))
}

// inputDigest names all that a result is computed from.
func (s *Server) inputDigest(ctx context.Context, text string, look api.Look) (string, error) {
	person := ""
	if look.Person != "" {
		sh, err := s.Store.Sheet(ctx, look.Person)
		if err != nil {
			return "", err
		}
		person = sh.Text
	}
	key, err := json.Marshal(struct {
		Text, Person string
		Look         api.Look
	}{text, person, look})
	return store.Digest(key), err
}

// failByEvent tells what went wrong once events have begun.
func (s *Server) failByEvent(e *events, r *http.Request, err error) error {
	if r.Context().Err() != nil {
		return gone(err)
	}
	status, p := problemOf(err)
	if status >= 500 {
		s.Log.Error("evaluation failed", "error", err)
	}
	return e.send("failed", p)
}

// events writes server-sent events (WHATWG HTML, section 9.2).
type events struct {
	w       http.ResponseWriter
	control *http.ResponseController
}

// newEvents begins the answer, which may take as long as it takes.
func newEvents(w http.ResponseWriter) *events {
	e := &events{w, http.NewResponseController(w)}
	if err := e.control.SetWriteDeadline(time.Time{}); err != nil && !errors.Is(err, http.ErrNotSupported) {
		e.w.Header().Set("Connection", "close")
	}
	w.Header().Set("Content-Type", api.Events)
	w.WriteHeader(http.StatusOK)
	return e
}

// send writes one event at once.
func (e *events) send(name string, data any) error {
	line, err := json.Marshal(data)
	if err != nil {
		return err
	}
	if _, err := fmt.Fprintf(e.w, "event: %s\ndata: %s\n\n", name, line); err != nil {
		return gone(err)
	}
	return gone(e.control.Flush())
}
