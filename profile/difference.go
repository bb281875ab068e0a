package profile

import "fmt"

// step is the step of the central difference over the ±: small enough that
// what bends on the scale of the ± is straight on this one (the error is the
// step squared, 1/400, of the third-order term over the ±), large enough that
// rounding in the evaluation stays far below.
const step = 1. / 20

// UnsteadyError tells that a small change of one measurement changes which
// positions have a force, so that no derivative exists there. The cure is a
// sampled band.
type UnsteadyError struct {
	Measurement Measurement
	Step        float64 // in the measurement's unit
	Position    int     // from 0; -1 if the number of positions changed
}

func (e *UnsteadyError) Error() string {
	what := "the number of positions changes"
	if e.Position >= 0 {
		what = fmt.Sprintf("position %d gains or loses its force", e.Position+1)
	}
	return fmt.Sprintf("profile: %s when %q moves by %g %s; take a sampled band instead",
		what, e.Measurement.Name, e.Step, e.Measurement.Unit)
}

// Differentiate returns the derivatives that [Linear] asks for, by central
// differences, together with the curve at the stated values. Evaluate is
// called twice for each measurement with a ±, always as worker 0, and must put
// the same index at the same state of the machine each time. A measurement
// without a ± gets zeros.
//
// Errors: *MeasurementError, *UnsteadyError, those of [Curve.Check], and
// evaluate's own with the measurement's name before it.
func Differentiate(ms []Measurement, evaluate Evaluate) (Curve, []Partial, error) {
	if err := checkMeasurements(ms); err != nil {
		return Curve{}, nil, err
	}
	values := stated(ms)
	base, err := evaluated(evaluate, values)
	if err != nil {
		return Curve{}, nil, err
	}
	ds := make([]Partial, len(ms))
	for j, m := range ms {
		h := m.Spread * step
		high, low := base, base
		if h > 0 {
			values[j] = m.Value + h
			if high, err = evaluated(evaluate, values); err != nil {
				return Curve{}, nil, fmt.Errorf("with %s at %g %s: %w", m.Name, values[j], m.Unit, err)
			}
			values[j] = m.Value - h
			if low, err = evaluated(evaluate, values); err != nil {
				return Curve{}, nil, fmt.Errorf("with %s at %g %s: %w", m.Name, values[j], m.Unit, err)
			}
			values[j] = m.Value
		}
		if at, ok := sameGaps(base, high, low); !ok {
			return Curve{}, nil, &UnsteadyError{m, h, at}
		}
		ds[j] = quotient(high, low, 2*h)
	}
	return base, ds, nil
}

// evaluated returns a checked copy, since the next evaluation may overwrite it.
func evaluated(evaluate Evaluate, values []float64) (Curve, error) {
	c, err := evaluate(values, 0)
	if err != nil {
		return Curve{}, err
	}
	if err := c.Check(); err != nil {
		return Curve{}, err
	}
	return c.Clone(), nil
}

// sameGaps returns the first position at which the curves do not all have a
// force or all lack it, -1 if they differ in length.
func sameGaps(base Curve, others ...Curve) (at int, ok bool) {
	for _, o := range others {
		if len(o.Travel) != len(base.Travel) {
			return -1, false
		}
		for i := range base.Travel {
			if base.Has(i) != o.Has(i) {
				return i, false
			}
		}
	}
	return 0, true
}

func quotient(high, low Curve, by float64) Partial {
	column := func(a, b []float64) []float64 {
		if a == nil || b == nil {
			return nil
		}
		d := make([]float64, len(a))
		for i := range d {
			if by > 0 {
				d[i] = (a[i] - b[i]) / by
			}
		}
		return d
	}
	return Partial{
		Travel: column(high.Travel, low.Travel),
		Hold:   column(high.Hold, low.Hold),
		Lift:   column(high.Lift, low.Lift),
		Lower:  column(high.Lower, low.Lower),
		Load:   column(high.Load, low.Load),
	}
}
