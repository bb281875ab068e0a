package exercise

import (
	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/mechanism"
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
	hips := pl.Trunk.Origin
	st.ask(Trunk, 0, 0, r3.Dot(own, axis), hips, axis)
	d := st.demands[st.n-1]
	d.joint, d.angle = Hip, pl.Leg.HipFlexion
	d.base, d.per, d.perKg = d.base/2, d.per/2, d.perKg/2
	st.demands[st.n] = d
	st.n++
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
	grad := r3.Scale(s.Limbs(), r3.Cross(r3.Sub(pl.Contact, pl.Trunk.Origin), axis))
	d := demand{joint: Trunk, base: r3.Dot(ownTrunk(b, pl), axis), per: -r3.Dot(grad, pl.Path)}
	if !s.Station.Loose {
		per, fixed := s.steadying(b, pl)
		across := r3.Dot(grad, acrossPath(pl.Path)[0])
		d.base += across * fixed
		d.per += across * per
	}
	return d
}
