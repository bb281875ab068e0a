package quantity

import (
	"strings"
	"unicode"
)

// ParseError is a text that cannot be read as the quantity wanted.
type ParseError struct {
	Text    string // what was read, cut to a length that can be shown
	Problem string // what is wrong with it, a predicate: "is a mass, but …"
	Cure    string // what to do, an instruction: "write mm, cm, m, in or ft"
}

// Error returns the three as one sentence without a full stop:
// `"812 kg" is a mass, but a length is wanted here: write mm, cm, m, in or ft`.
// It has no package prefix, because coaches read it.
func (e *ParseError) Error() string {
	return `"` + e.Text + `" ` + e.Problem + ": " + e.Cure
}

// refuse returns the error without its text, which Parse fills in.
func refuse(problem, cure string) *ParseError {
	return &ParseError{Problem: problem, Cure: cure}
}

// maxRunes is the length of the longest text that is read, three times that of
// the longest sensible one.
const maxRunes = 64

// shown returns text fit for a message: its first maxRunes characters, with
// everything that does not print replaced.
func shown(text string) string {
	var b strings.Builder
	n := 0
	for _, r := range text {
		if n == maxRunes {
			b.WriteString("…")
			break
		}
		if !unicode.IsPrint(r) {
			r = unicode.ReplacementChar
		}
		b.WriteRune(r)
		n++
	}
	return b.String()
}
