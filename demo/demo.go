// Package demo is the boathouse gym of an invented rowing club: machines of
// every family the program knows, each as the sheet a coach would write. No
// club, machine or person in it exists.
//
// The sheets are part of the program. Nothing here touches a disk.
package demo

import (
	"embed"
	"path"
)

//go:embed machines/*.yaml
var machines embed.FS

// File is one sheet.
type File struct {
	Name string // such as bow-press.yaml
	Data []byte
}

// Machines returns the sheets of all machines, sorted by name. The caller may
// change them.
func Machines() []File {
	const folder = "machines"
	entries, err := machines.ReadDir(folder) // sorted
	if err != nil {
		panic(err) // the folder is compiled in
	}
	files := make([]File, len(entries))
	for i, e := range entries {
		data, err := machines.ReadFile(path.Join(folder, e.Name()))
		if err != nil {
			panic(err)
		}
		files[i] = File{e.Name(), data}
	}
	return files
}
