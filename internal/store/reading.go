package store

import (
	"context"
	"database/sql"
)

// Reading is a force read off a scale at a machine.
type Reading struct {
	Travel   float64 // m along the contact's path from the start
	Force    float64 // N along the path
	Plus     float64 // N, ±; 0 if none is known
	Settings string  // JSON, that it was read with
	Note     string
}

// SetReadings replaces all readings of a sheet.
func (s *Store) SetReadings(ctx context.Context, sheet string, all []Reading) error {
	return s.write(ctx, func(tx *sql.Tx) error {
		if _, err := sheetByID(ctx, tx, sheet); err != nil {
			return err
		}
		return setReadings(ctx, tx, sheet, all)
	})
}

func setReadings(ctx context.Context, tx *sql.Tx, sheet string, all []Reading) error {
	if _, err := tx.ExecContext(ctx, `DELETE FROM reading WHERE sheet = ?1`, sheet); err != nil {
		return err
	}
	for i, r := range all {
		_, err := tx.ExecContext(ctx, `INSERT INTO reading (sheet, number, travel, force, plus, settings, note) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)`,
			sheet, i+1, r.Travel, r.Force, r.Plus, r.Settings, r.Note)
		if err != nil {
			return err
		}
	}
	return nil
}

// Readings returns the readings of a sheet in the order given.
func (s *Store) Readings(ctx context.Context, sheet string) ([]Reading, error) {
	all, err := readingsOf(ctx, s.db, sheet)
	return all, s.trouble(err)
}

func readingsOf(ctx context.Context, q querier, sheet string) ([]Reading, error) {
	rows, err := q.QueryContext(ctx, `SELECT travel, force, plus, settings, note FROM reading WHERE sheet = ?1 ORDER BY number`, sheet)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var all []Reading
	for rows.Next() {
		var r Reading
		if err := rows.Scan(&r.Travel, &r.Force, &r.Plus, &r.Settings, &r.Note); err != nil {
			return nil, err
		}
		all = append(all, r)
	}
	return all, rows.Err()
}
