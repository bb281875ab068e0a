package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
)

// Imported counts what an archive brought.
type Imported struct {
	New     int // sheets that were not here
	Changed int // that were, with another text: kept as a step that can be undone
	Same    int
	Photos  int
}

// Check looks at a photo's bytes and returns its type and size in pixels.
type Check func(data []byte) (kind string, width, height int, err error)

// Import takes everything from an archive that [Store.Export] wrote, in one
// transaction. All of it is checked first, each file against its digest and
// each photo by check; a *[DamageError] then says what is wrong, and nothing
// was taken.
func (s *Store) Import(ctx context.Context, r io.ReaderAt, size int64, check Check) (Imported, error) {
	var sum Imported
	a, err := openArchive(r, size, exportFormat)
	if err != nil {
		return sum, err
	}
	in, err := a.parcel(check)
	if err != nil {
		return sum, err
	}
	err = s.write(ctx, func(tx *sql.Tx) error {
		sum = Imported{Photos: len(a.Photos)}
		for _, e := range a.Photos {
			p, err := a.photo(e, check)
			if err != nil {
				return err
			}
			if err := s.putPhoto(ctx, tx, p); err != nil {
				return err
			}
		}
		for _, x := range in {
			if err := s.take(ctx, tx, x, &sum); err != nil {
				return err
			}
		}
		return nil
	})
	return sum, err
}

// ImportFrom imports an archive on disk.
func (s *Store) ImportFrom(ctx context.Context, file string, check Check) (Imported, error) {
	f, size, err := openFile(file)
	if err != nil {
		return Imported{}, err
	}
	defer f.Close()
	return s.Import(ctx, f, size, check)
}

// arrival is a sheet that has been checked.
type arrival struct {
	exportedSheet
	text string
}

var plainID = regexp.MustCompile(`^[0-9a-f]{16}$`)

// parcel checks everything in the archive and returns its sheets. Photos are
// read twice, here and when they are stored, so that only one is held at once.
func (a *archive) parcel(check Check) ([]arrival, error) {
	if len(a.Files) != len(a.Sheets)+len(a.Photos) {
		return nil, &DamageError{manifestName, fmt.Sprintf("lists %d files, but %d sheets and %d photos", len(a.Files), len(a.Sheets), len(a.Photos)), nil}
	}
	photos := map[string]bool{}
	for _, e := range a.Photos {
		p, err := a.photo(e, check)
		if err != nil {
			return nil, err
		}
		photos[p.ID] = true
	}
	var all []arrival
	for _, x := range a.Sheets {
		text, err := a.sheet(x, photos)
		if err != nil {
			return nil, err
		}
		if slices.ContainsFunc(all, func(other arrival) bool { return other.ID == x.ID }) {
			return nil, &DamageError{x.Path, "has the id of another sheet", nil}
		}
		all = append(all, arrival{x, text})
	}
	return all, nil
}

// photo returns a photo whose bytes are those that were put in.
func (a *archive) photo(x exportedPhoto, check Check) (Photo, error) {
	e, ok := a.entryAt(x.Path)
	if !ok {
		return Photo{}, &DamageError{x.Path, "is missing", nil}
	}
	data, err := a.checked(e, mostPhoto)
	if err != nil {
		return Photo{}, err
	}
	kind, w, h, err := check(data)
	if err != nil {
		return Photo{}, &DamageError{x.Path, "is no photo that can be used", err}
	}
	if kind != x.Type || w != x.Width || h != x.Height {
		return Photo{}, &DamageError{x.Path, "is another kind or size of photo than listed", nil}
	}
	return Photo{Digest(data), kind, w, h, data}, nil
}

// sheet returns the text of a sheet that can be stored.
func (a *archive) sheet(x exportedSheet, photos map[string]bool) (string, error) {
	e, ok := a.entryAt(x.Path)
	if !ok {
		return "", &DamageError{x.Path, "is missing", nil}
	}
	data, err := a.checked(e, MostText)
	if err != nil {
		return "", err
	}
	if !plainID.MatchString(x.ID) {
		return "", &DamageError{x.Path, fmt.Sprintf("has the id %q, which is none", shorten(x.ID)), nil}
	}
	if err := fits(string(data)); err != nil {
		return "", &DamageError{x.Path, "is no text of a sheet", err}
	}
	if b := x.Backdrop; b != nil && (!photos[b.Photo] || !json.Valid(b.Survey)) {
		return "", &DamageError{x.Path, "wants a photo that is not there", nil}
	}
	return string(data), nil
}

// take stores one sheet: new, or as the next step of the one with its id.
func (s *Store) take(ctx context.Context, tx *sql.Tx, x arrival, sum *Imported) error {
	sh, err := sheetByID(ctx, tx, x.ID)
	if errors.Is(err, ErrNotFound) && x.Demo != "" {
		here, has, err := demoSheet(ctx, tx, x.Demo)
		switch {
		case err != nil:
			return err
		case has && here.Text == x.text:
			sum.Same++
			return nil
		case has:
			x.Demo = "" // theirs was changed, and stands beside ours
		}
	}
	switch {
	case errors.Is(err, ErrNotFound):
		sum.New++
		_, err = s.create(ctx, tx, Sheet{ID: x.ID, Kind: x.Kind, Name: x.Name, Text: x.text, Demo: x.Demo}, "imported")
	case err == nil && sh.Text == x.text && !sh.Removed:
		sum.Same++
	case err == nil:
		sum.Changed++
		err = s.overtake(ctx, tx, sh, x.text)
	}
	if err != nil {
		return fmt.Errorf("%s: %w", x.Path, err)
	}
	if b := x.Backdrop; b != nil {
		if err := setBackdrop(ctx, tx, x.ID, b.Photo, string(b.Survey)); err != nil {
			return err
		}
	}
	if len(x.Readings) > 0 {
		return setReadings(ctx, tx, x.ID, x.Readings)
	}
	return nil
}

// demoSheet returns the sheet that came from a file of the demo room.
func demoSheet(ctx context.Context, tx *sql.Tx, file string) (Sheet, bool, error) {
	sh, err := scanSheet(tx.QueryRowContext(ctx, `SELECT `+sheetColumns+` WHERE s.demo = ?1`, file))
	if errors.Is(err, ErrNotFound) {
		return sh, false, nil
	}
	return sh, err == nil, err
}

// overtake gives a sheet another text as a step that can be undone, and shows
// it if it was removed.
func (s *Store) overtake(ctx context.Context, tx *sql.Tx, sh Sheet, text string) error {
	_, err := s.stepIn(ctx, tx, sh.ID, sh.Revision, func(_ *sql.Tx, now row) (row, error) {
		return row{what: "imported", text: text, undo: &now.number, undos: now.undos + 1}, nil
	})
	if err != nil {
		return err
	}
	_, err = tx.ExecContext(ctx, `UPDATE sheet SET removed = 0 WHERE id = ?1`, sh.ID)
	return err
}
