package evaluation

// Format names the kind and version of a [Document].
const Format = "steelyard evaluation 1"

// Document is an evaluation as data: SI units, the unit in each key, columns of
// equal length, null for a gap. Its shape is described by [Schema] and kept
// stable: keys may be added within a version, none removed or changed.
type Document struct {
	Format       string                     `json:"format"`
	Name         string                     `json:"name"`
	Settings     []Chosen                   `json:"settings"`
	Sides        int                        `json:"sides"` // 2 if mirrored; forces are of one
	Words        []string                   `json:"words"`
	Columns      Columns                    `json:"columns"`
	Readings     map[string]ReadingDocument `json:"readings"` // by phase
	Joints       []JointDocument            `json:"joints"`
	Ropes        []RopeDocument             `json:"ropes"`
	Band         *BandDocument              `json:"band"`   // null without any ±
	Stroke       *StrokeDocument            `json:"stroke"` // null without a tempo
	Person       *PersonDocument            `json:"person"` // null for nobody
	Measurements []MeasurementDocument      `json:"measurements"`
	Cautions     []string                   `json:"cautions"`
}

// Chosen is the value a setting had.
type Chosen struct {
	Setting string `json:"setting"`
	Value   string `json:"value"`
}

// Columns is the curve and what goes with it, one entry for each position.
type Columns struct {
	Driver     []float64    `json:"driver"`      // rad or m from the measured pose
	DriverUnit string       `json:"driver_unit"` // rad or m
	Contact    [][2]float64 `json:"contact_m"`
	Travel     []float64    `json:"travel_m"`
	Hold       []*float64   `json:"hold_N"`
	Lift       []*float64   `json:"lift_N"`
	Lower      []*float64   `json:"lower_N"`
	LoadTravel []float64    `json:"load_travel_m"`
	LiftRatio  []*float64   `json:"lift_ratio"`
	Mass       []*float64   `json:"effective_mass_kg"`
	MassSlope  []*float64   `json:"effective_mass_slope_kg_per_m"`
	Gap        []*string    `json:"gap"` // why there is no force
}

// ReadingDocument is what is read from the curve in one phase.
type ReadingDocument struct {
	Loads  string             `json:"loads"`
	Values map[string]float64 `json:"values"` // by reading, in SI
	Units  map[string]string  `json:"units"`
}

// JointDocument is a joint's reaction while holding: on its second link by its
// first.
type JointDocument struct {
	Name   string        `json:"name"`
	Force  []*[2]float64 `json:"force_N"`
	Moment []*float64    `json:"moment_Nm"`
}

// RopeDocument is a rope's pull in its first piece, and its moment arm at each
// station: distance of the piece after it (at the last, before it) from the
// station's axis.
type RopeDocument struct {
	Name     string            `json:"name"`
	Hold     []*float64        `json:"hold_N"`
	Lift     []*float64        `json:"lift_N"`
	Lower    []*float64        `json:"lower_N"`
	Stations []StationDocument `json:"stations"`
}

// StationDocument is one place on a rope's way.
type StationDocument struct {
	Name   string     `json:"name"`
	Radius []*float64 `json:"radius_m"`
}

// BandDocument is the doubt of the lifting curve, 2.5 % to 97.5 %.
type BandDocument struct {
	Low     []*float64         `json:"low_N"`
	High    []*float64         `json:"high_N"`
	Ranges  map[string]Range   `json:"ranges"` // by reading, in SI
	Loads   map[string]float64 `json:"loads"`  // share of the draws by verdict
	Draws   int                `json:"draws"`
	Failed  int                `json:"failed"`
	Measure *NarrowingDocument `json:"measure_first"`
}

// Range is an interval.
type Range struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

// NarrowingDocument names the measurement that would narrow the band most.
type NarrowingDocument struct {
	Name    string  `json:"name"`
	Share   float64 `json:"share_of_variance"`
	Half    float64 `json:"half_width_N"`
	Without float64 `json:"half_width_if_exact_N"`
}

// StrokeDocument is one repetition in time.
type StrokeDocument struct {
	Time   []float64 `json:"time_s"`
	Travel []float64 `json:"travel_m"`
	Force  []float64 `json:"force_N"`
	Static []float64 `json:"at_rest_N"`
	Leaves []bool    `json:"leaves"`
	Slack  []string  `json:"slack"`
}

// MeasurementDocument is one number of the sheet.
type MeasurementDocument struct {
	Name   string  `json:"name"`
	Path   string  `json:"path"`
	Value  float64 `json:"value"` // SI
	Spread float64 `json:"plus_minus"`
}
