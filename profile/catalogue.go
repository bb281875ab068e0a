package profile

// Reading names one number of [Readings], so that bands, shares and matches
// can speak of each.
type Reading uint8

const (
	Length Reading = iota
	Covered
	StartForce
	StartShare
	StartTravel
	EndForce
	EndShare
	EndTravel
	PeakForce
	PeakShare
	PeakTravel
	LeastForce
	LeastShare
	LeastTravel
	Work
	Mean
	MeanByWork
	Flatness
	PeakToStart
	LengthenedMean
	MiddleMean
	ShortenedMean
	LengthenedShare
	MiddleShare
	ShortenedShare
	LiftRatio
	WorkUp
	WorkDown
	Lost
	readingCount
)

// All returns every reading in a fixed order.
func All() []Reading {
	all := make([]Reading, readingCount)
	for i := range all {
		all[i] = Reading(i)
	}
	return all
}

var catalogue = [readingCount]struct{ name, unit string }{
	Length:          {"travel", "m"},
	Covered:         {"travel with a force", "1"},
	StartForce:      {"starting force", "N"},
	StartShare:      {"place of the starting force", "1"},
	StartTravel:     {"place of the starting force", "m"},
	EndForce:        {"force at the end", "N"},
	EndShare:        {"place of the last force", "1"},
	EndTravel:       {"place of the last force", "m"},
	PeakForce:       {"peak force", "N"},
	PeakShare:       {"place of the peak", "1"},
	PeakTravel:      {"place of the peak", "m"},
	LeastForce:      {"least force", "N"},
	LeastShare:      {"place of the least force", "1"},
	LeastTravel:     {"place of the least force", "m"},
	Work:            {"work", "J"},
	Mean:            {"mean force over the travel", "N"},
	MeanByWork:      {"mean force over the work", "N"},
	Flatness:        {"flatness", "1"},
	PeakToStart:     {"peak over starting force", "1"},
	LengthenedMean:  {"mean force in the lengthened third", "N"},
	MiddleMean:      {"mean force in the middle third", "N"},
	ShortenedMean:   {"mean force in the shortened third", "N"},
	LengthenedShare: {"share of the work in the lengthened third", "1"},
	MiddleShare:     {"share of the work in the middle third", "1"},
	ShortenedShare:  {"share of the work in the shortened third", "1"},
	LiftRatio:       {"lift ratio", "1"},
	WorkUp:          {"work of one stroke up", "J"},
	WorkDown:        {"work of one stroke down", "J"},
	Lost:            {"work lost to friction in one repetition", "J"},
}

// String returns what the reading is called.
func (q Reading) String() string { return catalogue[q].name }

// Unit returns the SI unit, "1" for a ratio.
func (q Reading) Unit() string { return catalogue[q].unit }

// Value returns one reading by name, in its [Reading.Unit].
func (r Readings) Value(q Reading) float64 { return *r.field(q) }

func (r *Readings) field(q Reading) *float64 {
	switch q {
	case Length:
		return &r.Length
	case Covered:
		return &r.Covered
	case StartForce, StartShare, StartTravel:
		return r.Start.field(q - StartForce)
	case EndForce, EndShare, EndTravel:
		return r.End.field(q - EndForce)
	case PeakForce, PeakShare, PeakTravel:
		return r.Peak.field(q - PeakForce)
	case LeastForce, LeastShare, LeastTravel:
		return r.Least.field(q - LeastForce)
	case Work:
		return &r.Work
	case Mean:
		return &r.Mean
	case MeanByWork:
		return &r.MeanByWork
	case Flatness:
		return &r.Flatness
	case PeakToStart:
		return &r.PeakToStart
	case LengthenedMean, MiddleMean, ShortenedMean:
		return &r.Thirds[q-LengthenedMean].Mean
	case LengthenedShare, MiddleShare, ShortenedShare:
		return &r.Thirds[q-LengthenedShare].Share
	case LiftRatio:
		return &r.LiftRatio
	case WorkUp:
		return &r.WorkUp
	case WorkDown:
		return &r.WorkDown
	case Lost:
		return &r.Lost
	}
	panic("profile: no such reading")
}

// field follows the order force, share, travel of the readings of a place.
func (p *Point) field(i Reading) *float64 {
	switch i {
	case 0:
		return &p.Force
	case 1:
		return &p.Share
	}
	return &p.Travel
}
