package api

// Kind tells what a sheet describes.
type Kind string

const (
	KindMachine Kind = "machine"
	KindPerson  Kind = "person"
	KindRoom    Kind = "room"
	KindPlan    Kind = "plan"
)

// Sheet is a stored sheet.
type Sheet struct {
	SheetCard
	Text     string    `json:"text"`     // YAML, as written
	Undo     int       `json:"undo"`     // steps that can be undone
	Redo     int       `json:"redo"`     // steps that can be done again
	Backdrop *Backdrop `json:"backdrop"` // photo behind the drawing; null without one
}

// NewSheet stores a text of any kind under a new id.
type NewSheet struct {
	Text string `json:"text"`
	Look *Look  `json:"look,omitempty"`
}

// Write replaces a sheet's text.
type Write struct {
	Revision int    `json:"revision"` // it was made from
	Text     string `json:"text"`
	Look     *Look  `json:"look,omitempty"` // also evaluate it
}

// Change edits single values of a stored sheet. If the sheet has moved on since
// the revision but the values to be changed have not, the change is made to the
// sheet as it now stands, and Saved says so.
type Change struct {
	Revision int    `json:"revision"`
	Edits    []Edit `json:"edits"`
	Look     *Look  `json:"look,omitempty"`
}

// Step undoes or redoes.
type Step struct {
	Revision int   `json:"revision"`
	Look     *Look `json:"look,omitempty"`
}

// Saved is the sheet after a write, and what it now does if a look was asked
// for.
type Saved struct {
	Sheet   Sheet    `json:"sheet"`
	Merged  string   `json:"merged"`  // says so if somebody else's change was kept beside this one
	Preview *Preview `json:"preview"` // null unless asked for
}

// Edit is one change of a sheet: exactly one of its fields is given.
type Edit struct {
	Value *ValueEdit `json:"value,omitempty"`
	Point *PointDrag `json:"point,omitempty"`
	Cam   *CamDrag   `json:"cam,omitempty"`
}

// ValueEdit writes one value: path as in [Value], text as it is to stand there.
type ValueEdit struct {
	Path string `json:"path"`
	Text string `json:"text"`
}

// PointDrag takes a point somewhere else. The written unit and ± stay.
type PointDrag struct {
	Point  string   `json:"point"`
	To     Place    `json:"to"`
	Driver *float64 `json:"driver,omitempty"` // pose in which it is held; left out, the measured pose
}

// CamDrag takes one traced point of a cam, counted from 1, somewhere else.
type CamDrag struct {
	Cam    string   `json:"cam"`
	Vertex int      `json:"vertex"`
	To     Place    `json:"to"`
	Driver *float64 `json:"driver,omitempty"`
}

// History is the way a sheet came to be, latest first.
type History struct {
	Revisions []Revision `json:"revisions"`
}

// Revision is one state a sheet has had.
type Revision struct {
	Revision int    `json:"revision"`
	Saved    string `json:"saved"` // RFC 3339, UTC
	What     string `json:"what"`  // "saved", "changed", "undone", "redone", "created", "removed", "brought back"
	Text     string `json:"text"`
}

// Changes is what was changed on a sheet, latest first: the latest 200 steps.
type Changes struct {
	Steps []PastStep `json:"steps"`
	Older bool       `json:"older"` // there are steps before these; they are kept
}

// PastStep is one change of a sheet and the state it led to.
type PastStep struct {
	Revision int      `json:"revision"`
	Saved    string   `json:"saved"`   // RFC 3339, UTC
	What     string   `json:"what"`    // as in [Revision], or "gone back": the text of an earlier step was stored again
	Changes  []string `json:"changes"` // "horn, up: 40 → 55 mm"; empty if no value was changed
	Now      bool     `json:"now"`     // the sheet stands like this now
}

// ForceReadings are forces read off a scale at a machine, to be set beside the
// computed curve.
type ForceReadings struct {
	Readings []ForceReading `json:"readings"`
}

// ForceReading is one of them.
type ForceReading struct {
	Travel   float64  `json:"travel"`   // m along the contact's path from the start
	Force    float64  `json:"force"`    // N along the path
	Plus     float64  `json:"plus"`     // N, ±; 0 if none is known
	Settings []Choice `json:"settings"` // it was read with
	Note     string   `json:"note"`
}
