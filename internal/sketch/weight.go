package sketch

import (
	"math"

	"steelyard/mechanism"
	"steelyard/planar"
)

// discRadius is the radius in m per root of a kg of a weight whose size no
// sheet tells: for the eye only, about that of iron plates side by side.
const discRadius = 0.036

// DiscRadius returns the radius in m of a weight as a disc: as the sheet states
// it, else one whose area grows with its mass.
func DiscRadius(w *mechanism.Weight) (radius float64, stated bool) {
	if w.Inertia > 0 { // of a solid disc, m r²/2, which is how a sheet's diameter arrives here
		return math.Sqrt(2 * w.Inertia / w.Mass), true
	}
	return discRadius * math.Sqrt(w.Mass), false
}

// Hanging returns where a chain hangs from and how far down it reaches: to the
// floor if part of it lies there.
func Hanging(st *mechanism.State, c *mechanism.Chain) (top, foot planar.Vec) {
	top = st.Pose(c.Link).Point(c.At)
	return top, planar.Vec{X: top.X, Y: max(c.Floor, top.Y-c.Length)}
}
