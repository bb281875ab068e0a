package quantity

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

func TestString(t *testing.T) {
	for _, row := range []struct {
		q    Quantity
		want string
	}{
		{Of(812, 3, Millimetre), "812±3 mm"},
		{Of(812, 0, Millimetre), "812 mm"},
		{Quantity{Value: 0.812, Spread: 0.00406, Unit: Millimetre}, "812±4.06 mm"},
		{Of(-17.5, 0.125, Inch), "-17.5±0.125 in"},
		{Of(12.5, 0.5, Degree), "12.5±0.5°"}, // no space before °, NIST SP 811 (2008), 7.2
		{Of(2, 0.1, NewtonMetrePerDegree), "2±0.1 N·m/°"},
		{Of(50, 5, Percent), "50 % ± 5 %"},
		{Of(0.15, 0.02, One), "0.15±0.02"},
		{Of(1e14, 0, Pascal), "1e+14 Pa"},
		{Of(1.0/3, 0, Second), "0.33333333333333 s"},
		{Of(71, 0, FootInch), "5 ft 11 in"},
		{Of(71.5, 0.25, FootInch), "5 ft 11.5±0.25 in"},
		{Of(71.1, 0, FootInch), "5 ft 11.1 in"}, // not 11.099999999999994
		{Of(-14, 0, FootInch), "-1 ft 2 in"},
		{Of(3, 0, FootInch), "0 ft 3 in"},
		{Of(72-1e-13, 0, FootInch), "6 ft 0 in"}, // never 5 ft 12 in
		{Of(1e14, 0, FootInch), "1e+14 in"},
		{Quantity{}, "0"},
	} {
		if got := row.q.String(); got != row.want {
			t.Errorf("got %q, want %q", got, row.want)
		}
	}
}

func TestFormat(t *testing.T) {
	for _, row := range []struct {
		q      Quantity
		system System
		want   string
	}{
		// The rule of the Particle Data Group. Rows marked STAR are printed
		// examples from the STAR Collaboration's note on significant digits,
		// which quotes the rule; those marked PDG stand in the Review itself
		// (from memory); the others follow from its wording.
		{Of(0.279008, 0.000766099, One), Metric, "0.2790±0.0008"}, // STAR
		{Of(0.279008, 0.0123261, One), Metric, "0.279±0.012"},     // STAR
		{Of(0.827, 0.119, One), Metric, "0.83±0.12"},              // PDG
		{Of(0.827, 0.367, One), Metric, "0.8±0.4"},                // PDG
		{Of(5.1234, 0.0354, One), Metric, "5.123±0.035"},
		{Of(5.1234, 0.0355, One), Metric, "5.12±0.04"},
		{Of(5.1234, 0.0949, One), Metric, "5.12±0.09"},
		{Of(5.1234, 0.0951, One), Metric, "5.12±0.10"},
		{Of(812, 3, Millimetre), Metric, "812±3 mm"},
		{Of(812, 1, Millimetre), Metric, "812±1 mm"}, // both zeros left out
		{Of(812.4, 1, Millimetre), Metric, "812.4±1.0 mm"},
		{Of(12345, 3000, Newton), Metric, "12345±3000 N"}, // whole units stay
		{Of(-0.001, 0.5, Degree), Metric, "0.0±0.5°"},     // never -0.0
		{Of(50, 5, Percent), Metric, "50 % ± 5 %"},

		// No spread: four digits.
		{Of(812, 0, Millimetre), Metric, "812 mm"},
		{Of(0.123456, 0, Metre), Metric, "0.1235 m"},
		{Of(999.96, 0, Newton), Metric, "1000 N"},
		{Of(12345, 0, Millimetre), Metric, "12345 mm"},
		{Of(0, 0, Millimetre), Metric, "0 mm"},
		{Of(1.2346e-9, 0, Metre), Metric, "1.235e-09 m"},

		// The other system. Factors: 25.4 mm, 0.45359237 kg, 4.4482216 N,
		// 175.12684 N/m, 1.3558179 N·m, 1.4881639 kg/m, 6894.7573 Pa.
		{Of(812, 3, Millimetre), Imperial, "31.97±0.12 in"}, // 31.9685 ± 0.1181
		{Of(20, 0, Kilogram), Imperial, "44.09 lb"},         // 44.0925
		{Of(812, 5, Newton), Imperial, "182.5±1.1 lbf"},     // 182.545 ± 1.124
		{Of(20, 0, KilogramForce), Imperial, "44.09 lbf"},   // 44.0925
		{Of(20, 0, KilogramForce), Metric, "20 kgf"},
		{Of(2, 0, NewtonPerMillimetre), Imperial, "11.42 lbf/in"},   // 2000/175.12684 = 11.4203
		{Of(60, 0, NewtonMetre), Imperial, "44.25 lbf·ft"},          // 44.2537
		{Of(1.4, 0, KilogramPerMetre), Imperial, "0.9408 lb/ft"},    // 0.94076
		{Of(1, 0, Megapascal), Imperial, "145 psi"},                 // 145.038
		{Of(2, 0, NewtonMetrePerDegree), Imperial, "17.7 lbf·in/°"}, // 2/0.11298483 = 17.7015
		{Of(12.5, 0.5, Degree), Imperial, "12.5±0.5°"},
		{Of(0.12, 0, KilogramSquareMetre), Imperial, "0.12 kg·m²"},
		{Of(180, 0, Centimetre), Imperial, "70.87 in"},    // 70.8661
		{Of(2, 0.01, Metre), Imperial, "6 ft 6.7±0.4 in"}, // 78.7402 ± 0.3937
		{Of(45, 0, Pound), Metric, "20.41 kg"},            // 20.4117
		{Of(17.5, 0, Inch), Metric, "444.5 mm"},
		{Of(71, 0, FootInch), Metric, "180.3 cm"}, // 180.34
		{Of(71, 0.5, FootInch), Imperial, "5 ft 11.0±0.5 in"},
	} {
		if got := row.q.Format(row.system); got != row.want {
			t.Errorf("%v: got %q, want %q", row.q, got, row.want)
		}
	}
}

