package mechanism

import "steelyard/planar"

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
