package sheet

import (
	"errors"
	"fmt"
	"strings"

	"steelyard/human"
	"steelyard/planar"
	"steelyard/reference"
)

// KindPerson is somebody a machine is for.
const KindPerson Kind = "person"

// Person is a person sheet that has been read and found possible.
type Person struct {
	Name     string
	Notes    string
	Person   human.Person
	Lifts    []Lift          // known lifts, which need their machine to say anything
	Warnings []human.Warning // what is unusual, to show beside results
}

// Lift is a load once lifted on a machine for a number of repetitions with none
// left.
type Lift struct {
	Machine     string  // name or file of its sheet
	Load        float64 // kg, what the machine calls its load
	Repetitions int
	Settings    map[string]string
	How         string

	place *node
}

var (
	stature    = measure{length.dim, length.bare, 0.8, 2.5, "a height is 0.8 m to 2.5 m, without shoes"}
	bodyMass   = measure{mass.dim, mass.bare, 10, 350, "a body's mass is 10 kg to 350 kg"}
	years      = measure{count.dim, count.bare, 3, 110, "an age is 3 to 110 years"}
	bodyLength = measure{length.dim, length.bare, 0.01, 1.5, "a body's length is 10 mm to 1.5 m"}
	jointAngle = measure{angle.dim, angle.bare, -3.15, 3.15, "a joint angle is -180° to 180°"}
	asked      = measure{moment.dim, moment.bare, 0.1, 2000, "a joint moment is 0.1 N·m to 2000 N·m"}
	handForce  = measure{pull.dim, pull.bare, 1, 5000, "a force by hand or foot is 1 N to 5000 N"}
	leverArm   = measure{length.dim, length.bare, 0.02, 1.5, "a distance along a limb is 20 mm to 1.5 m"}
	lifted     = measure{mass.dim, mass.bare, 0.1, 2000, "a load is 0.1 kg to 2000 kg"}
	reps       = measure{count.dim, count.bare, 1, human.MostRepetitions, fmt.Sprintf("repetitions are 1 to %d", human.MostRepetitions)}
)

// Person reads the document as a person sheet. It returns a *[Problem] or
// [Problems] for what cannot be read or cannot be a person.
func (d *Document) Person() (*Person, error) {
	if d.Kind != KindPerson {
		return nil, d.problem(d.root, fmt.Sprintf("this is a %s sheet", d.Kind), "a person sheet is wanted here", "give a file that starts with `steelyard: person 1`")
	}
	r := &personReader{reader: reader{doc: d, plan: &plan{}, chosen: map[*node]*node{}, measures: map[string]measure{}}, places: map[string]*node{}}
	f := r.fields(d.root, "the sheet", "")
	f.take("steelyard")
	r.out.Name, r.out.Notes = f.words("name"), f.words("notes")
	r.readBody(f)
	r.readLengths(f.take("lengths"))
	r.readLimits(f.take("limits"))
	r.readStrength(f.take("strength"))
	r.out.Person.Avoid = f.lines("avoid")
	f.close()
	if len(r.problems) == 0 {
		r.tryOut()
	}
	return &r.out, r.problems.sorted()
}

// personReader reads a person sheet.
type personReader struct {
	reader
	out    Person
	places map[string]*node // where package human's places stand
}

// amount reads a number at once: a person has no settings.
func (r *personReader) amount(f *fields, key string, m measure) (value, spread float64, ok bool) {
	n := f.number(key, m)
	if n == none {
		return 0, 0, false
	}
	r.places[key] = f.node.at(key)
	q := &r.plan.numbers[n]
	return q.Value, q.Spread, true
}

// readBody reads what every person has.
func (r *personReader) readBody(f *fields) {
	p := &r.out.Person
	if f.must("height", "write height: 1.72 m") != nil {
		p.Height, _, _ = r.amount(f, "height", stature)
	}
	if f.must("mass", "write mass: 70 kg") != nil {
		p.Mass, _, _ = r.amount(f, "mass", bodyMass)
	}
	p.Age, _, _ = r.amount(f, "age", years)
	p.Sex = map[string]reference.Sex{"": reference.Unstated, "female": reference.Female, "male": reference.Male, "not stated": reference.Unstated}[f.choice("sex", "female", "male", "not stated")]
	if f.choice("segments", reference.DeLeva.String(), reference.Dempster.String()) == reference.Dempster.String() {
		p.Segments = reference.Dempster
	}
}

// readLengths reads `lengths:`, each `dimension: length`. A ± is taken as two
// standard deviations.
func (r *personReader) readLengths(n *node) {
	r.named(n, "lengths", func(name string, e entry) {
		d, ok := reference.ParseDimension(name)
		if !ok || d == reference.Stature || d == reference.Mass {
			names := dimensionNames()
			r.fault(e.value, fmt.Sprintf("lengths has %q", name), "the lengths are "+andList(names), r.suggest(name, names, "write one of these"))
			return
		}
		num := r.number(r.value(e.value), bodyLength, name, "length "+name)
		if num == none {
			return
		}
		r.places["lengths: "+name] = e.value
		q := &r.plan.numbers[num]
		r.out.Person.Lengths = append(r.out.Person.Lengths, human.Length{Dimension: d, Value: q.Value, Spread: q.Spread / 2})
	})
}

func dimensionNames() []string {
	var names []string
	for d := range reference.NumDimensions {
		if d != reference.Stature && d != reference.Mass {
			names = append(names, d.String())
		}
	}
	return names
}

// readLimits reads `limits:`, each `motion: angle` in the sense of the motion.
func (r *personReader) readLimits(n *node) {
	r.named(n, "limits", func(name string, e entry) {
		a, ok := r.action(e.value, name, "limits")
		if !ok {
			return
		}
		num := r.number(r.value(e.value), jointAngle, name, "limit of "+name)
		if num == none {
			return
		}
		r.places["limits: "+name] = e.value
		r.places["limits: "+a.Coordinate().String()] = e.value
		r.out.Person.Limits = append(r.out.Person.Limits, human.Limit{Motion: a, Angle: planar.Angle(r.at(num))})
	})
}

// action reads the name of a joint motion.
func (r *personReader) action(at *node, name, what string) (human.Action, bool) {
	a, ok := human.ParseAction(name)
	if !ok {
		names := actionNames()
		r.fault(at, fmt.Sprintf("%s names %q", what, shorten(name)), "the motions are "+andList(names), r.suggest(name, names, "write one of these"))
	}
	return a, ok
}

func actionNames() []string {
	names := make([]string, human.NumActions)
	for a := range names {
		names[a] = human.Action(a).String()
	}
	return names
}

// tryOut lets package human look at the person, and locates what it refuses.
func (r *personReader) tryOut() {
	b, warnings, err := human.NewBody(r.out.Person)
	if err == nil {
		r.out.Warnings = warnings
		_, warnings, err = human.NewCapacity(b)
		r.out.Warnings = append(r.out.Warnings, warnings...)
	}
	var e *human.InputError
	if errors.As(err, &e) {
		at, ok := r.places[e.Place]
		if !ok {
			at = r.doc.root
		}
		what, cure, ok := strings.Cut(e.Text, "; ")
		if !ok {
			cure = "correct it, or leave it out"
		}
		r.fault(at, fmt.Sprintf("%s: %s", e.Place, what), "that cannot be used", cure)
	}
}
