package report

import (
	"bytes"
	"os"
	"testing"

	"steelyard/evaluation"
)

func TestShow(t *testing.T) {
	dir := os.Getenv("SHOW")
	if dir == "" {
		t.Skip()
	}
	for _, name := range []string{"example", "four-bar", "cam-curl", "sled", "spring-arm", "tackle", "dead-point", "rough"} {
		o := evaluation.Options{Tempo: tempo}
		if name == "dead-point" {
			o.Tempo = nil
		}
		e := evaluated(t, name, o)
		for _, ext := range []string{".pdf", ".svg", ".png", ".html"} {
			var b bytes.Buffer
			w, err := Write(&b, ext, e, Options{})
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range w {
				t.Log(name, ext, s)
			}
			os.WriteFile(dir+"/"+name+ext, b.Bytes(), 0o644)
		}
		var b bytes.Buffer
		Terminal(&b, e, 100, Options{})
		os.WriteFile(dir+"/"+name+".txt", b.Bytes(), 0o644)
	}
}
