package sheet

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
)

// stepped is a lever with one setting, to be filled in.
const stepped = `steelyard: machine 1
name: Stepped
points: {axle: [0, 0], horn: [400, 0], grip: [800, 0]}
links: {ground: [axle], arm: [axle, horn, grip]}
loads: {plates: {kind: plates, at: horn, mass: 20 kg}}
contact: {kind: grip, at: grip}
travel: {turn: arm, from: 0 deg, to: 60 deg}
settings:
  tried: %s
`

// TestListed counts the steps by hand.
func TestListed(t *testing.T) {
	const mass, along, about = "sets: loads.plates.mass", "moves: {points: [grip], along: [axle, grip]}", "turns: {points: [grip], about: axle}"
	for _, c := range []struct {
		name, setting string
		want          []string
		preset        int
	}{
		{"list", "{" + along + ", values: {low: 0, High: 20}, default: high}", []string{"low", "High"}, 1},
		{"masses", "{" + mass + ", range: {from: 0 kg, to: 7.5 kg, step: 2.5 kg}, default: 5 kg}", []string{"0 kg", "2.5 kg", "5 kg", "7.5 kg"}, 2},
		{"an end off the step", "{" + mass + ", range: {from: 1 kg, to: 6 kg, step: 2 kg}}", []string{"1 kg", "3 kg", "5 kg"}, 0},
		{"mixed units", "{" + along + ", range: {from: 0 mm, to: 2 in, step: 1 in}}", []string{"0 mm", "25.4 mm", "50.8 mm"}, 0},
		{"bare beside a unit", "{" + about + ", range: {from: 0, to: 20 deg, step: 10}, default: 20 deg}", []string{"0°", "10°", "20°"}, 2},
		{"bare, as the sheet reads it", "{" + along + ", range: {from: 0, to: 1 cm, step: 5}}", []string{"0 mm", "5 mm", "10 mm"}, 0},
		{"no rounding left over", "{" + along + ", range: {from: 0.1 m, to: 0.4 m, step: 0.1 m}}", []string{"0.1 m", "0.2 m", "0.3 m", "0.4 m"}, 0},
	} {
		m := mustMachine(t, []byte(fmt.Sprintf(stepped, c.setting)))
		values, preset, err := m.Listed(0)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if !slices.Equal(values, c.want) || preset != c.preset {
			t.Errorf("%s: got %q, default %d; want %q, %d", c.name, values, preset, c.want, c.preset)
		}
		for _, v := range values {
			mustBuild(t, m, map[string]string{"tried": v})
		}
	}
}

func TestTooManyStepsAreRefused(t *testing.T) {
	m := mustMachine(t, []byte(fmt.Sprintf(stepped, "{sets: loads.plates.mass, range: {from: 0 kg, to: 1001 kg, step: 0.1 kg}}")))
	_, _, err := m.Listed(0)
	var p *Problem
	if !errors.As(err, &p) || p.Line != 9 || !strings.Contains(p.What, "10011 values") || !strings.Contains(p.Limit, "10000") {
		t.Errorf("got %v, want 10,011 values refused on line 9", err)
	}
}
