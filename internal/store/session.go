package store

import (
	"context"
	"database/sql"
	"errors"
	"time"
)

// sessionLife is how long a browser is remembered.
const sessionLife = 90 * 24 * time.Hour

// PutSession remembers a browser by the digest of its cookie, and drops those
// that are too old.
func (s *Store) PutSession(ctx context.Context, digest string) error {
	return s.write(ctx, func(tx *sql.Tx) error {
		if _, err := tx.ExecContext(ctx, `DELETE FROM session WHERE made < ?1`, s.oldest()); err != nil {
			return err
		}
		_, err := tx.ExecContext(ctx, `INSERT INTO session (digest, made) VALUES (?1, ?2)`, digest, s.stamp())
		return err
	})
}

// HasSession reports whether a browser is remembered.
func (s *Store) HasSession(ctx context.Context, digest string) (bool, error) {
	var made string
	err := s.db.QueryRowContext(ctx, `SELECT made FROM session WHERE digest = ?1 AND made >= ?2`, digest, s.oldest()).Scan(&made)
	if errors.Is(err, sql.ErrNoRows) {
		return false, nil
	}
	return err == nil, s.trouble(err)
}

func (s *Store) oldest() string { return s.now().Add(-sessionLife).UTC().Format(time.RFC3339Nano) }
