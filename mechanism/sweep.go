package mechanism

import (
	"errors"
	"math"

	"steelyard/planar"
)

// Sweep is the machine at evenly spaced driver positions from the start of its
// travel to its end: columns of equal length, one row a position.
//
// Where Stops has an entry the force columns hold zero and mean nothing. Where
// Posed is false the machine could not be brought there at all: every column
// but Driver is then without meaning, and Travel stays at its last value.
type Sweep struct {
	Driver     []float64 // rad or m from the measured pose
	Posed      []bool
	Stops      []*Stop   // why there is no force; nil where there is
	Loose      []*Stop   // why the machine does not follow the body down there; Lower is then 0
	Contact    []vec     // m
	Tangent    []vec     // unit, towards the end of the travel
	Travel     []float64 // m along the contact's path from the start
	LoadTravel []float64 // m travelled by the load from the start
	Hold       []float64 // N at the contact along its path, frictionless
	Lift       []float64 // N, with friction against it
	Lower      []float64 // N, with friction helping
	LiftRatio  []float64
	Mass       []float64 // kg, effective at the contact
	MassSlope  []float64 // kg/m

	links, joints, ropes int
	poses                []planar.Motion // row-major, by LinkID
	turns                []float64
	reactions            [3][]Reaction // by sense, row-major
	tensions             [3][]float64
	radii                []float64 // by station of every rope, row-major
	stations             []int     // by rope: its first station's place in a row of radii; the last entry ends the row
	speed, speedSlope    []float64 // of the contact per unit of driver
	load, loadSlope      []float64
	state                *State
}

// NewSweep returns an empty table of n ≥ 2 positions for [Model.SweepInto].
func (md *Model) NewSweep(n int) *Sweep {
	m := &md.machine
	links := len(m.Links) + 1
	sw := &Sweep{
		Driver: make([]float64, n), Posed: make([]bool, n), Stops: make([]*Stop, n), Loose: make([]*Stop, n),
		Contact: make([]vec, n), Tangent: make([]vec, n),
		links: links, joints: len(m.Joints), ropes: len(m.Ropes),
		poses: make([]planar.Motion, n*links), turns: make([]float64, n*links),
		state: md.NewState(),
	}
	for _, column := range []*[]float64{&sw.Travel, &sw.LoadTravel, &sw.Hold, &sw.Lift, &sw.Lower, &sw.LiftRatio,
		&sw.Mass, &sw.MassSlope, &sw.speed, &sw.speedSlope, &sw.load, &sw.loadSlope} {
		*column = make([]float64, n)
	}
	sw.stations = []int{0}
	for i := range m.Ropes {
		sw.stations = append(sw.stations, sw.stations[i]+len(m.Ropes[i].Route))
	}
	sw.radii = make([]float64, n*sw.stations[sw.ropes])
	for s := range sw.reactions {
		sw.reactions[s] = make([]Reaction, n*sw.joints)
		sw.tensions[s] = make([]float64, n*sw.ropes)
	}
	return sw
}

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

// Len returns the number of positions.
func (sw *Sweep) Len() int { return len(sw.Driver) }

// Pose returns where the link is at position i, relative to the measured pose.
func (sw *Sweep) Pose(i int, l LinkID) planar.Motion { return sw.poses[i*sw.links+int(l)] }

// Turn returns the link's turn from the measured pose at position i.
func (sw *Sweep) Turn(i int, l LinkID) planar.Angle { return planar.Angle(sw.turns[i*sw.links+int(l)]) }

// Reaction returns what the joint transmits at position i in that sense.
func (sw *Sweep) Reaction(i, joint int, sense Sense) Reaction {
	return sw.reactions[sw.slot(sense)][i*sw.joints+joint]
}

// Tension returns the rope's pull in N at position i, of its first span.
func (sw *Sweep) Tension(i, rope int, sense Sense) float64 {
	return sw.tensions[sw.slot(sense)][i*sw.ropes+rope]
}

// Radius returns the distance in m from a rope station's axis to the rope
// leaving it (at the last station, reaching it) at position i.
func (sw *Sweep) Radius(i, rope, station int) float64 {
	return sw.radii[i*sw.stations[sw.ropes]+sw.stations[rope]+station]
}

func (sw *Sweep) slot(sense Sense) int {
	if !sw.state.model.rubs {
		sense = Hold
	}
	return sense.slot()
}
