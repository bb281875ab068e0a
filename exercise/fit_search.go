package exercise

import (
	"context"
	"fmt"
	"math/rand/v2"
	"slices"
	"sync"
)

// memory keeps every trial by its choice, so that none is made twice.
type memory struct {
	mu   sync.Mutex
	once map[string]*once
}

type once struct {
	sync.Once
	trial *Trial
}

// get returns the trial of a choice, made by make the first time.
func (m *memory) get(choice []int, make func([]int) *Trial) *Trial {
	key := fmt.Sprint(choice)
	m.mu.Lock()
	if m.once == nil {
		m.once = map[string]*once{}
	}
	o := m.once[key]
	if o == nil {
		o = &once{}
		m.once[key] = o
	}
	m.mu.Unlock()
	o.Do(func() { o.trial = make(slices.Clone(choice)) })
	return o.trial
}

// all returns the trials, in no order.
func (m *memory) all() []*Trial {
	out := make([]*Trial, 0, len(m.once))
	for _, o := range m.once {
		out = append(out, o.trial)
	}
	return out
}

func (f *fitter) at(choice []int) *Trial { return f.tried.get(choice, f.try) }

// all tries every choice.
func (f *fitter) all(ctx context.Context, o FitOptions) error {
	return shareOut(ctx, f.out.Possible, o.Workers, o.Progress, func(i int) { f.at(f.nth(i)) })
}

// nth returns choice number i, the last dial counting fastest.
func (f *fitter) nth(i int) []int {
	choice := make([]int, len(f.out.Dials))
	for d := len(choice) - 1; d >= 0; d-- {
		n := len(f.out.Dials[d].Values)
		choice[d] = i % n
		i /= n
	}
	return choice
}

// climbers is how many places a search of too many choices starts from: the
// usual settings and others spread at random, always the same ones.
const climbers = 16

// climbs searches from several places.
func (f *fitter) climbs(ctx context.Context, o FitOptions) error {
	random := rand.New(rand.NewPCG(1, 1))
	starts := make([][]int, climbers)
	starts[0] = usual(f.out.Dials)
	for k := 1; k < climbers; k++ {
		starts[k] = make([]int, len(f.out.Dials))
		for d := range f.out.Dials {
			starts[k][d] = random.IntN(len(f.out.Dials[d].Values))
		}
	}
	return shareOut(ctx, climbers, o.Workers, o.Progress, func(k int) { f.climb(ctx, starts[k]) })
}

// climb improves a choice until no neighbour is better: it tries every dial a
// step up and down, goes to the best, and where none is better halves the
// steps, from a quarter of each dial to one hole.
//
// Source: R. Hooke and T. A. Jeeves, "Direct search" solution of numerical and
// statistical problems, Journal of the ACM 8 (1961) 212-229 (from memory);
// without their pattern move.
func (f *fitter) climb(ctx context.Context, choice []int) {
	dials := f.out.Dials
	step := make([]int, len(dials))
	for d := range step {
		step[d] = max(1, len(dials[d].Values)/4)
	}
	here := f.at(choice)
	for ctx.Err() == nil {
		best := here
		for d := range dials {
			for _, by := range [2]int{-step[d], step[d]} {
				next := slices.Clone(here.Choice)
				next[d] = max(0, min(len(dials[d].Values)-1, next[d]+by))
				if t := f.at(next); t.score.compare(best.score) < 0 {
					best = t
				}
			}
		}
		if best != here {
			here = best
			continue
		}
		if slices.Max(step) == 1 {
			return
		}
		for d := range step {
			step[d] = max(1, step[d]/2)
		}
	}
}
