package server

import (
	"fmt"
	"io/fs"
	"log/slog"
	"net/http"
	"time"

	"steelyard/internal/server/api"
	"steelyard/internal/store"
)

// Config is what a server needs.
type Config struct {
	Store  *store.Store
	Page   fs.FS            // the built page, index.html among it
	Demo   []store.File     // the demo room
	Engine string           // version of the computation; results of others are not reused
	Hosts  []string         // host:port pairs under which the server may be asked
	Token  string           // that the printed address carries
	Now    func() time.Time // dates reports
	Log    *slog.Logger
}

// Server answers for one store.
type Server struct {
	Config
	cards  cardCache
	decode chan struct{} // held while a photo is decoded: one at a time
	sample chan struct{} // held while a band is sampled, which takes every processor
	recent recent
}

// New returns the handler of a server.
func New(c Config) http.Handler {
	s := &Server{Config: c, decode: make(chan struct{}, 1), sample: make(chan struct{}, 1)}
	mux := http.NewServeMux()
	open := s.handlers()
	for _, r := range api.Routes {
		h := open[r.Pattern()]
		if h == nil {
			panic(fmt.Sprintf("server: nothing answers %s", r.Pattern()))
		}
		delete(open, r.Pattern())
		mux.Handle(r.Pattern(), s.route(r, h))
	}
	for pattern := range open {
		panic(fmt.Sprintf("server: %s is not in the list of routes", pattern))
	}
	mux.Handle("/api/", s.route(api.Route{}, func(http.ResponseWriter, *http.Request) error {
		return &requestError{http.StatusNotFound, api.NotFound, "there is nothing under this address; open the page again"}
	}))
	mux.Handle("/", newStatic(c.Page))
	return s.guard(mux)
}

// handler answers a request or says why not.
type handler func(w http.ResponseWriter, r *http.Request) error

// handlers lists who answers each route.
func (s *Server) handlers() map[string]handler {
	return map[string]handler{
		"POST /api/session": s.startSession,
		"GET /api/room":     s.getRoom,
		"POST /api/demo":    s.setDemo,

		"POST /api/sheets":                        s.createSheet,
		"GET /api/sheets/{id}":                    s.getSheet,
		"PUT /api/sheets/{id}":                    s.writeSheet,
		"PATCH /api/sheets/{id}":                  s.changeSheet,
		"DELETE /api/sheets/{id}":                 s.removeSheet,
		"POST /api/sheets/{id}/recover":           s.recoverSheet,
		"POST /api/sheets/{id}/forget":            s.forgetSheet,
		"POST /api/sheets/{id}/undo":              s.undo,
		"POST /api/sheets/{id}/redo":              s.redo,
		"GET /api/sheets/{id}/history":            s.getHistory,
		"GET /api/sheets/{id}/history/{revision}": s.getText,
		"GET /api/sheets/{id}/changes":            s.getChanges,
		"PUT /api/sheets/{id}/backdrop":           s.setBackdrop,
		"GET /api/sheets/{id}/readings":           s.getReadings,
		"PUT /api/sheets/{id}/readings":           s.setReadings,
		"GET /api/example/{kind}":                 s.getExample,

		"POST /api/preview":  s.preview,
		"GET /api/line":      s.line,
		"POST /api/evaluate": s.evaluate,
		"POST /api/compare":  s.compare,
		"POST /api/explain":  s.explain,
		"POST /api/person":   s.readPerson,

		"GET /api/families":       s.getFamilies,
		"POST /api/families/{id}": s.buildSheet,

		"POST /api/photos":     s.putPhoto,
		"GET /api/photos/{id}": s.getPhoto,
		"POST /api/survey":     s.survey,

		"GET /api/sheets/{id}/report/{ext}": s.getReport,
		"GET /api/export.zip":               s.export,
		"POST /api/import":                  s.importArchive,
		"GET /api/openapi.json":             s.getOpenAPI,
	}
}
