package sheet

import (
	"errors"
	"fmt"
	"strings"
	"testing"
)

// base is a usable sheet that each row of the tables below spoils in one place.
const base = `steelyard: machine 1
name: Base
points:
  axis: [0, 1000]
  grip: [600, 1000]
  horn: [400, 1000]
  top: [-500, 1800]
  hook: [-100, 1000]
  stack top: [-540, 700]
  rail foot: [0, 0]
  rail head: [0, 900]
  block: [0, 400]
links:
  ground: [axis, top, rail foot, rail head]
  arm:
    points: [axis, grip, horn, hook]
    mass: 10 kg
    centre: [200, 1000]
  slider: {points: [block], mass: 2 kg}
pins:
  axis: {friction: 0.1, diameter: 30 mm}
slides:
  slider: {along: [rail foot, rail head], at: block, friction: 0.05}
sheaves:
  top: {at: top, diameter: 80 mm, efficiency: 0.95}
cams:
  oval: {on: arm, axis: axis, ellipse: {length: 160 mm, width: 120 mm}}
ropes:
  main: [stack top, over top, {over: oval, tied: -30 deg}]
  second: [block, hook]
loads:
  plates: {kind: plates, at: horn, mass: 20 kg, diameter: 450 mm}
  stack: {kind: weight stack, at: stack top, mass: 30 kg}
  coil: {kind: spring, route: [top, hook], rate: 1 N/mm, free length: 700 mm}
contact: {kind: grip, at: grip}
travel: {turn: arm, from: 0 deg, to: 60 deg}
plane: {tilt: 0 deg}
settings:
  plates: {sets: loads.plates.mass, values: [20 kg, 40 kg], default: 20 kg}
  hole: {moves: {points: [grip], along: [axis, grip]}, range: {from: 0, to: 100, step: 50}}
`

// badRow spoils base by putting new in the place of old, and says where and in
// which words the problem is to be told.
type badRow struct {
	name, old, new    string
	place             string // line:column
	what, limit, cure string // each part of its own
}

