package profile

import (
	"fmt"
	"math"
)

// Pair is one quantity on two machines.
type Pair struct{ A, B float64 }

// More returns how much more B asks than A.
func (p Pair) More() float64 { return p.B - p.A }

// Crossing is a place where one curve takes over from the other.
type Crossing struct {
	At      float64 // m of travel, or share of the travel
	Force   float64 // N, both curves
	BHarder bool    // beyond the crossing B asks more than A
}

// Apart is where two curves differ most.
type Apart struct {
	At    float64 // m of travel, or share of the travel
	Force Pair    // N there
}

// Difference compares two curves along one axis, only where both have a force.
type Difference struct {
	Span    float64 // what is compared: m of travel that both machines have, or 1
	Covered float64 // on how much of it both have a force, 0 to 1; at 0 nothing below means anything

	Mean      Pair    // N, over the travel
	Thirds    [3]Pair // mean force in N over each third of Span; 0, 0 where they share nothing
	Largest   Apart
	Crossings []Crossing // in order along the axis

	// Shape is the correlation of the two forces along the axis, -1 to 1: 1
	// means that one curve is the other stretched and shifted in force. It is
	// 0 and HasShape false if one of them does not vary.
	Shape    float64
	HasShape bool
}

// Comparison sets two curves against each other from the same start: metre by
// metre, up to the end of the shorter travel, and share by share of each
// machine's own travel.
type Comparison struct{ OnTravel, OnShare Difference }

// alike is the difference in N below which two curves count as meeting, so
// that rounding makes no crossings.
const alike = 1e-6

// level is the deviation, over the mean size of a force, below which it counts
// as not varying.
const level = 1e-6

// Compare compares two curves in one phase. Both are straight between
// positions, so their difference is too on the union of the positions, and
// crossings, means and correlation are exact for these lines.
//
// Errors: those of [Curve.Check].
func Compare(a, b Curve, p Phase) (Comparison, error) {
	for _, c := range [...]Curve{a, b} {
		if err := c.Check(); err != nil {
			return Comparison{}, err
		}
	}
	shared := min(a.Length(), b.Length())
	return Comparison{
		OnTravel: difference(newTrack(a, p, 1), newTrack(b, p, 1), shared),
		OnShare:  difference(newTrack(a, p, a.Length()), newTrack(b, p, b.Length()), 1),
	}, nil
}

// track is a curve along an axis, read in ascending order.
type track struct {
	curve Curve
	force []float64
	unit  float64 // m of travel for one unit of the axis
	i     int     // current segment
}

func newTrack(c Curve, p Phase, unit float64) *track {
	return &track{curve: c, force: c.Force(p), unit: unit}
}

// end returns the far end of the current segment.
func (t *track) end() float64 { return t.curve.Travel[t.i+1] / t.unit }

func (t *track) last() bool { return t.i == len(t.curve.Travel)-2 }

func (t *track) has() bool { return t.curve.Has(t.i) && t.curve.Has(t.i+1) }

// at returns the force on the current segment's line.
func (t *track) at(x float64) float64 {
	s0, s1 := t.curve.Travel[t.i], t.curve.Travel[t.i+1]
	return t.force[t.i] + (x*t.unit-s0)/(s1-s0)*(t.force[t.i+1]-t.force[t.i])
}

// difference walks both tracks over the union of their positions and the edges
// of the thirds, up to span.
func difference(a, b *track, span float64) Difference {
	d := Difference{Span: span}
	var m [3]joint
	side := 0 // sign of B - A when it was last told apart; 0 after a gap
	x, third := 0.0, 0
	for x < span {
		edge := span * float64(third+1) / 3
		if third == 2 {
			edge = span
		}
		to := min(a.end(), b.end(), edge)
		if !a.has() || !b.has() {
			side = 0
		} else if to > x {
			p := piece{x, to, Pair{a.at(x), b.at(x)}, Pair{a.at(to), b.at(to)}}
			m[third].add(p)
			d.widen(p)
			side = d.cross(p, side)
		}

		x = to
		if x >= edge && third < 2 {
			third++
		}
		for _, t := range [...]*track{a, b} {
			if t.end() <= x && !t.last() {
				t.i++
			}
		}
	}
	d.conclude(m)
	return d
}

// piece is a stretch on which both forces are straight lines.
type piece struct {
	x0, x1 float64
	f0, f1 Pair
}

func (d *Difference) widen(p piece) {
	for _, end := range [...]Apart{{p.x0, p.f0}, {p.x1, p.f1}} {
		if math.Abs(end.Force.More()) > math.Abs(d.Largest.Force.More()) {
			d.Largest = end
		}
	}
}

// cross records a crossing if B - A has changed sign since it was last told
// apart, and returns its sign at the end of the piece.
func (d *Difference) cross(p piece, side int) int {
	d0, d1 := p.f0.More(), p.f1.More()
	if side == 0 {
		side = sign(d0)
	}
	now := sign(d1)
	if now == 0 {
		return side
	}
	if side != 0 && now != side {
		t := min(1, max(0, d0/(d0-d1)))
		d.Crossings = append(d.Crossings, Crossing{
			At:      p.x0 + t*(p.x1-p.x0),
			Force:   p.f0.A + t*(p.f1.A-p.f0.A),
			BHarder: now > 0,
		})
	}
	return now
}

func sign(d float64) int {
	switch {
	case d > alike:
		return 1
	case d < -alike:
		return -1
	}
	return 0
}

// Words says how machine b differs from machine a, share by share of each
// one's own travel, in sentences for a coach. The names stand for the machines.
func (c Comparison) Words(a, b string, f Formatter) []string {
	d := c.OnShare
	if d.Covered == 0 {
		return []string{fmt.Sprintf("%s and %s have no force at the same part of the travel; they can't be compared.", a, b)}
	}
	s := []string{
		fmt.Sprintf("On average %s asks for %s, %s for %s.", a, f.Force(d.Mean.A), b, f.Force(d.Mean.B)),
		fmt.Sprintf("%s asks for %s in the lengthened third, %s in the middle, %s in the shortened.", b,
			more(d.Thirds[Lengthened], f), more(d.Thirds[Middle], f), more(d.Thirds[Shortened], f)),
		fmt.Sprintf("They are furthest apart %s: %s %s, %s %s.", placeOf(d.Largest.At),
			a, f.Force(d.Largest.Force.A), b, f.Force(d.Largest.Force.B)),
	}
	for _, x := range d.Crossings {
		harder := a
		if x.BHarder {
			harder = b
		}
		s = append(s, fmt.Sprintf("They meet %s at %s; beyond that %s is harder.", placeOf(x.At), f.Force(x.Force), harder))
	}
	if d.HasShape {
		s = append(s, fmt.Sprintf("Likeness of shape %.2f, where 1 is the same shape and -1 its mirror image.", d.Shape))
	}
	return s
}

func more(p Pair, f Formatter) string {
	if p.More() < 0 {
		return f.Force(-p.More()) + " less"
	}
	return f.Force(p.More()) + " more"
}
