package main

import (
	"fmt"
	"path/filepath"
	"strings"

	"steelyard/internal/server/photo"
	"steelyard/internal/store"
)

type backupVerb struct {
	dataFlag
	File string `arg:"" help:"File to be written, such as boathouse.backup; it must not be there yet."`
}

// Run writes everything, histories and photos too.
func (v *backupVerb) Run(c *console) error {
	st, err := v.open(c.ctx)
	if err != nil {
		return err
	}
	defer st.Close()
	if err := st.Backup(c.ctx, v.File); err != nil {
		return err
	}
	fmt.Fprintf(c.err, "wrote %s; steelyard restore %s puts it back\n", v.File, v.File)
	return nil
}

type restoreVerb struct {
	dataFlag
	File string `arg:"" help:"Backup to put back in place of everything here."`
}

// Run puts a backup back as a whole or not at all.
func (v *restoreVerb) Run(c *console) error {
	st, err := v.open(c.ctx)
	if err != nil {
		return err
	}
	defer st.Close()
	before, err := st.Restore(c.ctx, v.File)
	if err != nil {
		return err
	}
	fmt.Fprintf(c.err, "restored %s\nwhat was here before is in %s\n", v.File, before)
	return nil
}

type exportVerb struct {
	dataFlag
	File string `arg:"" help:"Archive to be written, such as boathouse.zip; it must not be there yet."`
}

// Run writes sheets and photos as a plain zip.
func (v *exportVerb) Run(c *console) error {
	st, err := v.open(c.ctx)
	if err != nil {
		return err
	}
	defer st.Close()
	if err := st.ExportTo(c.ctx, v.File); err != nil {
		return err
	}
	fmt.Fprintf(c.err, "wrote %s: sheets and photos as they now are; histories are only in a backup\n", v.File)
	return nil
}

type importVerb struct {
	dataFlag
	Files []string `arg:"" name:"file" help:"Archives that export wrote, and single sheets (.yaml)."`
}

// Run takes archives and single sheets, each as a whole or not at all.
func (v *importVerb) Run(c *console) error {
	st, err := v.open(c.ctx)
	if err != nil {
		return err
	}
	defer st.Close()
	for _, file := range v.Files {
		if err := importFile(c, st, file); err != nil {
			return fmt.Errorf("%s: %w", file, err)
		}
	}
	return nil
}

func importFile(c *console, st *store.Store, file string) error {
	if ext := strings.ToLower(filepath.Ext(file)); ext == ".yaml" || ext == ".yml" {
		data, err := readFile(file)
		if err != nil {
			return err
		}
		sh, err := st.Create(c.ctx, string(data), "")
		if err != nil {
			return err
		}
		fmt.Fprintf(c.err, "%s: new %s %q\n", file, sh.Kind, sh.Name)
		return nil
	}
	sum, err := st.ImportFrom(c.ctx, file, photo.Check)
	if err != nil {
		return err
	}
	fmt.Fprintf(c.err, "%s: %d new, %d changed, %d as they were, %d photos\n", file, sum.New, sum.Changed, sum.Same, sum.Photos)
	return nil
}