var badSheets = []badRow{
	// numbers
	{"wrong unit", "mass: 10 kg", "mass: 10 mm", "17:11", `mass of link "arm" is "10 mm"`, "that is a length", "write kg, g or lb"},
	{"mass as force", "mass: 10 kg", "mass: 98 N", "17:11", `"98 N"`, "that is a force", "kg"},
	{"unit that is none", "mass: 10 kg", "mass: 10 kgg", "17:11", `"10 kgg"`, "that ", "kg"},
	{"negative mass", "mass: 10 kg", "mass: -3 kg", "17:11", `mass of link "arm" is -3 kg`, "0 kg to 5000 kg", "check the number"},
	{"huge mass", "mass: 10 kg", "mass: 9 t", "17:11", `"9 t"`, "that ", "kg"},
	{"mass beyond a gym", "mass: 10 kg", "mass: 6000 kg", "17:11", "6000 kg", "5000 kg", "unit"},
	{"not a number", "mass: 10 kg", "mass: .nan", "17:11", `".nan"`, "that ", "write"},
	{"infinite", "mass: 10 kg", "mass: .inf", "17:11", `".inf"`, "that ", "write"},
	{"octal", "mass: 10 kg", "mass: 010", "17:11", `"010"`, "octal", "leave the leading zero out"},
	{"underscore", "mass: 10 kg", "mass: 1_000", "17:11", `"1_000"`, "underscore", "without it"},
	{"hexadecimal", "mass: 10 kg", "mass: 0x10", "17:11", `"0x10"`, "that ", "write"},
	{"thousands comma", "mass: 10 kg", "mass: '1,234'", "17:11", `"1,234"`, "that ", "1234"},
	{"word for a number", "mass: 10 kg", "mass: heavy", "17:11", `"heavy"`, "that ", "number"},
	{"date for a number", "mass: 10 kg", "mass: 2026-11-25", "17:11", `"2026-11-25"`, "that ", "write"},
	{"no value", "mass: 10 kg", "mass:", "17:5", `mass of link "arm" is empty`, "0 kg to 5000 kg", "write one number"},
	{"null", "mass: 10 kg", "mass: null", "17:11", `"null"`, "that ", "number"},
	{"list for a number", "mass: 10 kg", "mass: [10, 11]", "17:11", "a list of 2", "0 kg to 5000 kg", "one number"},
	{"number group without number", "mass: 10 kg", "mass: {how: scale}", "17:12", `has no "is"`, "needs one", "is:"},
	{"negative spread", "mass: 10 kg", "mass: 10 ± -1 kg", "17:11", `"10 ± -1 kg"`, "that has a sign after ±", "without a sign"},
	{"spread of another kind", "mass: 10 kg", "mass: 10 kg ± 3 mm", "17:11", `"10 kg ± 3 mm"`, "that has a ±", "kg"},
	{"rate without unit", "rate: 1 N/mm", "rate: 1", "34:50", `rate of spring "coil" is "1"`, "that ", "N/mm"},
	{"efficiency above 1", "efficiency: 0.95", "efficiency: 95", "25:47", `efficiency of sheave "top" is 95`, "0.05 to 1", "check"},
	{"negative friction", "friction: 0.1,", "friction: -0.1,", "21:20", `friction of pin "axis" is -0.1`, "0 to 2", "check"},
	{"sheave of no size", "diameter: 80 mm", "diameter: 0", "25:28", `diameter of sheave "top" is 0 mm`, "0.01 mm to 10 m", "check"},
	{"place beyond the horizon", "grip: [600, 1000]", "grip: [600 m, 1000]", "5:10", `the forward distance of point "grip" is 600 m`, "within 100 m", "unit"},
	{"tilt beyond level", "tilt: 0 deg", "tilt: 120 deg", "37:15", "tilt of plane is 120°", "-90° to 90°", "check"},

	// points and places
	{"decimal comma in a place", "grip: [600, 1000]", "grip: [600,5, 1000]", "5:9", `point "grip" is a list of 3`, "two numbers", "decimal sign is a point"},
	{"place of one number", "grip: [600, 1000]", "grip: 600", "5:9", `point "grip" is "600"`, "two numbers", "[forward, up]"},
	{"unknown point", "at: grip", "at: gripp", "35:27", `"at" of contact is "gripp"`, "no point has that name", `did you mean "grip"?`},
	{"point on no link", "horn, hook]", "horn]", "34:37", `"hook"`, "no link carries that point", "list it under the link"},
	{"point listed twice", "horn, hook]", "horn, hook, horn]", "16:38", `lists "horn" twice`, "once", "take one out"},
	{"bad name", "hook: [-100", "hook.2: [-100", "8:3", `the name is "hook.2"`, "letters, digits", "choose"},
	{"number for a point", "at: horn, mass", "at: 3, mass", "32:30", `"at" of plates "plates" is "3"`, "no point has that name", "points:"},

	// keys
	{"unknown key at the top", "name: Base", "nmae: Base", "2:1", `the sheet has a key "nmae"`, "it knows", `did you mean "name"?`},
	{"unknown key of a link", "mass: 10 kg", "mas: 10 kg", "17:5", `link "arm" has a key "mas"`, "centre, inertia, mass", `did you mean "mass"?`},
	{"American spelling", "centre: [200", "center: [200", "18:5", `a key "center"`, "it knows", `did you mean "centre"?`},
	{"key of another kind of load", "mass: 20 kg, diameter", "rate: 20 N/mm, mass: 20 kg, diameter", "32:36", `plates "plates" has a key "rate"`, "it knows", "take the line out"},
	{"key twice", "  grip: [600, 1000]", "  grip: [600, 1000]\n  grip: [601, 1000]", "6:3", `"grip" stands here a second time`, "line 5", "keep one"},
	{"key twice in brackets", "{tilt: 0 deg}", "{tilt: 0 deg, tilt: 1 deg}", "37:22", `"tilt" stands here a second time`, "line 37", "keep one"},
	{"section missing", "contact: {kind: grip, at: grip}\n", "", "1:1", "the machine has no contact", "where the body meets", "contact:"},
	{"travel missing", "travel: {turn: arm, from: 0 deg, to: 60 deg}\n", "", "1:1", "the machine has no travel", "stop to another", "travel:"},

	// links and joints
	{"unknown link", "turn: arm", "turn: arn", "36:16", `"turn" of travel is "arn"`, "no link has that name", `did you mean "arm"?`},
	{"links that share two points", "slider: {points: [block]", "slider: {points: [block, grip, horn]", "19:12", `links "arm" and "slider" share the points`, "two pins lock", "one link"},
	{"pin of no pin", "axis: {friction", "grip: {friction", "21:10", `pin "grip"`, "two links share", "list the point under both"},
	{"pin friction without diameter", "friction: 0.1, diameter: 30 mm", "friction: 0.1", "21:10", "friction and no diameter", "radius", "diameter:"},
	{"slide of no link", "slider: {along", "slidr: {along", "23:3", `"slidr" slides`, "no moving link", `did you mean "slider"?`},
	{"slide along one point", "along: [rail foot, rail head]", "along: [rail foot, rail foot]", "23:19", `from "rail foot" to itself`, "two points", "two different points"},
	{"slide on its own points", "slider: {points: [block]", "slider: {points: [block, rail foot, rail head]", "19:12", `"rail foot" and "rail head"`, "two pins lock", "one link"},
	{"contact on the ground", "at: grip}", "at: top}", "35:11", `contact "top" is on the ground`, "a link that moves", "list the point"},
	{"contact of no kind", "kind: grip", "kind: hand", "35:17", `kind of contact is "hand"`, "grip, pad, foot plate", "write one of these"},
	{"travel of nothing", "from: 0 deg, to: 60 deg", "from: 60 deg, to: 60 deg", "36:10", "from 60° to 60°", "its ends differ", "measure both stops"},
	{"travel in the wrong unit", "to: 60 deg", "to: 600 mm", "36:38", `"to" of travel is "600 mm"`, "that is a length", "deg"},
	{"travel slides what turns", "turn: arm, from: 0 deg, to: 60 deg", "slide: arm, from: 0, to: 60 mm", "36:10", `travel slides "arm"`, "no guide", "slides:"},

	// ropes
	{"rope over no sheave", "over top,", "over tup,", "29:21", `rope "main" passes over "tup"`, "no sheave or cam", `did you mean "top"?`},
	{"rope with no side", "over top,", "top,", "29:21", `goes to "top"`, "one side", "write over, under"},
	{"rope of one place", "main: [stack top, over top, {over: oval, tied: -30 deg}]", "main: [stack top]", "29:9", `rope "main" is a list of 1`, "at least two places", "write ["},
	{"rope end not tied", "{over: oval, tied: -30 deg}", "over oval", "29:31", `rope "main" ends on "oval"`, "where it is fixed", "tied: 200 deg"},
	{"side the rope cannot touch", "over top,", "under top,", "29:21", `passes under "top"`, "fits neither side", "clockwise round"},
	{"turns that are no count", "tied: -30 deg", "tied: -30 deg, turns: 1.5", "29:66", `"1.5"`, "0 to 50", "count"},

	// loads
	{"unknown kind of load", "kind: plates", "kind: plate", "32:18", `kind of load "plates" is "plate"`, "band, chain", `did you mean "plates"?`},
	{"load of no kind", "{kind: plates, at", "{at", "32:12", `load "plates" has no "kind"`, "needs one", "kind: plates"},
	{"load without mass", "mass: 20 kg, diameter", "diameter", "32:12", `plates "plates" has no "mass"`, "needs one", "mass: 40 kg"},
	{"spring without route", "route: [top, hook], ", "", "34:10", `spring "coil" has no "route"`, "needs one", "route:"},

	// settings
	{"setting of nothing", "sets: loads.plates.mass", "sets: loads.plate.mass", "39:18", `sets "loads.plate.mass"`, "no such value", `did you mean "loads.plates.mass"?`},
	{"setting of a group", "sets: loads.plates.mass", "sets: loads.plates", "39:18", `sets "loads.plates"`, "whole group", "loads.plates.kind"},
	{"value of another dimension", "values: [20 kg, 40 kg]", "values: [20 kg, 40 mm]", "39:53", `"40 mm"`, "that is a length", "kg"},
	{"default that is no value", "default: 20 kg", "default: 30 kg", "39:70", `default of setting "plates" is "30 kg"`, "20 kg and 40 kg", "write one of them"},
	{"value twice", "values: [20 kg, 40 kg]", "values: [20 kg, 20 kg]", "39:53", `value "20 kg"`, "name of its own", "rename"},
	{"range backwards", "{from: 0, to: 100, step: 50}", "{from: 100, to: 0, step: 50}", "40:70", "from 100 mm to 0 mm", "grows by steps", "least value first"},
	{"default between steps", "step: 50}}", "step: 50}, default: 20 mm}", "40:102", `default of setting "hole" is 20 mm`, "by 50 mm", "on a step"},
	{"setting that changes nothing", "sets: loads.plates.mass, ", "", "39:12", `setting "plates" changes nothing`, "changes something", "sets:"},
	{"values and range", "range: {from: 0", "values: [0], range: {from: 0", "40:77", `both "values" and "range"`, "one of them", "take one out"},
}

