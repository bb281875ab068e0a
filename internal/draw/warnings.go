package draw

import (
	"fmt"
	"slices"
	"strings"
)

// warnings gathers what a writer could not draw as asked.
type warnings struct {
	list     []string
	fallback string // what stands in for a missing glyph in this format
}

func (s *Scene) newWarnings(fallback string) warnings {
	w := warnings{fallback: fallback}
	for _, text := range s.strays {
		w.add(text)
	}
	return w
}

// missing warns about the glyphs of text the embedded font lacks.
func (w *warnings) missing(text string) {
	if runes := Missing(text); len(runes) > 0 {
		parts := make([]string, len(runes))
		for i, r := range runes {
			parts[i] = fmt.Sprintf("%c (U+%04X)", r, r)
		}
		w.add(fmt.Sprintf("the text %q has characters the font cannot set: %s; %s stands in their place",
			text, strings.Join(parts, ", "), w.fallback))
	}
}

func (w *warnings) add(text string) {
	if !slices.Contains(w.list, text) {
		w.list = append(w.list, text)
	}
}

// extent returns the size of the pages set one under another, mm.
func (s *Scene) extent() (width, height float64) {
	for _, p := range s.pages {
		width = max(width, p.Size.W)
		height += p.Size.H
	}
	return width, height
}
