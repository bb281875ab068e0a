package exercise

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/planar"
)

// shoulderPad is how far the top of the shoulder lies above its centre, m: the
// bony tip is 3 to 5 cm above (working estimate, no source).
const shoulderPad = 0.04

// steepest is the cosine of the slope from which a back pad counts as a bench,
// on which the seat does not tell where the back is.
const steepest = 0.2

// lean returns the trunk's lean from upright, backwards positive, for a slope
// of the back from the floor.
func lean(slope planar.Angle) planar.Angle { return 90*deg - slope }

// trunkFrame returns the frame of a trunk of a given slope with its hips at a
// point of the mid-plane.
func (st *Station) trunkFrame(hips r3.Vec, slope planar.Angle) human.Frame {
	hips.Z = 0
	return human.TrunkAt(hips, lean(slope), st.FacesBack)
}

// ahead returns +1 or -1: the sense of x in which the person faces upright.
func (st *Station) ahead() float64 {
	if st.FacesBack {
		return -1
	}
	return 1
}

// trunk returns where the trunk of a body is that the station itself holds.
func (st *Station) trunk(l *human.Links) human.Frame {
	at := r3.Vec{X: st.At.X, Y: st.At.Y}
	f := st.trunkFrame(at, st.Trunk)
	switch st.Anchor {
	case SeatAnchor:
		return st.trunkFrame(r3.Add(at, st.aboveSeat(l)), st.Trunk)
	case BenchAnchor: // under the back, or the chest of who lies on the front
		n := f.X
		if st.Trunk > 90*deg {
			n = r3.Scale(-1, n)
		}
		shoulders := r3.Add(at, r3.Scale(l.BackToHip, n))
		return st.trunkFrame(r3.Sub(shoulders, r3.Scale(l.Trunk, f.Y)), st.Trunk)
	case FeetAnchor:
		at.Y += l.AnkleHeight + l.Shank + l.Thigh
	case KneesAnchor:
		at.Y += l.Thigh
	}
	return st.trunkFrame(at, st.Trunk)
}

// aboveSeat returns the hips from the seat's point: the hips' depth above a
// level seat and, on a back pad, as far in front of it as the body is deep.
func (st *Station) aboveSeat(l *human.Links) r3.Vec {
	up := r3.Vec{Y: l.SeatToHip}
	s, c := math.Sincos(float64(lean(st.Trunk)))
	if !st.BackPad || c < steepest {
		return up
	}
	// (h - corner)·(c, s) = depth, with h = corner + (x, SeatToHip)
	up.X = st.ahead() * (l.BackToHip - l.SeatToHip*s) / c
	return up
}
