package human

import (
	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/reference"
)

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

// TrunkChain places trunk and head of a body whose trunk has frame f, the head
// in line with it: from the line of the hips, which is the chain's first joint,
// to the line of the shoulders. The arms are chains of their own; what they ask
// of the shoulders goes in as a load on the trunk, reversed.
func (b *Body) TrunkChain(f Frame) [2]Rigid {
	sideways := r3.Scale(-1, f.Z) // so that along × sideways points forward reversed, as in a hanging limb
	trunk := b.place(reference.SegTrunk, f.Origin, f.Y, sideways)
	head := b.place(reference.SegHead, f.Origin, f.Y, sideways)
	head.Proximal = f.Point(r3.Vec{Y: b.Links.Trunk})
	return [2]Rigid{trunk, head}
}

// TrunkFlexion returns the part of a moment on the trunk (N·m, ground frame)
// that bends it forward. At the line of the hips it is the hip flexion moment
// of both hips together, as their moments on the thighs are its reverse.
func (f Frame) TrunkFlexion(moment r3.Vec) float64 { return -r3.Dot(moment, f.Z) }
