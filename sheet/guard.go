package sheet

import (
	"bytes"
	"fmt"
	"unicode/utf8"
)

// Limits that keep a document cheap: the YAML parser takes time that grows
// with the square of nesting, of unclosed brackets and of the keys in a group.
// Measured: 52,000 lines of `? a` took it 69 s, 2,500 lines take 0.2 s.
const (
	mostBytes  = 256 << 10
	mostNested = 64   // brackets or list dashes within one another
	mostIndent = 200  // columns before the first character of a line
	mostLine   = 4000 // bytes in a line
	mostLines  = 2500
	// of YAML's own marks: a cam traced in 1000 points needs some 6000
	mostMarks = 12000
)

var byteOrderMark = []byte("\xef\xbb\xbf")

// guard refuses data that no sheet looks like, before the parser sees it.
func guard(file string, data []byte) error {
	if len(data) > mostBytes {
		return &Problem{File: file,
			What:  fmt.Sprintf("this file has %d KB", len(data)>>10),
			Limit: fmt.Sprintf("a sheet has at most %d KB", mostBytes>>10),
			Cure:  "check that it is the sheet and not a picture or a program, and split it if it is"}
	}
	line, start := 1, 0
	for i := 0; i < len(data); {
		c, size := utf8.DecodeRune(data[i:])
		if (c == utf8.RuneError && size == 1) || isControl(data[i:], c) {
			return &Problem{File: file, Line: line, Column: utf8.RuneCount(data[start:i]) + 1,
				What:  fmt.Sprintf("byte %#02x is no text", data[i]),
				Limit: "a sheet is plain UTF-8 text",
				Cure:  "save it as plain text, encoding UTF-8"}
		}
		i += size
		if c == '\n' {
			line, start = line+1, i
		}
	}
	return guardNesting(file, data)
}

// isControl reports whether rest starts with a character that plain text does
// not hold. A carriage return is text only in front of a line feed.
func isControl(rest []byte, c rune) bool {
	switch {
	case c == '\t' || c == '\n':
		return false
	case c == '\r':
		return len(rest) > 1 && rest[1] != '\n'
	case c == 0x7f || c == '\u2028' || c == '\u2029' || c == 0x85:
		return true
	}
	return c < 0x20
}

// guardNesting counts lines, marks and brackets without regard to quotes: a
// real sheet stays far below the limits either way.
func guardNesting(file string, data []byte) error {
	line, open, marks := 0, 0, 0
	for text := range bytes.Lines(data) {
		line++
		if line > mostLines {
			return tooMuch(file, line, 1, fmt.Sprintf("this is line %d", line), fmt.Sprintf("a sheet has at most %d lines", mostLines))
		}
		dashes, indent, leading := 0, 0, true
		for i, c := range text {
			switch c {
			case '[', '{':
				open++
			case ']', '}':
				open = max(0, open-1)
			case '-', '?', ':':
				dashes++
			case ' ', '\t', '\r', '\n':
			default:
				dashes = 0
			}
			if bytes.IndexByte([]byte("[]{},-:?&*!|>"), c) >= 0 {
				marks++
			}
			if leading = leading && c == ' '; leading {
				indent++
			}
			switch {
			case open > mostNested || dashes > mostNested || indent > mostIndent:
				return tooMuch(file, line, columnOf(text, i), "things are nested too deep here",
					fmt.Sprintf("a sheet goes at most %d brackets deep and %d columns in", mostNested, mostIndent))
			case marks > mostMarks:
				return tooMuch(file, line, columnOf(text, i), fmt.Sprintf("this is bracket, comma, dash or colon number %d", marks), fmt.Sprintf("a sheet has at most %d", mostMarks))
			case i >= mostLine:
				return tooMuch(file, line, columnOf(text, i), fmt.Sprintf("this line is longer than %d characters", mostLine), fmt.Sprintf("a line has at most %d", mostLine))
			}
		}
	}
	return nil
}

// columnOf returns the column in characters, from 1, of the byte text[i].
func columnOf(text []byte, i int) int { return utf8.RuneCount(text[:i]) + 1 }

func tooMuch(file string, line, column int, what, limit string) error {
	return &Problem{File: file, Line: line, Column: column, What: what, Limit: limit,
		Cure: "look for a bracket that is never closed, break long lines, and leave out what does not change the force"}
}
