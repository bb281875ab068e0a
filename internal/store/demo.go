package store

import (
	"context"
	"database/sql"
	"errors"
	"slices"
)

// File is a sheet by the name of its file.
type File struct {
	Name string
	Data []byte
}

// FillDemo shows every sheet of the demo room: those that were removed as they
// last stood, those that never were here new. With once it does nothing the
// second time.
func (s *Store) FillDemo(ctx context.Context, files []File, once bool) error {
	return s.write(ctx, func(tx *sql.Tx) error {
		if once {
			var at string
			err := tx.QueryRowContext(ctx, `SELECT at FROM done WHERE what = 'demo'`).Scan(&at)
			if !errors.Is(err, sql.ErrNoRows) {
				return err
			}
		}
		if _, err := tx.ExecContext(ctx, `INSERT INTO done (what, at) VALUES ('demo', ?1) ON CONFLICT DO NOTHING`, s.stamp()); err != nil {
			return err
		}
		return s.fillDemo(ctx, tx, files)
	})
}

func (s *Store) fillDemo(ctx context.Context, tx *sql.Tx, files []File) error {
	all, err := sheetsOf(ctx, tx)
	if err != nil {
		return err
	}
	for _, f := range files {
		i := slices.IndexFunc(all, func(sh Sheet) bool { return sh.Demo == f.Name })
		switch {
		case i < 0:
			_, err = s.create(ctx, tx, Sheet{ID: NewID(), Text: string(f.Data), Demo: f.Name}, "created")
		case all[i].Removed:
			_, err = s.hide(ctx, tx, all[i].ID, all[i].Revision, false)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// RemoveDemo removes every sheet of the demo room, edited or not. Each can be
// recovered.
func (s *Store) RemoveDemo(ctx context.Context) error {
	return s.write(ctx, func(tx *sql.Tx) error {
		all, err := sheetsOf(ctx, tx)
		if err != nil {
			return err
		}
		for _, sh := range all {
			if sh.Demo == "" || sh.Removed {
				continue
			}
			if _, err := s.hide(ctx, tx, sh.ID, sh.Revision, true); err != nil {
				return err
			}
		}
		return nil
	})
}
