package main

import (
	"slices"
	"testing"

	"steelyard/sheet"
)

// TestDialOfStepsThroughRanges counts the steps by hand.
func TestDialOfStepsThroughRanges(t *testing.T) {
	for _, c := range []struct {
		name  string
		s     sheet.Setting
		want  []string
		usual int
	}{
		{"list", sheet.Setting{Values: []string{"low", "High"}, Default: "high"}, []string{"low", "High"}, 1},
		{"masses", sheet.Setting{From: "0 kg", To: "7.5 kg", Step: "2.5 kg", Default: "5 kg"}, []string{"0 kg", "2.5 kg", "5 kg", "7.5 kg"}, 2},
		{"an end off the step", sheet.Setting{From: "1", To: "6", Step: "2", Default: "1"}, []string{"1", "3", "5"}, 0},
		{"mixed units", sheet.Setting{From: "0 mm", To: "2 in", Step: "1 in", Default: "0 mm"}, []string{"0 mm", "25.4 mm", "50.8 mm"}, 0},
		{"bare beside a unit", sheet.Setting{From: "0", To: "20 deg", Step: "10", Default: "20 deg"}, []string{"0°", "10°", "20°"}, 2},
		{"no rounding left over", sheet.Setting{From: "0.1 m", To: "0.4 m", Step: "0.1 m", Default: "0.1 m"}, []string{"0.1 m", "0.2 m", "0.3 m", "0.4 m"}, 0},
	} {
		d, err := dialOf(&c.s)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if !slices.Equal(d.Values, c.want) || d.Usual != c.usual {
			t.Errorf("%s: got %q, usual %d; want %q, %d", c.name, d.Values, d.Usual, c.want, c.usual)
		}
	}
	if _, err := dialOf(&sheet.Setting{Name: "seat", From: "0 mm", To: "30 m", Step: "1 mm", Default: "0 mm"}); err == nil {
		t.Error("30,001 steps are taken")
	}
}
