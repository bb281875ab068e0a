package human

import (
	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/reference"
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

// ArmChain places upper arm, forearm and hand of a body in a pose whose end is
// the grip, wrist straight. Loads and motion are left zero.
func (b *Body) ArmChain(p Pose) [3]Rigid {
	wrist := r3.Add(p.Mid, r3.Scale(b.Links.Forearm, p.Lower()))
	return [3]Rigid{
		b.place(reference.SegUpperArm, p.Root, p.Upper(), p.Hinge),
		b.place(reference.SegForearm, p.Mid, p.Lower(), p.Hinge),
		b.place(reference.SegHand, wrist, p.Lower(), p.Hinge),
	}
}

// LegChain places thigh, shank and foot of a body in a pose whose end is the
// ankle, with the sole along toe (unit, heel to toe). The foot's centre of mass
// is taken half-way between ankle height and sole (working estimate, no
// source). Loads and motion are left zero.
func (b *Body) LegChain(p Pose, toe r3.Vec) [3]Rigid {
	foot := b.place(reference.SegFoot, p.End, toe, p.Hinge)
	foot.Centre = b.onSole(p, toe, b.Segment(reference.SegFoot).Centre, b.Links.AnkleHeight/2)
	return [3]Rigid{
		b.place(reference.SegThigh, p.Root, p.Upper(), p.Hinge),
		b.place(reference.SegShank, p.Mid, p.Lower(), p.Hinge),
		foot,
	}
}

// SolePoint returns the point of the sole at a distance from the heel (m), for
// a leg whose ankle is at the end of the pose: where a foot plate bears.
func (b *Body) SolePoint(p Pose, toe r3.Vec, fromHeel float64) r3.Vec {
	return b.onSole(p, toe, fromHeel, 0)
}

func (b *Body) onSole(p Pose, toe r3.Vec, fromHeel, above float64) r3.Vec {
	up := r3.Cross(toe, p.Hinge) // square to the sole, towards the shank
	along := r3.Scale(fromHeel-b.Links.HeelToAnkle, toe)
	return r3.Add(p.End, r3.Add(along, r3.Scale(above-b.Links.AnkleHeight, up)))
}

// place lays one segment from its proximal joint along a unit vector. Its
// sideways axis is the hinge.
func (b *Body) place(s reference.Segment, proximal, along, hinge r3.Vec) Rigid {
	m := b.Segment(s)
	return Rigid{
		Mass: m.Mass, Proximal: proximal, Centre: r3.Add(proximal, r3.Scale(m.Centre, along)),
		Axes:    [3]r3.Vec{r3.Cross(along, hinge), along, hinge},
		Inertia: [3]float64{m.Forward, m.Long, m.Sideways},
	}
}
