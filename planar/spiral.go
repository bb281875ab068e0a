package planar

import (
	"fmt"
	"math"
)

// Spiral is the arc of a spiral, the classic cam whose moment arm grows as it
// turns, closed by a straight back from its last point to its first.
type Spiral struct {
	Pole     Vec     // centre of the spiral, m
	Tilt     Angle   // direction from the pole in which φ = 0
	Radius   float64 // distance from the pole at φ = 0, m
	Growth   float64 // of the radius with φ; the constructors say how
	From, To Angle   // the arc runs over φ from From to To, less than one turn
}

// LogSpiral returns the outline of s with r = Radius · exp(Growth·φ), Growth per
// rad: the angle between rope and radius stays the same, so the moment arm
// about the pole grows by the same ratio with every degree.
//
// It returns an error if a radius is not above 0 and up to 100 m, or if the arc
// is not between 1° and 359°.
func LogSpiral(s Spiral) (*Traced, error) {
	return spiralOutline(spiralArc{s, true})
}

// ArithmeticSpiral returns the outline of s with r = Radius + Growth·φ, Growth
// in m/rad: the radius grows by the same length with every degree. Errors are
// those of [LogSpiral].
func ArithmeticSpiral(s Spiral) (*Traced, error) {
	return spiralOutline(spiralArc{s, false})
}

// spiralArc is a [path]: the spiral for parameters 0 to 1, its back from 1 to 2.
type spiralArc struct {
	Spiral
	log bool
}

// radius returns r and dr/dφ.
func (s *spiralArc) radius(phi Angle) (r, dr float64) {
	if s.log {
		r = s.Radius * math.Exp(s.Growth*float64(phi))
		return r, s.Growth * r
	}
	return s.Radius + s.Growth*float64(phi), s.Growth
}

func (s *spiralArc) at(x float64) (p, d Vec) {
	x -= 2 * math.Floor(x/2)
	if x > 1 {
		a, _ := s.at(1)
		b, _ := s.at(0)
		return a.Lerp(b, x-1), b.Sub(a)
	}
	phi := s.From + Angle(x)*(s.To-s.From)
	r, dr := s.radius(phi)
	u := Polar(1, s.Tilt+phi)
	return s.Pole.Add(u.Scale(r)), u.Scale(dr).Add(u.Perp().Scale(r))
}

func (s *spiralArc) span() float64 { return 2 }

// area returns ½∫r² dφ, closed by the triangle of pole, last and first point.
func (s *spiralArc) area() float64 {
	sweep := float64(s.To - s.From)
	a, _ := s.radius(s.From)
	b, _ := s.radius(s.To)
	sector := sweep * (a*a + a*b + b*b) / 6
	if k := 2 * s.Growth * sweep; s.log && k != 0 {
		sector = a * a * sweep * math.Expm1(k) / (2 * k)
	}
	return sector - a*b*math.Sin(sweep)/2
}

// spiralOutline returns the outline of a spiral that a rope sees.
func spiralOutline(s spiralArc) (*Traced, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	count := int(math.Ceil(float64(s.To-s.From) / sampleTurn))
	samples := make([]sample, count+1)
	for i := range samples {
		x := float64(i) / float64(count)
		p, d := s.at(x)
		samples[i] = sample{x: x, p: p, in: d, out: d}
	}
	first, last := &samples[0], &samples[count]
	back := first.p.Sub(last.p)
	first.in, first.corner = back, true
	last.out, last.corner = back, true
	return rolled(&s, samples), nil
}

// check returns an error unless the spiral is an arc that can be rolled.
func (s *spiralArc) check() error {
	sweep := s.To - s.From
	if !(sweep >= Degree && sweep <= 359*Degree) || !(math.Abs(float64(s.From)) <= 100) || !(math.Abs(float64(s.Tilt)) <= 100) {
		return fmt.Errorf("planar: the spiral runs from %.4g° to %.4g°; its end must lie 1° to 359° past its start",
			s.From.Degrees(), s.To.Degrees())
	}
	for _, phi := range [2]Angle{s.From, s.To} {
		if r, _ := s.radius(phi); !(r > 1e-3 && r <= maxReach) {
			return fmt.Errorf("planar: the spiral's radius at %.4g° would be %.4g mm; change its radius or growth so that it stays above 1 mm and up to %d m",
				phi.Degrees(), 1000*r, int(maxReach))
		}
	}
	if !(math.Abs(s.Pole.X) <= maxReach && math.Abs(s.Pole.Y) <= maxReach) {
		return fmt.Errorf("planar: the spiral's pole (%.4g mm, %.4g mm) is further than %d m from the origin; check its coordinates and their unit",
			1000*s.Pole.X, 1000*s.Pole.Y, int(maxReach))
	}
	return nil
}
