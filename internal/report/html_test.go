package report

import (
	"bytes"
	"encoding/xml"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"steelyard/evaluation"
	"steelyard/internal/draw"
)

// element is one element of a page: its name, attributes and all its text.
type element struct {
	name  string
	attrs map[string]string
	text  string
}

// elementsOf parses a page strictly.
func elementsOf(t testing.TB, page []byte) []element {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(page))
	var all []element
	var open []int
	for {
		tok, err := d.Token()
		if err == io.EOF {
			return all
		}
		if err != nil {
			t.Fatal(err)
		}
		switch tok := tok.(type) {
		case xml.StartElement:
			el := element{name: tok.Name.Local, attrs: map[string]string{}}
			for _, a := range tok.Attr {
				el.attrs[a.Name.Local] = a.Value
			}
			open = append(open, len(all))
			all = append(all, el)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			for _, i := range open {
				all[i].text += string(tok)
			}
		}
	}
}

func TestPageNeedsNothingElse(t *testing.T) {
	for _, name := range machines {
		page, _ := write(t, ".html", evaluated(t, name), Options{})
		for _, el := range elementsOf(t, page) {
			if slices.Contains([]string{"script", "link", "img", "iframe", "object", "embed", "base", "form"}, el.name) {
				t.Errorf("%s: there is a <%s>", name, el.name)
			}
			for key, value := range el.attrs {
				if strings.HasPrefix(key, "on") || key == "src" || key == "href" && !strings.HasPrefix(value, "#") {
					t.Errorf("%s: <%s %s=%q>", name, el.name, key, value)
				}
				if strings.Contains(value, "://") && key != "xmlns" {
					t.Errorf("%s: <%s %s=%q> names another place", name, el.name, key, value)
				}
			}
		}
		for _, m := range regexp.MustCompile(`(url\(|@import)[^;)]*`).FindAll(page, -1) {
			if !bytes.HasPrefix(m, []byte("url(#")) {
				t.Errorf("%s: style asks for %q", name, m)
			}
		}
	}
}

func TestPageReadsWithoutSight(t *testing.T) {
	page, _ := write(t, ".html", evaluated(t, "cam-curl"), Options{})
	ids, count := map[string]bool{}, map[string]int{}
	elements := elementsOf(t, page)
	for _, el := range elements {
		count[el.name]++
		if id := el.attrs["id"]; id != "" {
			if ids[id] {
				t.Errorf("two elements have the id %q", id)
			}
			ids[id] = true
		}
	}
	for i, el := range elements {
		switch el.name {
		case "html":
			if el.attrs["lang"] != "en" {
				t.Errorf("the page's language is %q, want en", el.attrs["lang"])
			}
		case "a":
			if !ids[strings.TrimPrefix(el.attrs["href"], "#")] {
				t.Errorf("%q leads nowhere", el.attrs["href"])
			}
		case "th":
			if s := el.attrs["scope"]; s != "col" && s != "row" {
				t.Errorf("heading %q has scope %q", el.text, s)
			}
		case "svg":
			if el.attrs["role"] != "img" || elements[i+1].name != "title" || elements[i+2].name != "desc" || len(elements[i+2].text) < 30 {
				t.Errorf("a drawing without a title and a description: %v", el.attrs)
			}
		}
	}
	for name, want := range map[string]int{"main": 1, "h1": 1, "header": 1, "footer": 1, "nav": 1, "caption": 4, "figure": 4, "figcaption": 4, "svg": 9} {
		if count[name] != want {
			t.Errorf("%d <%s>, want %d", count[name], name, want)
		}
	}
}

