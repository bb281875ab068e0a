package profile

import (
	"cmp"
	"slices"
)

// Where tells which part of the travel a machine loads.
//
// The rule compares the mean force in the three thirds.
//
//   - Unknown if the work is not positive, or if less than half of a third has
//     a force: what is missing could be the hardest part.
//   - Evenly if the hardest third exceeds the easiest by at most 10 % of the
//     mean force over the travel.
//   - Otherwise the third with the greatest mean force.
//
// Ten per cent is about what an arm in motion can just tell apart: the
// difference threshold for a force against the moving wrist, elbow and
// shoulder is 11, 13 and 8 % of it (S. Feyzabadi et al., Human force
// discrimination during active arm motion for force feedback design, IEEE
// Transactions on Haptics 6(3), 2013, pp. 309-319, abstract; 10 subjects).
type Where uint8

const (
	Unknown Where = iota
	AtStart
	AtMiddle
	AtEnd
	Evenly
	whereCount
)

// evenWithin is the difference between thirds, over the mean, that is still
// called even; see [Where] for the source.
const evenWithin = 0.10

// String completes "it loads most at": "the start", or "evenly".
func (w Where) String() string {
	return [...]string{"unknown", "the start", "the middle", "the end", "evenly"}[min(w, Evenly)]
}

func whereOf(r *Readings) Where {
	if r.Work <= 0 {
		return Unknown
	}
	hardest, easiest := 0, 0
	for k, t := range r.Thirds {
		if t.Covered < 0.5 {
			return Unknown
		}
		if t.Mean > r.Thirds[hardest].Mean {
			hardest = k
		}
		if t.Mean < r.Thirds[easiest].Mean {
			easiest = k
		}
	}
	if r.Thirds[hardest].Mean-r.Thirds[easiest].Mean <= evenWithin*r.Mean {
		return Evenly
	}
	return AtStart + Where(hardest)
}

// Verdict is where a machine loads, judged over all the machines that the
// measurements allow.
type Verdict struct {
	Shares [whereCount]float64 // of the draws, by Where; they add up to 1
}

// sureFrom is the share of draws that must agree before a place is named: the
// coverage of every other band given here.
const sureFrom = 0.95

// Loads returns the place that at least 95 % of the draws name, and whether
// there is one.
func (v Verdict) Loads() (Where, bool) {
	c := v.Candidates()
	return c[0], len(c) == 1 && c[0] != Unknown
}

// Candidates returns the places, the likeliest first, that together account
// for at least 95 % of the draws.
func (v Verdict) Candidates() []Where {
	order := []Where{Unknown, AtStart, AtMiddle, AtEnd, Evenly}
	slices.SortStableFunc(order, func(a, b Where) int { return cmp.Compare(v.Shares[b], v.Shares[a]) })
	total := 0.0
	for i, w := range order {
		total += v.Shares[w]
		if total >= sureFrom {
			return order[:i+1]
		}
	}
	return order
}

func verdictOf(counts [whereCount]int) (v Verdict) {
	total := 0
	for _, n := range counts {
		total += n
	}
	for w, n := range counts {
		v.Shares[w] = float64(n) / float64(total)
	}
	return v
}
