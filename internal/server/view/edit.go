package view

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"steelyard/internal/server/api"
	"steelyard/quantity"
)

// EditError says why an edit cannot be made.
type EditError struct{ Problem, Cure string }

func (e *EditError) Error() string { return e.Problem + "; " + e.Cure }

// Resolve turns edits into values to be written, and returns the text with them
// written: a drag of a point becomes its two coordinates. The settings are those
// with which the machine was shown.
func (t *Text) Resolve(settings []api.Choice, edits []api.Edit) ([]api.ValueEdit, *Text, error) {
	var out []api.ValueEdit
	for _, e := range edits {
		values, changed, err := t.resolve(settings, e)
		if err != nil {
			return nil, nil, err
		}
		out, t = append(out, values...), changed
	}
	return out, t, nil
}

func (t *Text) resolve(settings []api.Choice, e api.Edit) ([]api.ValueEdit, *Text, error) {
	switch {
	case e.Value != nil && e.Point == nil && e.Cam == nil:
		values := []api.ValueEdit{*e.Value}
		changed, err := t.Write(values)
		return values, changed, err
	case e.Point != nil && e.Value == nil && e.Cam == nil:
		return t.dragPoint(settings, e.Point)
	case e.Cam != nil && e.Value == nil && e.Point == nil:
		return t.dragVertex(settings, e.Cam)
	}
	return nil, nil, &EditError{"an edit has not exactly one of value, point and cam", "send one edit for each change"}
}

// fine is how finely a dragged length is written, in its unit: 0.1 mm or about
// that, which no tape betters.
func fine(u quantity.Unit) float64 {
	switch u {
	case quantity.Centimetre:
		return 0.01
	case quantity.Metre:
		return 0.0001
	case quantity.Inch, quantity.FootInch:
		return 0.005
	case quantity.Foot:
		return 0.0005
	}
	return 0.1
}

// rewritten returns the text of a length with another value, m: in the unit it
// was written in, named only if it was, and with its ±.
func rewritten(old string, value float64) (string, error) {
	q, err := quantity.Parse(old, quantity.Length, quantity.Millimetre)
	if err != nil {
		return "", err
	}
	u := q.Unit
	if u == quantity.FootInch {
		u = quantity.Inch
	}
	step := fine(u)
	number := func(si float64) string {
		return strconv.FormatFloat(math.Round(u.FromSI(si)/step)*step+0, 'f', digits(step), 64)
	}
	text := trimZeros(number(value))
	if q.Spread > 0 {
		text += " ± " + strconv.FormatFloat(round(u.FromSI(q.Spread), 6), 'f', -1, 64)
	}
	if strings.ContainsFunc(old, func(r rune) bool { return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r == '"' || r == '\'' }) {
		text += " " + u.Symbol()
	}
	return text, nil
}

func digits(step float64) int { return int(math.Ceil(-math.Log10(step))) }

func trimZeros(text string) string {
	if !strings.Contains(text, ".") {
		return text
	}
	text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}

// setElsewhere says that a number is put in place by a setting.
func setElsewhere(what string) error {
	return &EditError{fmt.Sprintf("a setting decides where %s is", what), "choose another value of the setting, or change the value under settings:"}
}
