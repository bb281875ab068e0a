package store

import (
	"slices"
	"strings"
)

// kinds lists what a sheet can describe.
var kinds = []string{"machine", "person", "room", "plan"}

// Heading reads the kind and name off a sheet's top-level lines, for lists. It
// looks no further, so that a sheet with a mistake in it still has its name. It
// reports whether the kind is known; a sheet without a name is named after its
// kind.
func Heading(text string) (kind, name string, ok bool) {
	for line := range strings.Lines(strings.TrimPrefix(text, "\ufeff")) {
		key, value, found := strings.Cut(line, ":")
		if !found {
			continue
		}
		switch key {
		case "steelyard":
			kind, _, _ = strings.Cut(scalar(value), " ")
		case "name":
			name = scalar(value)
		}
	}
	if !slices.Contains(kinds, kind) {
		return "", "", false
	}
	if name == "" {
		name = "unnamed " + kind
	}
	return kind, name, true
}

// mostName is the number of characters of a name that lists show.
const mostName = 120

// scalar returns a one-line YAML text without comment and quotes.
func scalar(value string) string {
	v := strings.TrimSpace(value)
	switch {
	case len(v) >= 2 && v[0] == '\'':
		if end := strings.LastIndexByte(v, '\''); end > 0 {
			v = strings.ReplaceAll(v[1:end], "''", "'")
		}
	case len(v) >= 2 && v[0] == '"':
		if end := strings.LastIndexByte(v, '"'); end > 0 {
			v = strings.NewReplacer(`\"`, `"`, `\\`, `\`).Replace(v[1:end])
		}
	default:
		if at := strings.Index(v, " #"); at >= 0 {
			v = strings.TrimSpace(v[:at])
		}
		if strings.HasPrefix(v, "#") || strings.HasPrefix(v, "|") || strings.HasPrefix(v, ">") {
			return ""
		}
	}
	if r := []rune(v); len(r) > mostName {
		v = string(r[:mostName]) + "…"
	}
	return v
}
