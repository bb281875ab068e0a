package mechanism

import (
	"math"

	"steelyard/planar"
)

// Tolerances of the pose: what a closed loop may still gape. Far below what a
// tape reads and above rounding of sums of a few metres.
const (
	closed      = 1e-13 // m and rad, at which Newton stops
	closedLoose = 1e-9  // m and rad, still accepted where rounding stalls it near a dead point
)

const (
	newtonSteps = 25

	// farFromPredicted is the correction in rad of a link's predicted turn beyond
	// which another assembly mode may be nearer than the one followed.
	farFromPredicted = 0.1
)

// predict moves the group's links as their rates say, to second order.
func (st *State) predict(g *group, dq float64) {
	for _, l := range g.links {
		v, a := &st.vel[l], &st.acc[l]
		st.turn[l] += dq * (v.w + dq/2*a.w)
		shift := st.pose[l].Shift
		shift.X += dq * (v.v.X + dq/2*a.v.X)
		shift.Y += dq * (v.v.Y + dq/2*a.v.Y)
		st.pose[l] = planar.TurnThenShift(planar.Angle(st.turn[l]), shift)
	}
}

// newton closes the group's loops from the predicted pose. Where they do not
// close it returns to the saved one.
func (st *State) newton(g *group, f *lu) *Stop {
	last := math.Inf(1)
	for range newtonSteps {
		worst, stop := st.residuals(g)
		if stop != nil {
			return stop
		}
		if worst <= closed || (worst <= closedLoose && worst >= last/2) {
			return nil
		}
		if worst != worst || worst > 10*math.Max(last, 1e-3) {
			break
		}
		last = worst
		if _, ok := st.factorGroup(g, f); !ok {
			st.restore()
			return st.stopGroup(DeadPoint, g, "motion there is undetermined", "end the travel before it")
		}
		if st.correct(g, f) > farFromPredicted {
			break
		}
	}
	st.restore() // to where the links still met
	return st.stopGroup(OutOfReach, g, "beyond it their loop no longer closes", "end the travel before it, or check the points and lengths")
}

// correct takes one Newton step in the group's coordinates and returns the
// greatest turn of a link in it.
func (st *State) correct(g *group, f *lu) (most float64) {
	b := st.column[:f.n]
	r := 0
	for _, ci := range g.constraints {
		c := &st.model.constraints[ci]
		for k := range c.kind.rows() {
			b[r] = -st.resid[c.row+k]
			r++
		}
	}
	f.solve(b)
	for i, l := range g.links {
		turn := b[3*i+2]
		most = math.Max(most, math.Abs(turn))
		st.turn[l] += turn
		shift := st.pose[l].Shift
		shift.X += b[3*i]
		shift.Y += b[3*i+1]
		st.pose[l] = planar.TurnThenShift(planar.Angle(st.turn[l]), shift)
	}
	return most
}

// residuals evaluates the group's equations and their rows at the present
// pose; worst is the largest gap in m or rad.
func (st *State) residuals(g *group) (worst float64, stop *Stop) {
	for _, ci := range g.constraints {
		c := &st.model.constraints[ci]
		if stop := st.equation(c); stop != nil {
			return 0, stop
		}
		for k := range c.kind.rows() {
			if v := math.Abs(st.resid[c.row+k]); v > worst || v != v {
				worst = v
			}
		}
	}
	return worst, nil
}

// branchLost returns a Stop if a group placed by Newton's method has passed a
// dead point, or jumped over it to its other assembly mode: there the
// determinant of its equations changes sign. Closed forms carry their branch.
func (st *State) branchLost() *Stop {
	for i := range st.model.groups {
		if g := &st.model.groups[i]; g.dyad == nil && st.leftHanded(i) != st.mode[i] {
			return st.stopGroup(DeadPoint, g, "the links are in line, beyond it they could go on in two ways", "end the travel before it")
		}
	}
	return nil
}

// leftHanded reports whether the determinant of the group's equations, as
// last factored, is below nought.
func (st *State) leftHanded(group int) bool { return st.groups[group].determinant() < 0 }
