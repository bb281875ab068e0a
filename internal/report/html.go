package report

import (
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"regexp"
	"strings"

	"steelyard/evaluation"
	"steelyard/internal/draw"
)

var (
	//go:embed report.gohtml
	pageSource string
	//go:embed report.css
	pageStyle string

	pageTemplate = template.Must(template.New("report").Parse(pageSource))
)

// WriteHTML writes the report as one file that needs nothing else: text and
// tables as such, figures as drawings within it, once for a wide and once for
// a narrow page. It is well-formed XML too, asks for no script and no network,
// and follows the reader's choice of light or dark; paper is always light.
func WriteHTML(w io.Writer, e *evaluation.Evaluation, o Options) error {
	p, err := pageOf(e, o)
	if err != nil {
		return err
	}
	var b strings.Builder
	if err := pageTemplate.Execute(&b, p); err != nil {
		return err
	}
	_, err = io.WriteString(w, b.String())
	return err
}

// page is what the template shows.
type page struct {
	Name, Settings, Notes, Measured string
	Lead                            string
	Words                           []string
	Style                           template.CSS
	Sign                            template.HTML
	Figures                         []pageFigure
	Person                          *pagePerson // nil for nobody
	Travel, Readings                htmlTable
	SettingsTable, Measurements     htmlTable
	Again                           []string
	Exact                           string
	Cautions                        []string
	Footer, Assumes                 string
}

type pageFigure struct {
	ID, Title  string
	Wide, Slim template.HTML
}

// htmlTable is a table with a caption; Right tells which columns are numbers.
type htmlTable struct {
	Caption string
	Head    []htmlCell
	Rows    [][]htmlCell
}

type htmlCell struct {
	Text   string
	Number bool
}

func pageOf(e *evaluation.Evaluation, o Options) (*page, error) {
	u := o.units()
	words := boundAll(e.Words(u))
	p := &page{
		Name: e.Name, Settings: settingsLine(e, u), Notes: e.Sheet.Notes, Measured: e.Sheet.Measured,
		Lead: words[0], Words: words[1:], Person: pagePersonOf(e, u),
		Travel:        htmlTableOf("Along the travel: force at the contact, lift ratio and effective mass there", travelTable(e, u)),
		Readings:      htmlTableOf("Read from the curve", readingsTable(e, u)),
		SettingsTable: htmlTableOf("What can be adjusted", settingsTable(e, u)),
		Measurements:  htmlTableOf("Numbers with their ±", measurementsTable(e, u)),
		Again:         boundAll(again(e, u)), Exact: bound(takenAsExact(e, u)),
		Cautions: cautions(e), Footer: footer(o), Assumes: assumes(e),
	}
	var ink inks
	var err error
	if p.Sign, err = ink.inline(func(th draw.Theme) *draw.Scene { return Sign(e, Options{Imperial: o.Imperial, Dark: th == draw.Dark}) }); err != nil {
		return nil, err
	}
	for i, f := range figures(e, u) {
		pf := pageFigure{ID: "figure" + string(rune('1'+i)), Title: f.title}
		if pf.Wide, err = ink.figure(e, u, f, wideFigure, f.wide); err != nil {
			return nil, err
		}
		if pf.Slim, err = ink.figure(e, u, f, slimFigure, f.slim); err != nil {
			return nil, err
		}
		if f.person {
			p.Person.Figures = append(p.Person.Figures, pf)
		} else {
			p.Figures = append(p.Figures, pf)
		}
	}
	p.Style = template.CSS("\n" + variables(draw.Light) + "@media screen and (prefers-color-scheme: dark) {\n" + variables(draw.Dark) + ink.dark() + "}\n" + pageStyle)
	return p, nil
}

// Widths of the figures in mm, near those at which they are seen: half of a desk's
// screen, and a phone's 390 pixels less its margins.
const (
	wideFigure = 160
	slimFigure = 94
)

// figure draws one figure as SVG.
func (k *inks) figure(e *evaluation.Evaluation, u units, f figure, width, share float64) (template.HTML, error) {
	return k.inline(func(th draw.Theme) *draw.Scene {
		s := draw.New(f.title, th)
		s.Desc = f.desc
		s.Text = 9.5 * draw.Pt
		pg := s.AddPage(draw.Size{W: width, H: share * width})
		f.draw(canvas{pg, s, u}, pg.Bounds().Inset(0.5))
		return s
	})
}

// inks gathers, over all drawings of a page, which colour on dark stands for
// which on light.
type inks struct {
	light []string
	of    map[string]string
}

var colour = regexp.MustCompile(`(fill|stroke)="(#[0-9a-f]{6})"`)

// inline draws a scene in both themes, notes the colours that correspond, and
// returns the light one. Both have the same shapes in the same order.
func (k *inks) inline(scene func(draw.Theme) *draw.Scene) (template.HTML, error) {
	var text [2]strings.Builder
	for i, th := range []draw.Theme{draw.Light, draw.Dark} {
		if _, err := draw.WriteSVG(&text[i], scene(th)); err != nil {
			return "", err
		}
	}
	if k.of == nil {
		k.of = map[string]string{}
	}
	light, dark := colour.FindAllStringSubmatch(text[0].String(), -1), colour.FindAllStringSubmatch(text[1].String(), -1)
	for i, m := range light {
		if _, known := k.of[m[2]]; !known {
			k.light = append(k.light, m[2])
			k.of[m[2]] = dark[i][2]
		}
	}
	return template.HTML(text[0].String()), nil
}

// variables names a theme's colours for the style sheet.
func variables(th draw.Theme) string {
	return fmt.Sprintf(":root { --paper: %s; --ink: %s; --faint: %s; --rule: %s; --load: %s; --warn: %s; }\n",
		hex(th.Paper), hex(th.Ink), hex(th.Faint), hex(mix(th.Faint, th.Paper, 0.35)), hex(th.Load), hex(th.Warn))
}

func hex(c draw.Color) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

// dark returns the rules that turn the drawings' colours over.
func (k *inks) dark() string {
	var b strings.Builder
	for _, c := range k.light {
		b.WriteString("svg [fill=\"" + c + "\"] { fill: " + k.of[c] + "; } svg [stroke=\"" + c + "\"] { stroke: " + k.of[c] + "; }\n")
	}
	return b.String()
}

func htmlTableOf(caption string, t draw.Table) htmlTable {
	out := htmlTable{Caption: caption}
	for _, c := range t.Columns {
		out.Head = append(out.Head, htmlCell{c.Title, c.Align == draw.Right})
	}
	for _, row := range t.Rows {
		var cells []htmlCell
		for c, text := range row {
			cells = append(cells, htmlCell{text, t.Columns[c].Align == draw.Right})
		}
		out.Rows = append(out.Rows, cells)
	}
	return out
}
