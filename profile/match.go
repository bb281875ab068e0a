package profile

import (
	"fmt"
	"math"
)

// Loadable is a machine's force as it depends on its adjustable load. At rest
// it is affine: force = Fixed + PerLoad · load, position by position. The same
// holds for the lifting and the lowering curve as long as friction grows in
// proportion to the load.
type Loadable struct {
	Travel  []float64 // m, strictly ascending from 0
	Fixed   []float64 // N, with no adjustable load on
	PerLoad []float64 // N per kg of adjustable load
	Gap     []Reason  // nil if every position has a force
}

// At returns the curve with a load in kg on. It has no load column and no
// friction, and shares Travel and Gap with m.
func (m Loadable) At(load float64) Curve {
	force := make([]float64, len(m.Fixed))
	for i := range force {
		force[i] = m.Fixed[i] + m.PerLoad[i]*load
	}
	return Curve{Travel: m.Travel, Hold: force, Gap: m.Gap}
}

func (m Loadable) check() error {
	if err := checkColumn("force per load", m.PerLoad, len(m.Travel)); err != nil {
		return err
	}
	return Curve{Travel: m.Travel, Hold: m.Fixed, Gap: m.Gap}.Check()
}

// MatchOutcome tells whether a load was found.
type MatchOutcome uint8

const (
	Matched     MatchOutcome = iota // a load within the allowed range does it
	TooHard                         // even the smallest allowed load asks for more
	TooEasy                         // even the largest allowed load asks for less
	Unreachable                     // no load changes this reading to the wanted force
)

// Match is the answer to: which load on this machine asks for the wanted
// force?
type Match struct {
	By      Reading
	Want    float64 // N
	Outcome MatchOutcome

	// Load is the exact load in kg. Unless Outcome is Matched it lies outside
	// the allowed range, below 0 if weight would have to be taken off the bare
	// machine; it is 0 if Outcome is Unreachable.
	Load float64

	Nearest float64 // kg, the allowed load whose reading comes closest
	Got     float64 // N, the reading with that load
}

// MatchError reports a reading by which machines cannot be matched.
type MatchError struct{ By Reading }

func (e *MatchError) Error() string {
	return fmt.Sprintf("profile: loads cannot be matched by %v; match by the mean force, the peak force or the mean force in one third", e.By)
}

// MatchLoad returns the load on machine m at which a reading (Mean, PeakForce,
// LengthenedMean, MiddleMean or ShortenedMean) becomes want newtons, and the
// nearest of the allowed loads (kg, ascending, at least one).
//
// Means are affine in the load and solved exactly. The peak over the positions
// is too, position by position; its refinement between positions is then
// bisected to 1e-9 of the load. Where two loads give the same peak, because
// the load helps at some places and hinders at others, the heavier is taken if
// the load on average adds force, else the lighter.
//
// Errors: *MatchError, *LengthError, *ValueError, [ErrNoForce].
func MatchLoad(want float64, by Reading, m Loadable, allowed []float64) (Match, error) {
	if by != Mean && by != PeakForce && (by < LengthenedMean || by > ShortenedMean) {
		return Match{}, &MatchError{by}
	}
	if err := m.check(); err != nil {
		return Match{}, err
	}
	if err := checkAllowed(want, allowed); err != nil {
		return Match{}, err
	}
	fixed, err := read(m.At(0), Partial{}, Holding)
	if err != nil {
		return Match{}, err
	}
	if k := by - LengthenedMean; by >= LengthenedMean && by <= ShortenedMean && fixed.thirds[k] == 0 {
		return Match{}, ErrNoForce
	}
	answer := Match{By: by, Want: want}
	perLoad := m.slopeOf(by)
	load, ok := 0.0, false
	if by == PeakForce {
		load, ok = m.solvePeak(want)
	} else if perLoad != 0 {
		load, ok = (want-fixed.values[by].v)/perLoad, true
	}
	answer.settle(load, ok, perLoad, allowed)
	answer.pick(m, allowed)
	return answer, nil
}

func checkAllowed(want float64, allowed []float64) error {
	if math.IsNaN(want - want) {
		return &ValueError{"wanted force", 0, want, "a finite number of newtons"}
	}
	if len(allowed) == 0 {
		return &LengthError{"allowed loads", 0, 1}
	}
	for i, kg := range allowed {
		if math.IsNaN(kg-kg) || kg < 0 || i > 0 && kg <= allowed[i-1] {
			return &ValueError{"allowed load", i, kg, "0 kg or more and more than the one before"}
		}
	}
	return nil
}

// slopeOf returns how a mean changes with the load, N/kg: the same mean of the
// force per load. For the peak it returns that of the mean over the travel.
func (m Loadable) slopeOf(by Reading) float64 {
	if by == PeakForce {
		by = Mean
	}
	o, err := read(Curve{Travel: m.Travel, Hold: m.PerLoad, Gap: m.Gap}, Partial{}, Holding)
	if err != nil {
		return 0
	}
	return o.values[by].v
}

// settle judges the exact load against the allowed range.
func (a *Match) settle(load float64, ok bool, perLoad float64, allowed []float64) {
	if !ok {
		a.Outcome = Unreachable
		return
	}
	a.Load = load
	below, above := load < allowed[0], load > allowed[len(allowed)-1]
	switch {
	case below && perLoad > 0, above && perLoad < 0:
		a.Outcome = TooHard
	case below || above:
		a.Outcome = TooEasy
	}
}

// pick tries the allowed loads, the lighter first of equals.
func (a *Match) pick(m Loadable, allowed []float64) {
	best := math.Inf(1)
	for _, kg := range allowed {
		o, err := read(m.At(kg), Partial{}, Holding)
		if err != nil {
			return
		}
		if off := math.Abs(o.values[a.By].v - a.Want); off < best {
			best, a.Nearest, a.Got = off, kg, o.values[a.By].v
		}
	}
}

// Words says which load to put on, or why none will do.
func (m Match) Words(f Formatter) string {
	got := fmt.Sprintf("with %s the %v is %s, %s is wanted", f.Mass(m.Nearest), m.By, f.Force(m.Got), f.Force(m.Want))
	switch m.Outcome {
	case TooHard:
		if m.Load < 0 {
			return fmt.Sprintf("Too hard even bare: %s; %s would have to come off the machine itself.", got, f.Mass(-m.Load))
		}
		return fmt.Sprintf("Too hard with every load there is: %s; %s would be needed.", got, f.Mass(m.Load))
	case TooEasy:
		if m.Load < 0 {
			return fmt.Sprintf("Too easy even with as little relief as there is: %s.", got)
		}
		return fmt.Sprintf("Too easy with every load there is: %s; %s would be needed.", got, f.Mass(m.Load))
	case Unreachable:
		return fmt.Sprintf("No load does it: %s.", got)
	}
	return fmt.Sprintf("Put on %s (%s to be exact): %s.", f.Mass(m.Nearest), f.Mass(m.Load), got)
}
