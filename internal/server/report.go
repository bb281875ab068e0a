package server

import (
	"bytes"
	"mime"
	"net/http"
	"strconv"
	"strings"

	"steelyard/evaluation"
	"steelyard/internal/report"
	"steelyard/internal/server/api"
	"steelyard/internal/server/view"
	"steelyard/mechanism"
)

// reportTypes are the media types of reports by their ending.
var reportTypes = map[string]string{"html": api.HTML + "; charset=utf-8", "pdf": "application/pdf", "svg": "image/svg+xml", "png": "image/png"}

// getReport writes a machine's report with its sampled error band.
func (s *Server) getReport(w http.ResponseWriter, r *http.Request) error {
	ext := r.PathValue("ext")
	kind := reportTypes[ext]
	if kind == "" {
		return &requestError{http.StatusNotFound, api.NotFound, "a report can be had as html, pdf, svg or png; choose one of these"}
	}
	e, imperial, err := s.reported(r)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if _, err := report.Write(&b, "."+ext, e, report.Options{Imperial: imperial, Date: s.Now()}); err != nil {
		return err
	}
	h := w.Header()
	h.Set("Content-Type", kind)
	h.Set("Content-Disposition", attachment(e.Name+"."+ext))
	return write(w, r, http.StatusOK, b.Bytes())
}

// reported evaluates the machine as the query sets it.
func (s *Server) reported(r *http.Request) (*evaluation.Evaluation, bool, error) {
	q := r.URL.Query()
	choice := map[string]string{}
	for _, set := range q["set"] {
		name, value, ok := strings.Cut(set, "=")
		if !ok {
			return nil, false, bad("the setting %q has no value; write name=value", set)
		}
		choice[name] = value
	}
	tempo, err := parseTempo(q.Get("tempo"))
	if err != nil {
		return nil, false, err
	}
	sh, err := s.Store.Sheet(r.Context(), r.PathValue("id"))
	if err != nil {
		return nil, false, err
	}
	o, err := view.Open(sh.Name, sh.Text)
	if err != nil {
		return nil, false, err
	}
	b, err := o.Machine.Build(choice)
	if err != nil {
		return nil, false, err
	}
	person, err := s.person(r.Context(), q.Get("person"))
	if err != nil {
		return nil, false, err
	}
	select {
	case s.sample <- struct{}{}:
		defer func() { <-s.sample }()
	case <-r.Context().Done():
		return nil, false, gone(r.Context().Err())
	}
	e, err := evaluation.Run(r.Context(), o.Machine, b, evaluation.Options{Tempo: tempo})
	if err == nil && person != nil {
		e.Person, err = e.Meet(person)
	}
	if err != nil {
		return nil, false, unusable(err)
	}
	return e, q.Get("units") == "imperial", nil
}

// unusable tells the page that a machine cannot be computed, and why.
func unusable(err error) error {
	p := view.Problems(err)
	return &requestError{http.StatusUnprocessableEntity, api.Unusable, p[0].Message}
}

// parseTempo reads "2-0-2-0": seconds up, pause, down, pause.
func parseTempo(text string) (*mechanism.Tempo, error) {
	if text == "" {
		return nil, nil
	}
	parts := strings.Split(text, "-")
	var s [4]float64
	if len(parts) != len(s) {
		return nil, bad("the tempo is %q; write seconds up, pause, down, pause, such as 2-0-2-0", text)
	}
	for i, p := range parts {
		v, err := strconv.ParseFloat(p, 64)
		if err != nil {
			return nil, bad("the tempo is %q; write seconds up, pause, down, pause, such as 2-0-2-0", text)
		}
		s[i] = v
	}
	return &mechanism.Tempo{Up: s[0], Top: s[1], Down: s[2], Bottom: s[3]}, nil
}

// attachment names a file to be saved. FormatMediaType writes names outside
// ASCII as RFC 6266 wants them.
func attachment(name string) string {
	clean := strings.Map(func(r rune) rune {
		if r < ' ' || strings.ContainsRune(`/\:*?"<>|`, r) {
			return '-'
		}
		return r
	}, name)
	if d := mime.FormatMediaType("attachment", map[string]string{"filename": clean}); d != "" {
		return d
	}
	return "attachment"
}
