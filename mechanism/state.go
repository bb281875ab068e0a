package mechanism

import "steelyard/planar"

// twist is how a link moves per unit of driver: the velocity of the point now
// at the image of the ground frame's origin, and the turn. The same pair holds
// its second derivative.
type twist struct {
	v vec
	w float64
}

// wrench is what acts on a link: a force and its moment about the image of the
// ground frame's origin.
type wrench struct {
	f vec
	m float64
}

func (w wrench) power(t twist) float64 { return w.f.X*t.v.X + w.f.Y*t.v.Y + w.m*t.w }

func (w wrench) plus(x wrench, k float64) wrench {
	return wrench{vec{X: w.f.X + k*x.f.X, Y: w.f.Y + k*x.f.Y}, w.m + k*x.m}
}

// term is one link's share in an equation: the wrench that a unit of the
// constraint's force puts on it. A row of such terms is at once the row of the
// Jacobian, so motion and equilibrium are read from the same numbers.
type term struct {
	link LinkID
	wrench
}

// State is one machine followed along its travel: where every link is, how it
// moves per unit of driver, and what acts. It is not safe for concurrent use;
// make one for each goroutine.
type State struct {
	model *Model
	q     float64 // driver, rad or m from the measured pose

	pose  []planar.Motion // by LinkID; the ground rests
	turn  []float64       // rad, by LinkID, counting turns
	vel   []twist         // per unit of driver
	acc   []twist         // per unit of driver squared
	saved savedPose

	rows   [][]term  // by row
	resid  []float64 // by row, m or rad
	lines  []laid
	groups []lu
	mode   []bool    // by group: assembly mode carried from the measured pose, as leftHanded tells
	column []float64 // right-hand sides
	local  []int     // by LinkID: place in the group being solved, or -1

	applied []wrench // by LinkID, at rest
	scratch []wrench // by LinkID
	rubbed  []wrench // by LinkID, with friction
	rubbing rubbing
	lambda  [3][]float64 // by row, for hold, lift and lower
	ratios  []float64    // by span of one rope
}

type savedPose struct {
	q     float64
	pose  []planar.Motion
	turn  []float64
	spans [][]planar.Span
}

// laid is a line where it now runs.
type laid struct {
	stations []planar.Wrapped
	spans    []planar.Span
	length   float64 // m
	terms    []term  // two a span: growth of length per twist
	rate     float64 // m per unit of driver
}

// NewState returns a state at the measured pose.
func (md *Model) NewState() *State {
	n := len(md.machine.Links) + 1
	st := &State{
		model: md,
		pose:  make([]planar.Motion, n), turn: make([]float64, n),
		vel: make([]twist, n), acc: make([]twist, n),
		rows: make([][]term, md.rows), resid: make([]float64, md.rows),
		column: make([]float64, 3*n), local: make([]int, n),
		applied: make([]wrench, n), scratch: make([]wrench, n), rubbed: make([]wrench, n),
	}
	st.saved.pose, st.saved.turn = make([]planar.Motion, n), make([]float64, n)
	spans := 0
	for i := range md.lines {
		l := &md.lines[i]
		k := len(l.initial)
		spans = max(spans, k)
		st.lines = append(st.lines, laid{stations: append([]planar.Wrapped(nil), l.stations...), spans: make([]planar.Span, k), terms: make([]term, 2*k)})
		st.saved.spans = append(st.saved.spans, make([]planar.Span, k))
	}
	st.ratios = make([]float64, spans)
	for _, c := range md.constraints {
		st.makeRows(c)
	}
	for i := range md.groups {
		st.groups = append(st.groups, newLU(3*len(md.groups[i].links)))
	}
	st.rubbing = newRubbing(md)
	st.mode = make([]bool, len(st.groups))
	for i := range st.lambda {
		st.lambda[i] = make([]float64, md.rows)
	}
	if err := st.Reset(); err != nil && md.ready {
		panic("mechanism: the measured pose closed once and does not again: " + err.Error())
	}
	return st
}

// makeRows gives each row of the constraint its terms; a rope's row shares
// those of its line.
func (st *State) makeRows(c constraint) {
	if c.kind == roped {
		st.rows[c.row] = st.lines[c.index].terms
		return
	}
	j := st.model.machine.Joints[c.index]
	for r := range c.kind.rows() {
		st.rows[c.row+r] = []term{{link: j.A}, {link: j.B}}
	}
}

// Reset returns to the measured pose. Compile has made sure that it closes; the
// error, a *[Stop], is only for Compile itself.
func (st *State) Reset() error {
	st.q = 0
	for i := range st.pose {
		st.pose[i], st.turn[i] = planar.Rest(), 0
		st.vel[i], st.acc[i] = twist{}, twist{}
	}
	for i := range st.lines {
		l := &st.model.lines[i]
		for k := range l.initial {
			st.lines[i].spans[k].Direction = l.initial[k]
		}
	}
	if stop := st.layLines(0, len(st.lines)); stop != nil {
		return stop
	}
	if err := st.Rates(); err != nil {
		return err
	}
	for i := range st.mode {
		st.mode[i] = st.leftHanded(i)
	}
	return nil
}

// Driver returns the driver coordinate, in rad or m from the measured pose.
func (st *State) Driver() float64 { return st.q }

// Pose returns where the link is now, relative to the measured pose.
func (st *State) Pose(l LinkID) planar.Motion { return st.pose[l] }

// Turn returns how far the link has turned from the measured pose, counting
// whole turns.
func (st *State) Turn(l LinkID) planar.Angle { return planar.Angle(st.turn[l]) }

// velocity returns how the material point of the link that is now at p moves
// per unit of driver.
func (st *State) velocity(l LinkID, p vec) vec { return st.moves(l, p, st.vel) }

// acceleration returns the second derivative, with respect to the driver, of
// the place of the material point of the link now at p.
func (st *State) acceleration(l LinkID, p vec) vec {
	t, o, w := &st.acc[l], &st.pose[l].Shift, st.vel[l].w
	x, y := p.X-o.X, p.Y-o.Y
	return vec{X: t.v.X - t.w*y - w*w*x, Y: t.v.Y + t.w*x - w*w*y}
}

// wrenchAt returns the wrench of the force f acting on the link at p.
func (st *State) wrenchAt(l LinkID, p, f vec) wrench {
	return wrench{f, p.Sub(st.pose[l].Shift).Cross(f)}
}

func (st *State) save() {
	st.saved.q = st.q
	copy(st.saved.pose, st.pose)
	copy(st.saved.turn, st.turn)
	for i := range st.lines {
		copy(st.saved.spans[i], st.lines[i].spans)
	}
}

func (st *State) restore() {
	st.q = st.saved.q
	copy(st.pose, st.saved.pose)
	copy(st.turn, st.saved.turn)
	for i := range st.lines {
		copy(st.lines[i].spans, st.saved.spans[i])
	}
}
