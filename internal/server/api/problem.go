package api

// Code tells what kind of thing went wrong.
type Code string

const (
	BadRequest  Code = "bad request" // the request cannot be read
	Unusable    Code = "unusable"    // the sheet or photo in it cannot be used
	Conflict    Code = "conflict"    // somebody else has changed it since
	NotFound    Code = "not found"
	TooLarge    Code = "too large"
	Refused     Code = "refused"      // not from this page, or without its token
	StoreFailed Code = "store failed" // disk full, folder read-only, locked
	Internal    Code = "internal"     // our fault
)

// Problem is the answer when a request fails.
type Problem struct {
	Code     Code           `json:"code"`
	Message  string         `json:"message"` // one sentence with a cure, for the person
	Problems []SheetProblem `json:"problems,omitempty"`
	Current  *Sheet         `json:"current,omitempty"` // in a conflict, the sheet as it now stands
	Yours    string         `json:"yours,omitempty"`   // in a conflict, the text that was not written
}

// SheetProblem is one thing in a sheet that cannot be used.
type SheetProblem struct {
	Line    int    `json:"line"` // from 1; 0 if the whole sheet is meant
	Column  int    `json:"column"`
	Path    string `json:"path"` // to the value, such as links.arm.mass; may be empty
	What    string `json:"what"`
	Limit   string `json:"limit"`
	Cure    string `json:"cure"`
	Message string `json:"message"` // all of it as one sentence
}
