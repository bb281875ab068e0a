package server

import (
	"bytes"
	"encoding/json"
	"io"
	"log/slog"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"steelyard/internal/server/api"
	"steelyard/internal/store"
)

// lever is a level arm of 0.8 m with 20 kg half-way out, raised by 90°: the
// hand holds 20 kg·g·cos φ/2 at the angle φ.
const lever = `steelyard: machine 1
name: Lever
points:
  axle: [0, 0]
  horn: [400 ± 4, 0]
  grip: [800, 0]
links:
  ground: [axle]
  arm: [axle, horn, grip]
loads:
  plates: {kind: plates, at: horn, mass: 20 kg}
contact: {kind: grip, at: grip, name: hand}
travel: {turn: arm, from: 0 deg, to: 90 deg}
settings:
  plates: {sets: loads.plates.mass, range: {from: 0 kg, to: 50 kg, step: 2.5 kg}, default: 20 kg}
`

// exact is the lever without a ±, whose reports need no band.
var exact = strings.Replace(lever, " ± 4", "", 1)

// desk is a running server and the browser of a person who opened it.
type desk struct {
	t      testing.TB
	url    string
	client *http.Client
	store  *store.Store
}

const token = "0123456789abcdef0123456789abcdef"

func fixedNow() time.Time { return time.Date(2026, 3, 1, 9, 0, 0, 0, time.UTC) }

var pageFiles = fstest.MapFS{
	"index.html":       {Data: []byte("<!doctype html><title>Steelyard</title>" + strings.Repeat("<p>row</p>", 500))},
	"assets/app-ab.js": {Data: []byte(strings.Repeat("console.log(1);", 500))},
	"mark.svg":         {Data: []byte("<svg xmlns='http://www.w3.org/2000/svg'/>")},
}

// open starts a server on the data in folder and shows it the token.
func open(t testing.TB, folder string) *desk {
	t.Helper()
	st, err := store.Open(folder, time.Now)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { st.Close() })
	demo := []store.File{{Name: "lever.yaml", Data: []byte(strings.Replace(lever, "name: Lever", "name: Demo lever", 1))}}
	if err := st.FillDemo(t.Context(), demo, true); err != nil {
		t.Fatal(err)
	}
	srv := httptest.NewUnstartedServer(nil)
	host := srv.Listener.Addr().String()
	srv.Config.Handler = New(Config{Store: st, Page: pageFiles, Demo: demo, Engine: "test", Hosts: []string{host}, Token: token, Now: fixedNow,
		Log: slog.New(slog.NewTextHandler(io.Discard, nil))})
	srv.Start()
	t.Cleanup(srv.Close)
	jar, _ := cookiejar.New(nil) // without options it cannot fail
	d := &desk{t, srv.URL, &http.Client{Jar: jar}, st}
	if status, _ := d.ask("POST", "/api/session", api.Session{Token: token}, nil); status != http.StatusNoContent {
		t.Fatalf("the token was refused with %d", status)
	}
	return d
}

// ask sends a request with a JSON body and reads the JSON answer into out; a
// failure is returned as its problem.
func (d *desk) ask(method, path string, in, out any) (int, api.Problem) {
	d.t.Helper()
	var body io.Reader
	if in != nil {
		data, err := json.Marshal(in)
		if err != nil {
			d.t.Fatal(err)
		}
		body = bytes.NewReader(data)
	}
	return d.send(method, path, api.JSON, body, out)
}

func (d *desk) send(method, path, kind string, body io.Reader, out any) (int, api.Problem) {
	d.t.Helper()
	req, err := http.NewRequest(method, d.url+path, body)
	if err != nil {
		d.t.Fatal(err)
	}
	req.Header.Set("Content-Type", kind)
	res, err := d.client.Do(req)
	if err != nil {
		d.t.Fatal(err)
	}
	defer res.Body.Close()
	data, err := io.ReadAll(res.Body)
	if err != nil {
		d.t.Fatal(err)
	}
	var p api.Problem
	if res.StatusCode >= 400 {
		if err := json.Unmarshal(data, &p); err != nil || p.Message == "" || p.Code == "" {
			d.t.Errorf("%s %s: %d without a problem: %s", method, path, res.StatusCode, data)
		}
		return res.StatusCode, p
	}
	if out != nil {
		decoder := json.NewDecoder(bytes.NewReader(data))
		decoder.DisallowUnknownFields()
		if err := decoder.Decode(out); err != nil {
			d.t.Errorf("%s %s: %v in %.200s", method, path, err, data)
		}
	}
	return res.StatusCode, p
}

// must asks and expects success.
func (d *desk) must(method, path string, in, out any) {
	d.t.Helper()
	if status, p := d.ask(method, path, in, out); status >= 400 {
		d.t.Fatalf("%s %s: %d %+v", method, path, status, p)
	}
}

// create stores a text and returns the sheet.
func (d *desk) create(text string) api.Sheet {
	d.t.Helper()
	var saved api.Saved
	d.must("POST", "/api/sheets", api.NewSheet{Text: text}, &saved)
	return saved.Sheet
}

// raw gets an address as it is.
func (d *desk) raw(path string, header http.Header) (*http.Response, []byte) {
	d.t.Helper()
	req, err := http.NewRequest("GET", d.url+path, nil)
	if err != nil {
		d.t.Fatal(err)
	}
	for k, v := range header {
		req.Header[k] = v
	}
	res, err := d.client.Do(req)
	if err != nil {
		d.t.Fatal(err)
	}
	defer res.Body.Close()
	data, err := io.ReadAll(res.Body)
	if err != nil {
		d.t.Fatal(err)
	}
	return res, data
}
