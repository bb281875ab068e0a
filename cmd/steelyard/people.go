package main

import (
	"fmt"
	"io"

	"steelyard/evaluation"
	"steelyard/exercise"
)

type peopleVerb struct {
	Machine  string   `arg:"" optional:"" help:"Machine sheet with a station; - for standard input."`
	Sex      string   `default:"both" placeholder:"WHO" help:"Draw women, men or both."`
	Draws    int      `default:"10000" help:"People drawn from the survey."`
	Seed     uint64   `default:"1" help:"Draws other people; the same seed draws the same."`
	Within   float64  `default:"30" placeholder:"MM" help:"How near the machine's axis the joint must be to count as fitting, mm."`
	Travel   float64  `default:"80" placeholder:"PERCENT" help:"Share of the travel that must be usable to count as fitting, 51 to 100."`
	Exercise string   `placeholder:"NAME" help:"Which of the exercises that the machine serves; else the first."`
	Set      []string `placeholder:"NAME=VALUE" sep:"none" help:"Hold a setting at this value; may be repeated."`
	Format   string   `enum:"text,json" default:"text" help:"Form of the result: text or json."`
	Schema   bool     `help:"Print the JSON Schema of the result and leave."`
}

// mostDraws keeps what a check of people holds in memory within 250 MB.
const mostDraws = 500_000

func (v *peopleVerb) Run(c *console) error {
	if v.Schema {
		_, err := c.out.Write(exercise.PeopleSchema)
		return err
	}
	sex, err := exercise.ParseSexWord(v.Sex)
	switch {
	case v.Machine == "":
		return &usageError{"people: no sheet is named; give a machine sheet, or - for standard input"}
	case err != nil:
		return &usageError{"people: " + err.Error()}
	case v.Draws < 1 || v.Draws > mostDraws:
		return &usageError{fmt.Sprintf("people: --draws %d is outside 1 to %d", v.Draws, mostDraws)}
	case !(v.Within > 0 && v.Within <= 1000):
		return &usageError{fmt.Sprintf("people: --within %g is outside 0 to 1000 mm", v.Within)}
	}
	enough, err := travelShare("people", v.Travel)
	if err != nil {
		return err
	}
	a, err := c.adjustable("people", v.Machine, v.Set, false, v.Exercise)
	if err != nil {
		return err
	}
	progress, clear := c.tell("trying people")
	s, err := exercise.Population(c.ctx, a.Dials, a.Build(exercise.PopulationPositions),
		exercise.PopulationOptions{Sex: sex, Draws: v.Draws, Seed: v.Seed, Within: v.Within / 1000, Enough: enough, Held: a.Held, Progress: progress})
	clear()
	if err != nil {
		return a.Machine.Locate(err)
	}
	if v.Format == "json" {
		return s.WriteJSON(c.out, a.Machine.Name, usualCautions(a.Machine))
	}
	return writePeople(c.out, a, s)
}

func writePeople(w io.Writer, a *evaluation.Adjustable, s *exercise.Coverage) error {
	t := &textPage{columns: min(terminalWidth(), 100)}
	t.line(fmt.Sprintf("%s: %v", a.Machine.Name, s.Exercise))
	t.held(a.Held)
	t.line("")
	for _, words := range s.Words() {
		t.text("", words)
	}
	for d := range s.Dials {
		if len(s.Dials[d].Values) < 2 {
			continue
		}
		t.line("")
		if !s.Matters(d) {
			t.text("", fmt.Sprintf("%s serves the same people wherever it stands.", s.Dials[d].Name))
			continue
		}
		t.table(valuesTable(s, d))
	}
	t.line("")
	for _, limit := range append(s.Limits(), usualCautions(a.Machine)...) {
		t.text("", "! "+limit)
	}
	_, err := io.WriteString(w, t.out.String())
	return err
}

// valuesTable tells whom each value of a setting serves.
func valuesTable(s *exercise.Coverage, d int) [][]string {
	rows := [][]string{{s.Dials[d].Name, "serves", "nothing else does", "nine in ten are"}}
	share := func(n int) string { return fmt.Sprintf("%.1f %%", 100*float64(n)/float64(s.All.People)) }
	for k := range s.Values[d] {
		v := &s.Values[d][k]
		heights := "too few to tell"
		if v.High > 0 {
			heights = fmt.Sprintf("%.2f to %.2f m tall", v.Low, v.High)
		}
		rows = append(rows, []string{s.Dials[d].Values[k], share(v.Served), share(v.Only), heights})
	}
	return rows
}
