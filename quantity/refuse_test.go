package quantity

import (
	"errors"
	"strings"
	"testing"
)

// Each text could be taken for something else than it means, or for nothing;
// the message has to carry the fragment that tells what to do.
var refused = []struct {
	text string
	want Dimension
	bare Unit
	cure string
}{
	// Nothing there, or too much.
	{"", Length, Millimetre, "write a number and its unit: mm, cm, m, in or ft"},
	{"   ", Mass, NoUnit, "kg, g or lb"},
	{"mm", Length, NoUnit, "where a number is needed"},
	{"-", Length, Millimetre, "write a number there"},
	{"±3 mm", Length, NoUnit, "write the value first"},
	{"812 mm ±", Length, NoUnit, "write a number there"},
	{"about 812 mm", Length, NoUnit, "has “a” where a number is needed"},
	{strings.Repeat("1", 65), Length, Millimetre, "at most 64 characters"},
	{"1" + strings.Repeat("é", 300), Length, Millimetre, "at most 64 characters"},

	// Numbers that can be read in two ways.
	{"1,234 mm", Length, NoUnit, "write 1234 or 1.234"},
	{"812±1,234 mm", Length, NoUnit, "write 1234 or 1.234"},
	{"12,345,678 mm", Length, NoUnit, "use one point"},
	{"1,234.5 mm", Length, NoUnit, "use one point"},
	{"1.234,5 mm", Length, NoUnit, "use one point"},
	{"1 234 mm", Length, NoUnit, "without a space"},
	{"1\u202f234 mm", Length, NoUnit, "without a space"},
	{"1'234 kg", Mass, NoUnit, "thousands without a mark"},
	{"1_000 mm", Length, NoUnit, "without it"},
	{"010 mm", Length, NoUnit, "octal (base 8): leave the leading zero out"},
	{"00.5 mm", Length, NoUnit, "leave the leading zero out"},
	{"0x1F mm", Length, NoUnit, "hexadecimal number: write it in ordinary decimal digits"},
	{"0o17 mm", Length, NoUnit, "octal number: write it in ordinary decimal digits"},
	{"0b11 mm", Length, NoUnit, "binary number: write it in ordinary decimal digits"},
	{"5. mm", Length, NoUnit, "put a digit after it"},
	{"5, mm", Length, NoUnit, "put a digit after it"},
	{"17-19 in", Length, NoUnit, "the middle and half the range"},
	{"17 in – 19 in", Length, NoUnit, "the middle and half the range"},
	{"5 ft -3 in", Length, NoUnit, "the middle and half the range"},
	{"1.2×10³ N", Force, NoUnit, "1.2e3"},
	{"1.2*10 N", Force, NoUnit, "1.2e3"},
	{"2:1", Ratio, NoUnit, "one number"},
	{"~812 mm", Length, NoUnit, "say how rough with ±"},
	{"≈812 mm", Length, NoUnit, "say how rough with ±"},

	// Fractions.
	{"17 1/0 in", Length, NoUnit, "2, 4, 8 or 16"},
	{"0/0 in", Length, NoUnit, "2, 4, 8 or 16"},
	{"17 3/2 in", Length, NoUnit, "write it as one number"},
	{"17 2/2 in", Length, NoUnit, "write it as one number"},
	{"17.5 1/2 in", Length, NoUnit, "two numbers side by side"},
	{"1/2 1/2 in", Length, NoUnit, "two numbers side by side"},

	// Not finite, or no measurement.
	{"inf mm", Length, NoUnit, "not a finite number: write a number"},
	{"-Infinity mm", Length, NoUnit, "not a finite number"},
	{"NaN", Length, Millimetre, "not a finite number"},
	{"∞ mm", Length, NoUnit, "not a finite number"},
	{"1e999 mm", Length, NoUnit, "check the number"},
	{"1e-999 mm", Length, NoUnit, "check the number"},
	{"1e16 mm", Length, NoUnit, "check the number"},
	{"6e-101 mm", Length, NoUnit, "check the number"},
	{"1.1e15 mm", Length, NoUnit, "check the number"},
	{"1 mm ± 1e300 %", Length, NoUnit, "check the number"},

	// The ± part.
	{"812±-3 mm", Length, NoUnit, "without a sign"},
	{"812 +/- +3 mm", Length, NoUnit, "without a sign"},
	{"812±3±2 mm", Length, NoUnit, "write one ±"},
	{"812 mm +3/-1", Length, NoUnit, "write one ±"},
	{"(812±3) mm", Length, NoUnit, "leave them out"},
	{"812(3) mm", Length, NoUnit, "leave them out"},
	{"0 mm ± 5 %", Length, NoUnit, "write the ± in mm"},
	{"812 mm ± 3 kg", Length, NoUnit, "mm, cm, m, in or ft"},
	{"45±5 %", Ratio, NoUnit, "write 45 % ± 5 %, or 45 ± 2.25"},
	{"2 ±5 %", Ratio, One, "write 2 % ± 5 %, or 2 ± 0.1"},

	// Units.
	{"812", Length, NoUnit, "write mm, cm, m, in or ft after the number"},
	{"812 ± 0.5 %", Length, NoUnit, "write mm, cm, m, in or ft after the number"},
	{"812 kg", Length, NoUnit, `"812 kg" is a mass, but a length is wanted here: write mm, cm, m, in or ft`},
	{"812", Length, Kilogram, "mm, cm, m, in or ft"},
	{"20 kg", Force, NoUnit, "write kgf for what a hanging scale in kg shows, or N"},
	{"45 lbs", Force, NoUnit, "write lbf for what a hanging scale in lb shows, or N"},
	{"20 kgf", Mass, NoUnit, "write kg for what is weighed"},
	{"45 lbf", Mass, NoUnit, "write lb for what is weighed"},
	{"500 g", Force, NoUnit, "N, kN, kgf or lbf"},
	{"1.4 kg/m", Stiffness, NoUnit, "N/mm, N/m or lbf/in"},
	{"2 lb/in", LinearDensity, NoUnit, "kg/m or lb/ft"},
	{"60 Nm", TorsionStiffness, NoUnit, "Nm/deg, Nm/rad or lbf in/deg"},
	{"45 %", Mass, NoUnit, "kg, g or lb"},
	{"2 mm", Ratio, NoUnit, "a plain number or %"},
	{"812 mn", Length, NoUnit, "did you mean mm?"},
	{"812 milimeters", Length, NoUnit, "did you mean mm?"},
	{"20 gk", Mass, NoUnit, "did you mean kg?"},
	{"45 lbd", Mass, NoUnit, "did you mean lb?"},
	{"20 newtn", Force, NoUnit, "did you mean N?"},
	{"90 degres", Angle, NoUnit, "did you mean deg?"},
	{"2 N/nm", Stiffness, NoUnit, "did you mean N/mm?"},
	{"5 ftxy", Length, NoUnit, "write mm, cm, m, in or ft"}, // two slips in four letters
	{"5 x", Length, NoUnit, "write mm, cm, m, in or ft"},
	{"5 furlongs", Length, NoUnit, "write mm, cm, m, in or ft"},
	{"5 " + strings.Repeat("m", 40), Length, NoUnit, "write mm, cm, m, in or ft"},
	{"5 m m", Length, NoUnit, "m m, which is not known"},
	{"1.2 mPa", Modulus, NoUnit, "write MPa"},
	{"5 kg 300 g", Mass, NoUnit, "one number with one unit"},
	{"812 mm !", Length, NoUnit, "one number with one unit"},

	// Feet and inches.
	{"5'12\"", Length, NoUnit, "carry them into the feet"},
	{"5.5 ft 3 in", Length, NoUnit, "write whole feet"},
	{"5½ ft 3 in", Length, NoUnit, "write whole feet"},
	{"5 ft 11 cm", Length, NoUnit, "such as 5 ft 11 in"},
	{"5 ft.5 in", Length, NoUnit, "one number with one unit"},
	{"5'06\"", Length, NoUnit, "leave the leading zero out"},

	// Characters.
	{"812\nmm", Length, NoUnit, "one line"},
	{"812\x00mm", Length, NoUnit, "one line"},
	{"812 \xff\xfe", Length, NoUnit, "type it again"},
	{"812 mm 🙂", Length, NoUnit, "leave it out"},
	{"８１２ mm", Length, NoUnit, "leave it out"},
}

func TestParseRefuses(t *testing.T) {
	for _, row := range refused {
		q, err := Parse(row.text, row.want, row.bare)
		if err == nil {
			t.Errorf("%q: read as %v, want it refused", row.text, q)
			continue
		}
		if q != (Quantity{}) {
			t.Errorf("%q: refused, but returned %v", row.text, q)
		}
		checkSentence(t, err)
		if !strings.Contains(err.Error(), row.cure) {
			t.Errorf("%q: message\n\t%v\nlacks %q", row.text, err, row.cure)
		}
	}
}

// checkSentence checks the form every message has.
func checkSentence(t *testing.T, err error) {
	t.Helper()
	var fault *ParseError
	if !errors.As(err, &fault) {
		t.Fatalf("%v is a %T, want a *ParseError", err, err)
	}
	text := err.Error()
	foreign := strings.Contains(fault.Problem+fault.Cure, string(plusMinus))
	if fault.Problem == "" || fault.Cure == "" || foreign || strings.ContainsAny(text, "\n\x00") || strings.HasSuffix(text, ".") {
		t.Errorf("%q is not one sentence of problem and cure", text)
	}
}
