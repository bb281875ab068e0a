// Package pinhole is a camera with nothing but a hole for a lens, by which tests
// make photos whose geometry is known. It shares no code with package calibrate.
package pinhole

import (
	"math"

	"steelyard/planar"
)

// Camera sees space with x forward, y up, z towards the person's right, in m.
// The plane of motion is z = 0.
type Camera struct {
	Width, Height     int     // of its photos, px
	Focal             float64 // px
	at                [3]float64
	right, down, away [3]float64 // unit vectors
}

// Aimed returns a camera with photos of 2048 × 1536 px that looks at target from
// the given distance, turned off square by yaw (standing further back) and pitch
// (standing higher), and rolled. lens is its focal length over the longer side.
func Aimed(target planar.Vec, distance float64, yaw, pitch, roll planar.Angle, lens float64) Camera {
	sy, cy := math.Sincos(float64(yaw))
	sp, cp := math.Sincos(float64(pitch))
	sr, cr := math.Sincos(float64(roll))
	c := Camera{Width: 2048, Height: 1536, Focal: lens * 2048, away: [3]float64{sy * cp, -sp, -cy * cp}}
	right := [3]float64{cy, 0, sy}
	down := cross(c.away, right)
	for i := range 3 {
		c.right[i] = cr*right[i] + sr*down[i]
		c.down[i] = cr*down[i] - sr*right[i]
		c.at[i] = -distance * c.away[i]
	}
	c.at[0] += target.X
	c.at[1] += target.Y
	return c
}

// Sees returns the pixel, right and down, that shows a place the given distance
// (m) in front of the plane of motion.
func (c *Camera) Sees(v planar.Vec, inFront float64) planar.Vec {
	d := [3]float64{v.X - c.at[0], v.Y - c.at[1], inFront - c.at[2]}
	z := dot(d, c.away)
	return planar.Vec{X: float64(c.Width)/2 + c.Focal*dot(d, c.right)/z, Y: float64(c.Height)/2 + c.Focal*dot(d, c.down)/z}
}

// Place returns the place in the plane of motion that a pixel shows: where its
// ray meets the plane.
func (c *Camera) Place(px planar.Vec) planar.Vec {
	u, v := (px.X-float64(c.Width)/2)/c.Focal, (px.Y-float64(c.Height)/2)/c.Focal
	var ray [3]float64
	for i := range ray {
		ray[i] = c.away[i] + u*c.right[i] + v*c.down[i]
	}
	t := -c.at[2] / ray[2]
	return planar.Vec{X: c.at[0] + t*ray[0], Y: c.at[1] + t*ray[1]}
}

func cross(a, b [3]float64) [3]float64 {
	return [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func dot(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
