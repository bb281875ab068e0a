package family

import (
	"fmt"
	"math"

	"steelyard/mechanism"
	"steelyard/planar"
	"steelyard/quantity"
	"steelyard/sheet"
)

// editor changes a sheet and keeps the first error.
type editor struct {
	doc *sheet.Document
	err error
}

func (e *editor) set(path, text string) {
	if e.err == nil && text != "" {
		e.err = e.doc.Set(path, text)
	}
}

func (e *editor) place(path string, at, plus planar.Vec) {
	e.set(path+".x", millimetres(at.X, plus.X))
	e.set(path+".y", millimetres(at.Y, plus.Y))
}

// value writes the answer, and makes it the default of its setting.
func (e *editor) value(v *ValueAsk, q quantity.Quantity) {
	e.set(v.path, q.String())
	if v.setting == "" {
		return
	}
	q.Spread = 0
	unit, step := quantity.Kilogram, v.Step
	if q.Unit.For(quantity.Imperial) == q.Unit {
		unit, step = quantity.Pound, 2*v.Step
	}
	loads := ladderThrough(q.In(unit), step)
	in := func(x float64) string { return quantity.Of(x, 0, unit).String() }
	e.set("settings."+v.setting+".default", q.String())
	e.set("settings."+v.setting+".range.from", in(loads.from))
	e.set("settings."+v.setting+".range.to", in(loads.to))
	e.set("settings."+v.setting+".range.step", in(step))
}

// ladder is a range of loads.
type ladder struct{ from, to float64 }

// ladderThrough returns a range on one of whose steps the load lies: what is left over
// of it by whole steps is what cannot be taken off.
func ladderThrough(load, step float64) ladder {
	const above = 80
	k := math.Floor(load/step + 1e-9)
	from := math.Round((load-k*step)*1e9) / 1e9
	return ladder{from, math.Round((from+(k+above)*step)*1e9) / 1e9}
}

// millimetres writes a length in m with its ± as a sheet has it.
func millimetres(x, plus float64) string {
	if plus == 0 {
		return quantity.Of(math.Round(1e4*x)/10, 0, quantity.Millimetre).String()
	}
	return quantity.Of(1000*x, 1000*plus, quantity.Millimetre).Format(quantity.Metric)
}

// finished turns the machine the way that lifts its load and returns the text.
func (f *Family) finished(doc *sheet.Document) ([]byte, error) {
	first, err := lift(doc)
	if err != nil {
		return nil, err
	}
	path, ok := f.signed()
	if !ok {
		return doc.Bytes(), nil
	}
	turned, err := sheet.Read(doc.Name, doc.Bytes())
	if err != nil {
		return nil, err
	}
	if err := turned.Set(path, opposite(doc, path)); err != nil {
		return nil, err
	}
	if second, err := lift(turned); err == nil && second > first {
		return turned.Bytes(), nil
	}
	return doc.Bytes(), nil
}

// signed returns the path of the number whose sign is to be found.
func (f *Family) signed() (string, bool) {
	for _, v := range f.Values {
		if v.signed {
			return v.path, true
		}
	}
	return "", false
}

// opposite returns the number at path with its sign changed.
func opposite(doc *sheet.Document, path string) string {
	m, err := doc.Machine()
	if err != nil {
		return ""
	}
	b, err := m.Build(nil)
	if err != nil {
		return ""
	}
	for _, n := range b.Measurements {
		if n.Path == path {
			return quantity.Quantity{Value: -n.Value, Spread: n.Spread, Unit: n.Unit}.String()
		}
	}
	return ""
}

// lift returns the work in J that the sheet's machine takes over its travel,
// which is more one way than the other. Parts it cannot reach count for nothing.
func lift(doc *sheet.Document) (float64, error) {
	m, err := doc.Machine()
	if err != nil {
		return 0, err
	}
	b, err := m.Build(nil)
	if err != nil {
		return 0, err
	}
	model, err := mechanism.Compile(b.Machine)
	if err != nil {
		return 0, m.Locate(err)
	}
	const positions = 21
	sw, err := model.Sweep(positions)
	if err != nil {
		return 0, m.Locate(err)
	}
	work := 0.0
	for i := 1; i < sw.Len(); i++ {
		if sw.Stops[i] == nil && sw.Stops[i-1] == nil {
			work += (sw.Hold[i] + sw.Hold[i-1]) / 2 * (sw.Travel[i] - sw.Travel[i-1])
		}
	}
	if math.IsNaN(work) {
		return 0, fmt.Errorf("the machine takes no force that can be computed; check the places")
	}
	return work, nil
}
