package mechanism

import (
	"errors"
	"math"
)

// Sweep tabulates the travel at n ≥ 2 positions. It fails, with a *[Stop], only
// if no position at all can be reached; parts that cannot are gaps.
func (md *Model) Sweep(n int) (*Sweep, error) {
	sw := md.NewSweep(n)
	return sw, md.SweepInto(sw)
}

// SweepInto is [Model.Sweep] into a table of the same model, without
// allocation where the whole travel can be reached.
func (md *Model) SweepInto(sw *Sweep) error {
	st, n := sw.state, len(sw.Driver)
	if st.model != md {
		return errors.New("mechanism: the table belongs to another machine")
	}
	if n < 2 {
		return errors.New("mechanism: a table of the travel needs at least 2 positions")
	}
	d := &md.machine.Drive
	clear(sw.Posed)
	clear(sw.Stops)
	clear(sw.Loose)
	for i := range sw.Driver {
		t := float64(i) / float64(n-1)
		sw.Driver[i] = d.From*(1-t) + d.To*t
	}
	// Outward from the measured pose, where the branch is known, both ways.
	middle := 0
	for middle < n && sw.Driver[middle]*md.forward < 0 {
		middle++
	}
	up := sw.follow(middle, n, +1)
	down := sw.follow(middle-1, -1, -1)
	sw.integrate()
	if up != nil && down != nil || !sw.Posed[min(middle, n-1)] && !sw.Posed[max(middle-1, 0)] {
		return first(up, down)
	}
	return nil
}

// follow goes from the measured pose through positions from, from+step, … up
// to but not including end. It returns the stop if the first cannot be reached.
// The travel also ends where the contact turns back on its path.
func (sw *Sweep) follow(from, end, step int) error {
	if from == end {
		return nil
	}
	st := sw.state
	if err := st.Reset(); err != nil {
		return err
	}
	for i := from; i != end; i += step {
		before, q := st.contactVelocity(), st.q
		err := st.MoveTo(sw.Driver[i])
		if err == nil && st.contactVelocity().Dot(before) < 0 {
			err = st.turnsBack(q, before)
		}
		if err == nil {
			sw.record(i)
			continue
		}
		stop := asStop(err)
		for k := i; k != end; k += step {
			sw.Stops[k] = stop
		}
		if i == from {
			return err
		}
		return nil
	}
	return nil
}

// record writes the present pose and its forces to row i.
func (sw *Sweep) record(i int) {
	st := sw.state
	sw.Posed[i] = true
	copy(sw.poses[i*sw.links:], st.pose)
	copy(sw.turns[i*sw.links:(i+1)*sw.links], st.turn)
	sw.Contact[i], sw.Tangent[i], sw.speed[i] = st.path()
	sw.speedSlope[i] = 0
	sw.load[i], sw.loadSlope[i] = st.loadSpeed()
	sw.Hold[i], sw.Lift[i], sw.Lower[i], sw.LiftRatio[i], sw.Mass[i], sw.MassSlope[i] = 0, 0, 0, 0, 0, 0

	sw.recordRadii(i)
	if stop := st.ropeOff(); stop != nil {
		sw.Stops[i] = stop
		return
	}
	if sw.speed[i] >= still {
		sw.speedSlope[i] = st.pathSlope()
		in := st.Inertia()
		sw.Mass[i], sw.MassSlope[i], sw.LiftRatio[i] = in.Mass, in.Slope, sw.load[i]/sw.speed[i]
	}
	sw.Stops[i] = sw.recordForces(i)
}

func (sw *Sweep) recordRadii(i int) {
	row := sw.radii[i*sw.stations[sw.ropes]:]
	for r := range sw.ropes {
		for k := sw.stations[r]; k < sw.stations[r+1]; k++ {
			_, row[k] = sw.state.Radius(r, k-sw.stations[r])
		}
	}
}

// recordForces fills the force columns of row i, or tells why it cannot.
func (sw *Sweep) recordForces(i int) *Stop {
	st := sw.state
	for _, c := range [3]struct {
		sense  Sense
		column []float64
	}{{Hold, sw.Hold}, {Lift, sw.Lift}, {Lower, sw.Lower}} {
		if c.sense != Hold && !st.model.rubs {
			c.column[i] = sw.Hold[i]
			continue
		}
		f, err := st.Force(c.sense)
		stop := asStop(err)
		if stop == nil {
			stop = st.Slack(c.sense)
		}
		if stop != nil && c.sense == Lower {
			// Friction alone holds the load: the body can leave it.
			sw.Loose[i], c.column[i] = stop, 0
			clear(sw.reactions[Lower.slot()][i*sw.joints : (i+1)*sw.joints])
			clear(sw.tensions[Lower.slot()][i*sw.ropes : (i+1)*sw.ropes])
			return nil
		}
		if stop != nil {
			sw.Hold[i], sw.Lift[i], sw.Lower[i] = 0, 0, 0
			return stop
		}
		c.column[i] = f
		for j := range sw.joints {
			sw.reactions[c.sense.slot()][i*sw.joints+j] = st.Reaction(j, c.sense)
		}
		for r := range sw.ropes {
			sw.tensions[c.sense.slot()][i*sw.ropes+r] = st.Tension(r, c.sense)
		}
	}
	return nil
}

// asStop returns the stop in err; nil if there is none.
func asStop(err error) *Stop {
	if err == nil {
		return nil
	}
	stop := new(Stop)
	errors.As(err, &stop)
	return stop
}

// integrate fills Travel and LoadTravel from the speeds and their slopes by the
// corrected trapezoid h/2·(v₀+v₁) + h²/12·(v′₀-v′₁), whose error falls with h⁴.
func (sw *Sweep) integrate() {
	travel, load := 0.0, 0.0
	for i := range sw.Driver {
		if i > 0 && sw.Posed[i] && sw.Posed[i-1] {
			h := sw.Driver[i] - sw.Driver[i-1]
			travel += corrected(h, sw.speed[i-1:i+1], sw.speedSlope[i-1:i+1])
			load += corrected(h, sw.load[i-1:i+1], sw.loadSlope[i-1:i+1])
		}
		sw.Travel[i], sw.LoadTravel[i] = travel, load
	}
}

func corrected(h float64, v, slope []float64) float64 {
	return math.Abs(h)/2*(v[0]+v[1]) + math.Copysign(h*h/12, h)*(slope[0]-slope[1])
}
