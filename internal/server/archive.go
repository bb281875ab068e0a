package server

import (
	"errors"
	"fmt"
	"io"
	"net/http"
	"os"

	"steelyard/internal/server/api"
	"steelyard/internal/server/photo"
	"steelyard/internal/store"
)

// export sends every sheet and photo as one archive. It is made as a whole
// first, so that a fault is told instead of cutting the file short.
func (s *Server) export(w http.ResponseWriter, r *http.Request) error {
	f, err := scratch()
	if err != nil {
		return err
	}
	defer discard(f)
	if err := s.Store.Export(r.Context(), f); err != nil {
		return err
	}
	if _, err := f.Seek(0, io.SeekStart); err != nil {
		return err
	}
	h := w.Header()
	h.Set("Content-Type", api.Zip)
	h.Set("Content-Disposition", attachment("steelyard "+s.Now().Format("2006-01-02")+".zip"))
	_, err = io.Copy(w, f)
	return gone(err)
}

// importArchive takes everything from an archive, or nothing.
func (s *Server) importArchive(w http.ResponseWriter, r *http.Request) error {
	f, err := scratch()
	if err != nil {
		return err
	}
	defer discard(f)
	size, err := io.Copy(f, r.Body)
	if err != nil {
		if _, cut := tooLarge(err); cut {
			return err
		}
		return bad("the archive did not arrive as a whole (%v); send it once more", err)
	}
	if _, err := s.Store.Import(r.Context(), f, size, photo.Check); err != nil {
		return err
	}
	return s.getRoom(w, r)
}

// scratch makes a file that is thrown away by discard.
func scratch() (*os.File, error) {
	f, err := os.CreateTemp("", "steelyard-*.zip")
	if err != nil {
		return nil, &store.TroubleError{Problem: "there is no room for the archive in " + os.TempDir(), Cure: "make room on the disk", Cause: err}
	}
	return f, nil
}

func discard(f *os.File) { errors.Join(f.Close(), os.Remove(f.Name())) }

// tooLargeWords says that something was cut off.
func tooLargeWords(limit int64) string {
	return fmt.Sprintf("that is larger than %d MB, which is the most that is taken; make it smaller", limit>>20)
}

func (s *Server) getOpenAPI(w http.ResponseWriter, r *http.Request) error {
	w.Header().Set("Content-Type", api.JSON)
	return write(w, r, http.StatusOK, api.OpenAPI)
}
