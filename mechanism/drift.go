package mechanism

import "math"

// This file reads, from a variation solved at one pose, what it does to the
// contact, the load and the force.

// place returns how the point of the link measured at p, and itself moved by
// shift, is displaced with the driver held, and how its velocity changes.
func (v *variation) place(l LinkID, p, shift vec) (at, rate vec) {
	st := v.st
	now := st.pose[l].Point(p)
	turned := st.pose[l].Turn(shift)
	at = st.moves(l, now, v.y).Add(turned)
	rate = st.moves(l, now, v.vp).Add(st.centripetal(l, now, st.vel, v.y)).Add(turned.Perp().Scale(st.vel[l].w))
	return at, rate
}

// contact returns how the contact is displaced and how its speed per unit of
// driver changes.
func (v *variation) contact() (at vec, speed float64) {
	c := &v.base.machine.Contact
	at, rate := v.place(c.Link, c.At, v.moved.machine.Contact.At.Sub(c.At))
	_, tangent, _ := v.st.path()
	return at, v.base.forward * tangent.Dot(rate)
}

// loadSpeed returns the change of the load's root-mean-square speed.
func (v *variation) loadSpeed() float64 {
	a, b := v.base.machine.Weights, v.moved.machine.Weights
	sum, grown, total := 0.0, 0.0, 0.0 // Σ m v², its change, and the change of Σ m
	for i := range a {
		if !a[i].Load || a[i].Link == Ground {
			continue
		}
		dm := b[i].Mass - a[i].Mass
		u := v.st.velocity(a[i].Link, v.st.pose[a[i].Link].Point(a[i].At))
		_, rate := v.place(a[i].Link, a[i].At, b[i].At.Sub(a[i].At))
		sum += a[i].Mass * u.Dot(u)
		grown += dm*u.Dot(u) + 2*a[i].Mass*u.Dot(rate)
		total += dm
	}
	if sum == 0 {
		return 0
	}
	speed := math.Sqrt(sum / v.base.load)
	return speed / 2 * (grown/sum - total/v.base.load)
}

// hold returns the change of the holding force, given the force itself and the
// change of the contact's speed: F = -P/speed with P the loads' power.
func (v *variation) hold(force, speed float64) float64 {
	_, _, s := v.st.path()
	return -v.power()/(v.base.forward*s) - force*speed/s
}

// power returns the change of the loads' work per unit of driver.
func (v *variation) power() float64 {
	sum := 0.0
	for l := 1; l < len(v.base.bodies); l++ {
		sum += v.weightPower(LinkID(l))
	}
	for i := range v.base.machine.Elements {
		sum += v.elementPower(i)
	}
	for i := range v.base.machine.Chains {
		sum += v.chainPower(i)
	}
	return sum
}

// weightPower is the change of -g·(m v) of one link, linear in its mass and in
// its mass times centre.
func (v *variation) weightPower(l LinkID) float64 {
	a, b := &v.base.bodies[l], &v.moved.bodies[l]
	g0, g1 := v.base.gravity[0], v.moved.gravity[0]
	if a.upright {
		g0, g1 = v.base.gravity[1], v.moved.gravity[1]
	}
	up := v.st.velocity(l, v.st.pose[l].Point(a.center)).Y
	if a.mass == 0 {
		return -g0 * b.mass * v.st.velocity(l, v.st.pose[l].Point(b.center)).Y
	}
	// Moving mass m's centre by δc is, to first order, what the change of m·c
	// says beyond the change of m.
	shift := b.center.Sub(a.center).Scale(b.mass / a.mass)
	_, rate := v.place(l, a.center, shift)
	return -(g1-g0)*a.mass*up - g0*(b.mass-a.mass)*up - g0*a.mass*rate.Y
}

func (v *variation) elementPower(i int) float64 {
	st := v.st
	a, b := &v.base.machine.Elements[i], &v.moved.machine.Elements[i]
	k := v.base.lineOf[i]
	if k < 0 {
		j := &v.base.machine.Joints[a.Joint]
		x, w := st.turn[j.B]-st.turn[j.A], st.vel[j.B].w-st.vel[j.A].w
		moment, slope := a.Law.Pull(x, 0)
		other, _ := b.Law.Pull(x, 0)
		return -(other-moment+slope*(v.y[j.B].w-v.y[j.A].w))*w - moment*(v.vp[j.B].w-v.vp[j.A].w)
	}
	now := &st.lines[k]
	explicit, rate := v.line(k)
	grown := explicit - v.laidAtRest[k] + v.moved.lines[k].length - v.base.lines[k].length
	rate += st.lineQuadratic(k, st.vel, v.y)
	for t := range now.terms {
		grown += now.terms[t].power(v.y[now.terms[t].link])
		rate += now.terms[t].power(v.vp[now.terms[t].link])
	}
	pull, slope := a.Law.Pull(now.length, 0)
	other, _ := b.Law.Pull(now.length, 0)
	return -(other-pull+slope*grown)*now.rate - pull*rate
}

func (v *variation) chainPower(i int) float64 {
	st := v.st
	a, b := v.base.machine.Chains[i], v.moved.machine.Chains[i]
	p := st.pose[a.Link].Point(a.At)
	up := st.velocity(a.Link, p).Y
	at, rate := v.place(a.Link, a.At, b.At.Sub(a.At))
	slope, leant := v.base.upward(a.Link), v.moved.upward(a.Link)
	length, grows := a.lifted(p.Y, slope)
	grown := grows * (at.Y - (b.Floor - a.Floor))
	switch {
	case grows > 0:
		grown += (leant - slope) * (p.Y - a.Floor)
	case length > 0:
		grown = b.Length - a.Length
	}
	weight := a.Density * Gravity * slope
	dw := (b.Density*leant - a.Density*slope) * Gravity * length
	return -(dw+weight*grown)*up - weight*length*rate.Y
}

// perPosition turns changes of speed per unit of driver into changes per unit
// of the sweep's own driver range, which may itself be moved.
func (v *variation) perPosition(speed, load float64, sw *Sweep, i int) (float64, float64) {
	return speed + v.stretch*sw.speed[i], load + v.stretch*sw.load[i]
}

// cumulate integrates a change of speed along the sweep, from its first posed
// position, by the cubic through four neighbours; the error falls with h⁴.
func cumulate(total, f []float64, sw *Sweep) {
	lo, hi := 0, len(f)
	for lo < hi && !sw.Posed[lo] {
		lo++
	}
	for hi > lo && !sw.Posed[hi-1] {
		hi--
	}
	sum := 0.0
	for i := lo + 1; i < hi; i++ {
		h := math.Abs(sw.Driver[i] - sw.Driver[i-1])
		sum += h * cell(f[lo:hi], i-lo)
		total[i] = sum
	}
	for i := hi; i < len(total); i++ {
		total[i] = sum
	}
}

// cell returns the mean of f between samples i-1 and i.
func cell(f []float64, i int) float64 {
	n := len(f)
	switch {
	case n < 4:
		return (f[i-1] + f[i]) / 2
	case i == 1:
		return (9*f[0] + 19*f[1] - 5*f[2] + f[3]) / 24
	case i == n-1:
		return (9*f[n-1] + 19*f[n-2] - 5*f[n-3] + f[n-4]) / 24
	}
	return (13*(f[i-1]+f[i]) - f[i-2] - f[i+1]) / 24
}
