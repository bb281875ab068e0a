package sheet

import (
	"fmt"
	"math"

	"steelyard/quantity"
)

// span is a range of numbers, by steps.
type span struct{ from, to, step, preset *node }

// read returns the numbers of a range.
func (s *span) read(want measure) (r struct{ from, to, step, preset quantity.Quantity }, err error) {
	for _, one := range []struct {
		text string
		to   *quantity.Quantity
	}{{s.from.text, &r.from}, {s.to.text, &r.to}, {s.step.text, &r.step}, {s.preset.text, &r.preset}} {
		if *one.to, err = quantity.Parse(one.text, want.dim, want.bare); err != nil {
			return r, err
		}
	}
	return r, nil
}

// String says how a range runs, as the sheet writes it.
func (s *span) String() string {
	return fmt.Sprintf("from %s to %s by %s", s.from.text, s.to.text, s.step.text)
}

// checkAmounts reads all amounts a setting can take, chosen or not.
func (r *reader) checkAmounts(s *setting, m measure) {
	if s.span != nil {
		r.checkSpan(s, m)
		return
	}
	for _, v := range s.values {
		r.quantity(v.node, m, fmt.Sprintf("value %q of setting %q", v.label, s.name))
	}
}

// checkSpan reads the range of a setting.
func (r *reader) checkSpan(s *setting, m measure) {
	what := fmt.Sprintf("range of setting %q", s.name)
	from, ok1 := r.quantity(s.span.from, m, "from in "+what)
	to, ok2 := r.quantity(s.span.to, m, "to in "+what)
	step, ok3 := r.quantity(s.span.step, m, "step in "+what)
	if !ok1 || !ok2 || !ok3 {
		return
	}
	if !(to.Value > from.Value) || !(step.Value > 0) {
		r.fault(s.span.from, fmt.Sprintf("%s runs from %v to %v by %v", what, from, to, step), "it grows by steps above 0", "write the least value first")
		return
	}
	if preset, ok := r.quantity(s.span.preset, m, fmt.Sprintf("default of setting %q", s.name)); ok && !onStep(preset, from, to, step) {
		r.fault(s.span.preset, fmt.Sprintf("default of setting %q is %v", s.name, preset), fmt.Sprintf("it runs from %v to %v by %v", from, to, step), "choose a value on a step")
	}
}

// onStep reports whether q lies from from to to on a step, to within a
// millionth of one.
func onStep(q, from, to, step quantity.Quantity) bool {
	const slack = 1e-6
	k := (q.Value - from.Value) / step.Value
	return k > -slack && q.Value < to.Value+slack*step.Value && math.Abs(k-math.Round(k)) < slack
}

// MostSteps is how many values a setting that runs in steps may have and still
// be listed.
const MostSteps = 10_000

// Listed returns every value that setting i of m.Settings can have, in order
// and as [Machine.Build] takes it, and which of them is the default. It returns
// a *[Problem] if a range has more than [MostSteps] values.
func (m *Machine) Listed(i int) (values []string, preset int, err error) {
	s := m.settings[i]
	if s.span == nil {
		return s.labels(), s.preset, nil
	}
	want, _ := m.measureOf(s)
	r, err := s.span.read(want)
	what := fmt.Sprintf("setting %q runs %s", s.name, s.span)
	if err != nil {
		_, cure := numberCure(err, want)
		return nil, 0, m.doc.problem(s.at, what, "it cannot be stepped through", cure)
	}
	n := 1 + int(math.Floor((r.to.Value-r.from.Value)/r.step.Value+1e-6))
	if n > MostSteps {
		return nil, 0, m.doc.problem(s.at, fmt.Sprintf("%s and has %d values", what, n), fmt.Sprintf("at most %d are searched", MostSteps), "hold it at one value")
	}
	for k := range n {
		at := r.from.Value + float64(k)*r.step.Value
		values = append(values, stepText(at, r.from.Unit))
		if math.Abs(at-r.preset.Value) <= r.step.Value/2 {
			preset = k
		}
	}
	return values, preset, nil
}

// stepText writes a step, x in SI, without what rounding has left over.
func stepText(x float64, u quantity.Unit) string {
	return quantity.Of(math.Round(u.FromSI(x)*1e9)/1e9, 0, u).String()
}
