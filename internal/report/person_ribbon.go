package report

import (
	"fmt"
	"math"

	"steelyard/evaluation"
	"steelyard/internal/draw"
)

const (
	// outlineRoom is how much wider the ribbon's room is with an outline.
	outlineRoom = 1.5
	// outlineMost is how many times the machine's greatest force the outline is
	// drawn out to; beyond, the machine is far from what the person can do.
	outlineMost = 2
)

// sidePerson returns the person at the place the side view shows, if they can
// be there.
func sidePerson(e *evaluation.Evaluation, at *facts) (figureOf, bool) {
	if e.Person == nil || e.Person.Rest.Gap[at.Row] != "" {
		return figureOf{}, false
	}
	return personAt(e, at.Row), true
}

// outline adds what the person can produce, and widens the scale to hold it.
func (r *ribbon) outline(e *evaluation.Evaluation) {
	m := e.Person
	load := r.full
	for _, row := range e.Rows {
		can, bound := m.Can[row], !math.IsNaN(m.CanMost[row])
		if bound {
			can = m.CanMost[row]
		}
		if math.IsInf(can, 1) {
			can = math.NaN()
		}
		if !math.IsNaN(can) {
			r.full = max(r.full, min(can, outlineMost*load))
		}
		r.can, r.guess = append(r.can, can), append(r.guess, bound)
	}
	r.stick = stickingAt(e)
}

// drawnCan returns the outline at a position as far out as it is drawn, or NaN.
func (p placed) drawnCan(k int) float64 {
	if p.can == nil {
		return math.NaN()
	}
	return min(p.can[k], p.full)
}

// style tells how the outline is drawn at a position: firm, dashed where it is
// only the most that can be, dotted where it lies further out.
func (p placed) style(k int) int {
	switch {
	case p.can[k] > p.full:
		return 2
	case p.guess[k]:
		return 1
	}
	return 0
}

// drawOutline draws what the person can produce. Where the ribbon passes it,
// the part beyond is filled.
func (p placed) drawOutline(pg *draw.Page, text float64, th draw.Theme) {
	pen := draw.Pen{Width: 0.24 * text, Color: th.Person}
	dashes := [3][]float64{nil, {0.5 * text, 0.45 * text}, {0.02 * text, 0.6 * text}}
	for k := 1; k < len(p.can); k++ {
		if a, b := p.drawnCan(k-1), p.drawnCan(k); !math.IsNaN(a) && !math.IsNaN(b) {
			p.drawExcess(pg, k, a, b, th)
		}
	}
	for from := 1; from < len(p.can); {
		to := from
		for to < len(p.can) && p.style(to) == p.style(from) && !math.IsNaN(p.drawnCan(to)) {
			to++
		}
		first := from - 1
		if math.IsNaN(p.drawnCan(first)) {
			first = from
		}
		if to > first+1 {
			pen.Dash = dashes[p.style(from)]
			pg.Stroke(draw.Polyline(p.edges(first, to, p.drawnCan)...), pen)
		}
		from = max(to, from+1)
	}
}

// drawExcess fills what the machine asks beyond what the person can produce
// between two positions.
func (p placed) drawExcess(pg *draw.Page, k int, a, b float64, th draw.Theme) {
	fa, fb := p.force[k-1], p.force[k]
	if math.IsNaN(fa) || math.IsNaN(fb) || fa <= a || fb <= b {
		return
	}
	pg.Fill(draw.Polygon(p.edge(k-1, a), p.edge(k-1, fa), p.edge(k, fb), p.edge(k, b)), draw.Alpha(th.Warn, 0.45))
}

// outlineWords describes the person and the outline for who cannot see them.
func outlineWords(e *evaluation.Evaluation, u units) string {
	m := e.Person
	text := capitalised(m.Name()) + " is on it; a line beside the ribbon shows what they can produce"
	if k := stickingAt(e); k >= 0 && !math.IsInf(m.Can[e.Rows[k]], 1) && !math.IsNaN(m.Can[e.Rows[k]]) {
		text += fmt.Sprintf(", %s at the sticking point %s into the travel, where the machine asks %s", u.Force(m.Can[e.Rows[k]]), u.Length(e.Curve.Travel[k]), u.Force(e.Curve.Lift[k]))
	}
	return text + "."
}

// nameOutline names the sticking point, and what lies beyond the outline.
func (s *stage) nameOutline(p placed) {
	if p.can == nil || p.stick < 0 {
		return
	}
	effort := s.e.Person.Rest.Lifting.Peak()
	text := "sticking point " + decimal(effort, 2)
	if effort > 1 {
		text += ", more than there is"
	}
	all := p.edges(0, len(p.can), p.drawnCan)
	for k := 1; k < len(all); k++ {
		if !math.IsNaN(all[k-1].X) && !math.IsNaN(all[k].X) {
			s.names.AvoidLine(draw.Polyline(all[k-1], all[k]))
		}
	}
	at := p.drawnCan(p.stick)
	if math.IsNaN(at) {
		at = p.force[p.stick]
	}
	s.Fill(draw.Circle(p.edge(p.stick, at), 0.32*s.text), s.th.Person)
	s.names.Add(p.edge(p.stick, at), text)
}
