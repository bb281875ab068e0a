package photo

import (
	"encoding/binary"
	"math"
	"testing"
)

type byteOrder interface {
	binary.ByteOrder
	binary.AppendByteOrder
}

// entry is an entry of a directory: a number, or a fraction value/under.
type entry struct {
	tag, kind    uint16
	value, under uint32
}

// directory appends a directory, and behind it its fractions.
func directory(order byteOrder, out []byte, entries []entry) []byte {
	behind := uint32(len(out)+2+12*len(entries)) + 4
	var fractions []byte
	out = order.AppendUint16(out, uint16(len(entries)))
	for _, e := range entries {
		out = order.AppendUint16(out, e.tag)
		out = order.AppendUint16(out, e.kind)
		out = order.AppendUint32(out, 1)
		switch e.kind {
		case 3: // SHORT stands on the left of its four bytes
			out = order.AppendUint16(out, uint16(e.value))
			out = order.AppendUint16(out, 0)
		case 5: // RATIONAL
			out = order.AppendUint32(out, behind+uint32(len(fractions)))
			fractions = order.AppendUint32(order.AppendUint32(fractions, e.value), e.under)
		default:
			out = order.AppendUint32(out, e.value)
		}
	}
	return append(order.AppendUint32(out, 0), fractions...)
}

// tag puts an Exif segment into a JPEG: the maker, the orientation, and what is
// given of the Exif directory.
//
// Source of tag numbers, types and layout: CIPA DC-008-2012 / JEITA CP-3451C,
// Exif 2.3, from memory: Make 271 (ASCII), Orientation 274 (SHORT), Exif IFD
// pointer 34665 (LONG), PixelXDimension 40962 and PixelYDimension 40963 (SHORT or
// LONG), DigitalZoomRatio 41988 (RATIONAL), FocalLengthIn35mmFilm 41989 (SHORT).
func tag(data []byte, order byteOrder, orientation uint16, own ...entry) []byte {
	tiff := []byte("MM")
	if order.String() == binary.LittleEndian.String() {
		tiff = []byte("II")
	}
	tiff = order.AppendUint16(tiff, 42)
	tiff = order.AppendUint32(tiff, 8)
	maker := order.Uint32([]byte("SPOT")) // four letters stand in the entry itself
	main := []entry{{tag: 271, kind: 2, value: maker}, {tag: 274, kind: 3, value: uint32(orientation)}, {tag: 34665, kind: 4, value: 8 + 2 + 3*12 + 4}}
	if len(own) == 0 {
		main = main[:2]
	}
	tiff = directory(order, tiff, main)
	if len(own) > 0 {
		tiff = directory(order, tiff, own)
	}
	segment := append([]byte("Exif\x00\x00"), tiff...)
	out := append([]byte{}, data[:2]...)
	out = append(out, 0xff, 0xe1)
	out = binary.BigEndian.AppendUint16(out, uint16(len(segment)+2))
	out = append(out, segment...)
	return append(out, data[2:]...)
}

// The equivalent focal length keeps the angle of view along the diagonal of film
// of 36 mm × 24 mm, so over the longer side of a picture of 4:3 it is f·√(1 +
// (3/4)²)/43.267 mm, and f/36 mm of one of 3:2. Source: CIPA DCG-001-2018, from
// memory.
func TestLens(t *testing.T) {
	film := math.Hypot(36, 24)
	mm := func(f uint32) entry { return entry{tag: 41989, kind: 3, value: f} }
	zoom := func(over, under uint32) entry { return entry{tag: 41988, kind: 5, value: over, under: under} }
	taken := func(w, h uint32) []entry {
		return []entry{{tag: 40962, kind: 4, value: w}, {tag: 40963, kind: 3, value: h}}
	}
	for _, row := range []struct {
		name string
		w, h int
		own  []entry
		want float64
	}{
		{"a phone's main lens", 400, 300, []entry{mm(26)}, 26 * 1.25 / film},
		{"held upright", 300, 400, []entry{mm(26)}, 26 * 1.25 / film},
		{"a camera with film's sides", 600, 400, []entry{mm(35)}, 35.0 / 36},
		{"a long lens", 400, 300, []entry{mm(77)}, 77 * 1.25 / film},
		{"sides noted across", 300, 400, append(taken(4000, 3000), mm(26)), 26 * 1.25 / film},
		{"no zoom", 400, 300, []entry{zoom(1, 1), mm(26)}, 26 * 1.25 / film},
		{"zoom not used", 400, 300, []entry{zoom(0, 0), mm(26)}, 26 * 1.25 / film},
		{"zoomed into", 400, 300, []entry{zoom(2, 1), mm(52)}, 0},
		{"cropped wide", 480, 270, []entry{mm(26)}, 0},
		{"cropped square", 300, 300, []entry{mm(26)}, 0},
		{"cropped to the other shape", 600, 400, append(taken(4000, 3000), mm(26)), 0},
		{"not known", 400, 300, []entry{mm(0)}, 0},
		{"beyond sense", 400, 300, []entry{mm(60000)}, 0},
		{"of the wrong type", 400, 300, []entry{{tag: 41989, kind: 2, value: 26}}, 0},
		{"nothing noted", 400, 300, nil, 0},
	} {
		plain := encoded(t, quarters(row.w, row.h), "jpeg")
		for _, order := range []byteOrder{binary.BigEndian, binary.LittleEndian} {
			kept, err := Prepare(tag(plain, order, 1, row.own...))
			if err != nil || math.Abs(kept.Lens-row.want) > 1e-4 {
				t.Errorf("%s, %v: %g, %v; want %g", row.name, order, kept.Lens, err, row.want)
			}
		}
	}
}
