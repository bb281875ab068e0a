package view

import (
	"context"
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"steelyard/demo"
	"steelyard/internal/server/api"
	"steelyard/sheet"
)

func demoFile(t *testing.T, files []demo.File, name string) string {
	t.Helper()
	for _, f := range files {
		if f.Name == name {
			return string(f.Data)
		}
	}
	t.Fatalf("the demo room has no %s", name)
	return ""
}

// rower has measured legs.
const rower = `steelyard: person 1
name: Rower
height: 1.72 m
mass: 68 kg
sex: female
age: 34
lengths: {thigh: 412 mm, shank: 398 mm}
`

func somebody(t *testing.T, text string) *sheet.Person {
	t.Helper()
	p, err := Person("the person", text)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// On a leg extension the shank moves in the plane of the picture, so it is seen
// as long as it was measured, and knee and thigh stay where they are.
func TestBodyIsSeenAsMeasured(t *testing.T) {
	text := demoFile(t, demo.Machines(), "kick-extension.yaml")
	p := Preview(context.Background(), Read(text), api.Look{Frames: api.AllFrames, Positions: 21}, somebody(t, rower))
	if p.Person == nil {
		t.Fatalf("nobody on it: %s", p.PersonGap)
	}
	seen := 0
	for _, f := range p.Frames {
		if f.Body == nil {
			continue
		}
		for _, s := range f.Body.Segments {
			length := vec(s.To).Sub(vec(s.From)).Norm()
			switch s.Name {
			case "shank":
				near(t, "shank", length, 0.398, 1e-3, "m")
				seen++
			case "thigh":
				near(t, "thigh", length, 0.412, 1e-3, "m")
			}
		}
	}
	if seen == 0 {
		t.Error("no shank was drawn")
	}
}

// Effort is the moment asked over the moment available, the body's is that of
// its hardest joint, and at effort 1 the force is all that can be produced.
func TestPersonColumnsFit(t *testing.T) {
	person := somebody(t, demoFile(t, demo.People(), demo.People()[0].Name))
	met := 0
	for _, f := range demo.Machines() {
		p := Preview(context.Background(), Read(string(f.Data)), api.Look{Positions: 21, Frames: api.AllFrames}, person)
		if _, err := json.Marshal(p); err != nil {
			t.Errorf("%s: %v", f.Name, err)
		}
		if p.Person == nil {
			if p.PersonGap == "" {
				t.Errorf("%s: nobody on it, and no reason", f.Name)
			}
			continue
		}
		met++
		on := p.Person
		if len(on.Words) == 0 || len(on.Cautions) == 0 || on.Exercise == "" {
			t.Errorf("%s: %+v", f.Name, on)
		}
		for k, effort := range on.Effort {
			if effort == nil {
				continue
			}
			hardest := 0.0
			for _, j := range on.Joints {
				if j.Effort[k] == nil {
					continue
				}
				near(t, f.Name+", "+j.Joint, *j.Effort[k], math.Abs(*j.Moment[k]) / *j.Available[k], 1e-3*(1+*j.Effort[k]), "")
				hardest = max(hardest, *j.Effort[k])
			}
			near(t, f.Name+", hardest joint", *effort, hardest, 1e-5, "")
		}
		if len(on.Gap) != len(p.Curve.Travel) || len(on.Can) != len(p.Curve.Travel) || on.Sticking != nil && *on.Sticking >= len(on.Gap) {
			t.Errorf("%s: columns of %d and %d for %d positions", f.Name, len(on.Gap), len(on.Can), len(p.Curve.Travel))
		}
	}
	if met < 15 {
		t.Errorf("only %d machines took the person", met)
	}
}

func TestPersonThatDoesNotFit(t *testing.T) {
	p := Preview(context.Background(), Read(lever), api.Look{}, somebody(t, rower))
	if p.Person != nil || p.PersonGap == "" || p.Curve == nil {
		t.Errorf("a machine without a station: %q", p.PersonGap)
	}
	if _, err := Person("x", lever); err == nil {
		t.Error("a machine was taken for a person")
	}
}

func TestCardsForAPerson(t *testing.T) {
	text := demoFile(t, demo.Machines(), "kick-extension.yaml")
	c := Card(context.Background(), api.SheetCard{}, text, somebody(t, rower))
	if c.Fit == nil || c.Fit.Trouble != "" || !(c.Fit.Reached > 0 && c.Fit.InRange <= c.Fit.Reached) || c.Fit.Effort == nil || len(c.Fit.Muscles) == 0 || len(c.Exercises) == 0 || len(c.Muscles) == 0 {
		t.Errorf("%+v, %v, %v", c.Fit, c.Exercises, c.Muscles)
	}
	if c := Card(context.Background(), api.SheetCard{}, lever, somebody(t, rower)); c.Fit == nil || c.Fit.Trouble == "" {
		t.Errorf("%+v", c.Fit)
	}
}

// The same machine with another load: the joint moments differ, the columns do
// not.
func TestCompareForAPerson(t *testing.T) {
	text := demoFile(t, demo.Machines(), "kick-extension.yaml")
	c := Compare(context.Background(), []Side{{Text: Read(text)}, {Text: Read(lever)}}, "", false, somebody(t, rower))
	a, b := c.Items[0], c.Items[1]
	if len(a.Effort) != len(c.Share) || len(a.Joints) == 0 || len(a.Joints[0].Moment) != len(c.Share) {
		t.Errorf("%d efforts, %d joints, %q", len(a.Effort), len(a.Joints), a.PersonGap)
	}
	if b.PersonGap == "" || len(b.Effort) != 0 {
		t.Errorf("%+v", b)
	}
}

func TestPersonSheets(t *testing.T) {
	s := PersonSheet(Read(rower))
	if len(s.Problems) > 0 || s.Name != "Rower" || s.Height != 1.72 || s.Mass != 68 || s.Sex != "female" || *s.Age != 34 || len(s.Understood) == 0 || len(s.Assumed) == 0 {
		t.Errorf("%+v", s)
	}
	found := false
	for _, e := range s.Entries {
		found = found || e == api.SheetEntry{Path: "lengths.thigh", Text: "412 mm", Line: 7}
	}
	if !found {
		t.Errorf("%+v", s.Entries)
	}
	// Every entry is one that an edit can change.
	for _, e := range s.Entries {
		if e.Path == "steelyard" {
			continue
		}
		if text, err := Read(rower).Write([]api.ValueEdit{{Path: e.Path, Text: e.Text}}); err != nil || text.String() != rower {
			t.Errorf("%s: %v", e.Path, err)
		}
	}
	if s := PersonSheet(Read("steelyard: person 1\nheight: 17 m\nmass: 68 kg\n")); len(s.Problems) == 0 {
		t.Errorf("%+v", s)
	}
}

// What is added is written into the text and understood; what cannot be is told
// with its limit.
func TestPersonGrows(t *testing.T) {
	if s := PersonSheet(Read(rower)); !slices.Contains(s.Motions, "knee extension") || !slices.Contains(s.Motions, "ankle dorsiflexion") {
		t.Errorf("motions: %v", s.Motions)
	}
	for _, tt := range []struct {
		name     string
		strength *api.NewStrength
		limit    *api.NewLimit
		want     string // understood, or part of the problem
		refused  bool
	}{
		{"moment", &api.NewStrength{Motion: "knee flexion", Angle: "30 deg", Moment: "90 ± 10 Nm", How: "strap: on a ring"}, nil, "knee flexion gives 90 N·m at 30°", false},
		// 200 N at 0.3 m are 60 N·m
		{"force", &api.NewStrength{Motion: "elbow extension", Angle: "90 deg", Force: "200 N", At: "300 mm"}, nil, "elbow extension gives 60 N·m at 90°", false},
		{"limit", nil, &api.NewLimit{Motion: "hip flexion", Angle: "95"}, "hip flexion goes to 95°", false},
		{"no distance", &api.NewStrength{Motion: "elbow extension", Angle: "90 deg", Force: "200 N"}, nil, "has a force and no distance", true},
		{"too strong", &api.NewStrength{Motion: "elbow extension", Angle: "90 deg", Moment: "9000 Nm"}, nil, "a joint moment is 0.1 N·m to 2000 N·m", true},
		{"no motion", nil, &api.NewLimit{Motion: "wiggle", Angle: "95"}, "the motions are", true},
	} {
		text, err := Read(rower), error(nil)
		if tt.strength != nil {
			text, err = text.WithStrength(*tt.strength)
		} else {
			text, err = text.WithLimit(*tt.limit)
		}
		if err != nil {
			t.Fatalf("%s: %v", tt.name, err)
		}
		s := PersonSheet(text)
		told := strings.Join(s.Understood, "\n")
		for _, p := range s.Problems {
			told += p.Message
		}
		if len(s.Problems) > 0 != tt.refused || !strings.Contains(told, tt.want) {
			t.Errorf("%s: want %q, refused %v, got\n%s", tt.name, tt.want, tt.refused, told)
		}
	}
}
