package planar

import "math"

// widestPiece bounds a piece, in rad, so that the series of smallAngle are
// exact to rounding: the first term left out is 0.125¹⁰/10! = 3e-16.
const widestPiece = 0.125

// piece is a part of a convex outline whose radius of curvature grows evenly
// with the direction of the normal: ρ = rho + slope·t, with t the angle from
// start. A corner is a piece with ρ = 0, a circular arc one with ρ = r.
//
// The support function solves h + h″ = ρ, so
//
//	h = h₀ cos t + h₀' sin t + rho (1 - cos t) + slope (t - sin t)
type piece struct {
	start  float64 // normal at which the piece begins, rad in [0, 2π)
	h, dh  float64 // support function and its derivative there, m and m/rad
	rho    float64 // radius of curvature there, m, >= 0
	slope  float64 // of ρ, m/rad
	length float64 // of outline from normal 0 to there, m
}

// support returns h and h' at the angle t past the start.
func (p *piece) support(t float64) (h, dh float64) {
	sin, vers, lag := smallAngle(t)
	cos := 1 - vers
	return p.h*cos + p.dh*sin + p.rho*vers + p.slope*lag,
		p.dh*cos - p.h*sin + p.rho*sin + p.slope*vers
}

func (p *piece) lengthAt(t float64) float64 { return p.length + t*(p.rho+p.slope*t/2) }

// at returns the rest of the piece, from the angle t past its start.
func (p *piece) at(t float64) piece {
	h, dh := p.support(t)
	return piece{p.start + t, h, dh, p.rho + p.slope*t, p.slope, p.lengthAt(t)}
}

// smallAngle returns sin t, 1 - cos t and t - sin t by their series, for |t| up
// to widestPiece. It is several times faster than math.Sincos and has no
// cancellation.
func smallAngle(t float64) (sin, vers, lag float64) {
	q := t * t
	lag = t * q * (1.0/6 - q*(1.0/120-q*(1.0/5040-q*(1.0/362880))))
	vers = q * (1.0/2 - q*(1.0/24-q*(1.0/720-q*(1.0/40320))))
	return t - lag, vers, lag
}

// roll is a whole convex outline as pieces in order of their normals. It
// implements [Outline] by looking up a piece, which costs the same anywhere.
// Between two pieces the outline may be straight: h' and the length jump there,
// and the values after the jump are returned.
type roll struct {
	pieces    []piece
	bucket    []int32 // index of the last piece that starts at or before each equal part of a turn
	perimeter float64 // m
}

// Support implements [Outline].
func (r *roll) Support(phi Angle) (h, dh float64) {
	p, t, _ := r.find(phi)
	return p.support(t)
}

// Length implements [Outline].
func (r *roll) Length(phi Angle) float64 {
	p, t, turns := r.find(phi)
	return turns*r.perimeter + p.lengthAt(t)
}

// find returns the piece that holds the normal phi, how far into it phi lies,
// and the whole turns in phi.
func (r *roll) find(phi Angle) (p *piece, t, turns float64) {
	turns = math.Floor(float64(phi) / (2 * math.Pi))
	x := float64(phi) - turns*(2*math.Pi)
	i := int(r.bucket[r.bucketOf(x)])
	for i+1 < len(r.pieces) && r.pieces[i+1].start <= x {
		i++
	}
	return &r.pieces[i], x - r.pieces[i].start, turns
}

// bucketOf returns the bucket of a normal in [0, 2π], which rounding may have
// carried just outside.
func (r *roll) bucketOf(x float64) int {
	n := len(r.bucket)
	return max(0, min(n-1, int(x*(float64(n)/(2*math.Pi)))))
}

// index fills in the buckets, twice as many as pieces.
func (r *roll) index() {
	r.bucket = make([]int32, 2*len(r.pieces))
	i := 0
	for b := range r.bucket {
		for i+1 < len(r.pieces) && r.bucketOf(r.pieces[i+1].start) < b {
			i++
		}
		r.bucket[b] = int32(i)
	}
}
