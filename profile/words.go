package profile

import (
	"fmt"
	"math"
	"strings"
)

const (
	// atTheEnds is how close to an end of the travel, as a share of it, a
	// place is called the start or the end.
	atTheEnds = 0.05

	// worthSaying is the share of travel or work below which a gap, a helping
	// stretch or friction is not mentioned.
	worthSaying = 0.01
)

// Words says what the readings say, in sentences for a coach: numbers and
// places, no reasons.
func Words(r Readings, f Formatter) []string {
	s := []string{hardest(r, f)}
	if v := loads(r, f); v != "" {
		s = append(s, v)
	}
	return append(s, rest(r, f)...)
}

// hardest says where the force is greatest and where it is least.
func hardest(r Readings, f Formatter) string {
	if r.Loads == Evenly {
		return fmt.Sprintf("Even throughout: from %s to %s.", f.Force(r.Least.Force), f.Force(r.Peak.Force))
	}
	head := fmt.Sprintf("Hardest %s: %s", place(r.Peak), f.Force(r.Peak.Force))
	switch {
	case r.Least.Share > r.Peak.Share:
		return fmt.Sprintf("%s; lets off to %s %s.", head, f.Force(r.Least.Force), place(r.Least))
	case r.End.Force < r.Peak.Force && r.Peak.Share < 1-atTheEnds:
		return fmt.Sprintf("%s; up from %s %s, down to %s at the end.", head,
			f.Force(r.Least.Force), place(r.Least), f.Force(r.End.Force))
	}
	return fmt.Sprintf("%s; up from %s %s.", head, f.Force(r.Least.Force), place(r.Least))
}

// place names a place on the travel.
func place(p Point) string { return placeOf(p.Share) }

func placeOf(share float64) string {
	switch {
	case share <= atTheEnds:
		return "at the start"
	case share >= 1-atTheEnds:
		return "at the end"
	}
	return percent(share) + " of the way"
}

// loads gives the verdict with the thirds it rests on.
func loads(r Readings, f Formatter) string {
	thirds := fmt.Sprintf("%s in the lengthened third, %s in the middle, %s in the shortened",
		f.Force(r.Thirds[Lengthened].Mean), f.Force(r.Thirds[Middle].Mean), f.Force(r.Thirds[Shortened].Mean))
	switch r.Loads {
	case Unknown:
		return ""
	case Evenly:
		return "Loads the whole travel alike: on average " + thirds + "."
	}
	return fmt.Sprintf("Loads %v: on average %s.", r.Loads, thirds)
}

// rest says what needs no verdict.
func rest(r Readings, f Formatter) []string {
	s := []string{fmt.Sprintf("On average %s over %s of travel; one lift takes %s of work.",
		f.Force(r.Mean), f.Length(r.Length*r.Covered), f.Work(r.WorkUp))}
	if r.LiftRatio != 0 {
		s = append(s, fmt.Sprintf("Lift ratio %.2f: the load travels %.2f times as far as the contact.", r.LiftRatio, r.LiftRatio))
	}
	if r.WorkUp > 0 && r.Lost > worthSaying*r.WorkUp {
		s = append(s, fmt.Sprintf("Friction takes %s of every repetition: lowering gives back %s of the %s that lifting took.",
			f.Work(r.Lost), f.Work(r.WorkDown), f.Work(r.WorkUp)))
	}
	if r.Helps > worthSaying {
		s = append(s, fmt.Sprintf("Over %s of the travel the machine moves the person instead of resisting.", percent(r.Helps)))
	}
	if missing := 1 - r.Covered; missing > worthSaying {
		s = append(s, fmt.Sprintf("Over %s of the travel there is no force to read; nothing is said about it.", percent(missing)))
	}
	return s
}

// Words says the same with the uncertainty: each force with its range, and no
// place named that fewer than 95 % of the possible machines share.
func (b *Band) Words(f Formatter) []string {
	s := []string{b.hardest(f), b.loads(f)}
	s = append(s, rest(b.Readings, f)...)
	if n, ok := b.Dominant(); ok {
		s = append(s, n.words(f))
	}
	if b.Failed > 0 {
		s = append(s, fmt.Sprintf("%d of %d machines within the measurements could not be put together and are left out.", b.Failed, b.Draws))
	}
	if u, ok := b.patchy(); ok {
		s = append(s, fmt.Sprintf("About %s of the way some of the possible machines have no force to read; the range there leaves them out.", percent(u)))
	}
	return s
}

