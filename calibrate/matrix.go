package calibrate

import (
	"math"

	"steelyard/planar"
)

// matrix is a homography, row by row.
type matrix [9]float64

// through returns where the homography takes p, and the weight w there; w is 0
// on the line that goes to infinity and changes sign across it.
func (m *matrix) through(p planar.Vec) (q planar.Vec, w float64) {
	w = m[6]*p.X + m[7]*p.Y + m[8]
	return planar.Vec{X: (m[0]*p.X + m[1]*p.Y + m[2]) / w, Y: (m[3]*p.X + m[4]*p.Y + m[5]) / w}, w
}

// slopes returns the derivatives of [matrix.through] by p.X and by p.Y, given
// its results.
func (m *matrix) slopes(q planar.Vec, w float64) (byX, byY planar.Vec) {
	return planar.Vec{X: (m[0] - q.X*m[6]) / w, Y: (m[3] - q.Y*m[6]) / w},
		planar.Vec{X: (m[1] - q.X*m[7]) / w, Y: (m[4] - q.Y*m[7]) / w}
}

// times returns the homography that does n first and then m.
func (m matrix) times(n matrix) matrix {
	var out matrix
	for i := range 3 {
		for j := range 3 {
			out[3*i+j] = m[3*i]*n[j] + m[3*i+1]*n[3+j] + m[3*i+2]*n[6+j]
		}
	}
	return out
}

// inverse returns the inverse, by cofactors; false if there is none.
func (m matrix) inverse() (matrix, bool) {
	out := matrix{
		m[4]*m[8] - m[5]*m[7], m[2]*m[7] - m[1]*m[8], m[1]*m[5] - m[2]*m[4],
		m[5]*m[6] - m[3]*m[8], m[0]*m[8] - m[2]*m[6], m[2]*m[3] - m[0]*m[5],
		m[3]*m[7] - m[4]*m[6], m[1]*m[6] - m[0]*m[7], m[0]*m[4] - m[1]*m[3],
	}
	det := m[0]*out[0] + m[1]*out[3] + m[2]*out[6]
	for i := range out {
		out[i] /= det
		if math.IsNaN(out[i]) || math.IsInf(out[i], 0) {
			return matrix{}, false
		}
	}
	return out, true
}
