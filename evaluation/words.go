package evaluation

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"steelyard/human"
	"steelyard/profile"
	"steelyard/quantity"
)

// Formatter writes quantities, given in SI units, as the reader wants them:
// those of profile, and short lengths as a tape shows them.
type Formatter interface {
	profile.Formatter
	Short(metres float64) string
	System() quantity.System
}

// Metric writes N, J, kg, cm and m, and short lengths in mm.
type Metric struct{ profile.Metric }

// Short writes whole millimetres.
func (Metric) Short(m float64) string { return strconv.FormatFloat(m*1000, 'f', 0, 64) + " mm" }

// System returns the metric one.
func (Metric) System() quantity.System { return quantity.Metric }

// Imperial writes lbf, ft·lbf, lb and in.
type Imperial struct{ profile.Imperial }

// Short writes inches to one decimal.
func (Imperial) Short(m float64) string { return strconv.FormatFloat(m/0.0254, 'f', 1, 64) + " in" }

// System returns the imperial one.
func (Imperial) System() quantity.System { return quantity.Imperial }

// Beside returns a text of a sheet, such as a setting's value, with the same
// quantity behind it as the reader counts it, if it is written in the other
// system's unit: "40 kg (88 lb)". Other texts are returned as they are.
func Beside(text string, f Formatter) string {
	for _, d := range [...]quantity.Dimension{quantity.Mass, quantity.Length, quantity.Force} {
		q, err := quantity.Parse(text, d, quantity.NoUnit)
		if err != nil {
			continue
		}
		if u := q.Unit.For(f.System()); u != q.Unit {
			return fmt.Sprintf("%s (%s %s)", text, short(q.In(u), u), u.Symbol())
		}
	}
	return text
}

// short writes a number to a tenth; to a whole from 10 up, but for kilograms
// and inches, which are large units.
func short(x float64, u quantity.Unit) string {
	fine := 10.0
	if math.Abs(x) >= 10 && u != quantity.Kilogram && u != quantity.Inch {
		fine = 1
	}
	return strconv.FormatFloat(math.Round(x*fine)/fine+0, 'f', -1, 64)
}

// Words says what came out, plain words first: the reading with its doubt, why
// it is so, the time course, and what else the reader should know.
func (e *Evaluation) Words(f Formatter) []string {
	words := []string{e.headline(f)}
	if e.Band != nil {
		more := e.Band.Words(f)
		if e.sureOfPeak() {
			more = more[1:] // the headline has said it
		}
		words = append(words, more...)
	} else {
		words = append(words, profile.Words(e.Readings[profile.Lifting], f)[1:]...)
		words = append(words, e.unsaid()...)
	}
	if side := e.Side(); side != "" {
		words = slices.Insert(words, 1, fmt.Sprintf("Two arms move as mirror images: every force is that of %s.", side))
	}
	words = append(words, e.strokeWords(f)...)
	return append(words, e.Notes...)
}

// Side says whose force every force is on a machine of two mirrored arms: "one
// arm" or "one leg" by the exercise that its station serves, "one side" without
// one. It is empty where the force is that of the whole machine.
func (e *Evaluation) Side() string {
	if !e.Built.Machine.Plane.Mirrored {
		return ""
	}
	st, ok := e.Built.Station()
	switch {
	case !ok:
		return "one side"
	case st.Exercises[0].Limb() == human.Leg:
		return "one leg"
	}
	return "one arm"
}

// Sided adds to a force whose it is, where it is not the whole machine's.
func (e *Evaluation) Sided(force string) string {
	if side := e.Side(); side != "" {
		return force + " for " + side
	}
	return force
}

// unsaid says why nothing is said about how sure the result is.
func (e *Evaluation) unsaid() []string {
	switch ms, _ := e.measured(); {
	case len(ms) == 0:
		return []string{"No number in the sheet carries a ±, so nothing is said about how sure this is."}
	case e.BandToCome:
		return nil
	}
	return []string{"The error band was left out, so nothing is said about how sure this is."}
}

// samePlace is how far apart two shares of the travel may lie and still be
// called one place.
const samePlace = 0.1

// sureOfPeak reports whether the headline has already said where it is hardest
// as closely as it is known.
func (e *Evaluation) sureOfPeak() bool {
	if e.surelyEven() {
		return true
	}
	at := e.Band.Reading(profile.PeakShare)
	return at.High-at.Low < samePlace
}

// surelyEven reports whether the machine loads evenly whatever the band says.
func (e *Evaluation) surelyEven() bool {
	if e.Band == nil {
		return e.Readings[profile.Lifting].Loads == profile.Evenly
	}
	w, sure := e.Band.Verdict.Loads()
	return sure && w == profile.Evenly
}

// headline is the one sentence to remember: hardest where, how much, why, and
// what becomes of it.
func (e *Evaluation) headline(f Formatter) string {
	r := &e.Readings[profile.Lifting]
	peak, least := &e.Causes[0], &e.Causes[1]
	if e.surelyEven() {
		return fmt.Sprintf("Much the same all the way: %s at the most, %s.", e.ranged(profile.PeakForce, f), peak.Because(f))
	}
	verb := "lets off to"
	if r.Least.Share < r.Peak.Share {
		verb = "lightest is"
	}
	return fmt.Sprintf("Hardest %s: %s, %s; %s %s %s, %s.", place(r.Peak.Share), e.ranged(profile.PeakForce, f), peak.Because(f),
		verb, e.ranged(profile.LeastForce, f), place(r.Least.Share), least.Because(f))
}

// ranged writes a force of the lifting curve, and the range it may lie in if
// that is known.
func (e *Evaluation) ranged(q profile.Reading, f Formatter) string {
	force := f.Force(e.Readings[profile.Lifting].Value(q))
	if q == profile.PeakForce {
		force = e.Sided(force)
	}
	if e.Band == nil {
		return force
	}
	in := e.Band.Reading(q)
	return fmt.Sprintf("%s (%s to %s)", force, f.Force(in.Low), f.Force(in.High))
}

// place names a share of the travel as a coach would.
func place(share float64) string {
	switch {
	case share < 0.05:
		return "at the start"
	case share > 0.95:
		return "at the end"
	}
	return fmt.Sprintf("%.0f %% of the way", share*100)
}

// strokeWords says what the tempo adds.
func (e *Evaluation) strokeWords(f Formatter) []string {
	s := e.Stroke
	if s == nil {
		return nil
	}
	words := []string{fmt.Sprintf("At this tempo the force peaks at %s, %.1f s into the repetition (%s at rest there), and dips to %s at %.1f s.",
		f.Force(s.Force[s.Peak]), s.Time[s.Peak], f.Force(s.Static[s.Peak]), f.Force(s.Force[s.Dip]), s.Time[s.Dip])}
	for i, leaves := range s.Leaves {
		if leaves {
			words = append(words, fmt.Sprintf("The load leaves the body at %.1f s: the machine runs on by itself there. Go slower, unless it is built to run free.", s.Time[i]))
			break
		}
	}
	for i, rope := range s.Slack {
		if rope != "" {
			words = append(words, fmt.Sprintf("The %s goes slack at %.1f s and then jerks, unless the machine is built to run free there. Go slower.", rope, s.Time[i]))
			break
		}
	}
	return words
}
