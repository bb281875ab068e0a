package quantity

import (
	"bytes"
	"fmt"
)

// unit reads a unit if one stands here, and the spaces around it.
func (s *scanner) unit() (Unit, *ParseError) {
	s.skipSpaces()
	start := s.at
	switch c := s.peek(0); c {
	case '%':
		s.at++
	case '\'', '"':
		for s.peek(0) == c {
			s.at++
		}
	default:
		for s.inUnit(start) {
			s.at++
		}
	}

	token := bytes.TrimRight(s.text[start:s.at], " ")
	s.skipSpaces()
	if len(token) == 0 {
		return NoUnit, nil
	}
	return s.named(token)
}

// inUnit reports whether the byte here belongs to the unit that began at start.
// Spaces, dots and dashes do inside a product (N m, ft-lb), a digit as a power.
func (s *scanner) inUnit(start int) bool {
	c, next := s.peek(0), s.peek(1)
	var before byte
	if s.at > start {
		before = s.text[s.at-1]
	}

	switch {
	case isLetter(c):
		return true
	case c == '/' || c == '*':
		return s.at > start
	case c == '^':
		return isDigit(next)
	case c == '.':
		return isLetter(before) && !isDigit(next)
	case c == '-':
		return isLetter(before) && isLetter(next)
	case c == ' ':
		return s.productGoesOn()
	case isDigit(c):
		lower := before | 0x20
		return before == '^' || c == '2' && !isDigit(next) && (lower == 'm' || lower == 'n')
	}
	return false
}

// productGoesOn reports whether more of a unit follows the spaces here.
func (s *scanner) productGoesOn() bool {
	k := 0
	for s.peek(k) == ' ' {
		k++
	}
	c := s.peek(k)
	return isLetter(c) || c == '/' || c == '*'
}

// named returns the unit written as token.
func (s *scanner) named(token []byte) (Unit, *ParseError) {
	var room [longestForm + 2]byte
	key, fits := unitKey(room[:0], token)
	if u, ok := byForm[string(key)]; ok && fits {
		if u == Megapascal && token[0] == 'm' && len(token) > 1 && token[1] == 'P' {
			return NoUnit, refuse("is in millipascals, a billion times less than MPa", "write MPa for megapascals")
		}
		return u, nil
	}

	problem := "has the unit " + string(token) + ", which is not known here"
	if fits {
		if near := nearest(string(key), s.want); near != NoUnit {
			return NoUnit, refuse(problem, "did you mean "+units[near].typed+"?")
		}
	}
	return NoUnit, refuse(problem, "write "+s.want.choices())
}

// check refuses a unit that measures something else than is wanted.
func (s *scanner) check(u Unit) *ParseError {
	got := u.Dimension()
	switch {
	case got == s.want:
		return nil
	case u == NoUnit:
		return refuse("has no unit", "write "+s.want.choices()+" after the number")
	}

	cure := "write " + s.want.choices()
	switch {
	case got == Mass && s.want == Force && u != Gram:
		cure = fmt.Sprintf("write %sf for what a hanging scale in %s shows, or N", u.Symbol(), u.Symbol())
	case u == KilogramForce && s.want == Mass:
		cure = "write kg for what is weighed"
	case u == PoundForce && s.want == Mass:
		cure = "write lb for what is weighed"
	}
	return refuse(fmt.Sprintf("is %v, but %v is wanted here", got, s.want), cure)
}

// leftover explains what stands behind a complete quantity.
func (s *scanner) leftover() *ParseError {
	switch c := s.peek(0); {
	case c == '-':
		return refuse("looks like a range", "write the middle and half the range, such as 18±1 in for 17 to 19 in")
	case c == '+':
		return refuse("has a plus without a minus", "write one ±, such as 812±3 mm")
	case c == plusMinus:
		return refuse("has more than one ±", "write one ±, such as 812±3 mm")
	case c == '(':
		return brackets()
	case c == '*':
		return refuse("multiplies", "write the result, or a power of ten such as 1.2e3")
	case isDigit(c) || c == '.' || c == ',':
		return refuse("has more than one number", "write one number with one unit")
	}
	return refuse("goes on with "+unfold(s.text[s.at:])+" after the number", "keep one number with one unit")
}

func brackets() *ParseError {
	return refuse("has brackets", "leave them out, such as 812±3 mm")
}
