package view

import (
	"context"
	"fmt"
	"strings"

	"steelyard/evaluation"
	"steelyard/internal/server/api"
	"steelyard/profile"
	"steelyard/sheet"
)

// Explain presents one stroke of a machine, step by step. If the sheet cannot
// be used there are no steps, and the preview says why.
func Explain(ctx context.Context, text *Text, look api.Look, person *sheet.Person) api.Explanation {
	look.Frames, look.NoBand = api.AllFrames, true
	x := api.Explanation{Steps: []api.ExplainStep{}, Preview: Preview(ctx, text, look, person)}
	p := &x.Preview
	if p.Curve == nil || len(p.Frames) == 0 {
		return x
	}
	t := teller{p, Units(look.Imperial)}
	x.Steps = t.steps()
	x.Message = t.message()
	return x
}

// teller tells a stroke.
type teller struct {
	*api.Preview
	u evaluation.Formatter
}

func (t teller) last() int { return len(t.Frames) - 1 }

// at returns the position at a place on the travel that has a force.
func (t teller) at(travel float64) int {
	best := -1
	for k, s := range t.Curve.Travel {
		if t.Curve.Lift[k] != nil && (best < 0 || abs(s-travel) < abs(t.Curve.Travel[best]-travel)) {
			best = k
		}
	}
	return max(best, 0)
}

func abs(x float64) float64 { return max(x, -x) }

func (t teller) lifting() *api.Readings {
	for i := range t.Readings {
		if t.Readings[i].Phase == phases[profile.Lifting] {
			return &t.Readings[i]
		}
	}
	return &api.Readings{}
}

func (t teller) steps() []api.ExplainStep {
	r := t.lifting()
	start, peak, least := t.at(0), t.at(r.Peak.Travel), t.at(r.Least.Travel)
	steps := []api.ExplainStep{{Title: "The machine", Caption: t.intro(), Position: start, Until: t.last(), Show: []api.Shown{api.ShowMachine}}}
	first := &t.Frames[start]
	if armOf(first, api.ContactArm) != nil {
		steps = append(steps, api.ExplainStep{Title: "What it turns about", Caption: "What you hold turns about this axis. The further your push passes from it, the less force you need.",
			Position: start, Until: start, Show: []api.Shown{api.ShowMachine, api.ShowAxis, api.ShowContact}})
	}
	if load := armOf(first, api.LoadArm); load != nil {
		steps = append(steps, api.ExplainStep{Title: "Where gravity pulls", Caption: fmt.Sprintf("The %s pulls straight down. Only its level distance from the axis counts: %s here, at the start.", load.Name, t.u.Short(load.Length)),
			Position: start, Until: start, Show: []api.Shown{api.ShowMachine, api.ShowAxis, api.ShowGravity, api.ShowLoadArm}})
	}
	if s, ok := t.ropeStep(start); ok {
		steps = append(steps, s)
	}
	steps = append(steps,
		api.ExplainStep{Title: "Hardest here", Caption: t.Frames[peak].Because, Position: peak, Until: peak,
			Show: []api.Shown{api.ShowMachine, api.ShowRibbon, api.ShowAxis, api.ShowGravity, api.ShowLoadArm, api.ShowContact, api.ShowRadius}},
		api.ExplainStep{Title: "Easiest here", Caption: t.Frames[least].Because, Position: least, Until: least,
			Show: []api.Shown{api.ShowMachine, api.ShowRibbon, api.ShowAxis, api.ShowGravity, api.ShowLoadArm, api.ShowContact, api.ShowRadius}})
	if r.LiftRatio > 0 {
		steps = append(steps, api.ExplainStep{Title: "How far the load travels", Caption: t.travels(r), Position: 0, Until: t.last(), Show: []api.Shown{api.ShowMachine, api.ShowTravels}})
	}
	return append(steps, api.ExplainStep{Title: "The whole stroke", Caption: t.Words[0], Position: 0, Until: t.last(),
		Show: []api.Shown{api.ShowMachine, api.ShowRibbon, api.ShowCurve}})
}

// intro says what one sees.
func (t teller) intro() string {
	if len(t.Settings) == 0 {
		return t.Name + "."
	}
	return t.Name + ", set to " + t.settings() + "."
}

func (t teller) settings() string {
	var parts []string
	for _, c := range t.Settings {
		parts = append(parts, c.Setting+" "+c.Value)
	}
	return strings.Join(parts, ", ")
}

// ropeStep shows what a cam or drum does along the travel.
func (t teller) ropeStep(start int) (api.ExplainStep, bool) {
	a, b := armOf(&t.Frames[start], api.RopeArm), armOf(&t.Frames[t.at(t.Curve.Travel[t.last()])], api.RopeArm)
	if a == nil || b == nil {
		return api.ExplainStep{}, false
	}
	caption := fmt.Sprintf("The rope pulls along this line, %s from the axis of the %s at the start and %s at the end.", t.u.Short(a.Length), a.Name, t.u.Short(b.Length))
	if contact := armOf(&t.Frames[start], api.ContactArm); contact != nil && contact.Axis == a.Axis {
		caption += " The longer that radius, the more it asks of you."
	}
	if abs(a.Length-b.Length) < 0.01*max(a.Length, b.Length) {
		caption = fmt.Sprintf("The rope pulls along this line, %s from the axis of the %s all the way, so the %s does not change the load.", t.u.Short(a.Length), a.Name, a.Name)
	}
	return api.ExplainStep{Title: "What the rope does", Caption: caption, Position: 0, Until: t.last(), Show: []api.Shown{api.ShowMachine, api.ShowRope, api.ShowRadius}}, true
}

func (t teller) travels(r *api.Readings) string {
	return fmt.Sprintf("Over the whole stroke the load travels %s while you travel %s: lift ratio %.2f. The smaller it is, the less the load's own motion adds when you go fast.",
		t.u.Length(r.LiftRatio*r.Length), t.u.Length(r.Length), r.LiftRatio)
}

// message is the stroke in a few lines, ready to be sent.
func (t teller) message() string {
	lines := []string{t.intro()}
	lines = append(lines, t.Words...)
	return strings.Join(append(lines, "A model, not a measurement of safety. Start light and stop at pain."), "\n")
}
