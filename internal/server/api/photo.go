package api

// Photo is a stored photo: upright, at most 2048 pixels a side, without its
// metadata.
type Photo struct {
	ID     string  `json:"id"` // SHA-256 of what is stored
	Width  int     `json:"width"`
	Height int     `json:"height"`
	Type   string  `json:"type"` // image/jpeg or image/png
	Bytes  int     `json:"bytes"`
	Lens   float64 `json:"lens,omitempty"` // focal length over the longer side as the camera noted it, for Survey.Lens; told when the photo is stored, 0 if it noted none or the photo was cropped or zoomed
}

// Pixel is [right, down] in pixels of the stored photo.
type Pixel [2]float64

// Survey measures places on a photo. One to five lines, rectangles and plates in
// all give the scale; the latter two also take out perspective, and several
// together do so better.
type Survey struct {
	Width      int         `json:"width"` // of the photo, pixels
	Height     int         `json:"height"`
	Lines      []ScaleLine `json:"lines,omitempty"`
	Rectangles []Rectangle `json:"rectangles,omitempty"`
	Plates     []Plate     `json:"plates,omitempty"`
	Near       PhotoSide   `json:"near,omitempty"`    // side of the photo on which the machine was nearer to the camera; a plate alone needs it, see Surveyed.Ambiguous
	Plumb      *[2]Pixel   `json:"plumb,omitempty"`   // two places, the upper one first, on a line that hangs straight down
	Level      *[2]Pixel   `json:"level,omitempty"`   // instead: two places equally high. With neither the photo counts as held level
	Origin     *Pixel      `json:"origin,omitempty"`  // where x and y are 0; left out, the middle of the photo
	Mirror     bool        `json:"mirror,omitempty"`  // the photo was taken from the person's left, so forward is to the left
	Tap        float64     `json:"tap,omitempty"`     // pixels, ± of a tap; 0 means 3
	Lens       float64     `json:"lens,omitempty"`    // focal length over the longer side; 0 means a phone's main lens
	Cropped    bool        `json:"cropped,omitempty"` // the photo was cropped or zoomed, so lens and middle are not known
	Points     []Pixel     `json:"points"`            // to be measured
	Outline    []Pixel     `json:"outline,omitempty"` // taps round a cam's edge, to be traced smoothly
}

// PhotoSide is a side of a photo.
type PhotoSide string

const (
	LeftSide   PhotoSide = "left"
	RightSide  PhotoSide = "right"
	TopSide    PhotoSide = "top"
	BottomSide PhotoSide = "bottom"
)

// ScaleLine is a known length between two places in the plane of motion. By
// itself it tells no perspective: the camera must have looked square at that
// plane.
type ScaleLine struct {
	From   Pixel   `json:"from"`
	To     Pixel   `json:"to"`
	Length float64 `json:"length"`           // m
	Plus   float64 `json:"plus"`             // m, ±
	Nearer float64 `json:"nearer,omitempty"` // m, how far it is in front of the plane of motion
}

// Rectangle is a known rectangle in, or parallel to, the plane of motion: its
// corners in order round it, the first side of length Width.
type Rectangle struct {
	Corners [4]Pixel `json:"corners"`
	Width   float64  `json:"width"` // m, from the first corner to the second
	Height  float64  `json:"height"`
	Plus    float64  `json:"plus"`             // m, ± of both
	Nearer  float64  `json:"nearer,omitempty"` // m, how far it is in front of the plane of motion
}

// Plate is a round plate of known diameter in, or parallel to, the plane of
// motion, by at least five places on its rim.
type Plate struct {
	Rim      []Pixel `json:"rim"`
	Diameter float64 `json:"diameter"` // m; 0.45 for competition plates
	Plus     float64 `json:"plus"`
	Nearer   float64 `json:"nearer,omitempty"` // m, how far the rim is in front of the plane of motion: plates stand out from the arm they hang on
}

// Surveyed is the places measured.
type Surveyed struct {
	Places    []Measured  `json:"places"`
	Outline   []Measured  `json:"outline"`   // the cam, counter-clockwise, evened out
	Plane     [9]float64  `json:"plane"`     // row by row: takes (right, down, 1) in pixels to w·(x, y, 1) in m
	Inverse   [9]float64  `json:"inverse"`   // takes (x, y, 1) in m to w·(right, down, 1) in pixels
	PerPixel  float64     `json:"perPixel"`  // m for each pixel in the middle of the references
	Distance  *float64    `json:"distance"`  // m, of the camera; null if it cannot be told
	Tilt      float64     `json:"tilt"`      // rad, of the camera off square
	Ambiguous bool        `json:"ambiguous"` // two planes explain the references alike
	Sides     []PhotoSide `json:"sides"`     // the two between which Survey.Near then decides; empty if neither would
	Rims      [][]Pixel   `json:"rims"`      // of the plates as the plane explains them, to be drawn over the photo
	Edge      []Pixel     `json:"edge"`      // smooth curve through Outline, to be drawn over the photo
	Words     []string    `json:"words"`     // how good it is and what would make it better
}

// Measured is a place with the error it may have.
type Measured struct {
	At   Place `json:"at"`
	Plus Place `json:"plus"` // ± along x and y, m
}

// Backdrop is a photo laid behind a machine's drawing.
type Backdrop struct {
	Photo   Photo      `json:"photo"`
	Survey  Survey     `json:"survey"`
	Plane   [9]float64 `json:"plane"`
	Inverse [9]float64 `json:"inverse"`
}

// SetBackdrop puts a photo behind a machine's drawing; without a photo it takes
// it away.
type SetBackdrop struct {
	Photo  string  `json:"photo"` // id; empty takes it away
	Survey *Survey `json:"survey,omitempty"`
}
