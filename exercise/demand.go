package exercise

import (
	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/planar"
	"steelyard/reference"
)

// demand is what one position asks of one joint: an internal moment linear in
// the machine's force F of one limb and in the parts x of the contact force
// across the path that the machine leaves free,
//
//	moment = base + per·F + across·x,
//
// and what the joint can produce in both senses.
type demand struct {
	joint     Joint
	angle     planar.Angle
	speed     float64 // rad/s, in the sense of the angle
	base, per float64 // N·m, N·m/N
	perKg     float64 // N·m/kg, of a weight held
	across    [2]float64
	can       [2]human.Available // for a positive moment, for a negative one
	has       [2]bool
}

// stance is a body at one position with all that bears on it, ready for any
// force.
type stance struct {
	placement Placement
	demands   [NumJoints]demand
	n         int
	push      push
}

// push is the contact force on the body (ground frame, at push.at) for a force
// F of one limb along the path:
//
//	force = per·F + fixed + Σ across·x
type push struct {
	at, per, fixed r3.Vec
	across         [2]r3.Vec
	free           int     // how many of across the machine leaves free
	mass           float64 // kg, of a weight held, whose force is fixed = mass·perKg
	perKg          r3.Vec  // N/kg
	// With the force goes a moment about z (N·m, N·m/N): turnPer·F + turnFixed.
	turnPer, turnFixed float64
}

// pace is how a placed body moves; the zero value rests.
type pace struct {
	speeds [NumJoints]float64 // rad/s, in the sense of each angle
	chain  [3]turning         // of the limb's segments
	root   r3.Vec             // m/s², of the limb's first joint
	body   r3.Vec             // N, mass times acceleration of trunk, head, arms and both legs
	grip   r3.Vec             // m/s², of the contact
}

type turning struct{ omega, alpha r3.Vec }

// face fills st with what the placement at position i asks, at a pace.
func (s *Setup) face(st *stance, b *human.Body, p pace, i int) {
	st.n = 0
	st.push = s.pushOn(b, &st.placement, p)
	switch s.Station.Contact {
	case RopeHandle:
		ropePush(&st.push, s.points[i].Pull, st.placement.Path)
	case Held:
		weightPush(&st.push, s.held, p.grip, s.bar())
	}
	switch s.Station.On {
	case OnTrunk:
		s.faceTrunk(st, b)
		return
	case OnUpperArm:
		s.faceArm(st, b, p)
		return
	}
	if s.Exercise.Limb() == human.Arm {
		s.faceArm(st, b, p)
		return
	}
	s.faceLeg(st, b, p)
	if s.Station.On == OnShoulders && !s.Station.BackPad {
		st.demands[st.n] = s.liftedTrunk(st, b)
		st.n++
	}
}

// ask adds a joint whose axis and place are given, with the moment its own
// segments need.
func (st *stance) ask(j Joint, angle planar.Angle, speed, base float64, at, axis r3.Vec) {
	// The moment of f about the joint is r × f; the internal one opposes it:
	// -axis·(r × f) = f·(r × axis).
	grad := r3.Cross(r3.Sub(st.push.at, at), axis)
	d := demand{joint: j, angle: angle, speed: speed, base: base + r3.Dot(grad, st.push.fixed), perKg: r3.Dot(grad, st.push.perKg), per: r3.Dot(grad, st.push.per)}
	d.base -= axis.Z * st.push.turnFixed
	d.per -= axis.Z * st.push.turnPer
	for k := range st.push.free {
		d.across[k] = r3.Dot(grad, st.push.across[k])
	}
	st.demands[st.n] = d
	st.n++
}

