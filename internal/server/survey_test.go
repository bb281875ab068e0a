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
	in := api.Survey{Width: 2048, Height: 1536, Origin: &origin, Lines: []api.ScaleLine{{From: api.Pixel{500, 700}, To: api.Pixel{1500, 700}, Length: 2, Plus: 0.004}},
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

// ring is n places round a middle, px.
func ring(right, down, along, across float64, n int) []api.Pixel {
	out := make([]api.Pixel, n)
	for i := range out {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		out[i] = api.Pixel{right + along*cos, down + across*sin}
	}
	return out
}

// A plate seen as an ellipse looks alike turned either way: the page is to ask,
// and the answer or a second size decides. 350 px over 450 px is 39° off square.
func TestSurveyAsksBack(t *testing.T) {
	d := open(t, t.TempDir())
	in := api.Survey{Width: 2048, Height: 1536, Plates: []api.Plate{{Rim: ring(1024, 768, 175, 225, 8), Diameter: 0.45}}, Points: []api.Pixel{{400, 300}}}
	var asked, left, right api.Surveyed
	d.must("POST", "/api/survey", in, &asked)
	if !asked.Ambiguous || len(asked.Sides) != 2 || asked.Sides[0] != api.LeftSide || asked.Sides[1] != api.RightSide || len(asked.Rims) != 1 {
		t.Fatalf("ambiguous %v, %q, %d rims", asked.Ambiguous, asked.Sides, len(asked.Rims))
	}
	in.Near = api.LeftSide
	d.must("POST", "/api/survey", in, &left)
	in.Near = api.RightSide
	d.must("POST", "/api/survey", in, &right)
	if left.Ambiguous || right.Ambiguous || len(left.Sides) > 0 || left.Places[0].Plus[0] > asked.Places[0].Plus[0]/2 {
		t.Errorf("± %v after ± %v, sides %q", left.Places[0].Plus, asked.Places[0].Plus, left.Sides)
	}
	// What is nearer looks larger, so the same pixels there are less of a machine.
	if l, r := math.Abs(left.Places[0].At[0]), math.Abs(right.Places[0].At[0]); !(l < r) {
		t.Errorf("the left is %g m off if nearer, %g m if further", l, r)
	}
}

// Five sizes at 500 pixels a metre, one of them a level line as well.
func TestSurveyOfSeveralSizes(t *testing.T) {
	d := open(t, t.TempDir())
	origin := api.Pixel{1000, 1200}
	in := api.Survey{Width: 2048, Height: 1536, Origin: &origin, Lens: 0.75, Level: &[2]api.Pixel{{1800, 1400}, {200, 1400}}, Points: []api.Pixel{{1250, 700}},
		Plates:     []api.Plate{{Rim: ring(500, 500, 112.5, 112.5, 8), Diameter: 0.45, Plus: 0.001}, {Rim: ring(1600, 900, 112.5, 112.5, 8), Diameter: 0.45, Plus: 0.001}},
		Rectangles: []api.Rectangle{{Corners: [4]api.Pixel{{900, 400}, {1200, 400}, {1200, 600}, {900, 600}}, Width: 0.6, Height: 0.4}},
		Lines:      []api.ScaleLine{{From: api.Pixel{200, 1400}, To: api.Pixel{1800, 1400}, Length: 3.2}, {From: api.Pixel{300, 200}, To: api.Pixel{300, 1200}, Length: 2}}}
	var out api.Surveyed
	d.must("POST", "/api/survey", in, &out)
	if at := out.Places[0].At; math.Hypot(at[0]-0.5, at[1]-1) > 1e-3 || out.Ambiguous || len(out.Rims) != 2 {
		t.Errorf("place %v, ambiguous %v, %d rims", at, out.Ambiguous, len(out.Rims))
	}
	in.Lines = append(in.Lines, in.Lines[0])
	if status, p := d.ask("POST", "/api/survey", in, nil); status != 422 || !strings.Contains(p.Message, "6 known sizes") {
		t.Errorf("six sizes: %d %+v", status, p)
	}
}

// The edge drawn over the photo passes where the finger tapped round a circle
// of 50 pixels, and the outline's ± is that of a tap: 3 pixels of 2 mm.
func TestSurveyDrawsTheCam(t *testing.T) {
	d := open(t, t.TempDir())
	in := api.Survey{Width: 2048, Height: 1536, Lines: []api.ScaleLine{{From: api.Pixel{500, 700}, To: api.Pixel{1500, 700}, Length: 2}}, Points: []api.Pixel{}, Outline: ring(1000, 700, 50, 50, 12)}
	var out api.Surveyed
	d.must("POST", "/api/survey", in, &out)
	if len(out.Edge) < 72 {
		t.Errorf("%d places on the edge", len(out.Edge))
	}
	for _, p := range out.Edge {
		if r := math.Hypot(p[0]-1000, p[1]-700); math.Abs(r-50) > 0.5 {
			t.Errorf("edge %.2f px from the middle", r)
			break
		}
	}
	for _, p := range out.Outline {
		if math.Abs(p.Plus[0]-0.006) > 1e-4 || math.Abs(p.Plus[1]-0.006) > 1e-4 {
			t.Errorf("± %v m; want 6 mm", p.Plus)
			break
		}
	}
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
			s.Lines = []api.ScaleLine{{From: api.Pixel{100, 100}, To: api.Pixel{100, 100}, Length: 1}}
		}, 422},
		{"a known length of nothing", func(s *api.Survey) {
			s.Lines = []api.ScaleLine{{From: api.Pixel{100, 100}, To: api.Pixel{900, 100}}}
		}, 422},
		{"four corners in a line", func(s *api.Survey) {
			s.Rectangles = []api.Rectangle{{Corners: [4]api.Pixel{{100, 100}, {300, 300}, {500, 500}, {700, 700}}, Width: 1, Height: 1}}
		}, 422},
		{"a plate of two places", func(s *api.Survey) { s.Plates = []api.Plate{{Rim: []api.Pixel{{1, 1}, {2, 2}}, Diameter: 0.45}} }, 422},
		{"no side of a photo", func(s *api.Survey) {
			s.Lines, s.Near = []api.ScaleLine{{From: api.Pixel{100, 100}, To: api.Pixel{900, 100}, Length: 1}}, "<b>front</b>"
		}, 422},
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
	survey := api.Survey{Width: 400, Height: 300, Lines: []api.ScaleLine{{From: api.Pixel{50, 50}, To: api.Pixel{350, 50}, Length: 1.5}}, Points: []api.Pixel{}}
	var got api.Sheet
	d.must("PUT", "/api/sheets/"+sh.ID+"/backdrop", api.SetBackdrop{Photo: photo.ID, Survey: &survey}, &got)
	if got.Backdrop == nil || got.Backdrop.Photo.ID != photo.ID || got.Backdrop.Photo.Width != 400 || got.Backdrop.Survey.Lines[0].Length != 1.5 {
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
	for _, survey := range []string{`{}`, `[]`, `{"width": 400, "height": 300, "plates": [{"rim": []}]}`} {
		if err := d.store.SetBackdrop(t.Context(), sh.ID, photo.ID, survey); err != nil {
			t.Fatal(err)
		}
		if d.must("GET", "/api/sheets/"+sh.ID, nil, &got); got.Text != lever || got.Backdrop != nil {
			t.Errorf("survey %s: %+v", survey, got.Backdrop)
		}
	}
	d.must("PUT", "/api/sheets/"+sh.ID+"/backdrop", api.SetBackdrop{}, &got)
	if got.Backdrop != nil {
		t.Error("the photo was not taken away")
	}
}
