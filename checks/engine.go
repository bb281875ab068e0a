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
	var r Result
	if err := e.ask(c.Name, c, &r); err != nil {
		return Result{}, err
	}
	if len(r.Positions) != len(c.At) {
		return Result{}, fmt.Errorf("checks: %s with %s: %d positions for %d asked", c.Name, e.Name, len(r.Positions), len(c.At))
	}
	return r, nil
}

// ask hands a document to the engine and reads its answer.
func (e Engine) ask(name string, doc, answer any) error {
	in, err := json.Marshal(doc)
	if err != nil {
		return fmt.Errorf("checks: %s: %w", name, err)
	}
	cmd := exec.Command(e.command[0], e.command[1:]...)
	if strings.HasPrefix(e.command[0], "build/") {
		cmd.Path, cmd.Err = filepath.Join(here(), e.command[0]), nil
	}
	var said bytes.Buffer
	cmd.Dir, cmd.Stdin, cmd.Stderr = here(), bytes.NewReader(in), &said
	out, err := cmd.Output()
	if err != nil {
		return fmt.Errorf("checks: %s with %s: %w: %s (run.sh installs and builds the engines)", name, e.Name, err, said.String())
	}
	if err := json.Unmarshal(out, answer); err != nil {
		return fmt.Errorf("checks: %s with %s: %w", name, e.Name, err)
	}
	return nil
}

// here is the directory of this file.
func here() string {
	_, file, _, _ := runtime.Caller(0)
	return filepath.Dir(file)
}
