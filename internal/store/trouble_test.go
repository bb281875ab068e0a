package store

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

func wantTrouble(t *testing.T, err error, problem, cure string) {
	t.Helper()
	var trouble *TroubleError
	if !errors.As(err, &trouble) || !strings.Contains(trouble.Problem, problem) || !strings.Contains(trouble.Cure, cure) {
		t.Errorf("got %v, want %q and %q", err, problem, cure)
	}
}

// A full disk is played by a file that may not have another page.
func TestFullDisk(t *testing.T) {
	ctx, s := context.Background(), openAt(t, t.TempDir())
	sh := create(t, s, machine("before"))
	s.db.SetMaxOpenConns(1) // the limit holds for one connection
	var pages int
	if err := s.db.QueryRow(`PRAGMA page_count`).Scan(&pages); err != nil {
		t.Fatal(err)
	}
	if _, err := s.db.Exec(fmt.Sprintf(`PRAGMA max_page_count = %d`, pages)); err != nil {
		t.Fatal(err)
	}
	big := machine("after") + strings.Repeat("# row\n", 20_000)
	_, err := s.Write(ctx, sh.ID, sh.Revision, big, "saved")
	wantTrouble(t, err, "the disk is full", "make room")
	if got, err := s.Sheet(ctx, sh.ID); err != nil || got != sh {
		t.Errorf("after a full disk: %+v, %v", got, err)
	}
	if _, err := s.db.Exec(`PRAGMA max_page_count = 1000000`); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Write(ctx, sh.ID, sh.Revision, big, "saved"); err != nil {
		t.Errorf("with room again: %v", err)
	}
}

func TestHeldByAnotherProgram(t *testing.T) {
	folder := t.TempDir()
	s, err := open(folder, clock(), 50*time.Millisecond)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	other, err := connect(s.file, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	tx, err := other.Begin() // takes the write lock
	if err != nil {
		t.Fatal(err)
	}
	_, err = s.Create(context.Background(), machine("a"), "")
	wantTrouble(t, err, "held by another program", "close other copies")
	tx.Rollback()
	create(t, s, machine("a"))
}

func TestNewerFile(t *testing.T) {
	folder := t.TempDir()
	s := openAt(t, folder)
	if _, err := s.db.Exec(`PRAGMA user_version = 99`); err != nil {
		t.Fatal(err)
	}
	s.Close()
	_, err := Open(folder, clock())
	var newer *NewerError
	if !errors.As(err, &newer) || newer.Has != 99 || newer.Know != 2 {
		t.Errorf("got %v", err)
	}
}

func TestUnusableFolders(t *testing.T) {
	root := t.TempDir()
	file := filepath.Join(root, "file")
	os.WriteFile(file, []byte("x"), 0o600)
	_, err := Open(file, clock())
	wantTrouble(t, err, "is no folder", "--data")
	_, err = Open(filepath.Join(file, "in a file"), clock())
	wantTrouble(t, err, "cannot be made", "--data")

	taken := filepath.Join(root, "taken")
	os.MkdirAll(filepath.Join(taken, fileName), 0o700)
	_, err = Open(taken, clock())
	wantTrouble(t, err, "cannot be opened", "--data")

	junk := filepath.Join(root, "junk")
	os.MkdirAll(junk, 0o700)
	os.WriteFile(filepath.Join(junk, fileName), []byte(strings.Repeat("no database ", 100)), 0o600)
	_, err = Open(junk, clock())
	wantTrouble(t, err, "is damaged", "restore")

	foreign := filepath.Join(root, "foreign")
	os.MkdirAll(foreign, 0o700)
	db, err := connect(filepath.Join(foreign, fileName), patience)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := db.Exec(`CREATE TABLE boats (name TEXT)`); err != nil {
		t.Fatal(err)
	}
	db.Close()
	_, err = Open(foreign, clock())
	wantTrouble(t, err, "another program", "--data")
}

// SQLite says READONLY of a connection that may only read just as of a file
// that may not be written, which also works for a user who may do everything.
func TestReadOnly(t *testing.T) {
	s := openAt(t, t.TempDir())
	s.db.SetMaxOpenConns(1)
	if _, err := s.db.Exec(`PRAGMA query_only = 1`); err != nil {
		t.Fatal(err)
	}
	_, err := s.Create(context.Background(), machine("a"), "")
	wantTrouble(t, err, "may not be written to", "writable")
	if os.Getuid() == 0 {
		return
	}
	folder := filepath.Join(t.TempDir(), "locked")
	os.Mkdir(folder, 0o500)
	_, err = Open(folder, clock())
	wantTrouble(t, err, "", "--data")
}

func TestEvaluationsAreKeptByEngine(t *testing.T) {
	ctx, s := context.Background(), openAt(t, t.TempDir())
	if err := s.PutEvaluation(ctx, "in", "engine 1", []byte("one")); err != nil {
		t.Fatal(err)
	}
	if got, has, err := s.Evaluation(ctx, "in", "engine 1"); err != nil || !has || string(got) != "one" {
		t.Errorf("%q, %v, %v", got, has, err)
	}
	if _, has, _ := s.Evaluation(ctx, "in", "engine 2"); has {
		t.Error("another engine's result was taken")
	}
	for i := range mostEvaluations {
		if err := s.PutEvaluation(ctx, fmt.Sprint(i), "engine 1", []byte("another")); err != nil {
			t.Fatal(err)
		}
	}
	if _, has, _ := s.Evaluation(ctx, "in", "engine 1"); has {
		t.Error("the oldest result was not dropped")
	}
}

func TestDemoComesAndGoes(t *testing.T) {
	ctx, s := context.Background(), openAt(t, t.TempDir())
	files := []File{{"a.yaml", []byte(machine("A"))}, {"b.yaml", []byte(machine("B"))}}
	visible := func(want ...string) {
		t.Helper()
		all, err := s.Sheets(ctx)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, sh := range all {
			if !sh.Removed {
				got = append(got, sh.Name)
			}
		}
		if strings.Join(got, ",") != strings.Join(want, ",") {
			t.Errorf("the room has %q, want %q", got, want)
		}
	}
	fill := func(once bool) {
		t.Helper()
		if err := s.FillDemo(ctx, files, once); err != nil {
			t.Fatal(err)
		}
	}
	fill(true)
	mine := create(t, s, machine("Mine"))
	visible("A", "B", "Mine")
	all, _ := s.Sheets(ctx)
	if _, err := s.Write(ctx, all[0].ID, 1, machine("A changed"), "saved"); err != nil {
		t.Fatal(err)
	}
	if err := s.RemoveDemo(ctx); err != nil {
		t.Fatal(err)
	}
	visible("Mine")
	fill(true) // at the next start
	visible("Mine")
	fill(false)
	visible("A changed", "B", "Mine")
	if got, _ := s.Sheet(ctx, mine.ID); got != mine {
		t.Errorf("my own machine became %+v", got)
	}
}

func TestSessionsEnd(t *testing.T) {
	now := time.Date(2026, 3, 1, 9, 0, 0, 0, time.UTC)
	ctx := context.Background()
	s, err := Open(t.TempDir(), func() time.Time { return now })
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	if err := s.PutSession(ctx, "a"); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		after  time.Duration
		digest string
		want   bool
	}{{0, "a", true}, {0, "b", false}, {sessionLife - time.Second, "a", true}, {2 * time.Second, "a", false}} {
		now = now.Add(c.after)
		if has, err := s.HasSession(ctx, c.digest); err != nil || has != c.want {
			t.Errorf("%s after %v: %v, %v", c.digest, c.after, has, err)
		}
	}
}
