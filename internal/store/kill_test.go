package store

import (
	"bufio"
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// childFolder makes this test program, started once more, the one that is
// killed.
const childFolder = "STEELYARD_STORE_CHILD"

func TestMain(m *testing.M) {
	if folder := os.Getenv(childFolder); folder != "" {
		child(folder)
		return
	}
	os.Exit(m.Run())
}

// child writes until it is killed, and tells each thing it has been told is
// kept: sheet, revision, digest of the text.
func child(folder string) {
	ctx := context.Background()
	s, err := Open(folder, time.Now)
	if err != nil {
		fmt.Println("error:", err)
		return
	}
	told := func(sh Sheet, err error) Sheet {
		if err != nil {
			fmt.Println("error:", err)
			os.Exit(1)
		}
		fmt.Println(sh.ID, sh.Revision, Digest([]byte(sh.Text)))
		return sh
	}
	sh := told(s.Create(ctx, machine(fmt.Sprint("of process ", os.Getpid())), ""))
	for i := 1; ; i++ {
		text := machine(fmt.Sprintf("%d of %d", i, os.Getpid())) + strings.Repeat("# ballast\n", i*37%500)
		sh = told(s.Write(ctx, sh.ID, sh.Revision, text, "saved"))
		if i%5 == 0 {
			sh = told(s.Undo(ctx, sh.ID, sh.Revision))
		}
		p, err := s.PutPhoto(ctx, Photo{Type: "image/png", Data: []byte(text)})
		if err != nil {
			fmt.Println("error:", err)
			return
		}
		fmt.Println("photo", p.ID)
	}
}

// A program that writes is killed 200 times without warning. Whatever it had
// acknowledged is there, and the file is sound.
func TestKilledProgramLosesNothing(t *testing.T) {
	const kills = 200
	if testing.Short() {
		t.Skip("starts and kills a program 200 times")
	}
	folder := t.TempDir()
	rnd := rand.New(rand.NewPCG(5, 6))
	var told []string
	for i := range kills {
		told = append(told, killedAfter(t, folder, i%4 == 0, time.Duration(rnd.IntN(60_000))*time.Microsecond)...)
	}
	t.Logf("%d acknowledgements from %d killed programs", len(told), kills)
	if len(told) < kills { // thousands on an idle machine; a busy one writes less before each kill
		t.Errorf("only %d acknowledgements; the programs hardly wrote", len(told))
	}
	s := openAt(t, folder)
	ctx := context.Background()
	for _, line := range told {
		if photo, ok := strings.CutPrefix(line, "photo "); ok {
			if p, err := s.Photo(ctx, photo); err != nil || Digest(p.Data) != photo {
				t.Fatalf("lost: %q (%v)", line, err)
			}
			continue
		}
		var id, digest string
		var number int
		if _, err := fmt.Sscan(line, &id, &number, &digest); err != nil {
			t.Fatalf("the program said %q", line)
		}
		if text, err := s.TextAt(ctx, id, number); err != nil || Digest([]byte(text)) != digest {
			t.Fatalf("lost: %q (%v)", line, err)
		}
	}
	var sound string
	if err := s.db.QueryRow(`PRAGMA integrity_check`).Scan(&sound); err != nil || sound != "ok" {
		t.Errorf("integrity: %s, %v", sound, err)
	}
	var torn int
	if err := s.db.QueryRow(`SELECT count(*) FROM sheet WHERE revision != (SELECT max(number) FROM revision WHERE sheet = id)`).Scan(&torn); err != nil || torn != 0 {
		t.Errorf("%d sheets do not stand at their newest revision (%v)", torn, err)
	}
	if left, _ := filepath.Glob(filepath.Join(folder, "*")); len(left) > 3 {
		t.Errorf("left behind: %q", left)
	}
}

// killedAfter starts the program, kills it that long after its start or else its
// first acknowledgement, and returns the whole lines it wrote.
func killedAfter(t *testing.T, folder string, start bool, after time.Duration) []string {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), childFolder+"="+folder)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	kill := func() { cmd.Process.Kill() }
	if start {
		time.AfterFunc(after, kill)
	}
	var lines []string
	r := bufio.NewReader(out)
	for {
		line, err := r.ReadString('\n')
		if err != nil {
			break // a line cut by the kill acknowledges nothing
		}
		if len(lines) == 0 && !start {
			time.AfterFunc(after, kill)
		}
		lines = append(lines, strings.TrimSuffix(line, "\n"))
	}
	cmd.Wait()
	return lines
}
