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

type byteOrder interface {
	binary.ByteOrder
	binary.AppendByteOrder
}

// tag puts an Exif segment with an orientation and a place into a JPEG.
func tag(data []byte, order byteOrder, orientation uint16) []byte {
	tiff := []byte("MM")
	if order.String() == binary.LittleEndian.String() {
		tiff = []byte("II")
	}
	add16 := func(v uint16) { tiff = order.AppendUint16(tiff, v) }
	add32 := func(v uint32) { tiff = order.AppendUint32(tiff, v) }
	add16(42)
	add32(8)
	add16(2)
	add16(271) // Make, ASCII
	add16(2)
	add32(4)
	tiff = append(tiff, "SPOT"...)
	add16(274)
	add16(3)
	add32(1)
	add16(orientation)
	add16(0)
	add32(0)
	segment := append([]byte("Exif\x00\x00"), tiff...)
	out := append([]byte{}, data[:2]...)
	out = append(out, 0xff, 0xe1)
	out = binary.BigEndian.AppendUint16(out, uint16(len(segment)+2))
	out = append(out, segment...)
	return append(out, data[2:]...)
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
			kept, w, h, err := Prepare(tag(plain, order, orientation))
			if err != nil {
				t.Fatal(err)
			}
			wantW, wantH := 64, 32
			if orientation >= 5 && orientation <= 8 {
				wantW, wantH = 32, 64
			}
			if w != wantW || h != wantH {
				t.Errorf("orientation %d: %d × %d", orientation, w, h)
			}
			if got := colours(t, kept); got != want {
				t.Errorf("orientation %d: %s, want %s", orientation, got, want)
			}
			if bytes.Contains(kept, []byte("Exif")) || bytes.Contains(kept, []byte("SPOT")) {
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
	kept, w, h, err := Prepare(encoded(t, quarters(4096, 1024), "jpeg"))
	if err != nil || w != 2048 || h != 512 || colours(t, kept) != "RGBW" {
		t.Errorf("%d × %d, %v", w, h, err)
	}
	if kind, w, h, err := Check(kept); err != nil || kind != "image/jpeg" || w != 2048 || h != 512 {
		t.Errorf("what is kept: %s, %d × %d, %v", kind, w, h, err)
	}
	clear := image.NewNRGBA(image.Rect(0, 0, 8, 8))
	kept, _, _, err = Prepare(encoded(t, clear, "png"))
	if err != nil || colours(t, kept) != "WWWW" {
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
		if _, _, _, err := Prepare(c.data); !errors.As(err, &bad) || !strings.Contains(bad.Problem, c.want) || bad.Cure == "" {
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
	f.Add(encoded(f, quarters(8, 8), "png"))
	f.Add(pngOf(20000, 10000, 8))
	f.Fuzz(func(t *testing.T, data []byte) {
		if cfg, _, err := header(data); err == nil && cfg.Width*cfg.Height > 1_000_000 {
			return // only slow
		}
		kept, w, h, err := Prepare(data)
		if err != nil {
			return
		}
		if _, kw, kh, err := Check(kept); err != nil || kw != w || kh != h || max(w, h) > side {
			t.Errorf("%d × %d, kept %d × %d, %v", w, h, kw, kh, err)
		}
	})
}
