package store

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"unicode"
)

// exportedSheet tells of a sheet in an archive what its text does not.
type exportedSheet struct {
	Path     string            `json:"path"`
	ID       string            `json:"id"`
	Kind     string            `json:"kind"`
	Name     string            `json:"name"` // if the text cannot be read
	Demo     string            `json:"demo,omitempty"`
	Backdrop *exportedBackdrop `json:"backdrop,omitempty"`
	Readings []Reading         `json:"readings,omitempty"`
}

type exportedBackdrop struct {
	Photo  string          `json:"photo"` // its id
	Survey json.RawMessage `json:"survey"`
}

type exportedPhoto struct {
	Path   string `json:"path"`
	Type   string `json:"type"`
	Width  int    `json:"width"`
	Height int    `json:"height"`
}

// Export writes every sheet that is not removed, as it now stands, and every
// photo, as one plain zip: sheets/KIND/NAME.yaml, photos/SHA-256, and a list
// with digests. Histories stay behind; [Store.Backup] has them.
func (s *Store) Export(ctx context.Context, w io.Writer) error {
	a := newWriter(w, exportFormat, s.stamp())
	sheets, err := s.Sheets(ctx)
	if err != nil {
		return err
	}
	for _, sh := range sheets {
		if sh.Removed {
			continue
		}
		if err := s.exportSheet(ctx, a, sh); err != nil {
			return err
		}
	}
	if err := s.exportPhotos(ctx, a); err != nil {
		return err
	}
	return a.close()
}

// ExportTo writes the archive to a new file, as a whole or not at all.
func (s *Store) ExportTo(ctx context.Context, file string) error {
	return writeNew(file, func(_ string, w io.Writer) error { return s.Export(ctx, w) })
}

func (s *Store) exportSheet(ctx context.Context, a *writer, sh Sheet) error {
	x := exportedSheet{Path: fmt.Sprintf("sheets/%s/%s-%s.yaml", sh.Kind, slug(sh.Name), sh.ID), ID: sh.ID, Kind: sh.Kind, Name: sh.Name, Demo: sh.Demo}
	b, has, err := s.Backdrop(ctx, sh.ID)
	if err != nil {
		return err
	}
	if has {
		x.Backdrop = &exportedBackdrop{b.Photo.ID, json.RawMessage(b.Survey)}
	}
	if x.Readings, err = s.Readings(ctx, sh.ID); err != nil {
		return err
	}
	a.Sheets = append(a.Sheets, x)
	return a.add(x.Path, strings.NewReader(sh.Text))
}

func (s *Store) exportPhotos(ctx context.Context, a *writer) error {
	ids, err := s.photoIDs(ctx)
	if err != nil {
		return err
	}
	for _, id := range ids {
		p, err := s.Photo(ctx, id)
		if err != nil {
			return err
		}
		path := "photos/" + id + map[string]string{"image/jpeg": ".jpg", "image/png": ".png"}[p.Type]
		a.Photos = append(a.Photos, exportedPhoto{path, p.Type, p.Width, p.Height})
		if err := a.add(path, bytes.NewReader(p.Data)); err != nil {
			return err
		}
	}
	return nil
}

func (s *Store) photoIDs(ctx context.Context) ([]string, error) {
	rows, err := s.db.QueryContext(ctx, `SELECT id FROM photo ORDER BY id`)
	if err != nil {
		return nil, s.trouble(err)
	}
	defer rows.Close()
	var ids []string
	for rows.Next() {
		var id string
		if err := rows.Scan(&id); err != nil {
			return nil, s.trouble(err)
		}
		ids = append(ids, id)
	}
	return ids, s.trouble(rows.Err())
}

// slug makes a file name of a sheet's name: letters and digits of any script,
// the rest as single hyphens, at most 40 characters.
func slug(name string) string {
	var out []rune
	for _, r := range strings.ToLower(name) {
		switch {
		case len(out) == 40:
			return strings.Trim(string(out), "-")
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			out = append(out, r)
		case len(out) > 0 && out[len(out)-1] != '-':
			out = append(out, '-')
		}
	}
	return strings.Trim(string(out), "-")
}
