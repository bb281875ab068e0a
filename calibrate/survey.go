package calibrate

import "steelyard/planar"

// Pixel is a place on a photo, right and down from its upper left corner.
type Pixel struct{ X, Y float64 }

func (p Pixel) vec() planar.Vec { return planar.Vec(p) }

// Survey is what was tapped on a photo to find the plane of motion in it. It
// needs one to five lines, rectangles and plates; more make it better.
type Survey struct {
	Width, Height int // of the photo, px

	Lines      []Line
	Rectangles []Rectangle
	Plates     []Plate

	Plumb *[2]Pixel // the upper place first, on something that hangs straight down
	Level *[2]Pixel // instead of it: two places equally high. With neither the photo counts as held level

	Origin  *Pixel  // where x and y are 0; nil is the middle of the photo
	Mirror  bool    // taken from the person's left, so forward is to the left
	Near    Side    // of the photo on which the machine was nearer to the camera
	Tap     float64 // px, ± of a tap; 0 means UsualTap
	Lens    float64 // focal length over the photo's longer side; 0 means UsualLens
	Cropped bool    // cropped or zoomed, so that lens and middle are not known
}

// Line is a known length between two places.
type Line struct {
	From, To Pixel
	Length   float64 // m
	Plus     float64 // m, ±
	Nearer   float64 // m, how far in front of the plane of motion
}

// Rectangle is a known rectangle parallel to the plane of motion. The corners go
// round it; the first side has the length Width.
type Rectangle struct {
	Corners       [4]Pixel
	Width, Height float64 // m
	Plus          float64 // m, ± of both
	Nearer        float64 // m, how far in front of the plane of motion
}

// Plate is a round plate parallel to the plane of motion.
type Plate struct {
	Rim      []Pixel // 5 to 40 places, all round
	Diameter float64 // m, see CompetitionPlate
	Plus     float64 // m, ±
	Nearer   float64 // m, how far the rim is in front of the plane of motion
}

// Point is a measured place.
type Point struct {
	At   planar.Vec // m
	Plus planar.Vec // m, ± along x and y
}

// Side is a side of a photo.
type Side uint8

// The sides. AnySide is not known.
const (
	AnySide Side = iota
	LeftSide
	RightSide
	TopSide
	BottomSide
)

// CompetitionPlate is the diameter in m of plates for competition from 10 kg up,
// within 1 mm. Source: a summary of the international weightlifting rules, not
// the rules themselves.
const CompetitionPlate = 0.450

const (
	// UsualTap is the ± of a tap in px: a finger with a loupe on a photo of 2000
	// pixels. Common practice, no source.
	UsualTap = 3
	// UsualLens is the focal length of a phone's main lens over the photo's
	// longer side: 26 mm on a picture whose diagonal is 43.3 mm and whose sides
	// are as 4 to 3. Common practice, no source.
	UsualLens = 0.75
)

// Standard deviations of what is known without a reference. Common practice, no
// source.
const (
	usualLensError = 0.07 // of UsualLens, relative: lenses of 23 to 28 mm
	knownLensError = 0.03 // of a stated lens, relative
	middleError    = 0.01 // of the longer side: the axis against the photo's middle
	croppedMiddle  = 0.15 // the same of a cropped photo

	squareError = 3 * planar.Degree  // of a camera meant to look square
	looseTilt   = 25 * planar.Degree // of any camera
	levelError  = 1 * planar.Degree  // of a phone held level

	// Perspective of a cropped or zoomed photo, longer side over focal length:
	// from none to that of a wide lens.
	croppedBend, croppedBendError = 0.8, 0.35
)

// tap returns the standard deviation of a tap in px.
func (s *Survey) tap() float64 {
	if s.Tap == 0 {
		return UsualTap / 2.0
	}
	return s.Tap / 2
}

// longer returns the longer side in px.
func (s *Survey) longer() float64 { return float64(max(s.Width, s.Height)) }

// middle returns the middle of the photo.
func (s *Survey) middle() planar.Vec {
	return planar.Vec{X: float64(s.Width) / 2, Y: float64(s.Height) / 2}
}

// origin returns the pixel whose place is (0, 0).
func (s *Survey) origin() planar.Vec {
	if s.Origin != nil {
		return s.Origin.vec()
	}
	return s.middle()
}

// camera returns what is known of the lens and of the camera's aim beforehand.
func (s *Survey) camera() prior {
	p := prior{bend: 1 / (UsualLens * s.longer()), middle: s.middle(), middleError: middleError * s.longer(), tiltError: float64(looseTilt)}
	p.bendError = usualLensError * p.bend
	switch {
	case s.Cropped:
		p.bend, p.bendError = croppedBend/s.longer(), croppedBendError/s.longer()
		p.middleError = croppedMiddle * s.longer()
	case s.Lens != 0:
		p.bend = 1 / (s.Lens * s.longer())
		p.bendError = knownLensError * p.bend
	}
	// Two lengths are too few to tell two degrees of tilt besides the scale.
	if len(s.Rectangles)+len(s.Plates) == 0 && len(s.Lines) < 3 {
		p.tiltError = float64(squareError)
	}
	return p
}
