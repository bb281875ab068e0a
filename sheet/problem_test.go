package sheet

import (
	"errors"
	"fmt"
	"strings"
	"testing"
)

// TestManyProblems expects all problems at once, in the order of the file, up
// to ten.
func TestManyProblems(t *testing.T) {
	text := strings.NewReplacer("mass: 10 kg", "mass: -10 kg", "kind: grip", "kind: hand", "name: Base", "nmae: Base",
		"diameter: 80 mm", "diameter: 80 kg").Replace(base)
	_, err := machineOf("bad.yaml", text)
	var all Problems
	if !errors.As(err, &all) {
		t.Fatalf("got %v", err)
	}
	var places []string
	for _, p := range all {
		places = append(places, fmt.Sprintf("%d:%d", p.Line, p.Column))
	}
	if got := strings.Join(places, " "); got != "2:1 17:11 25:28 35:17" {
		t.Errorf("got problems at %s\n%v", got, err)
	}
	if lines := strings.Count(err.Error(), "\n"); lines != 3 {
		t.Errorf("told in %d lines, want one for each of 4", lines+1)
	}

	var many strings.Builder
	many.WriteString("steelyard: machine 1\npoints:\n")
	for i := range 50 {
		fmt.Fprintf(&many, "  p%d: [1 kg, 2]\n", i)
	}
	_, err = machineOf("bad.yaml", many.String())
	if !errors.As(err, &all) || len(all) != mostProblems {
		t.Errorf("got %d problems, want the first %d", len(all), mostProblems)
	}
}

func TestProblemIsOneSentence(t *testing.T) {
	p := &Problem{File: "a.yaml", Line: 3, Column: 7, What: "mass is -3 kg", Limit: "a mass is 0 kg or more", Cure: "weigh it"}
	if got, want := p.Error(), "a.yaml:3:7: mass is -3 kg, but a mass is 0 kg or more; weigh it"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	p.Line = 0
	if got, want := p.Error(), "a.yaml: mass is -3 kg, but a mass is 0 kg or more; weigh it"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
