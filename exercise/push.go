package exercise

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/mechanism"
)

// oblique is the cosine of the angle between a pad's normal or a rope and the
// path below which the path no longer tells the force: 84°.
const oblique = 0.1

// pushOn returns the contact force on the body.
func (s *Setup) pushOn(b *human.Body, pl *Placement, p pace) push {
	switch s.Station.On {
	case OnShoulders, OnHips, OnKnees:
		return s.pushOnFoot(b, pl, p)
	}
	out := push{at: pl.Contact, per: r3.Scale(-1, pl.Path)}
	if s.Station.Contact != Grip && s.Station.Contact != FootPlate {
		if s.Station.Contact == Pad && pl.Normal != (r3.Vec{}) {
			out.at = r3.Sub(pl.Contact, r3.Scale(s.Station.PadRadius, pl.Normal))
			out.per = along(pl.Normal, pl.Path)
		}
		return out
	}
	out.free = 2
	out.across = acrossPath(pl.Path)
	return out
}

// along returns the force on the body along -n that has part -1 along the path.
func along(n, path r3.Vec) r3.Vec {
	c := r3.Dot(n, path)
	if c < oblique {
		return r3.Scale(-1, path)
	}
	return r3.Scale(-1/c, n)
}

// acrossPath returns two unit vectors square to the path and to each other: in
// the side view, and sideways.
func acrossPath(path r3.Vec) [2]r3.Vec {
	side := r3.Vec{Z: 1}
	if math.Abs(path.Z) > 0.9 {
		side = r3.Vec{Y: 1}
	}
	n := r3.Unit(r3.Cross(side, path))
	return [2]r3.Vec{n, r3.Cross(path, n)}
}

// ropePush replaces the force by the rope's: it pulls the hand towards where
// the rope comes from.
func ropePush(out *push, pull, path r3.Vec) {
	if c := -r3.Dot(pull, path); c >= oblique {
		out.per, out.free = r3.Scale(1/c, pull), 0
	}
}

// weightPush replaces the force by that of a weight of m kg held in the hand,
// moving with an acceleration. Two hands on one bar can also push against each
// other along it.
func weightPush(out *push, m float64, acceleration r3.Vec, bar bool) {
	out.per, out.free, out.mass = r3.Vec{}, 0, m
	if bar {
		out.free, out.across = 1, [2]r3.Vec{{Z: 1}}
	}
	out.perKg = r3.Scale(-1, r3.Add(acceleration, r3.Vec{Y: mechanism.Gravity}))
	out.fixed = r3.Scale(m, out.perKg)
}

// pushOnFoot returns the ground's force on one foot of a body that bears the
// load: F is the share of one leg.
func (s *Setup) pushOnFoot(b *human.Body, pl *Placement, p pace) push {
	out := push{at: pl.Sole}
	weight := r3.Add(r3.Vec{Y: b.Person.Mass * mechanism.Gravity}, p.body)
	share := r3.Scale(1/s.Limbs(), weight)
	switch {
	case s.Station.On == OnHips:
		out.per, out.fixed = s.bridge(b, pl)
	case s.Station.On == OnKnees:
		out.per, out.fixed = s.kneel(b, pl)
	case s.Station.BackPad:
		// The sled takes what is square to its way.
		out.per, out.fixed = pl.Path, r3.Scale(r3.Dot(share, pl.Path), pl.Path)
		out.free, out.across = 2, acrossPath(pl.Path)
	case s.Station.Loose:
		out.per, out.fixed = pl.Path, share
		per, fixed := s.others(b, pl)
		out.turnPer, out.turnFixed = -per, -fixed
	default:
		per, fixed := s.steadying(b, pl)
		n := acrossPath(pl.Path)[0]
		out.per = r3.Sub(pl.Path, r3.Scale(per, n))
		out.fixed = r3.Sub(share, r3.Scale(fixed, n))
	}
	return out
}

