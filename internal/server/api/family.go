package api

// Families is what a machine can be built from, point by point.
type Families struct {
	Families []Family `json:"families"`
}

// Family is a kind of machine with the questions that build one.
type Family struct {
	ID     string      `json:"id"`
	Name   string      `json:"name"`
	About  string      `json:"about"`
	Points []PointAsk  `json:"points"` // in the order to be tapped
	Values []ValueAsk  `json:"values"`
	Cam    *OutlineAsk `json:"cam"` // null if the family has no cam
}

// PointAsk asks where something is.
type PointAsk struct {
	Name     string `json:"name"` // in the sheet
	Ask      string `json:"ask"`  // "Where does the arm turn?"
	Hint     string `json:"hint"`
	Picture  string `json:"picture"`  // kind of part to show, such as axle, pin, horn, grip
	Optional bool   `json:"optional"` // left out of the sheet if not answered
	Usual    Place  `json:"usual"`    // m, in the template before anything is tapped
}

// ValueAsk asks for a number.
type ValueAsk struct {
	Name     string  `json:"name"`
	Ask      string  `json:"ask"`
	Hint     string  `json:"hint"`
	Quantity string  `json:"quantity"` // "mass", "length", "angle", "ratio"
	Unit     string  `json:"unit"`     // in which it is asked for
	Low      float64 `json:"low"`      // in that unit
	High     float64 `json:"high"`
	Step     float64 `json:"step"`
	Usual    float64 `json:"usual"`
}

// OutlineAsk asks for the outline of a cam.
type OutlineAsk struct {
	Name    string  `json:"name"`
	Ask     string  `json:"ask"`
	Hint    string  `json:"hint"`
	Picture string  `json:"picture"`
	Least   int     `json:"least"` // number of points
	Usual   []Place `json:"usual"`
}

// Build makes a sheet from answers. What is not answered has its usual value.
type Build struct {
	Name     string        `json:"name"`
	Points   []NamedPlace  `json:"points"`
	Values   []NamedNumber `json:"values"`
	Cam      []Measured    `json:"cam,omitempty"`      // outline, ground frame
	Measured string        `json:"measured,omitempty"` // how, for the sheet
	Look     Look          `json:"look"`
}

// NamedPlace answers a [PointAsk].
type NamedPlace struct {
	Name string `json:"name"`
	At   Place  `json:"at"`
	Plus Place  `json:"plus"` // ±; 0 for none
}

// NamedNumber answers a [ValueAsk] in the unit it asked for.
type NamedNumber struct {
	Name  string  `json:"name"`
	Value float64 `json:"value"`
	Plus  float64 `json:"plus"`
}
