package api

// Compare sets up to six machines or settings beside each other; the first is
// what the others are compared with.
type Compare struct {
	Items    []Compared `json:"items"`
	Phase    Phase      `json:"phase,omitempty"` // left out, lifting
	Imperial bool       `json:"imperial,omitempty"`
	Person   string     `json:"person,omitempty"` // id of a person's sheet, to be put on each
}

// Compared is one machine as set.
type Compared struct {
	Sheet    string   `json:"sheet,omitempty"` // id
	Text     string   `json:"text,omitempty"`  // if no id is given
	Settings []Choice `json:"settings,omitempty"`
	Label    string   `json:"label,omitempty"` // left out, the machine's name and what differs from its defaults
}

// Comparison is the curves on one axis.
type Comparison struct {
	Share  []float64         `json:"share"`  // of each one's own travel, the axis of Item.ByShare
	Travel []float64         `json:"travel"` // m, the axis of Item.ByTravel
	Items  []ComparedCurve   `json:"items"`
	Words  []ComparisonWords `json:"words"` // of each after the first against the first
}

// ComparedCurve is one of them.
type ComparedCurve struct {
	Label     string          `json:"label"`
	Sheet     string          `json:"sheet"`
	Settings  []Choice        `json:"settings"`
	ByShare   []*float64      `json:"byShare"`  // N
	ByTravel  []*float64      `json:"byTravel"` // N; null beyond its travel
	Side      string          `json:"side"`     // whose its force is, as in Preview
	Readings  *Readings       `json:"readings"`
	Trouble   string          `json:"trouble"`   // why there is no curve
	Gone      bool            `json:"gone"`      // there is none because the sheet is not stored any more
	Effort    []*float64      `json:"effort"`    // of the person, lifting, by share; empty without one
	Joints    []ComparedJoint `json:"joints"`    // of the person, by share
	PersonGap string          `json:"personGap"` // why the person is not on it
}

// ComparedJoint is the moment asked of one joint axis along the travel.
type ComparedJoint struct {
	Joint  string     `json:"joint"`
	Moment []*float64 `json:"moment"` // N·m, by share
	Effort []*float64 `json:"effort"`
}

// ComparisonWords says how one differs from the first.
type ComparisonWords struct {
	Label string     `json:"label"`
	Words []string   `json:"words"`
	More  [3]float64 `json:"more"` // N, mean force in each third beyond the first one's
}