func TestForeignAndHostileNames(t *testing.T) {
	page, _ := write(t, ".html", evaluated(t, "dead-point"), Options{})
	const name = `Μοχλός рычаг 腕の杠杆 ذراع <script>alert("x")</script>`
	for _, el := range elementsOf(t, page) {
		switch {
		case el.name == "h1" && el.text != name:
			t.Errorf("the heading is %q, want %q", el.text, name)
		case el.name == "title" && strings.Contains(el.text, "alert") && el.text != name:
			t.Errorf("a title is %q, want %q", el.text, name)
		}
	}
	for _, text := range []string{"Смотри руководство &amp; &lt;b&gt;start light", "ベース"} {
		if !bytes.Contains(page, []byte(text)) {
			t.Errorf("the page lacks %q", text)
		}
	}
	if bytes.Contains(page, []byte("<script")) || bytes.Contains(page, []byte("<b>")) {
		t.Error("a name of the sheet became a part of the page")
	}
}

func TestDarkRulesCoverEveryColour(t *testing.T) {
	for _, name := range machines {
		page, _ := write(t, ".html", evaluated(t, name), Options{})
		_, rules, _ := bytes.Cut(page, []byte("prefers-color-scheme: dark"))
		for _, m := range colour.FindAllSubmatch(page, -1) {
			if !bytes.Contains(rules, []byte(`svg [fill="`+string(m[2])+`"] { fill: #`)) {
				t.Errorf("%s: %s stays as it is in the dark", name, m[2])
			}
		}
	}
}

func TestInksPairThemes(t *testing.T) {
	// No colour on light may stand for two different ones on dark.
	for _, name := range machines {
		e := evaluated(t, name)
		seen := map[string]string{}
		var k inks
		for _, f := range figures(e, Options{}.units()) {
			light := k.mustDraw(t, f, draw.Light)
			dark := k.mustDraw(t, f, draw.Dark)
			if len(light) != len(dark) {
				t.Fatalf("%s, %s: %d colours on light and %d on dark", name, f.title, len(light), len(dark))
			}
			for i := range light {
				if other, known := seen[light[i]]; known && other != dark[i] {
					t.Errorf("%s, %s: %s is both %s and %s on dark", name, f.title, light[i], other, dark[i])
				}
				seen[light[i]] = dark[i]
			}
		}
	}
}

// mustDraw returns the colours of a figure in order.
func (k *inks) mustDraw(t testing.TB, f figure, th draw.Theme) []string {
	t.Helper()
	s := draw.New(f.title, th)
	pg := s.AddPage(draw.Size{W: 100, H: 100})
	f.draw(canvas{pg, s, Options{}.units()}, pg.Bounds())
	var b bytes.Buffer
	if _, err := draw.WriteSVG(&b, s); err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, m := range colour.FindAllStringSubmatch(b.String(), -1) {
		out = append(out, m[2])
	}
	return out
}

func TestCautionsAlwaysStand(t *testing.T) {
	e := evaluated(t, "cam-curl")
	date := time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)
	page, _ := write(t, ".html", e, Options{Date: date})
	scene, _ := write(t, ".svg", e, Options{Date: date})
	text := terminalText(t, e, 100, Options{})
	for _, want := range []string{"Seat the pin fully before lifting.", "not a measurement of safety", "Start light", "Stop at pain", "licensed professional", "competent engineer"} {
		for form, out := range map[string]string{"html": string(page), "pages": string(scene), "terminal": strings.Join(strings.Fields(text), " ")} {
			if !strings.Contains(out, want) {
				t.Errorf("%s lacks %q", form, want)
			}
		}
	}
	if !bytes.Contains(page, []byte("25 November 2026")) || !bytes.Contains(scene, []byte("25 November 2026")) {
		t.Error("the date is missing")
	}
}

func TestMissingBandIsSaid(t *testing.T) {
	e := evaluatedText(t, mustRead(t, "level"), evaluation.Options{})
	page, _ := write(t, ".html", e, Options{})
	for _, want := range []string{"No number in the sheet carries a ±", "Nothing on this machine can be adjusted"} {
		if !bytes.Contains(page, []byte(want)) {
			t.Errorf("the page lacks %q", want)
		}
	}
}
