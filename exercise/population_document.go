package exercise

import (
	_ "embed"
	"io"
)

// PeopleFormat names the kind and version of a [PeopleDocument].
const PeopleFormat = "steelyard people 1"

// PeopleSchema is the JSON Schema of a [PeopleDocument].
//
//go:embed population.schema.json
var PeopleSchema []byte

// PeopleDocument is a population check as data: SI units, the unit in each key.
// Its shape is described by [PeopleSchema] and kept stable: keys may be added
// within a version, none removed or changed.
type PeopleDocument struct {
	Format     string             `json:"format"`
	Machine    string             `json:"machine"`
	Exercise   string             `json:"exercise"`
	Sex        string             `json:"sex"`
	Draws      int                `json:"draws"`
	Seed       uint64             `json:"seed"`
	Within     *float64           `json:"axis_within_m"`
	Enough     float64            `json:"travel_needed_share"`
	Possible   int                `json:"possible_choices"`
	Tried      int                `json:"tried_choices"`
	Places     int                `json:"different_places"`
	Held       []ChosenDocument   `json:"held"`
	All        ServedDocument     `json:"all"`
	Women      ServedDocument     `json:"women"`
	Men        ServedDocument     `json:"men"`
	Settings   []SettingDocument  `json:"settings"`
	Examined   int                `json:"examined"`
	Reasons    []ReasonDocument   `json:"reasons"`
	Dimensions []InTheWayDocument `json:"dimensions"`
	Words      []string           `json:"words"`
	Limits     []string           `json:"limits"`
	Cautions   []string           `json:"cautions"`
}

// ServedDocument is a share of people with the sampling error of the draw.
type ServedDocument struct {
	People int     `json:"people"`
	Served int     `json:"served"`
	Share  float64 `json:"share"`
	Low    float64 `json:"low"`
	High   float64 `json:"high"`
}

// SettingDocument tells whom each value of a setting serves.
type SettingDocument struct {
	Setting string                `json:"setting"`
	Matters bool                  `json:"matters"`
	Values  []ValueServedDocument `json:"values"`
}

// ValueServedDocument is one value of a setting.
type ValueServedDocument struct {
	Value  string   `json:"value"`
	Served float64  `json:"served_share"`
	Only   float64  `json:"only_share"`
	Low    *float64 `json:"height_low_m"`
	High   *float64 `json:"height_high_m"`
}

// ReasonDocument is a reason and its share of those examined.
type ReasonDocument struct {
	Text  string  `json:"text"`
	Share float64 `json:"share"`
}

// InTheWayDocument is a dimension that keeps people out.
type InTheWayDocument struct {
	Dimension string  `json:"dimension"`
	Word      string  `json:"word"`
	Freed     float64 `json:"freed_share"`
}

// Document returns the outcome as data.
func (c *Coverage) Document(machine string, cautions []string) *PeopleDocument {
	d := &PeopleDocument{Format: PeopleFormat, Machine: machine, Exercise: c.Exercise.String(), Sex: SexWord(c.Sex), Draws: c.Draws, Seed: c.Seed,
		Enough: c.Enough, Possible: c.Possible, Tried: c.Tried, Places: c.Places, Held: chosenDocuments(c.Held),
		All: c.All.document(), Women: c.Women.document(), Men: c.Men.document(), Settings: []SettingDocument{}, Examined: c.Examined,
		Reasons: []ReasonDocument{}, Dimensions: []InTheWayDocument{}, Words: c.Words(), Limits: c.Limits(), Cautions: append([]string{}, cautions...)}
	if c.HasAxis {
		d.Within = &c.Within
	}
	for k := range c.Dials {
		d.Settings = append(d.Settings, c.settingDocument(k))
	}
	for _, r := range c.Reasons {
		d.Reasons = append(d.Reasons, ReasonDocument{r.Text, float64(r.People) / float64(c.Examined)})
	}
	for _, w := range c.Dimensions {
		d.Dimensions = append(d.Dimensions, InTheWayDocument{w.Dimension.String(), longOrShort(w.Long), float64(w.People) / float64(c.Examined)})
	}
	return d
}

// WriteJSON writes the outcome as a [PeopleDocument].
func (c *Coverage) WriteJSON(w io.Writer, machine string, cautions []string) error {
	return writeJSON(w, c.Document(machine, cautions))
}

func (s Served) document() ServedDocument {
	low, high := s.Between()
	return ServedDocument{s.People, s.Served, s.Share(), low, high}
}

func (c *Coverage) settingDocument(k int) SettingDocument {
	d := SettingDocument{Setting: c.Dials[k].Name, Matters: c.Matters(k)}
	all := float64(c.All.People)
	for v := range c.Values[k] {
		s := &c.Values[k][v]
		e := ValueServedDocument{Value: c.Dials[k].Values[v], Served: float64(s.Served) / all, Only: float64(s.Only) / all}
		if s.High > 0 {
			e.Low, e.High = &s.Low, &s.High
		}
		d.Values = append(d.Values, e)
	}
	return d
}
