package server

import (
	"net/http"

	"steelyard/internal/server/api"
)

// getFamilies lists what a machine can be built from.
func (s *Server) getFamilies(w http.ResponseWriter, r *http.Request) error {
	return send(w, r, api.Families{Families: []api.Family{}})
}

func (s *Server) buildSheet(http.ResponseWriter, *http.Request) error {
	return &requestError{http.StatusNotImplemented, api.Internal, "machines cannot be built from points yet; start from the example sheet"}
}
