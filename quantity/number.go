package quantity

import (
	"bytes"
	"fmt"
	"strconv"
)

// scanner reads a folded text from left to right.
type scanner struct {
	text []byte
	at   int
	want Dimension
}

// peek returns the byte k places ahead, 0 past the end.
func (s *scanner) peek(k int) byte {
	if s.at+k < len(s.text) {
		return s.text[s.at+k]
	}
	return 0
}

func (s *scanner) skipSpaces() {
	for s.peek(0) == ' ' {
		s.at++
	}
}

// skipDigits returns the digits from here on, and moves past them.
func (s *scanner) skipDigits() []byte {
	start := s.at
	for isDigit(s.peek(0)) {
		s.at++
	}
	return s.text[start:s.at]
}

func isDigit(c byte) bool  { return '0' <= c && c <= '9' }
func isLetter(c byte) bool { return 'a' <= c|0x20 && c|0x20 <= 'z' }

// number reads one number without a sign and reports whether it is written as
// plain digits, which feet before inches have to be.
func (s *scanner) number() (x float64, plain bool, fault *ParseError) {
	if fault := s.checkStart(); fault != nil {
		return 0, false, fault
	}

	start := s.at
	plain = true
	whole := s.skipDigits()
	if c := s.peek(0); c == '.' || c == ',' {
		plain = false
		if fault := s.decimals(whole); fault != nil {
			return 0, false, fault
		}
	}
	if s.exponent() {
		plain = false
	}

	x, fault = decimal(s.text[start:s.at])
	if fault == nil && plain {
		x, plain, fault = s.fraction(x)
	}
	if fault == nil {
		fault = s.checkEnd()
	}
	return x, plain, fault
}

// checkStart refuses what no decimal number starts with.
func (s *scanner) checkStart() *ParseError {
	c, next := s.peek(0), s.peek(1)
	switch {
	case c == '0' && isDigit(next):
		return refuse("starts with a zero, which some programs take for octal (base 8)", "leave the leading zero out")
	case c == '0' && next|0x20 == 'x':
		return refuse("is a hexadecimal number", "write it in ordinary decimal digits")
	case c == '0' && next|0x20 == 'o':
		return refuse("is an octal number", "write it in ordinary decimal digits")
	case c == '0' && next|0x20 == 'b':
		return refuse("is a binary number", "write it in ordinary decimal digits")
	case isDigit(c) || (c == '.' || c == ',') && isDigit(next):
		return nil
	case s.at == len(s.text):
		return refuse("has no number where one is needed", "write a number there")
	case c == plusMinus:
		return refuse("has a ± without a number before it", "write the value first, such as 812±3 mm")
	case c == '(':
		return brackets()
	}

	rest := bytes.ToLower(s.text[s.at:])
	if bytes.HasPrefix(rest, []byte("inf")) || bytes.HasPrefix(rest, []byte("nan")) {
		return refuse("is not a finite number", "write a number")
	}
	return refuse(fmt.Sprintf("has “%c” where a number is needed", c), "write a number there")
}

// decimals reads a decimal point or comma and the digits after it, whole being
// the digits before. The comma is overwritten by a point.
func (s *scanner) decimals(whole []byte) *ParseError {
	mark := s.at
	s.at++
	part := s.skipDigits()

	switch c := s.peek(0); {
	case (c == '.' || c == ',') && isDigit(s.peek(1)):
		return refuse("has more than one decimal mark", "leave out the marks between thousands and use one point, such as 1234.5")
	case len(part) == 0:
		return refuse("has no digit after the decimal mark", "put a digit after it or leave it out")
	case s.text[mark] == ',' && len(part) == 3 && 1 <= len(whole) && len(whole) <= 3 && whole[0] != '0':
		both := fmt.Sprintf("%[1]s%[2]s or %[1]s.%[2]s", string(whole), string(part))
		return refuse("can mean "+both, "write "+both)
	}
	s.text[mark] = '.'
	return nil
}

// exponent moves past a power of ten such as e3 or e-3 if one stands here.
func (s *scanner) exponent() bool {
	if s.peek(0)|0x20 != 'e' {
		return false
	}
	sign := 0
	if c := s.peek(1); c == '+' || c == '-' {
		sign = 1
	}
	if !isDigit(s.peek(1 + sign)) {
		return false
	}
	s.at += 1 + sign
	s.skipDigits()
	return true
}

// decimal returns the value of an ordinary decimal number.
func decimal(digits []byte) (float64, *ParseError) {
	x, err := strconv.ParseFloat(string(digits), 64)
	if err != nil {
		return 0, outOfRange() // the form is known to be right
	}
	if x == 0 {
		for _, c := range digits {
			if c == 'e' || c == 'E' {
				break
			}
			if '1' <= c && c <= '9' {
				return 0, outOfRange()
			}
		}
	}
	return x, nil
}

// fraction reads what may follow the plain digits of value x: /2, making it a
// fraction, or 1/2 after a space or a dash, making it a mixed number.
func (s *scanner) fraction(x float64) (float64, bool, *ParseError) {
	if s.peek(0) == '/' && isDigit(s.peek(1)) {
		x, fault := s.over(x)
		return x, false, fault
	}

	start := s.at
	if s.peek(0) == '-' {
		s.at++
	}
	s.skipSpaces()
	numerator := s.skipDigits()
	if s.at == start || len(numerator) == 0 || s.peek(0) != '/' || !isDigit(s.peek(1)) {
		s.at = start
		return x, true, nil
	}

	top, fault := decimal(numerator)
	if fault != nil {
		return 0, false, fault
	}
	part, fault := s.over(top)
	if fault == nil && part >= 1 {
		fault = refuse("has a fraction of one or more after a whole number", "write it as one number, such as 18 1/2")
	}
	return x + part, false, fault
}

// over reads a slash and a denominator, and returns top over it.
func (s *scanner) over(top float64) (float64, *ParseError) {
	s.at++
	bottom, fault := decimal(s.skipDigits())
	if fault == nil && bottom == 0 {
		fault = refuse("divides by zero", "write a denominator such as 2, 4, 8 or 16")
	}
	return top / bottom, fault
}

// checkEnd refuses what shows, right after a number, that it was meant
// otherwise than it was read.
func (s *scanner) checkEnd() *ParseError {
	if s.peek(0) == '_' {
		return refuse("has an underscore in a number", "write the digits without it")
	}
	start := s.at
	s.skipSpaces()
	if s.at > start && isDigit(s.peek(0)) {
		return refuse("has two numbers side by side", "write the digits of one number without a space, and a fraction like 17 1/2")
	}
	return nil
}

// outOfRange refuses a number that no measurement gives.
func outOfRange() *ParseError {
	return refuse("is outside 1e-100 to 1e15 in its unit", "check the number, or use another unit")
}
