package profile

import (
	"fmt"
	"math"
)

// Measurement is one number that was read with a tape, a scale or a level.
type Measurement struct {
	Name  string
	Value float64 // in Unit

	// Spread is the ± half-width in Unit, ≥ 0: the expanded uncertainty with
	// coverage factor k = 2, twice the standard uncertainty. Source: JCGM
	// 100:2008, 6.2.1 and 6.3.
	Spread float64

	Unit string
}

// coverageFactor is k in U = k u.
const coverageFactor = 2

// MeasurementError reports a measurement whose numbers cannot be used.
type MeasurementError struct{ Measurement Measurement }

func (e *MeasurementError) Error() string {
	m := e.Measurement
	return fmt.Sprintf("profile: measurement %q is %g ± %g %s; the value must be finite and the ± zero or more",
		m.Name, m.Value, m.Spread, m.Unit)
}

func checkMeasurements(ms []Measurement) error {
	for _, m := range ms {
		if math.IsNaN(m.Value-m.Value) || math.IsNaN(m.Spread-m.Spread) || m.Spread < 0 {
			return &MeasurementError{m}
		}
	}
	return nil
}

func stated(ms []Measurement) []float64 {
	values := make([]float64, len(ms))
	for i, m := range ms {
		values[i] = m.Value
	}
	return values
}

// Evaluate builds the curve for one value of each measurement, in their order.
// Worker, from 0, tells which of several evaluations running at once this is,
// so that each can keep its own workspace; the returned curve need only stay
// valid until the same worker's next call. Evaluate must not keep values. An
// error says why no machine can be put together from these values.
type Evaluate func(values []float64, worker int) (Curve, error)
