package view

import (
	"context"
	"fmt"
	"sort"
	"strings"

	"steelyard/evaluation"
	"steelyard/internal/server/api"
	"steelyard/profile"
	"steelyard/sheet"
)

// MostCompared is how many machines can be set beside each other.
const MostCompared = 6

// axisPoints is how finely the common axes are divided.
const axisPoints = 101

// Side is one machine to be compared.
type Side struct {
	Label    string // empty: its name and what differs from its defaults
	Sheet    string // id, if it is stored
	Text     *Text  // nil if it is stored no more
	Settings []api.Choice
}

// Compare sets machines beside each other in one phase, with a person on each if
// one is given. One that cannot be computed is listed with its trouble and no
// curve.
func Compare(ctx context.Context, sides []Side, phase api.Phase, imperial bool, person *sheet.Person) api.Comparison {
	p := profile.Lifting
	for q, name := range phases {
		if name == phase {
			p = q
		}
	}
	out := api.Comparison{Share: []float64{}, Travel: []float64{}, Items: []api.ComparedCurve{}, Words: []api.ComparisonWords{}}
	curves := make([]*profile.Curve, len(sides))
	longest := 0.0
	for i, s := range sides {
		item, c := compared(ctx, s, p, Units(imperial), person)
		out.Items = append(out.Items, item)
		if curves[i] = c; c != nil {
			longest = max(longest, c.Length())
		}
	}
	for k := range axisPoints {
		u := float64(k) / (axisPoints - 1)
		out.Share, out.Travel = append(out.Share, share(u)), append(out.Travel, metres(u*longest))
	}
	distinguish(out.Items)
	for i, c := range curves {
		item := &out.Items[i]
		item.ByShare, item.ByTravel = []*float64{}, []*float64{}
		if c == nil {
			continue
		}
		for k := range axisPoints {
			u := float64(k) / (axisPoints - 1)
			item.ByShare = append(item.ByShare, forceAt(c, p, u*c.Length()))
			item.ByTravel = append(item.ByTravel, forceAt(c, p, u*longest))
		}
	}
	out.Words = comparisonWords(out.Items, curves, p, Units(imperial))
	return out
}

// compared evaluates one side.
func compared(ctx context.Context, s Side, p profile.Phase, u evaluation.Formatter, person *sheet.Person) (api.ComparedCurve, *profile.Curve) {
	item := api.ComparedCurve{Label: s.Label, Sheet: s.Sheet, Settings: []api.Choice{}, Effort: []*float64{}, Joints: []api.ComparedJoint{}}
	fail := func(err error) (api.ComparedCurve, *profile.Curve) {
		item.Trouble = Problems(err)[0].Message
		return item, nil
	}
	if s.Text == nil {
		item.Gone = true
		return item, nil
	}
	o, err := s.Text.opened()
	if err != nil {
		return fail(err)
	}
	if item.Label == "" {
		item.Label = o.Machine.Name
	}
	b, err := o.Set(s.Settings)
	if err != nil {
		return fail(err)
	}
	item.Settings = choices(b)
	if s.Label == "" {
		item.Label = strings.Join(append([]string{o.Machine.Name}, differing(o.Machine, b, u)...), ", ")
	}
	e, _, err := o.Evaluate(ctx, b, &api.Look{})
	if err != nil {
		return fail(err)
	}
	r := reading(e.Readings[p])
	item.Readings, item.Side = &r, e.Side()
	if person != nil {
		comparePerson(&item, e, person)
	}
	return item, &e.Curve
}

// differing names the settings that are not at their default.
func differing(m *sheet.Machine, b *sheet.Built, u evaluation.Formatter) []string {
	var out []string
	for i, c := range b.Choices {
		if s := m.Settings[i]; same([]string{s.Default}, c.Value) != s.Default {
			out = append(out, c.Setting+" "+evaluation.Beside(c.Value, u))
		}
	}
	return out
}

// distinguish numbers labels that are alike.
func distinguish(items []api.ComparedCurve) {
	seen := map[string]int{}
	for i := range items {
		label := items[i].Label
		if seen[label]++; seen[label] > 1 {
			items[i].Label = fmt.Sprintf("%s (%d)", label, seen[label])
		}
	}
}

// forceAt returns the force at a place on the travel, straight between
// positions; nil in a gap or beyond the travel.
func forceAt(c *profile.Curve, p profile.Phase, travel float64) *float64 {
	n := len(c.Travel)
	if travel > c.Length()*(1+1e-9) {
		return nil
	}
	i := min(max(sort.SearchFloat64s(c.Travel, travel), 1), n-1)
	if !c.Has(i-1) || !c.Has(i) {
		return nil
	}
	t := (travel - c.Travel[i-1]) / (c.Travel[i] - c.Travel[i-1])
	f := c.Force(p)
	x := newtons(f[i-1]*(1-t) + f[i]*t)
	return &x
}

// comparisonWords says how each differs from the first.
func comparisonWords(items []api.ComparedCurve, curves []*profile.Curve, p profile.Phase, u evaluation.Formatter) []api.ComparisonWords {
	out := []api.ComparisonWords{}
	if len(curves) == 0 || curves[0] == nil {
		return out
	}
	for i := 1; i < len(curves); i++ {
		if curves[i] == nil {
			continue
		}
		c, err := profile.Compare(*curves[0], *curves[i], p)
		if err != nil { // both curves were read before
			continue
		}
		w := api.ComparisonWords{Label: items[i].Label, Words: list(c.Words(items[0].Label, items[i].Label, u))}
		for k, third := range c.OnShare.Thirds {
			w.More[k] = newtons(third.More())
		}
		out = append(out, w)
	}
	return out
}
