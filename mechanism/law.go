package mechanism

import (
	"fmt"
	"math"

	"steelyard/planar"
)

// Law is a force law: the pull of an element against its length x and the rate
// v at which x grows. About a joint read moment, angle and angular velocity.
type Law interface {
	// Pull returns the force in N (or moment in N·m), positive when it resists
	// growth of x, and its slope ∂Pull/∂x.
	Pull(x, v float64) (force, slope float64)
}

// Spring is a linear spring: Preload + Rate·(x - Free).
//
// With PullOnly it is an extension spring: no force until x exceeds Free, then
// Preload (the initial tension that opens the coils) plus rate times stretch.
type Spring struct {
	Rate     float64 // N/m or N·m/rad
	Free     float64 // m or rad, where the force is Preload
	Preload  float64 // N or N·m
	PullOnly bool
}

// Pull implements [Law].
func (s Spring) Pull(x, _ float64) (force, slope float64) {
	if s.PullOnly && x <= s.Free {
		return 0, 0
	}
	return s.Preload + s.Rate*(x-s.Free), s.Rate
}

// GasSpring pushes its ends apart. Its gas is compressed isothermally, so that
// the push grows as Force·Column/(Column - stroke).
//
// Valid for slow strokes between the end stops; friction of the seal is not in
// it. Source: Boyle's law; the progression of maker's tables, which give the
// ratio of compressed to extended force, follows from Column.
type GasSpring struct {
	Force    float64 // N, push when extended
	Extended float64 // m, length between eyes when extended
	Column   float64 // m, gas volume when extended over rod area, > stroke
}

// Pull implements [Law]: negative, a push.
func (g GasSpring) Pull(x, _ float64) (force, slope float64) {
	left := g.Column - max(0, g.Extended-x)
	if left <= 0 {
		return math.Inf(-1), 0 // compressed beyond its gas; Compile and Sweep report it
	}
	p := g.Force * g.Column / left
	if x >= g.Extended {
		return -p, 0
	}
	return -p, p / left
}

// Band is a rubber band by the neo-Hookean law: pull = Area·Shear·(λ - 1/λ²)
// with stretch λ = x/Free, and none when slack.
//
// Good to a stretch of about 2, too soft above about 4. Source: L. R. G.
// Treloar, The Physics of Rubber Elasticity, 3rd ed. 1975, ch. 5 (from memory).
type Band struct {
	Free  float64 // m, unstretched
	Area  float64 // m², of all strands, unstretched
	Shear float64 // Pa, modulus (E/3)
}

// Pull implements [Law].
func (b Band) Pull(x, _ float64) (force, slope float64) {
	l := x / b.Free
	if l <= 1 {
		return 0, 0
	}
	k := b.Area * b.Shear
	return k * (l - 1/(l*l)), k / b.Free * (1 + 2/(l*l*l))
}

// Table is a measured force against length, straight between points, none
// below the first and on in line above the last.
type Table struct {
	X, F []float64 // m and N, X ascending, at least two, equal lengths
}

// Pull implements [Law].
func (t Table) Pull(x, _ float64) (force, slope float64) {
	if x <= t.X[0] {
		return 0, 0
	}
	i := 1
	for i < len(t.X)-1 && x > t.X[i] {
		i++
	}
	slope = (t.F[i] - t.F[i-1]) / (t.X[i] - t.X[i-1])
	return t.F[i] + slope*(x-t.X[i]), slope
}

// Steady pulls with one force whatever the length: a constant-force spring, a
// motor held at a torque.
type Steady struct{ Force float64 }

// Pull implements [Law].
func (s Steady) Pull(_, _ float64) (force, slope float64) { return s.Force, 0 }

// Damper resists the rate of lengthening; at rest it gives nothing.
type Damper struct{ Coefficient float64 } // N·s/m or N·m·s/rad

// Pull implements [Law].
func (d Damper) Pull(_, v float64) (force, slope float64) { return d.Coefficient * v, 0 }

// cosExact returns cos a, exactly zero at a quarter turn, so that a level plane
// carries no trace of gravity.
func cosExact(a planar.Angle) float64 {
	if math.Abs(float64(a.Normalized())) == math.Pi/2 {
		return 0
	}
	return math.Cos(float64(a))
}

// checkLaw refuses laws whose numbers make no force.
func checkLaw(part string, law Law) error {
	const big = 1e7
	switch l := law.(type) {
	case nil:
		return &PartError{part, "it has no force law", "say which spring, band or damper it is"}
	case Spring:
		return first(checkRange(part, "rate", l.Rate, 0, big, "N/m or N·m/rad"), checkRange(part, "free length", l.Free, -farthest, farthest, "m or rad"),
			checkRange(part, "preload", l.Preload, -big, big, "N or N·m"))
	case GasSpring:
		if !(l.Column > 0 && l.Column <= farthest) {
			return &PartError{part, fmt.Sprintf("its gas column is %g m", l.Column), "it must be longer than the stroke; take it from force compressed over force extended"}
		}
		return first(checkRange(part, "force", l.Force, 0, big, "N"), checkRange(part, "extended length", l.Extended, 0, farthest, "m"))
	case Band:
		if !(l.Free > 0 && l.Free <= farthest) {
			return &PartError{part, fmt.Sprintf("its unstretched length is %g m", l.Free), "give the length at which it just begins to pull"}
		}
		return first(checkRange(part, "cross-section", l.Area, 0, 1, "m²"), checkRange(part, "shear modulus", l.Shear, 0, 1e9, "Pa"))
	case Table:
		return checkTable(part, l)
	case Steady:
		return checkRange(part, "force", l.Force, -big, big, "N or N·m")
	case Damper:
		return checkRange(part, "damping", l.Coefficient, 0, big, "N·s/m or N·m·s/rad")
	}
	return nil
}

func checkTable(part string, t Table) error {
	if len(t.X) < 2 || len(t.X) != len(t.F) {
		return &PartError{part, fmt.Sprintf("its table has %d lengths and %d forces", len(t.X), len(t.F)), "give at least two pairs"}
	}
	for i := range t.X {
		if err := first(checkRange(part, "length", t.X[i], 0, farthest, "m"), checkRange(part, "force", t.F[i], 0, 1e7, "N")); err != nil {
			return err
		}
		if i > 0 && !(t.X[i] > t.X[i-1]) {
			return &PartError{part, fmt.Sprintf("its table goes from %g m to %g m", t.X[i-1], t.X[i]), "list lengths from short to long"}
		}
	}
	return nil
}
