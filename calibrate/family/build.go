package family

import (
	"fmt"
	"math"
	"regexp"
	"strings"

	"steelyard/calibrate"
	"steelyard/planar"
	"steelyard/quantity"
	"steelyard/sheet"
)

// Answers is what is known of a machine. What is not answered stays as usual.
type Answers struct {
	Name     string // of the machine; empty is the family's
	Measured string // how, for the sheet
	Points   map[string]calibrate.Point
	Values   map[string]quantity.Quantity
	Cam      []calibrate.Point // outline, in the frame of the points; see calibrate.Trace
}

// furthest is the largest coordinate in m that can be answered.
const furthest = 20

// Build returns the sheet of a machine of the family, comments and all, that can
// be evaluated as it is.
//
// Points that are not answered keep their usual place to those that are, and the
// sheet says what was not measured. It returns a *[calibrate.Fault] for an
// answer that cannot be used and [sheet.Problems] or an error of package
// mechanism if the answers together make no machine.
func Build(id string, a Answers) ([]byte, error) {
	f := find(id)
	if f == nil {
		return nil, &calibrate.Fault{Place: fmt.Sprintf("the family %q", id), Reason: "is not known", Cure: "choose one of the list"}
	}
	if err := f.check(&a); err != nil {
		return nil, err
	}
	places := f.places(&a)
	doc, err := sheet.Read(f.ID, []byte(f.wording(&a, places)))
	if err != nil {
		return nil, err
	}
	e := editor{doc: doc}
	e.set("name", a.name(f))
	e.set("measured", f.measured(&a))
	for _, p := range f.Points {
		given, ok := a.Points[p.Name]
		switch {
		case p.guide || p.Optional && !ok:
		case ok:
			e.place("points."+p.Name, given.At, given.Plus)
		case len(a.Points) > 0:
			e.place("points."+p.Name, places[p.Name], planar.Vec{X: moved, Y: moved})
		}
	}
	for i := range f.Values {
		if q, ok := a.Values[f.Values[i].Name]; ok {
			e.value(&f.Values[i], q)
		}
	}
	if s := f.span; s != nil {
		e.set(s.path, millimetres(places[s.to].Sub(places[s.from]).Norm(), 0))
	}
	if e.err != nil {
		return nil, e.err
	}
	return f.finished(doc)
}

// moved is the ± in m of a usual point moved along with those answered: a guess.
const moved = 0.05

// check refuses answers that nobody asked for, or out of range.
func (f *Family) check(a *Answers) error {
	for name, p := range a.Points {
		if !f.asks(name) {
			return &calibrate.Fault{Place: fmt.Sprintf("the point %q", name), Reason: "is not one of the family's", Cure: "leave it out"}
		}
		if err := checkPlace("the "+name, p); err != nil {
			return err
		}
	}
	for name, q := range a.Values {
		if err := f.checkValue(name, q); err != nil {
			return err
		}
	}
	if len(a.Cam) == 0 {
		return nil
	}
	if f.Cam == nil {
		return &calibrate.Fault{Place: "the cam's outline", Reason: "was not asked for", Cure: "choose a family with a cam"}
	}
	if len(a.Cam) < f.Cam.Least {
		return &calibrate.Fault{Place: "the cam's outline", Reason: fmt.Sprintf("has %d places; at least %d are needed", len(a.Cam), f.Cam.Least), Cure: "tap its edge all round"}
	}
	if _, ok := a.Points[f.Cam.axis]; !ok {
		return &calibrate.Fault{Place: "the cam's outline", Reason: "is measured from the " + f.Cam.axis + ", which is not answered", Cure: "tap the " + f.Cam.axis + " too"}
	}
	for i, p := range a.Cam {
		if err := checkPlace(fmt.Sprintf("place %d of the cam's outline", i+1), p); err != nil {
			return err
		}
	}
	return nil
}

func (f *Family) asks(name string) bool {
	for _, p := range f.Points {
		if p.Name == name {
			return true
		}
	}
	return false
}

func checkPlace(what string, p calibrate.Point) error {
	inside := math.Abs(p.At.X) <= furthest && math.Abs(p.At.Y) <= furthest
	if !(inside && p.Plus.X >= 0 && p.Plus.Y >= 0 && p.Plus.X <= furthest && p.Plus.Y <= furthest) {
		return &calibrate.Fault{Place: what, Reason: fmt.Sprintf("is at (%.4g mm, %.4g mm) ± (%.3g mm, %.3g mm); places lie within %d m", 1000*p.At.X, 1000*p.At.Y, 1000*p.Plus.X, 1000*p.Plus.Y, furthest),
			Cure: "measure it again"}
	}
	return nil
}

