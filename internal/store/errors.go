package store

import (
	"errors"
	"fmt"

	"modernc.org/sqlite"
	lib "modernc.org/sqlite/lib"
)

// ErrNotFound is returned for an id that nothing is stored under.
var ErrNotFound = errors.New("there is nothing stored under that name; go back to the room and open it from there")

// ErrNothingToUndo is returned when a sheet stands at its beginning, and
// ErrNothingToRedo when nothing was undone.
var (
	ErrNothingToUndo = errors.New("there is nothing left to undo; this is how the sheet began")
	ErrNothingToRedo = errors.New("there is nothing to do again; nothing was undone since the last change")
)

// ConflictError says that a sheet has changed since the revision a write was
// made from. Nothing was written.
type ConflictError struct {
	From    int   // revision the write was made from
	Current Sheet // as it now stands
}

func (e *ConflictError) Error() string {
	return fmt.Sprintf("%q has been changed elsewhere since you opened it (it is at step %d, yours began at step %d), so yours was not saved; take the newer one, or save yours beside it under another name",
		e.Current.Name, e.Current.Revision, e.From)
}

// TroubleError says in one sentence why the file cannot be used, and what to do.
// The cause is for the log.
type TroubleError struct {
	Problem string
	Cure    string
	Cause   error
}

func (e *TroubleError) Error() string { return e.Problem + "; " + e.Cure }

// Unwrap returns the cause.
func (e *TroubleError) Unwrap() error { return e.Cause }

// NewerError says that a newer program has written the file.
type NewerError struct {
	File      string
	Has, Know int // numbers of the migrations
}

func (e *NewerError) Error() string {
	return fmt.Sprintf("%s was written by a newer Steelyard (its layout is number %d, this program knows up to %d); start the newer program, or name another folder with --data", e.File, e.Has, e.Know)
}

// trouble turns an error of the driver into a sentence about the file. Errors
// of our own pass unchanged.
func (s *Store) trouble(err error) error { return troubleWith(s.file, err) }

func troubleWith(file string, err error) error {
	var e *sqlite.Error
	if !errors.As(err, &e) {
		return err
	}
	say := func(problem, cure string) error { return &TroubleError{problem, cure, err} }
	switch e.Code() { // as a quota or a limit on the size of files has it, where a full disk is SQLITE_FULL
	case lib.SQLITE_IOERR_WRITE, lib.SQLITE_IOERR_SHMSIZE, lib.SQLITE_IOERR_TRUNCATE:
		return say(file+" cannot grow: the disk takes no more of it, by a quota, a limit or a fault, and this change was not saved",
			"make room, lift the limit or check the disk, and save again; everything saved before is kept if the disk still has it")
	}
	switch e.Code() & 0xff { // the primary code
	case lib.SQLITE_FULL:
		return say(file+" cannot grow: the disk is full, and this change was not saved", "make room on the disk and save again; everything saved before is safe")
	case lib.SQLITE_READONLY, lib.SQLITE_PERM, lib.SQLITE_AUTH:
		return say(file+" may not be written to", "make the folder writable for you, or name another with --data")
	case lib.SQLITE_CANTOPEN:
		return say(file+" cannot be opened or made", "check that its folder exists and is writable for you, or name another with --data")
	case lib.SQLITE_BUSY, lib.SQLITE_LOCKED:
		return say(file+" is held by another program, and this change was not saved", "close other copies of Steelyard or backup programs that use it, and save again")
	case lib.SQLITE_CORRUPT, lib.SQLITE_NOTADB:
		return say(file+" is damaged or is no data file of Steelyard", "put it aside and bring the latest backup back with steelyard restore")
	case lib.SQLITE_IOERR:
		return say(file+" cannot be read or written: the disk reports an error", "check the disk and its connection; everything saved before is kept if the disk still has it")
	case lib.SQLITE_TOOBIG, lib.SQLITE_NOMEM:
		return say(file+": this is too large to be kept", "make it smaller")
	}
	return say(file+" refuses this", "try once more; if it stays so, keep a copy of the folder and restore the latest backup")
}
