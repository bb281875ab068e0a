package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
)

// row is one row of the table revision.
type row struct {
	number       int
	saved, what  string
	text         string
	undo, redo   *int
	undos, redos int
}

func revisionOf(ctx context.Context, q querier, id string, number int) (row, error) {
	r := row{number: number}
	err := q.QueryRowContext(ctx, `SELECT saved, what, text, undo, redo, undos, redos FROM revision WHERE sheet = ?1 AND number = ?2`, id, number).
		Scan(&r.saved, &r.what, &r.text, &r.undo, &r.redo, &r.undos, &r.redos)
	if errors.Is(err, sql.ErrNoRows) {
		err = ErrNotFound
	}
	return r, err
}

// step adds the revision that next makes of the present one.
func (s *Store) step(ctx context.Context, id string, from int, next func(tx *sql.Tx, now row) (row, error)) (Sheet, error) {
	var sh Sheet
	err := s.write(ctx, func(tx *sql.Tx) (err error) {
		sh, err = s.stepIn(ctx, tx, id, from, next)
		return err
	})
	return sh, err
}

func (s *Store) stepIn(ctx context.Context, tx *sql.Tx, id string, from int, next func(tx *sql.Tx, now row) (row, error)) (Sheet, error) {
	sh, err := sheetByID(ctx, tx, id)
	if err != nil {
		return sh, err
	}
	if sh.Revision != from {
		return sh, &ConflictError{From: from, Current: sh}
	}
	now, err := revisionOf(ctx, tx, id, from)
	if err != nil {
		return sh, err
	}
	r, err := next(tx, now)
	if err != nil {
		return sh, err
	}
	if err := s.add(ctx, tx, sh, r); err != nil {
		return sh, err
	}
	return sheetByID(ctx, tx, id)
}

// add writes r as the next revision of a sheet.
func (s *Store) add(ctx context.Context, tx *sql.Tx, sh Sheet, r row) error {
	name := sh.Name
	if kind, n, ok := Heading(r.text); ok {
		if kind != sh.Kind {
			return &TextError{fmt.Sprintf("%q is a %s and the text describes a %s", sh.Name, sh.Kind, kind), "store the text as a new sheet"}
		}
		name = n
	}
	number := sh.Revision + 1
	_, err := tx.ExecContext(ctx, `INSERT INTO revision (sheet, number, saved, what, text, undo, redo, undos, redos) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)`,
		sh.ID, number, s.stamp(), r.what, r.text, r.undo, r.redo, r.undos, r.redos)
	if err != nil {
		return err
	}
	_, err = tx.ExecContext(ctx, `UPDATE sheet SET revision = ?2, name = ?3 WHERE id = ?1`, sh.ID, number, name)
	return err
}

// Undo takes back the last change: it adds a revision with the text from
// before. Errors: ErrNotFound, ErrNothingToUndo, *ConflictError.
func (s *Store) Undo(ctx context.Context, id string, from int) (Sheet, error) {
	return s.step(ctx, id, from, func(tx *sql.Tx, now row) (row, error) {
		if now.undo == nil {
			return row{}, ErrNothingToUndo
		}
		to, err := revisionOf(ctx, tx, id, *now.undo)
		return row{what: "undone", text: to.text, undo: to.undo, undos: to.undos, redo: &now.number, redos: now.redos + 1}, err
	})
}

// Redo brings back what Undo took. Errors: ErrNotFound, ErrNothingToRedo,
// *ConflictError.
func (s *Store) Redo(ctx context.Context, id string, from int) (Sheet, error) {
	return s.step(ctx, id, from, func(tx *sql.Tx, now row) (row, error) {
		if now.redo == nil {
			return row{}, ErrNothingToRedo
		}
		to, err := revisionOf(ctx, tx, id, *now.redo)
		return row{what: "redone", text: to.text, undo: &now.number, undos: now.undos + 1, redo: to.redo, redos: to.redos}, err
	})
}

// Remove hides a sheet; Recover brings it back.
func (s *Store) Remove(ctx context.Context, id string, from int) (Sheet, error) {
	var sh Sheet
	err := s.write(ctx, func(tx *sql.Tx) (err error) {
		sh, err = s.hide(ctx, tx, id, from, true)
		return err
	})
	return sh, err
}

// Recover shows a removed sheet again, as it was.
func (s *Store) Recover(ctx context.Context, id string) (Sheet, error) {
	var sh Sheet
	err := s.write(ctx, func(tx *sql.Tx) (err error) {
		if sh, err = sheetByID(ctx, tx, id); err != nil || !sh.Removed {
			return err
		}
		sh, err = s.hide(ctx, tx, id, sh.Revision, false)
		return err
	})
	return sh, err
}

// hide hides or shows a sheet. It adds a revision too, so that another page
// that still has it open finds out.
func (s *Store) hide(ctx context.Context, tx *sql.Tx, id string, from int, hidden bool) (Sheet, error) {
	what := map[bool]string{true: "removed", false: "brought back"}[hidden]
	_, err := s.stepIn(ctx, tx, id, from, func(_ *sql.Tx, now row) (row, error) {
		now.what = what
		return now, nil
	})
	if err != nil {
		return Sheet{}, err
	}
	if _, err := tx.ExecContext(ctx, `UPDATE sheet SET removed = ?2 WHERE id = ?1`, id, hidden); err != nil {
		return Sheet{}, err
	}
	return sheetByID(ctx, tx, id)
}

// Forget erases a removed sheet for good, with its history and, if no other
// sheet shows it, its photo. A sheet that is not removed is left alone, with
// ErrNotFound.
func (s *Store) Forget(ctx context.Context, id string) error {
	return s.write(ctx, func(tx *sql.Tx) error {
		b, err := backdropOf(ctx, tx, id)
		if err != nil && !errors.Is(err, sql.ErrNoRows) {
			return err
		}
		done, err := tx.ExecContext(ctx, `DELETE FROM sheet WHERE id = ?1 AND removed = 1`, id)
		if err != nil {
			return err
		}
		if n, err := done.RowsAffected(); err != nil || n == 0 {
			return errors.Join(ErrNotFound, err)
		}
		_, err = tx.ExecContext(ctx, `DELETE FROM photo WHERE id = ?1 AND id NOT IN (SELECT photo FROM backdrop)`, b.Photo.ID)
		return err
	})
}

// Revision is one state a sheet has had.
type Revision struct {
	Number      int
	Saved, What string
	Text        string
}

// History returns the newest states of a sheet, newest first, at most so many.
func (s *Store) History(ctx context.Context, id string, most int) ([]Revision, error) {
	rows, err := s.db.QueryContext(ctx, `SELECT number, saved, what, text FROM revision WHERE sheet = ?1 ORDER BY number DESC LIMIT ?2`, id, most)
	if err != nil {
		return nil, s.trouble(err)
	}
	defer rows.Close()
	var all []Revision
	for rows.Next() {
		var r Revision
		if err := rows.Scan(&r.Number, &r.Saved, &r.What, &r.Text); err != nil {
			return nil, s.trouble(err)
		}
		all = append(all, r)
	}
	if len(all) == 0 && rows.Err() == nil {
		return nil, ErrNotFound
	}
	return all, s.trouble(rows.Err())
}

// TextAt returns the text a sheet had at a revision, or ErrNotFound.
func (s *Store) TextAt(ctx context.Context, id string, number int) (string, error) {
	r, err := revisionOf(ctx, s.db, id, number)
	return r.text, s.trouble(err)
}
