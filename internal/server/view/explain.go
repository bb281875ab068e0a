package view

import (
	"context"
	"fmt"
	"math"
	"strings"

	"steelyard/evaluation"
	"steelyard/internal/server/api"
	"steelyard/profile"
	"steelyard/quantity"
	"steelyard/sheet"
)

// Explain presents one stroke of a machine, step by step, to somebody who
// trains on it. If the sheet cannot be used there are no steps, and the preview
// says why.
func Explain(ctx context.Context, text *Text, look api.Look, person *sheet.Person) api.Explanation {
	look.Frames, look.NoBand = api.AllFrames, false
	p, e := previewed(ctx, text, look, person)
	x := api.Explanation{Steps: []api.ExplainStep{}, Preview: p}
	if e == nil || len(p.Frames) == 0 {
		return x
	}
	t := teller{&x.Preview, e, Units(look.Imperial)}
	x.Steps, x.Message = t.steps(), t.message()
	return x
}

// teller tells a stroke in plain words.
type teller struct {
	*api.Preview
	e *evaluation.Evaluation
	u evaluation.Formatter
}

func (t teller) last() int { return len(t.Frames) - 1 }

// at returns the position at a place on the travel that has a force.
func (t teller) at(travel float64) int {
	best := -1
	for k, s := range t.Curve.Travel {
		if t.Curve.Lift[k] != nil && (best < 0 || math.Abs(s-travel) < math.Abs(t.Curve.Travel[best]-travel)) {
			best = k
		}
	}
	return max(best, 0)
}

func (t teller) lifting() *profile.Readings { return &t.e.Readings[profile.Lifting] }

func (t teller) steps() []api.ExplainStep {
	r := t.lifting()
	start := t.at(0)
	first := &t.Frames[start]
	steps := []api.ExplainStep{{Title: "The machine", Caption: t.intro(), Position: start, Until: t.last(), Show: []api.Shown{api.ShowMachine}}}
	if armOf(first, api.ContactArm) != nil {
		steps = append(steps, api.ExplainStep{Title: "What it turns about", Caption: fmt.Sprintf("%s turns about this axis. The further from it your force acts, the less it takes.", t.pushed()),
			Position: start, Until: start, Show: []api.Shown{api.ShowMachine, api.ShowAxis, api.ShowContact}})
	}
	if load := armOf(first, api.LoadArm); load != nil {
		steps = append(steps, api.ExplainStep{Title: "Where gravity pulls", Caption: fmt.Sprintf("The weight of the %s pulls straight down. Only how far to the side of the axis it is counts: %s here, at the start.", load.Name, t.u.Short(load.Length)),
			Position: start, Until: start, Show: []api.Shown{api.ShowMachine, api.ShowAxis, api.ShowGravity, api.ShowLoadArm}})
	}
	if s, ok := t.ropeStep(start); ok {
		steps = append(steps, s)
	}
	hardest, easiest := t.extreme("Hardest here", &t.e.Causes[0]), t.extreme("Easiest here", &t.e.Causes[1])
	steps = append(steps, hardest, easiest)
	if r.LiftRatio > 0 {
		steps = append(steps, api.ExplainStep{Title: "How far the load travels", Caption: t.travels(r), Position: 0, Until: t.last(), Show: []api.Shown{api.ShowMachine, api.ShowTravels}})
	}
	return append(steps, api.ExplainStep{Title: "The whole stroke", Caption: strings.Join(t.verdict(), " "), Position: 0, Until: t.last(),
		Show: []api.Shown{api.ShowMachine, api.ShowRibbon, api.ShowCurve}})
}

// extreme shows the hardest or the easiest place.
func (t teller) extreme(title string, c *evaluation.Cause) api.ExplainStep {
	k := t.at(c.At.Travel)
	return api.ExplainStep{Title: title, Caption: fmt.Sprintf("It takes %s here. %s", t.e.Sided(t.u.Force(c.At.Force)), t.reason(c)), Position: k, Until: k,
		Show: []api.Shown{api.ShowMachine, api.ShowRibbon, api.ShowAxis, api.ShowGravity, api.ShowLoadArm, api.ShowContact, api.ShowRadius}}
}

