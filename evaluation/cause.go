package evaluation

import (
	"fmt"
	"math"
	"slices"

	"steelyard/mechanism"
	"steelyard/profile"
)

// Cause is why the force is what it is at one place: the source that makes the
// difference, and the lengths through which it does.
type Cause struct {
	At     profile.Point
	Row    int               // of the sweep
	Main   mechanism.Share   // the source that makes the difference between the hardest and the easiest place
	Shares []mechanism.Share // of every source, the greatest first
	Manner Manner

	// The lengths in m, or the ratio, that the manner speaks of.
	LoadArm    float64 // level distance of the weight from the axis, signed forward; or the rope's from the cam's axis
	ContactArm float64 // distance of the contact force from the axis
	Ratio      float64 // metres the source rises or lengthens for each metre of the contact
	Cam        string  // name of the cam
}

// Manner tells how the main source reaches the contact.
type Manner uint8

const (
	ByRatio Manner = iota // through a linkage or a straight rope: so much lift for so much travel
	ByLever               // a weight on the contact's own link
	ByCam                 // a rope off a cam on the contact's own link
	ByPull                // something elastic
)

// causes explains the hardest and the easiest place of the lifting curve, both
// by the source whose share differs most between the two: the greatest source
// need not be the one that makes the difference.
func (e *Evaluation) causes() ([]Cause, error) {
	st := e.Model.NewState()
	r := &e.Readings[profile.Lifting]
	all := []Cause{{At: r.Peak}, {At: r.Least}}
	var shares [2][]mechanism.Share
	for i := range all {
		c := &all[i]
		c.Row = e.rowAt(c.At.Travel)
		if err := st.MoveTo(e.Sweep.Driver[c.Row]); err != nil {
			return nil, err
		}
		shares[i] = st.Shares()
	}
	if len(shares[0]) == 0 {
		return all, nil
	}
	deciding := decides(shares[0], shares[1])
	for i := len(all) - 1; i >= 0; i-- {
		c := &all[i]
		if err := st.MoveTo(e.Sweep.Driver[c.Row]); err != nil {
			return nil, err
		}
		c.Main, c.Shares = shares[i][deciding], shares[i]
		slices.SortStableFunc(c.Shares, func(a, b mechanism.Share) int {
			return int(sign(math.Abs(b.Force) - math.Abs(a.Force)))
		})
		e.trace(st, c)
	}
	return all, nil
}

// decides returns the place of the source whose share differs most between two
// poses; among equals the greater, so that an even machine is explained by what
// carries most.
func decides(a, b []mechanism.Share) int {
	best, most := 0, math.Inf(-1)
	for i := range a {
		weight := math.Abs(a[i].Force-b[i].Force) + tie*math.Abs(a[i].Force)
		if weight > most {
			best, most = i, weight
		}
	}
	return best
}

// tie is the part of a source's own share by which it wins over one that
// changes no more.
const tie = 0.05

func sign(x float64) float64 {
	switch {
	case x > 0:
		return 1
	case x < 0:
		return -1
	}
	return 0
}

// rowAt returns the sweep's row nearest to a place on the travel that has a
// force.
func (e *Evaluation) rowAt(travel float64) int {
	best := -1
	for k, s := range e.Curve.Travel {
		if e.Curve.Has(k) && (best < 0 || math.Abs(s-travel) < math.Abs(e.Curve.Travel[best]-travel)) {
			best = k
		}
	}
	return e.Rows[best]
}

// trace finds through which lengths the main source acts.
func (e *Evaluation) trace(st *mechanism.State, c *Cause) {
	main := &c.Main
	c.Ratio = main.Rise
	if main.Kind == mechanism.Elastic {
		c.Manner = ByPull
		return
	}
	if load, contact, ok := st.Arms(main.Link, main.At); ok {
		c.Manner, c.LoadArm, c.ContactArm = ByLever, load, contact
		return
	}
	m := e.Model.Machine()
	for r := range m.Ropes {
		for k, s := range m.Ropes[r].Route {
			if s.Outline == nil || s.Link != m.Contact.Link {
				continue
			}
			if _, contact, ok := st.Arms(s.Link, main.At); ok {
				_, after := st.Radius(r, k)
				c.Manner, c.LoadArm, c.ContactArm, c.Cam = ByCam, after, contact, s.Name
				return
			}
		}
	}
}

// Because says why the force is what it is there, as the end of a sentence:
// "because the plates hang 412 mm behind the axis there".
func (c *Cause) Because(f Formatter) string {
	if len(c.Shares) == 0 {
		return "because nothing loads the machine"
	}
	main := &c.Main
	name := called(main)
	switch c.Manner {
	case ByLever:
		side := "in front of"
		if c.LoadArm < 0 {
			side = "behind"
		}
		return fmt.Sprintf("because the weight of %s acts %s %s the axis, the contact %s from it", name, f.Short(math.Abs(c.LoadArm)), side, f.Short(c.ContactArm))
	case ByCam:
		return fmt.Sprintf("because the rope leaves the %s %s from its axis, the contact is %s from it", c.Cam, f.Short(c.LoadArm), f.Short(c.ContactArm))
	case ByPull:
		return fmt.Sprintf("because %s of it comes from %s", f.Force(main.Force), name)
	}
	verb := "lifts"
	if c.Ratio < 0 {
		verb = "lowers"
	}
	return fmt.Sprintf("because each %s of the contact %s %s by %s", f.Short(0.1), verb, name, f.Short(0.1*math.Abs(c.Ratio)))
}

func called(s *mechanism.Share) string {
	if s.Kind == mechanism.OwnWeight {
		return fmt.Sprintf("the %s itself", s.Name)
	}
	return fmt.Sprintf("the %s", s.Name)
}
