package profile

import (
	"cmp"
	"context"
	"fmt"
	"runtime"
	"slices"
	"sync"

	"gonum.org/v1/gonum/mat"
)

// Sampling says how a band is drawn. The zero value is ready to use.
type Sampling struct {
	Draws   int    // 0 means 2000
	Seed    uint64 // the same seed gives the same band
	Workers int    // evaluations at once; 0 means one for each processor

	// Progress, if not nil, is told about a hundred times how many draws are
	// done. It is never called twice at once.
	Progress func(done, total int)
}

const (
	defaultDraws = 2000

	// fewestDraws leave one draw beyond each end of a 2.5 % to 97.5 % interval.
	fewestDraws = 40
	lowQuantile = 0.025
)

// Failure is a draw from which no curve came.
type Failure struct {
	Draw   int       // from 0
	Values []float64 // of the measurements
	Err    error
}

// FewDrawsError tells that too few draws gave a curve for a band to be stated.
type FewDrawsError struct {
	Draws, Failed int
	First         *Failure // nil if none failed
}

func (e *FewDrawsError) Error() string {
	s := fmt.Sprintf("profile: only %d of %d machines drawn within the ± can be put together, %d are needed",
		e.Draws-e.Failed, e.Draws, fewestDraws)
	if e.First != nil {
		s += fmt.Sprintf("; measure again or narrow the ± (first failure: %v)", e.First.Err)
	}
	return s
}

// Unwrap returns why the first machine failed; nil if none did.
func (e *FewDrawsError) Unwrap() error {
	if e.First == nil {
		return nil
	}
	return e.First.Err
}

// Sampled returns the band from the 2.5 % to the 97.5 % quantile over curves
// drawn within the measurements' ±, for the force at each share of the travel
// and for each reading. Measurements are independent and normal with standard
// deviation ±/2, cut at three of it.
//
// A draw that evaluate refuses, or whose curve cannot be read, is counted in
// Failed and left out: the band speaks of the machines that can exist. The
// result depends on the seed and not on the number of workers.
//
// Quantiles are good to about 0.005 in probability at 2000 draws, better for
// smooth curves. Source: JCGM 101:2008, 7.7 (probabilistically symmetric
// coverage interval).
//
// Errors: *MeasurementError, *TooManyError, *FewDrawsError, the context's
// error, and whatever the stated values themselves fail with.
func Sampled(ctx context.Context, p Phase, ms []Measurement, evaluate Evaluate, o Sampling) (*Band, error) {
	if err := checkMeasurements(ms); err != nil {
		return nil, err
	}
	o = o.filled()
	batch, err := draws(ms, o.Draws, o.Seed)
	if err != nil {
		return nil, err
	}
	c, err := evaluated(evaluate, stated(ms))
	if err != nil {
		return nil, err
	}
	base, err := read(c, Partial{}, p)
	if err != nil {
		return nil, err
	}
	b := newBand(c, p, ms, base)
	t := newTally(o.Draws, b.Share)
	if err := t.fill(ctx, batch, p, evaluate, o); err != nil {
		return nil, err
	}
	b.Draws, b.Failed, b.First = o.Draws, len(t.failures), t.first()
	if b.Draws-b.Failed < fewestDraws {
		return nil, &FewDrawsError{b.Draws, b.Failed, b.First}
	}
	b.summarize(t, batch)
	return b, nil
}

func (o Sampling) filled() Sampling {
	if o.Draws <= 0 {
		o.Draws = defaultDraws
	}
	if o.Workers <= 0 {
		o.Workers = runtime.GOMAXPROCS(0)
	}
	o.Workers = min(o.Workers, o.Draws)
	return o
}

// tally holds what each draw gave, by draw, so that it does not matter which
// worker filled it in.
type tally struct {
	share    []float64               // grid of travel shares
	force    [][]float64             // N, [grid][draw]
	present  [][]bool                // [grid][draw]
	readings [readingCount][]float64 // [reading][draw]
	loads    []Where
	good     []bool
	failures []Failure
}

