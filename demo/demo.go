// Package demo is the boathouse gym of an invented rowing club: machines of
// every family the program knows, and people to train on them, each as the
// sheet a coach would write. No club, machine or person in it exists.
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
func Machines() []File { return files(machines, "machines") }

// files returns the sheets of an embedded folder.
func files(fs embed.FS, folder string) []File {
	entries, err := fs.ReadDir(folder) // sorted
	if err != nil {
		panic(err) // the folder is compiled in
	}
	files := make([]File, len(entries))
	for i, e := range entries {
		data, err := fs.ReadFile(path.Join(folder, e.Name()))
		if err != nil {
			panic(err)
		}
		files[i] = File{e.Name(), data}
	}
	return files
}
