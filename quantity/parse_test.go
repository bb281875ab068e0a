package quantity

import (
	"math"
	"testing"
)

// The SI values are exact products with 25.4 mm, 0.45359237 kg, 9.80665 N and
// π/180 (unit.go has the sources), worked out by hand beside each row.
func TestParse(t *testing.T) {
	const degree = math.Pi / 180
	for _, row := range []struct {
		text          string
		want          Dimension
		bare          Unit
		value, spread float64
		unit          Unit
	}{
		// A unit after either number, or after both.
		{"812±3 mm", Length, NoUnit, 0.812, 0.003, Millimetre},
		{"812 mm ± 3", Length, NoUnit, 0.812, 0.003, Millimetre},
		{"812mm±3mm", Length, NoUnit, 0.812, 0.003, Millimetre},
		{"1.2 m ± 5 mm", Length, NoUnit, 1.2, 0.005, Metre},
		{"812±3", Length, Millimetre, 0.812, 0.003, Millimetre},
		{"812 ± 0.3 cm", Length, Millimetre, 8.12, 0.003, Centimetre},

		// Ways to write ±.
		{"812 +/- 3 mm", Length, NoUnit, 0.812, 0.003, Millimetre},
		{"812+-3 mm", Length, NoUnit, 0.812, 0.003, Millimetre},
		{"812 mm +/−3", Length, NoUnit, 0.812, 0.003, Millimetre},
		{"812 mm ±0.5 %", Length, NoUnit, 0.812, 0.00406, Millimetre}, // 812/200
		{"812 mm±0.5%", Length, NoUnit, 0.812, 0.00406, Millimetre},
		{"812 ±0.5 % mm", Length, NoUnit, 0.812, 0.00406, Millimetre},
		{"812 ± 0.5 %", Length, Millimetre, 0.812, 0.00406, Millimetre},
		{"-812 mm ± 0.5 %", Length, NoUnit, -0.812, 0.00406, Millimetre},
		{"812±0 mm", Length, NoUnit, 0.812, 0, Millimetre},
		{"0±3 mm", Length, NoUnit, 0, 0.003, Millimetre},

		// Numbers.
		{"-5 mm", Length, NoUnit, -0.005, 0, Millimetre},
		{"−5 mm", Length, NoUnit, -0.005, 0, Millimetre},
		{"+5 mm", Length, NoUnit, 0.005, 0, Millimetre},
		{"-0 mm", Length, NoUnit, 0, 0, Millimetre},
		{".5 in", Length, NoUnit, 0.0127, 0, Inch},
		{"2,5 kg", Mass, NoUnit, 2.5, 0, Kilogram},
		{"0,125 in", Length, NoUnit, 0.003175, 0, Inch}, // 25.4/8
		{"1234,567 mm", Length, NoUnit, 1.234567, 0, Millimetre},
		{"1.234 mm", Length, NoUnit, 0.001234, 0, Millimetre},
		{"1.2e3 N", Force, NoUnit, 1200, 0, Newton},
		{"1,2E+3N", Force, NoUnit, 1200, 0, Newton},
		{"25e-1 kg", Mass, NoUnit, 2.5, 0, Kilogram},

		// Fractions.
		{"17 1/2 in", Length, NoUnit, 0.4445, 0, Inch},
		{"17-1/2 in", Length, NoUnit, 0.4445, 0, Inch},
		{"17½ in", Length, NoUnit, 0.4445, 0, Inch},
		{"17 ½″", Length, NoUnit, 0.4445, 0, Inch},
		{"-17 1/2 in", Length, NoUnit, -0.4445, 0, Inch},
		{"¼ in", Length, NoUnit, 0.00635, 0, Inch},
		{"3¾ in", Length, NoUnit, 0.09525, 0, Inch},
		{"35/2 in ± 1/8 in", Length, NoUnit, 0.4445, 0.003175, Inch},
		{"17 7⁄16 in", Length, NoUnit, 0.4429125, 0, Inch}, // 17.4375 × 25.4
		{"1/2 turn", Angle, NoUnit, math.Pi, 0, Turn},

		// Feet and inches.
		{"5 ft 11 in", Length, NoUnit, 1.8034, 0, FootInch}, // 71 × 25.4
		{"5'11\"", Length, NoUnit, 1.8034, 0, FootInch},
		{"5′11″", Length, NoUnit, 1.8034, 0, FootInch},
		{"5’11”", Length, NoUnit, 1.8034, 0, FootInch},
		{"5'-11''", Length, NoUnit, 1.8034, 0, FootInch},
		{"5ft11in", Length, NoUnit, 1.8034, 0, FootInch},
		{"5 feet 11 inches", Length, NoUnit, 1.8034, 0, FootInch},
		{"5' 11", Length, NoUnit, 1.8034, 0, FootInch},
		{"5' 11 1/2\" ± 1/4\"", Length, NoUnit, 1.8161, 0.00635, FootInch},
		{"5 ft 11±0.5 in", Length, NoUnit, 1.8034, 0.0127, FootInch},
		{"-1 ft 2 in", Length, NoUnit, -0.3556, 0, FootInch}, // 14 × 25.4
		{"6'", Length, NoUnit, 1.8288, 0, Foot},              // 72 × 25.4
		{"71", Length, FootInch, 1.8034, 0, FootInch},

		// Spoken forms and capitals.
		{"812 MM", Length, NoUnit, 0.812, 0, Millimetre},
		{"20 Kg", Mass, NoUnit, 20, 0, Kilogram},
		{"45 LBS", Mass, NoUnit, 20.41165665, 0, Pound},
		{"45 lbs.", Mass, NoUnit, 20.41165665, 0, Pound},
		{"45 pounds", Mass, NoUnit, 20.41165665, 0, Pound},
		{"17.5 inches", Length, NoUnit, 0.4445, 0, Inch},
		{"17.5 in.", Length, NoUnit, 0.4445, 0, Inch},
		{"90 degrees", Angle, NoUnit, math.Pi / 2, 0, Degree},
		{"500 grams", Mass, NoUnit, 0.5, 0, Gram},
		{" \t812\u00a0mm\n", Length, NoUnit, 0.812, 0, Millimetre},

		// One of each dimension.
		{"20 kgf", Force, NoUnit, 196.133, 0, KilogramForce},
		{"0.5 kN", Force, NoUnit, 500, 0, Kilonewton},
		{"10 lbf", Force, NoUnit, 44.482216152605, 0, PoundForce},
		{"12.5±0.5°", Angle, NoUnit, 12.5 * degree, 0.5 * degree, Degree},
		{"-12,5 deg", Angle, NoUnit, -12.5 * degree, 0, Degree},
		{"1.5 rad", Angle, NoUnit, 1.5, 0, Radian},
		{"2 turns", Angle, NoUnit, 4 * math.Pi, 0, Turn},
		{"1.5 s", Time, NoUnit, 1.5, 0, Second},
		{"250 ms", Time, NoUnit, 0.25, 0, Millisecond},
		{"2 min", Time, NoUnit, 120, 0, Minute},
		{"2 N/mm", Stiffness, NoUnit, 2000, 0, NewtonPerMillimetre},
		{"2 N / m", Stiffness, NoUnit, 2, 0, NewtonPerMetre},
		{"10 lb/in", Stiffness, NoUnit, 1751.2683524647636, 0, PoundForcePerInch},  // GNU units 2.22
		{"10 lbf/in", Stiffness, NoUnit, 1751.2683524647636, 0, PoundForcePerInch}, // GNU units 2.22
		{"2 Nm/deg", TorsionStiffness, NoUnit, 360 / math.Pi, 0, NewtonMetrePerDegree},
		{"2 N·m/°", TorsionStiffness, NoUnit, 360 / math.Pi, 0, NewtonMetrePerDegree},
		{"2 N·m/rad", TorsionStiffness, NoUnit, 2, 0, NewtonMetrePerRadian},
		{"60 N·m", Moment, NoUnit, 60, 0, NewtonMetre},
		{"60 Nm", Moment, NoUnit, 60, 0, NewtonMetre},
		{"60 N m", Moment, NoUnit, 60, 0, NewtonMetre},
		{"60 N*m", Moment, NoUnit, 60, 0, NewtonMetre},
		{"10 ft-lb", Moment, NoUnit, 13.558179483314006, 0, PoundForceFoot}, // GNU units 2.22
		{"1.4 kg/m", LinearDensity, NoUnit, 1.4, 0, KilogramPerMetre},
		{"1 lb/ft", LinearDensity, NoUnit, 1.4881639435695539, 0, PoundPerFoot}, // GNU units 2.22
		{"0.12 kg·m²", Inertia, NoUnit, 0.12, 0, KilogramSquareMetre},
		{"0.12 kg m²", Inertia, NoUnit, 0.12, 0, KilogramSquareMetre},
		{"0.12 kg·m2", Inertia, NoUnit, 0.12, 0, KilogramSquareMetre},
		{"0.12 kgm2", Inertia, NoUnit, 0.12, 0, KilogramSquareMetre},
		{"0.12 kg m^2 ± 5 %", Inertia, NoUnit, 0.12, 0.006, KilogramSquareMetre},
		{"30 N·s/m", Damping, NoUnit, 30, 0, NewtonSecondPerMetre},
		{"30 N s/m", Damping, NoUnit, 30, 0, NewtonSecondPerMetre},
		{"1.2 MPa", Modulus, NoUnit, 1.2e6, 0, Megapascal},
		{"350 kPa", Modulus, NoUnit, 3.5e5, 0, Kilopascal},
		{"100 Pa", Modulus, NoUnit, 100, 0, Pascal},

		// Ratios: a percentage after ± counts in hundredths, not as a share.
		{"0.15", Ratio, NoUnit, 0.15, 0, One},
		{"0.15±0.02", Ratio, One, 0.15, 0.02, One},
		{"1/2", Ratio, NoUnit, 0.5, 0, One},
		{"45 %", Ratio, NoUnit, 0.45, 0, Percent},
		{"50 % ± 5 %", Ratio, NoUnit, 0.5, 0.05, Percent}, // unit on both numbers, NIST SP 811 (2008), 7.7
		{"50 % ± 5", Ratio, NoUnit, 0.5, 0.05, Percent},
		{"50", Ratio, Percent, 0.5, 0, Percent},
		{"50±5 %", Ratio, Percent, 0.5, 0.05, Percent},
	} {
		q, err := Parse(row.text, row.want, row.bare)
		if err != nil {
			t.Errorf("%q: %v", row.text, err)
			continue
		}
		if !near(q.Value, row.value, 1e-15) || !near(q.Spread, row.spread, 1e-15) || q.Unit != row.unit {
			t.Errorf("%q: got %.17g ± %.17g (SI) in %q, want %.17g ± %.17g in %q", row.text,
				q.Value, q.Spread, q.Unit.Symbol(), row.value, row.spread, row.unit.Symbol())
		}
		if q.Value == 0 && math.Signbit(q.Value) {
			t.Errorf("%q: got a negative zero", row.text)
		}
	}
}

// near reports whether got is want within the relative tolerance.
func near(got, want, tolerance float64) bool {
	return math.Abs(got-want) <= tolerance*math.Abs(want)
}
