package sheet

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// suggest returns the cure "did you mean …" if a name is close to one of those
// allowed, else otherwise.
func suggest(name string, allowed []string, otherwise string) string {
	if best, ok := closest(name, allowed); ok {
		return fmt.Sprintf("did you mean %q?", best)
	}
	return otherwise
}

// closest returns the allowed name that the fewest slips of the pen turn into
// name. More than two slips, or one in every three letters, is another name;
// and so is every other number.
func closest(name string, allowed []string) (string, bool) {
	best, least := "", 3
	name = strings.ToLower(name)
	if len(name) > 60 || strings.IndexFunc(name, unicode.IsDigit) == 0 {
		return "", false
	}
	for _, a := range allowed {
		n := slips([]rune(name), []rune(strings.ToLower(a)))
		if n < least && 3*n <= max(len(a), 3) {
			best, least = a, n
		}
	}
	return best, best != ""
}

// slips counts letters added, dropped, changed or swapped with their neighbour
// between a and b.
//
// Source: F. J. Damerau, A technique for computer detection and correction of
// spelling errors, Communications of the ACM 7 (1964) 171-176; the restricted
// form, in which no letter is touched twice.
func slips(a, b []rune) int {
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := last[j-1]
			if a[i-1] != b[j-1] {
				change++
			}
			row[j] = min(change, last[j]+1, row[j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}

// orList writes "a, b or c".
func orList(words []string) string { return list(words, " or ") }

// andList writes "a, b and c", each once, sorted.
func andList(words []string) string {
	sorted := slices.Clone(words)
	slices.Sort(sorted)
	return list(slices.Compact(sorted), " and ")
}

func list(words []string, last string) string {
	if len(words) == 0 {
		return "nothing"
	}
	if len(words) == 1 {
		return words[0]
	}
	n := len(words) - 1
	return strings.Join(words[:n], ", ") + last + words[n]
}
