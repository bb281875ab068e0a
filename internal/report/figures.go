package report

import (
	"fmt"
	"strings"

	"steelyard/evaluation"
	"steelyard/internal/draw"
	"steelyard/profile"
)

// figure is a picture of the report, with what a reader is told who cannot see
// it.
type figure struct {
	title, desc string
	page        float64 // height over width across a printed page
	wide, slim  float64 // and on a desk's screen, half of it wide, and on a phone
	draw        func(c canvas, box draw.Rect)
	person      bool // of the person, not of the machine alone
}

// figures returns the report's pictures in their order. Those of the machine are
// left out if it cannot be brought back to a place where the sweep has been.
func figures(e *evaluation.Evaluation, u units) []figure {
	var out []figure
	places, err := threePlaces(e)
	if err == nil {
		out = append(out, figure{title: "Where the load is felt", desc: sideWords(e, u, places), page: 0.55, wide: 0.7, slim: slimShare(e, places),
			draw: func(c canvas, box draw.Rect) { c.sideView(e, places, box) }})
	}
	out = append(out, figure{title: "Force over the travel", desc: curveWords(e, u), page: curveShare, wide: 0.7, slim: 0.8,
		draw: func(c canvas, box draw.Rect) { c.curve(e, box) }})
	if e.Person != nil {
		out = append(out, personFigures(e, u)...)
	}
	if err == nil {
		out = append(out, figure{title: "Three places, and the lengths that decide", desc: placeWords(e, u, places), page: 0.42, wide: 0.6, slim: 2.5,
			draw: func(c canvas, box draw.Rect) { c.positions(e, places, box) }})
	}
	if e.Stroke != nil {
		out = append(out, figure{title: "One repetition in time", desc: strokeWords(e, u), page: 0.3, wide: 0.6, slim: 0.75,
			draw: func(c canvas, box draw.Rect) { c.stroke(e.Stroke, box) }})
	}
	return out
}

// curveShare is the height of the curve over the width of a page.
const curveShare = 0.345

// slimShare returns the height of the side view over its width on a phone,
// where a machine that is wider than high needs less, and both have labels and
// scales above and below.
func slimShare(e *evaluation.Evaluation, places [3]*facts) float64 {
	b := machineBounds(e.Model.Machine(), places[:])
	size := b.hi.Sub(b.lo)
	return min(1.2, 0.42+max(0.3, size.Y/max(size.X, 1e-6)))
}

func sideWords(e *evaluation.Evaluation, u units, places [3]*facts) string {
	var at []string
	for _, f := range places {
		at = append(at, fmt.Sprintf("%s at %s", u.Force(f.Force), u.Length(f.Travel)))
	}
	text := fmt.Sprintf("Side view of the machine. A ribbon along the path of %s, as wide as the force there: %s of its %s of travel.",
		the(e.Model.Machine().Contact.Name), strings.Join(at, ", "), u.Length(e.Curve.Length()))
	if e.Person != nil {
		text += " " + outlineWords(e, u)
	}
	return text
}

func curveWords(e *evaluation.Evaluation, u units) string {
	r := &e.Readings[profile.Lifting]
	return fmt.Sprintf("Lifting force from %s at the start to %s at the end; greatest %s at %s of the travel, least %s at %s. The table below has the numbers.",
		u.Force(r.Start.Force), u.Force(r.End.Force), u.Force(r.Peak.Force), percent(r.Peak.Share), u.Force(r.Least.Force), percent(r.Least.Share))
}

func placeWords(e *evaluation.Evaluation, u units, places [3]*facts) string {
	var all []string
	for _, f := range places {
		all = append(all, f.Name+": "+u.Force(f.Force)+", "+strings.Join(notes(e, u, f, armsOf(e.Model.Machine(), f)), ", ")+".")
	}
	return strings.Join(all, " ")
}

func strokeWords(e *evaluation.Evaluation, u units) string {
	s := e.Stroke
	return fmt.Sprintf("Force over %s s: greatest %s at %s s, least %s at %s s.", decimal(s.Time[len(s.Time)-1], 1),
		u.Force(s.Force[s.Peak]), decimal(s.Time[s.Peak], 1), u.Force(s.Force[s.Dip]), decimal(s.Time[s.Dip], 1))
}