// hardest names the place of the peak only as closely as it is known.
func (b *Band) hardest(f Formatter) string {
	force := b.ranged(PeakForce, f)
	if w, ok := b.Verdict.Loads(); ok && w == Evenly {
		return fmt.Sprintf("Even throughout: at most %s, at least %s.", force, b.ranged(LeastForce, f))
	}
	from, to := placeOf(b.readings[PeakShare].Low), placeOf(b.readings[PeakShare].High)
	if from == to {
		return fmt.Sprintf("Hardest %s: %s; starts at %s, ends at %s.", from, force, b.ranged(StartForce, f), b.ranged(EndForce, f))
	}
	return fmt.Sprintf("Hardest somewhere from %s to %s: %s.", bare(from), bare(to), force)
}

// bare turns "at the start" into "the start".
func bare(place string) string { return strings.TrimPrefix(place, "at ") }

// ranged writes a force and the range it may lie in.
func (b *Band) ranged(q Reading, f Formatter) string {
	in := b.readings[q]
	return fmt.Sprintf("%s (%s to %s)", f.Force(b.Readings.Value(q)), f.Force(in.Low), f.Force(in.High))
}

// loads gives the verdict, or what it hangs between.
func (b *Band) loads(f Formatter) string {
	thirds := fmt.Sprintf("%s in the lengthened third, %s in the middle, %s in the shortened",
		b.ranged(LengthenedMean, f), b.ranged(MiddleMean, f), b.ranged(ShortenedMean, f))
	w, sure := b.Verdict.Loads()
	switch {
	case sure && w == Evenly:
		return "Loads the whole travel alike: on average " + thirds + "."
	case sure:
		return fmt.Sprintf("Loads %v: on average %s.", w, thirds)
	}
	return b.doubt() + " On average " + thirds + "."
}

func (b *Band) doubt() string {
	candidates := b.Verdict.Candidates()
	if len(candidates) == 1 {
		return "Can't tell where it loads: too much of the travel has no force to read."
	}
	var places, shares []string
	whole := wholePercents(b.Verdict, candidates)
	for i, w := range candidates {
		places = append(places, [...]string{
			"enough of the travel has a force to say", "it loads the start", "it loads the middle",
			"it loads the end", "it loads evenly"}[w])
		shares = append(shares, fmt.Sprintf("%d %% ", whole[i])+[...]string{
			"can't be read", "load the start", "load the middle", "load the end", "load evenly"}[w])
	}
	return fmt.Sprintf("Can't tell whether %s: of the machines that fit the measurements %s.",
		strings.Join(places, " or "), strings.Join(shares, ", "))
}

// wholePercents rounds the candidates' shares to whole percents that add up to
// no more than 100: each is cut, and the greatest remainders are rounded up.
func wholePercents(v Verdict, candidates []Where) []int {
	whole := make([]int, len(candidates))
	total, cut := 0.0, 0
	for i, w := range candidates {
		total += 100 * v.Shares[w]
		whole[i] = int(100 * v.Shares[w])
		cut += whole[i]
	}
	for missing := int(math.Round(total)) - cut; missing > 0; missing-- {
		best := 0
		for i, w := range candidates {
			if 100*v.Shares[w]-float64(whole[i]) > 100*v.Shares[candidates[best]]-float64(whole[best]) {
				best = i
			}
		}
		whole[best]++
	}
	return whole
}

// patchy returns the first share of the travel where fewer than 95 % of the
// draws have a force although the stated machine has one.
func (b *Band) patchy() (share float64, ok bool) {
	for i, p := range b.Present {
		if p < sureFrom && present(b.Gap, len(b.Share), i) {
			return b.Share[i], true
		}
	}
	return 0, false
}

func (n Narrowing) words(f Formatter) string {
	return fmt.Sprintf("Measure %s again first: known exactly it would narrow the band from ±%s to ±%s.",
		n.Measurement.Name, f.Force(n.Half), f.Force(n.Without))
}
