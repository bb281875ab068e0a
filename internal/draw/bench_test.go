package draw

import (
	"io"
	"strings"
	"testing"
)

func BenchmarkWriteSVG(b *testing.B) {
	s := sample(Light)
	for b.Loop() {
		if _, err := WriteSVG(io.Discard, s); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWritePDF(b *testing.B) {
	s := sample(Light)
	for b.Loop() {
		if _, err := WritePDF(io.Discard, s); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRaster150dpi(b *testing.B) {
	s := sample(Light)
	for b.Loop() {
		if _, _, err := Raster(s, 150); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWrapThousandWords(b *testing.B) {
	f := Font{Size: 3}
	text := strings.Repeat("moment arm about the axis ", 200)
	for b.Loop() {
		f.Wrap(text, 120)
	}
}

func BenchmarkRecordSample(b *testing.B) {
	for b.Loop() {
		sample(Light)
	}
}
