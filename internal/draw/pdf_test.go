package draw

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode/utf16"
)

func pdfOf(t *testing.T, s *Scene) []byte {
	t.Helper()
	var b bytes.Buffer
	if _, err := WritePDF(&b, s); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func twoPages() *Scene {
	s := New("Ελένη's lever", Light)
	f := Font{Size: 4, Color: Light.Ink}
	s.AddPage(A4).TextAt(Point{20, 20}, "angle φ, Жанна", f, Left)
	p := s.AddPage(Size{297, 210})
	p.TextAt(Point{20, 20}, "bold (page) two \\", Font{Size: 4, Bold: true, Color: Light.Ink}, Right)
	p.Link(Rect{1, 1, 5, 5}, "https://example.org/")
	return s
}

// Structure of a PDF: ISO 32000-1:2008, 7.5 (header, cross-reference table,
// trailer), 9.7 and 9.9 (composite fonts, embedded font programs), 9.10.3
// (ToUnicode).
func TestPDFStructure(t *testing.T) {
	doc := pdfOf(t, twoPages())
	if !bytes.HasPrefix(doc, []byte("%PDF-1.")) || !bytes.HasSuffix(bytes.TrimSpace(doc), []byte("%%EOF")) {
		t.Fatalf("no PDF header or end")
	}
	for what, want := range map[string]int{
		"/Type /Page\n":                    2,
		"/FontFile2 ":                      2,
		"/ToUnicode ":                      2,
		"/Encoding /Identity-H":            2,
		"/MediaBox [0 0 595.28 841.89]":    1, // the common box; A4 in points, ISO 216
		"/MediaBox [0 0 841.89 595.28]":    1, // the second page's own
		"/URI (https://example.org/)":      1,
		"/CreationDate (D:19700101000000)": 1,
	} {
		if got := bytes.Count(doc, []byte(what)); got != want {
			t.Errorf("%q: %d times, want %d", what, got, want)
		}
	}
	checkXref(t, doc)
	if len(doc) > 60_000 {
		t.Errorf("%d bytes: the fonts are not subset (each face is 0.7 MB)", len(doc))
	}
}

// checkXref follows startxref to the table and every entry to its object.
func checkXref(t *testing.T, doc []byte) {
	t.Helper()
	m := regexp.MustCompile(`startxref\n(\d+)\n%%EOF`).FindSubmatch(doc)
	if m == nil {
		t.Fatal("no startxref")
	}
	at, _ := strconv.Atoi(string(m[1]))
	entries := regexp.MustCompile(`(\d{10}) 00000 n `).FindAllSubmatch(doc[at:], -1)
	if len(entries) < 10 {
		t.Fatalf("%d objects listed", len(entries))
	}
	for i, e := range entries {
		offset, _ := strconv.Atoi(string(e[1]))
		if want := fmt.Sprintf("%d 0 obj", i+1); !bytes.HasPrefix(doc[offset:], []byte(want)) {
			t.Errorf("object %d is not at byte %d", i+1, offset)
		}
	}
}

// Text must be there as characters: under Identity-H with the library's
// identity ToUnicode map a code is its UTF-16 unit.
func TestPDFTextIsText(t *testing.T) {
	all := contents(t, pdfOf(t, twoPages()))
	for _, text := range []string{"angle φ, Жанна", `bold (page) two \`} {
		if !strings.Contains(all, pdfString(text)) {
			t.Errorf("%q is not in the page contents", text)
		}
	}
	s := New("", Light)
	s.AddPage(A4).TextAt(Point{20, 20}, "x 山", Font{Size: 4, Color: Light.Ink}, Left)
	if all := contents(t, pdfOf(t, s)); !strings.Contains(all, "/ActualText <FEFF5C71>") { // 山 is U+5C71
		t.Errorf("a missing glyph cannot be copied as its character:\n%s", all)
	}
}

// pdfString writes s as UTF-16BE with \, ( and ) escaped.
func pdfString(s string) string {
	var b []byte
	for _, u := range utf16.Encode([]rune(s)) {
		b = append(b, byte(u>>8), byte(u))
	}
	return "(" + strings.NewReplacer(`\`, `\\`, "(", `\(`, ")", `\)`).Replace(string(b)) + ")"
}

// contents returns every compressed stream of the document, one after another.
func contents(t *testing.T, doc []byte) string {
	t.Helper()
	var all strings.Builder
	for _, part := range bytes.Split(doc, []byte("stream\n")) {
		r, err := zlib.NewReader(bytes.NewReader(part))
		if err != nil {
			continue // an object between streams
		}
		if _, err := io.Copy(&all, r); err != nil {
			t.Fatal(err)
		}
	}
	return all.String()
}

func TestPDFDateIsTheScenes(t *testing.T) {
	s := twoPages()
	s.Date = time.Date(2031, 2, 3, 4, 5, 6, 0, time.UTC)
	if doc := pdfOf(t, s); !bytes.Contains(doc, []byte("/CreationDate (D:20310203040506)")) {
		t.Error("the scene's date is not in the document")
	}
}

func TestPDFNeedsAPage(t *testing.T) {
	if _, err := WritePDF(io.Discard, New("", Light)); err == nil {
		t.Error("no error for a scene without pages")
	}
}
