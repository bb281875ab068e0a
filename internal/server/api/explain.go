package api

// Shown names something a step of an explanation points at.
type Shown string

const (
	ShowMachine Shown = "machine"
	ShowAxis    Shown = "axis"
	ShowGravity Shown = "gravity"
	ShowLoadArm Shown = "load arm"
	ShowContact Shown = "contact arm"
	ShowRope    Shown = "rope"
	ShowRadius  Shown = "cam radius"
	ShowTravels Shown = "travels" // of load against contact
	ShowRibbon  Shown = "ribbon"
	ShowCurve   Shown = "curve"
)

// Explanation presents one stroke, step by step.
type Explanation struct {
	Steps   []ExplainStep `json:"steps"`
	Message string        `json:"message"` // ready to be copied and sent
	Preview Preview       `json:"preview"` // with all frames
}

// ExplainStep is one picture with its caption.
type ExplainStep struct {
	Title    string  `json:"title"`
	Caption  string  `json:"caption"`
	Position int     `json:"position"` // of the curve: where the machine stands
	Until    int     `json:"until"`    // it moves on to here; equal to Position if it stands still
	Show     []Shown `json:"show"`
}
