package store

import (
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"errors"
)

// Photo is a stored photo.
type Photo struct {
	ID            string // SHA-256 of Data, lower-case hexadecimal
	Type          string // image/jpeg or image/png
	Width, Height int    // pixels
	Data          []byte
}

// Digest returns the SHA-256 of data in lower-case hexadecimal.
func Digest(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

// PutPhoto stores a photo under its digest, once however often it is put.
func (s *Store) PutPhoto(ctx context.Context, p Photo) (Photo, error) {
	p.ID = Digest(p.Data)
	err := s.write(ctx, func(tx *sql.Tx) error { return s.putPhoto(ctx, tx, p) })
	return p, err
}

func (s *Store) putPhoto(ctx context.Context, tx *sql.Tx, p Photo) error {
	_, err := tx.ExecContext(ctx, `INSERT INTO photo (id, type, width, height, added, data) VALUES (?1, ?2, ?3, ?4, ?5, ?6) ON CONFLICT DO NOTHING`,
		p.ID, p.Type, p.Width, p.Height, s.stamp(), p.Data)
	return err
}

// Photo returns a photo, or ErrNotFound.
func (s *Store) Photo(ctx context.Context, id string) (Photo, error) {
	p := Photo{ID: id}
	err := s.db.QueryRowContext(ctx, `SELECT type, width, height, data FROM photo WHERE id = ?1`, id).Scan(&p.Type, &p.Width, &p.Height, &p.Data)
	if errors.Is(err, sql.ErrNoRows) {
		err = ErrNotFound
	}
	return p, s.trouble(err)
}

// Backdrop is the photo behind a machine's drawing.
type Backdrop struct {
	Photo  Photo  // without Data
	Survey string // JSON: how it was surveyed
}

// SetBackdrop puts a photo behind a sheet's drawing; an empty id takes it away.
func (s *Store) SetBackdrop(ctx context.Context, sheet, photo, survey string) error {
	return s.write(ctx, func(tx *sql.Tx) error {
		if _, err := sheetByID(ctx, tx, sheet); err != nil {
			return err
		}
		return setBackdrop(ctx, tx, sheet, photo, survey)
	})
}

func setBackdrop(ctx context.Context, tx *sql.Tx, sheet, photo, survey string) error {
	if photo == "" {
		_, err := tx.ExecContext(ctx, `DELETE FROM backdrop WHERE sheet = ?1`, sheet)
		return err
	}
	done, err := tx.ExecContext(ctx, `INSERT INTO backdrop (sheet, photo, survey) SELECT ?1, id, ?3 FROM photo WHERE id = ?2
		ON CONFLICT (sheet) DO UPDATE SET photo = excluded.photo, survey = excluded.survey`, sheet, photo, survey)
	if err != nil {
		return err
	}
	if n, err := done.RowsAffected(); err != nil || n == 0 {
		return errors.Join(ErrNotFound, err)
	}
	return nil
}

// Backdrop returns the photo behind a sheet's drawing; false without one.
func (s *Store) Backdrop(ctx context.Context, sheet string) (Backdrop, bool, error) {
	b, err := backdropOf(ctx, s.db, sheet)
	if errors.Is(err, sql.ErrNoRows) {
		return b, false, nil
	}
	return b, err == nil, s.trouble(err)
}

func backdropOf(ctx context.Context, q querier, sheet string) (Backdrop, error) {
	var b Backdrop
	p := &b.Photo
	err := q.QueryRowContext(ctx, `SELECT p.id, p.type, p.width, p.height, b.survey FROM backdrop b JOIN photo p ON p.id = b.photo WHERE b.sheet = ?1`, sheet).
		Scan(&p.ID, &p.Type, &p.Width, &p.Height, &b.Survey)
	return b, err
}
