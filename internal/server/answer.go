package server

import (
	"compress/gzip"
	"context"
	"encoding/json"
	"errors"
	"io"
	"mime"
	"net"
	"net/http"
	"strings"

	"steelyard/internal/server/api"
	"steelyard/internal/server/view"
	"steelyard/internal/store"
	"steelyard/sheet"
)

// read reads a JSON body into in.
func read(r *http.Request, in any) error {
	if kind, _, err := mime.ParseMediaType(r.Header.Get("Content-Type")); err != nil || kind != api.JSON {
		return bad("the request is not %s; reload the page", api.JSON)
	}
	return decode(r.Body, in)
}

// decode reads JSON that is exactly what in takes.
func decode(from io.Reader, in any) error {
	d := json.NewDecoder(from)
	d.DisallowUnknownFields()
	if err := d.Decode(in); err != nil {
		if _, cut := tooLarge(err); cut {
			return err
		}
		return bad("the request cannot be read (%v); reload the page", err)
	}
	if _, err := d.Token(); err != io.EOF {
		return bad("the request has something after its end; reload the page")
	}
	return nil
}

// send answers with JSON.
func send(w http.ResponseWriter, r *http.Request, out any) error {
	data, err := json.Marshal(out)
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", api.JSON)
	return write(w, r, http.StatusOK, data)
}

// worthPacking is the size below which packing costs more than it saves.
const worthPacking = 4 << 10

// write sends a body, packed if it goes over a network: on the machine itself
// packing only takes time.
func write(w http.ResponseWriter, r *http.Request, status int, data []byte) error {
	if len(data) < worthPacking || local(r) || !strings.Contains(r.Header.Get("Accept-Encoding"), "gzip") {
		w.WriteHeader(status)
		_, err := w.Write(data)
		return gone(err)
	}
	w.Header().Set("Content-Encoding", "gzip")
	w.Header().Add("Vary", "Accept-Encoding")
	w.WriteHeader(status)
	z, _ := gzip.NewWriterLevel(w, gzip.BestSpeed) // the level is a known one
	_, err := z.Write(data)
	return gone(errors.Join(err, z.Close()))
}

func local(r *http.Request) bool {
	host, _, err := net.SplitHostPort(r.RemoteAddr)
	return err == nil && net.ParseIP(host).IsLoopback()
}

// goneError says that nobody is left to be answered.
type goneError struct{ cause error }

func (e *goneError) Error() string { return e.cause.Error() }

func gone(err error) error {
	if err == nil {
		return nil
	}
	return &goneError{err}
}

// fail answers with what went wrong. Our own faults are logged with their cause
// and told without it.
func (s *Server) fail(w http.ResponseWriter, r *http.Request, err error) {
	var left *goneError
	if errors.As(err, &left) || r.Context().Err() != nil && errors.Is(err, context.Canceled) {
		return
	}
	status, p := problemOf(err)
	if status >= 500 {
		s.Log.Error("request failed", "method", r.Method, "path", r.URL.Path, "error", err, "cause", errors.Unwrap(err))
	}
	data, jsonErr := json.Marshal(p)
	if jsonErr != nil {
		s.Log.Error("a problem cannot be told", "error", jsonErr)
		return
	}
	w.Header().Set("Content-Type", api.JSON)
	write(w, r, status, data)
}

// problemOf puts an error into words for the page.
func problemOf(err error) (int, api.Problem) {
	say := func(status int, code api.Code) (int, api.Problem) {
		return status, api.Problem{Code: code, Message: view.Told(err)}
	}
	var request *requestError
	var conflict *conflictError
	var text *store.TextError
	var damage *store.DamageError
	var trouble *store.TroubleError
	var edit *view.EditError
	var one *sheet.Problem
	var many sheet.Problems
	limit, cut := tooLarge(err)
	switch {
	case errors.As(err, &request):
		return say(request.status, request.code)
	case cut:
		return http.StatusRequestEntityTooLarge, api.Problem{Code: api.TooLarge, Message: tooLargeWords(limit)}
	case errors.As(err, &conflict):
		return http.StatusConflict, api.Problem{Code: api.Conflict, Message: conflict.Error(), Current: &conflict.current, Yours: conflict.yours}
	case errors.Is(err, store.ErrNotFound):
		return say(http.StatusNotFound, api.NotFound)
	case errors.Is(err, store.ErrNothingToUndo), errors.Is(err, store.ErrNothingToRedo):
		return say(http.StatusBadRequest, api.BadRequest)
	case errors.As(err, &many), errors.As(err, &one):
		_, p := say(0, api.Unusable)
		p.Problems = view.Problems(err)
		return http.StatusUnprocessableEntity, p
	case errors.As(err, &text), errors.As(err, &damage), errors.As(err, &edit):
		return say(http.StatusUnprocessableEntity, api.Unusable)
	case errors.As(err, &trouble):
		return say(http.StatusServiceUnavailable, api.StoreFailed)
	}
	return http.StatusInternalServerError, api.Problem{Code: api.Internal,
		Message: "something went wrong inside the program; nothing was saved, and the window it runs in tells more; try once more or reload the page"}
}
