package sheet

import (
	"fmt"
	"slices"
	"strings"
)

// Problem is one thing in a sheet that cannot be used, and how to mend it.
type Problem struct {
	File         string
	Line, Column int    // from 1; 0 when the whole file is meant. Columns count characters.
	Path         string // dotted way to the value, such as links.arm.mass; may be empty

	What  string // what was read, with its unit
	Limit string // what may stand there
	Cure  string // what to do about it
}

// Error returns one sentence: place, what was read, limit, cure.
func (p *Problem) Error() string {
	place := p.File
	if p.Line > 0 {
		place = fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
	}
	return fmt.Sprintf("%s: %s, but %s; %s", place, p.What, p.Limit, p.Cure)
}

// mostProblems is how many problems are reported at once: a screenful. The
// rest is often the echo of the first.
const mostProblems = 10

// Problems are the things wrong with a sheet, from its top to its end, at most
// ten of them.
type Problems []*Problem

// Error returns one line for each problem.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap lets errors.As find the single problems.
func (ps Problems) Unwrap() []error {
	errs := make([]error, len(ps))
	for i, p := range ps {
		errs[i] = p
	}
	return errs
}

// sorted returns the problems in the order of the file, without repetition, or
// nil if there are none.
func (ps Problems) sorted() error {
	if len(ps) == 0 {
		return nil
	}
	out := slices.Clone(ps)
	slices.SortStableFunc(out, func(a, b *Problem) int {
		if a.Line != b.Line {
			return a.Line - b.Line
		}
		return a.Column - b.Column
	})
	out = slices.CompactFunc(out, func(a, b *Problem) bool { return *a == *b })
	return out[:min(len(out), mostProblems)]
}
