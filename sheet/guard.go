package sheet

import (
	"bytes"
	"fmt"
	"unicode/utf8"
)

// Limits that keep a document cheap: the YAML parser takes time that grows
// with the square of nesting and of unclosed brackets.
const (
	mostBytes  = 256 << 10
	mostNested = 64   // brackets or list dashes within one another
	mostIndent = 200  // columns before the first character of a line
	mostLine   = 4000 // bytes in a line
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

// guardNesting counts brackets and dashes without regard to quotes: a real
// sheet stays far below the limit either way.
func guardNesting(file string, data []byte) error {
	line, open := 0, 0
	for text := range bytes.Lines(data) {
		line++
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
			if leading = leading && c == ' '; leading {
				indent++
			}
			deep := open > mostNested || dashes > mostNested || indent > mostIndent
			if deep || i >= mostLine {
				return tooDeep(file, line, utf8.RuneCount(text[:i])+1, deep)
			}
		}
	}
	return nil
}

func tooDeep(file string, line, column int, deep bool) error {
	p := &Problem{File: file, Line: line, Column: column,
		What:  fmt.Sprintf("this line is longer than %d characters", mostLine),
		Limit: fmt.Sprintf("a line has at most %d", mostLine),
		Cure:  "break it into several lines"}
	if deep {
		p.What = "things are nested too deep here"
		p.Limit = fmt.Sprintf("a sheet goes at most %d brackets deep and %d columns in", mostNested, mostIndent)
		p.Cure = "look for a bracket that is never closed"
	}
	return p
}
