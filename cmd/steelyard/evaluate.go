package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"steelyard/evaluation"
	"steelyard/internal/report"
	"steelyard/mechanism"
	"steelyard/sheet"
)

// reportKinds are the endings that report.Write knows.
var reportKinds = []string{".html", ".pdf", ".svg", ".png"}

type evaluateVerb struct {
	File     string   `arg:"" optional:"" help:"Machine sheet; - for standard input."`
	Set      []string `placeholder:"NAME=VALUE" sep:"none" help:"Use this value of a setting; may be repeated."`
	Person   string   `placeholder:"FILE" help:"Person sheet: adds what the machine asks of this person's joints."`
	Tempo    string   `placeholder:"2-0-2-0" help:"Seconds up, pause, down, pause: adds the force in time."`
	Format   string   `enum:"text,json,csv" default:"text" help:"Form of the result: text, json or csv."`
	Output   []string `short:"o" placeholder:"FILE" sep:"none" help:"Also write a report: .html, .pdf, .svg or .png; may be repeated."`
	Imperial bool     `help:"Show pounds and inches."`
	Draws    int      `default:"2000" help:"Machines drawn for the error band; 0 leaves it out."`
	Schema   bool     `help:"Print the JSON Schema of the result and leave."`
}

func (v *evaluateVerb) Run(c *console) error {
	if v.Schema {
		_, err := c.out.Write(evaluation.Schema)
		return err
	}
	e, err := v.evaluate(c)
	if err != nil {
		return err
	}
	for _, file := range v.Output {
		if err := v.writeReport(c, file, e); err != nil {
			return err
		}
	}
	return v.write(c, e)
}

// evaluate reads the sheet, sets the machine and puts it through its travel.
func (v *evaluateVerb) evaluate(c *console) (*evaluation.Evaluation, error) {
	choice, tempo, err := v.arguments()
	if err != nil {
		return nil, err
	}
	m, err := c.readMachine(v.File)
	if err != nil {
		return nil, err
	}
	b, err := m.Build(choice)
	if err != nil {
		return nil, err
	}
	var person *sheet.Person
	if v.Person != "" {
		if person, err = c.readPerson(v.Person); err != nil {
			return nil, err
		}
	}
	progress, clear := c.tell("drawing machines within every ±")
	defer clear()
	draws := v.Draws
	if draws == 0 {
		draws = -1
	}
	e, err := evaluation.Run(c.ctx, m, b, evaluation.Options{Draws: draws, Tempo: tempo, Progress: progress})
	if err != nil || person == nil {
		return e, err
	}
	e.Person, err = e.Meet(person)
	return e, err
}

// arguments reads what the command line itself can get wrong.
func (v *evaluateVerb) arguments() (map[string]string, *mechanism.Tempo, error) {
	if v.File == "" {
		return nil, nil, &usageError{"evaluate: no sheet is named; give a file, or - for standard input"}
	}
	if v.File == "-" && v.Person == "-" {
		return nil, nil, &usageError{"evaluate: machine and person cannot both come from standard input; give a file for one"}
	}
	if v.Draws < 0 || v.Draws > 1_000_000 {
		return nil, nil, &usageError{fmt.Sprintf("evaluate: --draws %d is outside 0 to 1000000", v.Draws)}
	}
	for _, file := range v.Output {
		if !slices.Contains(reportKinds, filepath.Ext(file)) {
			return nil, nil, &usageError{fmt.Sprintf("evaluate: -o %s: %q is no kind of report; end the name in .html, .pdf, .svg or .png", file, filepath.Ext(file))}
		}
	}
	choice, err := parseSet("evaluate", v.Set)
	if err != nil {
		return nil, nil, err
	}
	tempo, err := parseTempo(v.Tempo)
	return choice, tempo, err
}

// parseTempo reads "2-0-2-0": seconds up, pause, down, pause.
func parseTempo(text string) (*mechanism.Tempo, error) {
	if text == "" {
		return nil, nil
	}
	parts := strings.Split(text, "-")
	var s [4]float64
	bad := len(parts) != len(s)
	for i := 0; i < len(parts) && !bad; i++ {
		var err error
		s[i], err = strconv.ParseFloat(parts[i], 64)
		bad = err != nil
	}
	if bad {
		return nil, &usageError{fmt.Sprintf("evaluate: --tempo %s: write seconds up, pause, down, pause, such as 2-0-2-0 or 1.5-1-3-0", text)}
	}
	return &mechanism.Tempo{Up: s[0], Top: s[1], Down: s[2], Bottom: s[3]}, nil
}

func (v *evaluateVerb) formatter() evaluation.Formatter {
	if v.Imperial {
		return evaluation.Imperial{}
	}
	return evaluation.Metric{}
}

func (v *evaluateVerb) writeReport(c *console, file string, e *evaluation.Evaluation) error {
	var warnings []string
	err := writeFile(file, func(w io.Writer) (err error) {
		warnings, err = report.Write(w, filepath.Ext(file), e, report.Options{Imperial: v.Imperial})
		return err
	})
	if err != nil {
		return err
	}
	for _, warning := range warnings {
		fmt.Fprintf(c.err, "%s: %s\n", file, warning)
	}
	fmt.Fprintf(c.err, "wrote %s\n", file)
	return nil
}

func (v *evaluateVerb) write(c *console, e *evaluation.Evaluation) error {
	switch v.Format {
	case "json":
		return e.WriteJSON(c.out, v.formatter())
	case "csv":
		return e.WriteCSV(c.out)
	}
	return report.Terminal(c.out, e, terminalWidth(), report.Options{Imperial: v.Imperial})
}

// terminalWidth is the width that the shell tells, or the usual one.
func terminalWidth() int {
	if n, err := strconv.Atoi(os.Getenv("COLUMNS")); err == nil && n >= 40 && n <= 200 {
		return n
	}
	return 80
}
