package main

import (
	"fmt"
	"maps"
	"math"
	"reflect"
	"slices"
	"strings"

	"steelyard/exercise"
	"steelyard/mechanism"
	"steelyard/quantity"
	"steelyard/sheet"
)

// adjustable is a machine whose settings a search may turn.
type adjustable struct {
	machine  *sheet.Machine
	exercise exercise.Exercise
	dials    []exercise.Dial
	held     []exercise.Chosen
	fixed    map[string]string // held settings and their values
}

// adjustable reads a machine sheet for a search. Settings in set are held at
// what it says, and those that change only how much load there is stay at their
// defaults unless load says to search them too.
func (c *console) adjustable(verb, file string, set []string, load bool, name string) (*adjustable, error) {
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
	a := &adjustable{machine: m, fixed: fixed}
	if a.exercise, err = servedBy(file, b, name); err != nil {
		return nil, err
	}
	for i := range m.Settings {
		d, err := dialOf(&m.Settings[i])
		if err != nil {
			return nil, fmt.Errorf("%s: %w", file, err)
		}
		isFixed := slices.ContainsFunc(slices.Collect(maps.Keys(fixed)), func(name string) bool { return strings.EqualFold(name, d.Name) })
		if isFixed || len(d.Values) == 1 || !load && a.onlyLoad(b, d) {
			a.held = append(a.held, exercise.Chosen(b.Choices[i]))
			continue
		}
		a.dials = append(a.dials, d)
	}
	return a, nil
}

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

// servedBy returns the exercise wanted, or the machine's first.
func servedBy(file string, b *sheet.Built, name string) (exercise.Exercise, error) {
	st, ok := b.Station()
	if !ok || len(st.Exercises) == 0 {
		return 0, fmt.Errorf("%s: the sheet does not say how a person meets the machine; add `station:` with serves: and an exercise, and where the body is, such as seat: and a point", file)
	}
	var names []string
	for _, x := range st.Exercises {
		if name == "" || strings.EqualFold(x.String(), strings.TrimSpace(name)) {
			return x, nil
		}
		names = append(names, x.String())
	}
	return 0, fmt.Errorf("%s: the machine does not serve %q; it serves the %s", file, name, strings.Join(names, ", "))
}

// builder returns the function that sets the machine up at so many positions.
func (a *adjustable) builder(positions int) exercise.Build {
	return func(choice []int) (*exercise.Setup, *mechanism.Sweep, error) {
		values := maps.Clone(a.fixed)
		for d, v := range choice {
			values[a.dials[d].Name] = a.dials[d].Values[v]
		}
		b, err := a.machine.Build(values)
		if err != nil {
			return nil, nil, err
		}
		md, err := mechanism.Compile(b.Machine)
		if err != nil {
			return nil, nil, a.machine.Locate(err)
		}
		sw, err := md.Sweep(positions)
		if err != nil {
			return nil, nil, a.machine.Locate(err)
		}
		st, _ := b.Station()
		s, err := exercise.NewSetup(a.exercise, st, md, sw)
		return s, sw, err
	}
}

// onlyLoad reports whether a setting changes only how much load there is, and
// neither where the load nor where the body is.
func (a *adjustable) onlyLoad(usual *sheet.Built, d exercise.Dial) bool {
	shape, station := weightless(usual.Machine), stationOf(usual)
	for _, value := range d.Values {
		values := maps.Clone(a.fixed)
		values[d.Name] = value
		b, err := a.machine.Build(values)
		if err != nil || !reflect.DeepEqual(weightless(b.Machine), shape) || !reflect.DeepEqual(stationOf(b), station) {
			return false
		}
	}
	return true
}

func stationOf(b *sheet.Built) exercise.Station {
	st, _ := b.Station()
	return st
}

// weightless returns a machine's shape: without masses, pulls and rates.
func weightless(m mechanism.Machine) mechanism.Machine {
	m.Links, m.Weights, m.Elements = slices.Clone(m.Links), slices.Clone(m.Weights), slices.Clone(m.Elements)
	m.Chains, m.Wheels = slices.Clone(m.Chains), slices.Clone(m.Wheels)
	for i := range m.Links {
		m.Links[i].Mass, m.Links[i].Inertia = 0, 0
	}
	for i := range m.Weights {
		m.Weights[i].Mass, m.Weights[i].Inertia = 0, 0
	}
	for i := range m.Elements {
		m.Elements[i].Law = nil
	}
	for i := range m.Chains {
		m.Chains[i].Density = 0
	}
	for i := range m.Wheels {
		m.Wheels[i].Inertia = 0
	}
	return m
}

// mostSteps is how many steps a range may have and still be searched.
const mostSteps = 10_000

// dialOf returns a setting's values as text that [sheet.Machine.Build] takes.
func dialOf(s *sheet.Setting) (exercise.Dial, error) {
	if len(s.Values) > 0 {
		i := slices.IndexFunc(s.Values, func(v string) bool { return strings.EqualFold(v, strings.TrimSpace(s.Default)) })
		return exercise.Dial{Name: s.Name, Values: s.Values, Usual: max(0, i)}, nil
	}
	d := exercise.Dial{Name: s.Name}
	q, err := parseRange(s.From, s.To, s.Step, s.Default)
	if err != nil {
		return d, fmt.Errorf("setting %q runs from %s to %s by %s, which cannot be stepped through: %w", s.Name, s.From, s.To, s.Step, err)
	}
	from, to, step := q[0], q[1], q[2]
	n := int(math.Floor((to.Value-from.Value)/step.Value + 1e-6))
	if n >= mostSteps {
		return d, fmt.Errorf("setting %q has %d steps, more than %d that can be searched; hold it with --set %s=%s", s.Name, n+1, mostSteps, s.Name, s.Default)
	}
	for k := range n + 1 {
		at := from
		at.Value, at.Spread = from.Value+float64(k)*step.Value, 0
		d.Values = append(d.Values, written(at))
		if math.Abs(at.Value-q[3].Value) <= step.Value/2 {
			d.Usual = k
		}
	}
	return d, nil
}

// parseRange reads the numbers of a range, whatever they measure. Bare numbers
// are left without a unit if all of them are, else they take the others' unit.
func parseRange(texts ...string) ([]quantity.Quantity, error) {
	var err error
	for dim := quantity.Ratio; dim <= quantity.Modulus; dim++ {
		bare := quantity.NoUnit
		for _, text := range texts {
			if q, e := quantity.Parse(text, dim, quantity.NoUnit); e == nil {
				bare = q.Unit
			}
		}
		out := make([]quantity.Quantity, len(texts))
		failed := false
		for i, text := range texts {
			var e error
			if out[i], e = quantity.Parse(text, dim, bare); e != nil {
				err, failed = e, true
			}
		}
		if !failed {
			return out, nil
		}
	}
	return nil, err
}

// written returns a step as text, without what rounding has left over; a plain
// number stays one, for the sheet to give it its unit.
func written(q quantity.Quantity) string {
	return quantity.Of(math.Round(q.In(q.Unit)*1e9)/1e9, 0, q.Unit).String()
}
