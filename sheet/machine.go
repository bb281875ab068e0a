package sheet

import (
	"fmt"
	"maps"
	"slices"
)

// Machine is a machine sheet that has been read and found usable: each of its
// settings' values can be built. It is safe for concurrent use.
type Machine struct {
	Name     string
	Notes    string
	Measured string   // how, with what, by whom, when
	Cautions []string // of the writer and of the maker's manual
	Settings []Setting

	doc      *Document
	settings []*setting
	measures map[string]measure
	usual    *reader // what was read with every setting at its default
}

// Setting is something adjustable on a machine.
type Setting struct {
	Name    string
	Notes   string
	Values  []string // allowed, as written; empty for a range
	From    string   // range
	To      string
	Step    string
	Default string // as written
}

// Machine reads the document as a machine sheet. It returns [Problems] if it
// cannot be used.
func (d *Document) Machine() (*Machine, error) {
	if d.Kind != KindMachine {
		return nil, d.problem(d.root, fmt.Sprintf("this is a %s sheet", d.Kind), "a machine sheet is wanted here", "give a file that starts with `steelyard: machine 1`")
	}
	kept := *d // what Set does to the document later does not reach the machine
	r, err := kept.read(nil)
	if err != nil {
		return nil, err
	}
	m := &Machine{Name: r.plan.name, Notes: r.notes, Measured: r.measured, Cautions: r.cautions,
		doc: &kept, settings: r.settings, measures: r.measures, usual: r}
	for _, s := range r.settings {
		m.Settings = append(m.Settings, s.public())
	}
	return m, m.tryAll()
}

func (s *setting) public() Setting {
	out := Setting{Name: s.name, Notes: s.notes, Values: s.labels()}
	if s.span != nil {
		out.From, out.To, out.Step, out.Default = s.span.from.text, s.span.to.text, s.span.step.text, s.span.preset.text
	} else if len(s.values) > 0 {
		out.Default = s.values[s.preset].label
	}
	return out
}

// read reads the sheet with the settings picked, or their defaults.
func (d *Document) read(picks []pick) (*reader, error) {
	r := &reader{doc: d, plan: &plan{}, chosen: map[*node]*node{}, measures: map[string]measure{},
		outlineIDs: map[string]outlineID{}, stackLinks: map[*node]linkID{}}
	f := r.fields(d.root, "the sheet", "")
	f.take("steelyard")
	r.plan.name = f.words("name")
	r.notes, r.measured, r.cautions = f.words("notes"), f.words("measured"), f.lines("cautions")
	r.readSettings(f.take("settings"))
	r.choose(picks)
	r.readParts(f)
	f.close()
	if len(r.problems) == 0 {
		r.finish()
	}
	return r, r.problems.sorted()
}

// readParts reads the machine itself, each section after those it refers to.
func (r *reader) readParts(f *fields) {
	loads, handle := f.take("loads"), f.take("contact")
	points := f.must("points", "list what was measured: points: {axis: [0, 1120], grip: [-640, 1010]}")
	r.readPoints(points)
	links := f.must("links", "list what moves and the points it carries: links: {ground: [axis], arm: [axis, grip]}")
	r.readLinks(links)
	r.readStacks(loads)
	r.readHandle(handle)
	r.addPins()
	r.readPins(f.take("pins"))
	r.readSlides(f.take("slides"))
	r.readSheaves(f.take("sheaves"))
	r.readCams(f.take("cams"))
	r.readRopes(f.take("ropes"))
	r.readLoads(loads)
	r.readContact(handle)
	r.readTravel(f.take("travel"))
	r.readPlane(f.take("plane"))
	r.readStation(f.take("station"))
	r.readMoves()
	if n := len(r.plan.links); n == 1 && links != nil {
		r.fault(links, "links has only the ground", "a machine has a link that moves", "add the link that the hand or foot moves")
	}
}

// tryAll builds every value of every setting once, the others at their
// defaults, so that no choice can fail later.
func (m *Machine) tryAll() error {
	var all Problems
	tried := 0
	for i, s := range m.settings {
		for k, v := range s.values {
			if k == s.preset || len(all) >= mostProblems {
				continue
			}
			all = append(all, m.try(i, v, &tried)...)
		}
		all = append(all, m.trySpan(s)...)
	}
	return all.sorted()
}

// mostTried is how many values that are names, not numbers, are tried out.
const mostTried = 50

// try checks one value of a setting: numbers by themselves, names by reading
// the sheet with them.
func (m *Machine) try(i int, v settingValue, tried *int) Problems {
	r := &reader{doc: m.doc}
	byName := false
	for _, path := range slices.Sorted(maps.Keys(v.each)) {
		byName = m.tryNumber(r, m.doc.find(path), v.each[path], m.settings[i]) || byName
	}
	for _, target := range m.settings[i].sets {
		byName = m.tryNumber(r, target, v.node, m.settings[i]) || byName
	}
	if byName && len(r.problems) == 0 {
		if *tried++; *tried > mostTried {
			r.fault(v.at(), fmt.Sprintf("value %q of setting %q is choice number %d of a name", v.label, m.settings[i].name, *tried),
				fmt.Sprintf("the settings of a machine offer at most %d names", mostTried), "make a second sheet for the other machine")
			return r.problems
		}
		if _, err := m.doc.read([]pick{{setting: i, value: v}}); err != nil {
			return err.(Problems)
		}
	}
	return r.problems
}

// tryNumber reads v as the number wanted at target; it reports whether no
// number is wanted there.
func (m *Machine) tryNumber(r *reader, target, v *node, s *setting) bool {
	want, ok := m.measures[target.path]
	if ok {
		r.quantity(v, want, fmt.Sprintf("a value of setting %q", s.name))
	}
	return !ok
}

func (m *Machine) trySpan(s *setting) Problems {
	if s.span == nil {
		return nil
	}
	r := &reader{doc: m.doc}
	for _, target := range s.sets {
		want, ok := m.measures[target.path]
		if !ok {
			r.fault(s.at, fmt.Sprintf("setting %q is a range and sets %q", s.name, target.path), "that takes a name and no number", "list the names under values:")
			continue
		}
		r.checkSpan(s, want)
	}
	return r.problems
}
