package report

import (
	"flag"
	"os"
	"strings"
	"testing"

	"steelyard/evaluation"
	"steelyard/internal/draw"
)

// updatePicture writes the README's picture anew: go test ./internal/report -run
// ReadmePicture -picture. Look at it before you commit it.
var updatePicture = flag.Bool("picture", false, "write the picture of the README anew")

const readmePicture = "../../docs/bow-press.svg"

// TestReadmePicture wants the picture that the README shows to be what the
// program draws of that sheet today.
func TestReadmePicture(t *testing.T) {
	text, err := os.ReadFile("../../demo/machines/bow-press.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	if _, err := draw.WriteSVG(&out, Picture(evaluatedText(t, text, evaluation.Options{}), Options{})); err != nil {
		t.Fatal(err)
	}
	if *updatePicture {
		if err := os.WriteFile(readmePicture, []byte(out.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	kept, err := os.ReadFile(readmePicture)
	if err != nil {
		t.Fatal(err)
	}
	if string(kept) != out.String() {
		t.Error("docs/bow-press.svg is not what the program draws; run with -picture and look at it")
	}
}