func newTally(n int, share []float64) *tally {
	t := &tally{share: share, loads: make([]Where, n), good: make([]bool, n)}
	for range share {
		t.force = append(t.force, make([]float64, n))
		t.present = append(t.present, make([]bool, n))
	}
	for q := range t.readings {
		t.readings[q] = make([]float64, n)
	}
	return t
}

// fill evaluates every draw. Workers take draws in turn.
func (t *tally) fill(ctx context.Context, batch *mat.Dense, p Phase, evaluate Evaluate, o Sampling) error {
	var (
		wait sync.WaitGroup
		lock sync.Mutex // guards next, done, failures and Progress
		next int
		done int
	)
	take := func() (i int, ok bool) {
		lock.Lock()
		defer lock.Unlock()
		next++
		return next - 1, next <= o.Draws && ctx.Err() == nil
	}
	finish := func(i int, values []float64, err error) {
		lock.Lock()
		defer lock.Unlock()
		if err != nil {
			t.failures = append(t.failures, Failure{i, slices.Clone(values), err})
		}
		done++
		if o.Progress != nil && (done%max(1, o.Draws/100) == 0 || done == o.Draws) {
			o.Progress(done, o.Draws)
		}
	}
	for worker := range o.Workers {
		wait.Go(func() {
			var values []float64
			for i, ok := take(); ok; i, ok = take() {
				values = row(values, batch, i)
				finish(i, values, t.draw(i, values, worker, p, evaluate))
			}
		})
	}
	wait.Wait()
	if done < o.Draws {
		return fmt.Errorf("profile: stopped after %d of %d draws: %w", done, o.Draws, ctx.Err())
	}
	slices.SortFunc(t.failures, func(a, b Failure) int { return cmp.Compare(a.Draw, b.Draw) })
	return nil
}

// row copies draw i, so that evaluate may not disturb the batch.
func row(dst []float64, batch *mat.Dense, i int) []float64 {
	if batch == nil {
		return dst[:0]
	}
	return append(dst[:0], batch.RawRowView(i)...)
}

// draw evaluates draw i and lays its curve and readings into the tally.
func (t *tally) draw(i int, values []float64, worker int, p Phase, evaluate Evaluate) error {
	c, err := evaluate(values, worker)
	if err != nil {
		return err
	}
	r, err := Read(c, p)
	if err != nil {
		return err
	}
	t.good[i], t.loads[i] = true, r.Loads
	for q := range t.readings {
		t.readings[q][i] = r.Value(Reading(q))
	}
	spread := resampler{curve: c, force: c.Force(p)}
	for g, u := range t.share {
		t.force[g][i], t.present[g][i] = spread.at(u)
	}
	return nil
}

func (t *tally) first() *Failure {
	if len(t.failures) == 0 {
		return nil
	}
	return &t.failures[0]
}

// summarize reduces the tally to intervals, parts and the verdict.
func (b *Band) summarize(t *tally, batch *mat.Dense) {
	var counts [whereCount]int
	for i, w := range t.loads {
		if t.good[i] {
			counts[w]++
		}
	}
	b.Verdict = verdictOf(counts)

	good := float64(b.Draws - b.Failed)
	b.Present = make([]float64, len(b.Share))
	for g := range b.Share {
		s := summary(t.force[g], t.present[g], batch, len(b.Measurements))
		b.Present[g] = float64(s.count) / good
		if b.Gap != nil && b.Gap[g] != None || s.count == 0 {
			continue
		}
		b.Between[g] = s.interval
		for j := range b.Measurements {
			b.forceParts[j][g] = s.correlation[j] * s.interval.Half()
		}
	}
	for q := range t.readings {
		s := summary(t.readings[q], t.good, batch, len(b.Measurements))
		b.readings[q] = s.interval
		for j := range b.Measurements {
			b.readingParts[j][q] = s.correlation[j] * s.interval.Half()
		}
	}
}
