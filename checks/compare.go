package checks

import (
	"math"

	"steelyard/mechanism"
	"steelyard/planar"
)

// Difference is how far Steelyard and an engine are apart in one quantity over
// a whole sweep.
type Difference struct {
	Machine, Engine, Quantity, Unit string

	Greatest float64 // of all absolute differences
	Scale    float64 // greatest absolute value the engine gave
	Allowed  float64 // relative to Scale
}

// Relative returns the greatest difference over the quantity's scale.
func (d Difference) Relative() float64 { return d.Greatest / d.Scale }

// OK reports whether the difference is within what is allowed.
func (d Difference) OK() bool { return d.Relative() <= d.Allowed }

// faint is the scale, in SI units, below which a quantity counts as nought and
// its differences are taken as absolute ones.
const faint = 1e-2

// tally collects one quantity.
type tally struct{ greatest, scale float64 }

func (t *tally) add(got, want float64) {
	d := math.Abs(got - want)
	if d != d {
		d = math.Inf(1)
	}
	t.greatest = math.Max(t.greatest, d)
	t.scale = math.Max(t.scale, math.Abs(want))
}

func (t *tally) addPoint(got planar.Vec, want Point) {
	t.add(got.X, want[0])
	t.add(got.Y, want[1])
}

// comparison is all quantities of one machine and engine.
type comparison struct {
	turn, place, tangent, ratio, hold, force, moment, tension, mass, slope tally
}

// Compare sets a sweep against an engine's result for the same machine, at the
// same positions. Allowed is relative to each quantity's greatest value.
func Compare(m mechanism.Machine, sw *mechanism.Sweep, engine string, r Result, allowed float64) []Difference {
	var c comparison
	for i, p := range r.Positions {
		if !sw.Posed[i] || sw.Stops[i] != nil {
			c.hold.add(math.NaN(), 0)
			continue
		}
		c.position(m, sw, i, p)
	}
	return c.differences(Difference{Machine: m.Name, Engine: engine, Allowed: allowed})
}

func (c *comparison) position(m mechanism.Machine, sw *mechanism.Sweep, i int, p Position) {
	for l := 1; l < len(p.Poses); l++ {
		want, com := p.Poses[l], m.Links[l-1].Center
		c.turn.add(float64((sw.Turn(i, mechanism.LinkID(l)) - planar.Angle(want.Turn)).Normalized()), 0)
		c.turn.scale = math.Max(c.turn.scale, math.Abs(want.Turn))
		motion := planar.TurnThenShift(planar.Angle(want.Turn), planar.Vec{X: want.Shift[0], Y: want.Shift[1]})
		c.place.addPoint(sw.Pose(i, mechanism.LinkID(l)).Point(com), pointOf(motion.Point(com)))
	}

	// The engine's rates are per unit of driver; Steelyard's are along the path.
	forward := math.Copysign(1, m.Drive.To-m.Drive.From)
	v := planar.Vec{X: p.Velocity[0], Y: p.Velocity[1]}
	speed := v.Norm()
	c.tangent.addPoint(sw.Tangent[i], pointOf(v.Scale(forward/speed)))
	c.ratio.add(sw.LiftRatio[i], loadSpeed(m, p)/speed)
	c.mass.add(sw.Mass[i], p.Mass/(speed*speed))
	if p.MassSlope != 0 {
		along := p.Velocity[0]*p.Acceleration[0] + p.Velocity[1]*p.Acceleration[1]
		c.slope.add(sw.MassSlope[i], forward*(p.MassSlope-2*p.Mass*along/(speed*speed))/(speed*speed*speed))
	}

	c.hold.addPoint(sw.Tangent[i].Scale(sw.Hold[i]), p.Hold)
	for j, want := range p.Reactions {
		if want == nil {
			continue
		}
		got := sw.Reaction(i, j, mechanism.Hold)
		c.force.addPoint(got.Force, want.Force)
		if m.Joints[j].Kind == mechanism.Prismatic {
			c.moment.add(got.Moment, want.Moment)
		}
	}
	for j, want := range p.Ropes {
		if want.Tension != 0 {
			c.tension.add(sw.Tension(i, j, mechanism.Hold), want.Tension)
		}
	}
}

// loadSpeed returns the root mean square speed of the weights that count as
// load, per unit of driver.
func loadSpeed(m mechanism.Machine, p Position) float64 {
	mass, sum := 0.0, 0.0
	for i, w := range m.Weights {
		if w.Load {
			mass += w.Mass
			sum += w.Mass * (p.Loads[i][0]*p.Loads[i][0] + p.Loads[i][1]*p.Loads[i][1])
		}
	}
	if mass == 0 {
		return 0
	}
	return math.Sqrt(sum / mass)
}

func (c *comparison) differences(d Difference) []Difference {
	return d.inEach([]named{
		{"link turn", "rad", c.turn},
		{"link place", "m", c.place},
		{"path direction", "1", c.tangent},
		{"lift ratio", "1", c.ratio},
		{"holding force", "N", c.hold},
		{"joint force", "N", c.force},
		{"slide moment", "N m", c.moment},
		{"rope tension", "N", c.tension},
		{"effective mass", "kg", c.mass},
		{"mass slope", "kg/m", c.slope},
	})
}

// named is one quantity's tally, by its name.
type named struct {
	name, unit string
	tally
}

// inEach returns the difference in each quantity that the engine answers and
// the case has.
func (d Difference) inEach(quantities []named) (list []Difference) {
	for _, q := range quantities {
		if q.scale == 0 && q.greatest == 0 {
			continue
		}
		d.Quantity, d.Unit, d.Greatest, d.Scale = q.name, q.unit, q.greatest, math.Max(q.scale, faint)
		list = append(list, d)
	}
	return list
}
