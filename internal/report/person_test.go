package report

import (
	"math"
	"os"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/evaluation"
	"steelyard/exercise"
	"steelyard/internal/sketch"
	"steelyard/mechanism"
	"steelyard/sheet"
)

const kicker = `steelyard: person 1
name: Kicker
height: 1.68 m
mass: 62 kg
sex: female
age: 30
`

// onMachine evaluates a sheet of package evaluation's tests with a person on it.
func onMachine(t testing.TB, machine string, person []byte, o evaluation.Options) *evaluation.Evaluation {
	t.Helper()
	data, err := os.ReadFile("../../evaluation/testdata/" + machine)
	if err != nil {
		t.Fatal(err)
	}
	return withPerson(t, data, person, o)
}

func withPerson(t testing.TB, machine, person []byte, o evaluation.Options) *evaluation.Evaluation {
	t.Helper()
	e := evaluatedText(t, machine, o)
	d, err := sheet.Read("person.yaml", person)
	if err != nil {
		t.Fatal(err)
	}
	p, err := d.Person()
	if err != nil {
		t.Fatal(err)
	}
	if e.Person, err = e.Meet(p); err != nil {
		t.Fatal(err)
	}
	return e
}

func textbook(t testing.TB) *evaluation.Evaluation {
	t.Helper()
	person, err := os.ReadFile("../../evaluation/testdata/forearm-person.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return onMachine(t, "forearm.yaml", person, evaluation.Options{Draws: -1})
}

func TestPersonInEveryFormat(t *testing.T) {
	for name, e := range map[string]*evaluation.Evaluation{
		"kick":    onMachine(t, "kick.yaml", []byte(kicker), evaluation.Options{Draws: 50, Tempo: &mechanism.Tempo{Up: 2, Down: 2}}),
		"forearm": textbook(t),
	} {
		for _, ext := range []string{".pdf", ".svg", ".png", ".html"} {
			if name == "kick" && ext == ".png" {
				continue // the same scene again, and slow to paint
			}
			out, warnings := write(t, ext, e, Options{})
			if len(warnings) > 0 {
				t.Errorf("%s%s: %v", name, ext, warnings)
			}
			if ext == ".html" || ext == ".svg" {
				wellFormed(t, name+ext, out)
			}
			if ext != ".html" {
				continue
			}
			if again, _ := write(t, ext, e, Options{}); string(again) != string(out) {
				t.Errorf("%s%s: two runs differ", name, ext)
			}
		}
		html, _ := write(t, ".html", e, Options{})
		for _, want := range []string{`id="person"`, "on it, at three places", "Effort: what is asked", "Body lengths"} {
			if !strings.Contains(string(html), want) {
				t.Errorf("%s: the page lacks %q", name, want)
			}
		}
		for _, line := range strings.Split(terminalText(t, e, 80, Options{}), "\n") {
			if cells(line) > 80 {
				t.Errorf("%s: %d columns in %q", name, cells(line), line)
			}
		}
	}
}

// TestForceArmExplainsTheMoment wants the arm that is drawn to be the lever of
// the force that is drawn: for the textbook's level forearm 380 mm about the
// elbow, and nothing about the shoulder but what its own length gives.
//
// Source: OpenStax College Physics, example 9.4: a book 38.0 cm from the elbow.
func TestForceArmExplainsTheMoment(t *testing.T) {
	e := textbook(t)
	level := e.Rows[len(e.Rows)/2]
	f := personAt(e, level)
	push := e.Person.Rest.Lifting.Push[level]
	near(t, "force on the hand, N", push.Y, -4*9.80665, 1e-9)
	line := f.Seen(push).Unit()
	for _, j := range f.joints() {
		axis := f.On(j.at)
		length := sketch.Perpendicular(axis, f.On(f.bears()), line).Sub(axis).Norm()
		near(t, j.name+": arm of the book, m", length, 0.380, 1e-4)
	}
	elbow := f.joints()[len(f.joints())-1]
	if elbow.name != "elbow" || elbow.angle != "90°" {
		t.Errorf("the last joint is %s at %s, want the elbow at 90°", elbow.name, elbow.angle)
	}
	// Flexing lifts the hand in front of who faces +x: counter-clockwise.
	if seen := r3.Dot(elbow.moment, f.Out()); seen <= 4*9.8*0.38 {
		t.Errorf("the elbow's moment is drawn with %.1f N·m, want more than the book's 14.9 counter-clockwise", seen)
	}
}

// TestBodyMeetsTheContact wants the limb to be drawn where the machine is: the
// grip on the contact, the pad's radius off the shank's middle line.
func TestBodyMeetsTheContact(t *testing.T) {
	e := textbook(t)
	for _, row := range e.Rows {
		f := personAt(e, row)
		near(t, "grip from contact, m", f.On(f.Placement.Limb.End).Sub(e.Sweep.Contact[row]).Norm(), 0, 1e-9)
	}
	e = onMachine(t, "kick.yaml", []byte(kicker), evaluation.Options{Draws: -1})
	for _, row := range e.Rows {
		f := personAt(e, row)
		shank := f.On(f.Placement.Limb.End).Sub(f.On(f.Placement.Limb.Mid)).Unit()
		pad := e.Sweep.Contact[row].Sub(f.On(f.Placement.Limb.Mid))
		near(t, "pad from the shank, m", math.Abs(shank.Cross(pad)), 0.05, 1e-9)
	}
}

// TestOutlineMeetsTheRibbonWhereEffortIsOne compares two roads: force over
// effort, exact where segments weigh nothing and near it here, and the line that
// is drawn.
func TestOutlineMeetsTheRibbonWhereEffortIsOne(t *testing.T) {
	e := onMachine(t, "kick.yaml", []byte(kicker), evaluation.Options{Draws: -1})
	r := ribbonOf(e)
	compared := 0
	for k, row := range e.Rows {
		effort := e.Person.Rest.Lifting.Effort[row]
		if math.IsNaN(r.can[k]) {
			continue
		}
		compared++
		if over := r.force[k] > r.can[k]; over != (effort > 1) && math.Abs(effort-1) > 0.01 {
			t.Errorf("position %d: force %.0f N, outline %.0f N, effort %.2f", k, r.force[k], r.can[k], effort)
		}
	}
	if compared < len(e.Rows)/2 {
		t.Fatalf("only %d positions have an outline", compared)
	}
	heavy := strings.Replace(string(mustKick(t)), "default: 40 kg", "default: 150 kg", 1)
	e = withPerson(t, []byte(heavy), []byte(kicker), evaluation.Options{Draws: -1})
	if text := terminalText(t, e, 80, Options{}); e.Person.Rest.Lifting.Peak() <= 1 || !strings.Contains(text, "Hardest for the knee") {
		t.Errorf("150 kg: greatest effort %.2f, want above 1", e.Person.Rest.Lifting.Peak())
	}
}

func mustKick(t testing.TB) []byte {
	t.Helper()
	data, err := os.ReadFile("../../evaluation/testdata/kick.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// TestSlantIsToldWhenAnElbowFlares lays an upper arm 60° out of the picture.
func TestSlantIsToldWhenAnElbowFlares(t *testing.T) {
	e := textbook(t)
	f := personAt(e, e.Rows[0])
	if s := f.slants(); s != "" {
		t.Errorf("an arm in the picture's plane is said to lean: %s", s)
	}
	p := *f.Placement
	sin, cos := math.Sincos(math.Pi / 3)
	p.Limb.Mid = r3.Add(p.Limb.Root, r3.Scale(0.3, r3.Vec{Y: -cos, Z: sin}))
	p.Limb.End = r3.Add(p.Limb.Mid, r3.Vec{X: 0.25})
	f.Placement = &p
	if s, want := f.slants(), "leaning out of the picture: upper arm"+nbsp+"60°"; s != want {
		t.Errorf("got %q, want %q", s, want)
	}
}

// TestWeakStrengthsAreShownWeak wants the mark of a strength beside its number.
func TestWeakStrengthsAreShownWeak(t *testing.T) {
	e := textbook(t)
	c := e.Person.Rest.Lifting.Column(exercise.Elbow)
	if !c.Weakest.Weak() {
		t.Fatal("the elbow's strength is no longer weak; take another joint")
	}
	table := jointTable(e, Options{}.units(), true)
	row := table.Rows[len(table.Rows)-1]
	if row[0] != "elbow" || !strings.HasPrefix(row[6], weakSign) || !strings.HasPrefix(row[len(row)-1], "weak, "+c.Weakest.String()) {
		t.Errorf("got %q, want the elbow's strength marked weak", row)
	}
	if notes := strings.Join(effortNotes(e, false), "\n"); !strings.Contains(notes, weakSign+" Weak: "+c.Weakest.String()) {
		t.Errorf("the notes do not explain %q:\n%s", weakSign, notes)
	}
	strong := *c
	strong.Weakest = 0
	if row := jointRow(e, Options{}.units(), &strong, false); strings.HasPrefix(row[6], weakSign) {
		t.Errorf("a measured strength is marked weak: %q", row)
	}
}

func BenchmarkPersonScene(b *testing.B) {
	e := onMachine(b, "kick.yaml", []byte(kicker), evaluation.Options{Draws: -1})
	for b.Loop() {
		if s := Scene(e, Options{}); s == nil {
			b.Fatal("no scene")
		}
	}
}
