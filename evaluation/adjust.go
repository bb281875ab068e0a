package evaluation

import (
	"errors"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"

	"steelyard/exercise"
	"steelyard/mechanism"
	"steelyard/sheet"
)

// Adjustable is a machine whose settings a search of package exercise turns.
type Adjustable struct {
	Machine  *sheet.Machine
	Exercise exercise.Exercise
	Dials    []exercise.Dial
	Held     []exercise.Chosen // settings that are not turned

	fixed map[string]string // those of them that were asked for
}

// Adjust readies a machine for a search in an exercise that it serves. Settings
// in fixed are held at the values there. Those that change only how much load
// there is stay at their defaults, unless loads says to turn them too. Errors
// are those of [sheet.Machine.Build] and [sheet.Machine.Listed].
func Adjust(m *sheet.Machine, x exercise.Exercise, fixed map[string]string, loads bool) (*Adjustable, error) {
	b, err := m.Build(fixed)
	if err != nil {
		return nil, err
	}
	a := &Adjustable{Machine: m, Exercise: x, fixed: map[string]string{}}
	maps.Copy(a.fixed, fixed)
	for i := range m.Settings {
		d := exercise.Dial{Name: m.Settings[i].Name}
		if d.Values, d.Usual, err = m.Listed(i); err != nil {
			return nil, err
		}
		if a.fixes(d.Name) || len(d.Values) == 1 || !loads && a.onlyLoad(b, d) {
			a.Held = append(a.Held, exercise.Chosen(b.Choices[i]))
			continue
		}
		a.Dials = append(a.Dials, d)
	}
	return a, nil
}

// Serves returns the exercise of that name that a machine serves, or its first
// for an empty one.
func Serves(b *sheet.Built, name string) (exercise.Exercise, error) {
	st, ok := b.Station()
	if !ok || len(st.Exercises) == 0 {
		return 0, errors.New("the sheet does not say how a person meets the machine; add `station:` with serves: and an exercise, and where the body is, such as seat: and a point")
	}
	var names []string
	for _, x := range st.Exercises {
		if name == "" || strings.EqualFold(x.String(), strings.TrimSpace(name)) {
			return x, nil
		}
		names = append(names, x.String())
	}
	return 0, fmt.Errorf("the machine does not serve %q; it serves the %s", name, strings.Join(names, ", "))
}

// Build returns the function that sets the machine up at so many positions
// along its travel.
func (a *Adjustable) Build(positions int) exercise.Build {
	return func(choice []int) (*exercise.Setup, *mechanism.Sweep, error) {
		values := maps.Clone(a.fixed)
		for d, v := range choice {
			values[a.Dials[d].Name] = a.Dials[d].Values[v]
		}
		b, err := a.Machine.Build(values)
		if err != nil {
			return nil, nil, err
		}
		st, _ := b.Station() // no setting takes the station away
		s, sw, err := setUp(b.Machine, a.Exercise, st, positions)
		return s, sw, a.Machine.Locate(err)
	}
}

// setUp follows a machine through its travel and readies it for a body.
func setUp(m mechanism.Machine, x exercise.Exercise, st exercise.Station, positions int) (*exercise.Setup, *mechanism.Sweep, error) {
	model, err := mechanism.Compile(m)
	if err != nil {
		return nil, nil, err
	}
	sw, err := model.Sweep(positions)
	if err != nil {
		return nil, nil, err
	}
	s, err := exercise.NewSetup(x, st, model, sw)
	return s, sw, err
}

// fixes reports whether a setting is held at a value asked for.
func (a *Adjustable) fixes(name string) bool {
	for fixed := range a.fixed {
		if strings.EqualFold(fixed, name) {
			return true
		}
	}
	return false
}

// onlyLoad reports whether a setting changes only how much load there is, and
// neither where the load nor where the body is.
func (a *Adjustable) onlyLoad(usual *sheet.Built, d exercise.Dial) bool {
	shape, station := weightless(usual.Machine), stationOf(usual)
	for _, value := range d.Values {
		values := maps.Clone(a.fixed)
		values[d.Name] = value
		b, err := a.Machine.Build(values)
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
