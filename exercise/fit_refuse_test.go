package exercise

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/mechanism"
	"steelyard/planar"
	"steelyard/reference"
)

// press is a handle on level rails, pushed forward by 300 mm.
func press() mechanism.Machine {
	return mechanism.Machine{Name: "press", Links: []mechanism.Link{{Name: "sled", Mass: 5}},
		Joints:  []mechanism.Joint{{Name: "rails", Kind: mechanism.Prismatic, A: mechanism.Ground, B: 1, At: planar.Vec{Y: 1}}},
		Drive:   mechanism.Drive{From: 0, To: 0.3},
		Contact: mechanism.Contact{Name: "handle", Link: 1, At: planar.Vec{Y: 1}}}
}

// atPress is a press whose handle stands level with the shoulder and in its
// side view; at the end of the 300 mm the arm is short of it by so much.
func atPress(positions int, b *human.Body, short float64) (*Setup, *mechanism.Sweep, error) {
	far := b.Links.UpperArm + b.Links.ElbowToGrip
	return setUpAt(positions, Station{Exercises: []Exercise{ChestPress}, Contact: Grip, Anchor: HipsAnchor, Trunk: 90 * deg, Width: Some(2 * b.Links.ShoulderHalf),
		At: planar.Vec{X: 0.3 - far - short, Y: 1 - b.Links.Trunk}}, press())
}

// Every hole brings the handle as much nearer as it is far from the last. Four
// fifths of the travel end 60 mm before the stop, so 65 of 125 mm are missing.
func TestNothingFitsTellsByHowMuchAndWhatHelps(t *testing.T) {
	b := woman(t)
	build := func(c []int) (*Setup, *mechanism.Sweep, error) {
		return atPress(FitPositions, b, 0.175-0.025*float64(c[0]))
	}
	f, err := Fit(context.Background(), []Dial{holes("seat", 3)}, build, b, FitOptions{})
	if err != nil {
		t.Fatal(err)
	}
	best := &f.Best[0]
	if f.Fits || f.Fit != 0 || len(f.Best) != 1 {
		t.Fatalf("got %d that fit, want none and the least bad one shown", f.Fit)
	}
	if best.Choice[0] != 2 || math.Abs(best.Short-0.125) > 1e-9 || math.Abs(best.Used()-165.0/300) > 1e-9 { // 175 mm, on a grid of 15
		t.Errorf("least bad is hole %d, short by %.2f mm, %.3f usable; want the last, 125 mm, 0.55", best.Choice[0], 1000*best.Short, best.Used())
	}
	help := strings.Join(f.Help, "\n")
	for _, want := range []string{
		"Seat stands at its end, c: coming from b brought 25 mm of it and 125 mm are left, so about 5 steps more",
		"upper arm 80 mm longer",       // 65 mm is 85.3 % of its tape length: 76, in steps of 5
		"forearm to grip 70 mm longer", // 65 mm is 93 % of its
		"from 0 to 165 mm of the 300 mm of travel is free of faults",
	} {
		if !strings.Contains(help, want) {
			t.Errorf("help lacks %q:\n%s", want, help)
		}
	}
}

// An arm that is straight before the stop fits, and the reader is told how far
// the travel serves.
func TestArmStraightBeforeTheStopFits(t *testing.T) {
	b := woman(t)
	f, err := Fit(context.Background(), nil, func([]int) (*Setup, *mechanism.Sweep, error) { return atPress(FitPositions, b, 0.050) }, b, FitOptions{})
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Join(f.Reasons(&f.Best[0]), "\n")
	if !f.Fits || !strings.Contains(text, "Usable from 0 to 240 of 300 mm") || !strings.Contains(text, "arm is 50 mm too short") {
		t.Errorf("fits %v:\n%s", f.Fits, text)
	}
	if all, err := Fit(context.Background(), nil, func([]int) (*Setup, *mechanism.Sweep, error) { return atPress(FitPositions, b, 0.050) }, b, FitOptions{Enough: 1}); err != nil || all.Fits {
		t.Errorf("with all of the travel wanted: fits, %v", err)
	}
}

