package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"time"

	_ "modernc.org/sqlite" // registers the driver
)

// fileName is the data file's name in its folder.
const fileName = "steelyard.db"

// patience is how long a write waits for another process to finish.
const patience = 5 * time.Second

// Store is an open data file. It is safe for concurrent use.
type Store struct {
	db     *sql.DB
	file   string
	folder string
	fresh  bool
	now    func() time.Time
}

// Open opens the data file in folder, making both if need be, and brings it up
// to date. Now gives the time that rows are stamped with.
//
// Errors are a *[TroubleError] or *[NewerError]; the file is then as it was.
func Open(folder string, now func() time.Time) (*Store, error) {
	return open(folder, now, patience)
}

func open(folder string, now func() time.Time, wait time.Duration) (*Store, error) {
	folder, err := filepath.Abs(folder)
	if err != nil {
		return nil, err
	}
	if err := makeFolder(folder); err != nil {
		return nil, err
	}
	s := &Store{folder: folder, file: filepath.Join(folder, fileName), now: now}
	if s.db, err = connect(s.file, wait); err != nil {
		return nil, s.trouble(err)
	}
	if s.fresh, err = migrate(context.Background(), s.db, s.file); err != nil {
		s.db.Close()
		return nil, s.trouble(err)
	}
	if s.fresh { // for its owner alone, also in a folder that others may look into; systems without such rights say no
		os.Chmod(s.file, 0o600)
	}
	return s, nil
}

// makeFolder makes the folder, for its owner alone: it holds persons' data.
func makeFolder(folder string) error {
	err := os.MkdirAll(folder, 0o700)
	switch {
	case err == nil:
		return nil
	case errors.Is(err, fs.ErrPermission):
		return &TroubleError{folder + " may not be made by you", "make the folder above it writable for you, or name another with --data", err}
	}
	return &TroubleError{folder + " cannot be made or is no folder", "name another folder with --data", err}
}

// connect opens a file for SQLite. Every connection has the write-ahead log,
// full durability, foreign keys, and transactions that take the write lock at
// once, so that none fails half-way for a lock.
func connect(file string, wait time.Duration) (*sql.DB, error) {
	options := url.Values{"_txlock": {"immediate"}, "_pragma": {
		fmt.Sprintf("busy_timeout(%d)", wait.Milliseconds()), "journal_mode(wal)", "synchronous(full)", "foreign_keys(1)", "secure_delete(1)"}}
	where := url.URL{Scheme: "file", Opaque: (&url.URL{Path: filepath.ToSlash(file)}).EscapedPath(), RawQuery: options.Encode()}
	return sql.Open("sqlite", where.String())
}

// Close closes the file. Later calls fail.
func (s *Store) Close() error { return s.db.Close() }

// Folder returns where the file lies.
func (s *Store) Folder() string { return s.folder }

// Fresh reports whether Open made the file.
func (s *Store) Fresh() bool { return s.fresh }

// write runs f in one transaction, which is on the disk when write returns nil.
func (s *Store) write(ctx context.Context, f func(tx *sql.Tx) error) error {
	tx, err := s.db.BeginTx(ctx, nil)
	if err != nil {
		return s.trouble(err)
	}
	defer tx.Rollback()
	if err := f(tx); err != nil {
		return s.trouble(err)
	}
	return s.trouble(tx.Commit())
}

// stamp returns the present time as it is stored.
func (s *Store) stamp() string { return s.now().UTC().Format(time.RFC3339Nano) }
