package api

// Drawing is what of a machine's picture keeps its shape. Everything is given
// at the measured pose, and moves with its link by that link's entry in
// [Frame].Poses.
type Drawing struct {
	Links   []LinkShape `json:"links"` // the first is the ground
	Pins    []Pin       `json:"pins"`
	Guides  []Guide     `json:"guides"`
	Wheels  []Wheel     `json:"wheels"`
	Weights []Weight    `json:"weights"`
	Lines   []Line      `json:"lines"` // ropes first, as in Frame.Lines
	Contact Place       `json:"contact"`
	On      int         `json:"on"`   // the contact's link
	Lean    float64     `json:"lean"` // rad, of the plane of the picture from upright; π/2 is level, seen from above
	Low     Place       `json:"low"`  // corners of all that is drawn in any frame
	High    Place       `json:"high"`
}

// LinkShape is a link's simplest body: straight pieces between its joints, and
// from there out to whatever else acts on it.
type LinkShape struct {
	Name   string     `json:"name"`
	Places []Place    `json:"places"`
	Pieces [][2]Place `json:"pieces"`
	Stack  bool       `json:"stack"` // a weight stack, drawn as a load
}

// Pin is a revolute joint.
type Pin struct {
	Name   string `json:"name"`
	At     Place  `json:"at"`
	On     int    `json:"on"` // link it moves with
	Ground bool   `json:"ground"`
}

// Guide is the straight guide of a slider, on the link that carries it.
type Guide struct {
	Name string `json:"name"`
	From Place  `json:"from"`
	To   Place  `json:"to"`
	On   int    `json:"on"`
}

// Wheel is a sheave or cam.
type Wheel struct {
	Name    string  `json:"name"`
	On      int     `json:"on"`
	Axis    Place   `json:"axis"`
	Radius  float64 `json:"radius"`  // m; 0 if it is no circle about its axis
	Outline []Place `json:"outline"` // closed, not repeating the first
	Cam     bool    `json:"cam"`
}

// Weight is plates, a weight stack or another mass fixed to a link.
type Weight struct {
	Name   string  `json:"name"`
	On     int     `json:"on"`
	At     Place   `json:"at"`
	Mass   float64 `json:"mass"`
	Radius float64 `json:"radius"` // m, of its picture as a disc; as stated, or for the eye only
	Stated bool    `json:"stated"` // the sheet gives the diameter
	Load   bool    `json:"load"`   // counts as the load
	Stack  bool    `json:"stack"`
}

// LineKind tells what acts along a line.
type LineKind string

const (
	RopeLine   LineKind = "rope"
	SpringLine LineKind = "spring"
	GasLine    LineKind = "gas spring"
	BandLine   LineKind = "band"
	SteadyLine LineKind = "steady force"
	DamperLine LineKind = "damper"
)

// Line is a rope, or an element that acts along one.
type Line struct {
	Name string   `json:"name"`
	Kind LineKind `json:"kind"`
}

// Frame is the machine at one place of its travel.
type Frame struct {
	Position int          `json:"position"` // of the curve
	Travel   float64      `json:"travel"`
	Poses    []Pose       `json:"poses"` // by link
	Lines    []LineCourse `json:"lines"` // by line
	Chains   []Hanging    `json:"chains"`
	Contact  Place        `json:"contact"`
	Tangent  Place        `json:"tangent"` // unit, towards the end of the travel
	Arms     []Arm        `json:"arms"`
	Forces   []Force      `json:"forces"`
	Body     *Body        `json:"body"`    // null without a person, or where the body is not there
	Shares   []Share      `json:"shares"`  // what each source asks of the contact
	Because  string       `json:"because"` // why the force is what it is here
	Gap      string       `json:"gap"`     // why there is no force here; empty if there is one
}

// Pose takes places of the measured pose to where they are now: turn by Turn
// about the origin, then shift by (X, Y).
type Pose struct {
	X    float64 `json:"x"`
	Y    float64 `json:"y"`
	Turn float64 `json:"turn"` // rad
}

// LineCourse is a line where it now runs: the whole way in points, and in it
// the straight pieces.
type LineCourse struct {
	Course   []Place    `json:"course"`
	Straight [][2]Place `json:"straight"`
	Tension  float64    `json:"tension"` // N, while lifting; of an element its pull
	Slack    bool       `json:"slack"`
}

// Hanging is a chain: from its point to its foot, and whether part of it lies
// on the floor.
type Hanging struct {
	Name string `json:"name"`
	Top  Place  `json:"top"`
	Foot Place  `json:"foot"`
	Heap bool   `json:"heap"`
}

// ArmKind tells what a moment arm belongs to.
type ArmKind string

const (
	LoadArm    ArmKind = "load"
	ContactArm ArmKind = "contact"
	RopeArm    ArmKind = "rope"
)

// Arm is a moment arm: from an axis square to the line a force acts along.
type Arm struct {
	Kind   ArmKind `json:"kind"`
	Name   string  `json:"name"` // of the load, the contact or the cam
	Axis   Place   `json:"axis"`
	Foot   Place   `json:"foot"` // of the perpendicular
	Acts   Place   `json:"acts"` // where the force acts, on the same line as the foot
	Length float64 `json:"length"`
}

// ForceKind tells where a force comes from.
type ForceKind string

const (
	ContactForce  ForceKind = "contact"  // of the body on the machine, lifting
	WeightForce   ForceKind = "weight"   // of a load or a link, by gravity in the plane
	RopeForce     ForceKind = "rope"     // of a rope on the link it ends at
	ReactionForce ForceKind = "reaction" // at a joint, on its second link by its first, holding
)

// Force is a force to be drawn as an arrow, N.
type Force struct {
	Kind   ForceKind `json:"kind"`
	Name   string    `json:"name"`
	At     Place     `json:"at"`
	Vector Place     `json:"vector"`
}

// Share is what one source asks of the contact by itself, frictionless.
type Share struct {
	Name  string  `json:"name"`
	Force float64 `json:"force"`
	Rise  float64 `json:"rise"` // m risen or lengthened for each m of travel
}
