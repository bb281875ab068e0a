package report

import (
	"math"
	"regexp"
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

// columnPlaces returns how many decimal places a column of the numbers xs, in
// SI, is written with in units u: none if one of them reaches 100, else one.
func columnPlaces(u quantity.Unit, columns ...[]float64) int {
	for _, xs := range columns {
		for _, x := range xs {
			if math.Abs(u.FromSI(x)) >= 99.95 {
				return 0
			}
		}
	}
	return 1
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

// nbsp keeps two words on one line.
const nbsp = "\u00a0"

var loose = regexp.MustCompile(`(\d) (lbf|lb|kg|mm|cm|ft·lbf|N|J|in|m|s|%)([ ,.;:)]|$)`)

// bound ties numbers to their units, so that no line ends between them.
func bound(s string) string { return loose.ReplaceAllString(s, "${1}"+nbsp+"${2}${3}") }

func boundAll(all []string) []string {
	out := make([]string, len(all))
	for i, s := range all {
		out[i] = bound(s)
	}
	return out
}
