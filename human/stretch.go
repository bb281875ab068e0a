package human

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/planar"
	"steelyard/reference"
)

// pull is the straight line of a broad shoulder muscle: the direction from its
// origin on the trunk to the shoulder centre (right side: forward, up, out;
// about unit length), and how far down the upper arm it ends over the distance
// from origin to shoulder centre. With c the cosine between that direction and
// the upper arm, its length over the distance is
//
//	√(1 + 2·ratio·c + ratio²)
//
// Directions and ratios are working estimates without a source, read off
// anatomy: the pectorals start at the breastbone, the latissimus low at the
// spine, the deltoids just in front of, above and behind the joint. Wrapping
// over ribs and joint is left out. Only the place between longest and shortest
// is used, never the length.
type pull struct {
	x, y, z float64
	ratio   float64
}

func (p pull) length(elevation, plane planar.Angle) float64 {
	se, ce := math.Sincos(float64(elevation))
	sp, cp := math.Sincos(float64(plane))
	u := r3.Vec{X: se * sp, Y: -ce, Z: se * cp}
	c := r3.Dot(r3.Unit(r3.Vec{X: p.x, Y: p.y, Z: p.z}), u)
	return math.Sqrt(1 + 2*p.ratio*c + p.ratio*p.ratio)
}

func shoulderMuscle(name string, works []Action, p pull) muscle {
	return muscle{name: name, works: works, pull: &p,
		source: reference.Source{Text: "straight line from origin to upper arm", Mark: reference.Estimate}}
}

// Posture holds the joint angles of one side of a body. The shoulder's flexion
// and abduction are the parts of its elevation, see [Posture.WithArm].
type Posture [NumCoordinates]planar.Angle

// WithArm returns the posture with the angles of an arm.
func (p Posture) WithArm(a ArmAngles) Posture {
	p[ShoulderFlexion], p[ShoulderAbduction] = a.Flexion(), a.Abduction()
	p[ShoulderHorizontal], p[ShoulderRotation], p[ElbowFlexion] = a.Plane, a.Rotation, a.Elbow
	return p
}

// WithLeg returns the posture with the angles of a leg.
func (p Posture) WithLeg(l LegAngles) Posture {
	p[HipFlexion], p[HipAbduction], p[HipRotation] = l.HipFlexion, l.HipAbduction, l.HipRotation
	p[KneeFlexion], p[AnkleDorsiflexion] = l.Knee, l.Ankle
	return p
}

// elevation returns how far the arm is raised and in which plane.
func (p Posture) elevation() (elevation, plane planar.Angle) {
	f, a := float64(p[ShoulderFlexion]), float64(p[ShoulderAbduction])
	return planar.Angle(math.Hypot(f, a)), planar.Angle(math.Atan2(f, a))
}

// Stretch finds where a muscle lies between its shortest and its longest
// within one person's ranges of motion. Build it once for a person.
type Stretch struct {
	short, long [NumMuscles]float64
}

// NewStretch searches each muscle's shortest and longest length over the
// ranges of all joints it crosses. The ranges are taken one by one: that a
// stretched two-joint muscle itself ends a range is not modelled.
func NewStretch(r *Ranges) *Stretch {
	s := &Stretch{}
	for m := range NumMuscles {
		if p := muscles[m].pull; p != nil {
			s.short[m], s.long[m] = shoulderSpan(r, *p)
			continue
		}
		for _, p := range muscles[m].paths {
			low, high := span(p, r[p.joint])
			s.short[m] += low
			s.long[m] += high
		}
	}
	return s
}

// At returns where a muscle lies in a posture: 0 at its shortest, 1 at its
// longest within the ranges, beyond them outside that. Two thirds and more is
// the lengthened third, one third and less the shortened.
func (s *Stretch) At(m Muscle, p Posture) float64 {
	length := 0.0
	if pull := muscles[m].pull; pull != nil {
		length = pull.length(p.elevation())
	}
	for _, path := range muscles[m].paths {
		length += path.length(p[path.joint])
	}
	return (length - s.short[m]) / (s.long[m] - s.short[m])
}

// samples is how finely ranges are searched; the lengths are smooth, so the
// ends found are good to a thousandth of the span.
const samples = 60

func span(p path, i Interval) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for k := range samples + 1 {
		t := planar.Angle(float64(k) / samples)
		l := p.length(i.Min.Angle + t*(i.Max.Angle-i.Min.Angle))
		low, high = min(low, l), max(high, l)
	}
	return low, high
}

// shoulderSpan searches every direction in which the ranges let the arm point.
func shoulderSpan(r *Ranges, p pull) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for i := range samples {
		for k := range samples + 1 {
			a := ArmAngles{
				Elevation: math.Pi * planar.Angle(float64(k)/samples),
				Plane:     2*math.Pi*planar.Angle(float64(i)/samples) - math.Pi,
			}
			if _, bad := r.CheckShoulder(a); bad {
				continue
			}
			l := p.length(a.Elevation, a.Plane)
			low, high = min(low, l), max(high, l)
		}
	}
	return low, high
}
