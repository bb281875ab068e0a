package photo

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"strings"
	"testing"
)

// quarters is a picture of four colours: red upper left, green upper right,
// blue lower left, white lower right.
func quarters(w, h int) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			c := [2][2]color.RGBA{{{255, 0, 0, 255}, {0, 255, 0, 255}}, {{0, 0, 255, 255}, {255, 255, 255, 255}}}[2*y/h][2*x/w]
			img.SetRGBA(x, y, c)
		}
	}
	return img
}

func encoded(t testing.TB, img image.Image, kind string) []byte {
	t.Helper()
	var b bytes.Buffer
	var err error
	if kind == "png" {
		err = png.Encode(&b, img)
	} else {
		err = jpeg.Encode(&b, img, &jpeg.Options{Quality: 95})
	}
	if err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// What each orientation does to the four colours, upper left, upper right,
// lower left, lower right, once set upright. Source: the tag tells which side of
// the stored picture is seen on top and which on the left: 1 top left, 2 top
// right, 3 bottom right, 4 bottom left, 5 left top, 6 right top, 7 right bottom,
// 8 left bottom (Exif 2.2, 4.6.4 A, from memory).
func TestOrientations(t *testing.T) {
	plain := encoded(t, quarters(64, 32), "jpeg")
	for orientation, want := range map[uint16]string{1: "RGBW", 2: "GRWB", 3: "WBGR", 4: "BWRG", 5: "RBGW", 6: "BRWG", 7: "WGBR", 8: "GWRB", 0: "RGBW", 9: "RGBW"} {
		for _, order := range []byteOrder{binary.BigEndian, binary.LittleEndian} {
			kept, err := Prepare(tag(plain, order, orientation))
			if err != nil {
				t.Fatal(err)
			}
			wantW, wantH := 64, 32
			if orientation >= 5 && orientation <= 8 {
				wantW, wantH = 32, 64
			}
			if kept.Width != wantW || kept.Height != wantH {
				t.Errorf("orientation %d: %d × %d", orientation, kept.Width, kept.Height)
			}
			if got := colours(t, kept.Data); got != want {
				t.Errorf("orientation %d: %s, want %s", orientation, got, want)
			}
			if bytes.Contains(kept.Data, []byte("Exif")) || bytes.Contains(kept.Data, []byte("SPOT")) {
				t.Errorf("orientation %d: the metadata is still there", orientation)
			}
		}
	}
}

func colours(t *testing.T, data []byte) string {
	t.Helper()
	img, err := jpeg.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	w, h := img.Bounds().Dx(), img.Bounds().Dy()
	var out strings.Builder
	for _, p := range [][2]int{{w / 4, h / 4}, {3 * w / 4, h / 4}, {w / 4, 3 * h / 4}, {3 * w / 4, 3 * h / 4}} {
		r, g, b, _ := img.At(p[0], p[1]).RGBA()
		switch {
		case r > 0xc000 && g > 0xc000:
			out.WriteString("W")
		case r > 0xc000:
			out.WriteString("R")
		case g > 0xc000:
			out.WriteString("G")
		case b > 0xc000:
			out.WriteString("B")
		default:
			out.WriteString("?")
		}
	}
	return out.String()
}

func TestLargePhotosShrink(t *testing.T) {
	kept, err := Prepare(encoded(t, quarters(4096, 1024), "jpeg"))
	if err != nil || kept.Width != 2048 || kept.Height != 512 || colours(t, kept.Data) != "RGBW" {
		t.Errorf("%d × %d, %v", kept.Width, kept.Height, err)
	}
	if kind, w, h, err := Check(kept.Data); err != nil || kind != "image/jpeg" || w != 2048 || h != 512 {
		t.Errorf("what is kept: %s, %d × %d, %v", kind, w, h, err)
	}
	clear := image.NewNRGBA(image.Rect(0, 0, 8, 8))
	kept, err = Prepare(encoded(t, clear, "png"))
	if err != nil || colours(t, kept.Data) != "WWWW" {
		t.Errorf("a transparent picture: %v", err)
	}
}

// header bytes of a PNG of any size, with nothing behind them.
func pngOf(w, h uint32, depth byte) []byte {
	ihdr := binary.BigEndian.AppendUint32([]byte("IHDR"), w)
	ihdr = binary.BigEndian.AppendUint32(ihdr, h)
	ihdr = append(ihdr, depth, 6, 0, 0, 0)
	out := append([]byte("\x89PNG\r\n\x1a\n"), 0, 0, 0, 13)
	out = append(out, ihdr...)
	return binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(ihdr))
}

func TestRefusedPhotos(t *testing.T) {
	good := encoded(t, quarters(400, 300), "jpeg")
	for _, c := range []struct {
		name string
		data []byte
		want string
	}{
		{"nothing", nil, "no photo"},
		{"a text", []byte("<html>hello</html>"), "no photo"},
		{"another format", []byte("GIF89a\x01\x00\x01\x00\x00\x00\x00"), "no photo"},
		{"a phone's own format", []byte("\x00\x00\x00\x18ftypheic"), "no photo"},
		{"200 megapixels", pngOf(20000, 10000, 8), "20000 × 10000"},
		{"four thousand million", pngOf(65535, 65535, 8), "65535 × 65535"},
		{"a long strip", pngOf(13000, 1, 8), "13000 × 1"},
		{"deep colours", pngOf(6000, 6000, 16), "6000 × 6000"},
		{"nothing behind the header", pngOf(100, 100, 8), "damaged or was cut short"},
		{"half of it", good[:len(good)/2], "damaged or was cut short"},
		{"only its start", good[:4], "no photo"},
	} {
		var bad *Error
		if _, err := Prepare(c.data); !errors.As(err, &bad) || !strings.Contains(bad.Problem, c.want) || bad.Cure == "" {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
		if _, _, _, err := Check(c.data); err == nil {
			t.Errorf("%s: checked and found good", c.name)
		}
	}
}

// Whatever stands in a file, it is refused or comes out small and upright.
func FuzzPrepare(f *testing.F) {
	good := encoded(f, quarters(16, 8), "jpeg")
	f.Add(good)
	f.Add(tag(good, binary.LittleEndian, 6))
	f.Add(tag(good, binary.BigEndian, 1, entry{tag: 41988, kind: 5, value: 1, under: 1}, entry{tag: 41989, kind: 3, value: 26}))
	f.Add(encoded(f, quarters(8, 8), "png"))
	f.Add(pngOf(20000, 10000, 8))
	f.Fuzz(func(t *testing.T, data []byte) {
		if cfg, _, err := header(data); err == nil && cfg.Width*cfg.Height > 1_000_000 {
			return // only slow
		}
		kept, err := Prepare(data)
		if err != nil {
			return
		}
		if _, w, h, err := Check(kept.Data); err != nil || w != kept.Width || h != kept.Height || max(w, h) > side {
			t.Errorf("%d × %d, kept %d × %d, %v", kept.Width, kept.Height, w, h, err)
		}
	})
}
