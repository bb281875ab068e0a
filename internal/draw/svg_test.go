package draw

import (
	"bytes"
	"flag"
	"os"
	"regexp"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the golden files; review their diff as code")

func svgOf(t *testing.T, s *Scene) (string, []string) {
	t.Helper()
	var b bytes.Buffer
	warnings, err := WriteSVG(&b, s)
	if err != nil {
		t.Fatal(err)
	}
	if err := wellFormed(b.Bytes()); err != nil {
		t.Fatalf("not XML: %v", err)
	}
	return b.String(), warnings
}

// small holds one entry of each kind.
func small() *Scene {
	s := New(`Lever <"A" & B>`, Light)
	s.Desc, s.Lang = "One of each.", "en"
	p := s.AddPage(Size{60, 40})
	p.Fill(Rect{5, 5, 10, 8}.Path(), Alpha(Light.Load, 0.5))
	p.Layer("Pin", "A joint", func() { p.Stroke(Circle(Point{25, 10}, 4), Pen{Width: 0.5, Color: Light.Ink, Dash: []float64{2, 1}}) })
	p.Clip(Rect{35, 5, 10, 10}.Path(), func() {
		p.Stroke(Polyline(Point{30, 5}, Point{50, 15}), Pen{Width: 1, Color: Light.Rope, Cap: ButtCap, Join: MiterJoin})
	})
	p.TextAt(Point{30, 25}, "angle φ < 5°", Font{Size: 4, Bold: true, Color: Light.Ink}, Centre)
	p.TurnedText(Point{5, 38}, 0.5, "up", Font{Size: 4, Color: Light.Faint}, Left)
	return s
}

func TestSVGGolden(t *testing.T) {
	const file = "testdata/small.svg"
	got, warnings := svgOf(t, small())
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("SVG differs from %s; got\n%s", file, got)
	}
	if len(warnings) != 0 {
		t.Errorf("warnings %q, want none", warnings)
	}
}

func TestSVGIdsDifferBetweenDrawings(t *testing.T) {
	id := regexp.MustCompile(`id="([^"]+)"`)
	a, _ := svgOf(t, small())
	other := small()
	other.Pages()[0].Fill(Rect{0, 0, 1, 1}.Path(), Light.Ink)
	b, _ := svgOf(t, other)
	ia, ib := id.FindStringSubmatch(a)[1], id.FindStringSubmatch(b)[1]
	if ia == ib {
		t.Errorf("two drawings share the id %q: on one web page their clips would mix", ia)
	}
	if !strings.Contains(a, `clip-path="url(#`+ia+`)"`) {
		t.Errorf("no group uses the clip %q", ia)
	}
}

func TestSVGLinks(t *testing.T) {
	for _, c := range []struct {
		name, href string
		kept       bool
	}{
		{"web", "https://example.org/?a=1&b=2", true},
		{"mail", "mailto:coach@example.org", true},
		{"script", "javascript:alert(1)", false},
		{"script, disguised", " JaVaScRiPt:alert(1)", false},
		{"data", "data:text/html,x", false},
		{"no scheme", "//example.org", false},
		{"not an address", "http://[", false},
	} {
		s := New("", Light)
		s.AddPage(A4).Link(Rect{1, 1, 5, 5}, c.href)
		out, warnings := svgOf(t, s)
		if kept := strings.Contains(out, "<a href="); kept != c.kept || (len(warnings) == 0) != c.kept {
			t.Errorf("%s: link kept %t with warnings %q, want kept %t", c.name, kept, warnings, c.kept)
		}
	}
}

// Children of an img are hidden from screen readers (ARIA 1.2), so whatever
// holds something to be reached must be a group.
func TestSVGRoles(t *testing.T) {
	disc := func(p *Page) { p.Fill(Circle(Point{5, 5}, 2), Light.Ink) }
	link := func(p *Page) { p.Link(Rect{1, 1, 5, 5}, "https://example.org/") }
	layer := func(title string, draw func(p *Page)) func(p *Page) {
		return func(p *Page) { p.Layer(title, "", func() { draw(p) }) }
	}
	clip := func(draw func(p *Page)) func(p *Page) {
		return func(p *Page) { p.Clip(p.Bounds().Path(), func() { draw(p) }) }
	}
	for _, c := range []struct {
		name string
		draw func(p *Page)
		want string // roles in order: the drawing, then its layers
	}{
		{"plain", disc, "img"},
		{"untitled layer", layer("", disc), "img"},
		{"titled layer", layer("Side view", disc), "group img"},
		{"link", link, "group"},
		{"link in a clip", clip(link), "group"},
		{"link in a layer", layer("Side view", link), "group group"},
		{"layer in a layer", layer("Side view", layer("Pin", disc)), "group group img"},
	} {
		s := New("t", Light)
		c.draw(s.AddPage(A4))
		out, _ := svgOf(t, s)
		var roles []string
		for _, m := range regexp.MustCompile(`role="(\w+)"`).FindAllStringSubmatch(out, -1) {
			roles = append(roles, m[1])
		}
		if got := strings.Join(roles, " "); got != c.want {
			t.Errorf("%s: roles %q, want %q", c.name, got, c.want)
		}
	}
}

func TestStraysAreLeftOutAndReported(t *testing.T) {
	nan := func() float64 { z := 0.0; return z / z }()
	s := New("", Light)
	p := s.AddPage(Size{nan, 20})
	before := len(p.ops)
	p.Fill(Circle(Point{nan, 0}, 3), Light.Ink)
	p.Stroke(Polyline(Point{0, 0}, Point{1e9, 0}), Pen{Width: 1, Color: Light.Ink})
	p.TextAt(Point{0, nan}, "lost", Font{Size: 3, Color: Light.Ink}, Left)
	if len(p.ops) != before {
		t.Errorf("%d entries recorded, want none", len(p.ops)-before)
	}
	if _, warnings := svgOf(t, s); len(warnings) != 4 {
		t.Errorf("warnings %q, want 4: page, area, line, text", warnings)
	}
}
