package exercise

import (
	_ "embed"
	"encoding/json"
	"io"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
)

// Format names the kind and version of a [Document].
const Format = "steelyard person on machine 1"

// Schema is the JSON Schema of a [Document].
//
//go:embed exercise.schema.json
var Schema []byte

// Document is a person on a machine as data: SI units, angles in degrees, the
// unit in each key, columns of equal length, null for a gap. Its shape is
// described by [Schema] and kept stable: keys may be added within a version,
// none removed or changed.
type Document struct {
	Format    string            `json:"format"`
	Machine   string            `json:"machine"`
	Exercise  string            `json:"exercise"`
	Posture   string            `json:"posture"`
	Direction string            `json:"force_direction"`
	Limbs     float64           `json:"limbs_that_share_the_force"`
	Mirrored  bool              `json:"mirrored"`
	Words     []string          `json:"words"`
	Body      []SizeDocument    `json:"body"`
	Travel    []float64         `json:"travel_m"`
	Gap       []*string         `json:"gap"`
	Warning   []*string         `json:"warning"` // a joint past its range
	Poses     []*PoseDocument   `json:"poses"`
	Lifting   PhaseDocument     `json:"lifting"`
	Lowering  PhaseDocument     `json:"lowering"`
	Muscles   []MuscleDocument  `json:"muscles"`
	Maximum   *MaximumDocument  `json:"maximum"`
	Align     AlignmentDocument `json:"alignment"`
}

// SizeDocument is one dimension of the body and where it came from.
type SizeDocument struct {
	Name   string  `json:"name"`
	Value  float64 `json:"value"` // m; kg for mass
	Spread float64 `json:"standard_deviation"`
	Origin string  `json:"origin"`
	Source string  `json:"source"`
	Mark   string  `json:"mark"`
}

// PoseDocument is the body at one position: joint centres of the right side, x
// forward, y up, z to the right; x and y are the side view.
type PoseDocument struct {
	Hips     [3]float64  `json:"hips_m"` // middle of the line of the hips
	Shoulder [3]float64  `json:"shoulder_m"`
	Crown    [3]float64  `json:"crown_m"`
	Root     [3]float64  `json:"root_m"` // of the limb: shoulder or hip
	Mid      [3]float64  `json:"mid_m"`  // elbow or knee
	End      [3]float64  `json:"end_m"`  // grip or ankle
	Heel     *[3]float64 `json:"heel_m"` // legs only
	Toe      *[3]float64 `json:"toe_m"`
	Contact  [3]float64  `json:"contact_m"`
}

// PhaseDocument is one way along the travel.
type PhaseDocument struct {
	Force    []*float64       `json:"force_N"`
	Push     []*[3]float64    `json:"force_on_body_N"`
	Effort   []*float64       `json:"effort"`
	Unknown  []*string        `json:"effort_unknown"` // why there is none although the body is there
	Sticking *int             `json:"sticking_position"`
	Limiting *string          `json:"limiting_joint"`
	Joints   []ColumnDocument `json:"joints"`
}

// ColumnDocument is one joint axis.
type ColumnDocument struct {
	Joint     string     `json:"joint"`
	Body      string     `json:"body_joint"`
	Angle     []*float64 `json:"angle_deg"`
	Moment    []*float64 `json:"moment_Nm"`
	Action    []*string  `json:"action"`
	Available []*float64 `json:"available_Nm"`
	Effort    []*float64 `json:"effort"`
	Low       []*float64 `json:"effort_low"`
	High      []*float64 `json:"effort_high"`
	Beyond    []bool     `json:"beyond_tested"`
	NoFigure  []bool     `json:"beyond_tested_no_figure"`
	Source    string     `json:"source"`
	Mark      string     `json:"mark"`
	Weak      bool       `json:"weak"`
	Rescaled  bool       `json:"rescaled"`
}

// MuscleDocument is a muscle group's thirds, lengthened, middle, shortened.
type MuscleDocument struct {
	Name   string     `json:"name"`
	Source string     `json:"source"`
	Mark   string     `json:"mark"`
	Length []*float64 `json:"length"` // 0 shortest, 1 longest within the person's ranges
	Effort []*float64 `json:"effort"`
	Share  [3]float64 `json:"share_of_travel"`
	Mean   [3]float64 `json:"mean_effort"`
}

// MaximumDocument is the predicted maximum.
type MaximumDocument struct {
	Load     float64   `json:"load_kg"` // 0 where the machine has no load
	Low      float64   `json:"load_low_kg"`
	High     float64   `json:"load_high_kg"`
	Factor   float64   `json:"force_factor"`
	Capped   bool      `json:"not_limited"`
	Empty    bool      `json:"empty_too_heavy"`
	Untested float64   `json:"untested_share"`
	Reps     []int     `json:"repetitions"`
	RepsAt   []float64 `json:"repetitions_load"` // kg, or multiples of the present force
	RepsLow  []float64 `json:"repetitions_load_low"`
	RepsHigh []float64 `json:"repetitions_load_high"`
}

// AlignmentDocument is how joint, axis and pad go together; null where there is
// none.
type AlignmentDocument struct {
	Misaligned []*float64 `json:"misaligned_m"`
	Creep      []*float64 `json:"pad_creep_m"`
	Shear      []*float64 `json:"pad_shear_N"`
}

// WriteJSON writes the result as a [Document].
func (r *Result) WriteJSON(w io.Writer, machine string) error {
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	out.SetIndent("", " ")
	return out.Encode(r.Document(machine))
}

func triple(v r3.Vec) [3]float64 { return [3]float64{v.X, v.Y, v.Z} }

// pose returns the body at one position, or nil in a gap.
func (r *Result) pose(i int) *PoseDocument {
	if !r.Faults[i].Placed() {
		return nil
	}
	p, l := &r.Placements[i], &r.Body.Links
	d := &PoseDocument{Hips: triple(p.Trunk.Origin), Shoulder: triple(p.Trunk.Shoulder(*l, human.Right)),
		Crown: triple(p.Trunk.Point(r3.Vec{Y: l.HipToCrown})),
		Root:  triple(p.Limb.Root), Mid: triple(p.Limb.Mid), End: triple(p.Limb.End), Contact: triple(p.Contact)}
	if p.Toe != (r3.Vec{}) {
		heel, toe := triple(r.Body.SolePoint(p.Limb, p.Toe, 0)), triple(r.Body.SolePoint(p.Limb, p.Toe, l.Foot))
		d.Heel, d.Toe = &heel, &toe
	}
	return d
}
