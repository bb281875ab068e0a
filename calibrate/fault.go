package calibrate

// Fault says what is wrong with a survey or a tracing, and how to mend it. It
// has no package prefix, because coaches read it.
type Fault struct {
	Place  string // what is at fault: "the scale line"
	Reason string // a predicate with value, unit and limit
	Cure   string // an instruction
}

// Error returns one sentence.
func (f *Fault) Error() string { return f.Place + " " + f.Reason + "; " + f.Cure }
