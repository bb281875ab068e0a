package human

import (
	"math"

	"steelyard/planar"
	"steelyard/reference"
)

// Available is the moment an action can produce at one angle and speed.
type Available struct {
	Moment    float64 // N·m, one limb (the trunk whole), >= 0
	Low, High float64 // about two people in three lie between; for a measured action, its own uncertainty
	Source    reference.Source
	// Extrapolated: the angle or speed is outside what the source tested.
	Extrapolated bool
	// Fallen: the formula of the curve has fallen to where it is not believed, a
	// quarter of its greatest or, beyond what was tested, a half or the end of
	// what was tested. Moment is held at that least and is no figure to show.
	Fallen bool
	// Rescaled: a measured point of this person sets the level.
	Rescaled bool
}

// Capacity is what the joints of one person can produce. It does not change.
type Capacity struct {
	actions  [NumActions][]half        // none for an action nobody published a figure for
	measured [NumActions][]calibration // by ascending angle
	sources  [NumActions]reference.Source
}

// half is the curve of one half of the tables: one of them when the sex is
// given, both when it is not.
type half struct {
	curve
	standing
}

// torqueActions lists the actions with a published torque-angle-velocity curve.
var torqueActions = map[Action][2]string{
	HipFlex: {"hip", "flexion"}, HipExtend: {"hip", "extension"},
	KneeFlex: {"knee", "flexion"}, KneeExtend: {"knee", "extension"},
	AnkleDorsiflex: {"ankle", "dorsiflexion"}, AnklePlantarflex: {"ankle", "plantarflexion"},
}

// NewCapacity builds the strength curves of a body from published figures,
// rescaled by the points measured on the person.
//
//   - hip, knee, ankle in the side view: torque-angle-velocity coefficients by
//     sex and age, times weight and stature. They make women of a man's size as
//     strong as he is; wider surveys do not.
//   - upper body, hip abduction and adduction, trunk: published levels at one
//     angle, per kilogram, times a shape that is mostly our own interpolation.
//   - hip rotation: no figure; [Capacity.At] reports none.
//
// That one joint's angle changes another's strength through two-joint muscles
// is not modelled: no coefficients were found.
//
// It returns an *[InputError] for a measured point that cannot set a level and
// warnings for points far from what is usual.
func NewCapacity(b *Body) (*Capacity, []Warning, error) {
	c, p := &Capacity{}, b.Person
	for a := range NumActions {
		if a.Coordinate() == HipRotation {
			continue
		}
		for _, sex := range p.Sex.Halves() {
			h := newHalf(a, sex, p)
			c.actions[a] = append(c.actions[a], h)
			c.sources[a] = joinSources(c.sources[a], h.source)
		}
	}
	warnings, err := c.calibrate(p.Strength)
	if err != nil {
		return nil, nil, err
	}
	return c, warnings, nil
}

func newHalf(a Action, sex reference.Sex, p Person) half {
	if t, ok := torqueActions[a]; ok {
		leg, s := newLegCurve(t[0], t[1], sex, p)
		return half{leg, s}
	}
	arm, s := newArmCurve(a, sex, p)
	return half{arm, s}
}

// fastest is the speed beyond which no curve was tested, rad/s.
const fastest = 8.0

// At returns the moment available to an action at an angle of its coordinate
// and a speed (rad/s, positive while the muscles shorten). It reports false
// for an action nobody published a figure for and this person was not measured
// in.
func (c *Capacity) At(a Action, angle planar.Angle, speed float64) (Available, bool) {
	if points := c.measured[a]; len(points) > 0 {
		return c.rescaled(a, angle, speed), true
	}
	return c.published(a, angle, speed)
}

// published is [Capacity.At] without the person's own measurements.
func (c *Capacity) published(a Action, angle planar.Angle, speed float64) (Available, bool) {
	halves := c.actions[a]
	if len(halves) == 0 {
		return Available{}, false
	}
	out := Available{Low: math.Inf(1), Source: c.sources[a]}
	for _, h := range halves {
		level, spread := h.isometric(angle), h.spread(angle)
		beyond := angle < h.from-touch || angle > h.to+touch
		if least := h.least(min(max(angle, h.from), h.to), beyond); level < least {
			level, out.Fallen = least, true
		}
		share, low, high := speedShare(h.curve, speed)
		out.Moment += level * share / float64(len(halves))
		out.Low = min(out.Low, low*max(0, level-spread))
		out.High = max(out.High, high*(level+spread))
		out.Extrapolated = out.Extrapolated || beyond || math.Abs(speed) > fastest
	}
	return out, true
}

