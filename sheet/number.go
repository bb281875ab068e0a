package sheet

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"steelyard/quantity"
)

// measure is what may stand at a place that takes a number.
type measure struct {
	dim      quantity.Dimension
	bare     quantity.Unit // of a number without a unit; NoUnit: the unit must be written
	min, max float64       // SI, both allowed
	limit    string        // the same in words
}

// The bounds catch a wrong unit before it becomes a wrong force: nothing on a
// gym floor lies outside them.
var (
	place     = measure{quantity.Length, quantity.Millimetre, -100, 100, "a place is within 100 m of the origin"}
	shift     = measure{quantity.Length, quantity.Millimetre, -10, 10, "a shift is at most 10 m"}
	length    = measure{quantity.Length, quantity.Millimetre, 0, 100, "a length is 0 mm to 100 m"}
	size      = measure{quantity.Length, quantity.Millimetre, 1e-5, 10, "a size is 0.01 mm to 10 m"}
	mass      = measure{quantity.Mass, quantity.Kilogram, 0, 5000, "a mass is 0 kg to 5000 kg"}
	inertia   = measure{quantity.Inertia, quantity.KilogramSquareMetre, 0, 5000, "an inertia is 0 kg·m² to 5000 kg·m²"}
	density   = measure{quantity.LinearDensity, quantity.KilogramPerMetre, 0, 100, "a mass per metre is 0 kg/m to 100 kg/m"}
	angle     = measure{quantity.Angle, quantity.Degree, -8 * math.Pi, 8 * math.Pi, "an angle is at most four turns"}
	lean      = measure{quantity.Angle, quantity.Degree, -math.Pi / 2, math.Pi / 2, "a tilt is -90° to 90°"}
	pull      = measure{quantity.Force, quantity.Newton, 0, 1e6, "a force is 0 N to 1000 kN"}
	thrust    = measure{quantity.Force, quantity.Newton, -1e6, 1e6, "a force is at most 1000 kN"}
	moment    = measure{quantity.Moment, quantity.NewtonMetre, 0, 1e5, "a moment is 0 N·m to 100 kN·m"}
	twist     = measure{quantity.Moment, quantity.NewtonMetre, -1e5, 1e5, "a moment is at most 100 kN·m"}
	rate      = measure{quantity.Stiffness, quantity.NoUnit, 0, 1e7, "a spring rate is 0 N/mm to 10000 N/mm"}
	turnRate  = measure{quantity.TorsionStiffness, quantity.NoUnit, 0, 1e7, "a spring rate is 0 N·m/rad to 10000000 N·m/rad"}
	damping   = measure{quantity.Damping, quantity.NewtonSecondPerMetre, 0, 1e7, "a damping is 0 N·s/m to 10000000 N·s/m"}
	modulus   = measure{quantity.Modulus, quantity.Megapascal, 1, 1e9, "a shear modulus is 1 Pa to 1000 MPa"}
	friction  = measure{quantity.Ratio, quantity.One, 0, 2, "a friction coefficient is 0 to 2"}
	bushing   = measure{quantity.Ratio, quantity.One, 0, 1, "a bearing's friction coefficient is 0 to 1"}
	efficient = measure{quantity.Ratio, quantity.One, 0.05, 1, "an efficiency is 0.05 to 1 (5 % to 100 %)"}
	gearing   = measure{quantity.Ratio, quantity.One, -1000, 1000, "a gear ratio is -1000 to 1000"}
	count     = measure{quantity.Ratio, quantity.One, 1, 1000, "a count is 1 to 1000"}
)

// num is the place of a number in a plan. none stands for one not given, and
// reads as zero.
type num int

const none num = -1

// number is one number of the sheet with the range that keeps it meaningful.
type number struct {
	Measurement
	min, max float64
	line     int
}

// Measurement is one number of a sheet as one build uses it.
type Measurement struct {
	Name   string  // in words: "horn, forward", "arm, mass"
	Path   string  // where it stands: points.horn.x
	Value  float64 // SI
	Spread float64 // SI, ≥ 0: half-width after ±; 0 if none was given
	Unit   quantity.Unit
	How    string // how it was measured, if the sheet says so
}

// String writes the measurement with its unit: "horn, forward = -412±5 mm".
func (m Measurement) String() string {
	return fmt.Sprintf("%s = %v", m.Name, quantity.Quantity{Value: m.Value, Spread: m.Spread, Unit: m.Unit})
}

// number reads a number at n. It is either text, as `14 ± 1 kg`, or the group
// `{is: 14 ± 1 kg, how: hanging scale}`.
func (r *reader) number(n *node, m measure, label, what string) num {
	how := ""
	if n.kind == mapping {
		f := r.fields(n, what, "")
		value := f.must("is", "write the number after `is:`")
		how = f.words("how")
		f.close()
		if value == nil {
			return none
		}
		n = value
	}
	q, ok := r.quantity(n, m, what)
	if !ok {
		return none
	}
	r.measures[n.target()] = m
	r.plan.numbers = append(r.plan.numbers, number{
		Measurement: Measurement{Name: label, Path: n.path, Value: q.Value, Spread: q.Spread, Unit: q.Unit, How: how},
		min:         m.min, max: m.max, line: n.line,
	})
	return num(len(r.plan.numbers) - 1)
}

// quantity reads the text at n and reports whether it is within m.
func (r *reader) quantity(n *node, m measure, what string) (quantity.Quantity, bool) {
	if n.kind != scalar || n.text == "" {
		r.fault(n, fmt.Sprintf("%s is %s", what, seen(n)), m.limit, "write one number with its unit")
		return quantity.Quantity{}, false
	}
	q, err := quantity.Parse(n.text, m.dim, m.bare)
	if err != nil {
		limit, cure := numberCure(err, m)
		r.fault(n, fmt.Sprintf("%s is %s", what, seen(n)), limit, cure)
		return q, false
	}
	if !(q.Value >= m.min && q.Value <= m.max) || !(q.Spread >= 0 && q.Spread <= math.MaxFloat32) {
		r.fault(n, fmt.Sprintf("%s is %v", what, q), m.limit, "check the number and its unit")
		return q, false
	}
	return q, true
}

// numberCure tells what is wrong with a number's text and what to write.
func numberCure(err error, m measure) (limit, cure string) {
	var e *quantity.ParseError
	if errors.As(err, &e) {
		return "that " + strings.Replace(e.Problem, ", but ", " and ", 1), e.Cure
	}
	return m.limit, "write one number with its unit"
}
