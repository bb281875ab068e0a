package view

import (
	"context"
	"math"
	"strings"
	"testing"

	"steelyard/demo"
	"steelyard/internal/server/api"
	"steelyard/mechanism"
)

// Twice the plates ask twice the force everywhere; the shorter travel ends
// earlier on the axis of metres.
func TestCompare(t *testing.T) {
	short := strings.Replace(lever, "to: 90 deg", "to: 45 deg", 1)
	c := Compare(context.Background(), []Side{
		{Text: Read(lever)},
		{Text: Read(lever), Settings: []api.Choice{{Setting: "plates", Value: "40 kg"}}},
		{Text: Read(short), Sheet: "abc", Label: "short"},
		{Text: Read("nonsense"), Label: "broken"},
		{Text: Read(lever)},
	}, api.Holding, false, nil)
	want := []string{"Lever", "Lever, plates 40 kg", "short", "broken", "Lever (2)"}
	for i, item := range c.Items {
		if item.Label != want[i] {
			t.Errorf("label %q, want %q", item.Label, want[i])
		}
	}
	if c.Items[3].Trouble == "" || c.Items[3].Readings != nil || len(c.Items[3].ByShare) != 0 {
		t.Errorf("broken: %+v", c.Items[3])
	}
	for k := range c.Share {
		f := 20 * mechanism.Gravity * math.Cos(c.Share[k]*math.Pi/2) / 2
		near(t, "20 kg", *c.Items[0].ByShare[k], f, 0.01, "N")
		near(t, "40 kg", *c.Items[1].ByShare[k], 2*f, 0.01, "N")
		if has := c.Items[2].ByTravel[k] != nil; has != (c.Travel[k] <= 0.8*math.Pi/4+1e-5) {
			t.Errorf("at %g m the short travel has a force: %v", c.Travel[k], has)
		}
	}
	// The mean of cos over the first third is sin(π/6)/(π/6).
	near(t, "more in the first third", c.Words[0].More[0], 20*mechanism.Gravity/2*math.Sin(math.Pi/6)/(math.Pi/6), 0.05, "N")
	if len(c.Words) != 3 || len(c.Words[0].Words) == 0 {
		t.Errorf("words: %+v", c.Words)
	}
	if none := Compare(context.Background(), nil, "", false, nil); len(none.Items) != 0 {
		t.Errorf("nothing compared: %+v", none)
	}
}

func TestExplain(t *testing.T) {
	x := Explain(context.Background(), Read(lever), api.Look{}, nil)
	var told []string
	for _, s := range x.Steps {
		if s.Caption == "" || s.Until < s.Position || s.Until >= len(x.Preview.Frames) {
			t.Errorf("%+v", s)
		}
		told = append(told, s.Title+": "+s.Caption)
	}
	all := strings.Join(told, "\n")
	for _, want := range []string{
		"Lever, set to plates 20 kg, handle near.",
		"The handle you hold turns about this axis.",
		"The weight of the plates pulls straight down. Only how far to the side of the axis it is counts: 400 mm here, at the start.",
		"Hardest here: It takes 98 N here. The weight of the plates is 400 mm to the side of the axis, your push passes 800 mm from it.",
		"you move 1.26 m and the load 63 cm", // an arc of 90° at 800 mm and its half
	} {
		if !strings.Contains(all, want) {
			t.Errorf("not told: %q in\n%s", want, all)
		}
	}
	if !strings.Contains(x.Message, "Start light") || !strings.HasPrefix(x.Message, "Lever, set to") {
		t.Errorf("message: %s", x.Message)
	}
	if bad := Explain(context.Background(), Read("nonsense"), api.Look{}, nil); len(bad.Steps) != 0 || len(bad.Preview.Problems) == 0 {
		t.Errorf("%+v", bad)
	}
}

func TestDemoMachinesAreExplained(t *testing.T) {
	for _, f := range demo.Machines() {
		x := Explain(context.Background(), Read(string(f.Data)), api.Look{Positions: 21, Imperial: true}, nil)
		if len(x.Steps) < 4 {
			t.Errorf("%s: %d steps", f.Name, len(x.Steps))
		}
		for _, s := range x.Steps {
			if s.Caption == "" {
				t.Errorf("%s: step %q says nothing", f.Name, s.Title)
			}
		}
	}
}

func TestCards(t *testing.T) {
	c := Card(context.Background(), api.SheetCard{ID: "x", Name: "Lever"}, lever, nil)
	if c.ID != "x" || c.Contact != "grip" || c.Loads != "the start" || c.Sign == nil || len(c.Sign.Path) != len(c.Sign.Force) || len(c.Sign.Path) != len(c.Sign.Normal) {
		t.Fatalf("%+v", c)
	}
	near(t, "peak", c.Sign.Peak, 20*mechanism.Gravity/2, 0.01, "N")
	near(t, "travel", c.Sign.Travel, 0.8*math.Pi/2, 1e-4, "m")
	near(t, "lift ratio", c.Sign.Ratio, 0.5, 1e-5, "")
	if c := Card(context.Background(), api.SheetCard{}, "nonsense", nil); c.Trouble == "" || c.Sign != nil {
		t.Errorf("%+v", c)
	}
}
