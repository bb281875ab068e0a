package calibrate

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"steelyard/planar"
)

const (
	// mostTaps bounds what a finger drawn round an outline sends.
	mostTaps = 2000
	// MostTraced is the number of points a traced outline is thinned to. A cam
	// of 200 mm then has one every 15 mm or so, which the smooth curve through
	// them follows within 0.02 mm (planar.TracedThrough).
	MostTraced = 36
	// leastTraced is the least number of taps.
	leastTraced = 5
	// mostWaves bounds how wavy a smoothed outline may be.
	mostWaves = 8
	// settlings is how often taps are laid anew along the outline fitted to
	// them; more change nothing.
	settlings = 3
)

// Trace returns the outline of a cam from taps round its edge: counter-clockwise,
// beginning furthest forward, of at most [MostTraced] points.
//
// It takes the fewest waves in x and in y that leave no more than the taps' own
// error, and so evens that error out. If even eight waves leave more, the
// outline has corners: the taps are then kept as they are, thinned if need be.
//
// Places are in m. tap is the ± of one tap alone in m, see [Plane.Tap]; it is
// the ± of the result, since the error of the plane moves axis and outline
// together. It returns a *[Fault] if there are fewer than 5 or more than 2000
// taps, if the outline crosses itself, or if it encloses nothing.
func Trace(taps []planar.Vec, tap float64) ([]Point, error) {
	if n := len(taps); n < leastTraced || n > mostTaps {
		return nil, &Fault{"the cam's outline", fmt.Sprintf("has %d places; %d to %d can be used", n, leastTraced, mostTaps), "tap its edge all round"}
	}
	if !(tap >= 0 && tap < 1) {
		return nil, &Fault{"the error of a tap", fmt.Sprintf("is %g mm; it can be 0 to 1000 mm", 1000*tap), "give what a repeated tap differs by"}
	}
	for i, t := range taps {
		if !t.Finite() {
			return nil, &Fault{fmt.Sprintf("place %d of the cam's outline", i+1), "has no finite position", "tap it again"}
		}
	}
	at := distinct(taps, max(1e-4, tap/4))
	if n := len(at); n > 2*MostTraced {
		at = averaged(at, 2*MostTraced)
		tap /= math.Sqrt(float64(n) / (2 * MostTraced))
	}
	if len(at) < leastTraced {
		return nil, &Fault{"the cam's outline", fmt.Sprintf("has %d places that differ; at least %d are needed", len(at), leastTraced), "tap its edge all round"}
	}
	if err := closed(at); err != nil {
		return nil, err
	}
	traced, ok := smoothed(at, tap/2)
	if !ok {
		traced = thinned(at)
	}
	if polygonArea(traced) < 0 {
		slices.Reverse(traced)
	}
	if err := closed(traced); err != nil {
		return nil, err
	}
	return fromFront(traced, planar.Vec{X: tap, Y: tap}), nil
}

// Edge returns the smooth curve through a traced outline, hollows and all, where
// the photo shows it: for drawing over the photo. It returns a *[Fault] if the
// outline crosses itself or lies behind the camera.
func (p *Plane) Edge(outline []Point) ([]Pixel, error) {
	places := make([]planar.Vec, len(outline))
	for i, o := range outline {
		places[i] = o.At
	}
	curve, err := planar.TracedThrough(places)
	if err != nil {
		return nil, closed(places)
	}
	var edge []Pixel
	for _, at := range curve.Points() {
		px, err := p.Pixel(at)
		if err != nil {
			return nil, err
		}
		edge = append(edge, px)
	}
	return edge, nil
}

// distinct returns the places that differ from the one before by more than
// least: a finger at rest taps the same place again and again.
func distinct(taps []planar.Vec, least float64) []planar.Vec {
	var at []planar.Vec
	for _, t := range taps {
		if len(at) == 0 || t.Sub(at[len(at)-1]).Norm() > least {
			at = append(at, t)
		}
	}
	for len(at) > 1 && at[0].Sub(at[len(at)-1]).Norm() <= least {
		at = at[:len(at)-1]
	}
	return at
}

// averaged returns n places, each the mean of as many neighbours: what a finger
// drawn round leaves of its trembling.
func averaged(at []planar.Vec, n int) []planar.Vec {
	out := make([]planar.Vec, n)
	for i := range out {
		out[i] = mean(at[i*len(at)/n : (i+1)*len(at)/n])
	}
	return out
}

// closed returns a *[Fault] unless the points go once round something.
func closed(at []planar.Vec) error {
	_, err := planar.TracedThrough(at)
	if err == nil {
		return nil
	}
	var te *planar.TraceError
	if errors.As(err, &te) && te.Point > 0 {
		return &Fault{fmt.Sprintf("place %d of the cam's outline is at fault:", te.Point), te.Reason, "or take it away"}
	}
	return &Fault{"the cam's outline", "does not go once round", "tap its edge all round, in order"}
}

// thinned returns at most [MostTraced] of the places, evenly spread.
func thinned(at []planar.Vec) []planar.Vec {
	if len(at) <= MostTraced {
		return slices.Clone(at)
	}
	out := make([]planar.Vec, MostTraced)
	for i := range out {
		out[i] = at[i*len(at)/MostTraced]
	}
	return out
}

// fromFront returns the points with their ±, beginning with the one furthest
// forward.
func fromFront(at []planar.Vec, plus planar.Vec) []Point {
	first := 0
	for i, p := range at {
		if p.X > at[first].X {
			first = i
		}
	}
	out := make([]Point, len(at))
	for i := range out {
		out[i] = Point{at[(first+i)%len(at)], plus}
	}
	return out
}
