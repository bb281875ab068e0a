package evaluation

import (
	"errors"
	"fmt"

	"steelyard/exercise"
	"steelyard/human"
	"steelyard/sheet"
)

// Meeting is a person on the evaluated machine.
type Meeting struct {
	Person   *sheet.Person
	Body     *human.Body
	Capacity *human.Capacity
	Rest     *exercise.Result // held at each position of the sweep
	Paced    *exercise.Result // at the evaluation's tempo; nil without one
	Can      []float64        // N, by position of the sweep: what the machine's force may be until the effort is 1; +Inf where nothing limits it; NaN at gaps and where nobody was tested
	CanMost  []float64        // N, where nobody was tested: the most that may be; NaN elsewhere. See exercise.Result.Producible
	Warnings []human.Warning  // of the person's own figures
	Helps    []Help           // settings that would mend what is out of reach or range
	Notes    []string         // on the person's known lifts
}

// Meet puts a person on the machine as it is set, in the first exercise its
// station serves: at rest, and at the evaluation's tempo if it has one. It does
// not keep the meeting; set e.Person to have it reported.
//
// It returns an error if the sheet has no station, if the person's figures
// cannot be used, or if the body reaches the contact nowhere; that one says
// which setting would help, see [NowhereError]. A position that
// fails is a gap with its reason.
func (e *Evaluation) Meet(p *sheet.Person) (*Meeting, error) {
	st, ok := e.Built.Station()
	if !ok {
		return nil, fmt.Errorf("the sheet of %s has no station, so nothing tells how a person meets it; add one with what it serves and where the seat is, as in the example", e.Name)
	}
	m := &Meeting{Person: p, Warnings: p.Warnings}
	var err error
	if m.Body, m.Capacity, err = readied(p.Person); err != nil {
		return nil, err
	}
	if err := e.useLifts(m); err != nil {
		return nil, err
	}
	setup, err := exercise.NewSetup(st.Exercises[0], st, e.Model, e.Sweep)
	if err != nil {
		return nil, err
	}
	m.Rest, err = exercise.Run(setup, m.Body, m.Capacity, e.Sweep, exercise.Options{})
	if err != nil {
		return nil, e.nowhere(m.Body, err)
	}
	m.Can, m.CanMost = m.Rest.Producible()
	for i := range m.Can {
		m.Can[i] *= setup.Limbs()
		m.CanMost[i] *= setup.Limbs()
	}
	if e.Tempo != nil {
		if m.Paced, err = exercise.Run(setup, m.Body, m.Capacity, e.Sweep, exercise.Options{Tempo: e.Tempo}); err != nil {
			return nil, err
		}
	}
	if m.troubled() {
		m.Helps = e.helps(m.Body)
	}
	return m, nil
}

// readied returns a person's body and strength.
func readied(p human.Person) (*human.Body, *human.Capacity, error) {
	b, _, err := human.NewBody(p)
	if err != nil {
		return nil, nil, err
	}
	c, _, err := human.NewCapacity(b)
	return b, c, err
}

// NowhereError is returned for a body that the machine as it is set can hold
// nowhere. It wraps [exercise.ErrNowhere].
type NowhereError struct {
	Err   error
	Helps []Help // settings that would mend it
}

// Error says why, and which setting would help.
func (e *NowhereError) Error() string {
	if len(e.Helps) > 0 {
		return fmt.Sprintf("%v; %v", e.Err, e.Helps[0])
	}
	return fmt.Sprintf("%v; no single setting of this machine mends that", e.Err)
}

// Unwrap returns why.
func (e *NowhereError) Unwrap() error { return e.Err }

// nowhere adds to an error of a body that fits nowhere what would help it.
func (e *Evaluation) nowhere(b *human.Body, err error) error {
	if !errors.Is(err, exercise.ErrNowhere) {
		return err
	}
	return &NowhereError{err, e.helps(b)}
}

// Name is what results call the person.
func (m *Meeting) Name() string {
	if m.Person.Name == "" {
		return "this person"
	}
	return m.Person.Name
}

// troubled reports whether the body is out of reach or past a limit anywhere.
func (m *Meeting) troubled() bool {
	for _, f := range m.Rest.Faults {
		if f.Kind != exercise.NoFault && f.Kind != exercise.NotThere {
			return true
		}
	}
	return false
}
