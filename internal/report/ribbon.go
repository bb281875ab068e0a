package report

import (
	"math"

	"steelyard/evaluation"
	"steelyard/internal/draw"
	"steelyard/internal/sketch"
	"steelyard/planar"
)

// ribbon is the load ribbon before it has a place on paper: by position of the
// curve, where the contact is, on which side of its path a resisting force
// stands, and how large it is.
type ribbon struct {
	base  []planar.Vec // m
	side  []planar.Vec // unit
	force []float64    // N, lifting; NaN where there is none
	low   []float64    // N, of the band; equal to force without one
	high  []float64
	third [2]int // positions at which the middle third begins and ends
	full  float64
	can   []float64 // N, what the person can produce; nil without one, NaN where nobody is
	guess []bool    // that rests on strength beyond what was tested
	stick int       // position of the sticking point, or -1
}

// ribbonOf reads the ribbon from an evaluation.
func ribbonOf(e *evaluation.Evaluation) ribbon {
	c := &e.Curve
	r := ribbon{full: ceiling(e), stick: -1}
	sign := sketch.OuterSide(e)
	for k, row := range e.Rows {
		r.base = append(r.base, e.Sweep.Contact[row])
		r.side = append(r.side, e.Sweep.Tangent[row].Perp().Scale(sign))
		f, lo, hi := c.Lift[k], c.Lift[k], c.Lift[k]
		if e.Band != nil {
			lo, hi = e.Band.Between[k].Low, e.Band.Between[k].High
		}
		if !c.Has(k) {
			f, lo, hi = math.NaN(), math.NaN(), math.NaN()
		}
		r.force, r.low, r.high = append(r.force, f), append(r.low, lo), append(r.high, hi)
	}
	for i := range r.third {
		r.third[i] = nearest(c.Travel, c.Length()*float64(i+1)/3)
	}
	if e.Person != nil {
		r.outline(e)
	}
	return r
}

// placed is a ribbon on paper: perNewton is its width in mm for each N.
type placed struct {
	ribbon
	frame     draw.Frame
	perNewton float64
}

// place gives the ribbon a frame, and the width full mm at its widest.
func (r ribbon) place(fr draw.Frame, full float64) placed {
	p := placed{ribbon: r, frame: fr}
	if r.full > 0 {
		p.perNewton = full / r.full
	}
	return p
}

// edge returns where the ribbon's edge is at position k for a force in N. A
// force beyond the ribbon's full width ends there.
func (p placed) edge(k int, force float64) draw.Point {
	n := draw.Point{X: p.side[k].X, Y: -p.side[k].Y}
	force = min(p.full, max(-p.full, force))
	return p.frame.At(p.base[k]).Add(n.Scale(force * p.perNewton))
}

// edges returns the ribbon's edge over the positions from to to-1.
func (p placed) edges(from, to int, force func(k int) float64) []draw.Point {
	var out []draw.Point
	for k := from; k < to; k++ {
		out = append(out, p.edge(k, force(k)))
	}
	return out
}

// tangent returns the direction of the path at position k.
func (p placed) tangent(k int) planar.Angle {
	return p.base[min(k+1, len(p.base)-1)].Sub(p.base[max(k-1, 0)]).Angle()
}

// ribbonFill is the colour of what is sure.
func ribbonFill(th draw.Theme) draw.Color { return mix(th.Load, th.Paper, 0.32) }

// sure returns the part of the force at k that is there whatever the band: the
// end of it nearer to nothing, or nothing.
func (p placed) sure(k int) float64 {
	switch {
	case p.low[k] > 0:
		return p.low[k]
	case p.high[k] < 0:
		return p.high[k]
	}
	return 0
}

// draw draws the ribbon: full where it is sure, hatched where it is not, cut
// at the thirds, with the path under it and dots along the path at gaps.
func (p placed) draw(pg *draw.Page, text float64, th draw.Theme) {
	for _, run := range p.runs() {
		from, to := run[0], run[1]
		path := p.edges(from, to, func(int) float64 { return 0 })
		sure := p.edges(from, to, p.sure)
		pg.Fill(area(path, sure), ribbonFill(th))
		low, high := p.edges(from, to, func(k int) float64 { return p.low[k] }), p.edges(from, to, func(k int) float64 { return p.high[k] })
		open := area(low, high)
		pg.Fill(open, mix(th.Load, th.Paper, 0.08))
		pg.Hatch(open, math.Pi/4, 0.36*text, draw.Pen{Width: 0.06 * text, Color: th.Load})
		pg.Stroke(draw.Polyline(high...), draw.Pen{Width: 0.05 * text, Color: th.Load})
		pg.Stroke(draw.Polyline(p.edges(from, to, func(k int) float64 { return p.force[k] })...), draw.Pen{Width: 0.11 * text, Color: th.Load})
	}
	p.cuts(pg, text, th)
	p.drawOutline(pg, text, th)
	p.path(pg, text, th)
}

// cuts parts the ribbon at the bounds of the thirds.
func (p placed) cuts(pg *draw.Page, text float64, th draw.Theme) {
	for _, k := range p.third {
		reach := p.high[k]
		if math.IsNaN(reach) {
			continue
		}
		past := 0.5 * text / p.perNewton
		line := draw.Polyline(p.edge(k, 0), p.edge(k, reach+past))
		pg.Stroke(line, draw.Pen{Width: 0.34 * text, Color: th.Paper, Cap: draw.ButtCap})
		pg.Stroke(line, draw.Pen{Width: 0.07 * text, Color: th.Ink, Cap: draw.ButtCap})
	}
}

// path draws the contact's way: a ring at its start, a head at its end, dots
// where there is no force.
func (p placed) path(pg *draw.Page, text float64, th draw.Theme) {
	all := p.edges(0, len(p.base), func(int) float64 { return 0 })
	dotted := draw.Pen{Width: 0.16 * text, Color: th.Warn, Dash: []float64{0.02 * text, 0.4 * text}}
	pg.Stroke(draw.Polyline(all...), dotted)
	for _, run := range p.runs() {
		pg.Stroke(draw.Polyline(all[run[0]:run[1]]...), draw.Pen{Width: 0.2 * text, Color: th.Load})
	}
	last := len(all) - 1
	pg.Arrow(all[last-1].Lerp(all[last], -8), all[last], draw.Pen{Width: 0.2 * text, Color: th.Load})
	pg.Fill(draw.Circle(all[0], 0.3*text), th.Paper)
	pg.Stroke(draw.Circle(all[0], 0.3*text), draw.Pen{Width: 0.16 * text, Color: th.Load})
}

// outlines returns the closed edges of all the ribbon may cover, for labels to
// keep off.
func (p placed) outlines() []draw.Path {
	var out []draw.Path
	for _, run := range p.runs() {
		out = append(out, area(p.edges(run[0], run[1], func(k int) float64 { return min(0, p.low[k]) }),
			p.edges(run[0], run[1], func(k int) float64 { return max(0, p.high[k]) })))
	}
	return out
}

// runs returns the stretches [from, to) of positions that have a force.
func (r ribbon) runs() [][2]int {
	var out [][2]int
	from := 0
	for k := range len(r.force) + 1 {
		if k == len(r.force) || math.IsNaN(r.force[k]) {
			if k > from+1 {
				out = append(out, [2]int{from, k})
			}
			from = k + 1
		}
	}
	return out
}

// area returns the closed path along a and back along b.
func area(a, b []draw.Point) draw.Path {
	p := draw.Polyline(a...)
	for i := len(b) - 1; i >= 0; i-- {
		p.Line(b[i])
	}
	p.Close()
	return p
}
