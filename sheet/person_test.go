package sheet

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"steelyard/human"
	"steelyard/reference"
)

func personFrom(t *testing.T, text string) (*Person, error) {
	t.Helper()
	d, err := Read("person.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return d.Person()
}

func TestPersonExample(t *testing.T) {
	p, err := personFrom(t, string(Example(KindPerson)))
	if err != nil {
		t.Fatal(err)
	}
	h := p.Person
	if h.Height != 1.72 || h.Mass != 68 || h.Sex != reference.Female || h.Age != 34 || len(h.Lengths) != 4 || len(h.Limits) != 2 || len(h.Avoid) != 1 {
		t.Errorf("got %+v", h)
	}
	// A hanging scale: 170 N at 0.28 m from the joint turns it with 47.6 N·m.
	if s := h.Strength[1]; s.Action != human.ElbowFlex || math.Abs(s.Moment-47.6) > 1e-9 || math.Abs(s.Spread-1.4) > 1e-9 {
		t.Errorf("scale: got %+v, want 47.6 ± 2·1.4 N·m", s)
	}
	if l := p.Lifts[0]; l.Machine != "Kick leg extension" || l.Load != 50 || l.Repetitions != 8 || l.Settings["pad"] != "3" {
		t.Errorf("lift: got %+v", l)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema(KindPerson)))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("person.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("person.json")
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Validate(asJSON(t, Example(KindPerson))); err != nil {
		t.Error(err)
	}
}

func TestPersonNeedsOnlyHeightAndMass(t *testing.T) {
	p, err := personFrom(t, "steelyard: person 1\nheight: 5 ft 7 in\nmass: 150 lb\n")
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(p.Person.Height-67*0.0254) > 1e-12 || math.Abs(p.Person.Mass-150*0.45359237) > 1e-9 {
		t.Errorf("got %+v", p.Person)
	}
}

func TestBadPerson(t *testing.T) {
	const head = "steelyard: person 1\nheight: 1.7 m\nmass: 70 kg\n"
	for _, bad := range []struct{ text, place, want string }{
		{"steelyard: person 1\nmass: 70 kg\n", "1:1", `has no "height"`},
		{"steelyard: person 1\nheight: 170\nmass: 70 kg\n", "2:9", "a height is 0.8 m to 2.5 m"},
		{"steelyard: person 1\nheight: 1.7 m\nmass: 26 kg\n", "3:7", "does not go with a height"},
		{head + "wieght: 3 kg\n", "4:1", "key \"wieght\""},
		{head + "lengths: {thig: 400 mm}\n", "4:17", `did you mean "thigh"?`},
		{head + "lengths: {thigh: 900 mm}\n", "4:18", "lengths: thigh"},
		{head + "limits: {knee flexon: 100 deg}\n", "4:23", `did you mean "knee flexion"?`},
		{head + "strength: [{action: knee extension, moment: 100 Nm}]\n", "4:13", "has no angle"},
		{head + "strength: [{action: knee extension, angle: 60 deg, force: 100 N}]\n", "4:13", "no distance"},
		{head + "strength: [{lift: Kick, repetitions: 5}]\n", "4:13", `has no "load"`},
		{head + "strength: [{lift: Kick, load: 40 kg, repetitions: 2.5}]\n", "4:51", "whole number"},
		{head + "strength: [{action: knee extension, angle: 170 deg, moment: 100 Nm}]\n", "4:13", "strength: knee extension"},
		{head + "strength: strong\n", "4:11", "it is a list"},
	} {
		_, err := personFrom(t, bad.text)
		if err == nil || !strings.Contains(err.Error(), bad.want) || !strings.Contains(err.Error(), "person.yaml:"+bad.place+":") {
			t.Errorf("%q: got %v, want %s and %q", bad.text, err, bad.place, bad.want)
		}
	}
}

func TestPersonIsNoMachine(t *testing.T) {
	d, err := Read("p", Example(KindPerson))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := d.Machine(); err == nil || !strings.Contains(err.Error(), "this is a person sheet") {
		t.Errorf("got %v", err)
	}
	d, err = Read("m", Example(KindMachine))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := d.Person(); err == nil || !strings.Contains(err.Error(), "this is a machine sheet") {
		t.Errorf("got %v", err)
	}
}
