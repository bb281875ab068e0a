package server

import (
	"context"
	"fmt"
	"net"
	"net/http"
	"strings"
	"testing"
	"time"
)

func TestPortInUse(t *testing.T) {
	taken, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer taken.Close()
	if _, err := Listen(taken.Addr().String()); err == nil || !strings.Contains(err.Error(), "already in use") || !strings.Contains(err.Error(), "--listen") {
		t.Errorf("%v", err)
	}
	first, err := Listen(DefaultAddress)
	if err != nil {
		t.Fatal(err)
	}
	defer first.Close()
	second, err := Listen(DefaultAddress)
	if err != nil {
		t.Fatalf("no other port was tried: %v", err)
	}
	defer second.Close()
	if first.Addr().String() == second.Addr().String() {
		t.Error("two listeners at one address")
	}
	for _, nonsense := range []string{"nonsense", "127.0.0.1", "127.0.0.1:99999", "no.such.host.invalid:80"} {
		if l, err := Listen(nonsense); err == nil {
			l.Close()
			t.Errorf("listens at %q", nonsense)
		} else if !strings.Contains(err.Error(), "--listen") && !strings.Contains(err.Error(), "write host:port") {
			t.Errorf("%q: no cure in %v", nonsense, err)
		}
	}
}

func TestHostsAreThoseOneWouldType(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	port := l.Addr().(*net.TCPAddr).Port
	if got, want := fmt.Sprint(Hosts(l)), fmt.Sprintf("[127.0.0.1:%d localhost:%d]", port, port); got != want {
		t.Errorf("%s, want %s", got, want)
	}
	all, err := net.Listen("tcp", "0.0.0.0:0")
	if err != nil {
		t.Fatal(err)
	}
	defer all.Close()
	for _, h := range Hosts(all) {
		if strings.HasPrefix(h, "0.0.0.0") || strings.HasPrefix(h, "[::]:") {
			t.Errorf("%s is no address one can open", h)
		}
	}
}

// A program that is stopped lets a short answer finish, and does not wait for
// one that goes on for ever.
func TestGracefulStop(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	mux := http.NewServeMux()
	begun := make(chan struct{}, 2)
	mux.HandleFunc("/short", func(w http.ResponseWriter, r *http.Request) {
		begun <- struct{}{}
		time.Sleep(200 * time.Millisecond)
		fmt.Fprint(w, "whole")
	})
	mux.HandleFunc("/endless", func(w http.ResponseWriter, r *http.Request) {
		begun <- struct{}{}
		<-r.Context().Done()
	})
	ctx, stop := context.WithCancel(t.Context())
	stopped := make(chan error, 1)
	go func() { stopped <- Serve(ctx, l, mux) }()
	answers := make(chan string, 2)
	get := func(path string) {
		res, err := http.Get("http://" + l.Addr().String() + path)
		if err != nil {
			answers <- err.Error()
			return
		}
		defer res.Body.Close()
		var b [5]byte
		res.Body.Read(b[:])
		answers <- string(b[:])
	}
	go get("/short")
	go get("/endless")
	<-begun
	<-begun
	stop()
	if first := <-answers; first != "whole" {
		t.Errorf("the short answer: %q", first)
	}
	select {
	case err := <-stopped:
		if err != nil {
			t.Errorf("stopped with %v", err)
		}
	case <-time.After(stopTime + 5*time.Second):
		t.Fatal("it does not stop")
	}
	if _, err := net.Dial("tcp", l.Addr().String()); err == nil {
		t.Error("it still listens")
	}
}
