package server

import (
	"context"
	"encoding/json"
	"math"
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/coder/websocket"

	"steelyard/internal/server/api"
	"steelyard/mechanism"
)

// dial opens a line as a page of that origin does.
func (d *desk) dial(client *http.Client, origin string) (*websocket.Conn, int, error) {
	c, res, err := websocket.Dial(d.t.Context(), d.url+"/api/line", &websocket.DialOptions{HTTPClient: client, HTTPHeader: http.Header{"Origin": {origin}}})
	status := 0
	if res != nil {
		status = res.StatusCode
	}
	return c, status, err
}

func asked(t *testing.T, c *websocket.Conn, question string) api.Reply {
	t.Helper()
	if err := c.Write(t.Context(), websocket.MessageText, []byte(question)); err != nil {
		t.Fatal(err)
	}
	kind, data, err := c.Read(t.Context())
	if err != nil || kind != websocket.MessageText {
		t.Fatal(kind, err)
	}
	var out api.Reply
	if err := json.Unmarshal(data, &out); err != nil || (out.Preview == nil) == (out.Problem == nil) {
		t.Fatalf("%v in %.200s", err, data)
	}
	return out
}

// Question by question: the horn goes out, the force at the start is 20 kg·g
// times its share of the arm; what cannot be answered is told, and the line stays.
func TestLine(t *testing.T) {
	d := open(t, t.TempDir())
	sh := d.create(lever)
	c, _, err := d.dial(d.client, d.url)
	if err != nil {
		t.Fatal(err)
	}
	defer c.CloseNow()
	c.SetReadLimit(mostJSON)
	for _, out := range []float64{0.5, 0.6, 0.7} {
		question, err := json.Marshal(api.Ask{Sheet: sh.ID, Edits: []api.Edit{{Point: &api.PointDrag{Point: "horn", To: api.Place{out, 0}}}}, Look: api.Look{NoBand: true}})
		if err != nil {
			t.Fatal(err)
		}
		p := asked(t, c, string(question)).Preview
		if want := 20 * mechanism.Gravity * out / 0.8; p == nil || p.Curve == nil || math.Abs(*p.Curve.Hold[0]-want) > 0.01 {
			t.Errorf("horn at %g m: %+v, want %g N", out, p, want)
		}
	}
	for _, bad := range []struct{ question, says string }{
		{`{"sheet": 4}`, "cannot be read"},
		{`{"look": {}, "colour": "red"}`, "cannot be read"},
		{`{"look": {}} {}`, "after its end"},
		{`{"sheet": "none", "look": {}}`, ""},
		{`{"sheet": "` + sh.ID + `", "edits": [{"point": {"point": "mast", "to": [0, 0]}}], "look": {}}`, `no point "mast"`},
	} {
		if p := asked(t, c, bad.question).Problem; p == nil || p.Message == "" || p.Code == "" || !strings.Contains(p.Message, bad.says) {
			t.Errorf("%s: %+v, want %q", bad.question, p, bad.says)
		}
	}
	if p := asked(t, c, `{"sheet": "`+sh.ID+`", "look": {}}`).Preview; p == nil || p.Text != lever {
		t.Error("the line does not answer any more")
	}
}

// Only a page of this program that has shown the token gets a line.
func TestLineRefuses(t *testing.T) {
	d := open(t, t.TempDir())
	for _, c := range []struct {
		name, origin string
		client       *http.Client
	}{
		{"another site", "http://example.com", d.client},
		{"the same host at another port", "http://127.0.0.1:1", d.client},
		{"no cookie", d.url, http.DefaultClient},
	} {
		if line, status, err := d.dial(c.client, c.origin); err == nil || status != http.StatusForbidden {
			t.Errorf("%s: %v, %d", c.name, line, status)
		}
	}
}

// A message larger than a request may be ends the line and nothing else.
func TestLineLimit(t *testing.T) {
	d := open(t, t.TempDir())
	c, _, err := d.dial(d.client, d.url)
	if err != nil {
		t.Fatal(err)
	}
	defer c.CloseNow()
	long := `{"text": "` + strings.Repeat("x", mostJSON) + `", "look": {}}`
	c.Write(t.Context(), websocket.MessageText, []byte(long)) // may be cut off before it has all gone
	if _, _, err := c.Read(t.Context()); websocket.CloseStatus(err) != websocket.StatusMessageTooBig {
		t.Errorf("%v, want it closed for its size", err)
	}
	if again, _, err := d.dial(d.client, d.url); err != nil {
		t.Error(err)
	} else {
		again.CloseNow()
	}
}

// A program that stops does not wait for its lines.
func TestLineEndsWithTheProgram(t *testing.T) {
	d := open(t, t.TempDir())
	ctx, stop := context.WithCancel(t.Context())
	l, err := Listen("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	host := l.Addr().String()
	ended := make(chan error, 1)
	go func() {
		ended <- Serve(ctx, l, New(Config{Store: d.store, Page: pageFiles, Engine: "test", Hosts: []string{host}, Token: token, Now: fixedNow, Log: quiet()}))
	}()
	d.url = "http://" + host
	d.must("POST", "/api/session", api.Session{Token: token}, nil)
	c, _, err := d.dial(d.client, d.url)
	if err != nil {
		t.Fatal(err)
	}
	defer c.CloseNow()
	asked(t, c, `{"text": "nonsense", "look": {}}`)
	stop()
	if _, _, err := c.Read(t.Context()); err == nil {
		t.Error("the line still speaks")
	}
	select {
	case err := <-ended:
		if err != nil && err != http.ErrServerClosed {
			t.Error(err)
		}
	case <-time.After(20 * time.Second):
		t.Error("the program does not stop while a line is open")
	}
}