func TestBadSheets(t *testing.T) {
	if _, err := machineOf("base.yaml", base); err != nil {
		t.Fatal(err)
	}
	for _, row := range badSheets {
		t.Run(row.name, func(t *testing.T) {
			if strings.Count(base, row.old) < 1 {
				t.Fatalf("base has no %q", row.old)
			}
			_, err := machineOf("bad.yaml", strings.Replace(base, row.old, row.new, 1))
			row.check(t, err)
		})
	}
}

// check asserts that one of the problems in err is the one expected.
func (row *badRow) check(t *testing.T, err error) {
	t.Helper()
	var all Problems
	var one *Problem
	switch {
	case errors.As(err, &all):
	case errors.As(err, &one):
		all = Problems{one}
	default:
		t.Fatalf("got %v, want a problem", err)
	}
	for _, p := range all {
		if p.File == "bad.yaml" && fmt.Sprintf("%d:%d", p.Line, p.Column) == row.place &&
			strings.Contains(p.What, row.what) && strings.Contains(p.Limit, row.limit) && strings.Contains(p.Cure, row.cure) {
			return
		}
	}
	t.Errorf("got\n%v\nwant at %s: …%s…, but …%s…; …%s…", err, row.place, row.what, row.limit, row.cure)
}

func machineOf(name, text string) (*Machine, error) {
	d, err := Read(name, []byte(text))
	if err != nil {
		return nil, err
	}
	return d.Machine()
}
