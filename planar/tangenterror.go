package planar

import (
	"errors"
	"fmt"
)

// ErrCoincide says that the two points a straight rope piece should join are
// one and the same, so that it has no direction.
var ErrCoincide = errors.New("planar: both ends of the straight rope piece lie on the same point; move one of them")

// OverlapError says that two outlines overlap, so that no rope can cross over
// from one side of the first to the other side of the second.
type OverlapError struct {
	Gap float64 // m, < 0: minus the shift that would part them
}

func (e *OverlapError) Error() string {
	return fmt.Sprintf("planar: the two outlines overlap by %.4g mm, so the rope cannot pass between them; "+
		"move them apart or change the side the rope runs on", -1000*e.Gap)
}

// InsideError says that a rope's end or a whole outline lies inside the
// outline that the rope should run to or from.
type InsideError struct {
	Depth float64 // m, > 0: the shortest way out
	Point bool    // a single point lies inside, not an outline
}

func (e *InsideError) Error() string {
	what := "one outline"
	if e.Point {
		what = "the rope's end"
	}
	return fmt.Sprintf("planar: %s lies inside the other outline, %.4g mm from its edge, so no straight rope joins them; "+
		"move it outside", what, 1000*e.Depth)
}
