package exercise

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"steelyard/human"
	"steelyard/mechanism"
	"steelyard/planar"
	"steelyard/reference"
)

// TestPredictedMaximumIsOne puts the predicted load on and finds the greatest
// effort at 1.
func TestPredictedMaximumIsOne(t *testing.T) {
	for _, c := range []struct {
		x    Exercise
		free Free
	}{{ChestPress, Barbell}, {ChestPress, Dumbbell}, {Curl, Dumbbell}, {Row, Cable}, {LateralRaise, Dumbbell}, {Pulldown, Cable}} {
		r, _ := freely(t, c.x, c.free, 20, 21, Options{})
		if r.Maximum.Untested > 0 {
			t.Fatalf("%v: a joint of the leg is in it", c.x)
		}
		at, _ := freely(t, c.x, c.free, r.Maximum.Load, 21, Options{})
		if got := at.Lifting.Peak(); math.Abs(got-1) > 2e-4 {
			t.Errorf("%v with a %v of %.3f kg: effort %.6f, want 1", c.x, c.free, r.Maximum.Load, got)
		}
	}
}

// TestRepetitions: 10 repetitions are where both equations agree, at 3/4.
func TestRepetitions(t *testing.T) {
	p := Prediction{Load: 100, Low: 80, High: 120}
	middle, band, ok := p.ForRepetitions(10)
	if !ok || math.Abs(middle-75) > 1e-9 || math.Abs(band.Low-60) > 1e-9 || math.Abs(band.High-90) > 1e-9 {
		t.Errorf("got %g, %v, %v", middle, band, ok)
	}
	if _, _, ok := p.ForRepetitions(0); ok {
		t.Error("0 repetitions: got an answer")
	}
}