// others returns the moment about the middle of the sole, as the share of one
// leg, of all that bears on a standing body but the ground: the load along its
// path, for each newton of F, and the body's weight. At a tempo the body's
// inertia has no part in it.
func (s *Setup) others(b *human.Body, pl *Placement) (per, fixed float64) {
	per = r3.Cross(r3.Sub(pl.Contact, pl.Sole), r3.Scale(-1, pl.Path)).Z
	weigh := func(mass float64, at r3.Vec) { fixed -= mass * mechanism.Gravity * (at.X - pl.Sole.X) / s.Limbs() }
	trunk := b.TrunkChain(pl.Trunk)
	for k := range trunk {
		weigh(trunk[k].Mass, trunk[k].Centre)
	}
	weigh(armsMass(b), pl.Trunk.Point(r3.Vec{Y: b.Links.Trunk}))
	leg := b.LegChain(pl.Limb, pl.Toe)
	for k := range leg {
		weigh(2*leg[k].Mass, leg[k].Centre)
	}
	return per, fixed
}

// steadying returns the force across the path with which the shoulder pads hold
// a standing body in balance, as the share of one leg: X n on the body with
// r×n X + others = 0 about the middle of the sole.
func (s *Setup) steadying(b *human.Body, pl *Placement) (per, fixed float64) {
	per, fixed = s.others(b, pl)
	arm := r3.Cross(r3.Sub(pl.Contact, pl.Sole), acrossPath(pl.Path)[0]).Z
	return -per / arm, -fixed / arm
}

// bridge returns the ground's force on one foot in a hip thrust, from the
// moments of the whole body about the edge of the bench. Bench and feet are
// taken to push straight up on balance; what the pad pushes level, the bench
// takes.
func (s *Setup) bridge(b *human.Body, pl *Placement) (per, fixed r3.Vec) {
	bench := r3.Vec{X: s.Station.At.X, Y: s.Station.At.Y}
	arm := pl.Sole.X - bench.X
	pad := r3.Cross(r3.Sub(pl.Contact, bench), r3.Scale(-1, pl.Path)).Z
	weights := 0.0
	leg := b.LegChain(pl.Limb, pl.Toe)
	for k := range leg {
		weights += 2 * leg[k].Mass * (leg[k].Centre.X - bench.X)
	}
	trunk := b.TrunkChain(pl.Trunk)
	for k := range trunk {
		weights += trunk[k].Mass * (trunk[k].Centre.X - bench.X)
	}
	shoulders := pl.Trunk.Point(r3.Vec{Y: b.Links.Trunk})
	weights += armsMass(b) * (shoulders.X - bench.X)
	return r3.Vec{Y: -pad / arm}, r3.Vec{Y: mechanism.Gravity * weights / (2 * arm)}
}

// kneel returns the ground's force on one foot under a knee pad, with hip and
// knee relaxed: it then runs from the ball of the foot through the knee, and
// the moments about the hip of pad, thigh and that force are nothing.
func (s *Setup) kneel(b *human.Body, pl *Placement) (per, fixed r3.Vec) {
	hip, knee := pl.Limb.Root, pl.Limb.Mid
	e := r3.Unit(r3.Sub(knee, pl.Sole))
	lift := r3.Cross(r3.Sub(knee, hip), e).Z
	at := r3.Sub(pl.Contact, r3.Scale(s.Station.PadRadius, pl.Normal))
	pad := r3.Cross(r3.Sub(at, hip), along(pl.Normal, pl.Path)).Z
	leg := b.LegChain(pl.Limb, pl.Toe)
	thigh := leg[0].Mass * (leg[0].Centre.X - hip.X)
	below := leg[1].Mass + leg[2].Mass
	weight := mechanism.Gravity * (thigh + below*(knee.X-hip.X))
	return r3.Scale(-pad/lift, e), r3.Scale(weight/lift, e)
}
