package server

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"image/png"
	"io"
	"log/slog"
	"math"
	"net/http"
	"strings"
	"testing"
	"time"

	"steelyard/demo"
	"steelyard/internal/server/api"
	"steelyard/mechanism"
)

func quiet() *slog.Logger { return slog.New(slog.NewTextHandler(io.Discard, nil)) }

// One round trip: the finger moves the plates to 0.6 m, and the force at the
// start is 20 kg·g·0.6/0.8.
func TestDragInOneRoundTrip(t *testing.T) {
	d := open(t, t.TempDir())
	var p api.Preview
	d.must("POST", "/api/preview", api.Ask{Text: lever, Edits: []api.Edit{{Point: &api.PointDrag{Point: "horn", To: api.Place{0.6, 0}}}}, Look: api.Look{Frames: api.OneFrame}}, &p)
	want := 20 * mechanism.Gravity * 0.6 / 0.8
	if !strings.Contains(p.Text, "horn: [600 ± 4, 0]") || math.Abs(*p.Curve.Hold[0]-want) > 0.01 || len(p.Frames) != 1 || p.Drawing == nil {
		t.Errorf("%s, %g N, want %g", p.Text, *p.Curve.Hold[0], want)
	}
	sh := d.create(lever)
	d.must("POST", "/api/preview", api.Ask{Sheet: sh.ID, Look: api.Look{Settings: []api.Choice{{Setting: "plates", Value: "40 kg"}}}}, &p)
	if math.Abs(*p.Curve.Hold[0]-20*mechanism.Gravity) > 0.01 {
		t.Errorf("40 kg: %g N", *p.Curve.Hold[0])
	}
	var now api.Sheet
	if d.must("GET", "/api/sheets/"+sh.ID, nil, &now); now.Revision != 1 || now.Text != lever {
		t.Error("a preview stored something")
	}
}

// event is one server-sent event.
type event struct{ name, data string }

func readEvents(r io.Reader, each func(event) bool) {
	var e event
	lines := bufio.NewScanner(r)
	lines.Buffer(nil, 8<<20)
	for lines.Scan() {
		switch line := lines.Text(); {
		case strings.HasPrefix(line, "event: "):
			e.name = line[len("event: "):]
		case strings.HasPrefix(line, "data: "):
			e.data = line[len("data: "):]
		case line == "":
			if !each(e) {
				return
			}
		}
	}
}

func (d *desk) evaluate(ctx context.Context, in api.Ask, each func(event) bool) {
	d.t.Helper()
	body, err := json.Marshal(in)
	if err != nil {
		d.t.Fatal(err)
	}
	req, err := http.NewRequestWithContext(ctx, "POST", d.url+"/api/evaluate", bytes.NewReader(body))
	if err != nil {
		d.t.Fatal(err)
	}
	req.Header.Set("Content-Type", api.JSON)
	res, err := d.client.Do(req)
	if err != nil {
		d.t.Fatal(err)
	}
	defer res.Body.Close()
	if kind := res.Header.Get("Content-Type"); kind != api.Events {
		d.t.Fatalf("%d %s", res.StatusCode, kind)
	}
	readEvents(res.Body, each)
}

func TestSampledBandTellsItsProgress(t *testing.T) {
	d := open(t, t.TempDir())
	ask := api.Ask{Text: lever, Look: api.Look{Positions: 21}}
	var names []string
	var p api.Preview
	collect := func(e event) bool {
		names = append(names, e.name)
		if e.name == "done" {
			if err := json.Unmarshal([]byte(e.data), &p); err != nil {
				t.Error(err)
			}
		}
		return true
	}
	d.evaluate(t.Context(), ask, collect)
	if len(names) < 3 || names[0] != "progress" || names[len(names)-1] != "done" {
		t.Fatalf("%q", names)
	}
	// ±4 mm of 400 mm is ±1 %: half of a normal distribution's 95 % width.
	width := (*p.Band.High[0] - *p.Band.Low[0]) / 2 / *p.Curve.Lift[0]
	if !p.Band.Sampled || p.Band.Draws != 2000 || math.Abs(width-0.0098) > 0.0006 {
		t.Errorf("%+v, half width %g of the force", p.Band, width)
	}
	names = nil
	d.evaluate(t.Context(), ask, collect)
	if len(names) != 1 || names[0] != "done" || p.Band == nil {
		t.Errorf("the second time it was computed again: %q", names)
	}
	names = nil
	d.evaluate(t.Context(), api.Ask{Text: "nonsense", Look: api.Look{}}, collect)
	if len(names) != 1 || len(p.Problems) == 0 {
		t.Errorf("an unusable sheet: %q, %+v", names, p.Problems)
	}
}

