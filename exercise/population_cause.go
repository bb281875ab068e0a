package exercise

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"

	"steelyard/human"
	"steelyard/reference"
)

// mostExamined is how many of those not served are looked at: at that number a
// share is known to 5 in 100.
const mostExamined = 400

// verdict is why one person is not served.
type verdict struct {
	reason string
	frees  [reference.NumDimensions]bool // the average one would do
}

// explain finds out what keeps people from fitting: what is wrong at the place
// that is least bad, and which dimension, made average, would free them.
func (c *crowd) explain(ctx context.Context, workers int) error {
	var shut []int
	for i := range c.people {
		if !slices.Contains(c.row(i), true) && len(shut) < mostExamined {
			shut = append(shut, i)
		}
	}
	c.out.Examined = len(shut)
	verdicts := make([]verdict, len(shut))
	err := shareOut(ctx, len(shut), workers, nil, func(k int) { verdicts[k] = c.judge(c.people[shut[k]]) })
	if err != nil {
		return err
	}
	counts := map[string]int{}
	var freed, long [reference.NumDimensions]int
	for k, v := range verdicts {
		counts[v.reason]++
		person := &c.people[shut[k]]
		for d, free := range v.frees {
			if !free {
				continue
			}
			freed[d]++
			if person.Size[d] > average(person.Sex, reference.Dimension(d)) {
				long[d]++
			}
		}
	}
	for text, n := range counts {
		c.out.Reasons = append(c.out.Reasons, Reason{text, n})
	}
	slices.SortFunc(c.out.Reasons, func(a, b Reason) int {
		return cmp.Or(cmp.Compare(b.People, a.People), cmp.Compare(a.Text, b.Text))
	})
	for d, n := range freed {
		if n > 0 {
			c.out.Dimensions = append(c.out.Dimensions, InTheWay{reference.Dimension(d), 2*long[d] > n, n})
		}
	}
	slices.SortStableFunc(c.out.Dimensions, func(a, b InTheWay) int { return cmp.Compare(b.People, a.People) })
	return nil
}

func average(sex reference.Sex, d reference.Dimension) float64 {
	return reference.SurveyOf(sex).Row[d].Mean
}

// judge finds why one person is not served.
func (c *crowd) judge(person human.Drawn) verdict {
	b := c.body(person)
	least, v := math.Inf(1), verdict{}
	for p := range c.places {
		if lost, reason := c.places[p].complaint(b, c.within); lost < least {
			least, v.reason = lost, reason
		}
	}
	for d := range reference.NumDimensions {
		if d == reference.Stature || d == reference.Mass {
			continue
		}
		other := person
		other.Size[d] = average(person.Sex, d)
		changed := c.body(other)
		v.frees[d] = changed.Links != b.Links && slices.ContainsFunc(c.places, func(s rig) bool { return s.suits(changed, c.within, c.enough) })
	}
	return v
}

// complaint returns the share of the travel that a body cannot use at a place,
// and what ends the stretch that it can on the side where more is lost.
func (s *rig) complaint(b *human.Body, within float64) (lost float64, reason string) {
	first, last := s.stretch(b, within, 1)
	at, where := s.middle(), "midway"
	if last >= first {
		at, where = first-1, "at the start"
		if end := len(s.travel) - 1; s.used(last, end) > s.used(0, first) {
			at, where = last+1, "at the end"
		}
	}
	if at < 0 {
		return 0, ""
	}
	var pl Placement
	f, off := s.misfit(&pl, b, at, within)
	// Where nothing can be used at all the smaller fault is the less bad.
	return 1 - s.used(first, last) + 1e-3*(f.By+off), s.inShort(f, where)
}

// inShort names a fault and where on the travel it is, without its size.
func (s *rig) inShort(f Fault, where string) string {
	switch f.Kind {
	case TooFar:
		return fmt.Sprintf("the %v is too short to reach %s", f.Limb, where)
	case TooNear:
		return fmt.Sprintf("the %v does not fold enough %s", f.Limb, where)
	case OffLimb:
		return fmt.Sprintf("the pad lies beyond the %v %s", s.Station.On, where)
	case PastRange:
		return fmt.Sprintf("%v past the usual limit %s", f.Motion, where)
	}
	return fmt.Sprintf("the %s is too far from the machine's axis", s.jointInLine())
}
