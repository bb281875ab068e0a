package exercise

import (
	"fmt"
	"math"
	"slices"
)

// Aim is where in a muscle's range a search would like the effort to be.
type Aim int

// The aims.
const (
	NoAim Aim = iota // as much of the range as the person has
	AimLengthened
	AimMiddle
	AimShortened
	AimEven // the same in all three thirds
)

var aimNames = [...]string{"", "lengthened", "middle", "shortened", "even"}

// String returns the aim's name, empty for none.
func (a Aim) String() string { return aimNames[a] }

// ParseAim returns the aim with the given name.
func ParseAim(name string) (Aim, error) {
	if i := slices.Index(aimNames[:], name); i >= 0 {
		return Aim(i), nil
	}
	return NoAim, fmt.Errorf("the aim %q is unknown; choose lengthened, middle, shortened or even", name)
}

// met tells how well shares of the effort in the lengthened, middle and
// shortened third meet the aim: 0 not at all, 1 wholly.
func (a Aim) met(shares [3]float64) float64 {
	switch a {
	case AimLengthened, AimMiddle, AimShortened:
		return shares[a-AimLengthened]
	case AimEven:
		off := 0.0
		for _, s := range shares {
			off = max(off, math.Abs(s-1.0/3))
		}
		return 1 - 1.5*off // all in one third is off by 2/3
	}
	return 0
}

// InLine is how far a body joint may be from the machine's axis and still count
// as in line with it, m. Own choice, no source: the centre of a joint is hardly
// found better through skin and clothes.
const InLine = 0.010

// axisStep is the difference in alignment below which the aim decides, m. Own
// choice, no source.
const axisStep = 0.005

// Enough is the share of the travel that a person must be able to use for a
// setting to fit, if nothing else is asked. Own choice, no source: a press is
// not wrong for somebody whose arms are straight before its stop.
const Enough = 0.8

// Score is what makes one choice of settings better than another. The numbers
// stand in the order of their weight: the first that differs decides, and less
// is better.
//
//	0  1 if the machine cannot be set so
//	1  worst angle past a limit on the person's own sheet, degrees
//	2  share of the travel that cannot be used and should be, to the hundredth
//	3  if there is any: worst shortfall in reach, mm
//	4  if there is any: worst angle past a usual limit, degrees
//	5  distance of joint and machine axis beyond InLine, in steps of 5 mm, rounded up
//	6  how far the effort misses the aim, to the hundredth; 0 without an aim
//	7  share of the person's range that is not covered, to the hundredth
//	8  distance of joint and machine axis, mm
//
// So a choice that does not fit never beats one that does; among those that
// fit, a joint out of line by 5 mm more is not bought back by anything; and the
// aim counts for more than the range. The numbers are rounded so that two
// choices nobody could tell apart are the same.
type Score [9]float64

func (s Score) compare(o Score) int { return slices.Compare(s[:], o[:]) }

// scoreOf returns the score of a trial.
func scoreOf(t *Trial, aim Aim) Score {
	if t.Err != nil {
		return Score{0: 1}
	}
	s := Score{
		1: round(t.OwnBeyond.Degrees(), 0.1),
		2: max(0, round(t.enough-t.Used(), 0.01)),
		5: max(0, math.Ceil(round((t.Misaligned-InLine)/axisStep, 1e-6))),
		7: round(1-t.Covered, 0.01),
		8: round(1000*t.Misaligned, 0.1),
	}
	if !t.Fits() {
		s[3], s[4] = round(1000*t.Short, 0.1), round(t.Beyond.Degrees(), 0.1)
	}
	if aim != NoAim {
		s[6] = round(1-aim.met(t.Shares()), 0.01)
	}
	return s
}

func round(x, step float64) float64 { return step * math.Round(x/step) }
