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

// leanPrice is what a lean of slant must save to be taken, as a share of the
// greatest effort along the path; a smaller lean costs less by its square. Own
// choice, no source. Nobody solves for the last hundredth, and the price lets
// the direction change gradually from one position to the next: without it,
// where the gain is small, it would leap from one side to the other.
const leanPrice = 0.05

// leastEffort returns the free part of the contact force (N), within slant of F
// (of a bar: of its weight) on either axis, of least effort, and the greatest
// effort of all joints there. It makes least
//
//	z(x) + leanPrice·z(0)·|x|²/most²
//
// with z the greatest effort, x the part across the path and most its bound.
// That is strictly convex, so that x is one and moves steadily with the data.
//
// Each effort is linear in x for one sign of its moment. Where one of them is
// the greatest the least lies a step down its slope; where two are, on the line
// on which they meet; else at a corner. There are few enough to try them all.
func (st *stance) leastEffort(f float64) (x [2]float64, z float64) {
	z = st.greatest(f, x)
	most := slant * f
	if st.push.mass > 0 {
		most = slant * st.push.mass * mechanism.Gravity
	}
	if st.push.free == 0 || most <= 0 || z == 0 {
		return x, z
	}
	var planes [mostPlanes]plane
	n := st.planes(&planes, f, most)
	e := easing{st: st, f: f, most: most, price: leanPrice * z / (most * most), least: z}
	e.try(-most, -most)
	e.try(-most, most)
	e.try(most, -most)
	e.try(most, most)
	for i := range n {
		for j := range i {
			if planes[j].c != 0 {
				e.tryMeeting(planes[:j], &planes[i], &planes[j])
			}
		}
		if q := &planes[i]; q.c != 0 {
			foot := e.foot(q)
			e.try(foot[0], foot[1])
		}
	}
	return e.best, st.greatest(f, e.best)
}

// easing looks for the least of effort and price.
type easing struct {
	st      *stance
	f, most float64
	price   float64 // 1/N²
	best    [2]float64
	least   float64
}

// foot returns where an effort and the price of leaning are least together.
func (e *easing) foot(q *plane) [2]float64 {
	return [2]float64{-q.a0 / (2 * e.price), -q.a1 / (2 * e.price)}
}

// tryMeeting tries, of the line on which plane p, an effort or a bound, meets the
// effort q, the point nearest the foot of q and where other efforts cross it.
func (e *easing) tryMeeting(others []plane, p, q *plane) {
	d0, d1, c := p.a0-p.c*q.a0, p.a1-p.c*q.a1, p.c*q.b-p.b
	if l := d0*d0 + d1*d1; l > 0 {
		foot := e.foot(q)
		t := (d0*foot[0] + d1*foot[1] - c) / l
		e.try(foot[0]-t*d0, foot[1]-t*d1)
	}
	for k := range others {
		if at, ok := meet(p, q, &others[k]); ok {
			e.try(at[0], at[1])
		}
	}
}

// try keeps a force across the path if nothing better was seen.
func (e *easing) try(x0, x1 float64) {
	const rounding = 1 + 1e-12
	if !(abs(x0) <= e.most*rounding && abs(x1) <= e.most*rounding) {
		return
	}
	x := [2]float64{x0, x1}
	if z := e.st.greatest(e.f, x) + e.price*(x0*x0+x1*x1); z < e.least {
		e.best, e.least = x, z
	}
}

// mostPlanes: two for each joint and two bounds for each free direction.
const mostPlanes = 2*int(NumJoints) + 4

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
