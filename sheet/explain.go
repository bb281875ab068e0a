package sheet

import (
	"fmt"
	"strings"

	"steelyard/mechanism"
	"steelyard/quantity"
)

// Explanation is what was understood of a sheet, in plain words, a sentence
// each.
type Explanation struct {
	Understood []string // what is there
	Assumed    []string // what was not said and is taken as something
	Missing    []string // what the results will lack for it
}

// String returns all sentences under their headings.
func (e Explanation) String() string {
	var b strings.Builder
	for _, part := range []struct {
		heading string
		lines   []string
	}{{"Understood", e.Understood}, {"Assumed", e.Assumed}, {"Missing", e.Missing}} {
		if len(part.lines) == 0 {
			continue
		}
		b.WriteString(part.heading + ":\n")
		for _, l := range part.lines {
			b.WriteString("  - " + l + "\n")
		}
	}
	return b.String()
}

// Explain tells what was understood of the sheet with its settings as chosen.
func (b *Built) Explain() Explanation {
	t := teller{plan: b.plan, machine: &b.Machine}
	t.freedoms()
	for i := range b.plan.links[1:] {
		t.link(i)
	}
	for i := range b.plan.joints {
		t.joint(i)
	}
	for i := range b.plan.ropes {
		t.understood("rope %q runs %s", b.plan.ropes[i].name, t.route(b.plan.ropes[i].route))
	}
	t.loads()
	t.contact()
	t.station()
	for i, s := range b.sheet.Settings {
		t.setting(s, b.Choices[i].Value)
	}
	t.settingsOverrule(b)
	t.gaps()
	return t.out
}

// teller puts a plan into words.
type teller struct {
	plan    *plan
	machine *mechanism.Machine
	out     Explanation
}

func (t *teller) understood(format string, args ...any) {
	t.out.Understood = append(t.out.Understood, fmt.Sprintf(format, args...))
}

func (t *teller) assumed(format string, args ...any) {
	t.out.Assumed = append(t.out.Assumed, fmt.Sprintf(format, args...))
}

func (t *teller) missing(format string, args ...any) {
	t.out.Missing = append(t.out.Missing, fmt.Sprintf(format, args...))
}

// freedoms counts: 3 a link, less 2 a joint, less 1 a rope.
func (t *teller) freedoms() {
	links, joints, ropes := len(t.machine.Links), len(t.machine.Joints), len(t.machine.Ropes)
	n := 3*links - 2*joints - ropes
	verdict := "it moves in one way, as it should"
	switch {
	case n > 1:
		verdict = "it should be 1: a joint, a rope or a shared point is missing"
	case n < 1:
		verdict = "it should be 1: unless some joints only repeat what others do, there is a joint or rope too many"
	}
	t.understood("%s, %s and %s leave 3×%d - 2×%d - %d = %s; %s", counted(links, "moving link"), counted(joints, "joint"), counted(ropes, "rope"),
		links, joints, ropes, counted(n, "freedom"), verdict)
}

func counted(n int, what string) string {
	if n == 1 || n == -1 {
		return fmt.Sprintf("%d %s", n, what)
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// number writes a number that was given with its unit.
func (t *teller) number(n num) string {
	m := &t.plan.numbers[n]
	return quantity.Quantity{Value: m.Value, Spread: m.Spread, Unit: m.Unit}.String()
}

func (t *teller) setting(s Setting, value string) {
	allowed := orList(s.Values)
	if len(s.Values) == 0 {
		allowed = fmt.Sprintf("%s to %s by %s", s.From, s.To, s.Step)
	}
	t.understood("setting %q can be %s; now it is %s", s.Name, allowed, value)
}
