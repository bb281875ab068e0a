package reference

// Mark says how far a number was followed back to its source. The order is
// from strong to weak, so the mark of a result is the largest of its parts.
type Mark int

const (
	Measured     Mark = iota // measured on this person
	TwoCopies                // two independently made copies of the source agree
	Retrieved                // seen in one copy of the source or its abstract
	Computed                 // computed here from public data or a published equation
	SecondHand               // quoted by another document, the source itself not seen
	Memory                   // known, not seen again
	Estimate                 // working estimate without a source
	Interpolated             // drawn by us between or beyond published points
)

var markNames = [...]string{
	"measured", "two copies", "retrieved", "computed", "second-hand",
	"from memory", "working estimate, no source", "own interpolation",
}

// String returns the words a screen shows beside the number.
func (m Mark) String() string { return markNames[m] }

// Weak reports whether a screen must show the number as weak: it rests on
// memory, on an estimate or on our own interpolation.
func (m Mark) Weak() bool { return m >= SecondHand }

// Weakest returns the weaker of two marks.
func (m Mark) Weakest(n Mark) Mark { return max(m, n) }

// Source tells where a number comes from.
type Source struct {
	Text string // author, year, title or journal, table
	Mark Mark
}

func parseMark(s string) Mark {
	if s == "memory" {
		return Memory
	}
	for m, name := range markNames {
		if s == name {
			return Mark(m)
		}
	}
	panic("reference: unknown mark " + s)
}
