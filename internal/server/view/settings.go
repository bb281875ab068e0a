package view

import (
	"math"
	"strconv"
	"strings"

	"steelyard/internal/server/api"
	"steelyard/quantity"
	"steelyard/sheet"
)

// mostValues is how many values of a range are written out.
const mostValues = 1000

// settings lists what can be adjusted, ranges written out.
func (o *Opened) settings(b *sheet.Built) []api.Setting {
	out := []api.Setting{}
	for i, s := range o.Machine.Settings {
		t := api.Setting{Name: s.Name, Notes: s.Notes, Values: list(s.Values), Default: s.Default, Chosen: b.Choices[i].Value}
		if len(s.Values) == 0 {
			t.Ranged, t.Values = true, steps(s.From, s.To, s.Step)
			t.Default, t.Chosen = same(t.Values, t.Default), same(t.Values, t.Chosen)
		}
		out = append(out, t)
	}
	return out
}

// steps writes out a range in the unit of its step. Package sheet has found it
// good; should it have more values than a list can hold, the step is widened.
func steps(from, to, step string) []string {
	lo, hi, by := parseAny(from), parseAny(to), parseAny(step)
	unit := by.Unit
	for _, q := range []quantity.Quantity{lo, hi} {
		if unit == quantity.NoUnit || unit == quantity.One {
			unit = q.Unit
		}
	}
	first, last, each := lo.In(lo.Unit), hi.In(hi.Unit), by.In(by.Unit)
	if sameDimension(lo, hi, by) {
		first, last, each = unit.FromSI(lo.Value), unit.FromSI(hi.Value), unit.FromSI(by.Value)
	}
	if !(each > 0) {
		return []string{from}
	}
	n := int(math.Floor((last-first)/each + 1e-6))
	skip := 1 + n/mostValues
	out := []string{}
	for k := 0; k <= n; k += skip {
		text := strconv.FormatFloat(round(first+float64(k)*each, 9), 'f', -1, 64)
		out = append(out, strings.TrimSpace(text+" "+unit.Symbol()))
	}
	return out
}

func sameDimension(qs ...quantity.Quantity) bool {
	for _, q := range qs {
		if q.Unit.Dimension() != qs[0].Unit.Dimension() {
			return false
		}
	}
	return true
}

// parseAny reads a number of whatever dimension its unit says; without a unit
// as a plain number.
func parseAny(text string) quantity.Quantity {
	for d := quantity.Ratio; d <= quantity.Modulus; d++ {
		bare := quantity.NoUnit
		if d == quantity.Ratio {
			bare = quantity.One
		}
		if q, err := quantity.Parse(text, d, bare); err == nil {
			return q
		}
	}
	return quantity.Quantity{Unit: quantity.One}
}

// same returns that of the values which is the same number as text.
func same(values []string, text string) string {
	want := parseAny(text)
	for _, v := range values {
		if q := parseAny(v); math.Abs(q.Value-want.Value) <= 1e-9*max(1, math.Abs(want.Value)) {
			return v
		}
	}
	return text
}
