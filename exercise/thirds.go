package exercise

import (
	"math"

	"steelyard/human"
)

// MuscleThirds is how much one muscle group is asked while it is long, middling
// and short within this person's own range of motion, lifting.
type MuscleThirds struct {
	Muscle human.Muscle
	Length []float64     // by position: 0 shortest, 1 longest within the ranges
	Effort []float64     // by position: the effort of the joint actions it works in; NaN where there is no figure
	Thirds [3]ThirdOfUse // lengthened, middle, shortened
}

// ThirdOfUse is one third of a muscle's range.
type ThirdOfUse struct {
	Share float64 // of the travel that lies in it
	Mean  float64 // effort there, over the travel that has a figure; 0 where there is none
	Guess bool    // some of it rests on strengths at angles nobody was tested at
}

// Lengthened, Middle and Shortened index MuscleThirds.Thirds.
const (
	Lengthened = iota
	Middle
	Shortened
)

func thirdOf(length float64) int {
	switch {
	case length >= 2.0/3:
		return Lengthened
	case length > 1.0/3:
		return Middle
	}
	return Shortened
}

func (r *Result) thirds() []MuscleThirds {
	stretch := human.NewStretch(&r.Body.Ranges)
	var out []MuscleThirds
	for _, m := range r.Setup.Exercise.Muscles() {
		out = append(out, r.thirdsOf(stretch, m))
	}
	return out
}

// thirdsOf tells where a muscle is loaded.
func (r *Result) thirdsOf(stretch *human.Stretch, m human.Muscle) MuscleThirds {
	n := r.Setup.Len()
	t := MuscleThirds{Muscle: m, Length: make([]float64, n), Effort: make([]float64, n)}
	for i := range n {
		if r.Gap[i] != "" {
			continue
		}
		p := &r.Placements[i]
		t.Length[i] = stretch.At(m, p.Posture())
		t.Effort[i] = r.Lifting.effortOf(m, p, i)
	}
	t.Thirds = weigh(t.Length, t.Effort, r.Travel, r.Gap)
	for i := range n {
		if r.Gap[i] == "" && r.Lifting.guesses(m, &r.Placements[i], i) {
			t.Thirds[thirdOf(t.Length[i])].Guess = true
		}
	}
	return t
}

// guesses reports whether an action a muscle works in is asked at position i
// where its strength is a guess.
func (ph *Phase) guesses(m human.Muscle, p *Placement, i int) bool {
	for k := range ph.Joints {
		c := &ph.Joints[k]
		for _, a := range m.Works() {
			if c.Guessed(i) && shareOf(a, c, p, i) > 0 {
				return true
			}
		}
	}
	return false
}

// Posture returns the placement's joint angles; those of a limb that does not
// work are zero, but for a seated or bent leg's.
func (p *Placement) Posture() human.Posture {
	return human.Posture{}.WithArm(p.Arm).WithLeg(p.Leg)
}

// effortOf returns the greatest effort among the actions a muscle works in that
// are asked at position i; NaN if one of them has no figure there.
func (ph *Phase) effortOf(m human.Muscle, p *Placement, i int) float64 {
	most := 0.0
	for k := range ph.Joints {
		c := &ph.Joints[k]
		for _, a := range m.Works() {
			if share := shareOf(a, c, p, i); share > 0 {
				most = max(most, c.Effort[i]*share)
			}
		}
	}
	return most
}

// shareOf tells how far a joint's moment is the work of an action: 1, 0, or for
// the raising of the arm the part of it in the action's plane.
func shareOf(a human.Action, c *Column, p *Placement, i int) float64 {
	sign := math.Copysign(1, c.Moment[i])
	sin, cos := math.Sincos(float64(p.Arm.Plane))
	switch {
	case c.Joint == ShoulderRaising && a.Coordinate() == human.ShoulderFlexion:
		return max(0, sign*sin*a.Sign())
	case c.Joint == ShoulderRaising && a.Coordinate() == human.ShoulderAbduction:
		return max(0, sign*cos*a.Sign())
	case c.Joint != ShoulderRaising && c.Action[i] == a:
		return 1
	}
	return 0
}
