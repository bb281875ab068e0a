package evaluation

import (
	"fmt"
	"maps"
	"strings"

	"steelyard/exercise"
	"steelyard/human"
	"steelyard/mechanism"
	"steelyard/sheet"
)

// useLifts lets the lifts that the person has done on this machine set the
// level of their strength. Lifts on other machines are noted as left out: their
// sheets are not here.
func (e *Evaluation) useLifts(m *Meeting) error {
	var found []human.Strength
	for i := range m.Person.Lifts {
		l := &m.Person.Lifts[i]
		if !strings.EqualFold(l.Machine, e.Name) {
			m.Notes = append(m.Notes, fmt.Sprintf("The lift on %s is left out: that machine's sheet is not here.", l.Machine))
			continue
		}
		s, err := e.strengthOf(l, m)
		if err != nil {
			m.Notes = append(m.Notes, fmt.Sprintf("The lift of %g kg on this machine is left out: %v.", l.Load, err))
			continue
		}
		found = append(found, s...)
	}
	if len(found) == 0 {
		return nil
	}
	p := m.Person.Person
	p.Strength = append(append([]human.Strength{}, p.Strength...), found...)
	body, capacity, err := readied(p)
	if err != nil {
		return err
	}
	m.Body, m.Capacity = body, capacity
	return nil
}

// strengthOf puts the person on this machine as it was set and loaded for a
// lift.
func (e *Evaluation) strengthOf(l *sheet.Lift, m *Meeting) ([]human.Strength, error) {
	built, err := e.Sheet.Build(maps.Clone(l.Settings))
	if err != nil {
		return nil, err
	}
	if err := loadWith(&built.Machine, l.Load); err != nil {
		return nil, err
	}
	st, _ := built.Station()
	setup, sw, err := setUp(built.Machine, st.Exercises[0], st, helpPositions)
	if err != nil {
		return nil, err
	}
	r, err := exercise.Run(setup, m.Body, m.Capacity, sw, exercise.Options{})
	if err != nil {
		return nil, err
	}
	return r.StrengthFromLift(l.Repetitions, m.Capacity, sw)
}

// loadWith scales a machine's load to so many kg in all.
func loadWith(m *mechanism.Machine, load float64) error {
	total := 0.0
	for i := range m.Weights {
		if m.Weights[i].Load {
			total += m.Weights[i].Mass
		}
	}
	if total == 0 {
		return fmt.Errorf("%s has no load to set to %g kg; choose a setting that gives it one", m.Contact.Name, load)
	}
	m.Weights = append([]mechanism.Weight(nil), m.Weights...)
	for i := range m.Weights {
		if w := &m.Weights[i]; w.Load {
			w.Mass, w.Inertia = w.Mass*load/total, w.Inertia*load/total
		}
	}
	return nil
}
