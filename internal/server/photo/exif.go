package photo

import (
	"encoding/binary"
	"math"
)

// noted is what a camera noted in a JPEG beside the picture; zero where it did
// not.
type noted struct {
	orientation   int     // how the picture is to be turned, 1 to 8
	equivalent    float64 // focal length on 35-mm film, mm
	zoom          float64 // digital zoom ratio
	width, height float64 // px, of the picture as it was taken
}

// Tags of the first directory and of the Exif directory it points to, and types.
//
// Source: CIPA DC-008-2012 / JEITA CP-3451C, Exif 2.3, 4.6.2 (types), 4.6.4
// (Orientation), 4.6.3 (Exif IFD pointer), 4.6.5 (the others), from memory.
const (
	orientationTag = 274
	exifPointer    = 34665
	widthTag       = 40962 // PixelXDimension
	heightTag      = 40963 // PixelYDimension
	zoomTag        = 41988 // DigitalZoomRatio
	equivalentTag  = 41989 // FocalLengthIn35mmFilm

	shortType    = 3
	longType     = 4
	rationalType = 5
)

// notes reads what a camera noted, as far as it can be read.
//
// Source: the same, 4.5.4 (APP1 segment), from memory.
func notes(data []byte) noted {
	const (
		soi, sos, app1 = 0xd8, 0xda, 0xe1
		exif           = "Exif\x00\x00"
	)
	if len(data) < 2 || data[0] != 0xff || data[1] != soi {
		return noted{}
	}
	for i := 2; i+4 <= len(data); {
		if data[i] != 0xff {
			break
		}
		marker, size := data[i+1], int(binary.BigEndian.Uint16(data[i+2:]))
		if marker == 0xff { // a fill byte
			i++
			continue
		}
		if marker == sos || size < 2 || i+2+size > len(data) {
			break
		}
		segment := data[i+4 : i+2+size]
		if marker == app1 && len(segment) > len(exif) && string(segment[:len(exif)]) == exif {
			return tagged(segment[len(exif):])
		}
		i += 2 + size
	}
	return noted{}
}

// tiff is a TIFF header with what follows it.
type tiff struct {
	data  []byte
	order binary.ByteOrder
}

// tagged reads the first directory and the Exif directory.
func tagged(data []byte) noted {
	if len(data) < 8 {
		return noted{}
	}
	t := tiff{data, binary.BigEndian}
	if string(data[:2]) == "II" {
		t.order = binary.LittleEndian
	} else if string(data[:2]) != "MM" {
		return noted{}
	}
	main := t.directory(t.order.Uint32(data[4:]))
	n := noted{orientation: int(main[orientationTag])}
	if at := main[exifPointer]; at > 0 {
		own := t.directory(uint32(at))
		n.equivalent, n.zoom, n.width, n.height = own[equivalentTag], own[zoomTag], own[widthTag], own[heightTag]
	}
	return n
}

// directory returns the single numbers of a directory by their tags.
func (t *tiff) directory(offset uint32) map[uint16]float64 {
	const size = 12 // of an entry: tag, type, count, value or its place
	found := map[uint16]float64{}
	at := uint64(offset)
	if at+2 > uint64(len(t.data)) {
		return found
	}
	n := uint64(t.order.Uint16(t.data[at:]))
	for k := range n {
		e := at + 2 + k*size
		if e+size > uint64(len(t.data)) {
			break
		}
		entry := t.data[e : e+size]
		if t.order.Uint32(entry[4:]) != 1 {
			continue
		}
		tag := t.order.Uint16(entry)
		switch t.order.Uint16(entry[2:]) {
		case shortType:
			found[tag] = float64(t.order.Uint16(entry[8:]))
		case longType:
			found[tag] = float64(t.order.Uint32(entry[8:]))
		case rationalType:
			found[tag] = t.rational(t.order.Uint32(entry[8:]))
		}
	}
	return found
}

// rational returns the fraction at a place; 0 if there is none.
func (t *tiff) rational(offset uint32) float64 {
	at := uint64(offset)
	if at+8 > uint64(len(t.data)) {
		return 0
	}
	over, under := t.order.Uint32(t.data[at:]), t.order.Uint32(t.data[at+4:])
	if under == 0 {
		return 0
	}
	return float64(over) / float64(under)
}

const (
	// filmDiagonal of a 36 mm × 24 mm picture, mm. The equivalent focal length
	// keeps the angle of view along the diagonal. Source: CIPA DCG-001-2018, from
	// memory.
	filmDiagonal = 43.267
	// sameShape is the relative difference below which two ratios of sides are
	// one: sizes are multiples of 16 px in some cameras.
	sameShape = 0.01
	// leastLens and mostLens bound what a survey takes (package calibrate).
	leastLens, mostLens = 0.3, 10
)

// shapes are the ratios of the sides of what cameras take uncropped: phones 4:3,
// others 3:2 as film had. Common practice, no source.
var shapes = [...]float64{4.0 / 3, 3.0 / 2}

// lens returns the focal length over the longer side of a picture of w × h px,
// either way up; 0 if the camera did not note it, or if the picture was cropped
// or zoomed into, so that the note is of another picture.
func (n *noted) lens(w, h int) float64 {
	longer, shorter := float64(max(w, h)), float64(min(w, h))
	whole := false
	for _, s := range shapes {
		whole = whole || math.Abs(longer/shorter/s-1) < sameShape
	}
	if n.width > 0 && n.height > 0 {
		taken := max(n.width, n.height) / min(n.width, n.height)
		whole = whole && math.Abs(longer/shorter/taken-1) < sameShape
	}
	if !whole || n.zoom > 1 {
		return 0
	}
	lens := n.equivalent / filmDiagonal * math.Hypot(longer, shorter) / longer
	if lens < leastLens || lens > mostLens {
		return 0
	}
	return lens
}
