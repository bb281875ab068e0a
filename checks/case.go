package checks

// Case is a machine in plain numbers, with the positions asked for. Link 0 is
// ground. It is the JSON document every engine reads on standard input.
type Case struct {
	Name    string   `json:"name"`
	Gravity float64  `json:"gravity"` // m/s², downward
	Links   []Link   `json:"links"`
	Joints  []Joint  `json:"joints"`
	Weights []Weight `json:"weights,omitempty"`
	Springs []Spring `json:"springs,omitempty"`
	Ropes   []Rope   `json:"ropes,omitempty"`

	Elements []Element `json:"elements,omitempty"`
	Chains   []Chain   `json:"chains,omitempty"`

	// Driver is the joint whose coordinate At lists: the turn (rad) or shift
	// (m) of link B relative to link A since the measured pose.
	Driver int       `json:"driver"`
	At     []float64 `json:"at"`

	// Contact, where there is one, holds the machine still; reactions then
	// contain its force. Without it the driver joint itself holds.
	Contact *Contact `json:"contact,omitempty"`

	// Slope asks for MassSlope and Acceleration as well.
	Slope bool `json:"slope,omitempty"`

	// Repeat is how often to sweep for the timing; 0 means once.
	Repeat int `json:"repeat,omitempty"`
}

// Point is x, y in metres, or a vector in the unit its field names.
type Point [2]float64

// Link is a rigid link. Every link but ground needs a mass.
type Link struct {
	Mass    float64 `json:"mass"`    // kg
	Inertia float64 `json:"inertia"` // kg m², about its own centre of mass
	COM     Point   `json:"com"`
}

// Kind is what a joint allows.
type Kind string

// The two joints of a planar machine.
const (
	Pin   Kind = "pin"   // B turns about At
	Slide Kind = "slide" // B shifts along Axis, which is fixed in A
)

// Joint is where links A and B meet.
type Joint struct {
	Kind Kind  `json:"kind"`
	A    int   `json:"a"`
	B    int   `json:"b"`
	At   Point `json:"at"`
	Axis Point `json:"axis"` // slides only
}

// Weight is a mass fixed to a link at a point.
type Weight struct {
	Link int     `json:"link"`
	At   Point   `json:"at"`
	Mass float64 `json:"mass"` // kg

	Inertia float64 `json:"inertia,omitempty"` // kg m², about its own centre
}

// Spring joins a point of A to a point of B; it pulls and pushes.
type Spring struct {
	A    int     `json:"a"`
	B    int     `json:"b"`
	AtA  Point   `json:"atA"`
	AtB  Point   `json:"atB"`
	Rate float64 `json:"rate"` // N/m
	Free float64 `json:"free"` // m, length without force
}

// Element resists by a law of its own: the growth of a route's length, or
// without a route the turn of a joint's B against its A since the measured
// pose, counter-clockwise positive.
type Element struct {
	Route *Rope `json:"route,omitempty"`
	Joint int   `json:"joint"`
	Law   Law   `json:"law"`
}

// Law is a force law of some kind with its numbers in SI units by name:
// "spring" with rate, free and preload; "gas" with force, extended and column;
// "band" with free, area and shear.
type Law struct {
	Kind    string             `json:"kind"`
	Numbers map[string]float64 `json:"numbers"`
}

// Chain hangs from a point of a link to the floor.
type Chain struct {
	Link    int     `json:"link"`
	At      Point   `json:"at"`
	Floor   float64 `json:"floor"`   // m, its height
	Length  float64 `json:"length"`  // m, off the floor at the most
	Density float64 `json:"density"` // kg/m
}

// Rope runs from one end over its outlines in order to the other end. A kept
// rope stays as long as it was in the measured pose and so ties its ends
// together; any other is only measured.
type Rope struct {
	Ends [2]End    `json:"ends"`
	Over []Outline `json:"over"`
	Keep bool      `json:"keep"`
}

// End is a point of a link.
type End struct {
	Link int   `json:"link"`
	At   Point `json:"at"`

	// Wound says that the rope is fixed here to the edge of the outline next to
	// this end and winds up on it.
	Wound bool `json:"wound,omitempty"`
}

// Turn is the way a rope goes round an outline, travelling from its first end
// to its last.
type Turn string

// Going round counter-clockwise the rope has the outline on its left.
const (
	CCW Turn = "ccw"
	CW  Turn = "cw"
)

// Outline is a sheave or cam fixed to a link: round with a Radius about At, or
// else an ellipse or a traced polygon.
type Outline struct {
	Link    int      `json:"link"`
	At      Point    `json:"at"`
	Radius  float64  `json:"radius,omitempty"`
	Ellipse *Ellipse `json:"ellipse,omitempty"`
	Trace   []Point  `json:"trace,omitempty"` // from At; a hollow is bridged
	Turn    Turn     `json:"turn"`
}

// Ellipse is an oval outline.
type Ellipse struct {
	Center Point   `json:"center"` // m, from the outline's At
	Along  float64 `json:"along"`  // m, half axis in direction Turned
	Across float64 `json:"across"` // m, the other half axis
	Turned float64 `json:"turned"` // rad
}

// Contact is where the body meets the machine. Its force acts along the
// contact's path.
type Contact struct {
	Link int   `json:"link"`
	At   Point `json:"at"`
}

// Result is what an engine writes on standard output.
type Result struct {
	Micros    float64    `json:"micros"` // µs per position without building the model; the fastest of Repeat sweeps
	Positions []Position `json:"positions"`
}

// Position is the answer at one driver coordinate. Fields an engine does not
// answer are nil or empty.
type Position struct {
	At    float64   `json:"at"`
	Poses []Pose    `json:"poses"` // by link
	Rates []float64 `json:"rates"` // by link, turning per unit driver rate, rad per rad or m

	Loads []Point `json:"loads"` // by weight, velocity per unit driver rate

	Velocity     Point   `json:"velocity"`     // of the contact per unit driver rate
	Acceleration Point   `json:"acceleration"` // of the contact at a steady driver rate of one
	Mass         float64 `json:"mass"`         // effective, at the driver coordinate: kg m² or kg
	MassSlope    float64 `json:"massSlope"`    // its growth with the driver coordinate
	Drive        float64 `json:"drive"`        // what holds in the driver joint, on B: N m or N
	Hold         Point   `json:"hold"`         // what holds at the contact instead, N
	Left         float64 `json:"left"`         // still in the driver joint then, N m or N

	Reactions []*Reaction   `json:"reactions"` // by joint
	Ropes     []RopeReading `json:"ropes"`
}

// Pose is a link's motion since the measured pose: a turn about the ground
// origin, then a shift.
type Pose struct {
	Turn  float64 `json:"turn"` // rad
	Shift Point   `json:"shift"`
}

// Reaction is what link A does to link B at the joint's point on B.
type Reaction struct {
	Force  Point   `json:"force"`  // N, ground frame
	Moment float64 `json:"moment"` // N m
}

// RopeReading is a rope's length, its change per unit driver rate, and for a
// kept rope its tension.
type RopeReading struct {
	Length  float64 `json:"length"`  // m
	Rate    float64 `json:"rate"`    // m per rad or m
	Tension float64 `json:"tension"` // N
}
