package sheet

import (
	"maps"
	"slices"
	"testing"
)

// badChoices ask base for settings it does not have.
var badChoices = []struct {
	name   string
	choice map[string]string
	row    badRow
}{
	{"unknown setting", map[string]string{"plate": "20 kg"}, badRow{place: "39:3", what: `setting "plate"`, limit: "plates and hole", cure: `did you mean "plates"?`}},
	{"value not in its list", map[string]string{"plates": "30 kg"}, badRow{place: "39:12", what: `setting "plates" is asked to be "30 kg"`, limit: "20 kg or 40 kg", cure: "choose one of these"}},
	{"value of another unit", map[string]string{"plates": "20 mm"}, badRow{place: "39:12", what: `"20 mm"`, limit: "20 kg or 40 kg", cure: "choose one of these"}},
	{"value between steps", map[string]string{"hole": "25"}, badRow{place: "40:10", what: `setting "hole" is asked to be "25"`, limit: "from 0 to 100 by 50", cure: "on a step"}},
	{"value beyond its range", map[string]string{"hole": "150"}, badRow{place: "40:10", what: `"150"`, limit: "from 0 to 100 by 50", cure: "on a step"}},
	{"value that is no number", map[string]string{"hole": "far"}, badRow{place: "40:10", what: `"far"`, limit: "from 0 to 100 by 50", cure: "number"}},
	{"no value", map[string]string{"hole": ""}, badRow{place: "40:10", what: `""`, limit: "from 0 to 100 by 50", cure: "number"}},
}

func TestBadChoices(t *testing.T) {
	m, err := machineOf("bad.yaml", base)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range badChoices {
		t.Run(c.name, func(t *testing.T) {
			_, err := m.Build(c.choice)
			c.row.check(t, err)
		})
	}
}

// TestChoices chooses the same values in every way they may be written.
func TestChoices(t *testing.T) {
	m, err := machineOf("base.yaml", base)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name   string
		choice map[string]string
		mass   float64 // kg
		grip   float64 // m, forward
	}{
		{"defaults", nil, 20, 0.6},
		{"as listed", map[string]string{"plates": "40 kg"}, 40, 0.6},
		{"without a space, capital", map[string]string{"Plates": "40KG"}, 40, 0.6},
		{"bare", map[string]string{"plates": "40"}, 40, 0.6},
		{"in grams", map[string]string{"plates": "40000 g"}, 40, 0.6},
		{"on a step", map[string]string{"hole": "50"}, 20, 0.65},
		{"last step, in cm", map[string]string{"hole": "10 cm"}, 20, 0.7},
		{"two at once", map[string]string{"hole": "100 mm", "plates": "40 kg"}, 40, 0.7},
	} {
		t.Run(c.name, func(t *testing.T) {
			b, err := m.Build(c.choice)
			if err != nil {
				t.Fatal(err)
			}
			if got := b.Machine.Weights[0].Mass; got != c.mass {
				t.Errorf("plates weigh %g kg, want %g kg", got, c.mass)
			}
			if got := b.Machine.Contact.At.X; !near(got, c.grip) {
				t.Errorf("grip %g m forward, want %g m", got, c.grip)
			}
			if len(b.Choices) != 2 {
				t.Errorf("choices %v, want one for each of 2 settings", b.Choices)
			}
			for _, name := range slices.Sorted(maps.Keys(c.choice)) {
				if b.Choices[0].Value == "" || b.Choices[1].Value == "" {
					t.Errorf("choice of %s is not told: %v", name, b.Choices)
				}
			}
		})
	}
}

// TestSettingsOfNames chooses points and whole groups of values.
func TestSettingsOfNames(t *testing.T) {
	m := mustMachine(t, goodSheets(t)["sled.yaml"])
	b := mustBuild(t, m, map[string]string{"where": "horn", "horn": "outer"})
	if at := b.Machine.Contact.At; at.X != 0.700 || at.Y != 0.980 {
		t.Errorf("contact at %v m, want the outer horn at (0.7, 0.98) m", at)
	}
	if b.Machine.Contact.Name != "the feet" {
		t.Errorf("contact is called %q", b.Machine.Contact.Name)
	}
}
