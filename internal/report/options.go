package report

import (
	"math"
	"strconv"
	"time"

	"steelyard/evaluation"
	"steelyard/internal/draw"
	"steelyard/quantity"
)

// Options says for whom a report is written. The zero value is metric, on white
// paper, undated.
type Options struct {
	Imperial bool      // lbf, in, lb instead of N, cm, kg
	Dark     bool      // pages in light on dark; the HTML report follows the reader's own setting
	Date     time.Time // printed with the report; zero leaves it out
	Bold     bool      // terminal only: headings in bold, by escape codes
}

// units writes quantities for one reader: in sentences with their unit, in
// columns without.
type units struct {
	evaluation.Formatter
	system              quantity.System
	force, length, mass quantity.Unit
}

func (o Options) units() units {
	if o.Imperial {
		return units{evaluation.Imperial{}, quantity.Imperial, quantity.PoundForce, quantity.Inch, quantity.Pound}
	}
	return units{evaluation.Metric{}, quantity.Metric, quantity.Newton, quantity.Centimetre, quantity.Kilogram}
}

func (o Options) theme() draw.Theme {
	if o.Dark {
		return draw.Dark
	}
	return draw.Light
}

// column writes x, in SI, as a bare number of units u: whole from 100 up, with
// one decimal below.
func column(x float64, u quantity.Unit) string {
	v := u.FromSI(x)
	if math.Abs(v) >= 99.95 {
		return decimal(v, 0)
	}
	return decimal(v, 1)
}

// decimal writes x with so many decimal places, and no minus before a zero.
func decimal(x float64, places int) string {
	ten := math.Pow10(places)
	return strconv.FormatFloat(math.Round(x*ten)/ten+0, 'f', places, 64)
}

func percent(share float64) string { return decimal(100*share, 0) + " %" }

// every converts a column from SI, keeping gaps.
func every(xs []float64, u quantity.Unit) []float64 {
	out := make([]float64, len(xs))
	for i, x := range xs {
		out[i] = u.FromSI(x)
	}
	return out
}

// titled puts a unit behind a quantity: "Travel (cm)".
func titled(name string, u quantity.Unit) string { return name + " (" + u.Symbol() + ")" }
