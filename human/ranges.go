package human

import (
	"fmt"
	"math"

	"steelyard/planar"
	"steelyard/reference"
)

// Bound is one end of a joint's range.
type Bound struct {
	Angle  planar.Angle // of the coordinate, so that extension and its like are negative
	Source reference.Source
}

// Interval is the range of one coordinate.
type Interval struct{ Min, Max Bound }

// Own reports whether the person's sheet states the bound.
func (b Bound) Own() bool { return b.Source.Mark == reference.Measured }

// Ranges are the ranges of all coordinates. The shoulder's flexion and
// abduction bound how far the arm rises towards the front, the side, across
// and behind; between those directions see [Ranges.Elevation].
type Ranges [NumCoordinates]Interval

// rangeMotions names the table's motion where it differs from the action. The
// ankle's is that of a foot that bears load on a plate, a block or the floor:
// no other foot is ever bent here, and a goniometer finds a third of it on one
// that hangs free. It was measured with the knee bent; that a straight knee
// stops the ankle sooner is not modelled.
var rangeMotions = map[Action]string{ElbowExtend: "elbow hyperextension", KneeExtend: "knee hyperextension", AnkleDorsiflex: "ankle dorsiflexion bearing load"}

// newRanges takes the own limits of a checked person where they are given, else
// the published mean for the person's sex and age.
func newRanges(p Person) (Ranges, []Warning, error) {
	var out Ranges
	var warnings []Warning
	for c := range NumCoordinates {
		out[c] = Interval{Min: publishedBound(p, c.Positive().Opposite()), Max: publishedBound(p, c.Positive())}
	}
	own := reference.Source{Text: "this person's own limit", Mark: reference.Measured}
	for _, l := range p.Limits {
		i := &out[l.Motion.Coordinate()]
		end := &i.Max
		if l.Motion.Sign() < 0 {
			end = &i.Min
		}
		usual := end.Angle.Degrees() * l.Motion.Sign()
		if beyond := l.Angle.Degrees() - usual; beyond > 30 {
			warnings = append(warnings, warn("limits: "+l.Motion.String(), "%.0f° is %.0f° beyond the usual %.0f°; check how it was measured", l.Angle.Degrees(), beyond, usual))
		}
		*end = Bound{l.Angle * planar.Angle(l.Motion.Sign()), own}
	}
	for c, i := range out {
		if i.Min.Angle >= i.Max.Angle {
			return out, nil, refuse("limits: "+Coordinate(c).String(), "the range runs from %.0f° to %.0f° and leaves nothing; check the signs", i.Min.Angle.Degrees(), i.Max.Angle.Degrees())
		}
	}
	return out, warnings, nil
}

func publishedBound(p Person, a Action) Bound {
	motion := a.String()
	if m, ok := rangeMotions[a]; ok {
		motion = m
	}
	r, ok := reference.RangeOfMotion(motion, p.Sex, p.Age)
	if !ok {
		panic("human: no range for " + motion)
	}
	return Bound{planar.Angle(a.Sign() * r.Mean), r.Source}
}

// Breach is a joint outside its range.
type Breach struct {
	Motion Action       // the motion that goes too far
	Angle  planar.Angle // in the sense of the motion
	Limit  Bound        // its angle in the sense of the motion
}

// Beyond returns by how much the limit is passed.
func (b Breach) Beyond() planar.Angle { return b.Angle - b.Limit.Angle }

// String returns one sentence for the reader.
func (b Breach) String() string {
	return fmt.Sprintf("%v reaches %.0f°, %.0f° past the limit of %.0f° (%s)", b.Motion,
		b.Angle.Degrees(), b.Beyond().Degrees(), b.Limit.Angle.Degrees(), b.Limit.Source.Text)
}

// Check returns the breach of one coordinate and whether there is one. For the
// shoulder's flexion, abduction and plane use [Ranges.CheckArm].
func (r *Ranges) Check(c Coordinate, angle planar.Angle) (Breach, bool) {
	switch i := r[c]; {
	case angle > i.Max.Angle:
		return Breach{c.Positive(), angle, i.Max}, true
	case angle < i.Min.Angle:
		return Breach{c.Positive().Opposite(), -angle, Bound{-i.Min.Angle, i.Min.Source}}, true
	}
	return Breach{}, false
}

