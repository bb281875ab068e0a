package evaluation

import (
	"context"
	"testing"

	"steelyard/sheet"
)

func TestExampleSheet(t *testing.T) {
	doc, err := sheet.Read("example.yaml", sheet.Example("machine"))
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
	e, err := Run(context.Background(), m, b, Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range e.Words(Metric{}) {
		t.Log(w)
	}
}