// TestLiftRescales reads strength from a leg extension and finds the lift
// predicted by it.
func TestLiftRescales(t *testing.T) {
	b, c := rower(t)
	st := Station{Contact: Pad, On: OnShank, Anchor: HipsAnchor, At: planar.Vec{X: -b.Links.Thigh}, Trunk: 90 * deg}
	m := lever(planar.Vec{}, planar.Vec{Y: -0.32}, 45, 70*deg)
	s, sw := mount(t, m, st, LegExtension, 31)
	r, err := Run(s, b, c, sw, Options{})
	if err != nil {
		t.Fatal(err)
	}
	const reps = 10 // both equations: 4/3
	strength, err := r.StrengthFromLift(reps, c, sw)
	if err != nil || len(strength) != 1 || strength[0].Action != human.KneeExtend {
		t.Fatalf("got %+v, %v", strength, err)
	}
	p := b.Person
	p.Strength = strength
	b2, _, err := human.NewBody(p)
	if err != nil {
		t.Fatal(err)
	}
	c2, _, err := human.NewCapacity(b2)
	if err != nil {
		t.Fatal(err)
	}
	r2, err := Run(s, b2, c2, sw, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if want := 45.0 * 4 / 3; math.Abs(r2.Maximum.Load-want) > 0.02*want {
		t.Errorf("predicts %.3f kg, want the %.3f kg that the lift shows", r2.Maximum.Load, want)
	}
	if !r2.Lifting.Column(Knee).Rescaled {
		t.Error("the knee's strength does not say that it was measured")
	}
	if _, err := r.StrengthFromLift(40, c, sw); err == nil {
		t.Error("40 repetitions: got no error")
	}
}

// TestMovedMachine: nothing changes for the joints if machine and seat move.
func TestMovedMachine(t *testing.T) {
	b, c := rower(t)
	hand := planar.Vec{X: 0.3, Y: b.Links.Trunk}
	run := func(by planar.Vec) *Result {
		m := lever(hand.Add(planar.Vec{Y: 0.6}).Add(by), hand.Add(by), 20, 15*deg)
		s, sw := mount(t, m, Station{Contact: Grip, Anchor: HipsAnchor, At: by, Trunk: 90 * deg}, ChestPress, 5)
		r, err := Run(s, b, c, sw, Options{})
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	here, there := run(planar.Vec{}), run(planar.Vec{X: -1.3, Y: 0.7})
	for i, e := range here.Lifting.Effort {
		if got := there.Lifting.Effort[i]; math.Abs(got-e) > 1e-6 {
			t.Errorf("%d: effort %.9f moved, %.9f before", i, got, e)
		}
	}
}

// TestFacingBack: a machine and a person turned about are the same.
func TestFacingBack(t *testing.T) {
	b, c := rower(t)
	run := func(sign float64) *Result {
		hand := planar.Vec{X: sign * 0.3, Y: b.Links.Trunk - 0.05}
		m := lever(hand.Add(planar.Vec{Y: 0.6}), hand, 20, planar.Angle(sign)*15*deg)
		s, sw := mount(t, m, Station{Contact: Grip, Anchor: HipsAnchor, Trunk: 80 * deg, FacesBack: sign < 0}, ChestPress, 5)
		r, err := Run(s, b, c, sw, Options{})
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	forward, back := run(1), run(-1)
	for k := range forward.Lifting.Joints {
		f, bk := &forward.Lifting.Joints[k], &back.Lifting.Joints[k]
		for i := range f.Moment {
			// Least effort may differ within its tolerance of a millionth.
			if math.Abs(f.Moment[i]-bk.Moment[i]) > 1e-3 || math.Abs(float64(f.Angle[i]-bk.Angle[i])) > 1e-9 {
				t.Errorf("%v %d: %.5f N·m at %.3f°, turned about %.5f at %.3f°", f.Joint, i, f.Moment[i], f.Angle[i].Degrees(), bk.Moment[i], bk.Angle[i].Degrees())
			}
		}
	}
}

func TestShareOfForce(t *testing.T) {
	b, c := rower(t)
	hand := planar.Vec{X: 0.3, Y: b.Links.Trunk}
	for _, want := range []struct {
		mirrored, one bool
		limbs         float64
	}{{false, false, 2}, {true, false, 1}, {false, true, 1}} {
		m := lever(hand.Add(planar.Vec{Y: 0.6}), hand, 20, 15*deg)
		m.Plane.Mirrored = want.mirrored
		s, sw := mount(t, m, Station{Contact: Grip, Anchor: HipsAnchor, Trunk: 90 * deg, OneLimb: want.one}, ChestPress, 3)
		r, err := Run(s, b, c, sw, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := sw.Lift[1] / r.Lifting.Force[1]; math.Abs(got-want.limbs) > 1e-9 {
			t.Errorf("%+v: the force is shared by %g", want, got)
		}
	}
}

func TestNowhere(t *testing.T) {
	b, c := rower(t)
	hand := planar.Vec{X: 3, Y: 1}
	s, sw := mount(t, lever(hand.Add(planar.Vec{Y: 1}), hand, 20, 5*deg), Station{Contact: Grip, Anchor: HipsAnchor, Trunk: 90 * deg}, ChestPress, 3)
	if _, err := Run(s, b, c, sw, Options{}); !errors.Is(err, ErrNowhere) || !strings.Contains(err.Error(), "too short") {
		t.Errorf("got %v", err)
	}
}

func TestStationNeedsAPlace(t *testing.T) {
	md, err := mechanism.Compile(lever(planar.Vec{}, planar.Vec{Y: -1}, 20, 5*deg))
	if err != nil {
		t.Fatal(err)
	}
	sw, err := md.Sweep(3)
	if err != nil {
		t.Fatal(err)
	}
	for _, bad := range []struct {
		st   Station
		want string
	}{
		{Station{Contact: Grip}, "where the body is"},
		{Station{Contact: Pad, Anchor: SeatAnchor}, "bears on no part"},
		{Station{Contact: Pad, On: OnHips, Anchor: BenchAnchor}, "where the feet stand"},
	} {
		if _, err := NewSetup(LegPress, bad.st, md, sw); err == nil || !strings.Contains(err.Error(), bad.want) {
			t.Errorf("got %v, want %q", err, bad.want)
		}
	}
}

// TestDocument: the document holds to its schema, with gaps as nulls.
func TestDocument(t *testing.T) {
	schema := compiledSchema(t, Schema)
	for _, x := range []Exercise{ChestPress, Squat, HipThrust} {
		r, _ := freely(t, x, Barbell, 40, 9, Options{Tempo: &mechanism.Tempo{Up: 1, Down: 2}})
		r.Gap[0] = "tried" // a gap
		var out bytes.Buffer
		if err := r.WriteJSON(&out, "a bar"); err != nil {
			t.Fatal(err)
		}
		v, err := jsonschema.UnmarshalJSON(bytes.NewReader(out.Bytes()))
		if err != nil {
			t.Fatal(err)
		}
		if err := schema.Validate(v); err != nil {
			t.Errorf("%v: %v", x, err)
		}
		var back Document
		if err := json.Unmarshal(out.Bytes(), &back); err != nil {
			t.Fatal(err)
		}
		if len(back.Travel) != 9 || back.Lifting.Effort[0] != nil || back.Lifting.Effort[8] == nil || len(back.Lifting.Joints) == 0 {
			t.Errorf("%v: got %+v", x, back.Lifting.Effort)
		}
	}
}

func TestWords(t *testing.T) {
	r, _ := freely(t, Curl, Dumbbell, 12, 41, Options{})
	text := strings.Join(r.Words(), "\n")
	for _, want := range []string{"Hardest for the elbow", "of what he can produce there in elbow flexion", "The biceps:", "kg", "straight down", "weakly founded"} {
		if !strings.Contains(text, want) {
			t.Errorf("want %q in\n%s", want, text)
		}
	}
	b, _, err := human.NewBody(human.Person{Height: 1.72, Mass: 72, Sex: reference.Female, Age: 30, Avoid: []string{"overhead work"}, Limits: []human.Limit{{Motion: human.ElbowFlex, Angle: 100 * deg}}})
	if err != nil {
		t.Fatal(err)
	}
	c, _, err := human.NewCapacity(b)
	if err != nil {
		t.Fatal(err)
	}
	md, st, err := FreeWeight(Curl, Dumbbell, b, 12)
	if err != nil {
		t.Fatal(err)
	}
	sw, err := md.Sweep(41)
	if err != nil {
		t.Fatal(err)
	}
	s, err := NewSetup(Curl, st, md, sw)
	if err != nil {
		t.Fatal(err)
	}
	r, err = Run(s, b, c, sw, Options{})
	if err != nil {
		t.Fatal(err)
	}
	text = strings.Join(r.Words(), "\n")
	for _, want := range []string{"CAUTION: Elbow flexion goes 30° past this person's limit of 100°", "she can produce", "overhead work"} {
		if !strings.Contains(text, want) {
			t.Errorf("want %q in\n%s", want, text)
		}
	}
}

func TestFreeWeightRefusals(t *testing.T) {
	b, _ := rower(t)
	if _, _, err := FreeWeight(LegExtension, Barbell, b, 20); err == nil || !strings.Contains(err.Error(), "is not done with a barbell") {
		t.Errorf("got %v", err)
	}
	if _, _, err := FreeWeight(Curl, Barbell, b, math.NaN()); err == nil {
		t.Error("no number of kg: got no error")
	}
	for i := range ways {
		w := &ways[i]
		r, _ := freely(t, w.exercise, w.free, 10, 9, Options{})
		for k := range r.Gap {
			if r.Gap[k] != "" {
				t.Errorf("%v, %v, %d: %s", w.exercise, w.free, k, r.Gap[k])
			}
		}
	}
}
