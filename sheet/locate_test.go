package sheet

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"steelyard/mechanism"
)

// computed reads, builds, compiles and sweeps a sheet, and returns the first
// thing that goes wrong, located.
func computed(text string) error {
	m, err := machineOf("bad.yaml", text)
	if err != nil {
		return err
	}
	b, err := m.Build(nil)
	if err != nil {
		return err
	}
	md, err := mechanism.Compile(b.Machine)
	if err != nil {
		return m.Locate(err)
	}
	sw, err := md.Sweep(21)
	if err != nil {
		return m.Locate(err)
	}
	for _, stop := range sw.Stops {
		if stop != nil {
			return m.Locate(stop)
		}
	}
	return nil
}

// TestLocate spoils sheets in ways that only the computation notices, and
// expects the line of the part that has to be mended.
func TestLocate(t *testing.T) {
	fourBar := strings.Replace(string(goodSheets(t)["six-bar.yaml"]), "{over: snail, tied: -120 deg, turns: 0}", "{at: a, on: crank}", 1)
	for _, c := range []struct{ name, text, old, new, place, words, cure string }{
		{"nothing wrong", base, "", "", "", "", ""},
		{"two freedoms", base, "  second: [block, hook]\n", "", "19:3", `2 freedoms instead of one: nothing says where link "slider" is`, "add the missing joint, rope or shared point"},
		{"no freedom", base, "  second: [block, hook]\n", "  second: [block, hook]\n  third: [top, grip]\n", "15:3", "held by more joints and ropes than can move together", "take out a joint or rope"},
		{"links that cannot meet", fourBar, "{turn: crank, about: a0, against: ground, from: 0 deg, to: -30 deg}", "{turn: rocker, about: b0, from: 0 deg, to: -90 deg}", "14:3", `link "crank"`, "end the travel"},
		{"rope's end inside a sheave", base, "stack top: [-540, 700]", "stack top: [-500, 1790]", "29:3", `30.0 mm inside the other`, "check the places"},
		{"rope has run off its cam", base, "to: 60 deg", "to: 140 deg", "29:3", `comes off what it runs round`, "anchor the rope further round"},
		{"rope wound on too far", base, "tied: -30 deg", "tied: 25 deg, turns: 0", "29:3", `as anchored it would lie 35`, "say one turn more"},
		{"rope slack", base, "block: [0, 400]", "block: [0, 1400]", "30:3", "slack", "end the travel"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if !strings.Contains(c.text, c.old) {
				t.Fatalf("the sheet has no %q", c.old)
			}
			err := computed(strings.Replace(c.text, c.old, c.new, 1))
			if c.place == "" {
				if err != nil {
					t.Error(err)
				}
				return
			}
			var at *Located
			if !errors.As(err, &at) {
				t.Fatalf("got %v, want a located error", err)
			}
			if got := fmt.Sprintf("%d:%d", at.Line, at.Column); at.File != "bad.yaml" || got != c.place || !strings.Contains(err.Error(), c.words) || !strings.Contains(err.Error(), c.cure) {
				t.Errorf("got %v\nwant %s: …%s…; …%s…", err, c.place, c.words, c.cure)
			}
		})
	}
}

func TestLocateLeavesOtherErrors(t *testing.T) {
	m := mustMachine(t, []byte(base))
	other := errors.New("disk full")
	if got := m.Locate(other); got != other {
		t.Errorf("got %v, want the error itself", got)
	}
	if got := m.Locate(&mechanism.PartError{Part: `joint "nowhere (arm)"`}).(*Located); got.Line != 35 {
		t.Errorf("an unknown joint is placed on line %d, want that of the contact, 35", got.Line)
	}
}
