package store

import (
	"archive/zip"
	"bytes"
	"context"
	"errors"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// checkAny takes anything for a photo of one size.
func checkAny([]byte) (string, int, int, error) { return "image/png", 4, 3, nil }

// furnished returns a store with one of everything, and what it holds.
func furnished(t *testing.T) (*Store, map[string]string) {
	t.Helper()
	ctx, s := context.Background(), openAt(t, t.TempDir())
	held := map[string]string{}
	for _, name := range []string{"Oar bench", "../../../etc/cron.d/evil", "<img src=x onerror=alert(1)>", "Ångström ruder 50 %", "con"} {
		sh := create(t, s, machine("'"+name+"'"))
		held[sh.ID] = sh.Text
	}
	p, err := s.PutPhoto(ctx, Photo{Type: "image/png", Width: 4, Height: 3, Data: []byte("a picture")})
	if err != nil {
		t.Fatal(err)
	}
	sh := create(t, s, machine("With photo"))
	broken, err := s.Write(ctx, sh.ID, 1, "not yet: {a sheet\n", "saved")
	if err != nil {
		t.Fatal(err)
	}
	held[sh.ID] = broken.Text
	if err := s.SetBackdrop(ctx, sh.ID, p.ID, `{"mirror":true}`); err != nil {
		t.Fatal(err)
	}
	if err := s.SetReadings(ctx, sh.ID, []Reading{{Travel: 0.1, Force: 200, Plus: 5, Settings: `[]`, Note: "hanging scale"}}); err != nil {
		t.Fatal(err)
	}
	gone := create(t, s, machine("Gone"))
	if _, err := s.Remove(ctx, gone.ID, 1); err != nil {
		t.Fatal(err)
	}
	return s, held
}

// holds compares the visible sheets with what they should be.
func holds(t *testing.T, s *Store, want map[string]string) {
	t.Helper()
	all, err := s.Sheets(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]string{}
	for _, sh := range all {
		if !sh.Removed {
			got[sh.ID] = sh.Text
		}
	}
	if len(got) != len(want) {
		t.Errorf("%d sheets, want %d", len(got), len(want))
	}
	for id, text := range want {
		if got[id] != text {
			t.Errorf("sheet %s: %q, want %q", id, got[id], text)
		}
	}
}

func exported(t *testing.T, s *Store) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := s.Export(context.Background(), &b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestExportIsImported(t *testing.T) {
	ctx := context.Background()
	from, held := furnished(t)
	data := exported(t, from)
	to := openAt(t, t.TempDir())
	sum, err := to.Import(ctx, bytes.NewReader(data), int64(len(data)), checkAny)
	if err != nil || sum != (Imported{New: len(held), Photos: 1}) {
		t.Fatalf("%+v, %v", sum, err)
	}
	holds(t, to, held)
	for id := range held {
		b, has, err := from.Backdrop(ctx, id)
		if err != nil {
			t.Fatal(err)
		}
		b2, has2, err := to.Backdrop(ctx, id)
		if err != nil || has != has2 || b.Photo.ID != b2.Photo.ID {
			t.Errorf("backdrop of %s: %v %+v, want %v %+v (%v)", id, has2, b2, has, b, err)
		}
		r, _ := from.Readings(ctx, id)
		r2, err := to.Readings(ctx, id)
		if err != nil || len(r) != len(r2) || len(r) > 0 && r[0] != r2[0] {
			t.Errorf("readings of %s: %v, want %v (%v)", id, r2, r, err)
		}
	}
	if sum, err = to.Import(ctx, bytes.NewReader(data), int64(len(data)), checkAny); err != nil || sum != (Imported{Same: len(held), Photos: 1}) {
		t.Errorf("a second time: %+v, %v", sum, err)
	}
}

// An import that changes a sheet can be undone.
func TestImportKeepsWhatWasHere(t *testing.T) {
	ctx := context.Background()
	from, _ := furnished(t)
	data := exported(t, from)
	all, _ := from.Sheets(ctx)
	for _, sh := range all {
		if sh.Name != "Oar bench" {
			continue
		}
		mine, err := from.Write(ctx, sh.ID, sh.Revision, machine("mine"), "saved")
		if err != nil {
			t.Fatal(err)
		}
		if _, err = from.Remove(ctx, sh.ID, mine.Revision); err != nil {
			t.Fatal(err)
		}
		sum, err := from.Import(ctx, bytes.NewReader(data), int64(len(data)), checkAny)
		if err != nil || sum.Changed != 1 || sum.New != 0 {
			t.Fatalf("%+v, %v", sum, err)
		}
		now, _ := from.Sheet(ctx, sh.ID)
		if now.Text != sh.Text || now.Removed {
			t.Errorf("got %+v", now)
		}
		if back, err := from.Undo(ctx, sh.ID, now.Revision); err != nil || back.Text != mine.Text {
			t.Errorf("undone to %q, %v", back.Text, err)
		}
	}
}

// Another room's demo machines are not taken a second time, unless somebody has
// changed them there.
func TestDemoRoomsAreNotDoubled(t *testing.T) {
	ctx := context.Background()
	files := []File{{"a.yaml", []byte(machine("A"))}, {"b.yaml", []byte(machine("B"))}}
	from, to := openAt(t, t.TempDir()), openAt(t, t.TempDir())
	for _, s := range []*Store{from, to} {
		if err := s.FillDemo(ctx, files, true); err != nil {
			t.Fatal(err)
		}
	}
	all, _ := from.Sheets(ctx)
	if _, err := from.Write(ctx, all[0].ID, 1, machine("A changed"), "saved"); err != nil {
		t.Fatal(err)
	}
	data := exported(t, from)
	sum, err := to.Import(ctx, bytes.NewReader(data), int64(len(data)), checkAny)
	if err != nil || sum != (Imported{New: 1, Same: 1}) {
		t.Errorf("%+v, %v", sum, err)
	}
	if err := to.RemoveDemo(ctx); err != nil {
		t.Fatal(err)
	}
	holds(t, to, map[string]string{all[0].ID: machine("A changed")})
}

// One byte changed anywhere in an archive: it is refused and nothing is taken,
// or it was a byte that means nothing.
func TestDamagedArchiveTakesNothing(t *testing.T) {
	ctx := context.Background()
	from, held := furnished(t)
	data := exported(t, from)
	rnd := rand.New(rand.NewPCG(1, 2))
	harmless, to := 0, openAt(t, t.TempDir())
	for range 300 {
		hurt := bytes.Clone(data)
		at := rnd.IntN(len(hurt))
		hurt[at] ^= byte(1 << rnd.IntN(8))
		if _, err := to.Import(ctx, bytes.NewReader(hurt), int64(len(hurt)), checkAny); err != nil {
			holds(t, to, nil)
			continue
		}
		harmless++
		holds(t, to, held)
		to = openAt(t, t.TempDir())
	}
	if harmless > 150 { // a zip says most of what is outside its files twice, and is read once
		t.Errorf("%d of 300 changes of one byte went unnoticed", harmless)
	}
	for cut := 0; cut < len(data); cut += 97 {
		var damage *DamageError
		if _, err := to.Import(ctx, bytes.NewReader(data[:cut]), int64(cut), checkAny); !errors.As(err, &damage) {
			t.Errorf("cut to %d bytes: %v", cut, err)
		}
		holds(t, to, nil)
	}
}

func zipped(t *testing.T, files map[string]string, mode fs.FileMode) []byte {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for name, text := range files {
		h := &zip.FileHeader{Name: name, Method: zip.Deflate}
		h.SetMode(mode)
		w, err := z.CreateHeader(h)
		if err != nil {
			t.Fatal(err)
		}
		w.Write([]byte(text))
	}
	z.Close()
	return b.Bytes()
}

func TestHostileArchives(t *testing.T) {
	const digest = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855" // SHA-256 of nothing: FIPS 180-4 example, from memory
	list := func(files, rest string) string {
		return `{"format":"steelyard archive 1","made":"","files":[` + files + `]` + rest + `}`
	}
	empty := list("", "")
	for _, c := range []struct {
		name  string
		files map[string]string
		mode  fs.FileMode
		want  string
	}{
		{"climbs out", map[string]string{"../evil.yaml": "", "manifest.json": empty}, 0o644, "no plain file"},
		{"from the root", map[string]string{"/etc/passwd": "", "manifest.json": empty}, 0o644, "no plain file"},
		{"a Windows path", map[string]string{`..\evil.yaml`: "", "manifest.json": empty}, 0o644, "no plain file"},
		{"a drive", map[string]string{`C:evil`: "", "manifest.json": empty}, 0o644, "no plain file"},
		{"a link", map[string]string{"manifest.json": empty}, 0o777 | fs.ModeSymlink, "no plain file"},
		{"no list", map[string]string{"sheets/a.yaml": ""}, 0o644, "is missing"},
		{"no JSON", map[string]string{"manifest.json": "hello"}, 0o644, "cannot be read"},
		{"another format", map[string]string{"manifest.json": `{"format":"steelyard backup 1"}`}, 0o644, "is wanted"},
		{"not listed", map[string]string{"manifest.json": empty, "extra": ""}, 0o644, "not in its list"},
		{"listed and missing", map[string]string{"manifest.json": list(`{"path":"a","sha256":"`+digest+`"}`, "")}, 0o644, "is listed and missing"},
		{"file of no sheet", map[string]string{"a": "", "manifest.json": list(`{"path":"a","sha256":"`+digest+`"}`, "")}, 0o644, "lists 1 files"},
		{"a bad id", map[string]string{"a": "", "manifest.json": list(`{"path":"a","sha256":"`+digest+`"}`, `,"sheets":[{"path":"a","id":"../x"}]`)}, 0o644, "which is none"},
		{"no kind", map[string]string{"a": "", "manifest.json": list(`{"path":"a","sha256":"`+digest+`"}`, `,"sheets":[{"path":"a","id":"0123456789abcdef"}]`)}, 0o644, "does not say its kind"},
		{"negative size", map[string]string{"a": "", "manifest.json": list(`{"path":"a","bytes":-1,"sha256":"`+digest+`"}`, `,"sheets":[{"path":"a","id":"0123456789abcdef"}]`)}, 0o644, "has -1 bytes"},
		{"a bomb", map[string]string{"a": strings.Repeat("a", 50<<20), "manifest.json": list(`{"path":"a","bytes":52428800,"sha256":"`+digest+`"}`, `,"sheets":[{"path":"a","id":"0123456789abcdef"}]`)}, 0o644, "may have 262144"},
		{"a bomb that lies", map[string]string{"a": strings.Repeat("a", 50<<20), "manifest.json": list(`{"path":"a","bytes":9,"sha256":"`+digest+`"}`, `,"sheets":[{"path":"a","id":"0123456789abcdef"}]`)}, 0o644, "is not what was put in"},
		{"photo missing", map[string]string{"a": "", "manifest.json": list(`{"path":"a","sha256":"`+digest+`"}`, `,"sheets":[{"path":"a","id":"0123456789abcdef","kind":"machine","backdrop":{"photo":"x","survey":{}}}]`)}, 0o644, "wants a photo"},
	} {
		s := openAt(t, t.TempDir())
		data := zipped(t, c.files, c.mode)
		if _, err := s.Import(context.Background(), bytes.NewReader(data), int64(len(data)), checkAny); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
		holds(t, s, nil)
	}
}

func TestBackupIsRestored(t *testing.T) {
	ctx := context.Background()
	s, held := furnished(t)
	file := filepath.Join(t.TempDir(), "now.backup")
	if err := s.Backup(ctx, file); err != nil {
		t.Fatal(err)
	}
	if err := s.Backup(ctx, file); err == nil {
		t.Error("a backup was replaced")
	}
	reached := map[string]int{}
	for id := range held {
		sh, _ := s.Sheet(ctx, id)
		sh, err := s.Write(ctx, id, sh.Revision, machine("later"), "saved")
		if err != nil {
			t.Fatal(err)
		}
		reached[id] = sh.Revision
	}
	later := create(t, s, machine("not in the backup"))
	before, err := s.Restore(ctx, file)
	if err != nil {
		t.Fatal(err)
	}
	holds(t, s, held)
	for id := range held {
		var conflict *ConflictError
		if _, err := s.Write(ctx, id, reached[id], machine("from an old page"), "saved"); !errors.As(err, &conflict) {
			t.Errorf("a page from before the restore could write: %v", err)
		}
	}
	if _, err := s.Restore(ctx, before); err != nil {
		t.Fatal(err)
	}
	if sh, err := s.Sheet(ctx, later.ID); err != nil || sh.Text != later.Text {
		t.Errorf("what was before the restore is not in %s: %v", before, err)
	}
}

func TestDamagedBackupRestoresNothing(t *testing.T) {
	ctx := context.Background()
	s, held := furnished(t)
	folder := t.TempDir()
	file := filepath.Join(folder, "good.backup")
	if err := s.Backup(ctx, file); err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	rnd := rand.New(rand.NewPCG(3, 4))
	bad := filepath.Join(folder, "bad.backup")
	for i := range 40 {
		hurt := bytes.Clone(data)
		at := rnd.IntN(len(hurt) - 400) // the last part is the zip's own list, tested above
		hurt[at] ^= 0x10
		if i%4 == 0 {
			hurt = hurt[:at]
		}
		if err := os.WriteFile(bad, hurt, 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := s.Restore(ctx, bad); err == nil && i%4 == 0 {
			t.Errorf("a backup cut to %d of %d bytes was restored", at, len(data))
		}
		holds(t, s, held)
	}
	for _, text := range []string{"", "hello", "SQLite format 3\x00"} {
		os.WriteFile(bad, []byte(text), 0o600)
		if _, err := s.Restore(ctx, bad); err == nil {
			t.Errorf("%q was restored", text)
		}
	}
	if _, err := s.Restore(ctx, filepath.Join(folder, "missing")); err == nil || !strings.Contains(err.Error(), "cannot be read") {
		t.Errorf("a missing backup: %v", err)
	}
	if _, err := s.Restore(ctx, folder); err == nil || !strings.Contains(err.Error(), "is no file") {
		t.Errorf("a folder: %v", err)
	}
	holds(t, s, held)
}

// A backup may be whole as a zip and still hold another program's database.
func TestForeignDataFileIsRefused(t *testing.T) {
	ctx, s := context.Background(), openAt(t, t.TempDir())
	other := filepath.Join(t.TempDir(), "other.db")
	db, err := connect(other, patience)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := db.Exec(`CREATE TABLE sheet (id TEXT); PRAGMA journal_mode = delete`); err != nil {
		t.Fatal(err)
	}
	db.Close()
	data, err := os.ReadFile(other)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	a := newWriter(&b, backupFormat, "")
	if err := errors.Join(a.add(dataEntry, bytes.NewReader(data)), a.close()); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "other.backup")
	os.WriteFile(file, b.Bytes(), 0o600)
	if _, err := s.Restore(ctx, file); err == nil || !strings.Contains(err.Error(), "no backup of Steelyard") {
		t.Errorf("%v", err)
	}
}
