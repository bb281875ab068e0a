package api

// Photo is a stored photo: upright, at most 2048 pixels a side, without its
// metadata.
type Photo struct {
	ID     string `json:"id"` // SHA-256 of what is stored
	Width  int    `json:"width"`
	Height int    `json:"height"`
	Type   string `json:"type"` // image/jpeg or image/png
	Bytes  int    `json:"bytes"`
}

// Pixel is [right, down] in pixels of the stored photo.
type Pixel [2]float64

// Survey measures places on a photo. One of Scale, Rectangle and Plate gives
// the scale; the latter two also take out perspective.
type Survey struct {
	Width     int        `json:"width"` // of the photo, pixels
	Height    int        `json:"height"`
	Scale     *ScaleLine `json:"scale,omitempty"`
	Rectangle *Rectangle `json:"rectangle,omitempty"`
	Plate     *Plate     `json:"plate,omitempty"`
	Plumb     *[2]Pixel  `json:"plumb,omitempty"`  // two places, the upper one first, on a line that hangs straight down; left out, the photo was held level
	Origin    *Pixel     `json:"origin,omitempty"` // where x and y are 0; left out, the middle of the photo
	Mirror    bool       `json:"mirror,omitempty"` // the photo was taken from the person's left, so forward is to the left
	Tap       float64    `json:"tap,omitempty"`    // pixels, ± of a tap; 0 means 3
	Lens      float64    `json:"lens,omitempty"`   // focal length over the longer side; 0 means a phone's main lens, 0.75
	Points    []Pixel    `json:"points"`           // to be measured
}

// ScaleLine is a known length between two places in the plane of motion. The
// camera must have looked square at that plane.
type ScaleLine struct {
	From   Pixel   `json:"from"`
	To     Pixel   `json:"to"`
	Length float64 `json:"length"` // m
	Plus   float64 `json:"plus"`   // m, ±
}

// Rectangle is a known rectangle in, or parallel to, the plane of motion: its
// corners in order round it, the first side of length Width.
type Rectangle struct {
	Corners [4]Pixel `json:"corners"`
	Width   float64  `json:"width"` // m, from the first corner to the second
	Height  float64  `json:"height"`
	Plus    float64  `json:"plus"` // m, ± of both
}

// Plate is a round plate of known diameter in, or parallel to, the plane of
// motion, by at least five places on its rim.
type Plate struct {
	Rim      []Pixel `json:"rim"`
	Diameter float64 `json:"diameter"` // m; 0.45 for competition plates
	Plus     float64 `json:"plus"`
}

// Surveyed is the places measured.
type Surveyed struct {
	Places   []Measured `json:"places"`
	Plane    [9]float64 `json:"plane"`    // row by row: takes (right, down, 1) in pixels to w·(x, y, 1) in m
	Inverse  [9]float64 `json:"inverse"`  // takes (x, y, 1) in m to w·(right, down, 1) in pixels
	PerPixel float64    `json:"perPixel"` // m for each pixel in the middle of the reference
	Tilt     float64    `json:"tilt"`     // rad, of the camera off square; 0 for a scale line, which cannot tell
	Rim      []Pixel    `json:"rim"`      // the ellipse fitted to a plate, to be drawn over the photo
	Words    []string   `json:"words"`    // how good it is and what would make it better
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
