package mechanism

import "math"

// rubber is a place where friction follows a load that itself depends on
// friction: a pin's reaction, a slider's press, a rope's tension.
type rubber struct {
	kind  rubKind
	index int // of the joint or rope
}

type rubKind uint8

const (
	rubPin rubKind = iota
	rubSlider
	rubRope
)

// rubbing is the workspace of [State.rub].
type rubbing struct {
	load   []float64   // by rubber, N: R, N or T
	force  []float64   // by rubber: contact force per unit of its load
	lambda [][]float64 // by rubber: rows' forces per unit of its load
	base   []float64   // rows' forces without any rubber's friction
	matrix lu
	step   []float64
}

func newRubbing(md *Model) rubbing {
	n := len(md.rubbers)
	r := rubbing{load: make([]float64, n), force: make([]float64, n), base: make([]float64, md.rows),
		matrix: newLU(n), step: make([]float64, n)}
	for range n {
		r.lambda = append(r.lambda, make([]float64, md.rows))
	}
	return r
}

const (
	rubTurns  = 50
	rubSettle = 1e-13 // change of the loads, relative to their greatest, taken as settled
)

// rub returns the contact force with friction in the given sense, and leaves
// the reactions under it.
//
// Every rubber's friction is its load times wrenches that the pose alone
// decides, so the rows' forces and the contact force are affine in the loads:
// one equilibrium for what acts without them, and one for a unit of each. What
// is left is to find loads that agree with the rows' forces they bring about,
// a few equations that bend only in |R| and |N|; Newton's method settles them.
//
// It returns a *[Stop] if the machine binds. As friction grows from nothing
// the determinant of those equations falls from one; where it reaches nought
// no force lifts the load any more.
func (st *State) rub(sense Sense, at, tangent vec, speed float64) (float64, error) {
	along := st.model.forward * float64(sense)
	lambda := st.lambda[sense.slot()]
	w := &st.rubbing

	on := st.rubbed
	copy(on, st.applied)
	st.dragJoints(on, along)
	base := st.settle(on, at, tangent, speed, w.base)
	for i, r := range st.model.rubbers {
		clear(on)
		st.unitFriction(r, on, along)
		w.force[i] = st.settle(on, at, tangent, speed, w.lambda[i])
	}
	if !st.agree(lambda) {
		return 0, st.bindStop(at, base)
	}
	f := base
	for i := range w.load {
		f += w.load[i] * w.force[i]
	}
	return f, nil
}

// settle returns the contact force under the wrenches and leaves the rows'
// forces.
func (st *State) settle(on []wrench, at, tangent vec, speed float64, lambda []float64) float64 {
	f := st.balance(on, at, tangent, speed)
	st.equilibrium(on, at, tangent.Scale(f), lambda)
	return f
}

// agree finds the loads of all rubbers, and the rows' forces under them.
func (st *State) agree(lambda []float64) bool {
	w := &st.rubbing
	n := len(w.load)
	clear(w.load) // from no friction, whose signs are those of the branch wanted
	for range rubTurns {
		st.superpose(lambda)
		for i, r := range st.model.rubbers {
			load, _ := st.rubLoad(r, lambda, nil)
			w.step[i] = load - w.load[i]
			for k := range n {
				_, slope := st.rubLoad(r, lambda, w.lambda[k])
				w.matrix.a[i*n+k] = -slope
			}
			w.matrix.a[i*n+i]++
		}
		if !w.matrix.factorFirm() {
			return false
		}
		lifts := w.matrix.determinant() > 0
		w.matrix.solve(w.step)
		change, greatest := 0.0, st.model.heaviness
		for i := range w.load {
			w.load[i] += w.step[i]
			change, greatest = math.Max(change, math.Abs(w.step[i])), math.Max(greatest, math.Abs(w.load[i]))
		}
		if change <= rubSettle*greatest {
			st.superpose(lambda)
			return lifts
		}
	}
	return false
}

// superpose sets lambda to the rows' forces under the present loads.
func (st *State) superpose(lambda []float64) {
	w := &st.rubbing
	copy(lambda, w.base)
	for i, load := range w.load {
		for r, v := range w.lambda[i] {
			lambda[r] += load * v
		}
	}
}

// rubLoad returns the rubber's load under the rows' forces, and its slope when
// they change by change. A tipping moment M over a bearing of length b presses
// with 2M/b.
func (st *State) rubLoad(r rubber, lambda, change []float64) (load, slope float64) {
	at := func(l []float64, row int) float64 {
		if l == nil {
			return 0
		}
		return l[row]
	}
	if r.kind == rubRope {
		row := st.model.constraints[st.model.firstRope+r.index].row
		return -lambda[row], -at(change, row)
	}
	row := st.model.constraints[r.index].row
	x, y, dx, dy := lambda[row], lambda[row+1], at(change, row), at(change, row+1)
	if r.kind == rubPin {
		load = math.Hypot(x, y)
		if load == 0 {
			return 0, 0
		}
		return load, (x*dx + y*dy) / load
	}
	if b := st.model.machine.Joints[r.index].Friction.Bearing; b > 0 && 2*math.Abs(x)/b > math.Abs(y) {
		return 2 * math.Abs(x) / b, 2 * sign(x) * dx / b
	}
	return math.Abs(y), sign(y) * dy
}
