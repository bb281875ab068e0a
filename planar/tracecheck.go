package planar

import (
	"fmt"
	"math"
)

const (
	// maxTraced bounds the time that one outline takes. A cam traced at every
	// degree has 360 points.
	maxTraced = 1000
	// maxReach is the largest coordinate in m. Metres given for millimetres
	// exceed it.
	maxReach = 100
	// closestTraced is the least distance between neighbours in m. What is read
	// from paper or photo differs by more.
	closestTraced = 1e-5
	// thinnest is the least ratio of area to length squared of an outline.
	thinnest = 1e-6
)

// TraceError says what is wrong with the points of a traced outline.
type TraceError struct {
	Point  int    // number of the point at fault as one counts them, from 1; 0 for all
	Reason string // what is wrong, the limit and the cure
}

func (e *TraceError) Error() string {
	if e.Point == 0 {
		return "planar: the traced outline " + e.Reason
	}
	return fmt.Sprintf("planar: traced point %d: %s", e.Point, e.Reason)
}

// atPoint returns the error for the point of the given index.
func atPoint(i int, format string, values ...any) error {
	return &TraceError{Point: i + 1, Reason: fmt.Sprintf(format, values...)}
}

// checkTraced returns an error unless points go once round something.
func checkTraced(points []Vec, corners []int) error {
	n := len(points)
	if n < 3 || n > maxTraced {
		return &TraceError{Reason: fmt.Sprintf("has %d points; give 3 to %d", n, maxTraced)}
	}
	for _, i := range corners {
		if i < 0 || i >= n {
			return &TraceError{Reason: fmt.Sprintf("has a corner marked at point %d, but only points 1 to %d", i+1, n)}
		}
	}
	for i, p := range points {
		if !(math.Abs(p.X) <= maxReach && math.Abs(p.Y) <= maxReach) {
			return atPoint(i, "(%.4g mm, %.4g mm) is further than %d m from the origin; check its coordinates and their unit",
				1000*p.X, 1000*p.Y, int(maxReach))
		}
	}
	for i, p := range points {
		next := (i + 1) % n
		if gap := points[next].Sub(p).Norm(); gap < closestTraced {
			return atPoint(i, "point %d lies only %.3g mm away; remove one of the two (the outline closes by itself)", next+1, 1000*gap)
		}
	}
	return checkShape(points)
}

// checkShape returns an error if points lie on one line or if the outline
// crosses or touches itself.
func checkShape(points []Vec) error {
	extent := 0.0
	for _, p := range points {
		extent = max(extent, p.Sub(points[0]).Norm())
	}
	var rim []Vec
	for _, i := range hull(points) {
		rim = append(rim, points[i])
	}
	if polygonArea(rim) < thinnest*extent*extent {
		return &TraceError{Reason: fmt.Sprintf("encloses nothing: its points lie on one line %.4g mm long; trace round the outline", 1000*extent)}
	}
	return checkCrossings(points)
}

// checkCrossings returns an error if two sides of the polygon meet other than
// at a point they share.
func checkCrossings(points []Vec) error {
	n := len(points)
	for i := range n {
		if doublesBack(points[i], points[(i+1)%n], points[(i+2)%n]) {
			return atPoint((i+1)%n, "the outline turns straight back on itself here; remove the point or trace round the end")
		}
	}
	if i, j, found := crossing(points); found {
		return atPoint(i, "the side from here to point %d meets the side from point %d to point %d; put the points in the order in which they lie round the outline",
			(i+1)%n+1, j+1, (j+1)%n+1)
	}
	return nil
}

// doublesBack reports whether the way from a to b to c turns by half a turn.
func doublesBack(a, b, c Vec) bool {
	in, out := b.Sub(a), c.Sub(b)
	return in.Cross(out) == 0 && in.Dot(out) < 0
}

// polygonArea returns the area inside points, negative if they go clockwise.
func polygonArea(points []Vec) float64 {
	sum := 0.0
	for i := 1; i+1 < len(points); i++ {
		sum += points[i].Sub(points[0]).Cross(points[i+1].Sub(points[0]))
	}
	return sum / 2
}
