package photo

import (
	"encoding/binary"
	"image"
)

// orientation reads how a JPEG is to be turned, 1 to 8 as the tag of that name
// says; 1, upright, if it does not say.
//
// Source: JEITA CP-3451, Exif 2.2, 4.5.4 (APP1 segment) and 4.6.4 A (tag
// Orientation, 274), from memory.
func orientation(data []byte) int {
	const (
		soi, sos, app1 = 0xd8, 0xda, 0xe1
		exif           = "Exif\x00\x00"
	)
	if len(data) < 2 || data[0] != 0xff || data[1] != soi {
		return 1
	}
	for i := 2; i+4 <= len(data); {
		if data[i] != 0xff {
			return 1
		}
		marker, size := data[i+1], int(binary.BigEndian.Uint16(data[i+2:]))
		if marker == 0xff { // a fill byte
			i++
			continue
		}
		if marker == sos || size < 2 || i+2+size > len(data) {
			return 1
		}
		segment := data[i+4 : i+2+size]
		if marker == app1 && len(segment) > len(exif) && string(segment[:len(exif)]) == exif {
			return tagged(segment[len(exif):])
		}
		i += 2 + size
	}
	return 1
}

// tagged reads the orientation from a TIFF header and its first directory.
func tagged(tiff []byte) int {
	if len(tiff) < 8 {
		return 1
	}
	var order binary.ByteOrder = binary.BigEndian
	if string(tiff[:2]) == "II" {
		order = binary.LittleEndian
	} else if string(tiff[:2]) != "MM" {
		return 1
	}
	at := uint64(order.Uint32(tiff[4:]))
	if at+2 > uint64(len(tiff)) {
		return 1
	}
	n := uint64(order.Uint16(tiff[at:]))
	for k := range n {
		const size, tag, short = 12, 274, 3
		e := at + 2 + k*size
		if e+size > uint64(len(tiff)) {
			return 1
		}
		if order.Uint16(tiff[e:]) == tag && order.Uint16(tiff[e+2:]) == short {
			if v := int(order.Uint16(tiff[e+8:])); v >= 1 && v <= 8 {
				return v
			}
			return 1
		}
	}
	return 1
}

// turn returns the photo upright. Of the eight orientations 5 to 8 swap the
// sides; 2, 4, 5 and 7 are mirrored.
func turn(img *image.RGBA, orientation int) *image.RGBA {
	if orientation == 1 {
		return img
	}
	w, h := img.Bounds().Dx(), img.Bounds().Dy()
	size := image.Rect(0, 0, w, h)
	if orientation >= 5 {
		size = image.Rect(0, 0, h, w)
	}
	out := image.NewRGBA(size)
	for y := range size.Dy() {
		for x := range size.Dx() {
			sx, sy := source(orientation, x, y, w, h)
			copy(out.Pix[out.PixOffset(x, y):][:4], img.Pix[img.PixOffset(sx, sy):][:4])
		}
	}
	return out
}

// source returns where in a stored picture of w × h the pixel comes from that
// is seen at x, y.
func source(orientation, x, y, w, h int) (sx, sy int) {
	switch orientation {
	case 2:
		return w - 1 - x, y
	case 3:
		return w - 1 - x, h - 1 - y
	case 4:
		return x, h - 1 - y
	case 5:
		return y, x
	case 6:
		return y, h - 1 - x
	case 7:
		return w - 1 - y, h - 1 - x
	case 8:
		return w - 1 - y, x
	}
	return x, y
}
