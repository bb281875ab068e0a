package human

import (
	"math"

	"steelyard/planar"
	"steelyard/reference"
)

// curve is the moment an action can produce, held still, before anything
// measured on the person rescales it; and what speed leaves of it.
type curve interface {
	isometric(angle planar.Angle) float64 // N·m, one limb
	spread(angle planar.Angle) float64    // N·m, one standard deviation between people
	// least is what it is believed to keep at an angle that was tested, or beyond
	// one, N·m.
	least(tested planar.Angle, beyond bool) float64
	concentric(speed float64) float64 // share left, speed >= 0 in rad/s
}

// standing tells how good a curve is.
type standing struct {
	from, to planar.Angle // range in which anything was tested
	source   reference.Source
}

// legCurve is the published torque-angle-velocity curve of hip, knee or ankle,
// mixed between age groups.
type legCurve struct {
	rows   [2]reference.TorqueRow
	share  [2]float64 // of the two age groups, adding up to 1
	relC1  float64    // standard deviation of C1 over C1
	sdPeak float64    // rad, standard deviation of C3
	w, h   float64    // N, m
}

func (c legCurve) isometric(angle planar.Angle) float64 {
	a := float64(angle)
	return c.share[0]*c.rows[0].Isometric(a, c.w, c.h) + c.share[1]*c.rows[1].Isometric(a, c.w, c.h)
}

// Shares of a cosine's greatest moment below which it says more of cosines than
// of people: a fitted cosine reaches nothing near the ends of what was tested,
// where people still push. Own choice.
const (
	fallenWithin = 0.25
	fallenBeyond = 0.5
)

func (c legCurve) least(tested planar.Angle, beyond bool) float64 {
	top := (c.share[0]*c.rows[0].C1 + c.share[1]*c.rows[1].C1) * c.w * c.h
	if !beyond {
		return fallenWithin * top
	}
	return min(fallenBeyond*top, max(fallenWithin*top, c.isometric(tested)))
}

// spread joins what people differ by in level (C1) and in the angle of the peak
// (C3). The latter rules at the ends of the range: at the hip it is 20°.
func (c legCurve) spread(angle planar.Angle) float64 {
	d := planar.Angle(c.sdPeak)
	slide := (c.isometric(angle+d) - c.isometric(angle-d)) / 2
	return math.Hypot(c.relC1*c.isometric(angle), slide)
}

func (c legCurve) concentric(speed float64) float64 {
	return c.share[0]*c.rows[0].Concentric(speed) + c.share[1]*c.rows[1].Concentric(speed)
}

// Middle ages of the groups of the torque table; between them moments are
// mixed linearly, beyond them held (own choice).
var groupAge = [...]float64{reference.Young: 21.5, reference.Middle: 60, reference.Old: 72}

// defaultAge stands for an age that was not given, years.
const defaultAge = 30.0

func ageOf(p Person) float64 {
	if p.Age == 0 {
		return defaultAge
	}
	return p.Age
}

// newLegCurve builds the curve of an action of hip, knee or ankle.
func newLegCurve(joint, action string, sex reference.Sex, p Person) (legCurve, standing) {
	older := reference.Middle
	if ageOf(p) > groupAge[reference.Middle] {
		older = reference.Old
	}
	younger := older - 1
	t := (ageOf(p) - groupAge[younger]) / (groupAge[older] - groupAge[younger])
	t = min(max(t, 0), 1)

	c := legCurve{share: [2]float64{1 - t, t}, w: p.Mass * Gravity, h: p.Height}
	var s standing
	for i, group := range []reference.AgeGroup{younger, older} {
		mean, sd := reference.Torque(joint, action, sex, group)
		c.rows[i] = mean
		c.relC1 += c.share[i] * sd.C1 / mean.C1
		c.sdPeak += c.share[i] * sd.C3
		s.source = mean.Source
	}
	from, to := reference.Tested(joint)
	s.from, s.to = planar.Angle(from), planar.Angle(to)
	return c, s
}

// armCurve is a published level times a shape over angle.
type armCurve struct {
	level float64 // N·m at the largest value of the shape
	relSD float64 // of the level, between people and between sources
	shape func(planar.Angle) float64
	limit float64 // rad/s, speed at which nothing is left
}

func (c armCurve) isometric(angle planar.Angle) float64 { return c.level * c.shape(angle) }

// least is nothing: the shapes level off, and the parabola of the bending elbow
// keeps four fifths of its top to the ends of the joint's range.
func (c armCurve) least(planar.Angle, bool) float64 { return 0 }

func (c armCurve) spread(angle planar.Angle) float64 { return c.relSD * c.isometric(angle) }

