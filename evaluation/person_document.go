package evaluation

import (
	"bytes"
	_ "embed"
	"math"

	"steelyard/exercise"
)

//go:embed evaluation.schema.json
var ownSchema []byte

// Schema is the JSON Schema of a [Document], with that of a person on a machine
// bundled in.
var Schema = bundled()

// personSchema identifies the schema of a person on a machine within [Schema].
const personSchema = "urn:steelyard:person-on-machine:1"

// bundled puts the schema of package exercise in its place among the $defs of
// this one, under an $id of its own.
//
// Source: JSON Schema 2020-12, section 9.3.1, bundling.
func bundled() []byte {
	person := bytes.Replace(exercise.Schema, []byte("{"), []byte(`{ "$id": "`+personSchema+`",`), 1)
	place := []byte(`"person on machine": {}`)
	return bytes.Replace(ownSchema, place, append([]byte(`"person on machine": `), bytes.TrimSpace(person)...), 1)
}

// PersonDocument is a person on the machine: who, in words, and the travel at
// rest and at the tempo.
type PersonDocument struct {
	Name     string             `json:"name"`
	Height   float64            `json:"height_m"`
	Mass     float64            `json:"mass_kg"`
	Sex      string             `json:"sex"`
	Age      *float64           `json:"age_years"` // null if not given
	Words    []string           `json:"words"`
	Warnings []string           `json:"warnings"` // on the person's own figures
	Helps    []HelpDocument     `json:"settings_that_would_help"`
	Can      []*float64         `json:"producible_N"`         // by position of at_rest; null where nothing limits it, where nobody was tested, and at gaps
	CanMost  []*float64         `json:"producible_at_most_N"` // the most it can be where nobody was tested; null elsewhere
	Rest     *exercise.Document `json:"at_rest"`
	Paced    *exercise.Document `json:"at_tempo"` // null without a tempo
}

// HelpDocument is a setting that would mend some or all of what is out of reach
// or past a limit; shares of the positions of the travel.
type HelpDocument struct {
	Setting        string  `json:"setting"`
	Value          string  `json:"value"`
	UnreachedNow   float64 `json:"unreached_now"`
	UnreachedThen  float64 `json:"unreached_then"`
	PastLimitsNow  float64 `json:"past_limits_now"`
	PastLimitsThen float64 `json:"past_limits_then"`
}

func (e *Evaluation) personDocument() *PersonDocument {
	m := e.Person
	if m == nil {
		return nil
	}
	p := &m.Person.Person
	d := &PersonDocument{Name: m.Person.Name, Height: p.Height, Mass: p.Mass, Sex: p.Sex.String(), Words: m.Words(),
		Warnings: []string{}, Helps: []HelpDocument{}, Rest: m.Rest.Document(e.Name)}
	if p.Age != 0 {
		d.Age = &p.Age
	}
	for _, w := range m.Warnings {
		d.Warnings = append(d.Warnings, w.String())
	}
	for _, h := range m.Helps {
		n := float64(h.Now.Positions)
		d.Helps = append(d.Helps, HelpDocument{h.Setting, h.Value, float64(h.Now.Unreached) / n, float64(h.Then.Unreached) / n,
			float64(h.Now.Beyond) / n, float64(h.Then.Beyond) / n})
	}
	for i, f := range m.Can {
		d.Can = append(d.Can, known(!math.IsNaN(f) && !math.IsInf(f, 1), f))
		d.CanMost = append(d.CanMost, known(!math.IsNaN(m.CanMost[i]), m.CanMost[i]))
	}
	if m.Paced != nil {
		d.Paced = m.Paced.Document(e.Name)
	}
	return d
}
