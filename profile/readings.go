package profile

import "math"

// Point is a place on a curve.
type Point struct {
	Share  float64 // of the travel, 0 to 1
	Travel float64 // m
	Force  float64 // N
}

// Third is one third of the travel.
type Third struct {
	Mean    float64 // N, over that part of the third which has a force
	Share   float64 // of the work of the whole travel; the three add up to 1
	Covered float64 // how much of the third has a force, 0 to 1; at 0 there is no mean
}

// The thirds of the travel, as indices.
const (
	Lengthened = iota
	Middle
	Shortened
)

// Readings is what is read from a curve in one phase. Everything but Length
// and LiftRatio is about the part of the travel that has a force.
type Readings struct {
	Phase   Phase
	Length  float64 // m, the whole travel
	Covered float64 // how much of the travel has a force, 0 to 1
	Helps   float64 // on how much of the travel the force is below 0, so that the machine moves the person

	Start, End Point // first and last position with a force

	// Peak and Least are the greatest and smallest force. Between positions
	// they are refined by the parabola through three neighbours, which is
	// exact for a parabola; at a kink it errs by less than half of the larger
	// change between neighbours. Of equal peaks the first is taken.
	Peak, Least Point

	Work float64 // J, ∫F ds
	Mean float64 // N, over the travel: work divided by travel, every centimetre counting alike

	// The following two and the shares of work are ratios to the work. They
	// are 0, meaning nothing, unless the machine on the whole resists: where
	// the mean force is at most a millionth of its root mean square deviation.

	// MeanByWork is ∫F² ds / ∫F ds in N: the force under which the average
	// joule is done, so that hard places count for more. It equals Mean for an
	// even curve and exceeds it otherwise. Where Helps is above 0 it is no
	// longer between the least force and the peak.
	MeanByWork float64

	// Flatness is 1 less the coefficient of variation over the travel (root
	// mean square deviation over mean): 1 for an even force, 0.52 for half a
	// sine, 0.42 for a straight line down to nothing. It uses the whole curve, where
	// least over peak would hang on two places; it counts deviations in
	// proportion; and it can fall below 0 when the force is concentrated in a
	// short stretch.
	Flatness float64

	// PeakToStart is the peak over the starting force; 0 where the start is
	// less than a thousandth of the peak, as on a lever that starts upright.
	PeakToStart float64

	Thirds [3]Third // lengthened, middle, shortened

	// LiftRatio is the distance the load travels over the distance the
	// contact travels, over the whole stroke, start to end; 0 without a load column.
	LiftRatio float64

	// Work of one stroke up and of one down, and what friction takes of it,
	// in J: the area between the lifting and the lowering curve.
	WorkUp, WorkDown, Lost float64

	Loads Where // see [Where] for the rule
}

// Variation returns the coefficient of variation of the force over the travel.
func (r Readings) Variation() float64 { return 1 - r.Flatness }

// Read reads a curve in one phase. It returns what [Curve.Check] returns, and
// [ErrNoForce].
func Read(c Curve, p Phase) (Readings, error) {
	if err := c.Check(); err != nil {
		return Readings{}, err
	}
	o, err := read(c, Partial{}, p)
	if err != nil {
		return Readings{}, err
	}
	return o.readings(p), nil
}

// outcome is every reading with its derivative, before it is laid out.
type outcome struct {
	values [readingCount]dual
	thirds [3]float64 // covered
	helps  float64
}

// read reads a checked curve together with its derivative.
func read(c Curve, d Partial, p Phase) (o outcome, err error) {
	l := lineOf(c, d, p)
	e, ok := l.extremes()
	if !ok {
		return o, ErrNoForce
	}
	o.values[Length] = l.length
	o.putPoint(StartForce, e.start, l.length)
	o.putPoint(EndForce, e.end, l.length)
	o.putPoint(PeakForce, l.refine(e.peak), l.length)
	o.putPoint(LeastForce, l.refine(e.least), l.length)
	if e.start.f.v > noStart*o.values[PeakForce].v && e.start.f.v > 0 {
		o.values[PeakToStart] = o.values[PeakForce].over(e.start.f)
	}
	pivot := e.start.f.v
	o.putMoments(l.thirds(pivot), pivot, l.length)
	o.putStroke(c, d, l.length)
	return o, nil
}

// putPoint lays a place into the three readings that follow each other: force,
// share, travel.
func (o *outcome) putPoint(force Reading, k knot, length dual) {
	o.values[force] = k.f
	o.values[force+1] = k.u
	o.values[force+2] = k.u.times(length)
}

func (o *outcome) putMoments(m [3]moments, pivot float64, length dual) {
	all := sum(m)
	work := all.work(pivot, length)
	mean := all.mean(pivot)
	o.values[Covered] = all.width
	o.values[Work] = work
	o.values[Mean] = mean
	o.helps = all.helps
	variance := all.variance()
	resists := mean.v > cancels*math.Sqrt(max(0, variance.v))
	for k, t := range m {
		o.thirds[k] = min(1, 3*t.width.v)
		if o.thirds[k] < barely {
			o.thirds[k] = 0
			continue
		}
		o.values[LengthenedMean+Reading(k)] = t.mean(pivot)
		if resists {
			o.values[LengthenedShare+Reading(k)] = t.work(pivot, length).over(work)
		}
	}
	if resists {
		// ∫F²/∫F = mean (1 + variation²).
		o.values[MeanByWork] = mean.plus(variance.over(mean))
		o.values[Flatness] = constant(1).minus(variance.root().over(mean))
	}
}

const (
	// barely is the share of a third below which its coverage is a rounding of
	// the third's edge and not a stretch with a force.
	barely = 1e-9

	// noStart is the starting force, over the peak, that counts as none.
	noStart = 1e-3

	// cancels is the mean force, over its deviation, at which help and
	// resistance cancel and ratios to the work are rounding.
	cancels = 1e-6
)

// putStroke reads what needs the other columns.
func (o *outcome) putStroke(c Curve, d Partial, length dual) {
	up, down := lineOf(c, d, Lifting), lineOf(c, d, Lowering)
	o.values[WorkUp] = up.total()
	o.values[WorkDown] = down.total()
	o.values[Lost] = o.values[WorkUp].minus(o.values[WorkDown])
	if c.Load != nil {
		last := len(c.Load) - 1
		moved := dual{c.Load[last] - c.Load[0], at(d.Load, last) - at(d.Load, 0)}
		o.values[LiftRatio] = moved.over(length)
	}
}

// total returns the work in J over all segments that have a force.
func (l *line) total() (w dual) {
	for i := 1; i < len(l.travel); i++ {
		if !l.has(i-1) || !l.has(i) {
			continue
		}
		step := dual{l.travel[i] - l.travel[i-1], at(l.dTravel, i) - at(l.dTravel, i-1)}
		both := dual{l.force[i] + l.force[i-1], at(l.dForce, i) + at(l.dForce, i-1)}
		w = w.plus(step.times(both).scaled(1. / 2))
	}
	return w
}

func (o *outcome) readings(p Phase) Readings {
	r := Readings{Phase: p, Helps: o.helps}
	for q := range o.values {
		*r.field(Reading(q)) = o.values[q].v
	}
	for k := range r.Thirds {
		r.Thirds[k].Covered = o.thirds[k]
	}
	r.Loads = whereOf(&r)
	return r
}
