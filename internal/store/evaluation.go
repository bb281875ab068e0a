package store

import (
	"context"
	"database/sql"
	"errors"
)

// mostEvaluations is how many results are kept; the oldest go first. At 100 kB
// each that is 50 MB.
const mostEvaluations = 500

// Evaluation returns what the engine of that version made of an input, by the
// input's digest; false if it is not kept.
func (s *Store) Evaluation(ctx context.Context, input, engine string) ([]byte, bool, error) {
	var result []byte
	err := s.db.QueryRowContext(ctx, `SELECT result FROM evaluation WHERE input = ?1 AND engine = ?2`, input, engine).Scan(&result)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, false, nil
	}
	return result, err == nil, s.trouble(err)
}

// PutEvaluation keeps a result in place of any other engine's.
func (s *Store) PutEvaluation(ctx context.Context, input, engine string, result []byte) error {
	return s.write(ctx, func(tx *sql.Tx) error {
		_, err := tx.ExecContext(ctx, `INSERT INTO evaluation (input, engine, made, result) VALUES (?1, ?2, ?3, ?4)
			ON CONFLICT (input) DO UPDATE SET engine = excluded.engine, made = excluded.made, result = excluded.result`, input, engine, s.stamp(), result)
		if err != nil {
			return err
		}
		_, err = tx.ExecContext(ctx, `DELETE FROM evaluation WHERE input NOT IN (SELECT input FROM evaluation ORDER BY made DESC LIMIT ?1)`, mostEvaluations)
		return err
	})
}
