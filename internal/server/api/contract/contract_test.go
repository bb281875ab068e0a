package contract

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
)

const folder = ".." // of package api

// Whoever changes package api must run go generate.
func TestFilesAreFresh(t *testing.T) {
	for _, f := range Files {
		want, err := f.Write(folder)
		if err != nil {
			t.Fatal(err)
		}
		got, err := os.ReadFile(filepath.Join(folder, f.Path))
		if err != nil {
			t.Fatalf("%v; run go generate ./internal/server/api", err)
		}
		if !bytes.Equal(got, want) {
			t.Errorf("%s is stale; run go generate ./internal/server/api", f.Path)
		}
	}
}
