package api

// PersonOnMachine is a person put through the machine's travel. Columns have
// one entry for each position of the curve; null where the body is not there or
// the strength has no figure.
type PersonOnMachine struct {
	Name     string        `json:"name"`
	Exercise string        `json:"exercise"`
	Posture  string        `json:"posture"`
	Words    []string      `json:"words"`
	Warnings []string      `json:"warnings"` // on the person's own figures
	Helps    []SettingHelp `json:"helps"`    // settings that would mend what is out of reach or range
	Can      []*float64    `json:"can"`      // N at the contact that this person can produce in a slow lift; null where nothing limits it and where nobody was tested
	CanMost  []*float64    `json:"canMost"`  // N, where a joint nobody was tested at may be the limit: the most it can be; null elsewhere
	Effort   []*float64    `json:"effort"`   // lifting: moment asked over moment available, of the hardest joint; null where a guess is the greatest
	Lowering []*float64    `json:"lowering"` // the same, lowering
	Limiter  []*string     `json:"limiter"`  // the hardest joint, lifting
	Gap      []*string     `json:"gap"`      // why there is nobody, or nothing known
	Sticking *int          `json:"sticking"` // position of the greatest effort
	Limiting string        `json:"limiting"` // the joint there
	Joints   []JointColumn `json:"joints"`
	Muscles  []MuscleRange `json:"muscles"`
	Maximum  *Maximum      `json:"maximum"`
	Cautions []string      `json:"cautions"`
}

// SettingHelp is a setting that would mend what is out of reach or range.
type SettingHelp struct {
	Setting string `json:"setting"`
	Value   string `json:"value"`
	Words   string `json:"words"`
}

// JointColumn is one joint axis along the travel, lifting.
type JointColumn struct {
	Joint     string     `json:"joint"`     // the axis
	Body      string     `json:"body"`      // the joint a coach would name
	Angle     []*float64 `json:"angle"`     // rad
	Moment    []*float64 `json:"moment"`    // N·m, internal
	Available []*float64 `json:"available"` // N·m; null where nobody published any
	Effort    []*float64 `json:"effort"`
	Guess     []bool     `json:"guess"` // the strength is taken where nobody was tested: it counts nowhere
	Low       []*float64 `json:"low"`   // effort of somebody stronger within the band of the strength
	High      []*float64 `json:"high"`  // of somebody weaker
	Source    string     `json:"source"`
	Mark      string     `json:"mark"`     // how far the source was followed back
	Weak      bool       `json:"weak"`     // not far enough to lean on
	Rescaled  bool       `json:"rescaled"` // a measurement of this person sets the level
}

// MuscleRange is how long a muscle group is along the travel, and how hard it
// works in its own lengthened, middle and shortened third.
type MuscleRange struct {
	Name   string      `json:"name"`
	Length []*float64  `json:"length"` // 0 shortest, 1 longest within the person's ranges
	Effort []*float64  `json:"effort"`
	Share  [3]float64  `json:"share"` // of the travel spent in each third
	Mean   [3]*float64 `json:"mean"`  // effort there; null where the travel does not come
	Guess  [3]bool     `json:"guess"` // it rests in part on angles nobody was tested at
}

// Maximum is the load at which the greatest effort of the stroke becomes 1. A
// prediction is no target.
type Maximum struct {
	Load   float64 `json:"load"` // kg; 0 where the machine has no load
	Low    float64 `json:"low"`
	High   float64 `json:"high"`
	Factor float64 `json:"factor"` // the same as a multiple of the present force
	Capped bool    `json:"capped"` // the load is not what limits
	AtMost bool    `json:"atMost"` // a joint may give out sooner, at angles nobody was tested at
	Empty  bool    `json:"empty"`  // even the empty machine asks for more
}

// Body is the person at one position, seen square to the plane of motion.
type Body struct {
	Segments []Segment   `json:"segments"`
	Joints   []BodyJoint `json:"joints"`
}

// Segment is a body segment as a capsule.
type Segment struct {
	Name  string  `json:"name"`
	From  Place   `json:"from"`
	To    Place   `json:"to"`
	Near  float64 `json:"near"`  // m, half thickness at From, for the eye only
	Far   float64 `json:"far"`   // m, at To
	Works bool    `json:"works"` // belongs to the limb that works
}

// BodyJoint is a joint centre.
type BodyJoint struct {
	Name string `json:"name"`
	At   Place  `json:"at"`
}

// Fit is how a machine suits a person, for the board.
type Fit struct {
	Exercise string        `json:"exercise"`
	Reached  float64       `json:"reached"` // share of the travel that the body reaches
	InRange  float64       `json:"inRange"` // share of it within every joint's range
	Effort   *float64      `json:"effort"`  // the greatest, lifting
	Limiting string        `json:"limiting"`
	Muscles  []MuscleRange `json:"muscles"` // without their columns
	Trouble  string        `json:"trouble"` // why the person cannot be put on it
}

// AskPerson reads a person's sheet without storing anything: the text given, or
// a stored sheet as it stands; with the edits made to it first, and then with
// what is new put in.
type AskPerson struct {
	Text     string       `json:"text,omitempty"`
	Sheet    string       `json:"sheet,omitempty"` // id, if text is left out
	Edits    []Edit       `json:"edits,omitempty"`
	Strength *NewStrength `json:"strength,omitempty"`
	Limit    *NewLimit    `json:"limit,omitempty"`
}

// NewStrength is a strength that was measured, as a sheet's list has it: a
// moment, or a force at a distance from the joint. Numbers are texts with their
// unit and ±, as they are typed.
type NewStrength struct {
	Motion string `json:"motion"`
	Angle  string `json:"angle"`
	Moment string `json:"moment,omitempty"`
	Force  string `json:"force,omitempty"`
	At     string `json:"at,omitempty"`
	How    string `json:"how,omitempty"`
}

// NewLimit is how far a joint goes in a motion.
type NewLimit struct {
	Motion string `json:"motion"`
	Angle  string `json:"angle"`
}

// PersonSheet is what a person's sheet says. If it cannot be used, Problems
// says why and the rest is empty.
type PersonSheet struct {
	Text       string         `json:"text"` // after the edits
	Problems   []SheetProblem `json:"problems"`
	Name       string         `json:"name"`
	Height     float64        `json:"height"` // m
	Mass       float64        `json:"mass"`   // kg
	Sex        string         `json:"sex"`
	Age        *float64       `json:"age"` // years
	Entries    []SheetEntry   `json:"entries"`
	Avoid      []string       `json:"avoid"`
	Motions    []string       `json:"motions"`    // that a strength or a limit can be of; also if there are problems
	Warnings   []string       `json:"warnings"`   // what is unusual
	Understood []string       `json:"understood"` // in plain words
	Assumed    []string       `json:"assumed"`    // filled in from a survey
	Missing    []string       `json:"missing"`    // what would make results closer
}

// SheetEntry is one value of a sheet that a ValueEdit can change.
type SheetEntry struct {
	Path string `json:"path"`
	Text string `json:"text"`
	Line int    `json:"line"`
}
