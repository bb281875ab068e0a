package report

import (
	"bytes"
	"context"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"steelyard/evaluation"
	"steelyard/internal/draw"
	"steelyard/mechanism"
	"steelyard/sheet"
)

// keep is for looking at what the tests draw.
var keep = flag.String("keep", "", "folder in which the written reports are kept")

// machines are the sheets of testdata and the example: a lever, a four-bar, a
// cam with a stack, a sled, springs, a moving sheave, gaps, spikes, wide bands.
var machines = []string{"example", "level", "four-bar", "cam-curl", "sled", "spring-arm", "tackle", "chain-lift", "slack", "dead-point", "rough"}

// evaluated puts a sheet of testdata, or the example, through the engine.
func evaluated(t testing.TB, name string) *evaluation.Evaluation {
	t.Helper()
	data := sheet.Example(sheet.KindMachine)
	if name != "example" {
		data = mustRead(t, name)
	}
	o := evaluation.Options{Draws: 100, Tempo: &mechanism.Tempo{Up: 2, Top: 0.5, Down: 3, Bottom: 0.5}}
	if name == "slack" || name == "dead-point" {
		o.Tempo = nil // a repetition wants the whole travel
	}
	return evaluatedText(t, data, o)
}

func evaluatedText(t testing.TB, data []byte, o evaluation.Options) *evaluation.Evaluation {
	t.Helper()
	doc, err := sheet.Read("test.yaml", data)
	if err != nil {
		t.Fatal(err)
	}
	m, err := doc.Machine()
	if err != nil {
		t.Fatal(err)
	}
	b, err := m.Build(nil)
	if err != nil {
		t.Fatal(err)
	}
	e, err := evaluation.Run(context.Background(), m, b, o)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// write returns the report in one format.
func write(t testing.TB, ext string, e *evaluation.Evaluation, o Options) ([]byte, []string) {
	t.Helper()
	var b bytes.Buffer
	warnings, err := Write(&b, ext, e, o)
	if err != nil {
		t.Fatal(err)
	}
	return b.Bytes(), warnings
}

// wellFormed fails the test unless the text is well-formed XML.
func wellFormed(t testing.TB, what string, text []byte) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(text))
	for {
		if _, err := d.Token(); err == io.EOF {
			return
		} else if err != nil {
			t.Fatalf("%s: %v", what, err)
		}
	}
}

func TestEveryMachineInEveryFormat(t *testing.T) {
	start := map[string]string{".pdf": "%PDF-1.", ".svg": "<svg ", ".png": "\x89PNG", ".html": "<!DOCTYPE html>"}
	for _, name := range machines {
		e := evaluated(t, name)
		for ext, head := range start {
			if ext == ".png" && *keep == "" && name != "level" {
				continue // three pages of pixels take as long as all the rest
			}
			out, warnings := write(t, ext, e, Options{})
			if !bytes.HasPrefix(out, []byte(head)) {
				t.Errorf("%s%s starts with %.20q, want %q", name, ext, out, head)
			}
			if len(warnings) > 0 && name != "dead-point" {
				t.Errorf("%s%s: warnings %q", name, ext, warnings)
			}
			if ext == ".svg" || ext == ".html" {
				wellFormed(t, name+ext, out)
			}
			if *keep != "" {
				if err := os.WriteFile(filepath.Join(*keep, name+ext), out, 0o644); err != nil {
					t.Fatal(err)
				}
			}
		}
	}
}

func TestSameBytesOnEveryRun(t *testing.T) {
	for _, ext := range []string{".pdf", ".svg", ".html"} {
		a, _ := write(t, ext, evaluated(t, "cam-curl"), Options{})
		b, _ := write(t, ext, evaluated(t, "cam-curl"), Options{})
		if !bytes.Equal(a, b) {
			t.Errorf("%s differs between two runs", ext)
		}
	}
}

func TestUnknownFormat(t *testing.T) {
	var b bytes.Buffer
	_, err := Write(&b, ".docx", evaluated(t, "level"), Options{})
	if err == nil || !strings.Contains(err.Error(), `".docx"`) || !strings.Contains(err.Error(), ".pdf") {
		t.Errorf("got error %v, want one that names .docx and what can be written", err)
	}
	if b.Len() > 0 {
		t.Errorf("%d bytes were written all the same", b.Len())
	}
}

type brokenPipe struct{}

func (brokenPipe) Write([]byte) (int, error) { return 0, errBroken }

var errBroken = errors.New("broken pipe")

func TestWriteErrorsComeBack(t *testing.T) {
	e := evaluated(t, "level")
	for _, ext := range []string{".html", ".pdf", ".svg", ".png"} {
		if _, err := Write(brokenPipe{}, ext, e, Options{}); !errors.Is(err, errBroken) {
			t.Errorf("%s: got error %v, want the writer's", ext, err)
		}
	}
	if err := Terminal(brokenPipe{}, e, 80, Options{}); !errors.Is(err, errBroken) {
		t.Errorf("terminal: got error %v, want the writer's", err)
	}
}

func TestPDFCarriesItsFonts(t *testing.T) {
	// PDF 1.7, ISO 32000-1:2008, table 122: FontFile2 is an embedded TrueType
	// font program. Regular and bold are used.
	out, warnings := write(t, ".pdf", evaluated(t, "dead-point"), Options{})
	if n := bytes.Count(out, []byte("/FontFile2")); n != 2 {
		t.Errorf("%d embedded fonts, want 2", n)
	}
	// Greek and Cyrillic are set; Han, kana and Arabic are told.
	text := strings.Join(warnings, "\n")
	for _, r := range []string{"腕", "杠", "ذ", "ベ"} {
		if !strings.Contains(text, r) {
			t.Errorf("no warning about %s in %q", r, text)
		}
	}
	for _, r := range []string{"ό (U+", "ы (U+"} {
		if strings.Contains(text, r) {
			t.Errorf("a warning about %s, which the font has", r)
		}
	}
}

func TestThemes(t *testing.T) {
	e := evaluated(t, "level")
	light, _ := write(t, ".svg", e, Options{})
	dark, _ := write(t, ".svg", e, Options{Dark: true})
	for _, row := range []struct {
		name string
		out  []byte
		th   draw.Theme
	}{{"light", light, draw.Light}, {"dark", dark, draw.Dark}} {
		if first := bytes.Index(row.out, []byte(`fill="`)); !bytes.HasPrefix(row.out[first:], []byte(`fill="`+hex(row.th.Paper)+`"`)) {
			t.Errorf("%s: the first area is %.20q, want the paper %s", row.name, row.out[first:], hex(row.th.Paper))
		}
		// Text stands on the ribbon; small text needs 4.5 (WCAG 2.1, 1.4.3).
		if c := draw.Contrast(row.th.Ink, ribbonFill(row.th)); c < 4.5 {
			t.Errorf("%s: ink on the ribbon has contrast %.2f, want 4.5", row.name, c)
		}
		if c := draw.Contrast(row.th.Load, row.th.Paper); c < 3 {
			t.Errorf("%s: the ribbon's edge has contrast %.2f, want 3", row.name, c)
		}
	}
}

func mustRead(t testing.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", name+".yaml"))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func BenchmarkHTML(b *testing.B) { benchmarkWrite(b, ".html") }
func BenchmarkPDF(b *testing.B)  { benchmarkWrite(b, ".pdf") }

func benchmarkWrite(b *testing.B, ext string) {
	e := evaluated(b, "cam-curl")
	for b.Loop() {
		out, _ := write(b, ext, e, Options{})
		b.SetBytes(int64(len(out)))
	}
}