func TestPersonsOwnLimitComesFirst(t *testing.T) {
	b, _, err := human.NewBody(human.Person{Height: 1.66, Mass: 65, Sex: reference.Female, Age: 30, Avoid: []string{"deep knee bends"},
		Limits: []human.Limit{{Motion: human.KneeFlex, Angle: 80 * deg}}})
	if err != nil {
		t.Fatal(err)
	}
	dials, build := seats(b, 3, 1, 1, 0.01)
	f, err := Fit(context.Background(), dials, build, b, FitOptions{})
	if err != nil {
		t.Fatal(err)
	}
	best := &f.Best[0]
	if f.Fits || best.OwnBeyond == 0 || best.Worst.Motion != human.KneeFlex || best.WorstAt != 0 {
		t.Errorf("got %+v, want the knee bent past its own limit at the start", best.Worst)
	}
	text := strings.Join(append(f.Words(), f.Reasons(best)...), "\n")
	for _, want := range []string{"stay away from: deep knee bends", "past this person's limit of 80°", "Nothing fits"} {
		if !strings.Contains(text, want) {
			t.Errorf("text lacks %q:\n%s", want, text)
		}
	}
}

// On a level plane the axis is upright: the hip above it is in line, and off it
// by no more than forward and sideways.
func TestOffAxisLeavesOutWhatRunsAlong(t *testing.T) {
	st := onExtension(planar.Vec{X: 0.3, Y: 0.9})
	m := legExtension(0.32)
	m.Plane.Tilt = 90 * deg
	st.Height = Some(0.5)
	s, _, err := setUp(st, m)
	if err != nil {
		t.Fatal(err)
	}
	pl := Placement{Joint: r3.Add(s.Axis, r3.Vec{X: 0.03, Y: 0.5, Z: 0.04})}
	if d, want := s.offAxis(&pl), (r3.Vec{X: 0.03, Z: 0.04}); r3.Norm(r3.Sub(d, want)) > 1e-9 || math.Abs(s.misalignment(&pl)-0.05) > 1e-9 {
		t.Errorf("got %v, %.3f m; want %v, 0.050 m", d, s.misalignment(&pl), want)
	}
}

func TestFitRefuses(t *testing.T) {
	b := woman(t)
	dials, build := seats(b, 2, 1, 1, 0.01)
	broken := errors.New("links cannot meet")
	fails := func([]int) (*Setup, *mechanism.Sweep, error) { return nil, nil, broken }
	stopped, stop := context.WithCancel(context.Background())
	stop()
	for name, c := range map[string]struct {
		ctx   context.Context
		dials []Dial
		build Build
		o     FitOptions
		want  string
	}{
		"unknown joint":   {context.Background(), dials, build, FitOptions{Joint: "kne"}, "knee extension"},
		"no values":       {context.Background(), []Dial{{Name: "seat"}}, build, FitOptions{}, `"seat" has no values`},
		"cannot be built": {context.Background(), dials, fails, FitOptions{}, "links cannot meet"},
		"stopped before":  {stopped, dials, build, FitOptions{}, "context canceled"},
	} {
		if _, err := Fit(c.ctx, c.dials, c.build, b, c.o); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: got %v, want it to say %q", name, err, c.want)
		}
	}
	if _, err := ParseAim("longest"); err == nil || !strings.Contains(err.Error(), "lengthened") {
		t.Errorf("aim: got %v", err)
	}
}

func TestFitStopsWhenAsked(t *testing.T) {
	b := woman(t)
	dials, build := seats(b, 9, 9, 3, 0.01)
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	last := 0
	_, err := Fit(ctx, dials, build, b, FitOptions{Workers: 2, Progress: func(done, total int) {
		if done <= last || total != 243 {
			t.Errorf("progress went from %d to %d of %d", last, done, total)
		}
		if last = done; done == 5 {
			stop()
		}
	}})
	if !errors.Is(err, context.Canceled) || last > 10 {
		t.Errorf("got %v after %d choices, want it stopped soon after 5", err, last)
	}
}
