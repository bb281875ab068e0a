package sketch

import (
	"math"

	"steelyard/evaluation"
	"steelyard/mechanism"
	"steelyard/planar"
)

// straightTurn is the turn of the path below which it counts as straight.
const straightTurn = 5 * planar.Degree

// OuterSide returns +1 if the load ribbon stands left of the contact's way, -1
// if right: on the outer side of a bent path, where it cannot fold; on a
// straight one on the side away from the machine.
func OuterSide(e *evaluation.Evaluation) float64 {
	turn := planar.Angle(0)
	for k := 1; k < len(e.Rows); k++ {
		turn += (e.Sweep.Tangent[e.Rows[k]].Angle() - e.Sweep.Tangent[e.Rows[k-1]].Angle()).Normalized()
	}
	if math.Abs(float64(turn)) > float64(straightTurn) {
		return math.Copysign(1, float64(-turn))
	}
	m, middle := e.Model.Machine(), e.Rows[len(e.Rows)/2]
	var sum planar.Vec
	n := 0.0
	for i := range len(m.Links) + 1 {
		l := mechanism.LinkID(i)
		for _, p := range Places(m, l) {
			sum, n = sum.Add(e.Sweep.Pose(middle, l).Point(p)), n+1
		}
	}
	away := e.Sweep.Contact[middle].Sub(sum.Scale(1 / n))
	return math.Copysign(1, e.Sweep.Tangent[middle].Cross(away))
}