// faceArm asks the joints of the arm.
func (s *Setup) faceArm(st *stance, b *human.Body, p pace) {
	pl := &st.placement
	chain := b.ArmChain(pl.Limb)
	loads := inside(chain[:], p)
	own := pl.Trunk.ArmMoments(human.Right, pl.Limb, loads[0].Moment, loads[1].Moment)
	var e [3]human.ArmMoments // of unit moments along x, y, z: the axes
	for k, v := range unit {
		e[k] = pl.Trunk.ArmMoments(human.Right, pl.Limb, v, v)
	}
	axis := func(of func(human.ArmMoments) float64) r3.Vec { return r3.Vec{X: of(e[0]), Y: of(e[1]), Z: of(e[2])} }
	root, mid, a := pl.Limb.Root, pl.Limb.Mid, pl.Arm
	if !s.Station.Rests {
		st.ask(ShoulderRaising, a.Elevation, p.speeds[ShoulderRaising], own.Elevation, root, axis(func(m human.ArmMoments) float64 { return m.Elevation }))
		st.ask(ShoulderAcross, a.Plane, p.speeds[ShoulderAcross], own.Horizontal, root, axis(func(m human.ArmMoments) float64 { return m.Horizontal }))
		st.ask(ShoulderTurning, a.Rotation, p.speeds[ShoulderTurning], own.Rotation, root, axis(func(m human.ArmMoments) float64 { return m.Rotation }))
	}
	if s.Station.On != OnUpperArm {
		st.ask(Elbow, a.Elbow, p.speeds[Elbow], own.Elbow, mid, pl.Limb.Hinge)
	}
}

// faceLeg asks the joints of the leg that are not at rest.
func (s *Setup) faceLeg(st *stance, b *human.Body, p pace) {
	pl := &st.placement
	chain := b.LegChain(pl.Limb, pl.Toe)
	loads := inside(chain[:], p)
	own := pl.Trunk.LegMoments(human.Right, pl.Limb, loads[0].Moment, loads[1].Moment, loads[2].Moment)
	var e [3]human.LegMoments
	for k, v := range unit {
		e[k] = pl.Trunk.LegMoments(human.Right, pl.Limb, v, v, v)
	}
	on, a := s.Station.On, pl.Leg
	if on != OnShank && on != OnKnees && !s.Station.Rests {
		st.ask(Hip, a.HipFlexion, p.speeds[Hip], own.HipFlexion, pl.Limb.Root, r3.Vec{X: e[0].HipFlexion, Y: e[1].HipFlexion, Z: e[2].HipFlexion})
		st.ask(HipSide, a.HipAbduction, p.speeds[HipSide], own.HipAbduction, pl.Limb.Root, r3.Vec{X: e[0].HipAbduction, Y: e[1].HipAbduction, Z: e[2].HipAbduction})
	}
	if on != OnThigh && on != OnKnees {
		st.ask(Knee, a.Knee, p.speeds[Knee], own.Knee, pl.Limb.Mid, pl.Limb.Hinge)
	}
	if on != OnThigh && on != OnShank {
		st.ask(Ankle, a.Ankle, p.speeds[Ankle], own.Ankle, pl.Limb.End, r3.Scale(-1, pl.Limb.Hinge))
	}
}

var unit = [3]r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}

// inside returns the joint loads of a chain with nothing at its end.
func inside(chain []human.Rigid, p pace) [3]human.Wrench {
	for k := range chain {
		chain[k].Omega, chain[k].Alpha = p.chain[k].omega, p.chain[k].alpha
	}
	var loads [3]human.Wrench
	human.JointLoads(loads[:], chain, p.root)
	return loads
}

// armsMass is the mass of both arms, kg.
func armsMass(b *human.Body) float64 {
	return 2 * (b.Segment(reference.SegUpperArm).Mass + b.Segment(reference.SegForearm).Mass + b.Segment(reference.SegHand).Mass)
}

// legMass is the mass of one leg, kg.
func legMass(b *human.Body) float64 {
	return b.Segment(reference.SegThigh).Mass + b.Segment(reference.SegShank).Mass + b.Segment(reference.SegFoot).Mass
}

// capacities fills in what each joint can produce.
func (st *stance) capacities(c *human.Capacity) {
	a := st.placement.Arm
	for i := range st.n {
		d := &st.demands[i]
		for k, sign := range [2]float64{1, -1} {
			switch d.joint {
			case ShoulderRaising:
				d.can[k], _ = c.Shoulder(a, human.ArmMoments{Elevation: sign}, sign*d.speed, 0)
				d.has[k] = true
			case ShoulderAcross:
				_, d.can[k] = c.Shoulder(a, human.ArmMoments{Horizontal: sign}, 0, sign*d.speed)
				d.has[k] = true
			default:
				action := human.ActionToward(d.joint.coordinate(), sign)
				d.can[k], d.has[k] = c.At(action, d.angle, sign*d.speed)
			}
			d.has[k] = d.has[k] && d.can[k].Moment > 0
		}
	}
}
