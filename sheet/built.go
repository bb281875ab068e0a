package sheet

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"steelyard/mechanism"
	"steelyard/planar"
)

// Built is a machine with its settings chosen. It is safe for concurrent use.
type Built struct {
	Machine      mechanism.Machine // of the sheet's own numbers
	Measurements []Measurement     // every number in use, in the order Rebuild takes them
	Contact      ContactKind
	Choices      []Choice // of every setting

	sheet *Machine
	plan  *plan
}

// Choice is the value a setting has.
type Choice struct{ Setting, Value string }

// Build returns the machine with settings as chosen, name to value, and at
// their defaults where not. It returns a *[Problem] or [Problems] if a setting
// or value is not the machine's.
func (m *Machine) Build(choice map[string]string) (*Built, error) {
	picks, err := m.pick(choice)
	if err != nil {
		return nil, err
	}
	r := m.usual
	if len(picks) > 0 {
		if r, err = m.doc.read(picks); err != nil {
			return nil, err
		}
	}
	b := &Built{Contact: r.plan.contact.kind, Choices: slices.Clone(r.picked), sheet: m, plan: r.plan}
	for i := range r.plan.numbers {
		b.Measurements = append(b.Measurements, r.plan.numbers[i].Measurement)
	}
	if b.Machine, err = r.plan.machine(r.plan.nominal()); err != nil {
		return nil, m.Locate(err)
	}
	return b, nil
}

// Rebuild returns the machine for other numbers: values holds one for each
// measurement, in SI. A number outside its physical range, such as a mass below
// zero at the far end of its band, is taken at the end of that range.
//
// It returns an error if the count is wrong, if a value is not finite, or if an
// outline cannot be made of them. It is safe for concurrent use.
func (b *Built) Rebuild(values []float64) (mechanism.Machine, error) {
	p := b.plan
	if len(values) != len(p.numbers) {
		return mechanism.Machine{}, fmt.Errorf("sheet: %d values for %d measurements of %q", len(values), len(p.numbers), p.name)
	}
	within := make([]float64, len(values))
	for i, x := range values {
		if math.IsNaN(x - x) {
			return mechanism.Machine{}, fmt.Errorf("sheet: value %g of measurement %q is not finite", x, p.numbers[i].Name)
		}
		within[i] = min(max(x, p.numbers[i].min), p.numbers[i].max)
	}
	return p.machine(within)
}

// finish turns what depends on places into fixed facts: which points a link
// ends at, the outlines of cams, and on which side a rope passes.
func (r *reader) finish() {
	p, v := r.plan, r.plan.nominal()
	at := p.places(v)
	for i := range p.links {
		p.links[i].ends = furthest(p.links[i].points, at)
	}
	for i := range p.points {
		if p.points[i].round && !(math.Abs(at[i].X)+math.Abs(at[i].Y) <= place.max) {
			r.fault(p.points[i].at, "the handle's path goes through three points in line", "an arc bends", "use straight to: for a straight path")
		}
	}
	for i := range p.outlines {
		o := &p.outlines[i]
		if c, ok := o.shape.(*cached); ok {
			c.keep(v)
		}
	}
	outlines, err := p.buildOutlines(v)
	var bad *outlineError
	if errors.As(err, &bad) {
		r.badOutline(bad)
		return
	}
	for _, l := range r.routes {
		r.setSides(l, at, outlines)
	}
}

func (r *reader) badOutline(e *outlineError) {
	limit, cure := e.sentence()
	r.fault(e.of.at, fmt.Sprintf("the outline of %q is not one a rope can run on", e.of.name), limit, cure)
}

// furthest returns the two of a link's points that lie furthest apart.
func furthest(ids []pointID, at []planar.Vec) [2]pointID {
	if len(ids) == 0 {
		return [2]pointID{nowhere, nowhere}
	}
	best, most := [2]pointID{ids[0], ids[0]}, 0.0
	for i, a := range ids {
		for _, b := range ids[:i] {
			if d := at[a].Sub(at[b]).Norm(); d > most {
				best, most = [2]pointID{b, a}, d
			}
		}
	}
	return best
}
