package human

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Gravity is standard gravity, exact (3rd CGPM 1901), m/s², towards -y.
const Gravity = 9.80665

// Wrench is a force, the point it acts at and a free moment, ground frame.
type Wrench struct {
	Force  r3.Vec // N
	At     r3.Vec // m
	Moment r3.Vec // N·m
}

// About returns the moment of the wrench about a point.
func (w Wrench) About(p r3.Vec) r3.Vec {
	return r3.Add(w.Moment, r3.Cross(r3.Sub(w.At, p), w.Force))
}

// Rigid is one segment placed in space, ground frame.
type Rigid struct {
	Mass     float64 // kg
	Proximal r3.Vec  // m, joint with the neighbour nearer the trunk
	Centre   r3.Vec  // m, centre of mass
	Axes     [3]r3.Vec
	Inertia  [3]float64 // kg·m² about the centre, one for each of Axes (unit, at right angles)
	Omega    r3.Vec     // rad/s
	Alpha    r3.Vec     // rad/s²
	Load     Wrench     // what the machine does to this segment; its weight is added by us
}

// spin returns I·v about the centre of mass.
func (b *Rigid) spin(v r3.Vec) r3.Vec {
	var out r3.Vec
	for i, k := range b.Axes {
		out = r3.Add(out, r3.Scale(b.Inertia[i]*r3.Dot(k, v), k))
	}
	return out
}

// carry returns the acceleration of a point of the segment, when its proximal
// joint accelerates by a:  a + α×r + ω×(ω×r).
func (b *Rigid) carry(a, point r3.Vec) r3.Vec {
	r := r3.Sub(point, b.Proximal)
	return r3.Add(a, r3.Add(r3.Cross(b.Alpha, r), r3.Cross(b.Omega, r3.Cross(b.Omega, r))))
}

// JointLoads returns, for each segment of a chain given from the trunk
// outwards, what its inner neighbour does to it at its proximal joint: the net
// joint force and the net internal joint moment there. Each segment's outer
// joint is the proximal joint of the next. root is the acceleration (m/s²) of
// the first joint; with it and all Omega and Alpha zero the answer is static.
// The results are written to dst, which must be as long as the chain.
//
// Method: recursive Newton-Euler. Accelerations outwards, then loads inwards:
//
//	F = m·a - m·g - load + F'
//	M = I·α + ω×(I·ω) + moments of F' and load about the centre, taken over
//
// where F', M' are those of the next segment, which act on this one reversed.
//
// Source: Luh, Walker & Paul 1980, J Dyn Sys Meas Control 102:69, from memory.
func JointLoads(dst []Wrench, chain []Rigid, root r3.Vec) {
	a := root
	for i := range chain {
		b := &chain[i]
		centre := b.carry(a, b.Centre)
		dst[i].Force = r3.Scale(b.Mass, r3.Add(centre, r3.Vec{Y: Gravity})) // what must be supplied in all
		if i+1 < len(chain) {
			a = b.carry(a, chain[i+1].Proximal)
		}
	}
	for i := len(chain) - 1; i >= 0; i-- {
		b, w := &chain[i], &dst[i]
		w.At = b.Proximal
		needed := r3.Add(b.spin(b.Alpha), r3.Cross(b.Omega, b.spin(b.Omega)))
		w.Moment = r3.Add(needed, r3.Cross(r3.Sub(b.Centre, b.Proximal), w.Force))
		w.Force = r3.Sub(w.Force, b.Load.Force)
		w.Moment = r3.Sub(w.Moment, b.Load.About(b.Proximal))
		if i+1 < len(chain) {
			w.Force = r3.Add(w.Force, dst[i+1].Force)
			w.Moment = r3.Add(w.Moment, dst[i+1].About(b.Proximal))
		}
	}
}

// AngularVelocity returns the angular velocity (rad/s) that turns a segment
// from one placement to another in dt seconds: the mean over the step, exact if
// it is constant. The turn must be less than half a revolution.
func AngularVelocity(from, to *Rigid, dt float64) r3.Vec {
	// For a turn by θ about k:  ½ Σ e×e' = k·sin θ  and  Σ e·e' = 1 + 2·cos θ.
	var axis r3.Vec
	trace := 0.0
	for i, e := range from.Axes {
		axis = r3.Add(axis, r3.Scale(0.5, r3.Cross(e, to.Axes[i])))
		trace += r3.Dot(e, to.Axes[i])
	}
	sin := r3.Norm(axis)
	if sin == 0 {
		return r3.Vec{}
	}
	theta := math.Atan2(sin, (trace-1)/2)
	return r3.Scale(theta/(sin*dt), axis)
}
