package sheet

import (
	"strings"
	"testing"
)

func TestExplain(t *testing.T) {
	for _, c := range []struct {
		name, text, old, new string
		choice               map[string]string
		says                 []string // in the explanation, which base alone need not say
	}{
		{"as it is", base, "", "", nil, []string{
			"3 moving links, 3 joints and 2 ropes leave 3×3 - 2×3 - 2 = 1 freedom; it moves in one way, as it should",
			`link "arm" weighs 10 kg, with axis, grip, horn and hook`,
			`"arm" turns on the ground at "axis", with friction coefficient 0.1`,
			`"slider" slides on the ground along the line from "rail foot" to "rail head", with friction coefficient 0.05`,
			`rope "main" runs from "stack top", over "top" (so clockwise round it), to over "oval" (so clockwise round it)`,
			`"plates", 20 kg at "horn" on "arm", counts as the load`,
			`"stack", 30 kg at "stack top" on "stack", counts as the load`,
			`spring "coil" acts along the line from "top" to "hook"`,
			`"arm" turns from 0° to 60°, counted from the measured pose`,
			`setting "plates" can be 20 kg or 40 kg; now it is 20 kg`,
			`setting "hole" can be 0 to 100 by 50; now it is 0`,
			`link "arm" resists turning like a uniform bar of its length, 0.408 kg·m²`, // 10 kg (0.7 m)²/12
			`the guide of "slider" bears at one place`,
			`no friction in "stack"`,
			"no number has a ±, so the results will have no error band",
		}},
		{"another choice", base, "", "", map[string]string{"plates": "40", "hole": "50"}, []string{
			`setting "plates" can be 20 kg or 40 kg; now it is 40 kg`, `"plates", 40 kg at "horn"`, "now it is 50",
			"loads.plates.mass is 40 kg by a setting, not 20 kg as it says there"}},
		{"mass missing", base, "    mass: 10 kg\n", "", nil, []string{`the mass of link "arm" is not given and taken as 0`}},
		{"centre missing", base, "    centre: [200, 1000]\n", "", nil, []string{
			`link "arm" balances half-way between "grip" and "hook", its points furthest apart, at 250 mm forward and 1000 mm up`}},
		{"with a ±", base, "mass: 10 kg", "mass: 10 ± 1 kg", nil, []string{"1 of 39 numbers carry a ± that goes through to the results"}},
		{"two freedoms", base, "  second: [block, hook]\n", "", nil, []string{"= 2 freedoms; it should be 1: a joint, a rope or a shared point is missing"}},
		{"none", base, "  second:", "  third: [top, grip]\n  second:", nil, []string{"= 0 freedoms; it should be 1: unless some joints only repeat what others do"}},
		{"unused", base, "  main:", "  third: [rail foot, rail head]\n  main:", nil, []string{"= 0 freedoms"}},
		{"point of nothing", base, "  block: [0, 400]", "  block: [0, 400]\n  spare: [1, 1]", nil, []string{`point "spare" is not used by anything`}},
		{"sheave of nothing", base, "over top,", "{at: top},", nil, []string{`no rope runs over "top"`}},
		{"plane", base, "{tilt: 0 deg}", "{tilt: 12 deg, offset: 300, mirrored: yes}", nil, []string{
			"the plane it moves in leans 12° from upright, lies 300 mm to the side and has a mirrored twin, and forces are told for one of the two"}},
		{"no loads", "steelyard: machine 1\npoints: {a: [0, 0], b: [1 m, 0]}\nlinks: {ground: [a], arm: [a, b]}\ncontact: {kind: grip, at: b}\ntravel: {turn: arm, from: 0, to: 9}\n", "", "", nil, []string{
			"no load is given: only the links' own weight resists", "there is no lift ratio"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if !strings.Contains(c.text, c.old) {
				t.Fatalf("the sheet has no %q", c.old)
			}
			text := mustBuild(t, mustMachine(t, []byte(strings.Replace(c.text, c.old, c.new, 1))), c.choice).Explain().String()
			for _, s := range c.says {
				if !strings.Contains(text, s) {
					t.Errorf("got\n%s\nwithout: %s", text, s)
				}
			}
		})
	}
}
