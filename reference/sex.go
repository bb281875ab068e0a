package reference

// Sex selects the half of a table that was measured on women or on men.
type Sex int

const (
	Unstated Sex = iota // not given: both halves are used and the band covers both
	Female
	Male
)

// String returns "not stated", "female" or "male".
func (s Sex) String() string { return [...]string{"not stated", "female", "male"}[s] }

// Halves returns the halves of a table that stand for s: the one named, or
// both when the sex is not stated.
func (s Sex) Halves() []Sex {
	if s == Unstated {
		return []Sex{Female, Male}
	}
	return []Sex{s}
}

func parseSex(s string) Sex {
	switch s {
	case "male":
		return Male
	case "female":
		return Female
	case "both":
		return Unstated
	}
	panic("reference: unknown sex " + s)
}
