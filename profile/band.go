package profile

import (
	"math"
	"slices"
)

// Interval is the range of one number, in that number's unit.
type Interval struct{ Low, High float64 }

// Half returns half the width.
func (i Interval) Half() float64 { return (i.High - i.Low) / 2 }

// Band is a curve and its readings with their uncertainty.
//
// From [Linear] the intervals are value ± U with U the expanded uncertainty, k
// = 2. From [Sampled] they reach from the 2.5 % to the 97.5 % quantile.
type Band struct {
	Measurements []Measurement
	Phase        Phase

	// The curve at the stated values, one entry for each of its positions,
	// and the band at the same share of the travel. Force and interval are 0
	// at a gap.
	Share   []float64  // of the travel, 0 to 1
	Force   []float64  // N
	Between []Interval // N
	Gap     []Reason   // nil if every position has a force

	// Present is, at each share of the travel, the share of the draws that
	// have a force there. Below 1 the band says nothing about the others,
	// whose force may have no bound. It is nil in a linear band.
	Present []float64

	Readings Readings // at the stated values
	Verdict  Verdict

	Draws, Failed int      // of a sampled band; failed draws are in no interval
	First         *Failure // first failed draw; nil if none failed

	readings [readingCount]Interval

	// What each measurement contributes to the half width, with the sign of
	// its effect: [measurement][position] in N, and by reading.
	forceParts   [][]float64
	readingParts [][readingCount]float64
}

// Reading returns the interval of one reading.
func (b *Band) Reading(q Reading) Interval { return b.readings[q] }

// Linear returns the first-order band of a curve from the exact derivatives of
// its columns, one [Partial] for each measurement.
//
// The force at a fixed share of the travel changes with a measurement p by
//
//	dF/dp - (dF/du) du/dp,   du/dp = (ds/dp - u dL/dp) / L
//
// where dF/du is the slope of the parabola through three neighbours. Readings
// are differentiated exactly as they are computed: integrals with their ends
// and third boundaries, the peak with its parabola (where, by the envelope
// theorem, only the force at the peak counts). Contributions combine by the
// root sum of squares, JCGM 100:2008 equation 10: measurements are independent.
//
// It is right while the curve follows the measurements in straight lines over
// their ±, and wrong near a dead point or where a reading jumps (a second peak
// taking over, an even curve, whose unevenness has no first order). There use
// [Sampled].
//
// Its verdict is that of [verdictDraws] machines drawn in that same linear
// sense.
//
// Errors: those of [Curve.Check], [ErrNoForce], *LengthError, *ValueError,
// *MeasurementError.
func Linear(c Curve, p Phase, ms []Measurement, ds []Partial) (*Band, error) {
	if err := checkLinear(c, ms, ds); err != nil {
		return nil, err
	}
	base, err := read(c, Partial{}, p)
	if err != nil {
		return nil, err
	}
	b := newBand(c, p, ms, base)
	slopes := make([]float64, len(c.Travel))
	for i := range slopes {
		slopes[i] = slope(b.Share, b.Force, c.Gap, i)
	}

	gradient := make([]outcome, len(ms))
	for j, m := range ms {
		l := lineOf(c, ds[j], p)
		for i := range l.travel {
			if c.Has(i) {
				k := l.knot(i)
				b.forceParts[j][i] = (k.f.d - slopes[i]*k.u.d) * m.Spread
			}
		}
		if gradient[j], err = read(c, ds[j], p); err != nil {
			return nil, err
		}
		for q, v := range gradient[j].values {
			b.readingParts[j][q] = v.d * m.Spread
		}
	}
	b.combine()
	b.Verdict, err = linearVerdict(b.Readings, ms, gradient)
	return b, err
}

func checkLinear(c Curve, ms []Measurement, ds []Partial) error {
	if err := c.Check(); err != nil {
		return err
	}
	if err := checkMeasurements(ms); err != nil {
		return err
	}
	if len(ds) != len(ms) {
		return &LengthError{"derivatives", len(ds), len(ms)}
	}
	for _, d := range ds {
		if err := d.check(c); err != nil {
			return err
		}
	}
	return nil
}

// newBand returns the band of a curve without any width yet.
func newBand(c Curve, p Phase, ms []Measurement, base outcome) *Band {
	n := len(c.Travel)
	b := &Band{
		Measurements: slices.Clone(ms),
		Phase:        p,
		Share:        make([]float64, n),
		Force:        make([]float64, n),
		Between:      make([]Interval, n),
		Gap:          slices.Clone(c.Gap),
		Readings:     base.readings(p),
		forceParts:   make([][]float64, len(ms)),
		readingParts: make([][readingCount]float64, len(ms)),
	}
	for j := range ms {
		b.forceParts[j] = make([]float64, n)
	}
	for i, s := range c.Travel {
		b.Share[i] = s / c.Length()
		if c.Has(i) {
			b.Force[i] = c.Force(p)[i]
			b.Between[i] = Interval{b.Force[i], b.Force[i]}
		}
	}
	for q, v := range base.values {
		b.readings[q] = Interval{v.v, v.v}
	}
	return b
}

// combine widens every interval by the root sum of squares of its parts.
func (b *Band) combine() {
	for i := range b.Between {
		total := 0.0
		for _, parts := range b.forceParts {
			total += parts[i] * parts[i]
		}
		b.Between[i] = b.Between[i].widened(math.Sqrt(total))
	}
	for q := range b.readings {
		total := 0.0
		for _, parts := range b.readingParts {
			total += parts[q] * parts[q]
		}
		b.readings[q] = b.readings[q].widened(math.Sqrt(total))
	}
}

func (i Interval) widened(by float64) Interval { return Interval{i.Low - by, i.High + by} }
