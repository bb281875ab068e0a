package sheet

import (
	"bytes"
	"errors"
	"testing"

	"steelyard/mechanism"
)

// FuzzMachine expects of any bytes that reading them, building and explaining
// what they describe never panics, that every refusal says where, what and what
// to do, and that writing back changes nothing.
func FuzzMachine(f *testing.F) {
	for _, data := range goodSheets(f) {
		f.Add(data)
	}
	f.Add([]byte(base))
	for _, c := range badDocuments {
		if len(c.text) < 1000 {
			f.Add([]byte(c.text))
		}
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		d, err := Read("fuzz.yaml", data)
		if err != nil {
			mustBeTold(t, err)
			return
		}
		if !bytes.Equal(d.Bytes(), data) {
			t.Fatal("written back differs from what was read")
		}
		m, err := d.Machine()
		if err != nil {
			mustBeTold(t, err)
			return
		}
		b, err := m.Build(nil)
		if err != nil {
			t.Fatalf("a usable sheet cannot be built: %v", err)
		}
		_ = b.Explain().String()
		if _, err := b.Rebuild(nominalValues(b)); err != nil {
			t.Fatalf("a usable sheet cannot be rebuilt: %v", err)
		}
		if _, err := mechanism.Compile(b.Machine); err != nil {
			m.Locate(err)
		}
	})
}

func mustBeTold(t *testing.T, err error) {
	t.Helper()
	var all Problems
	var one *Problem
	if !errors.As(err, &all) {
		if !errors.As(err, &one) {
			t.Fatalf("got %T %v, want problems", err, err)
		}
		all = Problems{one}
	}
	if len(all) == 0 || len(all) > mostProblems {
		t.Fatalf("got %d problems", len(all))
	}
	for i, p := range all {
		if p.File == "" || p.What == "" || p.Limit == "" || p.Cure == "" {
			t.Fatalf("problem says too little: %+v", p)
		}
		if i > 0 && p.Line < all[i-1].Line {
			t.Fatalf("problems are not in the order of the file: %v", err)
		}
	}
}
