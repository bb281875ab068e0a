package main

import (
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"steelyard": func() { os.Exit(run()) }})
}

// TestScripts runs the command as a user would: each file in testdata is a
// session with what is typed and what must come back.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{Dir: "testdata"})
}
