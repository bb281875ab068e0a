package view

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"steelyard/internal/server/api"
	"steelyard/mechanism"
	"steelyard/sheet"
)

// What people read begins with no file, line or package; the command line's
// text has them.
func TestTold(t *testing.T) {
	one := &sheet.Problem{File: "the sheet", Line: 3, Column: 8, What: "mass is -3 kg", Limit: "a mass is 0 kg or more", Cure: "weigh it"}
	two := &sheet.Problem{File: "the sheet", What: "the sheet is empty", Limit: "it says its kind", Cure: "start anew"}
	const first, second = "mass is -3 kg, but a mass is 0 kg or more; weigh it", "the sheet is empty, but it says its kind; start anew"
	for _, tt := range []struct {
		name string
		err  error
		want string
	}{
		{"a problem", one, first},
		{"of the whole sheet", two, second},
		{"several", sheet.Problems{one, two}, first + "\n" + second},
		{"wrapped", fmt.Errorf("the stroke: %w", one), "the stroke: " + first},
		{"located", &sheet.Located{File: "the sheet", Line: 14, Column: 3, Err: &mechanism.PartError{Part: `link "arm"`, Problem: "has a mass of -1 kg", Cure: "weigh it"}}, `link "arm": has a mass of -1 kg; weigh it`},
		{"packages", errors.New("exercise: the station: human: the arm is too short"), "the station: the arm is too short"},
		{"lines", errors.New("exercise: one\nhuman: two"), "one\ntwo"},
		{"a word that is no package", errors.New("name of the exercise: curl"), "name of the exercise: curl"},
	} {
		if got := Told(tt.err); got != tt.want {
			t.Errorf("%s: got %q, want %q", tt.name, got, tt.want)
		}
	}
}

// The place stands in fields of its own.
func TestProblemsHaveTheirPlaceApart(t *testing.T) {
	p := Preview(t.Context(), Read(strings.Replace(lever, "kind: grip", "kind: hand", 1)), api.Look{}, nil).Problems
	if len(p) != 1 || p[0].Line != 12 || p[0].Column == 0 || strings.Contains(p[0].Message, "the sheet:") || !strings.Contains(p[0].Message, `"hand"`) {
		t.Errorf("%+v", p)
	}
}
