package mechanism

import "math"

// Inertia is what the moving masses weigh at the contact.
type Inertia struct {
	Mass  float64 // kg, effective mass Σ m(dx/ds)² + I(dθ/ds)²
	Slope float64 // kg/m, its growth along the travel
}

// Inertia returns the effective mass at the contact and its slope. With it the
// force of a frictionless stroke is F = static + m·s̈ + ½·m′·ṡ². Rates must be
// known; where the contact stands still both are infinite.
//
// A chain that leaves the floor or comes down on it is not conservative: with
// λ its mass per metre and ẏ its speed, lifting takes ½λẏ² more at its hook than
// m′ says and lowering as much less.
func (st *State) Inertia() Inertia {
	md := st.model
	m, slope := 0.0, 0.0 // per unit of driver: kg·m² (or kg) and its growth
	add := func(mass float64, v, a vec) {
		m += mass * v.Dot(v)
		slope += 2 * mass * v.Dot(a)
	}
	for l := 1; l < len(md.bodies); l++ {
		b := &md.bodies[l]
		if b.mass > 0 {
			p := st.pose[l].Point(b.center)
			add(b.mass, st.velocity(LinkID(l), p), st.acceleration(LinkID(l), p))
		}
		m += b.inertia * st.vel[l].w * st.vel[l].w
		slope += 2 * b.inertia * st.vel[l].w * st.acc[l].w
	}
	for _, w := range md.machine.Wheels {
		j := &md.machine.Joints[w.Joint]
		rate, accel := st.vel[j.B].w-st.vel[j.A].w, st.acc[j.B].w-st.acc[j.A].w
		m += w.Inertia * w.Ratio * w.Ratio * rate * rate
		slope += 2 * w.Inertia * w.Ratio * w.Ratio * rate * accel
	}
	for i := range md.machine.Chains {
		c := &md.machine.Chains[i]
		p := st.pose[c.Link].Point(c.At)
		up := md.upward(c.Link) // of a chain only the rise counts
		length, grows := c.lifted(p.Y, up)
		v, a := st.velocity(c.Link, p).Y, st.acceleration(c.Link, p).Y
		m += c.Density * length * up * up * v * v
		slope += c.Density * up * up * v * (2*length*a + grows*v*v)
	}

	_, _, speed := st.path()
	along := st.pathSlope()
	at := m / (speed * speed)
	// d/ds = (1/speed)·d/dq, towards the end of the travel.
	return Inertia{at, md.forward * (slope - 2*at*speed*along) / (speed * speed * speed)}
}

// pathSlope returns how the contact's speed per unit of driver changes with
// the driver.
func (st *State) pathSlope() float64 {
	c := &st.model.machine.Contact
	p := st.pose[c.Link].Point(c.At)
	v := st.velocity(c.Link, p)
	return v.Dot(st.acceleration(c.Link, p)) / v.Norm()
}

// loadSpeed returns how far the load travels per unit of driver, as the root
// mean square over all weights that count as load, and its slope.
func (st *State) loadSpeed() (speed, slope float64) {
	md := st.model
	if md.load == 0 {
		return 0, 0
	}
	vv, va := 0.0, 0.0
	for i := range md.machine.Weights {
		w := &md.machine.Weights[i]
		if !w.Load || w.Link == Ground {
			continue
		}
		p := st.pose[w.Link].Point(w.At)
		v := st.velocity(w.Link, p)
		vv += w.Mass * v.Dot(v)
		va += w.Mass * v.Dot(st.acceleration(w.Link, p))
	}
	if vv == 0 {
		return 0, 0
	}
	speed = math.Sqrt(vv / md.load)
	return speed, va / md.load / speed
}

// LiftRatio returns the distance the load travels over the distance the
// contact travels, here and now; 0 if nothing counts as load.
func (st *State) LiftRatio() float64 {
	load, _ := st.loadSpeed()
	_, _, contact := st.path()
	return load / contact
}
