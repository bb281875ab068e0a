package server

import (
	"net/http"

	"steelyard/internal/server/api"
)

// survey measures places on a photo.
func (s *Server) survey(w http.ResponseWriter, r *http.Request) error {
	var in api.Survey
	if err := read(r, &in); err != nil {
		return err
	}
	out, err := surveyed(in)
	if err != nil {
		return err
	}
	return send(w, r, out)
}

func surveyed(api.Survey) (api.Surveyed, error) {
	return api.Surveyed{}, &requestError{http.StatusNotImplemented, api.Internal, "photos cannot be measured yet; type tape measurements instead"}
}

func (s *Server) getFamilies(w http.ResponseWriter, r *http.Request) error {
	return send(w, r, api.Families{Families: []api.Family{}})
}

func (s *Server) buildSheet(http.ResponseWriter, *http.Request) error {
	return &requestError{http.StatusNotImplemented, api.Internal, "machines cannot be built from points yet; start from the example sheet"}
}