// touch is the rounding allowed at the ends of a tested range, rad.
const touch = 1e-9

// speedShare returns what a speed leaves of the isometric moment, and its band.
//
// Lowering: a muscle alone holds 1.4 times its isometric force, but people
// produce about as much as they hold (quadriceps unchanged to 270°/s; shoulder
// flexion 1.10 at 45°, 50°/s; reviews report a rise, none or a fall). Taken as
// 1.1 with a band of 1.0 to 1.4, reached at 0.5 rad/s so that holding and
// lowering very slowly agree (own choice).
func speedShare(c curve, speed float64) (share, low, high float64) {
	if speed >= 0 {
		f := c.concentric(speed)
		return f, f, f
	}
	t := min(1, -speed/0.5)
	return 1 + 0.1*t, 1, 1 + 0.4*t
}

// Shoulder returns the moment available along the two axes of the shoulder
// that move the upper arm, at an elevation and plane of elevation, for a
// moment of the given signs: raising or lowering the arm in its plane, and
// carrying it across or back. Speeds are those of the two motions, positive
// when they go the way of the moment.
//
// Published strength is for the cardinal planes only. Between them the moment
// is mixed by sine and cosine squared of the plane; the horizontal part goes
// over from the plane a quarter turn on, with the arm hanging, to horizontal
// adduction and abduction, with the arm level, by the sine squared of the
// elevation. All of that is our own interpolation and is marked so.
func (c *Capacity) Shoulder(a ArmAngles, m ArmMoments, elevationSpeed, horizontalSpeed float64) (elevation, horizontal Available) {
	quarter := degrees(90)
	towards := a.Plane
	if m.Elevation < 0 {
		towards += degrees(180)
	}
	elevation = c.raising(a, towards, elevationSpeed)

	action, turn := ShoulderHorizontalAdduct, quarter
	if m.Horizontal < 0 {
		action, turn = ShoulderHorizontalAbduct, -quarter
	}
	hanging := c.raising(ArmAngles{}, a.Plane+turn, horizontalSpeed)
	level, _ := c.At(action, a.Plane.Normalized(), horizontalSpeed)
	s := math.Sin(float64(min(a.Elevation, quarter)))
	return elevation, blend(hanging, level, s*s)
}

// raising is the moment available for moving the arm in the direction of a
// plane of elevation: towards the front, the side, behind or across the body.
func (c *Capacity) raising(a ArmAngles, towards planar.Angle, speed float64) Available {
	sp, cp := math.Sincos(float64(a.Plane))
	s, k := math.Sincos(float64(towards))
	front, _ := c.At(ActionToward(ShoulderFlexion, s), planar.Angle(math.Copysign(float64(a.Elevation), sp)), speed)
	side, _ := c.At(ActionToward(ShoulderAbduction, k), planar.Angle(math.Copysign(float64(a.Elevation), cp)), speed)
	return blend(side, front, s*s)
}

// blend mixes two moments, t of the second. The larger part gives its source.
func blend(a, b Available, t float64) Available {
	if t <= 1e-12 {
		return a
	}
	if t >= 1-1e-12 {
		return b
	}
	source := a.Source
	if t > 0.5 {
		source = b.Source
	}
	source.Mark = a.Source.Mark.Weakest(b.Source.Mark).Weakest(reference.Interpolated)
	return Available{
		Moment: a.Moment + t*(b.Moment-a.Moment), Low: a.Low + t*(b.Low-a.Low), High: a.High + t*(b.High-a.High),
		Source: source, Extrapolated: a.Extrapolated || b.Extrapolated, Fallen: a.Fallen || b.Fallen, Rescaled: a.Rescaled || b.Rescaled,
	}
}
