package planar

import "math"

// Angle is an angle in radians, counter-clockwise positive. It has a type of
// its own because degrees and radians live side by side in the trade.
type Angle float64

// Degree is one degree.
const Degree Angle = math.Pi / 180

// Degrees returns the angle in degrees.
func (a Angle) Degrees() float64 { return float64(a / Degree) }

// Radians returns the angle in radians.
func (a Angle) Radians() float64 { return float64(a) }

// Normalized returns the same direction within (-π, π].
func (a Angle) Normalized() Angle {
	r := math.Remainder(float64(a), 2*math.Pi)
	if r <= -math.Pi {
		r = math.Pi
	}
	return Angle(r)
}

// Near returns the angle of the same direction that is closest to b, so that
// an angle followed along a motion counts its turns instead of jumping by 2π.
func (a Angle) Near(b Angle) Angle {
	return a + 2*math.Pi*Angle(math.RoundToEven(float64(b-a)/(2*math.Pi)))
}
