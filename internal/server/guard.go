package server

import (
	"errors"
	"fmt"
	"net/http"
	"runtime/debug"
	"slices"
	"strings"

	"steelyard/internal/server/api"
)

// Bounds on what a request may carry.
const (
	mostJSON    = 2 << 20   // six sheets to compare, and room
	mostUpload  = 25 << 20  // a photo
	mostArchive = 512 << 20 // an export
)

// policy lets a page load only what this server sends, and what it made itself.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; media-src blob:; font-src 'self'; connect-src 'self'; manifest-src 'self'; " +
	"base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

// guard lets in only those it should, and puts on every answer what keeps a
// browser from doing anything else with it.
func (s *Server) guard(next http.Handler) http.Handler {
	cross := http.NewCrossOriginProtection()
	cross.SetDenyHandler(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		s.fail(w, r, &requestError{http.StatusForbidden, api.Refused, "another site may not ask this program; open the page at its own address"})
	}))
	inner := cross.Handler(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		if !slices.Contains(s.Hosts, strings.ToLower(r.Host)) {
			s.fail(w, r, &requestError{http.StatusForbidden, api.Refused, "this program does not answer under that name; open the address it printed"})
			return
		}
		inner.ServeHTTP(w, r)
	})
}

// route answers one route of the API: with the cookie, within its limits, and
// without taking the program down.
func (s *Server) route(route api.Route, h handler) http.Handler {
	limit := int64(mostJSON)
	switch {
	case slices.Contains(route.Upload, api.Zip):
		limit = mostArchive
	case route.Upload != nil:
		limit = mostUpload
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		defer func() {
			if p := recover(); p != nil {
				s.Log.Error("panic", "at", r.URL.Path, "what", p, "stack", string(debug.Stack()))
				s.fail(w, r, fmt.Errorf("panic: %v", p))
			}
		}()
		w.Header().Set("Cache-Control", "no-store")
		r.Body = http.MaxBytesReader(w, r.Body, limit)
		if route.Path != "/api/session" {
			if err := s.admitted(r); err != nil {
				s.fail(w, r, err)
				return
			}
		}
		if err := h(w, r); err != nil {
			s.fail(w, r, err)
		}
	})
}

// requestError is a refusal with its status.
type requestError struct {
	status  int
	code    api.Code
	message string
}

func (e *requestError) Error() string { return e.message }

// bad refuses a request that cannot be understood.
func bad(format string, args ...any) error {
	return &requestError{http.StatusBadRequest, api.BadRequest, fmt.Sprintf(format, args...)}
}

// tooLarge reports whether the body was cut off, and at how much.
func tooLarge(err error) (int64, bool) {
	var e *http.MaxBytesError
	if errors.As(err, &e) {
		return e.Limit, true
	}
	return 0, false
}
