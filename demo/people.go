package demo

import "embed"

//go:embed people/*.yaml
var people embed.FS

// People returns the sheets of six invented people of different size, sex and
// age, sorted by name. The caller may change them.
func People() []File { return files(people, "people") }