// concentric is Hill's hyperbola, normalised:
//
//	f = (1 - u)/(1 + u/k),  u = ω/ωmax,  k = a/F0 = 0.25
//
// Source of the form and of k: Hill 1938, and Winter 2009 as quoted by a
// retrieved document.
func (c armCurve) concentric(speed float64) float64 {
	u := speed / c.limit
	if u >= 1 {
		return 0
	}
	return (1 - u) / (1 + u/hillK)
}

const (
	hillK = 0.25
	// Unloaded elbow flexion, rad/s, second-hand (fitted by the document that
	// quotes Hill's k). Used for elbow and trunk.
	elbowLimit = 16.5
	// Fitted here so that 0.68 is left at 50°/s, as the 1994 shoulder flexion
	// abstract has it (68.6 N·m held, 46.9 concentric, at 45°):
	//   (1 - u)/(1 + 4u) = 0.6837, u = 0.0847, limit = 0.8727/u
	shoulderLimit = 10.3
)

// newArmCurve builds the curve of an action that has published levels: the
// mean of them, each carried to the top of the shape from the angle it was
// tested at, or taken as the top when that is not told.
func newArmCurve(a Action, sex reference.Sex, p Person) (armCurve, standing) {
	shape, s := shapeOf(a, sex)
	c := armCurve{shape: shape, limit: speedLimit(a)}

	levels := reference.Levels(a.String(), sex)
	if len(levels) == 0 {
		panic("human: no level for " + a.String())
	}
	sum, sumSq, spread, n := 0.0, 0.0, 0.0, 0.0
	for _, l := range levels {
		v := l.PerKg
		if !math.IsNaN(l.Angle) {
			v /= shape(planar.Angle(l.Angle))
		}
		sum, sumSq, n = sum+v, sumSq+v*v, n+1
		if !math.IsNaN(l.RelSD) {
			spread = max(spread, l.RelSD)
		}
		s.source = joinSources(s.source, l.Source)
	}
	if spread == 0 {
		spread = usualSpread
	}
	mean := sum / n
	between := math.Sqrt(max(0, sumSq/n-mean*mean)) / mean
	c.relSD = math.Hypot(spread, between)
	c.level = mean * p.Mass * ageFactor(ageOf(p))
	return c, s
}

// usualSpread is taken between people where a source gives none: the lists
// that do give one have 0.2 to 0.35.
const usualSpread = 0.27

// shapeOf returns the shape of an action, at most 1, and where it was tested.
// Elbow flexion and shoulder extension have a published regression (from
// memory), the arm at the side; the others are drawn through points.
func shapeOf(a Action, sex reference.Sex) (func(planar.Angle) float64, standing) {
	if s, ok := reference.ShapeOf(a.String()); ok {
		at := func(angle planar.Angle) float64 { return s.At(float64(angle)) }
		return at, standing{from: planar.Angle(s.From), to: planar.Angle(s.To), source: s.Source}
	}
	r, ok := reference.RegressionOf(a.String())
	if !ok {
		panic("human: no shape for " + a.String())
	}
	if a == ElbowFlex {
		top := r.Moment(sex, float64(degrees(90.8)), 0) // vertex of its parabola: 1.544/(2·0.0085)
		at := func(angle planar.Angle) float64 { return max(0, r.Moment(sex, math.Pi-float64(angle), 0)/top) }
		return at, standing{from: degrees(30), to: degrees(120), source: r.Source}
	}
	top := r.Moment(sex, 0, math.Pi)
	at := func(angle planar.Angle) float64 { return r.Moment(sex, 0, min(max(float64(angle), 0), math.Pi)) / top }
	return at, standing{from: 0, to: degrees(90), source: r.Source}
}

func speedLimit(a Action) float64 {
	if a.Coordinate() <= ShoulderRotation {
		return shoulderLimit
	}
	return elbowLimit
}

// ageFactor is the share of young adult strength: all of it to 45 years, then
// 13.5 % less each decade. Source: 12 to 15 % a decade from the fifth decade
// on, Hurley 1995, J Gerontol A 50:41, abstract; at 75 it gives 0.65, within
// the 0.54 to 0.89 of Danneskiold-Samsøe et al. 2009. The torque table has its
// own age groups.
func ageFactor(age float64) float64 {
	if age <= 45 {
		return 1
	}
	return math.Pow(1-0.135, (age-45)/10)
}

// joinSources keeps both texts and the weaker mark.
func joinSources(a, b reference.Source) reference.Source {
	switch {
	case a.Text == "":
		return b
	case b.Text == "" || a.Text == b.Text:
		return reference.Source{Text: a.Text, Mark: a.Mark.Weakest(b.Mark)}
	}
	return reference.Source{Text: a.Text + "; " + b.Text, Mark: a.Mark.Weakest(b.Mark)}
}
