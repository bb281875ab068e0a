package quantity

import (
	"math"
	"strconv"
)

// System is the system of units a reader thinks in.
type System uint8

// The systems. Angles, times, ratios, moments of inertia and dampings are shown
// alike in both.
const (
	Metric System = iota
	Imperial
)

// For returns the unit in which a reader in system s wants what was written in
// u: u itself, or its counterpart, such as inches for millimetres.
func (u Unit) For(s System) Unit {
	if row := &units[u]; row.system != s && row.other != NoUnit {
		return row.other
	}
	return u
}

// Format returns q for reading in system s, rounded: "31.97±0.12 in". The
// written unit is kept where it belongs to s, see [Unit.For].
//
// With a spread, the spread is rounded to one or two significant digits and the
// value to the same place, by the rule of the Particle Data Group: two digits
// if its first three are 100 to 354, one if they are 355 to 949, and 950 to 999
// become 1000 with two digits. Without one, the value is rounded to four
// significant digits. Whole units are never rounded away, and zeros that end
// both numbers after the point are left out.
//
// Source: Particle Data Group, "Review of Particle Physics", Phys. Rev. D 98
// (2018) 030001, Introduction 5.3. JCGM 100:2008, 7.2.6, allows at most two
// digits in a spread.
func (q Quantity) Format(s System) string {
	u := q.Unit.For(s)
	value, spread := u.FromSI(q.Value), u.FromSI(q.Spread)
	places := decimals(value, spread)

	return string(assemble(value, spread, u, func(dst []byte, x float64) []byte {
		if places > mostDecimals {
			return strconv.AppendFloat(dst, x, 'g', plainDigits, 64)
		}
		if math.Abs(x) < 0.5*math.Pow10(-places) {
			x = 0 // never -0
		}
		return strconv.AppendFloat(dst, x, 'f', places, 64)
	}))
}

// plainDigits is the number of significant digits shown of a value without a
// spread: enough to tell 1001 mm from 1000 mm, finer than a tape or a hanging
// scale resolves.
const plainDigits = 4

// mostDecimals is the number of decimal places past which Format changes to an
// exponent.
const mostDecimals = 9

// decimals returns the number of decimal places to which Format rounds.
func decimals(value, spread float64) int {
	places := plainDigits - 1 - exponent(value)
	if spread > 0 {
		e := exponent(spread)
		places = -e
		if spread < 3.55*math.Pow10(e) {
			places++
		}
	}

	places = max(places, 0)
	for places > 0 && places <= mostDecimals && endsInZero(value, places) && endsInZero(spread, places) {
		places--
	}
	return places
}

// exponent returns the power of ten of the first significant digit of x, 0 for
// zero.
func exponent(x float64) int {
	if x == 0 {
		return 0
	}
	return int(math.Floor(math.Log10(math.Abs(x))))
}

// endsInZero reports whether x written to that many decimal places ends in 0.
func endsInZero(x float64, places int) bool {
	var room [32]byte
	text := strconv.AppendFloat(room[:0], x, 'f', places, 64)
	return text[len(text)-1] == '0'
}
