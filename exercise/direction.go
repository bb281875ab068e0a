package exercise

import (
	"math"

	"steelyard/human"
	"steelyard/mechanism"
)

// Direction tells how the direction of the contact force came about.
type Direction int

// The directions.
const (
	LeastEffort Direction = iota // of those the machine leaves free, the one whose greatest effort is least
	AlongPath                    // of the contact
	AlongRope
	SquareToSegment // a pad that rolls and slides
	Downward        // a weight
	OfStatics       // of the whole body: nothing is free
)

var directionNames = [...]string{"in the direction of least effort", "along the path", "along the rope", "square to the limb", "straight down", "as the balance of the body demands"}

// String returns the direction in words.
func (d Direction) String() string { return directionNames[d] }

// slant is the most force across the path, in either direction, over that along
// it. 27° either way. Own choice, no source.
const slant = 0.5

// leastEffort returns the free part of the contact force (N), within slant of F
// (of a bar: of its weight) on either axis, that makes the greatest effort of all joints
// least, and that effort.
//
// Each effort is linear in x for one sign of its moment, so the least z over
// all is at a corner where three of the planes meet: a linear programme in
// (x, z), small enough to try every corner. Of the directions that are equally
// good to a millionth the one nearest the path is taken.
func (st *stance) leastEffort(f float64) (x [2]float64, z float64) {
	z = st.greatest(f, x)
	most := slant * f
	if st.push.mass > 0 {
		most = slant * st.push.mass * mechanism.Gravity
	}
	if st.push.free == 0 || most <= 0 {
		return x, z
	}
	var planes [mostPlanes]plane
	n := st.planes(&planes, f, most)
	for i := range n {
		for j := range i {
			for k := range j {
				if p, ok := meet(&planes[i], &planes[j], &planes[k]); ok && p[2] < z && under(planes[:n], p) {
					z = p[2]
				}
			}
		}
	}
	x = nearest(planes[:n], z*(1+alike)+alike)
	return x, st.greatest(f, x)
}

// nearest returns the least x with no effort above z: the origin, the foot on
// an edge, or a corner of what the planes leave.
func nearest(planes []plane, z float64) (best [2]float64) {
	least := math.Inf(1)
	try := func(x0, x1 float64) {
		if d := math.Hypot(x0, x1); d < least && under(planes, [3]float64{x0, x1, z}) {
			best, least = [2]float64{x0, x1}, d
		}
	}
	try(0, 0)
	for i := range planes {
		p := &planes[i]
		c := p.c*z - p.b
		if l := p.a0*p.a0 + p.a1*p.a1; l > 0 {
			try(c*p.a0/l, c*p.a1/l)
		}
		for j := range i {
			q := &planes[j]
			d := q.c*z - q.b
			if det := p.a0*q.a1 - p.a1*q.a0; det != 0 {
				try((c*q.a1-p.a1*d)/det, (p.a0*d-c*q.a0)/det)
			}
		}
	}
	return best
}

// alike is the share by which two efforts may differ and count as the same.
const alike = 1e-6

// mostPlanes: two for each joint and two bounds for each free direction.
const mostPlanes = 2*int(NumJoints) + 4

// tie is the rounding of an effort.
const tie = 1e-9

// plane is a·x + b ≤ c·z, with c 0 for a bound of x.
type plane struct{ a0, a1, c, b float64 }

// planes lists the efforts at a force, and the bounds of x.
func (st *stance) planes(out *[mostPlanes]plane, f, most float64) int {
	n := 0
	for i := range st.n {
		d := &st.demands[i]
		for k, sign := range [2]float64{1, -1} {
			if d.has[k] {
				s := sign / d.can[k].Moment
				out[n] = plane{s * d.across[0], s * d.across[1], 1, s * (d.base + d.per*f)}
				n++
			}
		}
	}
	for _, a := range [4][2]float64{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
		out[n] = plane{a[0], a[1], 0, -most}
		n++
	}
	return n
}

// meet returns the point (x, z) in which three planes meet, by Cramer's rule.
func meet(p, q, r *plane) (at [3]float64, ok bool) {
	det := p.a0*(q.a1*-r.c+q.c*r.a1) - p.a1*(q.a0*-r.c+q.c*r.a0) - p.c*(q.a0*r.a1-q.a1*r.a0)
	size := (math.Abs(p.a0) + math.Abs(p.a1) + p.c) * (math.Abs(q.a0) + math.Abs(q.a1) + q.c) * (math.Abs(r.a0) + math.Abs(r.a1) + r.c)
	if math.Abs(det) <= 1e-12*size { // two of the planes are parallel to rounding
		return at, false
	}
	bp, bq, br := -p.b, -q.b, -r.b
	at[0] = (bp*(q.a1*-r.c+q.c*r.a1) - p.a1*(bq*-r.c+q.c*br) - p.c*(bq*r.a1-q.a1*br)) / det
	at[1] = (p.a0*(bq*-r.c+q.c*br) - bp*(q.a0*-r.c+q.c*r.a0) - p.c*(q.a0*br-bq*r.a0)) / det
	at[2] = (p.a0*(q.a1*br-bq*r.a1) - p.a1*(q.a0*br-bq*r.a0) + bp*(q.a0*r.a1-q.a1*r.a0)) / det
	return at, true
}

// under reports whether a point lies under no plane, to rounding.
func under(planes []plane, p [3]float64) bool {
	for i := range planes {
		pl := &planes[i]
		v := pl.a0*p[0] + pl.a1*p[1] + pl.b - pl.c*p[2]
		if v > tie*(1+math.Abs(pl.b)+math.Abs(p[2])) {
			return false
		}
	}
	return true
}

// moment returns the moment asked of demand i.
func (st *stance) moment(i int, f float64, x [2]float64) float64 {
	d := &st.demands[i]
	return d.base + d.per*f + d.across[0]*x[0] + d.across[1]*x[1]
}

// greatest returns the greatest effort of all joints with known strength.
func (st *stance) greatest(f float64, x [2]float64) float64 {
	most := 0.0
	for i := range st.n {
		if e, ok := st.demands[i].effort(st.moment(i, f, x)); ok {
			most = max(most, e)
		}
	}
	return most
}

// effort returns a moment over what is available for it.
func (d *demand) effort(moment float64) (float64, bool) {
	if !d.has[sense(moment)] {
		return 0, false
	}
	return math.Abs(moment) / d.can[sense(moment)].Moment, true
}

// strength returns what is available for a moment.
func (d *demand) strength(moment float64) *human.Available { return &d.can[sense(moment)] }

// sense indexes demand.can and has.
func sense(moment float64) int {
	if moment < 0 {
		return 1
	}
	return 0
}
