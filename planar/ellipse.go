package planar

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mathext"
)

// flattest is the largest ratio of an ellipse's axes. A flatter one is a bar,
// and its elliptic integrals lose their last digits.
const flattest = 1000

// Ellipse is an elliptic outline, such as a cam cut as an oval.
type Ellipse struct {
	center       Vec
	major, minor float64 // semi-axes, m, major >= minor
	tilt         Angle   // of the major axis from the x axis
	half         float64 // half of the perimeter, m
	start        float64 // length from the major axis to normal 0, m
}

// EllipseFromAxes returns the ellipse about center with semi-axis along, whose
// direction is tilt from the x axis, and semi-axis across, square to it (m,
// > 0). It returns an error if an axis is not a positive length or is more
// than 1000 times the other.
func EllipseFromAxes(center Vec, along, across float64, tilt Angle) (*Ellipse, error) {
	if !center.Finite() || math.IsNaN(float64(tilt-tilt)) {
		return nil, fmt.Errorf("planar: the ellipse's centre (%g, %g) m or tilt %g° is not a number; give finite ones",
			center.X, center.Y, tilt.Degrees())
	}
	major, minor := max(along, across), min(along, across)
	if !(minor > 0 && major <= maxReach) {
		return nil, fmt.Errorf("planar: the ellipse's semi-axes are %.4g mm and %.4g mm; give lengths above 0 and up to %g m",
			1000*along, 1000*across, float64(maxReach))
	}
	if major > flattest*minor {
		return nil, fmt.Errorf("planar: the ellipse's semi-axes are %.4g mm and %.4g mm; one may be at most %d times the other",
			1000*along, 1000*across, flattest)
	}
	if across > along {
		tilt += quarter
	}
	e := &Ellipse{center: center, major: major, minor: minor, tilt: tilt}
	e.half = 2 * major * mathext.CompleteE(e.modulus())
	e.start = e.fromAxis(-tilt)
	return e, nil
}

// modulus returns the parameter m = 1 - (minor/major)² of the elliptic integrals.
func (e *Ellipse) modulus() float64 {
	return (e.major - e.minor) * (e.major + e.minor) / (e.major * e.major)
}

// Support implements [Outline]: h = √(a² cos² + b² sin²) about the centre.
func (e *Ellipse) Support(phi Angle) (h, dh float64) {
	s, c := math.Sincos(float64(phi - e.tilt))
	a, b := e.major*c, e.minor*s
	r := math.Sqrt(a*a + b*b)
	sin, cos := math.Sincos(float64(phi))
	return r + e.center.X*cos + e.center.Y*sin,
		(e.minor-e.major)*(e.minor+e.major)*s*c/r + e.center.Y*cos - e.center.X*sin
}

// Length implements [Outline] by the incomplete elliptic integral of the
// second kind, good to about 1e-15 of the perimeter.
func (e *Ellipse) Length(phi Angle) float64 { return e.fromAxis(phi-e.tilt) - e.start }

// fromAxis returns the length from the end of the major axis to the normal at
// psi from it, counter-clockwise.
//
// The normal at psi touches the point (a cos t, b sin t) with tan t = (b/a) tan
// psi, and ∫₀ᵗ √(a² sin² + b² cos²) dt = a (E(π/2) - E(π/2 - t)).
//
// Source: NIST Digital Library of Mathematical Functions, 19.30(i).
func (e *Ellipse) fromAxis(psi Angle) float64 {
	halves := math.Floor(float64(psi) / math.Pi)
	s, c := math.Sincos(float64(psi) - halves*math.Pi)
	t := math.Atan2(e.minor*s, e.major*c)
	return halves*e.half + e.half/2 - e.major*mathext.EllipticE(quarter-t, e.modulus())
}
