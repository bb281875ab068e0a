package api

// Frames says which poses to draw.
type Frames string

const (
	NoFrames  Frames = "none"
	OneFrame  Frames = "one" // that at Look.Share
	AllFrames Frames = "all" // one for each position of the curve
)

// Look is how a machine is set and what is wanted of it. Left out, a field has
// its zero value.
type Look struct {
	Settings  []Choice `json:"settings,omitempty"`  // those that differ from the default
	Positions int      `json:"positions,omitempty"` // along the travel, 11 to 401; 0 means 101
	Frames    Frames   `json:"frames,omitempty"`    // "" means none
	Share     float64  `json:"share,omitempty"`     // of the travel, 0 to 1: the pose of the one frame
	Tempo     *Tempo   `json:"tempo,omitempty"`
	Structure bool     `json:"structure,omitempty"` // also take the sheet apart
	Imperial  bool     `json:"imperial,omitempty"`  // of words
	NoBand    bool     `json:"noBand,omitempty"`    // leave the error band out
	Person    string   `json:"person,omitempty"`    // id of a person's sheet
}

// Phase is what the person does with the load; friction makes them differ.
type Phase string

const (
	Holding  Phase = "holding"
	Lifting  Phase = "lifting"
	Lowering Phase = "lowering"
)

// Tempo is how long each part of a repetition takes, s.
type Tempo struct {
	Up     float64 `json:"up"`
	Top    float64 `json:"top"`
	Down   float64 `json:"down"`
	Bottom float64 `json:"bottom"`
}

// Ask evaluates a machine without storing anything: the text given, or a stored
// sheet as it stands; with edits made to it first.
type Ask struct {
	Text  string `json:"text,omitempty"`
	Sheet string `json:"sheet,omitempty"` // id, if text is left out
	Edits []Edit `json:"edits,omitempty"`
	Look  Look   `json:"look"`
}

// Preview is what a machine does. If the sheet cannot be used, Problems says
// why and the rest is empty.
type Preview struct {
	Text      string           `json:"text"` // of the sheet, after the edits
	Problems  []SheetProblem   `json:"problems"`
	Structure *Structure       `json:"structure"`
	Name      string           `json:"name"`
	Settings  []Choice         `json:"settings"` // every one
	Sides     int              `json:"sides"`    // 2 if mirrored; forces are of one
	Side      string           `json:"side"`     // whose each force then is: "one arm", "one leg" or "one side"; else empty
	Curve     *Curve           `json:"curve"`
	Band      *Band            `json:"band"`     // null without any ±
	Readings  []Readings       `json:"readings"` // holding, lifting, lowering
	Words     []string         `json:"words"`
	Drawing   *Drawing         `json:"drawing"` // null if no frames were asked for
	Frames    []Frame          `json:"frames"`
	Stroke    *Stroke          `json:"stroke"`
	StrokeGap string           `json:"strokeGap"` // why there is no stroke though a tempo was given
	Person    *PersonOnMachine `json:"person"`    // null without one
	PersonGap string           `json:"personGap"` // why the person of the look is not on it
	// PersonHelps are settings that would let the person on it.
	PersonHelps []SettingHelp `json:"personHelps"`
	Cautions    []string      `json:"cautions"`
}

// Reply answers a question asked over a line: with one of both.
type Reply struct {
	Preview *Preview `json:"preview"`
	Problem *Problem `json:"problem"`
}

// Curve is the force along the travel and what goes with it, in columns.
type Curve struct {
	Travel     []float64  `json:"travel"` // m along the contact's path, from 0, ascending
	Driver     []float64  `json:"driver"` // rad or m from the measured pose
	DriverUnit string     `json:"driverUnit"`
	Contact    []Place    `json:"contact"`
	Normal     []Place    `json:"normal"` // unit; the ribbon's edge is Contact + Normal·force·scale
	Hold       []*float64 `json:"hold"`
	Lift       []*float64 `json:"lift"`
	Lower      []*float64 `json:"lower"`
	LoadTravel []float64  `json:"loadTravel"`
	LiftRatio  []*float64 `json:"liftRatio"`
	Mass       []*float64 `json:"mass"` // kg, effective at the contact
	Gap        []*string  `json:"gap"`  // why there is no force
	Rubs       bool       `json:"rubs"` // lifting and lowering differ
}

// Band is how unsure the curve is.
type Band struct {
	Phase   Phase            `json:"phase"`
	Sampled bool             `json:"sampled"` // else first order, which is quick and wrong near a dead point
	Low     []*float64       `json:"low"`
	High    []*float64       `json:"high"`
	Ranges  map[string]Range `json:"ranges"` // by name of a reading
	Draws   int              `json:"draws"`
	Failed  int              `json:"failed"`
	Narrow  *Narrowing       `json:"narrow"` // the measurement to take again first
}

// Range is an interval.
type Range struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

// Narrowing names the measurement that would narrow the band most.
type Narrowing struct {
	Name    string  `json:"name"`
	Path    string  `json:"path"`
	Share   float64 `json:"share"`   // of the variance
	Half    float64 `json:"half"`    // N, half width of the band now
	Without float64 `json:"without"` // N, if it were exact
}

// Readings is what is read from the curve in one phase.
type Readings struct {
	Phase       Phase    `json:"phase"`
	Loads       string   `json:"loads"` // where, in words
	Length      float64  `json:"length"`
	Covered     float64  `json:"covered"` // share of the travel that has a force
	Start       Mark     `json:"start"`
	End         Mark     `json:"end"`
	Peak        Mark     `json:"peak"`
	Least       Mark     `json:"least"`
	Mean        float64  `json:"mean"`
	Flatness    float64  `json:"flatness"` // 1 is even
	PeakToStart float64  `json:"peakToStart"`
	LiftRatio   float64  `json:"liftRatio"`
	WorkUp      float64  `json:"workUp"`
	WorkDown    float64  `json:"workDown"`
	Lost        float64  `json:"lost"`
	Thirds      [3]Third `json:"thirds"`
}

// Mark is a place on a curve.
type Mark struct {
	Share  float64 `json:"share"`
	Travel float64 `json:"travel"`
	Force  float64 `json:"force"`
}

// Third is one third of the travel.
type Third struct {
	Mean    float64 `json:"mean"`  // N
	Share   float64 `json:"share"` // of the work
	Covered float64 `json:"covered"`
}

// Stroke is one repetition at a tempo, in columns.
type Stroke struct {
	Time   []float64 `json:"time"`
	Travel []float64 `json:"travel"`
	Force  []float64 `json:"force"`
	Still  []float64 `json:"still"`  // N, at rest at the same place
	Leaves []bool    `json:"leaves"` // the load flies on by itself
	Slack  []string  `json:"slack"`  // the rope that goes slack, or ""
	Peak   int       `json:"peak"`   // row of the greatest force
	Dip    int       `json:"dip"`    // row of the least
}

// Progress is told while long work goes on.
type Progress struct {
	Done  int `json:"done"`
	Total int `json:"total"`
}
