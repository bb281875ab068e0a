package server

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"strings"
	"testing"

	"steelyard/internal/server/api"
)

func jpegOf(t *testing.T, w, h int) []byte {
	t.Helper()
	img := image.NewGray(image.Rect(0, 0, w, h))
	for i := range img.Pix {
		img.Pix[i] = byte(i * 7)
	}
	img.Set(0, 0, color.White)
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, nil); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// bomb is a PNG of 200 megapixels that says so in 33 bytes.
func bomb() []byte {
	ihdr := append([]byte("IHDR"), 0, 0, 0x4e, 0x20, 0, 0, 0x27, 0x10, 8, 6, 0, 0, 0) // 20000 × 10000
	out := append([]byte("\x89PNG\r\n\x1a\n\x00\x00\x00\x0d"), ihdr...)
	return binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(ihdr))
}

func TestPhotoUploads(t *testing.T) {
	d := open(t, t.TempDir())
	var p api.Photo
	if status, problem := d.send("POST", "/api/photos", "image/jpeg", bytes.NewReader(jpegOf(t, 3000, 1500)), &p); status != 200 {
		t.Fatalf("%d %+v", status, problem)
	}
	if p.Width != 2048 || p.Height != 1024 || len(p.ID) != 64 || p.Type != "image/jpeg" {
		t.Errorf("%+v", p)
	}
	res, body := d.raw("/api/photos/"+p.ID, nil)
	if res.Header.Get("Content-Type") != "image/jpeg" || len(body) != p.Bytes {
		t.Errorf("%v, %d bytes", res.Header, len(body))
	}
	good := jpegOf(t, 200, 100)
	// A lens of 36 mm on a picture as film had it: the longer side's own length.
	// Tag numbers as in internal/server/photo.
	exif := append([]byte("\xff\xe1\x00\x34Exif\x00\x00MM\x00\x2a\x00\x00\x00\x08"), // pointer to the Exif directory at 26
		"\x00\x01\x87\x69\x00\x04\x00\x00\x00\x01\x00\x00\x00\x1a\x00\x00\x00\x00"+"\x00\x01\xa4\x05\x00\x03\x00\x00\x00\x01\x00\x24\x00\x00\x00\x00\x00\x00"...)
	film := jpegOf(t, 300, 200)
	film = append(append(film[:2:2], exif...), film[2:]...)
	if d.send("POST", "/api/photos", "image/jpeg", bytes.NewReader(film), &p); math.Abs(p.Lens-1) > 1e-4 {
		t.Errorf("lens %g; want 1", p.Lens)
	}
	for _, c := range []struct {
		name string
		data []byte
		want int
		code api.Code
		says string
	}{
		{"nothing", nil, 422, api.Unusable, "no photo"},
		{"a page", []byte("<html><script>alert(1)</script></html>"), 422, api.Unusable, "no photo"},
		{"cut short", good[:len(good)/2], 422, api.Unusable, "damaged"},
		{"200 megapixels", bomb(), 422, api.Unusable, "20000 × 10000"},
		{"26 MB", make([]byte, 26<<20), 413, api.TooLarge, "25 MB"},
	} {
		status, problem := d.send("POST", "/api/photos", "image/jpeg", bytes.NewReader(c.data), nil)
		if status != c.want || problem.Code != c.code || !strings.Contains(problem.Message, c.says) {
			t.Errorf("%s: %d %+v", c.name, status, problem)
		}
	}
	for _, id := range []string{"x", strings.Repeat("0", 64), "..%2f..%2fetc"} {
		if status, _ := d.ask("GET", "/api/photos/"+id, nil, nil); status != 404 {
			t.Errorf("photo %.10q: %d", id, status)
		}
	}
}

func TestArchiveOverHTTP(t *testing.T) {
	from := open(t, t.TempDir())
	sh := from.create(lever)
	if status, _ := from.send("POST", "/api/photos", "image/jpeg", bytes.NewReader(jpegOf(t, 20, 10)), nil); status != 200 {
		t.Fatal(status)
	}
	res, archive := from.raw("/api/export.zip", nil)
	if res.Header.Get("Content-Disposition") != `attachment; filename="steelyard 2026-03-01.zip"` || !bytes.HasPrefix(archive, []byte("PK")) {
		t.Fatalf("%v", res.Header)
	}
	to := open(t, t.TempDir())
	hurt := bytes.Clone(archive)
	hurt[len(hurt)/3] ^= 0x55
	for name, data := range map[string][]byte{"hurt": hurt, "cut": archive[:len(archive)-9], "none": []byte("hello"), "nothing": nil} {
		if status, p := to.send("POST", "/api/import", api.Zip, bytes.NewReader(data), nil); status != 422 || !strings.Contains(p.Message, "nothing was taken") {
			t.Errorf("%s: %d %+v", name, status, p)
		}
	}
	if status, _ := to.ask("GET", "/api/sheets/"+sh.ID, nil, nil); status != 404 {
		t.Error("a damaged archive brought a sheet")
	}
	var room api.Room
	if status, p := to.send("POST", "/api/import", api.Zip, bytes.NewReader(archive), &room); status != 200 {
		t.Fatalf("%d %+v", status, p)
	}
	var got api.Sheet
	if to.must("GET", "/api/sheets/"+sh.ID, nil, &got); got.Text != lever {
		t.Errorf("%+v", got)
	}
}
