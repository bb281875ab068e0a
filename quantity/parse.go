package quantity

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Parse reads text as a quantity of dimension want. A number without a unit is
// taken in bare; with [NoUnit] it is refused, except that a ratio may always be
// a plain number. The package comment describes what is read.
//
// Value and spread are finite, and each is 0 or has a magnitude of 1e-100
// to 1e15 in the quantity's unit. Errors are of type *[ParseError].
func Parse(text string, want Dimension, bare Unit) (Quantity, error) {
	if want == Ratio && bare == NoUnit {
		bare = One
	}

	var room [foldRoom]byte
	plain, fault := fold(room[:0], strings.TrimSpace(text))
	if fault == nil {
		s := scanner{text: bytes.Trim(plain, " "), want: want}
		var q Quantity
		if q, fault = s.quantity(bare); fault == nil {
			return q, nil
		}
	}
	fault.Text = shown(text)
	return Quantity{}, fault
}

// amount is a number and the unit right after it, NoUnit if there is none.
type amount struct {
	number float64
	unit   Unit
}

// quantity reads the whole text.
func (s *scanner) quantity(bare Unit) (Quantity, *ParseError) {
	if len(s.text) == 0 {
		return Quantity{}, refuse("is empty", "write a number and its unit: "+s.want.choices())
	}

	negative := s.sign()
	value, fault := s.amount()
	if fault != nil {
		return Quantity{}, fault
	}
	if negative && value.number != 0 {
		value.number = -value.number
	}
	if s.at == len(s.text) {
		return s.single(value, bare)
	}

	if !s.plusMinus() {
		return Quantity{}, s.leftover()
	}
	spread, fault := s.halfWidth()
	if fault != nil {
		return Quantity{}, fault
	}
	return s.banded(value, spread, bare)
}

// sign moves past a plus or minus, and reports a minus.
func (s *scanner) sign() bool {
	c := s.peek(0)
	if c == '-' || c == '+' && s.peek(1) != '-' && s.peek(1) != '/' {
		s.at++
		s.skipSpaces()
	}
	return c == '-'
}

// plusMinus moves past ±, +/- or +- and the spaces after it, if one is here.
func (s *scanner) plusMinus() bool {
	switch {
	case s.peek(0) == plusMinus:
		s.at++
	case s.peek(0) == '+' && s.peek(1) == '-':
		s.at += 2
	case s.peek(0) == '+' && s.peek(1) == '/' && s.peek(2) == '-':
		s.at += 3
	default:
		return false
	}
	s.skipSpaces()
	return true
}

// halfWidth reads what follows ±. In "0.5 % mm" it reads the share only.
func (s *scanner) halfWidth() (amount, *ParseError) {
	if c := s.peek(0); c == '-' || c == '+' {
		return amount{}, refuse("has a sign after ±", "write the ± part without a sign, such as ±3")
	}
	return s.amount()
}

// amount reads a number and its unit, or feet and inches.
func (s *scanner) amount() (amount, *ParseError) {
	x, plain, fault := s.number()
	if fault != nil {
		return amount{}, fault
	}
	u, fault := s.unit()
	if fault != nil || u != Foot || !s.beforeInches() {
		return amount{x, u}, fault
	}
	return s.inches(x, plain)
}

// beforeInches reports whether a number follows the feet, and moves to it. A
// dash without spaces may join them: 5'-11".
func (s *scanner) beforeInches() bool {
	if s.peek(0) == '-' && isDigit(s.peek(1)) && s.text[s.at-1] != ' ' {
		s.at++
	}
	return isDigit(s.peek(0))
}

// inches reads the inches after the feet.
func (s *scanner) inches(feet float64, plain bool) (amount, *ParseError) {
	x, _, fault := s.number()
	if fault != nil {
		return amount{}, fault
	}
	u, fault := s.unit()

	switch {
	case fault != nil:
		return amount{}, fault
	case u != NoUnit && u != Inch:
		return amount{}, refuse(fmt.Sprintf("has %s after feet", units[u].typed), "write feet and inches, such as 5 ft 11 in, and thousands without a mark")
	case !plain:
		return amount{}, refuse("has a broken number of feet before inches", "write whole feet, such as 5 ft 11 in, or inches alone")
	case x >= 12:
		return amount{}, refuse("has 12 or more inches after feet", "carry them into the feet, or write inches alone")
	}
	return amount{12*feet + x, FootInch}, nil
}

// single returns the quantity of an amount without ±.
func (s *scanner) single(a amount, bare Unit) (Quantity, *ParseError) {
	if a.unit == NoUnit {
		a.unit = bare
	}
	if fault := s.check(a.unit); fault != nil {
		return Quantity{}, fault
	}
	return s.finish(Quantity{Value: a.unit.ToSI(a.number), Unit: a.unit})
}

// banded returns value ± spread. A unit written once counts for both numbers. A
// percentage after ± is a share of the value, unless a ratio is wanted: then it
// is a number of hundredths, and the value has to be a percentage as well,
// since 2 ±5 % could mean 2 % give or take 5 % or 2 give or take a twentieth.
func (s *scanner) banded(value, spread amount, bare Unit) (Quantity, *ParseError) {
	share := spread.unit == Percent && s.want != Ratio
	if share && value.unit == NoUnit {
		u, fault := s.unit()
		if fault != nil {
			return Quantity{}, fault
		}
		value.unit = u
	}
	if s.at < len(s.text) {
		return Quantity{}, s.leftover()
	}

	if value.unit == NoUnit && !share && spread.unit != NoUnit {
		value.unit = spread.unit
		if spread.unit == Percent && bare != Percent {
			return Quantity{}, refuse("can be a percentage, or a plain number with a percentage of it after ±",
				fmt.Sprintf("write %g %% ± %g %%, or %g ± %g", value.number, spread.number, value.number, math.Abs(value.number)*spread.number/100))
		}
	}
	q, fault := s.single(value, bare)
	if fault != nil {
		return Quantity{}, fault
	}

	switch {
	case share && q.Value == 0 && spread.number > 0:
		return Quantity{}, refuse("has a percentage of nothing after ±", "write the ± in "+units[q.Unit].typed)
	case share:
		q.Spread = math.Abs(q.Value) * spread.number / 100
		return s.finish(q)
	case spread.unit == NoUnit:
		spread.unit = q.Unit
	}
	if fault := s.check(spread.unit); fault != nil {
		fault.Problem = "has a ± that " + fault.Problem
		return Quantity{}, fault
	}
	q.Spread = spread.unit.ToSI(spread.number)
	return s.finish(q)
}

// The magnitudes that are accepted, in the unit written. The upper one leaves
// room for any load, stiffness or modulus, and keeps its fourth power finite. The
// lower one only keeps clear of underflow: a computed number that should be zero
// may come out as 1e-17, and has to be readable after it was written.
const (
	smallest = 1e-100
	largest  = 1e15
)

// finish checks the magnitudes of q.
func (s *scanner) finish(q Quantity) (Quantity, *ParseError) {
	if !inRange(q.Unit.FromSI(q.Value)) || !inRange(q.Unit.FromSI(q.Spread)) {
		return Quantity{}, outOfRange()
	}
	return q, nil
}

// inRange reports whether x is 0 or of an accepted magnitude. Near a limit the
// number decides that String would write, so that it can be read back.
func inRange(x float64) bool {
	a := math.Abs(x)
	if a == 0 || 2*smallest < a && a < largest/2 {
		return true
	}
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(a, 'g', writtenDigits, 64), 64)
	return err == nil && smallest <= rounded && rounded <= largest
}
