package evaluation

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"steelyard/exercise"
	"steelyard/mechanism"
	"steelyard/sheet"
)

func read(t testing.TB, file string) *sheet.Document {
	t.Helper()
	data, err := os.ReadFile("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	return parsed(t, file, data)
}

func personOf(t testing.TB, file string) *sheet.Person {
	t.Helper()
	p, err := read(t, file).Person()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// setTo evaluates a machine of testdata with settings.
func setTo(t testing.TB, file string, choice map[string]string, o Options) *Evaluation {
	t.Helper()
	return runSet(t, read(t, file), choice, o)
}

func met(t testing.TB, e *Evaluation, p *sheet.Person) *Meeting {
	t.Helper()
	m, err := e.Meet(p)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// kicker is a woman with nothing measured.
const kicker = `steelyard: person 1
name: Kicker
height: 1.68 m
mass: 62 kg
sex: female
age: 30
`

func personFrom(t testing.TB, text string) *sheet.Person {
	t.Helper()
	p, err := parsed(t, "person.yaml", []byte(text)).Person()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// TestForearmAndBook holds the elbow's moment, from sheets to result, against
// the statics of a level forearm.
//
// Source: Urone, P.P. and Hinrichs, R., "College Physics", OpenStax 2012,
// section 9.6, example 9.4: a book of 4.00 kg held 38.0 cm from the elbow. The
// book's printed forearm is a given; here forearm and hand are those of a man of
// 100 kg by de Leva, P., J Biomech 29 (1996) 1223, table 4: 1.62 % and 0.61 %
// of the mass, 45.74 % of elbow to wrist, 36.24 % of wrist to finger tip.
func TestForearmAndBook(t *testing.T) {
	m := met(t, setTo(t, "forearm.yaml", nil, Options{Draws: -1}), personOf(t, "forearm-person.yaml"))
	const g = 9.80665
	book := 4.00 * 0.380
	own := 1.62*0.4574*0.290 + 0.61*(0.290+0.3624*0.205)
	c := m.Rest.Lifting.Column(exercise.Elbow)
	level := len(c.Moment) / 2
	if elbow := c.Angle[level].Degrees(); math.Abs(elbow-90) > 1e-4 {
		t.Fatalf("elbow at %.4f°, want 90° with the forearm level", elbow)
	}
	for _, row := range []struct {
		what string
		at   int
		cos  float64 // of the forearm's slope
	}{{"level", level, 1}, {"start, 60° below", 0, 0.5}, {"end, 60° above", len(c.Moment) - 1, 0.5}} {
		want := (book + own) * g * row.cos
		if got := c.Moment[row.at]; math.Abs(got-want) > 1e-3*want {
			t.Errorf("%s: got %.4f N·m, want %.4f N·m", row.what, got, want)
		}
	}
	if got := m.Rest.Direction; got != exercise.Downward {
		t.Errorf("the force acts %v, want straight down: it is a weight", got)
	}
}

// TestProducibleForceTakesAllThereIs loads the machine until its force is what
// the person can produce at one place: the effort there must be 1.
func TestProducibleForceTakesAllThereIs(t *testing.T) {
	p := personFrom(t, kicker)
	e := setTo(t, "kick.yaml", nil, Options{Draws: -1, Positions: 21})
	m := met(t, e, p)
	for _, i := range []int{4, 10, 16} {
		load := 40 * m.Can[i] / e.Sweep.Lift[i]
		choice := map[string]string{"plates": fmt.Sprintf("%.3f kg", load)}
		full := met(t, setTo(t, "kick.yaml", choice, Options{Draws: -1, Positions: 21}), p)
		if got := full.Rest.Lifting.Effort[i]; math.Abs(got-1) > 5e-3 {
			t.Errorf("position %d: effort %.4f under %.1f kg, want 1", i, got, load)
		}
	}
}

// TestKnownLiftIsPredicted wants a machine on which a load was once lifted to
// predict that load, and another machine's lift to be named as left out.
func TestKnownLiftIsPredicted(t *testing.T) {
	e := setTo(t, "kick.yaml", nil, Options{Draws: -1})
	p := personFrom(t, kicker+`strength:
  - {lift: bare kick, load: 55 kg, repetitions: 1}
  - {lift: Some other press, load: 80 kg}
`)
	m := met(t, e, p)
	if got := m.Rest.Maximum.Load; math.Abs(got-55) > 0.02*55 {
		t.Errorf("predicted maximum %.1f kg, want the 55 kg once lifted", got)
	}
	if c := m.Rest.Lifting.Column(exercise.Knee); !c.Rescaled {
		t.Error("the knee's strength is not marked as set by the lift")
	}
	if all := strings.Join(m.Words(), "\n"); !strings.Contains(all, "Some other press is left out") {
		t.Errorf("nothing is said of the lift elsewhere:\n%s", all)
	}
}

func TestSettingThatWouldHelpIsNamed(t *testing.T) {
	p := personFrom(t, kicker)
	e := setTo(t, "kick.yaml", map[string]string{"seat": "far"}, Options{Draws: -1})
	_, err := e.Meet(p)
	if !errors.Is(err, exercise.ErrNowhere) || !strings.Contains(err.Error(), `setting seat to "near" puts the whole travel within reach`) {
		t.Errorf("got %v, want nowhere, and the seat's other value as the cure", err)
	}
	near := met(t, setTo(t, "kick.yaml", nil, Options{Draws: -1}), p)
	if near.troubled() || len(near.Helps) > 0 {
		t.Errorf("got %v where nothing is wrong", near.Helps)
	}
}

func TestMachineWithoutStationIsRefused(t *testing.T) {
	_, err := run(t, pressSheet, Options{Draws: -1}).Meet(personFrom(t, kicker))
	if err == nil || !strings.Contains(err.Error(), "add one with what it serves") {
		t.Errorf("got %v, want the cure", err)
	}
}

// TestPersonFollowsSchema holds the person's part against the bundled schema.
func TestPersonFollowsSchema(t *testing.T) {
	schema := compiledSchema(t)
	for name, tempo := range map[string]*mechanism.Tempo{"at rest": nil, "at a tempo": {Up: 2, Down: 2}} {
		e := setTo(t, "kick.yaml", nil, Options{Draws: -1, Tempo: tempo})
		e.Person = met(t, e, personFrom(t, kicker+"strength:\n  - {lift: Another, load: 10 kg}\n"))
		var out bytes.Buffer
		if err := e.WriteJSON(&out, Metric{}); err != nil {
			t.Fatal(err)
		}
		value, err := jsonschema.UnmarshalJSON(bytes.NewReader(out.Bytes()))
		if err != nil {
			t.Fatal(err)
		}
		if err := schema.Validate(value); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		person := value.(map[string]any)["person"].(map[string]any)
		person["at_rest"].(map[string]any)["travel_m"] = "gone"
		if schema.Validate(value) == nil {
			t.Errorf("%s: the bundled schema does not look into at_rest", name)
		}
	}
}
