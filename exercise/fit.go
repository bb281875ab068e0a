package exercise

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"steelyard/human"
	"steelyard/mechanism"
)

// Dial is one setting that a search may turn.
type Dial struct {
	Name   string
	Values []string // in the order of the holes
	Usual  int      // of Values: where it stands if nobody touches it
}

// Build sets a machine up. A choice holds, for each dial, an index into its
// Values. The function must be safe for concurrent use.
type Build func(choice []int) (*Setup, *mechanism.Sweep, error)

// Chosen is a setting and the value it has.
type Chosen struct{ Setting, Value string }

// FitPositions is the number of positions along the travel that a search needs:
// an angle that passes a limit between two of them does so by less than a
// twentieth of the travel asks.
const FitPositions = 21

// MostTried is the number of choices up to which every one is tried.
const MostTried = 4000

// FitOptions says what to look for. The zero value is ready to use.
type FitOptions struct {
	Aim  Aim
	Held []Chosen // settings that were not searched, for the reader

	// Joint is the joint, such as "knee", whose range and load count. Empty
	// means the exercise's main joint, and its main muscle for the load.
	Joint string

	Enough     float64               // share of the travel that must be usable, above a half; 0 is Enough
	Exhaustive int                   // choices up to which all are tried; 0 is MostTried
	Workers    int                   // 0 is one for each processor
	Progress   func(done, total int) // of choices, or of searches where they are too many; may be nil
}

// Fitting is the outcome of a search for the settings that fit a person.
type Fitting struct {
	Exercise Exercise
	Body     *human.Body
	Dials    []Dial
	Held     []Chosen
	Aim      Aim
	Enough   float64      // share of the travel that must be usable
	Action   human.Action // whose angle and range are told
	OfMuscle bool         // the load is told for Exercise.Muscles()[0]; else for Action

	// Best are the best three that fit, best first, fewer if fewer fit. If
	// none fits it is the one that is least far from it.
	Best []Trial
	Fits bool
	Help []string // if none fits: what would help

	Possible int  // choices there are
	Tried    int  // different choices that were tried
	Fit      int  // of those tried that fit
	Failed   int  // of those tried that the machine cannot be set to
	Proven   bool // all were tried, so none is better
}

// Fit searches the settings of a machine for those that suit a person; see
// Score for what better means. Up to o.Exhaustive choices it tries all of them.
// Beyond, it climbs from several places at once by the pattern search of climb,
// which is not sure to find the best: Fitting.Proven tells which it was. The
// same input gives the same outcome whatever the number of workers.
//
// It returns an error if a dial has no values, if o.Joint is none the exercise
// trains, if the machine can be set up for no choice that was tried, or the
// context's error.
func Fit(ctx context.Context, dials []Dial, build Build, b *human.Body, o FitOptions) (*Fitting, error) {
	f, err := newFitter(ctx, dials, build, b, o)
	if err != nil {
		return nil, err
	}
	if f.out.Possible <= f.exhaustive {
		err = f.all(ctx, o)
	} else {
		err = f.climbs(ctx, o)
	}
	if err != nil {
		return nil, err
	}
	return f.conclude()
}

// fitter is a search under way.
type fitter struct {
	out        *Fitting
	build      Build
	capacity   *human.Capacity
	stretch    *human.Stretch
	exhaustive int
	enough     float64
	tried      memory
}

func newFitter(ctx context.Context, dials []Dial, build Build, b *human.Body, o FitOptions) (*fitter, error) {
	f := &fitter{build: build, exhaustive: o.Exhaustive, enough: o.Enough, stretch: human.NewStretch(&b.Ranges)}
	f.out = &Fitting{Body: b, Dials: dials, Held: o.Held, Aim: o.Aim, OfMuscle: o.Joint == "", Possible: 1}
	if f.exhaustive <= 0 {
		f.exhaustive = MostTried
	}
	if f.enough <= 0 {
		f.enough = Enough
	}
	for _, d := range dials {
		if len(d.Values) == 0 {
			return nil, fmt.Errorf("exercise: setting %q has no values to try; list some or hold it fixed", d.Name)
		}
		f.out.Possible = min(f.out.Possible*len(d.Values), 1<<40) // beyond counting, and safe from overflow
	}
	f.out.Enough = f.enough
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	var err error
	if f.capacity, _, err = human.NewCapacity(b); err != nil {
		return nil, err
	}
	setup, _, err := build(usual(dials))
	if err != nil {
		return nil, err
	}
	f.out.Exercise = setup.Exercise
	f.out.Action, err = setup.Exercise.actionAt(o.Joint)
	return f, err
}

// usual returns the choice in which every dial stands at its usual value.
func usual(dials []Dial) []int {
	choice := make([]int, len(dials))
	for d := range dials {
		choice[d] = dials[d].Usual
	}
	return choice
}

// conclude ranks what was tried.
func (f *fitter) conclude() (*Fitting, error) {
	out, ranked := f.out, f.ranked()
	out.Tried, out.Proven = len(ranked), len(ranked) == out.Possible
	for _, t := range ranked {
		switch {
		case t.Err != nil:
			out.Failed++
		case t.Fits():
			out.Fit++
		}
	}
	if out.Failed == out.Tried {
		return nil, errors.Join(errors.New("exercise: the machine cannot be put together at any of the settings that were tried"), ranked[0].Err)
	}
	out.Fits = ranked[0].Fits()
	for len(ranked) > 0 && len(out.Best) < 3 && ranked[0].Fits() == out.Fits {
		first := *ranked[0]
		same := slices.IndexFunc(ranked, func(t *Trial) bool { return t.score != first.score })
		if same < 0 {
			same = len(ranked)
		}
		first.Same = f.indifferent(ranked[:same])
		first.Equal = same - 1
		f.load(&first)
		out.Best = append(out.Best, first)
		ranked = ranked[same:]
		if !out.Fits {
			out.Help = f.help(&out.Best[0])
			break
		}
	}
	return out, nil
}

// ranked returns everything that was tried, best first. Where the score is the
// same, what is nearer the usual settings comes first.
func (f *fitter) ranked() []*Trial {
	ranked := f.tried.all()
	slices.SortFunc(ranked, func(a, b *Trial) int {
		if c := a.score.compare(b.score); c != 0 {
			return c
		}
		if c := f.unusual(a.Choice) - f.unusual(b.Choice); c != 0 {
			return c
		}
		return slices.Compare(a.Choice, b.Choice)
	})
	return ranked
}

// unusual is how many holes a choice is away from the usual one.
func (f *fitter) unusual(choice []int) int {
	n := 0
	for d, v := range choice {
		n += max(v-f.out.Dials[d].Usual, f.out.Dials[d].Usual-v)
	}
	return n
}

// indifferent names the dials that may stand anywhere without any difference to
// the first of some equal trials.
func (f *fitter) indifferent(equal []*Trial) []string {
	var names []string
	for d := range f.out.Dials {
		same := 0
		for _, t := range equal {
			if sameBut(t.Choice, equal[0].Choice, d) {
				same++
			}
		}
		if n := len(f.out.Dials[d].Values); n > 1 && same == n {
			names = append(names, f.out.Dials[d].Name)
		}
	}
	return names
}

// sameBut reports whether two choices differ in dial d at the most.
func sameBut(a, b []int, d int) bool {
	for k := range a {
		if k != d && a[k] != b[k] {
			return false
		}
	}
	return true
}
