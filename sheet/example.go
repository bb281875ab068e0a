package sheet

import (
	"bytes"
	_ "embed"
)

//go:embed machine.example.yaml
var machineExample []byte

// Example returns a commented sheet of the kind that works as it is, or nil for
// an unknown kind.
func Example(kind Kind) []byte {
	if kind == KindMachine {
		return bytes.Clone(machineExample)
	}
	return nil
}
