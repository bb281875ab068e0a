package view

import (
	"strings"

	"steelyard/internal/server/api"
	"steelyard/quantity"
	"steelyard/sheet"
)

// values lists every number in use, in the sheet's order.
func (o *Opened) values(b *sheet.Built) []api.Value {
	out := []api.Value{}
	for _, m := range b.Measurements {
		v := api.Value{Path: m.Path, Name: m.Name, Text: o.Document.Text(m.Path), Value: m.Value, Plus: m.Spread, Unit: m.Unit.Symbol(), PerSI: m.Unit.FromSI(1),
			Quantity: QuantityName(m.Unit.Dimension()), How: m.How, Line: o.Document.Line(m.Path)}
		if rest, ok := strings.CutPrefix(m.Path, "settings."); ok {
			v.Setting, _, _ = strings.Cut(rest, ".")
		}
		out = append(out, v)
	}
	return out
}

// QuantityName returns a dimension's name without its article: "length".
func QuantityName(d quantity.Dimension) string {
	name := d.String()
	for _, article := range []string{"a ", "an "} {
		name = strings.TrimPrefix(name, article)
	}
	return name
}
