package store

import (
	"context"
	"crypto/rand"
	"database/sql"
	"encoding/hex"
	"errors"
	"fmt"
	"slices"
	"strings"
)

// MostText is the largest text a sheet may have, in bytes.
const MostText = 256 << 10

// Sheet is a stored sheet as it now stands.
type Sheet struct {
	ID       string
	Kind     string
	Name     string
	Text     string // YAML, byte for byte as it was given
	Revision int
	Saved    string // RFC 3339, UTC
	Undos    int    // steps that can be undone
	Redos    int
	Removed  bool
	Demo     string // its file in the demo room, else empty
}

// NewID returns a name for something stored: 64 random bits in hexadecimal.
func NewID() string {
	var b [8]byte
	rand.Read(b[:])
	return hex.EncodeToString(b[:])
}

// querier is a database or a transaction.
type querier interface {
	QueryRowContext(ctx context.Context, query string, args ...any) *sql.Row
	QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error)
}

const sheetColumns = `s.id, s.kind, s.name, r.text, r.number, r.saved, r.undos, r.redos, s.removed, s.demo
	FROM sheet s JOIN revision r ON r.sheet = s.id AND r.number = s.revision`

func scanSheet(row interface{ Scan(...any) error }) (Sheet, error) {
	var s Sheet
	err := row.Scan(&s.ID, &s.Kind, &s.Name, &s.Text, &s.Revision, &s.Saved, &s.Undos, &s.Redos, &s.Removed, &s.Demo)
	if errors.Is(err, sql.ErrNoRows) {
		err = ErrNotFound
	}
	return s, err
}

func sheetByID(ctx context.Context, q querier, id string) (Sheet, error) {
	return scanSheet(q.QueryRowContext(ctx, `SELECT `+sheetColumns+` WHERE s.id = ?1`, id))
}

// Sheet returns the sheet under an id, removed or not, or ErrNotFound.
func (s *Store) Sheet(ctx context.Context, id string) (Sheet, error) {
	sh, err := sheetByID(ctx, s.db, id)
	return sh, s.trouble(err)
}

// Sheets returns all sheets, removed ones too, by kind, name and id.
func (s *Store) Sheets(ctx context.Context) ([]Sheet, error) {
	all, err := sheetsOf(ctx, s.db)
	return all, s.trouble(err)
}

func sheetsOf(ctx context.Context, q querier) ([]Sheet, error) {
	rows, err := q.QueryContext(ctx, `SELECT `+sheetColumns+` ORDER BY s.kind, s.name, s.id`)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var all []Sheet
	for rows.Next() {
		sh, err := scanSheet(rows)
		if err != nil {
			return nil, err
		}
		all = append(all, sh)
	}
	return all, rows.Err()
}

// Create stores a text under a new id. Demo is its file in the demo room, or
// empty. The text's first lines must say its kind; see [Heading].
func (s *Store) Create(ctx context.Context, text, demo string) (Sheet, error) {
	var sh Sheet
	err := s.write(ctx, func(tx *sql.Tx) (err error) {
		sh, err = s.create(ctx, tx, Sheet{ID: NewID(), Text: text, Demo: demo}, "created")
		return err
	})
	return sh, err
}

// create stores the first revision of a sheet. Kind and name are those its text
// says, or else those given.
func (s *Store) create(ctx context.Context, tx *sql.Tx, sh Sheet, what string) (Sheet, error) {
	if err := fits(sh.Text); err != nil {
		return sh, err
	}
	if kind, name, ok := Heading(sh.Text); ok {
		sh.Kind, sh.Name = kind, name
	}
	if !slices.Contains(kinds, sh.Kind) {
		return sh, &TextError{"the sheet does not say its kind", "start it with a line such as `steelyard: machine 1`; the kinds are machine, person, room and plan"}
	}
	_, err := tx.ExecContext(ctx, `INSERT INTO sheet (id, kind, name, revision, demo) VALUES (?1, ?2, ?3, 1, ?4)`, sh.ID, sh.Kind, sh.Name, sh.Demo)
	if err != nil {
		return sh, err
	}
	_, err = tx.ExecContext(ctx, `INSERT INTO revision (sheet, number, saved, what, text, undos, redos) VALUES (?1, 1, ?2, ?3, ?4, 0, 0)`, sh.ID, s.stamp(), what, sh.Text)
	if err != nil {
		return sh, err
	}
	return sheetByID(ctx, tx, sh.ID)
}

// Write replaces a sheet's text. What says how, for the history. A text that
// cannot be read is kept too, under the name the sheet had: what somebody typed
// is not thrown away. Errors: ErrNotFound, *ConflictError, *TextError.
func (s *Store) Write(ctx context.Context, id string, from int, text, what string) (Sheet, error) {
	return s.step(ctx, id, from, func(_ *sql.Tx, now row) (row, error) {
		if err := fits(text); err != nil {
			return row{}, err
		}
		return row{what: what, text: text, undo: &now.number, undos: now.undos + 1}, nil
	})
}

// TextError says why a text cannot be a sheet at all.
type TextError struct{ Problem, Cure string }

func (e *TextError) Error() string { return e.Problem + "; " + e.Cure }

func fits(text string) error {
	switch {
	case len(text) > MostText:
		return &TextError{fmt.Sprintf("the sheet has %d kB and may have %d kB", len(text)>>10, MostText>>10), "leave out what is no part of it"}
	case strings.ContainsRune(text, 0):
		return &TextError{"the sheet has a byte that is no text", "save it as plain UTF-8 text"}
	case strings.ToValidUTF8(text, "") != text:
		return &TextError{"the sheet is no UTF-8 text", "save it as plain UTF-8 text"}
	}
	return nil
}
