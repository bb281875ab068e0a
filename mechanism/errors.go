package mechanism

import (
	"fmt"
	"strings"

	"steelyard/planar"
)

// PartError says what is wrong with one part of the description, whatever the
// pose. Part reads like `link "arm"`.
type PartError struct {
	Part    string
	Problem string // with value, unit and limit
	Cure    string
}

func (e *PartError) Error() string {
	return fmt.Sprintf("%s: %s; %s", e.Part, e.Problem, e.Cure)
}

// FreedomError says that the machine does not move in exactly one way.
type FreedomError struct {
	Freedoms int      // 3 a link, less 2 a joint, less 1 a rope
	Loose    []string // links that nothing places
	Tight    []string // links held more than once over
}

func (e *FreedomError) Error() string {
	switch {
	case len(e.Tight) > 0:
		return fmt.Sprintf("%s held by more joints and ropes than can move together; take out a joint or rope that only repeats what another does",
			areJoined(e.Tight))
	case len(e.Loose) > 0:
		return fmt.Sprintf("the machine has %d freedoms instead of one: nothing says where %s while the driven joint moves; add the missing joint, rope or shared point",
			e.Freedoms, areJoined(e.Loose))
	default:
		return fmt.Sprintf("the machine has %d freedoms instead of one; check that each link is pinned, guided or roped to the rest", e.Freedoms)
	}
}

func areJoined(names []string) string {
	if len(names) == 1 {
		return names[0] + " is"
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1] + " are"
}

// StopKind tells why a pose, or the force in it, cannot be had.
type StopKind uint8

const (
	OutOfReach  StopKind = iota + 1 // the links cannot meet
	DeadPoint                       // links in line: motion or force is lost
	RopeSlack                       // the rope would have to push
	RopeOff                         // the rope has run off its cam, or lifts off a sheave
	RopeThrough                     // two outlines on the rope overlap
	Binds                           // friction holds it whatever the force
	SpringSpent                     // a gas spring is compressed beyond its gas
)

// Stop says where on the travel the machine, or what is known of its force,
// ends and why. The rest of the travel is a gap.
type Stop struct {
	Kind   StopKind
	Part   string
	Driver float64    // rad or m from the measured pose
	Slides bool       // the driver is a slide: Driver is in m
	Place  planar.Vec // m, where it happens
	Detail string     // numbers with units
	Cure   string
}

func (e *Stop) Error() string {
	at := fmt.Sprintf("%.2f° from the measured pose", planar.Angle(e.Driver).Degrees())
	if e.Slides {
		at = fmt.Sprintf("%.1f mm from the measured pose", e.Driver*1000)
	}
	return fmt.Sprintf("%s %s, at %s, near x %.0f mm, y %.0f mm (%s); %s",
		e.Part, e.Kind, at, e.Place.X*1000, e.Place.Y*1000, e.Detail, e.Cure)
}

// String says what the part does, as a verb: "goes slack".
func (k StopKind) String() string {
	switch k {
	case OutOfReach:
		return "cannot meet"
	case DeadPoint:
		return "is at a dead point"
	case RopeSlack:
		return "goes slack"
	case RopeOff:
		return "comes off what it runs round"
	case RopeThrough:
		return "passes through what it should run round"
	case Binds:
		return "binds"
	case SpringSpent:
		return "is compressed beyond its gas"
	}
	return "stops"
}
