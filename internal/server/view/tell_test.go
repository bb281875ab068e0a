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
	gone := Compare(context.Background(), []Side{{Sheet: "abc"}, {Text: Read(lever)}}, api.Holding, true, nil)
	if !gone.Items[0].Gone || gone.Items[1].Gone || gone.Items[1].Readings == nil {
		t.Errorf("one of two is gone: %+v", gone.Items)
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
		"Hardest here: It takes 98 N here. The weight of the plates is 400 mm to the side of the axis, your force acts 800 mm from it.",
		"you move 1.26 m and the load 63 cm", // an arc of 90° at 800 mm and its half
	} {
		if !strings.Contains(all, want) {
			t.Errorf("not told: %q in\n%s", want, all)
		}
	}
	// Means of 98.07 N·cos φ over thirds of 90°: 98.07 N·(sin b - sin a)/30°.
	// ±4 mm of 400 mm is ±1 %.
	want := `Lever, set to plates 20 kg, handle near.
On the whole it is heaviest at the start of the movement.
The hardest moment comes in the first third of the movement, 98 N (97 N to 99 N); the easiest in the last third, 0 N (0 N to 0 N).
On average 94 N in the first third, 69 N in the middle, 25 N in the last.
The ranges tell how closely the machine was measured.
A model, not a measurement of safety. Start light and stop at pain.`
	if x.Message != want {
		t.Errorf("message:\n%s\nwant:\n%s", x.Message, want)
	}
	if x.Preview.Band == nil || strings.Contains(strings.Join(x.Preview.Words, " "), "left out") {
		t.Errorf("the band is drawn, and the words say: %v", x.Preview.Words)
	}
	if bad := Explain(context.Background(), Read("nonsense"), api.Look{}, nil); len(bad.Steps) != 0 || len(bad.Preview.Problems) == 0 {
		t.Errorf("%+v", bad)
	}
}

// A press of two arms, in pounds: whose force it is stands beside every force,
// and a setting in kg has its pounds behind it (20 kg / 0.45359237 = 44.09 lb).
func TestExplainSidesAndUnits(t *testing.T) {
	text := lever + "plane: {mirrored: yes}\nstation: {serves: leg press, seat: axle}\n"
	x := Explain(context.Background(), Read(text), api.Look{Imperial: true}, nil)
	if len(x.Preview.Problems) > 0 {
		t.Fatalf("%+v", x.Preview.Problems)
	}
	if x.Preview.Side != "one leg" || x.Preview.Sides != 2 {
		t.Errorf("sides %d, %q", x.Preview.Sides, x.Preview.Side)
	}
	for _, want := range []string{"set to plates 20 kg (44 lb), handle near", "every number is for one leg", "22 lbf ("} { // 98.07 N = 22.05 lbf
		if !strings.Contains(x.Message, want) {
			t.Errorf("not told: %q in\n%s", want, x.Message)
		}
	}
	for _, s := range x.Steps {
		if s.Title == "Hardest here" && !strings.HasPrefix(s.Caption, "It takes 22 lbf for one leg here.") {
			t.Errorf("caption: %s", s.Caption)
		}
	}
}

// The part that the body moves turns, one part whatever the contact's name.
func TestExplainByContact(t *testing.T) {
	for contact, want := range map[string]string{"kind: grip, at: grip": "The handle you hold turns", "kind: pad, at: grip, name: the shoulder pads": "The pad you push turns",
		"kind: foot plate, at: grip": "The plate under your feet turns", "kind: strap, at: grip": "The strap you pull turns"} {
		x := Explain(context.Background(), Read(strings.Replace(lever, "kind: grip, at: grip, name: hand", contact, 1)), api.Look{}, nil)
		if len(x.Steps) < 2 || !strings.HasPrefix(x.Steps[1].Caption, want) {
			t.Errorf("%s: %+v, want %q", contact, x.Steps, want)
		}
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
