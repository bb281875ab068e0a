package evaluation

import (
	"fmt"

	"steelyard/exercise"
)

// said tells where it is hardest, for which joint, who stays out of it, and
// what load that makes.
func (m *Meeting) said(f Formatter) []string {
	r := m.Rest
	words := []string{m.headline()}
	words = append(words, m.faults()...)
	side := "The force is shared evenly by both sides; what is said of a limb is of one."
	switch {
	case r.Setup.Mirrored:
		side = "Each side has an arm of its own; forces and loads are of one."
	case r.Setup.Station.OneLimb:
		side = "One limb works alone."
	}
	return append(words, side, "The limb pushes "+r.Direction.String()+".", m.load(f))
}

func (m *Meeting) headline() string {
	p := &m.Rest.Lifting
	if p.Sticking < 0 {
		return fmt.Sprintf("Nothing limits %s that anybody published a strength for.", m.Name())
	}
	s := fmt.Sprintf("Hardest for the %s %s, %.2f of what %s can produce there", p.Joints[p.Limiting].Joint.Body(),
		place(m.Rest.Travel[p.Sticking]/m.Rest.Travel[len(m.Rest.Travel)-1]), p.Peak(), m.Name())
	for _, c := range m.Working() {
		if c.Joint.Body() != p.Joints[p.Limiting].Joint.Body() {
			return s + fmt.Sprintf("; the %s never passes %.2f.", c.Joint.Body(), c.Effort[c.Peak])
		}
	}
	return s + "."
}

// faults tells, for each kind of fault, over how much of the travel it holds
// and where it is worst.
func (m *Meeting) faults() []string {
	var words []string
	n := float64(len(m.Rest.Faults))
	for k := exercise.TooFar; k <= exercise.PastRange; k++ {
		count, worst := 0, exercise.Fault{}
		for _, f := range m.Rest.Faults {
			if f.Kind == k {
				count++
				if f.By >= worst.By {
					worst = f
				}
			}
		}
		if count > 0 {
			words = append(words, fmt.Sprintf("NOT WITHIN REACH OR RANGE over %.0f %% of the travel: at the worst %v.", 100*float64(count)/n, worst))
		}
	}
	return words
}

func (m *Meeting) load(f Formatter) string {
	p := m.Rest.Maximum
	switch {
	case p == nil || p.Capped:
		return "No load is predicted: nothing known limits it."
	case p.EmptyTooHeavy:
		return "Even without a load it asks for more than there is."
	case p.Load == 0:
		return fmt.Sprintf("Predicted maximum for one repetition: %.2f times the present force (%.2f to %.2f).", p.Factor, p.FactorLow, p.FactorHigh)
	}
	ten, band, _ := p.ForRepetitions(10)
	return fmt.Sprintf("Predicted maximum for one repetition: %s (%s to %s); for ten about %s (%s to %s). It is set to %s.",
		f.Mass(p.Load), f.Mass(p.Low), f.Mass(p.High), f.Mass(ten), f.Mass(band.Low), f.Mass(band.High), f.Mass(p.Present))
}
