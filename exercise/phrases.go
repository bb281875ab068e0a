package exercise

import (
	"fmt"
	"strings"
)

// enumerated joins parts with commas and a last "and".
func enumerated(parts []string) string {
	if len(parts) < 2 {
		return strings.Join(parts, "")
	}
	return strings.Join(parts[:len(parts)-1], ", ") + " and " + parts[len(parts)-1]
}

// counted writes a number of things.
func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%s %ss", number(n), what)
}

// number writes thousands apart.
func number(n int) string {
	s := fmt.Sprint(n)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return s
}

// sentence makes the first letter a capital.
func sentence(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// lowerFirst makes the first letter small.
func lowerFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}

// inPercent writes an effort in per cent; what is beyond any use is said so.
func inPercent(e float64) string {
	if e >= 10 {
		return "far more than all"
	}
	return fmt.Sprintf("%.0f %%", 100*e)
}
