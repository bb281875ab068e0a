package sheet

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"steelyard/quantity"
)

// pick is a value chosen for a setting.
type pick struct {
	setting int
	value   settingValue
}

// choose puts the picked values, and the defaults of the other settings, in
// the place of what the sheet says.
func (r *reader) choose(picks []pick) {
	r.chosenValues = make([]*node, len(r.settings))
	for i, s := range r.settings {
		v, ok := s.presetValue()
		if !ok {
			continue
		}
		for _, p := range picks {
			if p.setting == i {
				v = p.value
			}
		}
		r.picked = append(r.picked, Choice{Setting: s.name, Value: v.label})
		r.chosenValues[i] = v.node
		for _, target := range s.sets {
			r.replace(target, v.node)
		}
		for _, path := range slices.Sorted(maps.Keys(v.each)) {
			if target := r.doc.find(path); target != nil {
				r.replace(target, v.each[path])
			}
		}
	}
}

func (r *reader) replace(target, by *node) {
	if first, taken := r.chosen[target]; taken {
		r.fault(by, fmt.Sprintf("two settings set %q", target.path), fmt.Sprintf("the one on line %d does so already", first.line), "let one of them do it")
		return
	}
	if !strings.EqualFold(by.text, target.text) {
		r.plan.overruled = append(r.plan.overruled, overruled{target.path, by.text, target.text})
	}
	v := *by
	v.stands = target.path
	r.chosen[target] = &v
}

func (s *setting) presetValue() (settingValue, bool) {
	if s.span != nil {
		return settingValue{label: s.span.preset.text, node: s.span.preset}, true
	}
	if len(s.values) == 0 {
		return settingValue{}, false
	}
	return s.values[s.preset], true
}

// pick finds the values asked for by name, such as plates = 40 kg.
func (m *Machine) pick(choice map[string]string) ([]pick, error) {
	var picks []pick
	var problems Problems
	for _, name := range slices.Sorted(maps.Keys(choice)) {
		i := slices.IndexFunc(m.settings, func(s *setting) bool { return strings.EqualFold(s.name, strings.TrimSpace(name)) })
		if i < 0 {
			var names []string
			for _, s := range m.settings {
				names = append(names, s.name)
			}
			at := m.doc.root
			if n := m.doc.find("settings"); n != nil {
				at = n
			}
			limit := "this machine has the settings " + andWritten(names)
			if len(names) == 0 {
				limit = "this machine has no settings"
			}
			problems = append(problems, m.doc.problem(at, fmt.Sprintf("setting %q is asked for", shorten(name)), limit, suggest(name, names, "choose one of its settings")))
			continue
		}
		v, p := m.allowed(m.settings[i], choice[name])
		if p != nil {
			problems = append(problems, p)
			continue
		}
		picks = append(picks, pick{i, v})
	}
	return picks, problems.sorted()
}

// allowed returns the value of s that text asks for: by its name, or by the
// same number however it is written.
func (m *Machine) allowed(s *setting, text string) (settingValue, *Problem) {
	if i := s.byLabel(text); i >= 0 {
		return s.values[i], nil
	}
	want, isNumber := m.measureOf(s)
	q, err := quantity.Parse(text, want.dim, want.bare)
	what := fmt.Sprintf("setting %q is asked to be %q", s.name, shorten(text))
	if s.span != nil {
		return m.inSpan(s, text, q, err, want, what)
	}
	for _, v := range s.values {
		if !isNumber || err != nil || v.node == nil {
			break
		}
		if have, e := quantity.Parse(v.node.text, want.dim, want.bare); e == nil && near(have.Value, q.Value) {
			return v, nil
		}
	}
	return settingValue{}, m.doc.problem(s.at, what, "it can be "+orList(s.labels()), suggest(text, s.labels(), "choose one of these"))
}

func (m *Machine) inSpan(s *setting, text string, q quantity.Quantity, err error, want measure, what string) (settingValue, *Problem) {
	limit := "it runs " + s.span.String()
	if err != nil {
		_, cure := numberCure(err, want)
		return settingValue{}, m.doc.problem(s.at, what, limit, cure)
	}
	if r, err := s.span.read(want); err != nil || !onStep(q, r.from, r.to, r.step) {
		return settingValue{}, m.doc.problem(s.at, what, limit, "choose a value on a step")
	}
	n := &node{text: strings.TrimSpace(text), line: s.at.line, column: s.at.column, path: s.at.path}
	return settingValue{label: n.text, node: n}, nil
}

// measureOf tells what number a setting takes, and whether it takes one.
func (m *Machine) measureOf(s *setting) (measure, bool) {
	switch {
	case s.at.at("moves") != nil:
		return shift, true
	case s.at.at("turns") != nil:
		return angle, true
	case len(s.sets) > 0:
		want, ok := m.measures[s.sets[0].path]
		return want, ok
	}
	return measure{}, false
}

// near reports whether two numbers are the same but for rounding of units.
func near(a, b float64) bool {
	return a-b <= 1e-9*max(a, -a, 1e-3) && b-a <= 1e-9*max(a, -a, 1e-3)
}
