package calibrate

import (
	"math"
	"math/rand/v2"

	"steelyard/calibrate/internal/pinhole"
	"steelyard/planar"
)

// camera is a pinhole camera that taps on its own photos.
type camera struct{ pinhole.Camera }

func aimed(target planar.Vec, distance float64, yaw, pitch, roll planar.Angle, lens float64) camera {
	return camera{pinhole.Aimed(target, distance, yaw, pitch, roll, lens)}
}

// sees returns where the photo shows the place, nearer in front of the plane.
func (c *camera) sees(v planar.Vec, nearer float64) Pixel { return Pixel(c.Sees(v, nearer)) }

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
	return Survey{Width: c.Width, Height: c.Height, Plumb: &[2]Pixel{plumb[0], plumb[1]}, Origin: &origin, Tap: tap, Lens: c.Focal / float64(c.Width)}
}
