package exercise

import (
	_ "embed"
	"encoding/json"
	"io"
)

// FitFormat names the kind and version of a [FitDocument].
const FitFormat = "steelyard fit 1"

// FitSchema is the JSON Schema of a [FitDocument].
//
//go:embed fit.schema.json
var FitSchema []byte

// FitDocument is the outcome of a search as data: SI units, the unit in each
// key, angles in degrees. Its shape is described by [FitSchema] and kept
// stable: keys may be added within a version, none removed or changed.
type FitDocument struct {
	Format   string           `json:"format"`
	Machine  string           `json:"machine"`
	Exercise string           `json:"exercise"`
	Aim      string           `json:"aim"`
	Loaded   string           `json:"thirds_of"`
	Order    string           `json:"order"`
	Possible int              `json:"possible_choices"`
	Tried    int              `json:"tried_choices"`
	Fit      int              `json:"fitting_choices"`
	Proven   bool             `json:"proven_best"`
	Enough   float64          `json:"travel_needed_share"`
	Fits     bool             `json:"fits"`
	Held     []ChosenDocument `json:"held"`
	Best     []TrialDocument  `json:"best"`
	Words    []string         `json:"words"`
	Avoid    []string         `json:"avoid"`
	Cautions []string         `json:"cautions"`
}

// ChosenDocument is the value a setting has.
type ChosenDocument struct {
	Setting string `json:"setting"`
	Value   string `json:"value"`
}

// TrialDocument is one choice of settings; null is what the machine has not.
type TrialDocument struct {
	Settings   []ChosenDocument `json:"settings"`
	Fits       bool             `json:"fits"`
	Equal      int              `json:"equally_good_choices"`
	Unreached  float64          `json:"unreached_share"`
	Short      float64          `json:"shortfall_m"`
	OwnBeyond  float64          `json:"past_own_limit_deg"`
	Beyond     float64          `json:"past_usual_limit_deg"`
	Usable     [2]float64       `json:"usable_travel_m"`
	Travel     float64          `json:"travel_m"`
	Joint      *string          `json:"joint_in_line"`
	Misaligned *float64         `json:"misaligned_m"`
	Creep      *float64         `json:"pad_creep_m"`
	Margin     *float64         `json:"straight_limb_margin_m"`
	Angle      string           `json:"angle"`
	From       float64          `json:"angle_from_deg"`
	To         float64          `json:"angle_to_deg"`
	Range      [2]float64       `json:"range_deg"`
	Covered    float64          `json:"range_covered_share"`
	Shares     *[3]float64      `json:"effort_shares"` // lengthened, middle, shortened
	Peak       *float64         `json:"peak_effort"`
	Reasons    []string         `json:"reasons"`
	Trade      string           `json:"trade"`
}

// Document returns the outcome as data.
func (f *Fitting) Document(machine string, cautions []string) *FitDocument {
	d := &FitDocument{Format: FitFormat, Machine: machine, Exercise: f.Exercise.String(), Aim: f.Aim.String(), Loaded: f.Loaded(), Order: f.Order(),
		Possible: f.Possible, Tried: f.Tried, Fit: f.Fit, Proven: f.Proven, Enough: f.Enough, Fits: f.Fits, Held: chosenDocuments(f.Held),
		Words: f.Words(), Avoid: append([]string{}, f.Body.Person.Avoid...), Cautions: append([]string{}, cautions...)}
	for i := range f.Best {
		d.Best = append(d.Best, f.trialDocument(&f.Best[i]))
	}
	return d
}

// WriteJSON writes the outcome as a [FitDocument].
func (f *Fitting) WriteJSON(w io.Writer, machine string, cautions []string) error {
	return writeJSON(w, f.Document(machine, cautions))
}

func writeJSON(w io.Writer, document any) error {
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	out.SetIndent("", " ")
	return out.Encode(document)
}

func chosenDocuments(chosen []Chosen) []ChosenDocument {
	out := []ChosenDocument{}
	for _, c := range chosen {
		out = append(out, ChosenDocument(c))
	}
	return out
}

func (f *Fitting) trialDocument(t *Trial) TrialDocument {
	d := TrialDocument{Settings: chosenDocuments(f.Values(t)), Fits: t.Fits(), Equal: t.Equal, Unreached: float64(t.Unreached) / float64(t.Positions),
		Short: t.Short, OwnBeyond: t.OwnBeyond.Degrees(), Beyond: t.Beyond.Degrees(), Usable: t.Usable, Travel: t.Travel, Angle: rangeOf(f.Action).String(), From: t.From.Degrees(), To: t.To.Degrees(),
		Range: [2]float64{t.Range[0].Degrees(), t.Range[1].Degrees()}, Covered: t.Covered, Reasons: f.Reasons(t), Trade: f.Trade(t)}
	if t.HasAxis {
		d.Joint, d.Misaligned = &t.Joint, &t.Misaligned
	}
	if t.HasPad {
		d.Creep = &t.Creep
	}
	if t.HasMargin {
		d.Margin = &t.Margin
	}
	if t.loaded {
		s := t.Shares()
		d.Shares, d.Peak = &s, &t.Peak
	}
	return d
}
