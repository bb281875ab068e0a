package api

// Structure is what a machine sheet says, taken apart for the page.
type Structure struct {
	Name     string    `json:"name"`
	Notes    string    `json:"notes"`
	Measured string    `json:"measured"`
	Cautions []string  `json:"cautions"` // of the sheet itself
	Contact  string    `json:"contact"`  // kind
	Points   []Point   `json:"points"`
	Links    []Link    `json:"links"`
	Loads    []Load    `json:"loads"`
	Settings []Setting `json:"settings"`
	Values   []Value   `json:"values"` // every number, in the sheet's order
	Cams     []Cam     `json:"cams"`   // traced ones, whose points can be dragged

	Understood []string `json:"understood"` // in plain words
	Assumed    []string `json:"assumed"`
	Missing    []string `json:"missing"`
}

// Point is a named place at the measured pose, with settings as chosen.
type Point struct {
	Name  string   `json:"name"`
	At    Place    `json:"at"`
	Plus  Place    `json:"plus"`  // ± in m along x and y; 0 where none is given
	Links []string `json:"links"` // that carry it; several make it a pin
	Pin   bool     `json:"pin"`
	Fixed bool     `json:"fixed"` // on the ground
}

// Link is a rigid member.
type Link struct {
	Name   string   `json:"name"` // "ground" is the one that does not move
	Points []string `json:"points"`
	Mass   float64  `json:"mass"`
	Center Place    `json:"center"`
}

// Load is what the machine lifts, stretches or turns.
type Load struct {
	Name string `json:"name"`
	Kind string `json:"kind"` // as in the sheet: plates, weight stack, spring, …
}

// Value is one number of the sheet that can be changed.
type Value struct {
	Path     string  `json:"path"` // as a ValueEdit wants it
	Name     string  `json:"name"` // "horn, forward"
	Text     string  `json:"text"` // as written, unit and ± included
	Value    float64 `json:"value"`
	Plus     float64 `json:"plus"`     // ±; 0 if none is given
	Unit     string  `json:"unit"`     // as printed: "mm", "kg", "°"
	PerSI    float64 `json:"perSI"`    // Value·PerSI is the number of those units
	Quantity string  `json:"quantity"` // "length", "mass", …
	How      string  `json:"how"`
	Line     int     `json:"line"`
	Setting  string  `json:"setting"` // name of the setting that puts it there; empty if it stands in the sheet itself
}

// Setting is something adjustable.
type Setting struct {
	Name    string   `json:"name"`
	Notes   string   `json:"notes"`
	Values  []string `json:"values"` // all allowed values in order, ranges written out
	Default string   `json:"default"`
	Chosen  string   `json:"chosen"`
	Ranged  bool     `json:"ranged"` // the values are even steps, fit for a slider
}

// Cam is a traced cam and the points it was traced through, at the measured
// pose.
type Cam struct {
	Name   string  `json:"name"`
	Axis   Place   `json:"axis"`
	Points []Place `json:"points"`
}

// Choice is the value a setting has.
type Choice struct {
	Setting string `json:"setting"`
	Value   string `json:"value"`
}
