package server

import (
	"bytes"
	"context"
	"encoding/json"
	"net/http"

	"github.com/coder/websocket"

	"steelyard/internal/server/api"
)

// line keeps a connection open and answers each preview asked on it: of a
// request that comes for every move of a finger, what HTTP adds costs more than
// the answer does. It ends when the page goes or the program stops.
func (s *Server) line(w http.ResponseWriter, r *http.Request) error {
	// Accept refuses another site's page; the cookie has been shown already.
	c, err := websocket.Accept(w, r, nil)
	if err != nil {
		return &goneError{err} // it has answered
	}
	defer c.CloseNow()
	c.SetReadLimit(mostJSON)
	for {
		_, question, err := c.Read(r.Context())
		if err != nil {
			return &goneError{err}
		}
		answer, err := json.Marshal(s.reply(r.Context(), question))
		if err != nil {
			return &goneError{err}
		}
		if err := c.Write(r.Context(), websocket.MessageText, answer); err != nil {
			return &goneError{err}
		}
	}
}

// reply answers one question of a line.
func (s *Server) reply(ctx context.Context, question []byte) api.Reply {
	var in api.Ask
	err := decode(bytes.NewReader(question), &in)
	if err == nil {
		var p api.Preview
		if p, err = s.previewOf(ctx, in); err == nil {
			return api.Reply{Preview: &p}
		}
	}
	status, problem := problemOf(err)
	if status >= 500 {
		s.Log.Error("a question over the line failed", "error", err)
	}
	return api.Reply{Problem: &problem}
}
