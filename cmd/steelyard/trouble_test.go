package main

import (
	"bytes"
	"database/sql"
	"io"
	"net"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// filled returns a data folder with the demo room in it.
func filled(t *testing.T) (folder, file string) {
	t.Helper()
	folder = t.TempDir()
	st, err := dataFlag{Data: folder}.open(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	if err := st.Close(); err != nil {
		t.Fatal(err)
	}
	return folder, filepath.Join(folder, "steelyard.db")
}

// What the program says when it cannot open its page: the place, what is wrong
// there, its limit and the cure, in one line, and nothing else happens.
func TestCannotOpenThePage(t *testing.T) {
	taken, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer taken.Close()
	for _, c := range []struct {
		name  string
		args  func(t *testing.T) []string
		says  []string
		files bool // the data file must be as it was
	}{
		{"port in use", func(t *testing.T) []string {
			return []string{"--data", t.TempDir(), "--listen", taken.Addr().String()}
		}, []string{taken.Addr().String() + " is already in use", "--listen 127.0.0.1:0"}, false},
		{"a file where the folder should be", func(t *testing.T) []string {
			file := filepath.Join(t.TempDir(), "data")
			write(t, file, []byte("x"))
			return []string{"--data", file}
		}, []string{"data cannot be made or is no folder", "name another folder with --data"}, false},
		{"a folder inside a file", func(t *testing.T) []string {
			file := filepath.Join(t.TempDir(), "data")
			write(t, file, []byte("x"))
			return []string{"--data", filepath.Join(file, "steelyard")}
		}, []string{"steelyard cannot be made or is no folder", "--data"}, false},
		{"a read-only folder", func(t *testing.T) []string {
			if os.Getuid() == 0 {
				t.Skip("root may write everywhere")
			}
			folder := t.TempDir()
			if err := os.Chmod(folder, 0o500); err != nil {
				t.Fatal(err)
			}
			return []string{"--data", folder}
		}, []string{"steelyard.db cannot be opened or made", "writable for you"}, false},
		{"written by a newer program", func(t *testing.T) []string {
			folder, file := filled(t)
			db, err := sql.Open("sqlite", file)
			if err != nil {
				t.Fatal(err)
			}
			defer db.Close()
			if _, err := db.Exec(`PRAGMA user_version = 99`); err != nil {
				t.Fatal(err)
			}
			return []string{"--data", folder}
		}, []string{"steelyard.db was written by a newer Steelyard", "number 99", "start the newer program"}, true},
		{"no database at all", func(t *testing.T) []string {
			folder, file := filled(t)
			write(t, file, bytes.Repeat([]byte("no database "), 1000))
			return []string{"--data", folder}
		}, []string{"steelyard.db is damaged", "steelyard restore"}, true},
		{"a database cut short", func(t *testing.T) []string {
			folder, file := filled(t)
			if err := os.Truncate(file, 4096); err != nil {
				t.Fatal(err)
			}
			return []string{"--data", folder}
		}, []string{"steelyard.db is damaged", "steelyard restore"}, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			args := c.args(t)
			file := filepath.Join(args[1], "steelyard.db")
			before := contents(t, file)
			var out, complaint bytes.Buffer
			code := execute(args, &console{ctx: t.Context(), in: strings.NewReader(""), out: &out, err: &complaint})
			if code != exitInput || out.Len() > 0 {
				t.Errorf("exit code %d, printed %q; want %d and nothing", code, out.String(), exitInput)
			}
			for _, part := range c.says {
				if !strings.Contains(complaint.String(), part) {
					t.Errorf("it says %q, without %q", complaint.String(), part)
				}
			}
			if n := strings.Count(complaint.String(), "\n"); n != 1 {
				t.Errorf("it says %d lines, want one sentence: %q", n, complaint.String())
			}
			if c.files && !bytes.Equal(before, contents(t, file)) {
				t.Error("the data file was changed")
			}
		})
	}
}

func write(t *testing.T, file string, data []byte) {
	t.Helper()
	if err := os.WriteFile(file, data, 0o600); err != nil {
		t.Fatal(err)
	}
}

// contents returns what is in a file; nothing if there is none.
func contents(t *testing.T, file string) []byte {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		return nil
	}
	defer f.Close()
	data, err := io.ReadAll(f)
	if err != nil {
		return nil // a folder
	}
	return data
}
