package mechanism

// motion is how fast the driver goes: its rate in rad/s or m/s and that rate's
// derivative. The zero value is rest.
type motion struct{ rate, accel float64 }

// applyLoads sums on each link everything that acts on it but the contact,
// joints and ropes: weight, springs, bands, chains and, when it moves, dampers
// and inertia (d'Alembert). It returns a *[Stop] for a spring beyond its range.
func (st *State) applyLoads(mo motion) *Stop {
	md := st.model
	clear(st.applied)
	for l := 1; l < len(md.bodies); l++ {
		b := &md.bodies[l]
		g := md.gravity[0]
		if b.upright {
			g = md.gravity[1]
		}
		x := b.center.X*st.pose[l].Cos - b.center.Y*st.pose[l].Sin
		st.applied[l] = wrench{vec{Y: -b.mass * g}, -b.mass * g * x}
	}
	for i := range md.machine.Chains {
		st.applyChain(&md.machine.Chains[i], mo)
	}
	if stop := st.applyElements(mo); stop != nil {
		return stop
	}
	if mo != (motion{}) {
		st.applyInertia(mo)
	}
	return nil
}

// lifted returns the length in m of chain off the floor when it hangs from
// height y in a plane of the given slope, and how it grows with y.
func (c *Chain) lifted(y, slope float64) (length, grows float64) {
	switch h := (y - c.Floor) * slope; {
	case h <= 0:
		return 0, 0
	case h >= c.Length:
		return c.Length, 0
	default:
		return h, slope
	}
}

// upward returns how far a point of the link rises per metre of its way along
// the plane's y axis.
func (md *Model) upward(l LinkID) float64 {
	if md.bodies[l].upright {
		return 1
	}
	return md.machine.Plane.Slope()
}

// applyChain adds a chain's weight and inertia. It hangs upright whatever the
// plane's lean, so its rise is the slope times the plane's, and so is the share
// of its pull that acts in the plane.
func (st *State) applyChain(c *Chain, mo motion) {
	p := st.pose[c.Link].Point(c.At)
	slope := st.model.upward(c.Link)
	length, grows := c.lifted(p.Y, slope)
	pull := c.Density * length * (Gravity + slope*st.pointAccel(c.Link, p, mo).Y)
	// Links picked up must be brought to speed, which takes λv² and is lost;
	// those laid down take theirs to the floor.
	if rise := st.velocity(c.Link, p).Y * mo.rate; rise > 0 {
		pull += c.Density * grows * slope * rise * rise
	}
	st.applied[c.Link] = st.applied[c.Link].plus(st.wrenchAt(c.Link, p, vec{Y: -pull * slope}), 1)
}

func (st *State) applyElements(mo motion) *Stop {
	md := st.model
	for i := range md.machine.Elements {
		e := &md.machine.Elements[i]
		if k := md.lineOf[i]; k >= 0 {
			now := &st.lines[k]
			pull, _ := e.Law.Pull(now.length, now.rate*mo.rate)
			if !finite(pull) {
				return st.springSpent(md.lines[k].part, now.length)
			}
			for t := range now.terms {
				l := now.terms[t].link
				st.applied[l] = st.applied[l].plus(now.terms[t].wrench, -pull)
			}
			continue
		}
		j := &md.machine.Joints[e.Joint]
		moment, _ := e.Law.Pull(st.turn[j.B]-st.turn[j.A], (st.vel[j.B].w-st.vel[j.A].w)*mo.rate)
		st.applied[j.B].m -= moment
		st.applied[j.A].m += moment
	}
	return nil
}

// applyInertia adds minus mass times acceleration for every body and wheel.
func (st *State) applyInertia(mo motion) {
	md := st.model
	for l := 1; l < len(md.bodies); l++ {
		b := &md.bodies[l]
		if b.mass == 0 && b.inertia == 0 {
			continue
		}
		p := st.pose[l].Point(b.center)
		f := st.pointAccel(LinkID(l), p, mo).Scale(-b.mass)
		w := st.wrenchAt(LinkID(l), p, f)
		w.m -= b.inertia * (st.acc[l].w*mo.rate*mo.rate + st.vel[l].w*mo.accel)
		st.applied[l] = st.applied[l].plus(w, 1)
	}
	for _, wheel := range md.machine.Wheels {
		j := &md.machine.Joints[wheel.Joint]
		alpha := (st.acc[j.B].w-st.acc[j.A].w)*mo.rate*mo.rate + (st.vel[j.B].w-st.vel[j.A].w)*mo.accel
		moment := wheel.Inertia * wheel.Ratio * wheel.Ratio * alpha
		st.applied[j.B].m -= moment
		st.applied[j.A].m += moment
	}
}

// pointAccel returns the acceleration in m/s² of the material point now at p.
func (st *State) pointAccel(l LinkID, p vec, mo motion) vec {
	return st.acceleration(l, p).Scale(mo.rate * mo.rate).Add(st.velocity(l, p).Scale(mo.accel))
}

// power returns the work that the wrenches do per unit of driver.
func (st *State) power(on []wrench) float64 {
	s := 0.0
	for l := 1; l < len(on); l++ {
		s += on[l].power(st.vel[l])
	}
	return s
}

func finite(x float64) bool { return x-x == 0 }