// Elevation returns how far the arm may rise in a plane of elevation: the
// published figures straight ahead, to the side, across and behind, joined as
// an ellipse in each quadrant (own interpolation).
func (r *Ranges) Elevation(plane planar.Angle) Bound {
	s, c := math.Sincos(float64(plane))
	side, front := r.towards(ShoulderAbduction, c), r.towards(ShoulderFlexion, s)
	a, b := float64(side.Angle), float64(front.Angle)
	if a <= 0 || b <= 0 { // a person who cannot leave zero in one direction
		return Bound{planar.Angle(max(0, c*c*a+s*s*b)), side.Source}
	}
	source := front.Source
	if math.Abs(c) > math.Abs(s) {
		source = side.Source
	}
	return Bound{planar.Angle(1 / math.Hypot(c/a, s/b)), source}
}

// towards returns the bound of a coordinate in the sense given by a sign, as a
// positive angle.
func (r *Ranges) towards(c Coordinate, sign float64) Bound {
	if sign < 0 {
		return Bound{-r[c].Min.Angle, r[c].Min.Source}
	}
	return r[c].Max
}

// levelFrom is the elevation above which horizontal motion counts as a range of
// its own. Its sources measured it with the arm level; half of that is our own
// choice.
const levelFrom = 45 * planar.Degree

// elevationLimit is [Ranges.Elevation], but a raised arm may also be carried as
// far back and across as the horizontal range allows: there the limit of the
// side, or of the front, holds on.
func (r *Ranges) elevationLimit(a ArmAngles) Bound {
	if _, bad := r.Check(ShoulderHorizontal, a.Plane); bad || a.Elevation <= levelFrom {
		return r.Elevation(a.Plane)
	}
	return r.Elevation(min(max(a.Plane, 0), degrees(90)))
}

// CheckShoulder returns the breach of the direction of an upper arm. An arm
// beyond its limit may be brought back by lowering it, by turning it forward or
// outward while it is raised, or over the top; the shortest way is reported.
func (r *Ranges) CheckShoulder(a ArmAngles) (Breach, bool) {
	limit := r.elevationLimit(a)
	if a.Elevation <= limit.Angle {
		return Breach{}, false
	}
	least := Breach{raisingToward(a.Plane), a.Elevation, limit}
	if b, bad := r.Check(ShoulderHorizontal, a.Plane); bad && a.Elevation > levelFrom && b.Beyond() < least.Beyond() {
		least = b
	}
	over := (a.Plane + math.Pi).Normalized()
	if b := (Breach{raisingToward(over), 2*math.Pi - a.Elevation, r.Elevation(over)}); b.Beyond() < least.Beyond() {
		least = b
	}
	return least, least.Beyond() > 0
}

// raisingToward names the motion that raises an arm in a plane of elevation.
func raisingToward(plane planar.Angle) Action {
	s, c := math.Sincos(float64(plane))
	if math.Abs(c) > math.Abs(s) {
		return ActionToward(ShoulderAbduction, c)
	}
	return ActionToward(ShoulderFlexion, s)
}

// CheckArm returns the breaches of an arm.
func (r *Ranges) CheckArm(a ArmAngles) []Breach {
	var out []Breach
	if b, bad := r.CheckShoulder(a); bad {
		out = append(out, b)
	}
	if b, bad := r.Check(ShoulderRotation, a.Rotation); bad {
		out = append(out, b)
	}
	if b, bad := r.Check(ElbowFlexion, a.Elbow); bad {
		out = append(out, b)
	}
	return out
}

// CheckLeg returns the breaches of a leg. That a straight knee limits the hip
// is not modelled: no figure was found.
func (r *Ranges) CheckLeg(l LegAngles) []Breach {
	var out []Breach
	for _, j := range []struct {
		c Coordinate
		a planar.Angle
	}{
		{HipFlexion, l.HipFlexion}, {HipAbduction, l.HipAbduction}, {HipRotation, l.HipRotation},
		{KneeFlexion, l.Knee}, {AnkleDorsiflexion, l.Ankle},
	} {
		if b, bad := r.Check(j.c, j.a); bad {
			out = append(out, b)
		}
	}
	return out
}
