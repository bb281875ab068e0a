// Package page holds the page the server sends: what the build in ui wrote,
// committed so that the program needs Go alone.
package page

import (
	"embed"
	"io/fs"
)

//go:embed all:dist
var built embed.FS

// Files returns the page's files, index.html among them.
func Files() fs.FS {
	files, err := fs.Sub(built, "dist")
	if err != nil {
		panic(err) // dist is embedded above
	}
	return files
}
