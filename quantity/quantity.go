package quantity

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Quantity is a measured number.
type Quantity struct {
	Value  float64 // SI
	Spread float64 // SI, >= 0: the half-width written after ±; 0 if none was
	Unit   Unit    // as written; how the quantity is shown
}

// Coverage is the number of standard uncertainties in a Spread (see the
// package comment).
const Coverage = 2

// Of returns the quantity of value ± spread units u. For a value that is
// already in SI, fill in the struct.
func Of(value, spread float64, u Unit) Quantity {
	return Quantity{Value: u.ToSI(value), Spread: u.ToSI(spread), Unit: u}
}

// Standard returns the standard uncertainty in SI, half the spread; 0 if no
// spread is known.
func (q Quantity) Standard() float64 { return q.Spread / Coverage }

// In returns the value as a number of units u. It panics if u measures
// something else than q's unit does.
func (q Quantity) In(u Unit) float64 {
	if u.Dimension() != q.Unit.Dimension() {
		panic(fmt.Sprintf("quantity: %v cannot be told in %q", q, u.Symbol()))
	}
	return u.FromSI(q.Value)
}

// writtenDigits is the number of significant digits of String. Reading the text
// back and writing it again must not change it, so a digit of the 14th place,
// 1e-14 of the value at the least, has to exceed twice the five roundings of
// 1.1e-16 that reading, converting and converting back can add up to.
const writtenDigits = 14

// String returns q in the unit it was written in, to 14 significant digits
// without trailing zeros: "812±3 mm", "12.5°", "5 ft 11 in". Within its limits
// [Parse] reads it back to the same value and spread within 1e-13 of each.
func (q Quantity) String() string {
	value, spread := q.Unit.FromSI(q.Value), q.Unit.FromSI(q.Spread)
	return string(assemble(value, spread, q.Unit, func(dst []byte, x float64) []byte {
		return strconv.AppendFloat(dst, x, 'g', writtenDigits, 64)
	}))
}

// assemble returns value ± spread with the symbol of u, each number written by
// number. Both are numbers of units u.
//
// A space stands before the symbol, but not before the degree sign (NIST SP 811
// (2008), 7.2). The per cent sign follows both numbers, because 2±5 % could be
// taken for 2 give or take a twentieth.
func assemble(value, spread float64, u Unit, number func([]byte, float64) []byte) []byte {
	text := make([]byte, 0, 32)
	symbol := u.Symbol()
	if u == FootInch {
		text, value = appendFeet(text, value, number)
	}

	text = number(text, value)
	if spread > 0 {
		if u == Percent {
			text = append(text, " % ± "...)
		} else {
			text = append(text, "±"...)
		}
		text = number(text, spread)
	}
	if symbol != "" && u != Degree {
		text = append(text, ' ')
	}
	return append(text, symbol...)
}

// appendFeet appends the whole feet in a number of inches, with their sign, and
// returns the inches left over. Both come from the number as it would be
// written, so that 71.99… in becomes 6 ft 0 in, never 5 ft 12 in, and no digits
// come up that the whole number did not have. A number written with an exponent
// is left in inches.
func appendFeet(text []byte, inches float64, number func([]byte, float64) []byte) ([]byte, float64) {
	whole := string(number(nil, inches))
	if strings.ContainsAny(whole, "eNI") {
		return text, inches
	}
	decimals := 0
	if point := strings.IndexByte(whole, '.'); point >= 0 {
		decimals = len(whole) - point - 1
	}

	whole, negative := strings.CutPrefix(whole, "-")
	if negative {
		text = append(text, '-')
	}
	total, _ := strconv.ParseFloat(whole, 64)
	feet := math.Floor(total / 12)
	text = strconv.AppendFloat(text, feet, 'f', 0, 64)

	left, _ := strconv.ParseFloat(strconv.FormatFloat(total-12*feet, 'f', decimals, 64), 64)
	return append(text, " ft "...), left
}
