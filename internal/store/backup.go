package store

import (
	"context"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// dataEntry is the name of the data file in a backup.
const dataEntry = fileName

// Backup writes everything, histories and photos too, as one file, which
// appears under its name only when it is whole. An existing file is not
// replaced.
func (s *Store) Backup(ctx context.Context, file string) error {
	return writeNew(file, func(tmp string, w io.Writer) error {
		whole := filepath.Join(tmp, "data")
		if _, err := s.db.ExecContext(ctx, `VACUUM INTO ?1`, whole); err != nil {
			return troubleWith(file, err)
		}
		data, err := os.Open(whole) // a copy, never the live file
		if err != nil {
			return err
		}
		defer data.Close()
		a := newWriter(w, backupFormat, s.stamp())
		if err := a.add(dataEntry, data); err != nil {
			return err
		}
		return a.close()
	})
}

// writeNew writes a file as a whole or not at all: into a folder of its own
// beside it, from which it takes its name when all of it is on the disk.
func writeNew(file string, write func(tmp string, w io.Writer) error) (err error) {
	if _, err := os.Lstat(file); !errors.Is(err, fs.ErrNotExist) {
		return &TroubleError{file + " is already there, or its folder cannot be looked into", "choose another name", err}
	}
	tmp, err := os.MkdirTemp(filepath.Dir(file), ".steelyard-*")
	if err != nil {
		return &TroubleError{file + " cannot be written there", "choose another folder", err}
	}
	defer os.RemoveAll(tmp)
	whole := filepath.Join(tmp, "whole")
	out, err := os.OpenFile(whole, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
	if err == nil {
		err = write(tmp, out)
		err = errors.Join(err, out.Sync(), out.Close())
	}
	if err == nil {
		err = os.Rename(whole, file)
	}
	var said *TroubleError
	if err != nil && !errors.As(err, &said) {
		err = &TroubleError{file + " could not be written as a whole, so nothing was written", "check that the disk has room, or choose another folder", err}
	}
	return err
}
