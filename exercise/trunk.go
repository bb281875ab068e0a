package exercise

import (
	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/mechanism"
	"steelyard/reference"
)

// faceTrunk asks hips and back of a trunk that a pad bears on. The arms count
// as hanging from the shoulders. Each hip takes half.
func (s *Setup) faceTrunk(st *stance, b *human.Body) {
	pl := &st.placement
	own := ownTrunk(b, pl)
	axis := r3.Scale(-1, pl.Trunk.Z) // forward bend
	both := s.Limbs()                // F is of one limb; the trunk takes all of it
	for _, v := range []*r3.Vec{&st.push.per, &st.push.fixed, &st.push.perKg} {
		*v = r3.Scale(both, *v)
	}
	st.ask(Trunk, 0, 0, r3.Dot(ownBack(b, pl, own), axis), lowBack(b, pl), axis)
	st.ask(Hip, pl.Leg.HipFlexion, 0, r3.Dot(own, axis), pl.Trunk.Origin, axis)
	d := &st.demands[st.n-1]
	d.base, d.per, d.perKg = d.base/2, d.per/2, d.perKg/2
}

// The strength of the back was measured about the joint of the last lumbar
// vertebra with the sacrum, so that is where it is asked.
const (
	// lumbosacral is how far that joint lies above the line of the hips, over the
	// way from there to the shoulders: working estimate, no source.
	lumbosacral = 0.20
	// pelvisShare is the mass below it, over the body's, its centre half-way: the
	// lower trunk of de Leva 1996, Table 4, is 0.112 of a man and 0.125 of a woman
	// and reaches a little higher, to the navel.
	pelvisShare = 0.11
)

// lowBack returns the lumbosacral joint.
func lowBack(b *human.Body, pl *Placement) r3.Vec {
	return pl.Trunk.Point(r3.Vec{Y: lumbosacral * b.Links.Trunk})
}

// ownBack returns the moment that holds what is above the lumbosacral joint,
// from ownTrunk, which takes the pelvis with it and counts about the hips.
func ownBack(b *human.Body, pl *Placement, own r3.Vec) r3.Vec {
	pelvis := pelvisShare * b.Person.Mass
	above := b.Segment(reference.SegTrunk).Mass + b.Segment(reference.SegHead).Mass + armsMass(b) - pelvis
	up := r3.Sub(lowBack(b, pl), pl.Trunk.Origin)
	return r3.Sub(own, r3.Cross(up, r3.Vec{Y: (above + pelvis/2) * mechanism.Gravity}))
}

// ownTrunk returns the moment that holds trunk, head and arms up at the line of
// the hips (N·m, on the trunk).
func ownTrunk(b *human.Body, pl *Placement) r3.Vec {
	chain := b.TrunkChain(pl.Trunk)
	var loads [2]human.Wrench
	shoulders := pl.Trunk.Point(r3.Vec{Y: b.Links.Trunk})
	chain[0].Load = human.Wrench{At: shoulders, Force: r3.Vec{Y: -armsMass(b) * mechanism.Gravity}}
	human.JointLoads(loads[:], chain[:], r3.Vec{})
	return loads[0].Moment
}

// liftedTrunk returns what the back is asked under shoulder pads: by its own
// weight, by each newton of F, and by what the pads steady it with.
func (s *Setup) liftedTrunk(st *stance, b *human.Body) demand {
	pl := &st.placement
	axis := r3.Scale(-1, pl.Trunk.Z)
	grad := r3.Scale(s.Limbs(), r3.Cross(r3.Sub(pl.Contact, lowBack(b, pl)), axis))
	d := demand{joint: Trunk, base: r3.Dot(ownBack(b, pl, ownTrunk(b, pl)), axis), per: -r3.Dot(grad, pl.Path)}
	if !s.Station.Loose {
		per, fixed := s.steadying(b, pl)
		across := r3.Dot(grad, acrossPath(pl.Path)[0])
		d.base += across * fixed
		d.per += across * per
	}
	return d
}
