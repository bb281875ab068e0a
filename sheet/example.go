package sheet

import (
	"bytes"
	_ "embed"
)

//go:embed machine.schema.json
var machineSchema []byte

//go:embed machine.example.yaml
var machineExample []byte

//go:embed person.schema.json
var personSchema []byte

//go:embed person.example.yaml
var personExample []byte

// Example returns a commented sheet of the kind that works as it is, or nil for
// an unknown kind.
func Example(kind Kind) []byte {
	switch kind {
	case KindMachine:
		return bytes.Clone(machineExample)
	case KindPerson:
		return bytes.Clone(personExample)
	}
	return nil
}

// Schema returns the JSON Schema (draft 2020-12) of the kind, or nil for an
// unknown one. It describes the shape of a sheet for editors that complete and
// check while typing; [Document.Machine] and [Document.Person] check more.
func Schema(kind Kind) []byte {
	switch kind {
	case KindMachine:
		return bytes.Clone(machineSchema)
	case KindPerson:
		return bytes.Clone(personSchema)
	}
	return nil
}
