package server

import (
	"fmt"
	"testing"
)

// A text asked about again is the same one, read already; the one that nobody
// has asked about for longest goes.
func TestRecent(t *testing.T) {
	var r recent
	first := r.read("0")
	for k := 1; k < mostRecent; k++ {
		r.read(fmt.Sprint(k))
	}
	if r.read("0") != first {
		t.Error("the first text was read again though there was room for it")
	}
	second := r.read("2")
	r.read("one more") // "1" has to go
	if r.read("0") != first || r.read("2") != second || len(r.texts) != mostRecent {
		t.Errorf("%d texts are kept, or one was read again that was asked about lately", len(r.texts))
	}
	again := r.read("1")
	if again != r.read("1") || again.String() != "1" {
		t.Error("a text that had gone is not read anew")
	}
}
