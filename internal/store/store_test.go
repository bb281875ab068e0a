package store

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"
)

// clock is a fixed time that moves on by a second each time it is read.
func clock() func() time.Time {
	t := time.Date(2026, 3, 1, 9, 0, 0, 0, time.UTC)
	return func() time.Time {
		t = t.Add(time.Second)
		return t
	}
}

func openAt(t *testing.T, folder string) *Store {
	t.Helper()
	s, err := Open(folder, clock())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

func machine(name string) string { return "steelyard: machine 1\nname: " + name + "\n" }

func create(t *testing.T, s *Store, text string) Sheet {
	t.Helper()
	sh, err := s.Create(context.Background(), text, "")
	if err != nil {
		t.Fatal(err)
	}
	return sh
}

func TestWriteIsReadBack(t *testing.T) {
	folder := t.TempDir()
	s := openAt(t, folder)
	if !s.Fresh() {
		t.Error("a new file is not fresh")
	}
	if info, err := os.Stat(filepath.Join(folder, fileName)); err != nil || runtime.GOOS != "windows" && info.Mode().Perm() != 0o600 {
		t.Errorf("others may read the file: %v, %v", info, err)
	}
	a := create(t, s, machine("Oar bench"))
	b, err := s.Write(context.Background(), a.ID, a.Revision, machine("Oar bench, long")+"# ± by eye\n", "saved")
	if err != nil {
		t.Fatal(err)
	}
	s.Close()

	s = openAt(t, folder)
	if s.Fresh() {
		t.Error("an old file is fresh")
	}
	got, err := s.Sheet(context.Background(), a.ID)
	if err != nil {
		t.Fatal(err)
	}
	if got != b || got.Name != "Oar bench, long" || got.Revision != 2 || !strings.HasSuffix(got.Text, "# ± by eye\n") {
		t.Errorf("got %+v, want %+v", got, b)
	}
}

// Sixty steps back and forth, with the program started anew in the middle.
func TestUndoOutlivesRestarts(t *testing.T) {
	const steps = 60
	ctx, folder := context.Background(), t.TempDir()
	s := openAt(t, folder)
	sh := create(t, s, machine("step 0"))
	for i := range steps {
		var err error
		if sh, err = s.Write(ctx, sh.ID, sh.Revision, machine(fmt.Sprintf("step %d", i+1)), "saved"); err != nil {
			t.Fatal(err)
		}
	}
	move := func(step func(context.Context, string, int) (Sheet, error), want int) {
		t.Helper()
		var err error
		if sh, err = step(ctx, sh.ID, sh.Revision); err != nil {
			t.Fatalf("to step %d: %v", want, err)
		}
		if sh.Name != fmt.Sprintf("step %d", want) || sh.Undos != want || sh.Redos != steps-want {
			t.Fatalf("at %q with %d back and %d forth, want step %d", sh.Name, sh.Undos, sh.Redos, want)
		}
	}
	for i := steps - 1; i >= 25; i-- {
		move(s.Undo, i)
	}
	s.Close()
	s = openAt(t, folder)
	for i := 24; i >= 0; i-- {
		move(s.Undo, i)
	}
	if _, err := s.Undo(ctx, sh.ID, sh.Revision); !errors.Is(err, ErrNothingToUndo) {
		t.Errorf("undo at the beginning: %v", err)
	}
	for i := 1; i <= steps; i++ {
		move(s.Redo, i)
	}
	if _, err := s.Redo(ctx, sh.ID, sh.Revision); !errors.Is(err, ErrNothingToRedo) {
		t.Errorf("redo at the end: %v", err)
	}
	move(s.Undo, steps-1)
	move(s.Undo, steps-2)
	move(s.Redo, steps-1)
	sh, err := s.Write(ctx, sh.ID, sh.Revision, machine("another way"), "saved")
	if err != nil || sh.Redos != 0 || sh.Undos != steps {
		t.Errorf("after a change: %d back, %d forth, %v", sh.Undos, sh.Redos, err)
	}
	if sh, err = s.Undo(ctx, sh.ID, sh.Revision); err != nil || sh.Name != fmt.Sprintf("step %d", steps-1) {
		t.Errorf("undone to %q, %v", sh.Name, err)
	}
}

func TestTwoPagesConflict(t *testing.T) {
	ctx, s := context.Background(), openAt(t, t.TempDir())
	sh := create(t, s, machine("Oar bench"))
	theirs, err := s.Write(ctx, sh.ID, sh.Revision, machine("theirs"), "saved")
	if err != nil {
		t.Fatal(err)
	}
	steps := map[string]func() error{
		"write":  func() error { _, err := s.Write(ctx, sh.ID, sh.Revision, machine("mine"), "saved"); return err },
		"undo":   func() error { _, err := s.Undo(ctx, sh.ID, sh.Revision); return err },
		"redo":   func() error { _, err := s.Redo(ctx, sh.ID, sh.Revision); return err },
		"remove": func() error { _, err := s.Remove(ctx, sh.ID, sh.Revision); return err },
	}
	for name, step := range steps {
		var c *ConflictError
		if err := step(); !errors.As(err, &c) || c.Current != theirs || c.From != sh.Revision {
			t.Errorf("%s from an old revision: %v", name, err)
		}
	}
	if got, _ := s.Sheet(ctx, sh.ID); got != theirs {
		t.Errorf("something was written: %+v", got)
	}
}

func TestRemoveRecoverForget(t *testing.T) {
	ctx, s := context.Background(), openAt(t, t.TempDir())
	sh := create(t, s, machine("Oar bench"))
	if err := s.Forget(ctx, sh.ID); !errors.Is(err, ErrNotFound) {
		t.Errorf("forgot what was not removed: %v", err)
	}
	gone, err := s.Remove(ctx, sh.ID, sh.Revision)
	if err != nil || !gone.Removed || gone.Revision != 2 {
		t.Fatalf("removed: %+v, %v", gone, err)
	}
	back, err := s.Recover(ctx, sh.ID)
	if err != nil || back.Removed || back.Text != sh.Text {
		t.Fatalf("brought back: %+v, %v", back, err)
	}
	if _, err := s.Remove(ctx, sh.ID, back.Revision); err != nil {
		t.Fatal(err)
	}
	if err := s.Forget(ctx, sh.ID); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Sheet(ctx, sh.ID); !errors.Is(err, ErrNotFound) {
		t.Errorf("still there: %v", err)
	}
	if _, err := s.History(ctx, sh.ID, 10); !errors.Is(err, ErrNotFound) {
		t.Errorf("its history is still there: %v", err)
	}
}

// A photo goes with the last sheet that shows it.
func TestForgettingTakesThePhoto(t *testing.T) {
	ctx, s := context.Background(), openAt(t, t.TempDir())
	shared, err := s.PutPhoto(ctx, Photo{Type: "image/png", Data: []byte("shared")})
	if err != nil {
		t.Fatal(err)
	}
	loose, err := s.PutPhoto(ctx, Photo{Type: "image/png", Data: []byte("not used yet")})
	if err != nil {
		t.Fatal(err)
	}
	sheets := []Sheet{create(t, s, machine("a")), create(t, s, machine("b"))}
	for _, sh := range sheets {
		if err := s.SetBackdrop(ctx, sh.ID, shared.ID, "{}"); err != nil {
			t.Fatal(err)
		}
	}
	for i, want := range []error{nil, ErrNotFound} {
		if _, err := s.Remove(ctx, sheets[i].ID, 1); err != nil {
			t.Fatal(err)
		}
		if err := s.Forget(ctx, sheets[i].ID); err != nil {
			t.Fatal(err)
		}
		if _, err := s.Photo(ctx, shared.ID); !errors.Is(err, want) {
			t.Errorf("after forgetting %d of 2: %v, want %v", i+1, err, want)
		}
	}
	if _, err := s.Photo(ctx, loose.ID); err != nil {
		t.Errorf("a photo that no sheet had: %v", err)
	}
}

// Two programs on one folder, four pages each, all changing one sheet: every
// change that was acknowledged is a step of its own.
func TestManyWritersLoseNothing(t *testing.T) {
	const programs, pages, changes = 2, 4, 15
	ctx, folder := context.Background(), t.TempDir()
	stores := make([]*Store, programs)
	for i := range stores {
		s, err := Open(folder, time.Now)
		if err != nil {
			t.Fatal(err)
		}
		defer s.Close()
		stores[i] = s
	}
	sh := create(t, stores[0], machine("start"))
	var wait sync.WaitGroup
	for i := range programs * pages {
		wait.Go(func() {
			s := stores[i%programs]
			for k := 0; k < changes; {
				now, err := s.Sheet(ctx, sh.ID)
				if err != nil {
					t.Error(err)
					return
				}
				var conflict *ConflictError
				switch _, err = s.Write(ctx, sh.ID, now.Revision, now.Text+fmt.Sprintf("# page %d, change %d\n", i, k), "saved"); {
				case err == nil:
					k++
				case !errors.As(err, &conflict):
					t.Error(err)
					return
				}
			}
		})
	}
	wait.Wait()
	got, err := stores[1].Sheet(ctx, sh.ID)
	if err != nil {
		t.Fatal(err)
	}
	if lines := strings.Count(got.Text, "# page"); lines != programs*pages*changes || got.Revision != 1+lines || got.Undos != lines {
		t.Errorf("%d changes, revision %d, %d steps; want %d changes", lines, got.Revision, got.Undos, programs*pages*changes)
	}
}

func TestRefusedTexts(t *testing.T) {
	ctx, s := context.Background(), openAt(t, t.TempDir())
	for _, c := range []struct{ name, text, want string }{
		{"empty", "", "does not say its kind"},
		{"foreign", "hello: world\n", "does not say its kind"},
		{"unknown kind", "steelyard: boat 1\n", "does not say its kind"},
		{"nested kind", "a:\n  steelyard: machine 1\n", "does not say its kind"},
		{"zero byte", machine("a") + "\x00", "a byte that is no text"},
		{"not UTF-8", machine("a") + "\xff\xfe", "no UTF-8"},
		{"too long", machine("a") + strings.Repeat("# row\n", MostText/6+1), "256 kB"},
	} {
		var bad *TextError
		if _, err := s.Create(ctx, c.text, ""); !errors.As(err, &bad) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
	sh := create(t, s, machine("a"))
	if _, err := s.Write(ctx, sh.ID, 1, "steelyard: person 1\nname: Ada\n", "saved"); err == nil {
		t.Error("a machine became a person")
	}
	// What somebody is in the middle of typing is kept.
	broken, err := s.Write(ctx, sh.ID, 1, "steelyard machine 1\n  name: {\n", "saved")
	if err != nil || broken.Name != "a" {
		t.Errorf("%+v, %v", broken, err)
	}
}

func TestHeadings(t *testing.T) {
	for _, c := range []struct{ text, kind, name string }{
		{"steelyard: machine 1\nname: Bow press # wide\n", "machine", "Bow press"},
		{"\ufeff# a comment\nsteelyard: person 1\nname: 'Ada''s'\n", "person", "Ada's"},
		{"name: \"a \\\"b\\\"\"\nsteelyard: room 1\n", "room", `a "b"`},
		{"steelyard: plan 1 # newest\n", "plan", "unnamed plan"},
		{"steelyard: plan 1\nname: >-\n  folded\n", "plan", "unnamed plan"},
		{"steelyard: machine 1\nname: '; DROP TABLE sheet; --'\n", "machine", "; DROP TABLE sheet; --"},
		{"steelyard: machine 1\nname: ../../etc/passwd\n", "machine", "../../etc/passwd"},
		{"steelyard: machine 1\nname: <script>alert(1)</script>\n", "machine", "<script>alert(1)</script>"},
		{"steelyard: machine 1\nname: " + strings.Repeat("å", 500) + "\n", "machine", strings.Repeat("å", 120) + "…"},
	} {
		kind, name, ok := Heading(c.text)
		if !ok || kind != c.kind || name != c.name {
			t.Errorf("%q: %q, %q, %v", c.text, kind, name, ok)
		}
	}
}

func TestHostileFolderNames(t *testing.T) {
	for _, name := range []string{"plain", "with space", "ü 50% #1?", "a&_txlock=deferred", "'quote'", "mode=ro"} {
		folder := filepath.Join(t.TempDir(), name)
		s := openAt(t, folder)
		create(t, s, machine(name))
		if s.Folder() != folder {
			t.Errorf("%q: folder %q", name, s.Folder())
		}
		var mode string
		var sync, keys int
		if err := s.db.QueryRow(`SELECT * FROM pragma_journal_mode, pragma_synchronous, pragma_foreign_keys`).Scan(&mode, &sync, &keys); err != nil || mode != "wal" || sync != 2 || keys != 1 {
			t.Errorf("%q: journal %s, synchronous %d, foreign keys %d, %v", name, mode, sync, keys, err)
		}
		if files, _ := filepath.Glob(filepath.Join(strings.NewReplacer("?", `\?`, "'", `'`).Replace(folder), fileName)); len(files) != 1 {
			t.Errorf("%q: no data file in the folder", name)
		}
		s.Close()
	}
}
