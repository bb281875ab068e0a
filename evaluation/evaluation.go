package evaluation

import (
	"context"
	"errors"
	"fmt"

	"steelyard/mechanism"
	"steelyard/profile"
	"steelyard/sheet"
)

// Options says how closely to look. The zero value is ready to use.
type Options struct {
	Positions int              // along the travel; 0 means 101
	Draws     int              // of the error band; 0 means 2000
	Tempo     *mechanism.Tempo // nil leaves time out
	Progress  func(done, total int)
}

// Seed draws the same band for the same sheet every time.
const Seed = 1

const (
	usualPositions = 101
	usualDraws     = 2000
	strokeRows     = 241
)

// Evaluation is a machine, set one way, put through its travel.
type Evaluation struct {
	Name     string
	Sheet    *sheet.Machine
	Built    *sheet.Built
	Model    *mechanism.Model
	Sweep    *mechanism.Sweep
	Curve    profile.Curve
	Rows     []int               // of the sweep, by position of the curve
	Readings [3]profile.Readings // by profile.Phase
	Band     *profile.Band       // of lifting, sampled; nil if no number has a ±
	Causes   []Cause             // why it is hardest and easiest where it is
	Tempo    *mechanism.Tempo    // nil without one
	Stroke   *mechanism.Stroke   // nil without a tempo
	Person   *Meeting            // who is on it; nil for nobody. See Meet
	Notes    []string            // what the reader should know of the result

	// BandToCome says that the band is missing because there was no time for it
	// yet, so that words are silent about it.
	BandToCome bool
}

// Run evaluates a built machine. It returns an error if the machine cannot be
// put together or has no force anywhere; parts of the travel that fail are gaps
// with a note. A cancelled context ends it with the context's error.
func Run(ctx context.Context, m *sheet.Machine, b *sheet.Built, o Options) (*Evaluation, error) {
	if o.Positions == 0 {
		o.Positions = usualPositions
	}
	e := &Evaluation{Name: m.Name, Sheet: m, Built: b, Tempo: o.Tempo}
	var err error
	if e.Model, err = mechanism.Compile(b.Machine); err != nil {
		return nil, m.Locate(err)
	}
	if e.Sweep, err = e.Model.Sweep(o.Positions); err != nil {
		return nil, m.Locate(err)
	}
	e.Curve, e.Rows = Curve(e.Sweep)
	if err := e.read(); err != nil {
		return nil, m.Locate(err)
	}
	if e.Causes, err = e.causes(); err != nil {
		return nil, m.Locate(err)
	}
	if e.Band, err = e.band(ctx, o); err != nil {
		return nil, err
	}
	if o.Tempo != nil {
		if e.Stroke, err = e.Model.Stroke(e.Sweep, *o.Tempo, strokeRows); err != nil {
			return nil, m.Locate(err)
		}
	}
	return e, nil
}

// read reads all phases and notes the gaps.
func (e *Evaluation) read() error {
	for _, p := range []profile.Phase{profile.Holding, profile.Lifting, profile.Lowering} {
		r, err := profile.Read(e.Curve, p)
		if errors.Is(err, profile.ErrNoForce) {
			if stop := firstStop(e.Sweep); stop != nil {
				return stop
			}
		}
		if err != nil {
			return err
		}
		e.Readings[p] = r
	}
	if stop := firstStop(e.Sweep); stop != nil {
		e.Notes = append(e.Notes, fmt.Sprintf("Part of the stated travel has no force: %v.", stop))
	}
	e.Notes = append(e.Notes, e.remarks()...)
	return nil
}

// remarks notes where the machine does not follow on the way down, and what
// friction is left out.
func (e *Evaluation) remarks() []string {
	var notes []string
	for i, stop := range e.Sweep.Loose {
		if stop != nil {
			share := e.Sweep.Travel[i] / max(e.Readings[profile.Holding].Length, 1e-9)
			notes = append(notes, fmt.Sprintf("On the way down the machine's own friction holds the load %s: %s %s there, and the force is taken as nothing.", place(share), stop.Part, stop.Kind))
			break
		}
	}
	for _, el := range e.Built.Machine.Elements {
		for _, s := range el.Route {
			if s.Loss != (mechanism.RopeLoss{}) {
				return append(notes, fmt.Sprintf("What %q loses in running round %q is not counted: it stretches, and only ropes that don't have sheave friction here.", el.Name, s.Name))
			}
		}
	}
	return notes
}

func firstStop(sw *mechanism.Sweep) *mechanism.Stop {
	for _, s := range sw.Stops {
		if s != nil {
			return s
		}
	}
	return nil
}

// Rubs reports whether lifting and lowering differ.
func (e *Evaluation) Rubs() bool {
	for i, f := range e.Curve.Lift {
		if f != e.Curve.Lower[i] {
			return true
		}
	}
	return false
}
