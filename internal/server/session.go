package server

import (
	"crypto/rand"
	"crypto/subtle"
	"encoding/hex"
	"net"
	"net/http"

	"steelyard/internal/server/api"
	"steelyard/internal/store"
)

// NewToken returns 128 random bits in hexadecimal: too many to be guessed, so
// they need no slow hash at rest.
func NewToken() string {
	var b [16]byte
	rand.Read(b[:])
	return hex.EncodeToString(b[:])
}

// cookieName returns the cookie's name. Cookies are shared by all ports of a
// host, so each port has its own.
func cookieName(r *http.Request) string {
	if _, port, err := net.SplitHostPort(r.Host); err == nil {
		return "steelyard-" + port
	}
	return "steelyard"
}

// startSession gives the cookie to who shows the token. The token serves as
// long as the program runs, so that its owner can open a second browser.
func (s *Server) startSession(w http.ResponseWriter, r *http.Request) error {
	var in api.Session
	if err := read(r, &in); err != nil {
		return err
	}
	if subtle.ConstantTimeCompare([]byte(in.Token), []byte(s.Token)) != 1 {
		return &requestError{http.StatusForbidden, api.Refused, "the address is not the one this program printed last; copy it from the window it runs in"}
	}
	secret := NewToken()
	if err := s.Store.PutSession(r.Context(), store.Digest([]byte(secret))); err != nil {
		return err
	}
	http.SetCookie(w, &http.Cookie{Name: cookieName(r), Value: secret, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode, MaxAge: 90 * 24 * 3600})
	w.WriteHeader(http.StatusNoContent)
	return nil
}

// admitted returns an error unless the request carries a cookie we gave.
func (s *Server) admitted(r *http.Request) error {
	refused := &requestError{http.StatusForbidden, api.Refused, "this browser is not known to the program; open the address it printed, with all that stands behind the #"}
	c, err := r.Cookie(cookieName(r))
	if err != nil {
		return refused
	}
	has, err := s.Store.HasSession(r.Context(), store.Digest([]byte(c.Value)))
	if err != nil {
		return err
	}
	if !has {
		return refused
	}
	return nil
}
