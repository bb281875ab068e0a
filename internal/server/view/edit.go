package view

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"steelyard/internal/server/api"
	"steelyard/quantity"
	"steelyard/sheet"
)

// EditError says why an edit cannot be made.
type EditError struct{ Problem, Cure string }

func (e *EditError) Error() string { return e.Problem + "; " + e.Cure }

// Resolve turns edits into values to be written: a drag of a point becomes its
// two coordinates. The settings are those with which the machine was shown.
func Resolve(text string, settings []api.Choice, edits []api.Edit) ([]api.ValueEdit, error) {
	var out []api.ValueEdit
	for _, e := range edits {
		values, err := resolve(text, settings, e)
		if err != nil {
			return nil, err
		}
		if text, err = Write(text, values); err != nil {
			return nil, err
		}
		out = append(out, values...)
	}
	return out, nil
}

func resolve(text string, settings []api.Choice, e api.Edit) ([]api.ValueEdit, error) {
	switch {
	case e.Value != nil && e.Point == nil && e.Cam == nil:
		return []api.ValueEdit{*e.Value}, nil
	case e.Point != nil && e.Value == nil && e.Cam == nil:
		return dragPoint(text, settings, e.Point)
	case e.Cam != nil && e.Value == nil && e.Point == nil:
		return dragVertex(text, settings, e.Cam)
	}
	return nil, &EditError{"an edit has not exactly one of value, point and cam", "send one edit for each change"}
}

// Write writes values into a sheet's text and leaves every other byte of it as
// it is.
func Write(text string, values []api.ValueEdit) (string, error) {
	if len(values) == 0 {
		return text, nil
	}
	d, err := sheet.Read("the sheet", []byte(text))
	if err != nil {
		return "", err
	}
	for _, v := range values {
		if err := d.Set(v.Path, v.Text); err != nil {
			return "", err
		}
	}
	return string(d.Bytes()), nil
}

// Stand returns what stands at each of the paths that values write to, for
// telling whether somebody else has changed it.
func Stand(text string, values []api.ValueEdit) []string {
	tree := parse(text)
	var out []string
	for _, v := range values {
		out = append(out, tree.find(v.Path).text)
	}
	return out
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
