package sheet

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// setting is something adjustable: its allowed values, and what each changes.
type setting struct {
	name   string
	notes  string
	values []settingValue // from a list or group; else the range counts
	span   *span
	preset int // of values; for a range see span
	sets   []*node
	at     *node
}

// settingValue is one allowed value.
type settingValue struct {
	label string
	node  *node            // the amount or text
	each  map[string]*node // instead: what each path is set to
}

// at returns where the value stands.
func (v settingValue) at() *node {
	if v.node != nil {
		return v.node
	}
	for _, path := range slices.Sorted(maps.Keys(v.each)) {
		return v.each[path]
	}
	return &node{}
}

// Bounds on what one sheet can ask to be checked.
const (
	mostSettings = 32
	mostValues   = 100
)

// readSettings reads `settings:`. It runs before all else that is read, so the
// points and directions of moves are left for readMoves.
func (r *reader) readSettings(n *node) {
	r.named(n, "settings", func(name string, e entry) {
		if len(r.settings) == mostSettings {
			r.fault(e.value, fmt.Sprintf("setting %q is number %d", name, mostSettings+1), fmt.Sprintf("a machine has at most %d settings", mostSettings), "leave out what does not change the force")
			return
		}
		f := r.fields(e.value, "setting", name)
		s := &setting{name: name, at: e.value, notes: f.words("notes")}
		f.onlyOne("values", "range")
		f.onlyOne("sets", "moves", "turns")
		r.readValues(s, f)
		r.readSpan(s, f)
		if len(s.values) == 0 && s.span == nil {
			r.fault(e.value, fmt.Sprintf("%s has no values", f), "its allowed values are listed", "write values: [10 kg, 20 kg], or range: {from: 0 kg, to: 100 kg, step: 2.5 kg}")
		}
		r.readSets(s, f)
		r.readPreset(s, f)
		f.take("moves")
		f.take("turns")
		f.close()
		r.settings = append(r.settings, s)
	})
}

// readValues reads a list of values, or a group `label: value`, in which a
// value may itself be a group `path: value`.
func (r *reader) readValues(s *setting, f *fields) {
	n := f.take("values")
	if n == nil {
		return
	}
	if len(n.items)+len(n.entries) > mostValues {
		r.fault(n, fmt.Sprintf("%s has %d values", f, len(n.items)+len(n.entries)), fmt.Sprintf("a setting has at most %d", mostValues), "write range: {from: …, to: …, step: …}")
		return
	}
	switch n.kind {
	case sequence:
		for _, item := range n.items {
			r.addValue(s, f, settingValue{label: item.text, node: item}, item)
		}
	case mapping:
		for _, e := range n.entries {
			v := settingValue{label: e.key, node: e.value}
			if e.value.kind == mapping {
				v = settingValue{label: e.key, each: map[string]*node{}}
				for _, inner := range e.value.entries {
					v.each[inner.key] = inner.value
				}
			}
			r.addValue(s, f, v, e.value)
		}
	default:
		r.fault(n, fmt.Sprintf("%s is %s", f.of("values"), seen(n)), "it is a list", "write values: [10 kg, 20 kg]")
	}
}

func (r *reader) addValue(s *setting, f *fields, v settingValue, at *node) {
	switch {
	case v.label == "" || (v.node != nil && (v.node.kind != scalar || v.node.text == "")):
		r.fault(at, fmt.Sprintf("a value of %s is %s", f, seen(at)), "it is one number or name", "write it out")
		return
	case v.each != nil && (f.has("sets") || f.has("moves") || f.has("turns")):
		r.fault(at, fmt.Sprintf("value %q of %s names what it sets", v.label, f), "the setting says so already", "take out sets:, moves: or turns:")
		return
	}
	for _, other := range s.values {
		if strings.EqualFold(other.label, v.label) {
			r.fault(at, fmt.Sprintf("value %q of %s stands there twice", v.label, f), "each value has a name of its own", "rename one")
			return
		}
	}
	s.values = append(s.values, v)
}

// readSpan reads range: {from: …, to: …, step: …}.
func (r *reader) readSpan(s *setting, f *fields) {
	n := f.take("range")
	if n == nil {
		return
	}
	g := r.fields(n, "range of "+f.String(), "")
	from, to, step := g.must("from", "write the least value"), g.must("to", "write the greatest value"), g.must("step", "write the step from value to value")
	g.close()
	if from != nil && to != nil && step != nil {
		s.span = &span{from: from, to: to, step: step, preset: from}
	}
}

// readPreset reads `default:`. Without it the first value counts.
func (r *reader) readPreset(s *setting, f *fields) {
	n := f.take("default")
	switch {
	case n == nil:
	case n.kind != scalar:
		r.fault(n, fmt.Sprintf("default of %s is %s", f, seen(n)), "it is one of the values", "write one of them")
	case s.span != nil:
		s.span.preset = n
	default:
		if i := s.byLabel(n.text); i >= 0 {
			s.preset = i
		} else if len(s.values) > 0 {
			r.fault(n, fmt.Sprintf("default of %s is %q", f, shorten(n.text)), "that is not one of its values, "+andWritten(s.labels()), r.suggest(n.text, s.labels(), "write one of them"))
		}
	}
}

func (s *setting) labels() []string {
	var out []string
	for _, v := range s.values {
		out = append(out, v.label)
	}
	return out
}

func (s *setting) byLabel(text string) int {
	for i, v := range s.values {
		if strings.EqualFold(v.label, strings.TrimSpace(text)) {
			return i
		}
	}
	return -1
}

// readSets finds the values in the sheet that a setting replaces.
func (r *reader) readSets(s *setting, f *fields) {
	targets := 0
	r.listed(f.take("sets"), f.of("sets"), func(n *node) {
		targets++
		if t := r.target(n, n.text, f); t != nil {
			s.sets = append(s.sets, t)
		}
	})
	for _, v := range s.values {
		for path, at := range v.each {
			r.target(at, path, f)
		}
		if v.each != nil {
			targets++
		}
	}
	if targets == 0 && !f.has("moves") && !f.has("turns") {
		r.fault(f.node, fmt.Sprintf("%s changes nothing", f), "a setting changes something", "add sets: with the way to a value, such as loads.plates.mass, or moves: or turns: for points")
	}
}

// target finds the value that path leads to.
func (r *reader) target(at *node, path string, f *fields) *node {
	n := r.doc.find(path)
	switch {
	case n == nil:
		r.fault(at, fmt.Sprintf("%s sets %q", f, shorten(path)), "the sheet has no such value", r.suggest(path, r.doc.paths(), "write the keys that lead to it, joined by dots, such as loads.plates.mass"))
		return nil
	case n.kind != scalar:
		r.fault(at, fmt.Sprintf("%s sets %q", f, path), "that is a whole group and not one value", "name one value in it, such as "+path+"."+firstKey(n))
		return nil
	case strings.HasPrefix(path, "settings.") || path == "steelyard":
		r.fault(at, fmt.Sprintf("%s sets %q", f, path), "a setting cannot change the settings", "name a value of the machine")
		return nil
	}
	return n
}

func firstKey(n *node) string {
	if n.kind == mapping && len(n.entries) > 0 {
		return n.entries[0].key
	}
	return "1"
}

func andWritten(words []string) string { return list(words, " and ") }
