package api

// Session trades the token from the address the program printed for a cookie.
type Session struct {
	Token string `json:"token"`
}

// Room is the board of everything stored.
type Room struct {
	Machines []MachineCard `json:"machines"` // by name
	People   []SheetCard   `json:"people"`
	Rooms    []SheetCard   `json:"rooms"`
	Plans    []SheetCard   `json:"plans"`
	Removed  []SheetCard   `json:"removed"` // latest first; each can be brought back
	Demo     bool          `json:"demo"`    // a sheet of the demo room is there
	Folder   string        `json:"folder"`  // where the data lies
	Engine   string        `json:"engine"`  // version of the computation
}

// SheetCard is a stored sheet in a list.
type SheetCard struct {
	ID       string `json:"id"`
	Kind     Kind   `json:"kind"`
	Name     string `json:"name"`
	Revision int    `json:"revision"`
	Saved    string `json:"saved"` // RFC 3339, UTC
	Demo     bool   `json:"demo"`  // belongs to the demo room
	Removed  bool   `json:"removed"`
}

// MachineCard is a machine in the room: its sign and what decides.
type MachineCard struct {
	SheetCard
	Notes     string   `json:"notes"`
	Contact   string   `json:"contact"` // grip, pad, foot plate, …
	Settings  []Choice `json:"settings"`
	Loads     string   `json:"loads"`     // where it loads, in words
	Sign      *Sign    `json:"sign"`      // null if the machine cannot be computed
	Trouble   string   `json:"trouble"`   // why not, in one sentence
	Exercises []string `json:"exercises"` // that its station serves
	Muscles   []string `json:"muscles"`   // that these train
	Fit       *Fit     `json:"fit"`       // null unless a person was named
}

// Sign is the small ribbon that stands for a machine, and its numbers.
type Sign struct {
	Path   []Place    `json:"path"`   // m, of the contact
	Normal []Place    `json:"normal"` // unit, on the side of the path where a resisting force stands
	Force  []*float64 `json:"force"`  // N, lifting
	Peak   float64    `json:"peak"`   // N
	Mean   float64    `json:"mean"`   // N
	Travel float64    `json:"travel"` // m
	Thirds [3]float64 `json:"thirds"` // N, mean in the lengthened, middle and shortened third
	Ratio  float64    `json:"ratio"`  // lift ratio; 0 if nothing counts as the load
}

// Place is [x, y] in m, ground frame, unless something else is said.
type Place [2]float64

// Demo is asked for to bring the demo room back or to take it away.
type Demo struct {
	Present bool `json:"present"`
}
