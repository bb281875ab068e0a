package store

import (
	"archive/zip"
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"strings"
)

// An archive is a zip file that lists what it holds, with digests, in its entry
// manifest.json. There are two formats of it.
const (
	backupFormat = "steelyard backup 1"
	exportFormat = "steelyard archive 1"
	manifestName = "manifest.json"
)

// Bounds on what an archive may hold.
const (
	mostEntries  = 20_000
	mostManifest = 32 << 20
	mostEntry    = 8 << 30  // of a backup's data file
	mostPhoto    = 25 << 20 // as for uploads
)

// manifest is the list in an archive.
type manifest struct {
	Format string          `json:"format"`
	Made   string          `json:"made"` // RFC 3339, UTC
	Files  []entry         `json:"files"`
	Sheets []exportedSheet `json:"sheets,omitempty"`
	Photos []exportedPhoto `json:"photos,omitempty"`
}

// entry is one file of an archive.
type entry struct {
	Path   string `json:"path"`
	Bytes  int64  `json:"bytes"`
	SHA256 string `json:"sha256"`
}

// DamageError says what is wrong with an archive. Nothing was taken from it.
type DamageError struct {
	Part    string // of the archive; empty for all of it
	Problem string
	Cause   error
}

func (e *DamageError) Error() string {
	if e.Part == "" {
		return "the archive " + e.Problem + ", so nothing was taken from it; use another copy"
	}
	return fmt.Sprintf("%q in the archive %s, so nothing was taken from it; use another copy", shorten(e.Part), e.Problem)
}

// Unwrap returns the cause.
func (e *DamageError) Unwrap() error { return e.Cause }

func shorten(text string) string {
	const most = 80
	if r := []rune(text); len(r) > most {
		return string(r[:most]) + "…"
	}
	return text
}

// writer writes an archive.
type writer struct {
	zip *zip.Writer
	manifest
}

func newWriter(w io.Writer, format, made string) *writer {
	return &writer{zip.NewWriter(w), manifest{Format: format, Made: made, Files: []entry{}}}
}

// add writes one file and lists it.
func (w *writer) add(path string, from io.Reader) error {
	out, err := w.zip.Create(path)
	if err != nil {
		return err
	}
	sum := sha256.New()
	n, err := io.Copy(io.MultiWriter(out, sum), from)
	w.Files = append(w.Files, entry{path, n, hex.EncodeToString(sum.Sum(nil))})
	return err
}

// close writes the list.
func (w *writer) close() error {
	list, err := json.MarshalIndent(w.manifest, "", " ")
	if err != nil {
		return err
	}
	out, err := w.zip.Create(manifestName)
	if err != nil {
		return err
	}
	if _, err := out.Write(append(list, '\n')); err != nil {
		return err
	}
	return w.zip.Close()
}

// archive is one that has been opened, and whose list fits its files.
type archive struct {
	manifest
	files map[string]*zip.File
}

// openArchive reads an archive's list. The files themselves are checked as they
// are read.
func openArchive(r io.ReaderAt, size int64, format string) (*archive, error) {
	z, err := zip.NewReader(r, size)
	if err != nil {
		return nil, &DamageError{"", "is no zip file, or it is cut short", err}
	}
	if len(z.File) > mostEntries {
		return nil, &DamageError{"", fmt.Sprintf("holds %d files and may hold %d", len(z.File), mostEntries), nil}
	}
	a := &archive{files: map[string]*zip.File{}}
	for _, f := range z.File {
		switch {
		case !fs.ValidPath(f.Name) || strings.ContainsAny(f.Name, `\:`) || !f.Mode().IsRegular():
			return nil, &DamageError{f.Name, "is no plain file inside it", nil}
		case a.files[f.Name] != nil:
			return nil, &DamageError{f.Name, "stands there twice", nil}
		}
		a.files[f.Name] = f
	}
	return a, a.readManifest(format)
}

func (a *archive) readManifest(format string) error {
	if a.files[manifestName] == nil {
		return &DamageError{manifestName, "is missing", nil}
	}
	data, err := a.bytes(manifestName, mostManifest)
	if err != nil {
		return err
	}
	if err := json.Unmarshal(data, &a.manifest); err != nil {
		return &DamageError{manifestName, "cannot be read", err}
	}
	if a.Format != format {
		return &DamageError{manifestName, fmt.Sprintf("says %q where %q is wanted", shorten(a.Format), format), nil}
	}
	listed := map[string]bool{manifestName: true}
	for _, e := range a.Files {
		if a.files[e.Path] == nil {
			return &DamageError{e.Path, "is listed and missing", nil}
		}
		listed[e.Path] = true
	}
	for name := range a.files {
		if !listed[name] {
			return &DamageError{name, "is not in its list", nil}
		}
	}
	return nil
}

// copy writes one listed file to w and checks it on the way, so what was
// written counts only if no error comes back.
func (a *archive) copy(w io.Writer, e entry, most int64) error {
	if e.Bytes < 0 || e.Bytes > most {
		return &DamageError{e.Path, fmt.Sprintf("has %d bytes and may have %d", e.Bytes, most), nil}
	}
	from, err := a.files[e.Path].Open()
	if err != nil {
		return &DamageError{e.Path, "cannot be read", err}
	}
	defer from.Close()
	sum := sha256.New()
	written := &countingWriter{w: io.MultiWriter(w, sum)}
	_, err = io.Copy(written, io.LimitReader(from, e.Bytes+1))
	switch {
	case written.err != nil:
		return written.err
	case err != nil:
		return &DamageError{e.Path, "is damaged", err}
	case written.n != e.Bytes || hex.EncodeToString(sum.Sum(nil)) != e.SHA256:
		return &DamageError{e.Path, "is not what was put in", nil}
	}
	return nil
}

// countingWriter keeps the errors of writing apart from those of reading.
type countingWriter struct {
	w   io.Writer
	n   int64
	err error
}

func (c *countingWriter) Write(p []byte) (int, error) {
	n, err := c.w.Write(p)
	c.n += int64(n)
	c.err = errors.Join(c.err, err)
	return n, err
}

// entryAt returns the list's entry for a path.
func (a *archive) entryAt(path string) (entry, bool) {
	for _, e := range a.Files {
		if e.Path == path {
			return e, true
		}
	}
	return entry{}, false
}

// checked returns one listed file, checked.
func (a *archive) checked(e entry, most int64) ([]byte, error) {
	var b bytes.Buffer
	err := a.copy(&b, e, most)
	return b.Bytes(), err
}

// bytes returns a file that has no digest.
func (a *archive) bytes(name string, most int64) ([]byte, error) {
	from, err := a.files[name].Open()
	if err != nil {
		return nil, &DamageError{name, "cannot be read", err}
	}
	defer from.Close()
	data, err := io.ReadAll(io.LimitReader(from, most+1))
	if err != nil {
		return nil, &DamageError{name, "is damaged", err}
	}
	if int64(len(data)) > most {
		return nil, &DamageError{name, fmt.Sprintf("has more than %d bytes", most), nil}
	}
	return data, nil
}
