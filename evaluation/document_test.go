package evaluation

import (
	"bytes"
	"encoding/csv"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"steelyard/mechanism"
	"steelyard/sheet"
)

// evaluated evaluates the example sheet.
func evaluated(t testing.TB, o Options) *Evaluation {
	t.Helper()
	return run(t, string(sheet.Example(sheet.KindMachine)), o)
}

func compiledSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	parsed, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("evaluation.json", parsed); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile("evaluation.json")
	if err != nil {
		t.Fatal(err)
	}
	return schema
}

// TestDocumentFollowsSchema holds the JSON against the published schema, with a
// validator of that open standard (draft 2020-12).
func TestDocumentFollowsSchema(t *testing.T) {
	schema := compiledSchema(t)
	for name, o := range map[string]Options{
		"bare": {Draws: -1},
		"full": {Draws: 64, Tempo: &mechanism.Tempo{Up: 2, Down: 2}},
	} {
		var out bytes.Buffer
		if err := evaluated(t, o).WriteJSON(&out, Metric{}); err != nil {
			t.Fatal(name, err)
		}
		value, err := jsonschema.UnmarshalJSON(bytes.NewReader(out.Bytes()))
		if err != nil {
			t.Fatal(name, err)
		}
		if err := schema.Validate(value); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestCSVHasOneRowForEachPosition(t *testing.T) {
	var out bytes.Buffer
	e := evaluated(t, Options{Draws: -1, Positions: 11})
	if err := e.WriteCSV(&out); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&out).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 12 {
		t.Errorf("got %d rows, want a heading and 11 positions", len(rows))
	}
}
