package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"
)

// writeFile writes a file as a whole or not at all: into a neighbour first,
// which takes the name only when everything is in it.
func writeFile(file string, write func(io.Writer) error) error {
	tmp, err := os.CreateTemp(filepath.Dir(file), ".steelyard-*")
	if err != nil {
		return fmt.Errorf("%s: cannot be written: %w; choose another folder", file, err)
	}
	defer os.Remove(tmp.Name()) // fails once it has been renamed, as it should
	err = write(tmp)
	if err == nil {
		err = tmp.Chmod(0o644)
	}
	if closing := tmp.Close(); err == nil {
		err = closing
	}
	if err != nil {
		return fmt.Errorf("%s: %w; nothing was written", file, err)
	}
	if err := os.Rename(tmp.Name(), file); err != nil {
		return fmt.Errorf("%s: cannot be written: %w; choose another name", file, err)
	}
	return nil
}

// patience is how long work may take before it tells how far it is.
const patience = time.Second

// tell returns a progress function that keeps one line on a terminal up to
// date, and one that clears it. Both do nothing where there is no terminal.
func (c *console) tell(what string) (progress func(done, total int), clear func()) {
	if !c.progress {
		return nil, func() {}
	}
	start, shown := time.Now(), false
	progress = func(done, total int) {
		if time.Since(start) < patience {
			return
		}
		shown = true
		fmt.Fprintf(c.err, "\r%s: %d of %d (ctrl-C stops)", what, done, total)
	}
	return progress, func() {
		if shown {
			fmt.Fprint(c.err, "\r\x1b[K")
		}
	}
}