func (f *Family) checkValue(name string, q quantity.Quantity) error {
	for _, v := range f.Values {
		if v.Name != name {
			continue
		}
		if q.Unit.Dimension() != v.Unit.Dimension() {
			return &calibrate.Fault{Place: "the " + name, Reason: fmt.Sprintf("is %v, but %v is wanted", q, v.Unit.Dimension()), Cure: "give it in " + v.Unit.Symbol()}
		}
		if x := q.In(v.Unit); !(x >= v.Low && x <= v.High && q.Spread >= 0 && q.Spread <= v.Unit.ToSI(v.High)) {
			return &calibrate.Fault{Place: "the " + name, Reason: fmt.Sprintf("is %.4g %s; %g to %g %[2]s can be used", x, v.Unit.Symbol(), v.Low, v.High), Cure: "check the number and its unit"}
		}
		return nil
	}
	return &calibrate.Fault{Place: fmt.Sprintf("the number %q", name), Reason: "is not one of the family's", Cure: "leave it out"}
}

// places returns where every point is: as answered, or as usual and moved along
// with those answered.
func (f *Family) places(a *Answers) map[string]planar.Vec {
	var shift planar.Vec
	for _, p := range f.Points {
		if given, ok := a.Points[p.Name]; ok {
			shift = shift.Add(given.At.Sub(p.Usual).Scale(1 / float64(len(a.Points))))
		}
	}
	at := map[string]planar.Vec{}
	for _, p := range f.Points {
		at[p.Name] = p.Usual.Add(shift)
		if given, ok := a.Points[p.Name]; ok {
			at[p.Name] = given.At
		}
	}
	return at
}

// wording returns the sheet's text with what is not a single value put right:
// parts left out, the cam's outline, and the way round of ropes.
func (f *Family) wording(a *Answers, at map[string]planar.Vec) string {
	text := f.text
	for _, p := range f.Points {
		if _, ok := a.Points[p.Name]; p.Optional && !ok && len(a.Points) > 0 {
			for _, part := range p.parts {
				closing := ""
				if strings.HasSuffix(part, "]") {
					closing = "]"
				}
				text = strings.Replace(text, part, closing, 1)
			}
		}
	}
	for _, b := range f.bends {
		way := "clockwise"
		if at[b.b].Sub(at[b.a]).Cross(at[b.c].Sub(at[b.b])) > 0 {
			way = "counter-clockwise"
		}
		said := regexp.MustCompile(`(counter-)?clockwise round(:?) ` + b.round)
		text = said.ReplaceAllString(text, way+" round$2 "+b.round)
	}
	if len(a.Cam) > 0 {
		start := strings.Index(text, "traced: ")
		end := start + strings.IndexByte(text[start:], '\n')
		text = text[:start] + "traced: " + outline(a.Cam, at[f.Cam.axis]) + text[end:]
	}
	return text
}

// outline writes a cam's places as the sheet wants them, from its axis.
func outline(places []calibrate.Point, axis planar.Vec) string {
	parts := make([]string, len(places))
	for i, p := range places {
		from := p.At.Sub(axis)
		parts[i] = "[" + millimetres(from.X, p.Plus.X) + ", " + millimetres(from.Y, p.Plus.Y) + "]"
	}
	return "[" + strings.Join(parts, ", ") + "]"
}

// name returns the machine's name.
func (a *Answers) name(f *Family) string {
	if name := strings.TrimSpace(a.Name); name != "" {
		return name
	}
	return f.Name
}

// measured returns how the machine was measured, and what of it was not.
func (f *Family) measured(a *Answers) string {
	var usual []string
	for _, p := range f.Points {
		if _, ok := a.Points[p.Name]; !ok && !p.guide && !p.Optional {
			usual = append(usual, p.Name)
		}
	}
	for _, v := range f.Values {
		if _, ok := a.Values[v.Name]; !ok {
			usual = append(usual, v.Name)
		}
	}
	if f.Cam != nil && len(a.Cam) == 0 {
		usual = append(usual, "outline of the cam")
	}
	how := strings.TrimSpace(a.Measured)
	switch {
	case len(usual) == 0 && how == "":
		return "it was not said how"
	case len(usual) == 0:
		return how
	case len(usual) == len(f.Points)+len(f.Values) || len(a.Points)+len(a.Values) == 0:
		return "nothing yet; all figures are usual ones of the family"
	case how != "":
		how = strings.TrimSuffix(how, ".") + ". "
	}
	return how + "Not measured, usual figures: " + strings.Join(usual, ", ") + "."
}
