package profile

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// Reason tells why a position of a curve has no force.
type Reason uint8

const (
	None       Reason = iota // the position has a force
	DeadPoint                // links in line: the force has no bound
	Slack                    // the rope does not pull
	OutOfReach               // no pose closes the linkage
)

// String returns the reason in words, such as "dead point".
func (r Reason) String() string {
	return [...]string{"none", "dead point", "slack rope", "out of reach"}[min(r, OutOfReach)]
}

// Phase is what the person does with the load; friction makes the phases
// differ.
type Phase uint8

const (
	Holding  Phase = iota // at rest, without friction
	Lifting               // concentric, against friction
	Lowering              // eccentric, helped by friction
)

// String returns "holding", "lifting" or "lowering".
func (p Phase) String() string {
	return [...]string{"holding", "lifting", "lowering"}[min(p, Lowering)]
}

// Curve is a resistance curve in columns of one length, at least 2. The zero
// Curve is not valid.
type Curve struct {
	Travel []float64 // m, ascending from 0, where the muscle is lengthened, by at least 1e-9 m each

	// Force in N at the contact along its path; positive resists lifting.
	// Lift and Lower are nil, both, where there is no friction.
	Hold, Lift, Lower []float64

	Load []float64 // m, path travelled by the load; nil where no single load moves
	Gap  []Reason  // why a position has no force; nil if every position has one
}

const (
	// closest is the least distance of neighbouring positions in m. Closer
	// ones are one position for any tape, and their slope is rounding.
	closest = 1e-9

	// largest bounds every number in a column, so that squares and slopes stay
	// finite. No machine comes near it in N or m.
	largest = 1e12
)

// ErrNoForce is returned for a curve in which no two neighbouring positions
// have a force.
var ErrNoForce = errors.New("profile: no force anywhere in the travel, so nothing can be read; " +
	"check that the rope is tight and that the stops let the machine move")

// LengthError reports a column that is too short or unlike the others.
type LengthError struct {
	Column    string
	Got, Want int
}

func (e *LengthError) Error() string {
	return fmt.Sprintf("profile: column %s has %d positions, %d are needed", e.Column, e.Got, e.Want)
}

// ValueError reports a number that cannot stand where it does.
type ValueError struct {
	Column string
	Index  int // position in the column, from 0
	Value  float64
	Demand string // what the number should have been, with its unit
}

func (e *ValueError) Error() string {
	return fmt.Sprintf("profile: %s at position %d is %g; it must be %s", e.Column, e.Index+1, e.Value, e.Demand)
}

// Check returns a [*LengthError] or [*ValueError] if the columns are not as
// [Curve] demands. Values at gaps must
// be numbers too, and are not used.
func (c Curve) Check() error {
	n := len(c.Travel)
	if n < 2 {
		return &LengthError{"travel", n, 2}
	}
	if (c.Lift == nil) != (c.Lower == nil) {
		return &LengthError{"lift or lower", 0, n}
	}
	if c.Gap != nil && len(c.Gap) != n {
		return &LengthError{"gap", len(c.Gap), n}
	}
	columns := [...]struct {
		name     string
		values   []float64
		optional bool
	}{
		{"travel", c.Travel, false}, {"hold", c.Hold, false},
		{"lift", c.Lift, true}, {"lower", c.Lower, true}, {"load", c.Load, true},
	}
	for _, col := range columns {
		if col.optional && col.values == nil {
			continue
		}
		if err := checkColumn(col.name, col.values, n); err != nil {
			return err
		}
	}
	return checkAscending(c.Travel)
}

func checkColumn(name string, values []float64, n int) error {
	if len(values) != n {
		return &LengthError{name, len(values), n}
	}
	for i, v := range values {
		if !(math.Abs(v) <= largest) {
			return &ValueError{name, i, v, fmt.Sprintf("a number of at most %g in size", largest)}
		}
	}
	return nil
}

func checkAscending(travel []float64) error {
	if travel[0] != 0 {
		return &ValueError{"travel", 0, travel[0], "0 m, since travel counts from the start"}
	}
	for i := 1; i < len(travel); i++ {
		if travel[i]-travel[i-1] < closest {
			return &ValueError{"travel", i, travel[i], fmt.Sprintf("at least %g m beyond the %g m before it", closest, travel[i-1])}
		}
	}
	return nil
}

// Length returns the whole travel in metres.
func (c Curve) Length() float64 { return c.Travel[len(c.Travel)-1] }

// Has reports whether position i has a force.
func (c Curve) Has(i int) bool { return c.Gap == nil || c.Gap[i] == None }

// present reports whether there is a position i among n, and with a force.
func present(gap []Reason, n, i int) bool {
	return i >= 0 && i < n && (gap == nil || gap[i] == None)
}

// onSegment reports whether position i is the end of a segment that has a
// force. A lone position between two gaps is not read.
func onSegment(gap []Reason, n, i int) bool {
	return present(gap, n, i) && (present(gap, n, i-1) || present(gap, n, i+1))
}

// Force returns the force in N of one phase. It shares the curve's memory.
func (c Curve) Force(p Phase) []float64 {
	switch {
	case p == Lifting && c.Lift != nil:
		return c.Lift
	case p == Lowering && c.Lower != nil:
		return c.Lower
	}
	return c.Hold
}

// Clone returns a copy that shares no memory with c.
func (c Curve) Clone() Curve {
	return Curve{
		Travel: slices.Clone(c.Travel), Hold: slices.Clone(c.Hold),
		Lift: slices.Clone(c.Lift), Lower: slices.Clone(c.Lower),
		Load: slices.Clone(c.Load), Gap: slices.Clone(c.Gap),
	}
}

// LiftRatios returns the local lift ratio d load / d travel at every position
// in dst, which is grown if it is too short: the slope of the parabola through
// three neighbours, exact for a parabola and else good to the square of the
// spacing. It is 0 at gaps, and everywhere if the curve has no load column.
func (c Curve) LiftRatios(dst []float64) []float64 {
	n := len(c.Travel)
	if cap(dst) < n {
		dst = make([]float64, n)
	}
	dst = dst[:n]
	for i := range dst {
		dst[i] = 0
		if c.Load != nil {
			dst[i] = slope(c.Travel, c.Load, c.Gap, i)
		}
	}
	return dst
}

// slope returns dy/dx at position i from the parabola through it and the two
// nearest positions of the same unbroken run: its neighbours, or at an end of
// the run the next two. It is the chord in a run of two and 0 in a run of one
// or at a gap.
func slope(x, y []float64, gap []Reason, i int) float64 {
	has := func(j int) bool { return present(gap, len(x), j) }
	if !has(i) {
		return 0
	}
	left, right := has(i-1), has(i+1)
	lo, hi := i, i
	if left {
		lo--
	}
	if right {
		hi++
	}
	if left && !right && has(i-2) {
		lo--
	}
	if right && !left && has(i+2) {
		hi++
	}
	switch hi - lo {
	case 0:
		return 0
	case 1:
		return (y[hi] - y[lo]) / (x[hi] - x[lo])
	}

	// Newton's form: y = y0 + s01 (x-x0) + c (x-x0)(x-x1).
	mid := lo + 1
	s01 := (y[mid] - y[lo]) / (x[mid] - x[lo])
	s12 := (y[hi] - y[mid]) / (x[hi] - x[mid])
	c := (s12 - s01) / (x[hi] - x[lo])
	return s01 + c*((x[i]-x[lo])+(x[i]-x[mid]))
}
