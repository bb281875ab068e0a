package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// tables lists what a backup brings back, in an order that keeps every
// reference whole. Evaluations are computed again.
var tables = []string{"sheet", "revision", "photo", "backdrop", "reading", "done"}

// Restore puts back what a backup holds in place of everything here, in one
// transaction: it happens as a whole or not at all. What was here before is
// written to a backup of its own first, whose name is returned. The backup is
// checked from end to end before anything is changed.
//
// Every sheet goes on to a revision that none of its earlier states had, so
// that a page still open finds out.
func (s *Store) Restore(ctx context.Context, file string) (before string, err error) {
	tmp, err := os.MkdirTemp(s.folder, ".restore-*")
	if err != nil {
		return "", &TroubleError{s.folder + " may not be written to", "make the folder writable for you, or name another with --data", err}
	}
	defer os.RemoveAll(tmp)
	data := filepath.Join(tmp, "data")
	if err := unpack(data, file); err != nil {
		return "", err
	}
	if err := verify(ctx, data, file); err != nil {
		return "", err
	}
	before = filepath.Join(s.folder, "before-restore-"+s.now().UTC().Format("20060102-150405.000")+".backup")
	if err := s.Backup(ctx, before); err != nil {
		return "", err
	}
	return before, s.replaceBy(ctx, data)
}

// unpack writes the data file of a backup to a place of its own.
func unpack(to, backup string) error {
	in, size, err := openFile(backup)
	if err != nil {
		return err
	}
	defer in.Close()
	a, err := openArchive(in, size, backupFormat)
	if err != nil {
		return err
	}
	e, ok := a.entryAt(dataEntry)
	if !ok || len(a.Files) != 1 {
		return &DamageError{dataEntry, "does not stand there alone", nil}
	}
	out, err := os.Create(to)
	if err != nil {
		return &TroubleError{to + " cannot be written", "check that the disk has room", err}
	}
	return errors.Join(a.copy(out, e, mostEntry), out.Close())
}

// openFile opens an archive on disk.
func openFile(name string) (*os.File, int64, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, 0, &TroubleError{name + " cannot be read", "check its name and that you may read it", err}
	}
	info, err := f.Stat()
	if err != nil || !info.Mode().IsRegular() {
		f.Close()
		return nil, 0, &TroubleError{name + " is no file", "name the archive itself", err}
	}
	return f, info.Size(), nil
}

// verify checks a backup's data file as a whole and brings it up to date. Name
// is what messages call it.
func verify(ctx context.Context, data, name string) error {
	damaged := func(cause error) error {
		return &TroubleError{name + " is damaged or is no backup of Steelyard, and nothing was restored", "use another backup", cause}
	}
	db, err := connect(data, patience)
	if err != nil {
		return damaged(err)
	}
	defer db.Close()
	for _, check := range []string{`PRAGMA integrity_check`, `SELECT coalesce(max("table"), 'ok') FROM pragma_foreign_key_check`} {
		var said string
		if err := db.QueryRowContext(ctx, check).Scan(&said); err != nil || said != "ok" {
			return damaged(errors.Join(err, errors.New(said)))
		}
	}
	var marked int
	if err := db.QueryRowContext(ctx, `PRAGMA application_id`).Scan(&marked); err != nil || marked != applicationID {
		return damaged(err)
	}
	var newer *NewerError
	switch _, err = migrate(ctx, db, name); {
	case errors.As(err, &newer):
		return err
	case err != nil:
		return damaged(err)
	}
	return photosHold(ctx, db, damaged)
}

// photosHold checks every photo against its own name.
func photosHold(ctx context.Context, db *sql.DB, damaged func(error) error) error {
	rows, err := db.QueryContext(ctx, `SELECT id, data FROM photo`)
	if err != nil {
		return damaged(err)
	}
	defer rows.Close()
	for rows.Next() {
		var id string
		var data []byte
		if err := rows.Scan(&id, &data); err != nil || Digest(data) != id {
			return damaged(errors.Join(err, fmt.Errorf("photo %s is not what it was", id)))
		}
	}
	if err := rows.Err(); err != nil {
		return damaged(err)
	}
	return nil
}

// replaceBy copies all tables of another file into this one.
func (s *Store) replaceBy(ctx context.Context, other string) error {
	conn, err := s.db.Conn(ctx)
	if err != nil {
		return s.trouble(err)
	}
	defer conn.Close()
	if _, err := conn.ExecContext(ctx, `ATTACH ?1 AS other`, other); err != nil {
		return s.trouble(err)
	}
	defer conn.ExecContext(context.WithoutCancel(ctx), `DETACH other`)
	tx, err := conn.BeginTx(ctx, nil)
	if err != nil {
		return s.trouble(err)
	}
	defer tx.Rollback()
	if err := s.swap(ctx, tx); err != nil {
		return s.trouble(err)
	}
	return s.trouble(tx.Commit())
}

// swap does so in a transaction with the other file attached.
func (s *Store) swap(ctx context.Context, tx *sql.Tx) error {
	script := []string{`CREATE TEMP TABLE reached AS SELECT id, revision FROM main.sheet`, `DELETE FROM main.evaluation`}
	for i := len(tables) - 1; i >= 0; i-- {
		script = append(script, `DELETE FROM main.`+tables[i])
	}
	for _, t := range tables {
		names, err := columns(ctx, tx, t)
		if err != nil {
			return err
		}
		script = append(script, fmt.Sprintf(`INSERT INTO main.%s (%s) SELECT %s FROM other.%s`, t, names, names, t))
	}
	for _, q := range script {
		if _, err := tx.ExecContext(ctx, q); err != nil {
			return err
		}
	}
	const goOn = `INSERT INTO main.revision (sheet, number, saved, what, text, undo, redo, undos, redos)
		SELECT r.sheet, max(r.number, coalesce(w.revision, 0)) + 1, ?1, 'restored', r.text, r.undo, r.redo, r.undos, r.redos
		FROM main.sheet s JOIN main.revision r ON r.sheet = s.id AND r.number = s.revision LEFT JOIN reached w ON w.id = s.id`
	if _, err := tx.ExecContext(ctx, goOn, s.stamp()); err != nil {
		return err
	}
	_, err := tx.ExecContext(ctx, `UPDATE main.sheet SET revision = (SELECT max(number) FROM main.revision WHERE sheet = id); DROP TABLE reached`)
	return err
}

// columns lists a table's columns, ready for SQL.
func columns(ctx context.Context, tx *sql.Tx, table string) (string, error) {
	rows, err := tx.QueryContext(ctx, `SELECT name FROM pragma_table_info(?1, 'main')`, table)
	if err != nil {
		return "", err
	}
	defer rows.Close()
	var names []string
	for rows.Next() {
		var n string
		if err := rows.Scan(&n); err != nil {
			return "", err
		}
		names = append(names, `"`+n+`"`)
	}
	return strings.Join(names, ", "), rows.Err()
}
