package mechanism

import (
	"math"
	"testing"

	"steelyard/planar"
)

// strand is a straight piece of rope, found here without the solver's own
// tangents: the direction for which both ends lie on one line, by scanning and
// bisecting the outlines' support functions.
type strand struct {
	on        vec          // a point of its line
	unit      vec          // from the route's first station towards its last
	direction planar.Angle // of unit
	length    float64      // m
}

// poser is where every link is: a State or one row of a Sweep.
type poser interface {
	Pose(LinkID) planar.Motion
	Turn(LinkID) planar.Angle
}

// row is one position of a sweep.
type row struct {
	*Sweep
	i int
}

func (r row) Pose(l LinkID) planar.Motion { return r.Sweep.Pose(r.i, l) }
func (r row) Turn(l LinkID) planar.Angle  { return r.Sweep.Turn(r.i, l) }

// strands returns the straight pieces of the route.
func strands(t testing.TB, at poser, route Route) []strand {
	t.Helper()
	list := make([]strand, len(route)-1)
	for k := range list {
		list[k] = tautBetween(t, at, &route[k], &route[k+1])
	}
	return list
}

func tautBetween(t testing.TB, at poser, a, b *Station) strand {
	t.Helper()
	gap := func(theta float64) float64 { return offset(at, b, theta) - offset(at, a, theta) }
	const scan = 96
	best := strand{length: -1}
	for i := range scan {
		lo, hi := 2*math.Pi*float64(i)/scan, 2*math.Pi*float64(i+1)/scan
		if (gap(lo) < 0) == (gap(hi) < 0) {
			continue
		}
		rising := gap(lo) < 0
		for range 60 {
			if mid := (lo + hi) / 2; (gap(mid) < 0) == rising {
				lo = mid
			} else {
				hi = mid
			}
		}
		u := planar.Polar(1, planar.Angle(lo))
		if length := along(at, b, lo) - along(at, a, lo); length > best.length {
			best = strand{u.Perp().Scale(offset(at, a, lo)), u, planar.Angle(lo), length}
		}
	}
	if best.length < 0 {
		t.Fatalf("no strand from %q to %q", a.Name, b.Name)
	}
	return best
}

// offset returns how far left of the ground's origin a line in direction theta
// runs that touches the station on its side.
func offset(at poser, s *Station, theta float64) float64 {
	left := planar.Polar(1, planar.Angle(theta+math.Pi/2))
	c := at.Pose(s.Link).Point(s.At).Dot(left)
	if s.Outline == nil {
		return c
	}
	side := float64(s.Side)
	h, _ := s.Outline.Support(planar.Angle(theta-side*math.Pi/2) - at.Turn(s.Link))
	return c - side*h
}

// along returns how far along its direction that line touches the station.
func along(at poser, s *Station, theta float64) float64 {
	c := at.Pose(s.Link).Point(s.At).Dot(planar.Polar(1, planar.Angle(theta)))
	if s.Outline == nil {
		return c
	}
	side := float64(s.Side)
	_, dh := s.Outline.Support(planar.Angle(theta-side*math.Pi/2) - at.Turn(s.Link))
	return c + side*dh
}

func TestJointsStayTogether(t *testing.T) {
	// Link lengths and rope lengths are kept: pins coincide, guides neither turn
	// nor leave their line, and what a rope gains in one place it loses in another.
	eachRandom(t, func(t *testing.T, m Machine) {
		sw := mustSweep(t, m, 21)
		total := make([]float64, len(m.Ropes))
		for i := range sw.Hold {
			at := row{sw, i}
			for _, j := range m.Joints {
				gap := at.Pose(j.B).Point(j.At).Sub(at.Pose(j.A).Point(j.At))
				if j.Kind == Prismatic {
					gap = vec{Y: at.Pose(j.A).Turn(planar.Polar(1, j.Along)).Cross(gap)}
					near(t, j.Name+", turn, rad", float64(at.Turn(j.B)-at.Turn(j.A)), 0, 1e-11)
				}
				near(t, j.Name+", gap, m", gap.Norm(), 0, 1e-11)
			}
			for k, r := range m.Ropes {
				if i > 0 {
					total[k] += lengthened(t, row{sw, i - 1}, at, r.Route)
				}
				near(t, r.Name+", lengthened, m", total[k], 0, 1e-9)
			}
		}
	})
}

// lengthened returns by how much a rope would be longer at b than at a, two
// poses less than half a turn apart.
func lengthened(t *testing.T, a, b poser, route Route) float64 {
	t.Helper()
	before, after := strands(t, a, route), strands(t, b, route)
	sum := 0.0
	for k, s := range route {
		if k < len(before) {
			sum += after[k].length - before[k].length
		}
		if s.Outline == nil {
			continue
		}
		side := planar.Angle(s.Side)
		grown := func(n int) float64 { // outline passed by the touching point of strand n
			from := before[n].direction - side*math.Pi/2 - a.Turn(s.Link)
			to := (after[n].direction - side*math.Pi/2 - b.Turn(s.Link)).Near(from)
			return float64(side) * (s.Outline.Length(to) - s.Outline.Length(from))
		}
		if k < len(before) {
			sum += grown(k)
		}
		if k > 0 {
			sum -= grown(k - 1)
		}
	}
	return sum
}
