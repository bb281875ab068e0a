// Command generate writes what package api says as TypeScript, for the page,
// and as an OpenAPI document. It is run by go generate in that package's folder.
package main

import (
	"log"
	"os"
	"path/filepath"

	"steelyard/internal/server/api/contract"
)

func main() {
	for _, f := range contract.Files {
		data, err := f.Write(".")
		if err == nil {
			err = os.MkdirAll(filepath.Dir(f.Path), 0o755)
		}
		if err == nil {
			err = os.WriteFile(f.Path, data, 0o644)
		}
		if err != nil {
			log.Fatal(err)
		}
	}
}
