package main

import (
	"fmt"
	"strings"

	"steelyard/evaluation"
)

// adjustable reads a machine sheet for a search. Settings in set are held at
// what it says.
func (c *console) adjustable(verb, file string, set []string, load bool, name string) (*evaluation.Adjustable, error) {
	fixed, err := parseSet(verb, set)
	if err != nil {
		return nil, err
	}
	m, err := c.readMachine(file)
	if err != nil {
		return nil, err
	}
	b, err := m.Build(fixed)
	if err != nil {
		return nil, err
	}
	x, err := evaluation.Serves(b, name)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	return evaluation.Adjust(m, x, fixed, load)
}

// parseSet reads settings written as name=value.
func parseSet(verb string, set []string) (map[string]string, error) {
	out := map[string]string{}
	for _, s := range set {
		name, value, ok := strings.Cut(s, "=")
		if !ok || strings.TrimSpace(name) == "" {
			return nil, &usageError{fmt.Sprintf("%s: --set %s: write it as name=value", verb, s)}
		}
		out[strings.TrimSpace(name)] = strings.TrimSpace(value)
	}
	return out, nil
}
