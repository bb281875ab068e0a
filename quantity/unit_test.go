package quantity

import (
	"math"
	"strings"
	"testing"
)

// TestFactorsByDefinition checks the sizes that a definition makes exact.
func TestFactorsByDefinition(t *testing.T) {
	for _, row := range []struct {
		number float64
		unit   Unit
		si     float64
	}{
		{1, Inch, 0.0254},                // 1959 agreement: 1 yd = 0.9144 m
		{36, Inch, 0.9144},               // the yard itself
		{1, Foot, 0.3048},                // a third of it
		{17.5, Inch, 0.4445},             // 17.5 × 25.4 mm
		{1, Pound, 0.45359237},           // 1959 agreement
		{45, Pound, 20.41165665},         // 45 × 0.45359237 kg
		{1, KilogramForce, 9.80665},      // 3rd CGPM (1901)
		{20, KilogramForce, 196.133},     // 20 × 9.80665 N
		{1, PoundForce, 4.4482216152605}, // 0.45359237 × 9.80665
		{812, Millimetre, 0.812},         // SI prefix
		{180, Degree, math.Pi},           // SI Brochure (2019), table 8
		{1, Turn, 2 * math.Pi},           // 360°
		{2, NewtonPerMillimetre, 2000},   // SI prefix
		{2.5, Megapascal, 2.5e6},         // SI prefix
		{50, Percent, 0.5},               // SI Brochure (2019), 5.4.7
		{1.5, Minute, 90},                // SI Brochure (2019), table 8
	} {
		if got := row.unit.ToSI(row.number); got != row.si {
			t.Errorf("%v %s: got %.17g, want %.17g in SI", row.number, row.unit.Symbol(), got, row.si)
		}
	}
}

// TestFactorsAgainstTables checks the derived sizes. The first column is from
// NIST SP 811 (2008), B.8, printed to seven digits; the second was computed by
// GNU units 2.22, which holds its own definitions.
func TestFactorsAgainstTables(t *testing.T) {
	for _, row := range []struct {
		unit      Unit
		nist, gnu float64
	}{
		{Pound, 0.4535924, 0.45359237},
		{PoundForce, 4.448222, 4.4482216152604996},
		{KilogramForce, 9.80665, 9.8066499999999994},
		{PoundForcePerInch, 175.1268, 175.12683524647636},
		{PoundForceFoot, 1.355818, 1.3558179483314006},
		{PoundForceInch, 0.1129848, 0.11298482902761672},
		{PoundPerSquareInch, 6894.757, 6894.7572931683599},
		{PoundPerFoot, 1.488164, 1.4881639435695539},
		{Degree, 0.01745329, 0.017453292519943295},
		{NewtonMetrePerDegree, 0, 57.295779513082323},
		{PoundForceInchPerDegree, 0, 6.4735538522896308},
		{Turn, 0, 6.2831853071795862},
	} {
		got := row.unit.ToSI(1)
		if d := math.Abs(got-row.gnu) / row.gnu; d > 1e-15 {
			t.Errorf("%s: got %.17g, GNU units %.17g, relative difference %.2g", row.unit.Symbol(), got, row.gnu, d)
		}
		// Half a unit of the seventh digit is at most 5e-7 of the number.
		if d := math.Abs(got-row.nist) / got; row.nist != 0 && d > 5e-7 {
			t.Errorf("%s: got %.17g, NIST %.7g, relative difference %.2g", row.unit.Symbol(), got, row.nist, d)
		}
	}
}

// TestUnitsAreComplete checks what the tables promise each other.
func TestUnitsAreComplete(t *testing.T) {
	forms := make(map[string]Unit)
	for _, row := range spoken {
		for form := range strings.FieldsSeq(row.forms) {
			if other, taken := forms[form]; taken {
				t.Errorf("form %q belongs to both %s and %s", form, other.Symbol(), row.unit.Symbol())
			}
			forms[form] = row.unit
			if key, fits := unitKey(nil, []byte(form)); string(key) != form || !fits {
				t.Errorf("form %q can never be found: its key is %q", form, key)
			}
		}
	}

	for i := range units {
		u, row := Unit(i), units[i]
		if u > One && (row.num <= 0 || row.den <= 0 || row.dimension == 0) {
			t.Errorf("unit %d (%q) has no size or no dimension", i, row.symbol)
		}
		if o := row.other; o != NoUnit && (o.Dimension() != u.Dimension() || units[o].system == row.system) {
			t.Errorf("%q cannot be shown as %q in the other system", row.symbol, o.Symbol())
		}
		if u <= Percent || u == FootInch { // not written in these forms
			continue
		}
		for _, text := range []string{"2 " + row.symbol, "2" + row.symbol, "2 " + row.typed, "2±1 " + strings.ToUpper(row.typed)} {
			if q, err := Parse(text, row.dimension, NoUnit); err != nil || q.Unit != u {
				t.Errorf("%q: read as %v, %v; want unit %q", text, q, err, row.symbol)
			}
		}
	}
}

func TestSlips(t *testing.T) {
	for _, row := range []struct {
		a, b string
		want int
	}{
		{"kg", "kg", 0},
		{"gk", "kg", 1},          // two neighbours swapped
		{"ki", "kg", 1},          // one changed
		{"newtn", "newton", 1},   // one left out
		{"", "mm", 2},            // two left out
		{"kitten", "sitting", 3}, // Levenshtein's textbook pair
		{"ca", "abc", 3},         // optimal alignment; the unrestricted distance is 2
	} {
		if got := slips(row.a, row.b); got != row.want {
			t.Errorf("slips(%q, %q) = %d, want %d", row.a, row.b, got, row.want)
		}
		if got := slips(row.b, row.a); got != row.want {
			t.Errorf("slips(%q, %q) = %d, want %d", row.b, row.a, got, row.want)
		}
	}
}
