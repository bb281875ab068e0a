package evaluation

import (
	"fmt"
	"slices"

	"steelyard/exercise"
	"steelyard/human"
	"steelyard/sheet"
)

// Help is one setting, changed alone, that would mend some or all of what is
// out of reach or past a joint's limit.
type Help struct {
	Setting, Value string
	Now, Then      Trouble
}

// Trouble counts what is wrong along the travel.
type Trouble struct {
	Positions int // tried
	Unreached int // out of reach
	Beyond    int // past a joint's limit
}

func (t Trouble) none() bool { return t.Unreached+t.Beyond == 0 }

// compare puts reach before range.
func (t Trouble) compare(u Trouble) int {
	if t.Unreached != u.Unreached {
		return t.Unreached - u.Unreached
	}
	return t.Beyond - u.Beyond
}

// String says what the setting would do, as a sentence without its full stop.
func (h Help) String() string {
	switch {
	case h.Then.none():
		return fmt.Sprintf("setting %s to %q puts the whole travel within reach and within every joint's limits", h.Setting, h.Value)
	case h.Then.Unreached == 0 && h.Now.Unreached > 0:
		return fmt.Sprintf("setting %s to %q puts the whole travel within reach, %s of it past a joint's limit", h.Setting, h.Value, h.Then.part(h.Then.Beyond))
	case h.Then.Unreached < h.Now.Unreached:
		return fmt.Sprintf("setting %s to %q leaves %s of the travel out of reach instead of %s", h.Setting, h.Value, h.Then.part(h.Then.Unreached), h.Now.part(h.Now.Unreached))
	}
	return fmt.Sprintf("setting %s to %q leaves %s of the travel past a joint's limit instead of %s", h.Setting, h.Value, h.Then.part(h.Then.Beyond), h.Now.part(h.Now.Beyond))
}

func (t Trouble) part(n int) string {
	return fmt.Sprintf("%.0f %%", 100*float64(n)/float64(t.Positions))
}

// How closely, and among how many values, help is looked for.
const (
	helpPositions = 21
	mostValues    = 40 // of one setting
)

// helps tries every other value of each setting alone and returns, for each
// setting that makes things better, its best value; the best setting first.
// Settings that run in steps are left to the search of package exercise.
func (e *Evaluation) helps(b *human.Body) []Help {
	now, ok := e.trouble(b, "", "")
	if !ok {
		return nil
	}
	var out []Help
	for _, s := range e.Sheet.Settings {
		best := Help{Setting: s.Name, Now: now, Then: now}
		for _, v := range s.Values[:min(len(s.Values), mostValues)] {
			if then, ok := e.trouble(b, s.Name, v); ok && then.compare(best.Then) < 0 {
				best.Value, best.Then = v, then
			}
		}
		if best.Value != "" {
			out = append(out, best)
		}
	}
	slices.SortStableFunc(out, func(a, b Help) int { return a.Then.compare(b.Then) })
	return out
}

// trouble places the body along the travel with one setting changed. It
// reports false if the machine cannot be set so.
func (e *Evaluation) trouble(b *human.Body, setting, value string) (Trouble, bool) {
	setup, err := e.setupWith(setting, value)
	if err != nil {
		return Trouble{}, false
	}
	t := Trouble{Positions: setup.Len()}
	var pl exercise.Placement
	for i := range setup.Len() {
		switch f := setup.Place(&pl, b, i); {
		case f.Kind == exercise.NoFault, f.Kind == exercise.NotThere:
		case f.Placed():
			t.Beyond++
		default:
			t.Unreached++
		}
	}
	return t, true
}

func (e *Evaluation) setupWith(setting, value string) (*exercise.Setup, error) {
	built, err := e.Sheet.Build(e.choiceWith(setting, value))
	if err != nil {
		return nil, err
	}
	st, _ := built.Station() // no setting takes the station away
	setup, _, err := setUp(built.Machine, st.Exercises[0], st, helpPositions)
	return setup, err
}

// choiceWith returns the settings as they are, but for one.
func (e *Evaluation) choiceWith(setting, value string) map[string]string {
	choice := chosenOf(e.Built)
	if setting != "" {
		choice[setting] = value
	}
	return choice
}

func chosenOf(b *sheet.Built) map[string]string {
	choice := map[string]string{}
	for _, c := range b.Choices {
		choice[c.Setting] = c.Value
	}
	return choice
}
