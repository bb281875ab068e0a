package main

import (
	"bufio"
	"bytes"
	"context"
	"io"
	"net/http"
	"os"
	"regexp"
	"strings"
	"testing"
	"time"
)

// steelyard alone opens the page, prints its address, answers there, and stops
// when it is told to.
func TestSteelyardAloneOpensThePage(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	defer stop()
	out, in := io.Pipe()
	var complaints bytes.Buffer
	code := make(chan int, 1)
	go func() {
		code <- execute([]string{"--data", t.TempDir(), "--listen", "127.0.0.1:0"}, &console{ctx: ctx, in: os.Stdin, out: in, err: &complaints})
		in.Close()
	}()
	address := regexp.MustCompile(`http://(127\.0\.0\.1:\d+)/#([0-9a-f]{32})`)
	var found []string
	lines := bufio.NewScanner(out)
	for found == nil && lines.Scan() {
		found = address.FindStringSubmatch(lines.Text())
	}
	if found == nil {
		t.Fatalf("no address was printed; %s", complaints.String())
	}
	go io.Copy(io.Discard, out)
	res, err := http.Get("http://" + found[1] + "/")
	if err != nil {
		t.Fatal(err)
	}
	page, err := io.ReadAll(res.Body)
	res.Body.Close()
	if err != nil || res.StatusCode != 200 || !bytes.Contains(page, []byte("<html")) {
		t.Errorf("%d %v %.100s", res.StatusCode, err, page)
	}
	res, err = http.Post("http://"+found[1]+"/api/session", "application/json", strings.NewReader(`{"token":"`+found[2]+`"}`))
	if err != nil {
		t.Fatal(err)
	}
	res.Body.Close()
	if res.StatusCode != http.StatusNoContent {
		t.Errorf("the printed token: %d", res.StatusCode)
	}
	stop()
	select {
	case got := <-code:
		if got != exitDone {
			t.Errorf("stopped with %d: %s", got, complaints.String())
		}
	case <-time.After(20 * time.Second):
		t.Fatal("it does not stop")
	}
}