// Whoever leaves stops the work: the next one is served at once.
func TestSampledBandCanBeCancelled(t *testing.T) {
	d := open(t, t.TempDir())
	slow := ""
	for _, f := range demo.Machines() {
		if f.Name == "quarter-tackle.yaml" {
			slow = string(f.Data)
		}
	}
	ctx, cancel := context.WithCancel(t.Context())
	defer cancel()
	progress := 0
	d.evaluate(ctx, api.Ask{Text: slow, Look: api.Look{Positions: 401}}, func(e event) bool {
		if e.name != "progress" {
			t.Errorf("%s came before it could be cancelled", e.name)
			return false
		}
		progress++
		cancel()
		return false
	})
	done := make(chan struct{})
	go func() {
		d.evaluate(t.Context(), api.Ask{Text: lever, Look: api.Look{Positions: 11}}, func(e event) bool { return e.name != "done" })
		close(done)
	}()
	select {
	case <-done:
	case <-time.After(30 * time.Second):
		t.Fatal("the cancelled work still holds the processors")
	}
	if progress == 0 {
		t.Error("no progress was told")
	}
}

func TestCompareAndExplain(t *testing.T) {
	d := open(t, t.TempDir())
	sh := d.create(lever)
	var c api.Comparison
	d.must("POST", "/api/compare", api.Compare{Phase: api.Holding, Items: []api.Compared{{Sheet: sh.ID}, {Text: lever, Settings: []api.Choice{{Setting: "plates", Value: "40 kg"}}}, {Text: "nonsense"}}}, &c)
	if len(c.Items) != 3 || math.Abs(*c.Items[1].ByShare[0]-2**c.Items[0].ByShare[0]) > 0.02 || c.Items[2].Trouble == "" || len(c.Words) != 1 {
		t.Errorf("%+v", c.Words)
	}
	var x api.Explanation
	d.must("POST", "/api/explain", api.Ask{Sheet: sh.ID}, &x)
	if len(x.Steps) < 5 || len(x.Preview.Frames) == 0 || x.Message == "" {
		t.Errorf("%d steps", len(x.Steps))
	}
}

func TestReports(t *testing.T) {
	d := open(t, t.TempDir())
	sh := d.create(exact)
	for ext, begins := range map[string]string{"pdf": "%PDF-", "svg": "<?xml", "png": "\x89PNG", "html": "<!doctype html>"} {
		res, body := d.raw("/api/sheets/"+sh.ID+"/report/"+ext+"?set=plates%3D40%20kg&units=imperial&tempo=2-0-2-0", nil)
		if res.StatusCode != 200 || !strings.HasPrefix(strings.ToLower(string(body[:min(len(body), 20)])), strings.ToLower(begins)) && ext != "svg" {
			t.Errorf("%s: %d, %.40q", ext, res.StatusCode, body)
		}
		if ext == "svg" && !bytes.Contains(body, []byte("<svg")) {
			t.Errorf("no svg: %.40q", body)
		}
		if got := res.Header.Get("Content-Disposition"); got != "attachment; filename=Lever."+ext {
			t.Errorf("%s: %s", ext, got)
		}
		if ext == "png" {
			if _, err := png.DecodeConfig(bytes.NewReader(body)); err != nil {
				t.Error(err)
			}
		}
	}
	for path, want := range map[string]int{"report/exe": 404, "report/pdf?set=plates": 400, "report/pdf?set=plates%3D41%20kg": 422, "report/pdf?set=boat%3D1": 422,
		"report/pdf?tempo=fast": 400, "report/pdf?tempo=a-b-c-d": 400, "report/pdf?tempo=99-0-99-0": 422} {
		if status, p := d.ask("GET", "/api/sheets/"+sh.ID+"/"+path, nil, nil); status != want {
			t.Errorf("%s: %d %+v", path, status, p)
		}
	}
}

func TestOpenAPIAndExample(t *testing.T) {
	d := open(t, t.TempDir())
	_, body := d.raw("/api/openapi.json", nil)
	var doc struct {
		OpenAPI string
		Paths   map[string]any
	}
	if err := json.Unmarshal(body, &doc); err != nil || doc.OpenAPI != "3.1.0" || doc.Paths["/api/preview"] == nil {
		t.Errorf("%v, %s", err, doc.OpenAPI)
	}
	_, text := d.raw("/api/example/machine", nil)
	var p api.Preview
	d.must("POST", "/api/preview", api.Ask{Text: string(text)}, &p)
	if len(p.Problems) > 0 || p.Curve == nil {
		t.Errorf("the example: %+v", p.Problems)
	}
	if status, _ := d.ask("GET", "/api/example/boat", nil, nil); status != 404 {
		t.Errorf("no such example: %d", status)
	}
}
