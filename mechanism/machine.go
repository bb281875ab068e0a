package mechanism

import "steelyard/planar"

// Machine is what was measured: every point in the ground frame at one
// assembled pose. It is read, never changed.
type Machine struct {
	Name     string
	Links    []Link
	Joints   []Joint
	Ropes    []Rope
	Elements []Element
	Weights  []Weight
	Chains   []Chain
	Wheels   []Flywheel
	Drive    Drive
	Contact  Contact
	Plane    Plane
}

// LinkID names a link: [Ground], or 1 + its place in Machine.Links.
type LinkID int

// Ground is the link that does not move.
const Ground LinkID = 0

// Link is one rigid moving member with its own weight.
type Link struct {
	Name    string
	Mass    float64    // kg, ≥ 0
	Center  planar.Vec // m, centre of mass at the measured pose
	Inertia float64    // kg·m² about the centre of mass, ≥ 0

	// Upright marks a weight stack or sled whose weight always acts fully
	// along -y, even when the plane of the rest is tilted: a stack on vertical
	// guides, reached over a sheave that turns the rope out of the plane.
	Upright bool

	// Path marks a link that is no part of the machine: it stands for the way
	// that a hand goes with a rope handle or a free weight. It is computed like
	// any other and drawn as a way.
	Path bool
}

// JointKind tells what a joint lets its links do.
type JointKind uint8

const (
	Revolute  JointKind = iota // turn about a pin
	Prismatic                  // slide along a straight guide
)

// Joint connects two links at one place.
type Joint struct {
	Name string
	Kind JointKind
	A, B LinkID // of a prismatic joint A carries the guide and B slides

	At    planar.Vec   // m, the pin's centre, or the point of B on the guide line
	Along planar.Angle // direction of the guide line at the measured pose; prismatic only

	Friction JointFriction
}

// JointFriction resists the joint's motion. The zero value is frictionless.
type JointFriction struct {
	Coefficient float64 // Coulomb, ≥ 0, between pin and bush or slider and guide
	Radius      float64 // m, of the pin; revolute only
	Bearing     float64 // m, between the two ends of a slider's bearing; 0 leaves its tipping moment out; prismatic only
	Drag        float64 // N·m or N, constant whatever the load (seals, wipers, a stack's guides)
}

// Route is the way of a rope, or of anything that acts along a line, from its
// first station to its last.
type Route []Station

// Station is a place on a route. The first and the last are its ends: a point
// where it is tied, or an outline it is fixed to and winds on. Those between
// are points it is bent over or outlines it runs round.
type Station struct {
	Name    string
	Link    LinkID
	At      planar.Vec     // m, the point, or the outline's own origin (a sheave's or cam's axis)
	Outline planar.Outline // about At, axes parallel to the ground frame at the measured pose; nil for a point
	Side    planar.Side    // on which the outline lies of a rope travelling from first to last station

	// Anchor is, for an outline that ends a route, the direction of the outward
	// normal where the rope is fixed to it at the measured pose. Turns adds
	// whole turns wound on beyond the part turn the geometry shows.
	Anchor planar.Angle
	Turns  int

	Loss RopeLoss
}

// RopeLoss is what a rope loses in passing a station. At most one of the three
// is given; the zero value loses nothing.
type RopeLoss struct {
	Efficiency  float64 // tension behind over tension ahead, 0 < E ≤ 1, whatever the wrap; 0 means not given
	Slip        float64 // Coulomb coefficient of a rope dragged over a fixed post: exp(Slip·wrap)
	Bearing     float64 // Coulomb coefficient of the sheave's bearing
	AxleOverRim float64 // bearing radius over sheave radius, with Bearing
}

// Rope does not stretch and only pulls. It takes away one freedom.
type Rope struct {
	Name  string
	Route Route
}

// Element is a spring, band or damper: it acts along a route by its length, or
// about a revolute joint by the angle between its links.
type Element struct {
	Name  string
	Route Route // for an element along a line; empty for one about a joint; its stations' losses are not counted
	Joint int   // index into Machine.Joints, when Route is empty

	// Law gives the pull along the route in N against its length in m, or the
	// moment about the joint in N·m against the turn of B relative to A in rad
	// from the measured pose; positive resists lengthening or counter-clockwise
	// turning.
	Law Law
}

// Line is what acts along a route: a rope, or an element that has one.
type Line struct {
	Name    string
	Route   Route
	Element *Element // nil for a rope
}

// Lines lists the ropes, then the elements that run along a route, each in the
// machine's order. Whatever takes the number of a line counts so.
func (m *Machine) Lines() []Line {
	lines := make([]Line, 0, len(m.Ropes)+len(m.Elements))
	for i := range m.Ropes {
		lines = append(lines, Line{Name: m.Ropes[i].Name, Route: m.Ropes[i].Route})
	}
	for i := range m.Elements {
		if e := &m.Elements[i]; len(e.Route) > 0 {
			lines = append(lines, Line{e.Name, e.Route, e})
		}
	}
	return lines
}

// Weight is a mass fixed to a link at a point: a plate on a horn, a
// counterweight, a dumb-bell in the hand.
type Weight struct {
	Name    string
	Link    LinkID
	At      planar.Vec // m
	Mass    float64    // kg, ≥ 0
	Inertia float64    // kg·m² about its own centre, if it turns with the link
	Load    bool       // counts as the load whose travel the lift ratio tells
}

// Chain hangs from a point to the floor: the higher the point, the more of it
// is off the floor.
type Chain struct {
	Name    string
	Link    LinkID
	At      planar.Vec // m
	Floor   float64    // m, along the plane's y, where the point is level with what the chain lies on
	Length  float64    // m, hanging from the point at the most
	Density float64    // kg/m
}

// Flywheel turns with a revolute joint, geared up by Ratio.
type Flywheel struct {
	Name    string
	Joint   int     // index into Machine.Joints
	Inertia float64 // kg·m²
	Ratio   float64 // turns of the wheel per turn of the joint
}

// Drive says which joint is followed, and from where to where. Both ends are
// counted from the measured pose: turn of B relative to A in rad, or slide of B
// along the guide in m. Lifting runs from From to To.
type Drive struct {
	Joint    int
	From, To float64
}

// Contact is where the body meets the machine.
type Contact struct {
	Name string
	Link LinkID
	At   planar.Vec // m
}

// Plane places the plane of motion in the room. Its x axis is level.
type Plane struct {
	Tilt     planar.Angle // lean of the plane's y axis from upright, about x; 90° is a level plane
	Offset   float64      // m, of the plane from the person's mid-plane
	Mirrored bool         // two such arms, one for each side; forces are stated for one
}

// Slope returns the share of gravity that acts in the plane.
func (p Plane) Slope() float64 { return cosExact(p.Tilt) }