// intro says what one sees.
func (t teller) intro() string {
	if len(t.Settings) == 0 {
		return t.Name + "."
	}
	var parts []string
	for _, c := range t.Settings {
		parts = append(parts, c.Setting+" "+evaluation.Beside(c.Value, t.u))
	}
	return t.Name + ", set to " + strings.Join(parts, ", ") + "."
}

// pushed names what the body moves, in the singular.
func (t teller) pushed() string {
	switch t.e.Built.Contact {
	case sheet.Pad:
		return "The pad you push"
	case sheet.FootPlate:
		return "The plate under your feet"
	case sheet.Strap:
		return "The strap you pull"
	case sheet.RopeHandle:
		return "The handle you pull"
	case sheet.Held:
		return "The weight you carry"
	}
	return "The handle you hold"
}

// reason says why it is as hard or as easy as it is at a place.
func (t teller) reason(c *evaluation.Cause) string {
	main := &c.Main
	switch {
	case len(c.Shares) == 0:
		return "Nothing loads the machine here."
	case c.Manner == evaluation.ByLever:
		return fmt.Sprintf("The weight of the %s is %s to the side of the axis, your force acts %s from it.", main.Name, t.u.Short(math.Abs(c.LoadArm)), t.u.Short(c.ContactArm))
	case c.Manner == evaluation.ByCam:
		return fmt.Sprintf("The rope passes %s from the axis of the %s, your force acts %s from it.", t.u.Short(c.LoadArm), c.Cam, t.u.Short(c.ContactArm))
	case c.Manner == evaluation.ByPull:
		return fmt.Sprintf("The pull of the %s accounts for %s of it.", main.Name, t.u.Force(main.Force))
	case c.Ratio < 0:
		return fmt.Sprintf("With each %s you move, the weight of the %s comes down by %s.", t.u.Short(t.piece()), main.Name, t.u.Short(-t.piece()*c.Ratio))
	}
	return fmt.Sprintf("Each %s you move lifts the weight of the %s by %s.", t.u.Short(t.piece()), main.Name, t.u.Short(t.piece()*c.Ratio))
}

// piece is a length of movement to be told of, m, round in the reader's units.
func (t teller) piece() float64 {
	if t.u.System() == quantity.Imperial {
		return quantity.Inch.ToSI(4)
	}
	return 0.1
}

// ropeStep shows what a cam or drum does along the travel.
func (t teller) ropeStep(start int) (api.ExplainStep, bool) {
	a, b := armOf(&t.Frames[start], api.RopeArm), armOf(&t.Frames[t.at(t.Curve.Travel[t.last()])], api.RopeArm)
	if a == nil || b == nil {
		return api.ExplainStep{}, false
	}
	caption := fmt.Sprintf("The rope pulls along this line, %s from the axis of the %s at the start and %s at the end.", t.u.Short(a.Length), a.Name, t.u.Short(b.Length))
	if contact := armOf(&t.Frames[start], api.ContactArm); contact != nil && contact.Axis == a.Axis {
		caption += " The longer that distance, the more it asks of you."
	}
	if math.Abs(a.Length-b.Length) < 0.01*max(a.Length, b.Length) {
		caption = fmt.Sprintf("The rope pulls along this line, %s from the axis of the %s all the way, so the %s does not change the load.", t.u.Short(a.Length), a.Name, a.Name)
	}
	return api.ExplainStep{Title: "What the rope does", Caption: caption, Position: 0, Until: t.last(), Show: []api.Shown{api.ShowMachine, api.ShowRope, api.ShowRadius}}, true
}

func (t teller) travels(r *profile.Readings) string {
	return fmt.Sprintf("Over the whole stroke you move %s and the load %s. The less the load moves, the less it resists a fast start or stop.",
		t.u.Length(r.Length), t.u.Length(r.LiftRatio*r.Length))
}
