package draw

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

func TestColumnWidthsFillTheTable(t *testing.T) {
	s := New("", Light)
	f, head := s.Font(Light.Ink), s.Font(Light.Ink)
	head.Bold = true
	for _, c := range []struct {
		name  string
		cells []string
		total float64
	}{
		{"room to spare", []string{"a", "bb", "ccc"}, 150},
		{"one must wrap", []string{"a", strings.Repeat("many words ", 20), "9.5"}, 100},
		{"too narrow for the words", []string{"incomprehensible", "incomprehensible", "incomprehensible"}, 20},
		{"empty cells", []string{"", "", ""}, 90},
	} {
		tab := Table{Columns: make([]Column, 3), Rows: [][]string{c.cells}}
		widths := tab.widths(f, head, c.total)
		if got := sum(widths); math.Abs(got-c.total) > 1e-9 {
			t.Errorf("%s: widths %v add up to %.3f, want %g", c.name, widths, got, c.total)
		}
		for i, w := range widths {
			if !(w > 0) {
				t.Errorf("%s: column %d is %g mm wide", c.name, i, w)
			}
			longest := f.Measure(c.cells[i])
			if c.name != "too narrow for the words" && !strings.Contains(c.cells[i], " ") && w < longest {
				t.Errorf("%s: column %d is %.2f mm, its word %.2f", c.name, i, w, longest)
			}
		}
	}
}

func TestTableStopsAtTheBox(t *testing.T) {
	s := New("", Light)
	p := s.AddPage(A4)
	tab := Table{Columns: []Column{{Title: "n"}, {Title: "force", Align: Right}}}
	for i := range 50 {
		tab.Rows = append(tab.Rows, []string{fmt.Sprint(i), "1"})
	}
	box := Rect{10, 10, 80, 60}
	n, bottom := p.Table(box, tab)
	if n < 5 || n >= 50 || bottom > box.Bottom()+1e-6 {
		t.Errorf("%d rows down to %.1f mm, want as many as fit above %.1f", n, bottom, box.Bottom())
	}
	ops := len(p.ops)
	if n, bottom := p.Table(Rect{10, 10, 80, 5}, tab); n != 0 || bottom != 10 || len(p.ops) != ops {
		t.Errorf("a box too low: %d rows, bottom %.1f, %d entries; want nothing", n, bottom, len(p.ops)-ops)
	}
}

// Nothing is lost or doubled over a page break, headings repeat, pages are
// numbered.
func TestFlowTableOverPages(t *testing.T) {
	s := New("", Light)
	f := s.Flow(Size{100, 80}, 10, "foot")
	tab := Table{Columns: []Column{{Title: "Machine"}, {Title: "Remark"}}}
	for i := range 40 {
		tab.Rows = append(tab.Rows, []string{fmt.Sprintf("row%02d", i), "as measured"})
	}
	f.Table(tab)
	f.Finish()
	all := ""
	for i, p := range s.Pages() {
		text := texts(p)
		if !strings.Contains(text, "Machine\n") || !strings.Contains(text, fmt.Sprintf("%d / %d\n", i+1, len(s.Pages()))) {
			t.Errorf("page %d lacks its heading or number:\n%s", i+1, text)
		}
		for _, o := range p.ops {
			if o, ok := o.(textOp); ok && o.at.Y > 70+1e-9 {
				t.Errorf("page %d: %q at %.1f mm runs into the margin", i+1, o.text, o.at.Y)
			}
		}
		all += text
	}
	for i := range 40 {
		if got := strings.Count(all, fmt.Sprintf("row%02d\n", i)); got != 1 {
			t.Errorf("row %d appears %d times, want once", i, got)
		}
	}
	if len(s.Pages()) < 3 {
		t.Errorf("%d pages, want several", len(s.Pages()))
	}
}

func TestFlowReportsARowHigherThanAPage(t *testing.T) {
	s := New("", Light)
	f := s.Flow(Size{60, 60}, 10, "")
	f.Table(Table{Columns: []Column{{Title: "a"}}, Rows: [][]string{{"first"}, {strings.Repeat("tall ", 300)}, {"last"}}})
	all := ""
	for _, p := range s.Pages() {
		all += texts(p)
	}
	if !strings.Contains(all, "first\n") || !strings.Contains(all, "last\n") {
		t.Errorf("rows about the tall one are lost:\n%s", all)
	}
	if len(s.strays) != 1 || !strings.Contains(s.strays[0], "tall") {
		t.Errorf("warnings %q, want one that names the row", s.strays)
	}
}

// Paragraphs break over pages line by line; figures move whole.
func TestFlowBreaks(t *testing.T) {
	s := New("", Light)
	f := s.Flow(Size{80, 80}, 10, "")
	text := strings.TrimSpace(strings.Repeat("word ", 300))
	f.Text(text)
	var words []string
	for _, p := range s.Pages() {
		words = append(words, strings.Fields(texts(p))...)
	}
	if len(words) != 300 {
		t.Errorf("%d words set, want 300", len(words))
	}
	before := len(s.Pages())
	f.Figure(50, "Picture", "", func(p *Page, box Rect) {
		if box.Y != 10 || box.H != 50 || box.W != 60 {
			t.Errorf("figure box %v, want a fresh page's 60 × 50 mm", box)
		}
	})
	if len(s.Pages()) != before+1 {
		t.Errorf("%d pages after the figure, want %d", len(s.Pages()), before+1)
	}
}