func TestQuantityIn(t *testing.T) {
	q := Of(71, 0.5, FootInch)
	if got := q.In(Centimetre); !near(got, 180.34, 1e-15) { // 71 × 2.54
		t.Errorf("71 in = %.17g cm, want 180.34", got)
	}
	if got := q.Standard(); !near(got, 0.00635, 1e-15) { // half of 12.7 mm, k = 2
		t.Errorf("standard uncertainty of ±0.5 in = %.17g m, want 0.00635", got)
	}

	defer func() {
		if text, _ := recover().(string); !strings.Contains(text, "5 ft 11") {
			t.Errorf("a length told in kilograms: panic with %q, want one that names the length", text)
		}
	}()
	q.In(Kilogram)
}

// TestRoundTrip writes seeded random quantities of every unit and size, reads
// them back, and writes them again; so too the limits of what Parse accepts.
func TestRoundTrip(t *testing.T) {
	random := rand.New(rand.NewPCG(1959, 254))
	for i := range units {
		u := Unit(i)
		if u == NoUnit {
			continue
		}
		checkRoundTrip(t, Of(largest, smallest, u))
		for range 200 {
			value := (2*random.Float64() - 1) * math.Pow(10, random.Float64()*28-14)
			spread := 0.0
			if random.IntN(3) > 0 {
				spread = random.Float64() * math.Pow(10, random.Float64()*28-14)
			}
			checkRoundTrip(t, Of(value, spread, u))
		}
	}
}

// checkRoundTrip checks that q reads back to itself from its String within
// 1e-12, and that the text does not change again.
func checkRoundTrip(t *testing.T, q Quantity) {
	t.Helper()
	text := q.String()
	back, err := Parse(text, q.Unit.Dimension(), NoUnit)
	if err != nil {
		t.Errorf("%q, written for %#v, is refused: %v", text, q, err)
		return
	}
	if !near(back.Value, q.Value, 1e-12) || !near(back.Spread, q.Spread, 1e-12) {
		t.Errorf("%q reads back as %.17g ± %.17g, was %.17g ± %.17g", text, back.Value, back.Spread, q.Value, q.Spread)
	}
	if again := back.String(); again != text {
		t.Errorf("%q is written %q the second time", text, again)
	}
}

// FuzzParse feeds any text to Parse. It must not panic; what it accepts must be
// finite and read back the same from String; what it refuses must be refused in
// a proper sentence.
func FuzzParse(f *testing.F) {
	for _, row := range refused {
		f.Add(row.text, uint8(row.want), uint8(row.bare))
	}
	for _, text := range []string{"812±3 mm", "5'11\"", "17-1/2 in ± 1/8\"", "12,5 cm ± 0.5 %", "1.2e-3 m +/- 1 mm"} {
		f.Add(text, uint8(Length), uint8(Millimetre))
	}
	for _, row := range units {
		f.Add("2.5±0.1 "+row.symbol, uint8(row.dimension), uint8(One))
	}

	f.Fuzz(func(t *testing.T, text string, want, bare uint8) {
		q, err := Parse(text, Dimension(want), Unit(bare%uint8(len(units))))
		if err != nil {
			checkSentence(t, err)
			return
		}
		if math.IsNaN(q.Value-q.Value) || math.IsNaN(q.Spread-q.Spread) || q.Spread < 0 {
			t.Fatalf("%q: read as %v ± %v", text, q.Value, q.Spread)
		}
		if q.Unit.Dimension() != Dimension(want) {
			t.Fatalf("%q: read as %v, want %v", text, q.Unit.Dimension(), Dimension(want))
		}
		checkRoundTrip(t, q)
		for _, s := range []System{Metric, Imperial} {
			if shown := q.Format(s); shown == "" || strings.Contains(shown, "NaN") || strings.Contains(shown, "Inf") {
				t.Fatalf("%q: shown as %q", text, shown)
			}
		}
	})
}

func BenchmarkParse(b *testing.B) {
	for _, row := range []struct {
		name, text string
		want       Dimension
	}{
		{"plain", "812 mm", Length},
		{"band", "812±3 mm", Length},
		{"fraction", "17 1/2 in", Length},
		{"feet", `5' 11 1/2" ± 1/4"`, Length},
		{"product", "2,5 N·m/°", TorsionStiffness},
	} {
		b.Run(row.name, func(b *testing.B) {
			b.ReportAllocs()
			var q Quantity
			for b.Loop() {
				var err error
				if q, err = Parse(row.text, row.want, NoUnit); err != nil {
					b.Fatal(err)
				}
			}
			if q.Value == 0 {
				b.Fatal("nothing read")
			}
		})
	}
}

func BenchmarkParseRefusal(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Parse("812 milimeters", Length, NoUnit); err == nil {
			b.Fatal("accepted")
		}
	}
}

func BenchmarkString(b *testing.B) {
	b.ReportAllocs()
	q, n := Of(812, 3, Millimetre), 0
	for b.Loop() {
		n += len(q.String())
	}
	if n == 0 {
		b.Fatal("nothing written")
	}
}
