package calibrate

import (
	"math"

	"steelyard/planar"
)

// view is how a photo sees a plane: the package comment gives the model.
type view struct {
	a, b   float64    // rad, tilt
	scale  float64    // px/m at the origin
	bend   float64    // 1/px, 1 over the focal length
	middle planar.Vec // px
	origin planar.Vec // px
}

// turned returns the matrix of the tilt: Rodrigues' formula for the rotation
// vector (a, b, 0).
func (v *view) turned() [3][3]float64 {
	theta := math.Hypot(v.a, v.b)
	sinc, versed := 1.0, 0.5 // sin θ/θ and (1 - cos θ)/θ²
	if theta > 1e-6 {
		half := math.Sin(theta/2) / theta
		sinc, versed = math.Sin(theta)/theta, 2*half*half
	}
	aa, ab, bb := versed*v.a*v.a, versed*v.a*v.b, versed*v.b*v.b
	return [3][3]float64{
		{1 - bb, ab, sinc * v.b},
		{ab, 1 - aa, -sinc * v.a},
		{-sinc * v.b, sinc * v.a, 1 - aa - bb},
	}
}

// seen returns the homography that takes (x right, y up, 1) in m, in the plane
// that lies the distance nearer (m) in front of the plane of motion, to
// w·(right, down, 1) in px. w is positive in front of the camera.
//
// The photo's frame is right, down, away; so P = (x, -y, -nearer).
func (v *view) seen(nearer float64) matrix {
	r := v.turned()
	column := func(j int, by float64) (x, y, w float64) {
		away := v.bend * r[2][j]
		by *= v.scale
		return by * (r[0][j] + v.middle.X*away), by * (r[1][j] + v.middle.Y*away), by * away
	}
	var m matrix
	m[0], m[3], m[6] = column(0, 1)
	m[1], m[4], m[7] = column(1, -1)
	x, y, w := column(2, -nearer)
	m[2], m[5], m[8] = v.origin.X+x, v.origin.Y+y, 1+w
	return m
}

// tilt returns the angle in rad between the camera's axis and the plane's
// normal.
func (v *view) tilt() float64 { return math.Hypot(v.a, v.b) }

// telling returns the two opposite sides of which two views see different ones
// nearer: left and right, or top and bottom if those are further apart; none if
// both views see the same sides nearer.
func telling(v, w *view) []Side {
	r, q := v.turned(), w.turned()
	var sides []Side
	most := 0.0
	for axis, pair := range [2][]Side{{LeftSide, RightSide}, {TopSide, BottomSide}} {
		if apart := math.Abs(r[2][axis] - q[2][axis]); r[2][axis]*q[2][axis] < 0 && apart > most {
			sides, most = pair, apart
		}
	}
	return sides
}

// nearer reports whether the plane comes nearer to the camera towards a side.
func (v *view) nearer(to Side) bool {
	r := v.turned()
	switch to {
	case LeftSide:
		return r[2][0] > 0
	case RightSide:
		return r[2][0] < 0
	case TopSide:
		return r[2][1] > 0
	case BottomSide:
		return r[2][1] < 0
	}
	return true
}
