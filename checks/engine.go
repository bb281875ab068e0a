package checks

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
)

// Engine is a program that reads a case and writes a result.
type Engine struct {
	Name    string
	command []string // relative to this directory
}

// The engines. run.sh installs and builds them. SciPy is the system's own: a
// Python that some version manager put in front of it does not see it.
var (
	Simbody  = Engine{"Simbody", []string{"build/simbody"}}
	MuJoCo   = Engine{"MuJoCo", []string{"node", "mujoco/run.mjs"}}
	Shortest = Engine{"SciPy", []string{"/usr/bin/python3", "-B", "shortest/run.py"}}
)

// Sweep runs the case through the engine. A missing engine is an error.
func (e Engine) Sweep(c Case) (Result, error) {
	doc, err := json.Marshal(c)
	if err != nil {
		return Result{}, fmt.Errorf("checks: %s: %w", c.Name, err)
	}

	cmd := exec.Command(e.command[0], e.command[1:]...)
	if strings.HasPrefix(e.command[0], "build/") {
		cmd.Path = filepath.Join(here(), e.command[0])
		cmd.Err = nil
	}
	cmd.Dir = here()
	cmd.Stdin = bytes.NewReader(doc)
	var said bytes.Buffer
	cmd.Stderr = &said
	out, err := cmd.Output()
	if err != nil {
		return Result{}, fmt.Errorf("checks: %s with %s: %w: %s (run.sh installs and builds the engines)", c.Name, e.Name, err, said.String())
	}

	var r Result
	if err := json.Unmarshal(out, &r); err != nil {
		return Result{}, fmt.Errorf("checks: %s with %s: %w", c.Name, e.Name, err)
	}
	if len(r.Positions) != len(c.At) {
		return Result{}, fmt.Errorf("checks: %s with %s: %d positions for %d asked", c.Name, e.Name, len(r.Positions), len(c.At))
	}
	return r, nil
}

// here is the directory of this file.
func here() string {
	_, file, _, _ := runtime.Caller(0)
	return filepath.Dir(file)
}
