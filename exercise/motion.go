package exercise

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/mechanism"
)

// stencil is five placements about a position, evenly spaced in the driver, from
// which rates follow by fourth-order differences:
//
//	y′ = (y₋₂ - 8y₋₁ + 8y₁ - y₂)/12h,  y″ = (-y₋₂ + 16y₋₁ - 30y₀ + 16y₁ - y₂)/12h²
//
// With h a thousandth of the travel the error is near 1e-10 of the first and
// 1e-8 of the second derivative for a smooth path (h⁴ against rounding over
// h²). Source: Abramowitz & Stegun 1964, table 25.2, from memory.
type stencil struct {
	h     float64
	at    [5]Placement
	chain [5][3]human.Rigid
}

// stencilStep is h over the whole travel.
const stencilStep = 1e-3

// around places a body about position i. At a stop the stencil lies just inside
// the travel, a fifth of a percent of it away. It reports false where the body
// cannot be placed all round.
func (s *Setup) around(b *human.Body, state *mechanism.State, i int) (*stencil, bool) {
	n := len(s.drivers)
	from, to := s.drivers[0], s.drivers[n-1]
	c := &stencil{h: stencilStep * math.Abs(to-from)}
	lo, hi := min(from, to)+2*c.h, max(from, to)-2*c.h
	q := min(max(s.drivers[i], lo), hi)
	for k := range c.at {
		if state.MoveTo(q+float64(k-2)*c.h) != nil {
			return nil, false
		}
		p := s.read(state)
		p.Path = s.points[i].Path
		if !s.place(&c.at[k], b, &p).Placed() {
			return nil, false
		}
		if s.Exercise.Limb() == human.Arm {
			c.chain[k] = b.ArmChain(c.at[k].Limb)
		} else {
			c.chain[k] = b.LegChain(c.at[k].Limb, c.at[k].Toe)
		}
	}
	return c, true
}

// rates returns first and second derivative, per unit of driver, of a vector.
func (c *stencil) rates(of func(k int) r3.Vec) (first, second r3.Vec) {
	var y [5]r3.Vec
	for k := range y {
		y[k] = of(k)
	}
	pick := func(w [5]float64, over float64) (v r3.Vec) {
		for k := range y {
			v = r3.Add(v, r3.Scale(w[k]/over, y[k]))
		}
		return v
	}
	return pick([5]float64{1, -8, 0, 8, -1}, 12*c.h), pick([5]float64{-1, 16, -30, 16, -1}, 12*c.h*c.h)
}

// pace returns how the body moves where the contact has speed v (m/s) and
// acceleration a (m/s²) towards the end of the travel; forward is the sense of
// the driver that goes there.
//
// With y a function of the driver q and s the travel, ds/dq = ±|C′| of the
// contact C, so q̇ = v/(ds/dq), q̈ = (a - s″q̇²)/(ds/dq), ẏ = y′q̇ and
// ÿ = y″q̇² + y′q̈. A segment's axes e give ω = ½Σ e×ė and α = ½Σ e×ë.
func (c *stencil) pace(s *Setup, b *human.Body, v, a, forward float64) pace {
	d1, d2 := c.rates(func(k int) r3.Vec { return c.at[k].Contact })
	per := forward * r3.Norm(d1)
	if math.Abs(per) < 1e-9 { // the contact stands still
		return pace{}
	}
	bend := forward * r3.Dot(d1, d2) / r3.Norm(d1)
	rate := v / per
	accel := (a - bend*rate*rate) / per
	second := func(of func(k int) r3.Vec) r3.Vec {
		y1, y2 := c.rates(of)
		return r3.Add(r3.Scale(rate*rate, y2), r3.Scale(accel, y1))
	}
	var p pace
	for j := range p.chain {
		for e := range 3 {
			axis := c.chain[2][j].Axes[e]
			y1, y2 := c.rates(func(k int) r3.Vec { return c.chain[k][j].Axes[e] })
			p.chain[j].omega = r3.Add(p.chain[j].omega, r3.Scale(rate/2, r3.Cross(axis, y1)))
			dd := r3.Add(r3.Scale(rate*rate, y2), r3.Scale(accel, y1))
			p.chain[j].alpha = r3.Add(p.chain[j].alpha, r3.Scale(0.5, r3.Cross(axis, dd)))
		}
	}
	p.root = second(func(k int) r3.Vec { return c.at[k].Limb.Root })
	p.grip = second(func(k int) r3.Vec { return c.at[k].Contact })
	if s.Exercise.Limb() == human.Leg {
		trunk := second(func(k int) r3.Vec { return c.at[k].Trunk.Origin })
		p.body = r3.Scale(b.Person.Mass-2*legMass(b), trunk)
		for j := range p.chain {
			m := 2 * c.chain[2][j].Mass
			p.body = r3.Add(p.body, r3.Scale(m, second(func(k int) r3.Vec { return c.chain[k][j].Centre })))
		}
	}
	c.speeds(&p, rate)
	return p
}

// speeds fills the rates of the joint angles.
func (c *stencil) speeds(p *pace, rate float64) {
	angles := func(of func(*Placement) [3]float64) (out r3.Vec) {
		d, _ := c.rates(func(k int) r3.Vec {
			a, ref := of(&c.at[k]), of(&c.at[2])
			for j := range a { // no jump across half a turn
				a[j] -= 2 * math.Pi * math.Round((a[j]-ref[j])/(2*math.Pi))
			}
			return r3.Vec{X: a[0], Y: a[1], Z: a[2]}
		})
		return r3.Scale(rate, d)
	}
	shoulder := angles(func(p *Placement) [3]float64 {
		return [3]float64{float64(p.Arm.Elevation), float64(p.Arm.Plane), float64(p.Arm.Rotation)}
	})
	bends := angles(func(p *Placement) [3]float64 {
		return [3]float64{float64(p.Arm.Elbow), float64(p.Leg.Knee), float64(p.Leg.Ankle)}
	})
	hip := angles(func(p *Placement) [3]float64 {
		return [3]float64{float64(p.Leg.HipFlexion), float64(p.Leg.HipAbduction), 0}
	})
	// Across is the speed of the arm itself, which a plane near hanging is not.
	sin := math.Sin(float64(c.at[2].Arm.Elevation))
	p.speeds = [NumJoints]float64{ShoulderRaising: shoulder.X, ShoulderAcross: shoulder.Y * sin, ShoulderTurning: shoulder.Z,
		Elbow: bends.X, Hip: hip.X, HipSide: hip.Y, Knee: bends.Y, Ankle: bends.Z}
}
