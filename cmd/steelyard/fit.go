package main

import (
	"fmt"
	"io"
	"strings"

	"steelyard/evaluation"
	"steelyard/exercise"
	"steelyard/human"
	"steelyard/sheet"
)

type fitVerb struct {
	Machine  string   `arg:"" optional:"" help:"Machine sheet with a station; - for standard input."`
	Person   string   `arg:"" optional:"" help:"Person sheet."`
	Aim      string   `placeholder:"WHERE" help:"Where the effort should be: lengthened, middle, shortened or even."`
	Joint    string   `placeholder:"NAME" help:"Joint whose range and effort count, such as knee; else the main muscle and joint."`
	Exercise string   `placeholder:"NAME" help:"Which of the exercises that the machine serves; else the first."`
	Travel   float64  `default:"80" placeholder:"PERCENT" help:"Share of the travel that must be usable for a setting to fit, 51 to 100."`
	Set      []string `placeholder:"NAME=VALUE" sep:"none" help:"Hold a setting at this value; may be repeated."`
	Load     bool     `help:"Search settings that only change how much load there is, too."`
	Format   string   `enum:"text,json" default:"text" help:"Form of the result: text or json."`
	Schema   bool     `help:"Print the JSON Schema of the result and leave."`
}

func (v *fitVerb) Run(c *console) error {
	if v.Schema {
		_, err := c.out.Write(exercise.FitSchema)
		return err
	}
	if v.Machine == "" || v.Person == "" {
		return &usageError{"fit: name a machine sheet and a person sheet, such as fit press.yaml rower.yaml"}
	}
	aim, err := exercise.ParseAim(v.Aim)
	if err != nil {
		return &usageError{"fit: " + err.Error()}
	}
	enough, err := travelShare("fit", v.Travel)
	if err != nil {
		return err
	}
	a, err := c.adjustable("fit", v.Machine, v.Set, v.Load, v.Exercise)
	if err != nil {
		return err
	}
	name, body, cautions, err := c.readBody(v.Person)
	if err != nil {
		return err
	}
	progress, clear := c.tell("trying settings")
	f, err := exercise.Fit(c.ctx, a.Dials, a.Build(exercise.FitPositions), body,
		exercise.FitOptions{Aim: aim, Joint: v.Joint, Held: a.Held, Enough: enough, Progress: progress})
	clear()
	if err != nil {
		return a.Machine.Locate(err)
	}
	cautions = append(cautions, usualCautions(a.Machine)...)
	if v.Format == "json" {
		return f.WriteJSON(c.out, a.Machine.Name, cautions)
	}
	return writeFit(c.out, a, f, name, cautions)
}

// travelShare reads how much of the travel must be usable.
func travelShare(verb string, percent float64) (float64, error) {
	if !(percent >= 51 && percent <= 100) {
		return 0, &usageError{fmt.Sprintf("%s: --travel %g is outside 51 to 100 %%", verb, percent)}
	}
	return percent / 100, nil
}

// readBody reads a person sheet and fills in what was not measured. Cautions
// are what is unusual about the figures and what the search leaves out.
func (c *console) readBody(file string) (name string, b *human.Body, cautions []string, err error) {
	doc, err := c.readSheet(file)
	if err != nil {
		return "", nil, nil, err
	}
	p, err := doc.Person()
	if err != nil {
		return "", nil, nil, err
	}
	b, warnings, err := human.NewBody(p.Person)
	if err != nil {
		return "", nil, nil, fmt.Errorf("%s: %w", file, err)
	}
	for _, w := range warnings {
		cautions = append(cautions, w.String())
	}
	if len(p.Lifts) > 0 {
		cautions = append(cautions, "Known lifts on this person's sheet are not used here: they would change how hard it is, not where the body is.")
	}
	return p.Name, b, cautions, nil
}

// usualCautions are the sheet's own cautions and those of every result.
func usualCautions(m *sheet.Machine) []string { return (&evaluation.Evaluation{Sheet: m}).Cautions() }

func writeFit(w io.Writer, a *evaluation.Adjustable, f *exercise.Fitting, person string, cautions []string) error {
	t := &textPage{columns: min(terminalWidth(), 100)}
	t.line(fmt.Sprintf("%s: %v", a.Machine.Name, f.Exercise))
	if person != "" {
		t.line("For " + person)
	}
	t.held(a.Held)
	t.line("")
	for _, s := range f.Words() {
		t.text("", s)
	}
	t.text("", f.Order())
	for i := range f.Best {
		best := &f.Best[i]
		t.line("")
		head := fmt.Sprintf("%d. %s", i+1, settingsOf(f.Values(best)))
		if !f.Fits {
			head = "Least bad: " + settingsOf(f.Values(best))
		}
		t.text("", head)
		if s := f.Trade(best); s != "" {
			t.text("   ", s)
		}
		for _, s := range f.Reasons(best) {
			t.text("   ", s)
		}
	}
	if len(f.Best) > 1 {
		t.line("")
		t.table(fitTable(f))
	}
	t.line("")
	for _, s := range cautions {
		t.text("", "! "+s)
	}
	_, err := io.WriteString(w, t.out.String())
	return err
}

func settingsOf(chosen []exercise.Chosen) string {
	var parts []string
	for _, c := range chosen {
		parts = append(parts, c.Setting+" "+c.Value)
	}
	if len(parts) == 0 {
		return "as it is"
	}
	return strings.Join(parts, ", ")
}

// fitTable sets the best choices side by side.
func fitTable(f *exercise.Fitting) [][]string {
	row := func(head string, cell func(t *exercise.Trial) string) []string {
		out := []string{head}
		for i := range f.Best {
			out = append(out, cell(&f.Best[i]))
		}
		return out
	}
	rows := [][]string{{""}}
	for i := range f.Best {
		rows[0] = append(rows[0], fmt.Sprint(i+1))
	}
	for d := range f.Dials {
		rows = append(rows, row(f.Dials[d].Name, func(t *exercise.Trial) string { return f.Values(t)[d].Value }))
	}
	first := &f.Best[0]
	rows = append(rows, row("travel usable, %", func(t *exercise.Trial) string { return fmt.Sprintf("%.0f", 100*t.Used()) }))
	if first.HasAxis {
		rows = append(rows, row(first.Joint+" off the axis, mm", func(t *exercise.Trial) string { return fmt.Sprintf("%.0f", 1000*t.Misaligned) }))
	}
	if first.HasPad {
		rows = append(rows, row("pad creeps, mm", func(t *exercise.Trial) string { return fmt.Sprintf("%.0f", 1000*t.Creep) }))
	}
	if first.HasMargin {
		rows = append(rows, row("short of straight, mm", func(t *exercise.Trial) string { return fmt.Sprintf("%.0f", 1000*t.Margin) }))
	}
	rows = append(rows, row("range covered, %", func(t *exercise.Trial) string { return fmt.Sprintf("%.0f", 100*t.Covered) }))
	for k, third := range [...]string{"lengthened", "middle", "shortened"} {
		rows = append(rows, row("effort "+third+", %", func(t *exercise.Trial) string { return fmt.Sprintf("%.0f", 100*t.Shares()[k]) }))
	}
	return append(rows, row("hardest, % of what is there", func(t *exercise.Trial) string { return fmt.Sprintf("%.0f", 100*t.Peak) }))
}
