package demo_test

import (
	"errors"
	"iter"
	"math"
	"testing"

	"steelyard/demo"
	"steelyard/exercise"
	"steelyard/human"
	"steelyard/mechanism"
	"steelyard/sheet"
)

func readPeople(t *testing.T) []*sheet.Person {
	t.Helper()
	var out []*sheet.Person
	for _, f := range demo.People() {
		d, err := sheet.Read(f.Name, f.Data)
		if err != nil {
			t.Fatal(err)
		}
		p, err := d.Person()
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, p)
	}
	return out
}

// machines yields the machines as they are set.
func machines(t *testing.T) iter.Seq2[*sheet.Machine, *sheet.Built] {
	t.Helper()
	return func(yield func(*sheet.Machine, *sheet.Built) bool) {
		for _, f := range demo.Machines() {
			d, err := sheet.Read(f.Name, f.Data)
			if err != nil {
				t.Fatal(err)
			}
			m, err := d.Machine()
			if err != nil {
				t.Fatal(err)
			}
			b, err := m.Build(nil)
			if err != nil {
				t.Fatal(err)
			}
			if !yield(m, b) {
				return
			}
		}
	}
}

// station is a machine with its default settings that people can meet.
type station struct {
	name  string
	st    exercise.Station
	model *mechanism.Model
	sweep *mechanism.Sweep
}

func stations(t *testing.T, positions int) []station {
	t.Helper()
	var out []station
	for m, b := range machines(t) {
		st, ok := b.Station()
		if !ok {
			continue
		}
		md, err := mechanism.Compile(b.Machine)
		if err != nil {
			t.Fatal(err)
		}
		sw, err := md.Sweep(positions)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, station{m.Name, st, md, sw})
	}
	return out
}

// TestEverybodyOnEveryStation puts the six on all stations as they are set. Who
// does not fit gets a reason; who does gets numbers that can be.
func TestEverybodyOnEveryStation(t *testing.T) {
	people, all := readPeople(t), stations(t, 15)
	if len(people) != 6 || len(all) < 16 {
		t.Fatalf("%d people, %d stations; want 6 and 16 or more", len(people), len(all))
	}
	fits := make([]int, len(all))
	for _, p := range people {
		b, _, err := human.NewBody(p.Person)
		if err != nil {
			t.Fatal(err)
		}
		c, _, err := human.NewCapacity(b)
		if err != nil {
			t.Fatal(err)
		}
		for k, s := range all {
			setup, err := exercise.NewSetup(s.st.Exercises[0], s.st, s.model, s.sweep)
			if err != nil {
				t.Fatalf("%s: %v", s.name, err)
			}
			r, err := exercise.Run(setup, b, c, s.sweep, exercise.Options{})
			switch {
			case errors.Is(err, exercise.ErrNowhere):
				continue
			case err != nil:
				t.Fatalf("%s on %s: %v", p.Name, s.name, err)
			}
			fits[k]++
			sound(t, p.Name+" on "+s.name, r)
		}
	}
	for k, n := range fits {
		if n == 0 {
			t.Errorf("%s: none of the six reaches it at any position", all[k].name)
		}
	}
}

// sound checks what holds for every result.
func sound(t *testing.T, who string, r *exercise.Result) {
	t.Helper()
	if r.Lifting.Sticking < 0 || len(r.Words()) < 3 {
		t.Errorf("%s: no sticking point, or too few words", who)
	}
	for i := range r.Gap {
		if r.Gap[i] != "" {
			continue
		}
		for k := range r.Lifting.Joints {
			c := &r.Lifting.Joints[k]
			if c.Untested[i] { // beyond all that was tested: no figure may stand there
				if !math.IsNaN(c.Effort[i]) || c.Available[i] != 0 {
					t.Errorf("%s, %v at %d: effort %g, available %g where nothing was tested", who, c.Joint, i, c.Effort[i], c.Available[i])
				}
				continue
			}
			if e := c.Effort[i]; math.IsNaN(e-e) || e < 0 || c.Low[i] > e || c.High[i] < e {
				t.Errorf("%s, %v at %d: effort %g between %g and %g", who, c.Joint, i, e, c.Low[i], c.High[i])
			}
			if math.Abs(c.Moment[i]) > 2000 {
				t.Errorf("%s, %v at %d: %g N·m", who, c.Joint, i, c.Moment[i])
			}
		}
	}
	for _, m := range r.Thirds {
		if sum := m.Thirds[0].Share + m.Thirds[1].Share + m.Thirds[2].Share; math.Abs(sum-1) > 1e-9 {
			t.Errorf("%s, %v: thirds cover %g of the travel", who, m.Muscle, sum)
		}
	}
}

// TestAtATempo plays some of them in time.
func TestAtATempo(t *testing.T) {
	people, all := readPeople(t), stations(t, 9)
	b, _, err := human.NewBody(people[len(people)-1].Person)
	if err != nil {
		t.Fatal(err)
	}
	c, _, err := human.NewCapacity(b)
	if err != nil {
		t.Fatal(err)
	}
	played := 0
	for _, s := range all {
		setup, err := exercise.NewSetup(s.st.Exercises[0], s.st, s.model, s.sweep)
		if err != nil {
			t.Fatal(err)
		}
		r, err := exercise.Run(setup, b, c, s.sweep, exercise.Options{Tempo: &mechanism.Tempo{Up: 2, Down: 3}})
		if errors.Is(err, exercise.ErrNowhere) {
			continue
		}
		if err != nil {
			t.Errorf("%s: %v", s.name, err)
			continue
		}
		played++
		if r.Still == nil {
			t.Errorf("%s: nothing to compare with", s.name)
		}
	}
	if played < 12 {
		t.Errorf("played %d stations, want 12 or more", played)
	}
}
