// Package photo makes a photo from a phone fit to be kept and measured:
// upright, of a moderate size, and without what it tells beside the picture,
// such as where it was taken.
package photo

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	_ "image/png" // registers the format

	"golang.org/x/image/draw"
)

// Bounds on what is read. They are looked at before a photo is unpacked, which
// takes up to 8 bytes a pixel.
const (
	mostPixels = 50_000_000
	mostSide   = 12_000
	mostDeep   = 25_000_000 // pixels of 16 bits a colour
)

// side is the longer side in pixels of what is kept: a pixel is then 1 mm on a
// machine that fills 2 m of the picture.
const side = 2048

// quality of the JPEG that is kept.
const quality = 90

// Error says in one sentence why a photo cannot be used.
type Error struct{ Problem, Cure string }

func (e *Error) Error() string { return e.Problem + "; " + e.Cure }

const anotherOne = "take or choose another one, as JPEG or PNG"

// header reads the size of a photo and refuses what is none or too large.
func header(data []byte) (image.Config, string, error) {
	cfg, kind, err := image.DecodeConfig(bytes.NewReader(data))
	switch {
	case err != nil || kind != "jpeg" && kind != "png":
		return cfg, "", &Error{"this is no photo that can be read", anotherOne + "; a phone converts its own format when asked for JPEG"}
	case cfg.Width < 1 || cfg.Height < 1:
		return cfg, "", &Error{"the photo has no pixels", anotherOne}
	case cfg.Width > mostSide || cfg.Height > mostSide || cfg.Width*cfg.Height > mostPixels || cfg.Width*cfg.Height > mostDeep && deep(cfg.ColorModel):
		return cfg, "", &Error{fmt.Sprintf("the photo has %d × %d pixels, which is more than the %d million that are taken", cfg.Width, cfg.Height, mostPixels/1_000_000),
			"take it in a lower resolution; more than 12 million do not measure better"}
	}
	return cfg, "image/" + kind, nil
}

func deep(m color.Model) bool {
	return m == color.RGBA64Model || m == color.NRGBA64Model || m == color.Gray16Model
}

// Check returns type and size of a photo that is kept, after unpacking all of
// it.
func Check(data []byte) (kind string, width, height int, err error) {
	cfg, kind, err := header(data)
	if err != nil {
		return "", 0, 0, err
	}
	if _, err := decode(data); err != nil {
		return "", 0, 0, err
	}
	return kind, cfg.Width, cfg.Height, nil
}

func decode(data []byte) (img image.Image, err error) {
	defer func() {
		if p := recover(); p != nil { // of the decoder, on data no photo has
			err = &Error{"the photo is damaged", anotherOne}
		}
	}()
	img, _, err = image.Decode(bytes.NewReader(data))
	if err != nil {
		return nil, &Error{"the photo is damaged or was cut short", anotherOne}
	}
	return img, nil
}

// Prepared is a photo as it is kept.
type Prepared struct {
	Data          []byte  // JPEG
	Width, Height int     // px
	Lens          float64 // focal length over the longer side as the camera noted it; 0 if it did not, or the photo was cropped or zoomed
}

// Prepare returns a photo as it is kept: a JPEG, upright, at most 2048 pixels a
// side, on white where it was transparent, and without metadata, of which only
// the lens is told. Its errors are an *[Error].
func Prepare(data []byte) (Prepared, error) {
	cfg, _, err := header(data)
	if err != nil {
		return Prepared{}, err
	}
	img, err := decode(data)
	if err != nil {
		return Prepared{}, err
	}
	n := notes(data)
	upright := turn(shrink(img), n.orientation)
	var b bytes.Buffer
	if err := jpeg.Encode(&b, upright, &jpeg.Options{Quality: quality}); err != nil {
		return Prepared{}, errors.Join(&Error{"the photo cannot be kept", anotherOne}, err)
	}
	size := upright.Bounds().Size()
	return Prepared{Data: b.Bytes(), Width: size.X, Height: size.Y, Lens: n.lens(cfg.Width, cfg.Height)}, nil
}

// shrink returns the photo with its longer side at most side pixels.
func shrink(img image.Image) *image.RGBA {
	from := img.Bounds()
	w, h := from.Dx(), from.Dy()
	if longer := max(w, h); longer > side {
		w, h = max(1, w*side/longer), max(1, h*side/longer)
	}
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	draw.Draw(out, out.Bounds(), image.White, image.Point{}, draw.Src)
	draw.BiLinear.Scale(out, out.Bounds(), img, from, draw.Over, nil)
	return out
}
