package calibrate

import (
	"math"
	"math/rand/v2"

	"steelyard/planar"
)

// camera is a pinhole camera, independent of the code under test: positions in
// space, in m, x forward, y up, z towards the person's right; the plane of
// motion is z = 0.
type camera struct {
	at, right, down, away [3]float64
	focal                 float64 // px
	width, height         int
}

// aimed returns a camera that stands distance away from target, turned yaw to
// the side and pitch up from square, and rolled.
func aimed(target planar.Vec, distance float64, yaw, pitch, roll planar.Angle, lens float64) camera {
	sy, cy := math.Sincos(float64(yaw))
	sp, cp := math.Sincos(float64(pitch))
	away := [3]float64{sy * cp, -sp, -cy * cp}
	right := [3]float64{cy, 0, sy}
	down := cross(away, right)
	sr, cr := math.Sincos(float64(roll))
	c := camera{away: away, width: 2048, height: 1536, focal: lens * 2048}
	for i := range 3 {
		c.right[i] = cr*right[i] + sr*down[i]
		c.down[i] = cr*down[i] - sr*right[i]
	}
	c.at = [3]float64{target.X - distance*away[0], target.Y - distance*away[1], -distance * away[2]}
	return c
}

func cross(a, b [3]float64) [3]float64 {
	return [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func dot(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

// sees returns where the photo shows the place, nearer in front of the plane.
func (c *camera) sees(v planar.Vec, nearer float64) Pixel {
	d := [3]float64{v.X - c.at[0], v.Y - c.at[1], nearer - c.at[2]}
	z := dot(d, c.away)
	return Pixel{float64(c.width)/2 + c.focal*dot(d, c.right)/z, float64(c.height)/2 + c.focal*dot(d, c.down)/z}
}

// taps taps places, each with an error of standard deviation sigma px.
func (c *camera) taps(rng *rand.Rand, sigma float64, places ...planar.Vec) []Pixel {
	out := make([]Pixel, len(places))
	for i, v := range places {
		p := c.sees(v, 0)
		out[i] = Pixel{p.X + sigma*rng.NormFloat64(), p.Y + sigma*rng.NormFloat64()}
	}
	return out
}

// rim returns n places on a plate's rim.
func rim(center planar.Vec, diameter float64, n int) []planar.Vec {
	out := make([]planar.Vec, n)
	for i := range out {
		out[i] = center.Add(planar.Polar(diameter/2, 0.2+2*math.Pi/planar.Angle(n)*planar.Angle(i)))
	}
	return out
}

// box returns the corners of a rectangle, counter-clockwise from the lower rear.
func box(low planar.Vec, width, height float64) []planar.Vec {
	return []planar.Vec{low, low.Add(planar.Vec{X: width}), low.Add(planar.Vec{X: width, Y: height}), low.Add(planar.Vec{Y: height})}
}

// survey returns a survey of the camera's photo with nothing of known size yet.
func (c *camera) survey(rng *rand.Rand, sigma float64) Survey {
	plumb := c.taps(rng, sigma, planar.Vec{X: 0.2, Y: 1.7}, planar.Vec{X: 0.2, Y: 0.3})
	origin := c.sees(planar.Vec{}, 0)
	tap := 2 * sigma
	if sigma == 0 {
		tap = 0.05
	}
	return Survey{Width: c.width, Height: c.height, Plumb: &[2]Pixel{plumb[0], plumb[1]}, Origin: &origin, Tap: tap, Lens: c.focal / 2048}
}
