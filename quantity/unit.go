package quantity

import "math"

// Unit is a unit of measurement. The zero Unit, [NoUnit], is the absence of one.
type Unit uint8

// The units that can be read and written.
const (
	NoUnit Unit = iota
	One
	Percent

	Millimetre
	Centimetre
	Metre
	Inch
	Foot
	FootInch // whole feet and inches; its number is in inches

	Kilogram
	Gram
	Pound

	Newton
	Kilonewton
	KilogramForce
	PoundForce

	Degree
	Radian
	Turn

	Second
	Millisecond
	Minute

	NewtonPerMillimetre
	NewtonPerMetre
	PoundForcePerInch

	NewtonMetrePerDegree
	NewtonMetrePerRadian
	PoundForceInchPerDegree

	NewtonMetre
	PoundForceFoot
	PoundForceInch

	KilogramPerMetre
	PoundPerFoot

	KilogramSquareMetre

	NewtonSecondPerMetre

	Megapascal
	Kilopascal
	Pascal
	PoundPerSquareInch
)

// Exact factors, as whole numbers over a power of ten so that a decimal number
// of inches or pounds becomes the nearest float64 of its SI value.
//
// Sources: inch and pound, the 1959 agreement of the national standards
// laboratories, Federal Register 24 (1959) p. 5348: 1 yd = 0.9144 m and
// 1 lb = 0.453 592 37 kg, both exact. Standard gravity 9.806 65 m/s², 3rd CGPM
// (1901), exact; it makes 1 kgf = 9.806 65 N and 1 lbf = 0.453 592 37 kgf =
// 4.448 221 615 260 5 N, both exact. 1 turn = 2π rad = 360°.
const (
	inch       = 254             // 1e-4 m
	foot       = 12 * inch       // 1e-4 m
	pound      = 45359237        // 1e-8 kg
	gravity    = 980665          // 1e-5 m/s²
	poundForce = pound * gravity // 1e-13 N
)

// units holds for each unit the symbol it is shown by, the way it is easiest
// typed ("" if it is not offered), its size in SI, num/den, and the unit in
// which a reader of the other system wants it (NoUnit if in the same).
var units = [...]struct {
	symbol, typed string
	dimension     Dimension
	num, den      float64
	system        System
	other         Unit
}{
	NoUnit:  {"", "", 0, 1, 1, Metric, NoUnit},
	One:     {"", "a plain number", Ratio, 1, 1, Metric, NoUnit},
	Percent: {"%", "%", Ratio, 1, 100, Metric, NoUnit},

	Millimetre: {"mm", "mm", Length, 1, 1000, Metric, Inch},
	Centimetre: {"cm", "cm", Length, 1, 100, Metric, Inch},
	Metre:      {"m", "m", Length, 1, 1, Metric, FootInch},
	Inch:       {"in", "in", Length, inch, 1e4, Imperial, Millimetre},
	Foot:       {"ft", "ft", Length, foot, 1e4, Imperial, Metre},
	FootInch:   {"in", "", Length, inch, 1e4, Imperial, Centimetre},

	Kilogram: {"kg", "kg", Mass, 1, 1, Metric, Pound},
	Gram:     {"g", "g", Mass, 1, 1000, Metric, Pound},
	Pound:    {"lb", "lb", Mass, pound, 1e8, Imperial, Kilogram},

	Newton:        {"N", "N", Force, 1, 1, Metric, PoundForce},
	Kilonewton:    {"kN", "kN", Force, 1000, 1, Metric, PoundForce},
	KilogramForce: {"kgf", "kgf", Force, gravity, 1e5, Metric, PoundForce},
	PoundForce:    {"lbf", "lbf", Force, poundForce, 1e13, Imperial, Newton},

	Degree: {"°", "deg", Angle, math.Pi, 180, Metric, NoUnit},
	Radian: {"rad", "rad", Angle, 1, 1, Metric, NoUnit},
	Turn:   {"turn", "turn", Angle, 2 * math.Pi, 1, Metric, NoUnit},

	Second:      {"s", "s", Time, 1, 1, Metric, NoUnit},
	Millisecond: {"ms", "ms", Time, 1, 1000, Metric, NoUnit},
	Minute:      {"min", "min", Time, 60, 1, Metric, NoUnit},

	NewtonPerMillimetre: {"N/mm", "N/mm", Stiffness, 1000, 1, Metric, PoundForcePerInch},
	NewtonPerMetre:      {"N/m", "N/m", Stiffness, 1, 1, Metric, PoundForcePerInch},
	PoundForcePerInch:   {"lbf/in", "lbf/in", Stiffness, poundForce, 1e9 * inch, Imperial, NewtonPerMillimetre},

	NewtonMetrePerDegree: {"N·m/°", "Nm/deg", TorsionStiffness, 180, math.Pi, Metric, PoundForceInchPerDegree},
	NewtonMetrePerRadian: {"N·m/rad", "Nm/rad", TorsionStiffness, 1, 1, Metric, PoundForceInchPerDegree},
	PoundForceInchPerDegree: {"lbf·in/°", "lbf in/deg", TorsionStiffness,
		poundForce * inch * 180, 1e17 * math.Pi, Imperial, NewtonMetrePerDegree},

	NewtonMetre:    {"N·m", "Nm", Moment, 1, 1, Metric, PoundForceFoot},
	PoundForceFoot: {"lbf·ft", "lbf ft", Moment, poundForce * foot, 1e17, Imperial, NewtonMetre},
	PoundForceInch: {"lbf·in", "lbf in", Moment, poundForce * inch, 1e17, Imperial, NewtonMetre},

	KilogramPerMetre: {"kg/m", "kg/m", LinearDensity, 1, 1, Metric, PoundPerFoot},
	PoundPerFoot:     {"lb/ft", "lb/ft", LinearDensity, pound, 1e4 * foot, Imperial, KilogramPerMetre},

	KilogramSquareMetre: {"kg·m²", "kg m2", Inertia, 1, 1, Metric, NoUnit},

	NewtonSecondPerMetre: {"N·s/m", "N s/m", Damping, 1, 1, Metric, NoUnit},

	Megapascal:         {"MPa", "MPa", Modulus, 1e6, 1, Metric, PoundPerSquareInch},
	Kilopascal:         {"kPa", "kPa", Modulus, 1e3, 1, Metric, PoundPerSquareInch},
	Pascal:             {"Pa", "Pa", Modulus, 1, 1, Metric, PoundPerSquareInch},
	PoundPerSquareInch: {"psi", "psi", Modulus, poundForce, 1e5 * inch * inch, Imperial, Kilopascal},
}

// Symbol returns the unit as it is printed after a number: "mm", "N·m", "°",
// and "" for [One] and [NoUnit].
func (u Unit) Symbol() string { return units[u].symbol }

// Dimension returns what u measures, 0 for [NoUnit].
func (u Unit) Dimension() Dimension { return units[u].dimension }

// ToSI returns x, a number of units u, in SI.
func (u Unit) ToSI(x float64) float64 { return x * units[u].num / units[u].den }

// FromSI returns x, in SI, as a number of units u.
func (u Unit) FromSI(x float64) float64 { return x * units[u].den / units[u].num }
