package report

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"steelyard/evaluation"
	"steelyard/mechanism"
	"steelyard/sheet"
)

// evaluated puts a sheet of testdata, or the example, through the engine.
func evaluated(t testing.TB, name string, o evaluation.Options) *evaluation.Evaluation {
	t.Helper()
	data := sheet.Example(sheet.KindMachine)
	if name != "example" {
		var err error
		if data, err = os.ReadFile(filepath.Join("testdata", name+".yaml")); err != nil {
			t.Fatal(err)
		}
	}
	return evaluatedText(t, name, data, o)
}

func evaluatedText(t testing.TB, name string, data []byte, o evaluation.Options) *evaluation.Evaluation {
	t.Helper()
	doc, err := sheet.Read(name, data)
	if err != nil {
		t.Fatal(err)
	}
	m, err := doc.Machine()
	if err != nil {
		t.Fatal(err)
	}
	b, err := m.Build(nil)
	if err != nil {
		t.Fatal(err)
	}
	if o.Draws == 0 {
		o.Draws = 100
	}
	e, err := evaluation.Run(context.Background(), m, b, o)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

var tempo = &mechanism.Tempo{Up: 2, Top: 0.5, Down: 3, Bottom: 0.5}
