package quantity

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// plusMinus stands for ± in a folded text. A ~ that was written is refused.
const plusMinus = '~'

// foldRoom is the number of bytes that any text of maxRunes folds into.
const foldRoom = 4 * maxRunes

// fold appends text to dst in the small alphabet the rest of the package reads:
// printing ASCII, one kind of space, minus and quote, fractions spelled out,
// and plusMinus. The result fits in foldRoom bytes.
func fold(dst []byte, text string) ([]byte, *ParseError) {
	if len(text) > maxRunes && utf8.RuneCountInString(text) > maxRunes {
		return nil, refuse("is too long to be one number", fmt.Sprintf("use at most %d characters", maxRunes))
	}

	for i, r := range text {
		switch {
		case ' ' <= r && r <= '~' && r != plusMinus:
			dst = append(dst, byte(r))
		default:
			plain := foldRune(r)
			if plain == "" {
				return nil, unreadable(text[i:])
			}
			dst = append(dst, plain...)
		}
	}
	return dst, nil
}

// unfold returns folded text for a message.
func unfold(text []byte) string {
	return strings.ReplaceAll(string(text), string(plusMinus), "±")
}

// foldRune returns the plain form of a character outside ASCII, "" if it has
// none. A fraction is set off by a space, so that 1½ does not become 11/2.
func foldRune(r rune) string {
	switch r {
	case '±':
		return "~"
	case '−', '–', '‐', '‑': // minus, en dash, hyphen, non-breaking hyphen
		return "-"
	case '\t', '\u00a0', '\u2007', '\u2009', '\u202f': // spaces that hold a line together
		return " "
	case '′', '’', '‘', '´':
		return "'"
	case '″', '”', '“':
		return `"`
	case '°', 'º':
		return "deg"
	case '·', '⋅', '×':
		return "*"
	case '²':
		return "2"
	case '⁄', '∕':
		return "/"
	}
	if fraction := strings.IndexRune(vulgar, r); fraction >= 0 {
		return vulgarForms[utf8.RuneCountInString(vulgar[:fraction])]
	}
	return ""
}

// vulgar lists the fractions that have a character of their own, vulgarForms
// their plain forms in the same order.
const vulgar = "½¼¾⅛⅜⅝⅞⅓⅔"

var vulgarForms = [...]string{" 1/2", " 1/4", " 3/4", " 1/8", " 3/8", " 5/8", " 7/8", " 1/3", " 2/3"}

// unreadable explains the character at the start of text, which has no plain
// form.
func unreadable(text string) *ParseError {
	r, size := utf8.DecodeRuneInString(text)
	switch {
	case r == utf8.RuneError && size <= 1:
		return refuse("is not readable text", "type it again")
	case r == '~' || r == '≈' || r == '≃' || r == '∼':
		return refuse("is a rough figure", "say how rough with ±, such as 800±50 mm")
	case strings.ContainsRune("⁰¹³⁴⁵⁶⁷⁸⁹⁻", r):
		return refuse("has a raised digit", "write a power of ten such as 1.2e3")
	case r == '∞':
		return refuse("is not a finite number", "write a number")
	case r < ' ' || r == 0x7f || r == '\u2028' || r == '\u2029':
		return refuse("holds a line break or another control character", "write one number on one line")
	}
	return refuse(fmt.Sprintf("holds %q, which has no meaning in a number", r), "leave it out")
}
