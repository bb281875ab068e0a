package planar

import "math"

// touchTolerance is the overlap in m still taken as two outlines that just
// touch: far below what a tape reads, far above rounding.
const touchTolerance = 1e-9

// CommonTangent finds the straight rope piece that leaves a and arrives at b,
// each lying on its Side of it, and writes it to out. Where there are several
// it takes the one nearest in direction to guess, the direction at the
// neighbouring pose, and counts turns from there: out.Direction lies within
// half a turn of guess.
//
// The direction is good to 1e-12 rad, or to 2e-15 m across the span where that
// is more. Outlines that overlap by no more than 1e-9 m count as touching, and
// the rope runs along their common tangent.
//
// It returns an *OverlapError if the rope would have to pass between outlines
// that overlap, an *InsideError if one lies inside the other, and ErrCoincide
// for two points in one place; out is then unchanged.
func CommonTangent(a, b *Wrapped, guess Angle, out *Span) error {
	var p pair
	p.place(a, b)
	if p.from.outline == nil && p.to.outline == nil {
		u, err := p.discTangent()
		if err != nil {
			return err
		}
		l := line{theta: u.Angle().Near(guess), u: u}
		p.touch(&l)
		out.set(a, b, &l)
		return nil
	}

	l := line{theta: guess, u: Polar(1, guess)}
	if !p.follow(&l) {
		theta, err := p.search(guess, nearest)
		if err != nil {
			return err
		}
		l = line{theta: theta, u: Polar(1, theta)}
		p.touch(&l)
	}
	out.set(a, b, &l)
	return nil
}

// FirstTangent is [CommonTangent] without a guess. The direction lies in
// (-π, π]. Where there are several tangents, as between outlines that overlap,
// it takes the longest.
func FirstTangent(a, b *Wrapped, out *Span) error {
	var p pair
	p.place(a, b)
	if p.from.outline == nil && p.to.outline == nil {
		return CommonTangent(a, b, 0, out)
	}
	theta, err := p.search(0, longest)
	if err != nil {
		return err
	}
	return CommonTangent(a, b, theta.Normalized(), out)
}

// set sets the span from the line it lies on.
func (s *Span) set(a, b *Wrapped, l *line) {
	s.From, s.To = l.from.point(l.u), l.to.point(l.u)
	s.Unit, s.Direction = l.u, l.theta
	s.Length = max(0, l.length())
	s.NormalFrom, s.NormalTo = a.normal(l.theta), b.normal(l.theta)
}

// discTangent returns the direction of the common tangent of two circles or
// points.
//
// With d from centre to centre, ℓ the span's length and L its left normal,
//
//	d = ℓ u + k L,  k = σ₂r₂ - σ₁r₁,  ℓ² = d² - k²  so  u = (ℓ d - k d⊥) / d²
func (p *pair) discTangent() (Vec, error) {
	d := p.to.center.Sub(p.from.center)
	k := p.to.side*p.to.radius - p.from.side*p.from.radius
	dd := d.Dot(d)
	if dd == 0 || k*k > dd {
		if depth := math.Abs(k) - math.Sqrt(dd); dd == 0 || depth > touchTolerance {
			return Vec{}, p.refusal(depth)
		}
		return d.Perp().Scale(-k).Unit(), nil
	}
	l := math.Sqrt(dd - k*k)
	return d.Scale(l / dd).Sub(d.Perp().Scale(k / dd)), nil
}

// refusal returns the error for ends that miss having a common tangent by the
// given depth in m.
func (p *pair) refusal(depth float64) error {
	switch {
	case p.from.isPoint() && p.to.isPoint():
		return ErrCoincide
	case p.from.isPoint() || p.to.isPoint():
		return &InsideError{Depth: depth, Point: true}
	case p.from.side == p.to.side:
		return &InsideError{Depth: depth}
	}
	return &OverlapError{Gap: -depth}
}
