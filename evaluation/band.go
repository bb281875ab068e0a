package evaluation

import (
	"context"
	"errors"

	"steelyard/mechanism"
	"steelyard/profile"
)

// measured returns the measurements that carry a ±, and their places among all.
// Their numbers are in SI here.
func (e *Evaluation) measured() ([]profile.Measurement, []int) {
	var ms []profile.Measurement
	var at []int
	for i, m := range e.Built.Measurements {
		if m.Spread > 0 {
			ms = append(ms, profile.Measurement{Name: m.Name, Value: m.Value, Spread: m.Spread, Unit: ""})
			at = append(at, i)
		}
	}
	return ms, at
}

// values returns all measurements' values, with those at the given places
// replaced.
func (e *Evaluation) values(at []int, with []float64) []float64 {
	all := make([]float64, len(e.Built.Measurements))
	for i, m := range e.Built.Measurements {
		all[i] = m.Value
	}
	for k, i := range at {
		all[i] = with[k]
	}
	return all
}

// band draws the lifting curve's error band from every ± in the sheet.
func (e *Evaluation) band(ctx context.Context, o Options) (*profile.Band, error) {
	ms, at := e.measured()
	if len(ms) == 0 || o.Draws < 0 {
		return nil, nil
	}
	draws := o.Draws
	if draws == 0 {
		draws = usualDraws
	}
	return profile.Sampled(ctx, profile.Lifting, ms, e.perturbed(at), profile.Sampling{Draws: draws, Seed: Seed, Progress: o.Progress})
}

// perturbed returns what finds the curve with other numbers at the given places.
func (e *Evaluation) perturbed(at []int) profile.Evaluate {
	return func(values []float64, _ int) (profile.Curve, error) {
		sw, err := e.rebuilt(e.values(at, values), len(e.Sweep.Driver))
		if err != nil {
			return profile.Curve{}, err
		}
		c, _ := Curve(sw)
		return c, nil
	}
}

// rebuilt sweeps the machine of other numbers.
func (e *Evaluation) rebuilt(values []float64, positions int) (*mechanism.Sweep, error) {
	m, err := e.Built.Rebuild(values)
	if err != nil {
		return nil, err
	}
	md, err := mechanism.Compile(m)
	if err != nil {
		return nil, err
	}
	return md.Sweep(positions)
}

// chord is the share of a ± by which a number is moved to see where the curve
// goes: small enough for numbers that bend the description, large enough that
// rounding stays below 1e-9.
const chord = 1e-3

// Linear returns the first-order band of lifting. It costs a small part of a
// sampled band and is right where the curve follows the numbers in straight
// lines. Where nothing rubs it comes from the exact derivative of the whole
// sweep by every number with a ±; with friction, from differences of sweeps; and
// where those do not have their gaps in the same places, it is that of holding
// the load. It returns nil if no number has a ±.
func (e *Evaluation) Linear() (*profile.Band, error) {
	ms, at := e.measured()
	if len(ms) == 0 {
		return nil, nil
	}
	if !e.Rubs() {
		return e.exact(profile.Lifting, ms, at)
	}
	curve, partials, err := profile.Differentiate(ms, e.perturbed(at))
	var unsteady *profile.UnsteadyError
	if errors.As(err, &unsteady) {
		return e.exact(profile.Holding, ms, at)
	}
	if err != nil {
		return nil, err
	}
	return profile.Linear(curve, profile.Lifting, ms, partials)
}

// exact returns the band from the derivatives of the frictionless curve.
func (e *Evaluation) exact(p profile.Phase, ms []profile.Measurement, at []int) (*profile.Band, error) {
	moved := make([]*mechanism.Model, len(ms))
	for k := range ms {
		m, err := e.Built.Rebuild(e.values(at[k:k+1], []float64{ms[k].Value + chord*ms[k].Spread}))
		if err != nil {
			return nil, err
		}
		if moved[k], err = mechanism.Compile(m); err != nil {
			return nil, err
		}
	}
	drifts, err := e.Model.Drifts(e.Sweep, moved)
	if err != nil {
		return nil, err
	}
	partials := make([]profile.Partial, len(ms))
	for k, d := range drifts {
		partials[k] = e.partial(d, chord*ms[k].Spread)
	}
	return profile.Linear(e.Curve, p, ms, partials)
}

// partial turns the drift for a step into derivatives at the curve's positions.
func (e *Evaluation) partial(d *mechanism.Drift, step float64) profile.Partial {
	var p profile.Partial
	first := e.Rows[0]
	for _, i := range e.Rows {
		p.Hold = append(p.Hold, d.Hold[i]/step)
		p.Travel = append(p.Travel, (d.Travel[i]-d.Travel[first])/step)
		if e.Curve.Load != nil {
			p.Load = append(p.Load, (d.LoadTravel[i]-d.LoadTravel[first])/step)
		}
	}
	p.Lift, p.Lower = p.Hold, p.Hold // lifting is asked for only where nothing rubs
	return p
}
