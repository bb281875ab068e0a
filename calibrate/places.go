package calibrate

import (
	"fmt"
	"math"
	"slices"

	"steelyard/planar"
	"steelyard/quantity"
)

// At returns the place under a pixel, m. It fails, with a *[Fault], beyond the
// horizon of the plane.
func (p *Plane) At(px Pixel) (planar.Vec, error) {
	at, w := p.fromPhoto.through(px.vec())
	if !(w > 0 && at.Norm() < furthest) {
		return planar.Vec{}, &Fault{placeOf(px), "is beyond the horizon of the plane of motion", "tap on the machine, or check the known sizes"}
	}
	return at, nil
}

// Measure returns the place under a pixel with the error it may have: that of
// this tap, and that of the plane, which other places share.
func (p *Plane) Measure(px Pixel) (Point, error) {
	at, err := p.At(px)
	if err != nil {
		return Point{}, err
	}
	var plus planar.Vec
	for _, again := range p.repeats {
		bias, spread, ok := deviation(again, px, at)
		if !ok {
			return Point{}, &Fault{placeOf(px), "is too close to the horizon of the plane of motion to be measured", "tap on the machine, or check the known sizes"}
		}
		plus.X = max(plus.X, math.Abs(bias.X)+quantity.Coverage*spread.X)
		plus.Y = max(plus.Y, math.Abs(bias.Y)+quantity.Coverage*spread.Y)
	}
	_, w := p.fromPhoto.through(px.vec())
	byX, byY := p.fromPhoto.slopes(at, w)
	tap := quantity.Coverage * p.tap
	return Point{at, planar.Vec{
		X: math.Sqrt(plus.X*plus.X + tap*tap*(byX.X*byX.X+byY.X*byY.X)),
		Y: math.Sqrt(plus.Y*plus.Y + tap*tap*(byX.Y*byX.Y+byY.Y*byY.Y)),
	}}, nil
}

// deviation returns by how much the places of a pixel in repeated surveys
// differ from at: their mean difference and their standard deviation. It fails
// if most have no place.
func deviation(again []matrix, px Pixel, at planar.Vec) (bias, spread planar.Vec, ok bool) {
	var squares planar.Vec
	n := 0.0
	for i := range again {
		q, w := again[i].through(px.vec())
		if d := q.Sub(at); w > 0 && q.Norm() < 2*furthest {
			bias = bias.Add(d)
			squares = squares.Add(planar.Vec{X: d.X * d.X, Y: d.Y * d.Y})
			n++
		}
	}
	bias, squares = bias.Scale(1/n), squares.Scale(1/n)
	spread = planar.Vec{X: math.Sqrt(max(0, squares.X-bias.X*bias.X)), Y: math.Sqrt(max(0, squares.Y-bias.Y*bias.Y))}
	return bias, spread, n > 0 && n >= float64(len(again))/2
}

// placeOf names a pixel.
func placeOf(px Pixel) string {
	return fmt.Sprintf("the place at %.0f px right, %.0f px down", px.X, px.Y)
}

// Pixel returns where the photo shows a place (m). It fails, with a *[Fault], if
// that lies behind the camera.
func (p *Plane) Pixel(at planar.Vec) (Pixel, error) {
	px, w := p.toPhoto.through(at)
	if !(w > 0) || !px.Finite() {
		return Pixel{}, &Fault{fmt.Sprintf("the place %.4g m forward, %.4g m up", at.X, at.Y), "lies behind the camera", "check the known sizes"}
	}
	return Pixel(px), nil
}

// FromPhoto returns the homography, row by row, that takes (right, down, 1) in
// px to w·(x, y, 1) in m.
func (p *Plane) FromPhoto() [9]float64 { return p.fromPhoto }

// ToPhoto returns the inverse of [Plane.FromPhoto].
func (p *Plane) ToPhoto() [9]float64 { return p.toPhoto }

// Tilt returns the angle between the camera's axis and the plane's normal.
func (p *Plane) Tilt() planar.Angle { return planar.Angle(p.view.tilt()) }

// Distance returns how far the camera was from the plane at the origin, m along
// its axis, as its lens makes it; +Inf if perspective was left out.
func (p *Plane) Distance() float64 { return 1 / (p.view.bend * p.view.scale) }

// PerPixel returns the length in m of one pixel in the middle of the references.
func (p *Plane) PerPixel() float64 {
	at, w := p.fromPhoto.through(p.middle)
	byX, byY := p.fromPhoto.slopes(at, w)
	return math.Sqrt(math.Abs(byX.Cross(byY)))
}

// Tap returns the ± in m of a tap alone in the middle of the references.
func (p *Plane) Tap() float64 { return quantity.Coverage * p.tap * p.PerPixel() }

// Ambiguous reports whether two planes explain the references alike, so that
// [Survey.Near] is wanted.
func (p *Plane) Ambiguous() bool { return p.split }

// Sides returns the two opposite sides of the photo between which [Survey.Near]
// decides if the plane is ambiguous; none if no side tells its two planes apart.
func (p *Plane) Sides() []Side { return slices.Clone(p.sides) }

// Rim returns the rim of a plate as the plane explains it, to be drawn over the
// photo.
func (p *Plane) Rim(plate int) []Pixel { return p.rims[plate] }
