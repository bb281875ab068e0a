package server

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/http"

	"steelyard/internal/server/api"
	"steelyard/internal/server/photo"
	"steelyard/internal/store"
)

// putPhoto stores a photo. Only one is unpacked at a time: each takes hundreds
// of megabytes for a moment.
func (s *Server) putPhoto(w http.ResponseWriter, r *http.Request) error {
	data, err := io.ReadAll(r.Body)
	if err != nil {
		if _, cut := tooLarge(err); cut {
			return err
		}
		return bad("the photo did not arrive as a whole (%v); send it once more", err)
	}
	select {
	case s.decode <- struct{}{}:
	case <-r.Context().Done():
		return gone(r.Context().Err())
	}
	kept, err := photo.Prepare(data)
	<-s.decode
	var unfit *photo.Error
	if errors.As(err, &unfit) {
		return &requestError{http.StatusUnprocessableEntity, api.Unusable, unfit.Error()}
	}
	if err != nil {
		return err
	}
	p, err := s.Store.PutPhoto(r.Context(), store.Photo{Type: "image/jpeg", Width: kept.Width, Height: kept.Height, Data: kept.Data})
	if err != nil {
		return err
	}
	out := shown(p, len(p.Data))
	out.Lens = kept.Lens
	return send(w, r, out)
}

func shown(p store.Photo, bytes int) api.Photo {
	return api.Photo{ID: p.ID, Width: p.Width, Height: p.Height, Type: p.Type, Bytes: bytes}
}

// getPhoto sends a photo. Its address is its digest, so it never changes.
func (s *Server) getPhoto(w http.ResponseWriter, r *http.Request) error {
	p, err := s.Store.Photo(r.Context(), r.PathValue("id"))
	if err != nil {
		return err
	}
	h := w.Header()
	h.Set("Content-Type", p.Type)
	h.Set("Content-Length", fmt.Sprint(len(p.Data)))
	h.Set("Cache-Control", "private, max-age=31536000, immutable")
	_, err = w.Write(p.Data)
	return gone(err)
}

// setBackdrop lays a photo behind a machine's drawing, or takes it away.
func (s *Server) setBackdrop(w http.ResponseWriter, r *http.Request) error {
	var in api.SetBackdrop
	if err := read(r, &in); err != nil {
		return err
	}
	id := r.PathValue("id")
	survey := ""
	if in.Photo != "" {
		if in.Survey == nil {
			return bad("a photo without a scale was sent; set the scale first")
		}
		if _, err := surveyed(*in.Survey); err != nil {
			return err
		}
		data, err := json.Marshal(in.Survey)
		if err != nil {
			return err
		}
		survey = string(data)
	}
	if err := s.Store.SetBackdrop(r.Context(), id, in.Photo, survey); err != nil {
		return err
	}
	return s.getSheet(w, r)
}

// backdrop completes a stored photo with the plane it was surveyed in. A survey
// that cannot be used, as an archive may bring, leaves the machine without a
// photo behind it: nil.
func backdrop(b store.Backdrop) *api.Backdrop {
	out := &api.Backdrop{Photo: shown(b.Photo, 0)}
	if err := json.Unmarshal([]byte(b.Survey), &out.Survey); err != nil {
		return nil
	}
	plane, err := surveyed(out.Survey)
	if err != nil {
		return nil
	}
	out.Plane, out.Inverse = plane.Plane, plane.Inverse
	return out
}
