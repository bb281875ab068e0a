package main

import (
	"fmt"

	"steelyard/sheet"
)

type sheetVerb struct {
	Kind   string `arg:"" enum:"machine,person" help:"Kind of sheet: machine or person."`
	Schema bool   `help:"Print the JSON Schema instead of an example."`
}

func (v *sheetVerb) Run(c *console) error {
	text := sheet.Example(sheet.Kind(v.Kind))
	if v.Schema {
		text = sheet.Schema(sheet.Kind(v.Kind))
	}
	_, err := fmt.Fprintf(c.out, "%s", text)
	return err
}
