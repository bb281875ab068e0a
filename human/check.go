package human

import (
	"math"

	"steelyard/planar"
	"steelyard/reference"
)

// What is refused as a slip of the pen. Own choices, wide on purpose.
const (
	minHeight, maxHeight = 1.00, 2.50  // m
	minMass, maxMass     = 25.0, 300.0 // kg
	minAge, maxAge       = 10.0, 110.0 // years
	minIndex, maxIndex   = 11.0, 90.0  // kg/m², mass over height squared
	tablesAdult          = 17.0        // years, the survey's youngest
	tablesOld            = 75.0        // years, the oldest the strength sources speak of
	maxMoment            = 1500.0      // N·m
)

// Check reports what is impossible as an error and what is unusual as
// warnings. It looks at the person's own figures; [NewBody] also compares the
// measured lengths with one another.
func (p Person) Check() ([]Warning, error) {
	if err := p.checkSize(); err != nil {
		return nil, err
	}
	for _, l := range p.Lengths {
		if err := checkLength(l, p.Height); err != nil {
			return nil, err
		}
	}
	for _, l := range p.Limits {
		if l.Motion < 0 || l.Motion >= NumActions {
			return nil, refuse("limits", "name a motion such as knee flexion")
		}
		if !finite(float64(l.Angle)) || math.Abs(float64(l.Angle)) > math.Pi*1.1 {
			return nil, refuse("limits: "+l.Motion.String(), "%.0f° is no joint angle; give degrees between -180 and 180", l.Angle.Degrees())
		}
	}
	for _, s := range p.Strength {
		if err := checkStrength(s); err != nil {
			return nil, err
		}
	}
	return p.unusual(), nil
}

func (p Person) checkSize() error {
	switch {
	case !finite(p.Height, p.Mass, p.Age):
		return refuse("person", "height, mass and age must be ordinary numbers; write them again")
	case p.Height >= 100*minHeight && p.Height <= 100*maxHeight:
		return refuse("height", "%.0f m is not a person; did you mean %.2f m", p.Height, p.Height/100)
	case p.Height < minHeight || p.Height > maxHeight:
		return refuse("height", "%.2f m is outside %.2f to %.2f m; measure it again without shoes", p.Height, minHeight, maxHeight)
	case p.Mass < minMass || p.Mass > maxMass:
		return refuse("mass", "%.1f kg is outside %.0f to %.0f kg; weigh again", p.Mass, minMass, maxMass)
	case p.Age != 0 && (p.Age < minAge || p.Age > maxAge):
		return refuse("age", "%.0f years is outside %.0f to %.0f; correct it, or leave the age out", p.Age, minAge, maxAge)
	case p.Sex < reference.Unstated || p.Sex > reference.Male:
		return refuse("sex", "give female, male, or leave it out")
	case p.Segments < reference.DeLeva || p.Segments > reference.Dempster:
		return refuse("segments", "give %v or %v", reference.DeLeva, reference.Dempster)
	}
	if index := p.Mass / (p.Height * p.Height); index < minIndex || index > maxIndex {
		return refuse("mass", "%.1f kg does not go with a height of %.2f m; check both", p.Mass, p.Height)
	}
	return nil
}

func checkLength(l Length, height float64) error {
	d := l.Dimension
	if d <= reference.Mass || d >= reference.NumDimensions {
		return refuse("lengths", "height and mass have their own places; give only other dimensions here")
	}
	place := "lengths: " + d.String()
	switch {
	case !finite(l.Value, l.Spread) || l.Value <= 0:
		return refuse(place, "%.3f m is not a length; measure %s", l.Value, d.How())
	case l.Value >= height:
		return refuse(place, "%.3f m is more than the height of %.2f m; check the unit", l.Value, height)
	case l.Spread < 0 || l.Spread > l.Value/4:
		return refuse(place, "a spread of %.3f m is not useful beside %.3f m; give 0 to %.3f m", l.Spread, l.Value, l.Value/4)
	}
	return nil
}

func checkStrength(s Strength) error {
	if s.Action < 0 || s.Action >= NumActions {
		return refuse("strength", "name an action such as knee extension")
	}
	place := "strength: " + s.Action.String()
	switch {
	case !finite(s.Moment, s.Spread, s.Speed, float64(s.Angle)) || s.Moment <= 0 || s.Moment > maxMoment:
		return refuse(place, "%.1f N·m is outside 0 to %.0f N·m; give the moment of one limb", s.Moment, maxMoment)
	case math.Abs(float64(s.Angle)) > math.Pi:
		return refuse(place, "%.0f° is no joint angle; give degrees between -180 and 180", s.Angle.Degrees())
	case math.Abs(s.Speed) > 10:
		return refuse(place, "%.1f rad/s is faster than any test; give the speed of the joint, at most 10 rad/s", s.Speed)
	case s.Spread < 0 || s.Spread > s.Moment:
		return refuse(place, "a spread of %.1f N·m is outside 0 to the moment of %.1f N·m", s.Spread, s.Moment)
	}
	return nil
}

// unusual lists where the tables stop standing on people like this one.
func (p Person) unusual() []Warning {
	var out []Warning
	if low, high := surveySpan(p.Sex, reference.Stature); p.Height < low || p.Height > high {
		out = append(out, warn("height", "%.2f m is outside the survey's %.2f to %.2f m, so missing lengths come from stature fractions; measure the limbs", p.Height, low, high))
	}
	if low, high := surveySpan(p.Sex, reference.Mass); p.Mass < low || p.Mass > high {
		out = append(out, warn("mass", "%.1f kg is outside the survey's %.1f to %.1f kg, so missing lengths ignore it; measure chest depth and seat breadth", p.Mass, low, high))
	}
	switch {
	case p.Age == 0:
		out = append(out, warn("age", "not given, so the young adult figures are used; give it for a better strength estimate"))
	case p.Age < tablesAdult:
		out = append(out, warn("age", "%.0f years is below the %.0f of every table behind the model; measure lengths and strength, and treat all estimates as rough", p.Age, tablesAdult))
	case p.Age > tablesOld:
		out = append(out, warn("age", "%.0f years is beyond the %.0f the strength sources reach; measure strength", p.Age, tablesOld))
	}
	if p.Sex == reference.Unstated {
		out = append(out, warn("sex", "not given, so each estimate is the middle of both and its band covers both"))
	}
	return out
}

// surveySpan returns the smallest and largest value the survey met.
func surveySpan(sex reference.Sex, d reference.Dimension) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, half := range sex.Halves() {
		r := reference.SurveyOf(half).Row[d]
		low, high = min(low, r.Min), max(high, r.Max)
	}
	return low, high
}

func finite(values ...float64) bool {
	for _, v := range values {
		if math.IsNaN(v - v) {
			return false
		}
	}
	return true
}

// degrees is short for literals.
func degrees(d float64) planar.Angle { return planar.Angle(d) * planar.Degree }
