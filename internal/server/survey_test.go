package server

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"steelyard/internal/server/api"
)

// A camera square to the plane, 500 pixels a metre: what is 250 pixels right of
// and 500 above the origin is 0.5 m forward and 1 m up.
func TestSurvey(t *testing.T) {
	d := open(t, t.TempDir())
	origin := api.Pixel{1000, 1200}
	in := api.Survey{Width: 2048, Height: 1536, Origin: &origin, Scale: &api.ScaleLine{From: api.Pixel{500, 700}, To: api.Pixel{1500, 700}, Length: 2, Plus: 0.004},
		Points: []api.Pixel{{1250, 700}, {1000, 1200}}, Outline: []api.Pixel{{1050, 1200}, {1035, 1165}, {1000, 1150}, {965, 1165}, {950, 1200}, {965, 1235}, {1000, 1250}, {1035, 1235}}}
	var out api.Surveyed
	d.must("POST", "/api/survey", in, &out)
	near := func(what string, got, want, within float64) {
		t.Helper()
		if math.Abs(got-want) > within {
			t.Errorf("%s: %g, want %g", what, got, want)
		}
	}
	near("forward", out.Places[0].At[0], 0.5, 1e-6)
	near("up", out.Places[0].At[1], 1, 1e-6)
	near("origin", math.Hypot(out.Places[1].At[0], out.Places[1].At[1]), 0, 1e-6)
	near("metres a pixel", out.PerPixel, 0.002, 1e-9)
	if p := out.Places[0].Plus; !(p[0] > 0.002 && p[0] < 0.1 && p[1] > 0.002 && p[1] < 0.1) {
		t.Errorf("± %v", p)
	}
	for _, p := range out.Outline { // a circle of 50 pixels about the origin
		near("cam", math.Hypot(p.At[0], p.At[1]), 0.1, 0.003)
	}
	if len(out.Outline) < 8 || len(out.Words) == 0 {
		t.Errorf("%d points, %q", len(out.Outline), out.Words)
	}
	in.Mirror = true
	d.must("POST", "/api/survey", in, &out)
	near("forward, from the left", out.Places[0].At[0], -0.5, 1e-6)
}

func TestRefusedSurveys(t *testing.T) {
	d := open(t, t.TempDir())
	base := api.Survey{Width: 2048, Height: 1536, Points: []api.Pixel{{1, 1}}}
	for _, c := range []struct {
		name   string
		change func(s *api.Survey)
		want   int
	}{
		{"nothing of known size", func(s *api.Survey) {}, 422},
		{"a scale line of no length", func(s *api.Survey) {
			s.Scale = &api.ScaleLine{From: api.Pixel{100, 100}, To: api.Pixel{100, 100}, Length: 1}
		}, 422},
		{"a known length of nothing", func(s *api.Survey) {
			s.Scale = &api.ScaleLine{From: api.Pixel{100, 100}, To: api.Pixel{900, 100}}
		}, 422},
		{"four corners in a line", func(s *api.Survey) {
			s.Rectangle = &api.Rectangle{Corners: [4]api.Pixel{{100, 100}, {300, 300}, {500, 500}, {700, 700}}, Width: 1, Height: 1}
		}, 422},
		{"a plate of two places", func(s *api.Survey) { s.Plate = &api.Plate{Rim: []api.Pixel{{1, 1}, {2, 2}}, Diameter: 0.45} }, 422},
		{"too many places", func(s *api.Survey) { s.Points = make([]api.Pixel, mostPoints+1) }, 400},
	} {
		s := base
		c.change(&s)
		if status, p := d.ask("POST", "/api/survey", s, nil); status != c.want || !strings.Contains(p.Message, ";") && !strings.Contains(p.Message, ":") {
			t.Errorf("%s: %d %+v", c.name, status, p)
		}
	}
}

func TestBackdrop(t *testing.T) {
	d := open(t, t.TempDir())
	var photo api.Photo
	if status, p := d.send("POST", "/api/photos", "image/jpeg", bytes.NewReader(jpegOf(t, 400, 300)), &photo); status != 200 {
		t.Fatalf("%d %+v", status, p)
	}
	sh := d.create(lever)
	survey := api.Survey{Width: 400, Height: 300, Scale: &api.ScaleLine{From: api.Pixel{50, 50}, To: api.Pixel{350, 50}, Length: 1.5}, Points: []api.Pixel{}}
	var got api.Sheet
	d.must("PUT", "/api/sheets/"+sh.ID+"/backdrop", api.SetBackdrop{Photo: photo.ID, Survey: &survey}, &got)
	if got.Backdrop == nil || got.Backdrop.Photo.ID != photo.ID || got.Backdrop.Photo.Width != 400 || got.Backdrop.Survey.Scale.Length != 1.5 {
		t.Fatalf("%+v", got.Backdrop)
	}
	m := got.Backdrop.Plane // 200 pixels a metre, so one pixel right is 5 mm
	if perPixel := m[0] / m[8]; math.Abs(perPixel-0.005) > 1e-9 {
		t.Errorf("%g m a pixel", perPixel)
	}
	for name, in := range map[string]api.SetBackdrop{"no scale": {Photo: photo.ID}, "a bad scale": {Photo: photo.ID, Survey: &api.Survey{Width: 1, Height: 1}}, "no such photo": {Photo: "x", Survey: &survey}} {
		if status, _ := d.ask("PUT", "/api/sheets/"+sh.ID+"/backdrop", in, nil); status < 400 || status >= 500 {
			t.Errorf("%s: %d", name, status)
		}
	}
	d.must("PUT", "/api/sheets/"+sh.ID+"/backdrop", api.SetBackdrop{}, &got)
	if got.Backdrop != nil {
		t.Error("the photo was not taken away")
	}
}
