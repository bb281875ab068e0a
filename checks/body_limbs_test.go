package checks

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/planar"
	"steelyard/reference"
)

// limb is an arm or a leg of somebody, with the trunk it hangs on.
type limb struct {
	*human.Body
	human.Kind
	human.Side
}

func (l limb) name() string { return l.Side.String() + " " + l.Kind.String() }

// out is the sense of z that points away from the body's middle.
func (l limb) out() float64 { return float64(1 - 2*l.Side) }

// neutral is the trunk in the anatomical position, hips at the origin.
var neutral = human.TrunkAt(r3.Vec{}, 0, false)

// root is the shoulder or hip in the anatomical position.
func (l limb) root() r3.Vec {
	if l.Kind == human.Arm {
		return neutral.Shoulder(l.Links, l.Side)
	}
	return neutral.Hip(l.Links, l.Side)
}

// segments lays out the limb in the anatomical position from the tables and
// lengths alone. The hinges are the joint coordinates' axes there: doc.go of
// package human has their senses. The shoulder's row is that of Wu et al. 2005
// (plane, elevation, axial rotation, from memory), the hip's that of Grood &
// Suntay 1983 (flexion, abduction, rotation, from memory).
func (l limb) segments() []Segment {
	k, o := l.Links, l.out()
	list := []Segment{upright(l.Segment(reference.SegTrunk), r3.Vec{}, 1, Triple{0, 1, 0}, Triple{0, 0, 1})}
	at := l.root()
	below := func(d float64) r3.Vec { at.Y -= d; return at }
	if l.Kind == human.Arm {
		return append(list,
			upright(l.Segment(reference.SegUpperArm), at, -1, Triple{0, o, 0}, Triple{-o, 0, 0}, Triple{0, -o, 0}),
			upright(l.Segment(reference.SegForearm), below(k.UpperArm), -1, Triple{0, 0, 1}),
			upright(l.Segment(reference.SegHand), below(k.Forearm), -1))
	}
	return append(list,
		upright(l.Segment(reference.SegThigh), at, -1, Triple{0, 0, 1}, Triple{-o, 0, 0}, Triple{0, -o, 0}),
		upright(l.Segment(reference.SegShank), below(k.Thigh), -1, Triple{0, 0, -1}),
		l.foot(below(k.Shank)))
}

// upright is a segment along y from its proximal joint, up (+1) or down (-1).
func upright(m human.SegmentMass, joint r3.Vec, sense float64, axes ...Triple) Segment {
	com := r3.Add(joint, r3.Vec{Y: sense * m.Centre})
	return Segment{tripleOf(joint), append([]Triple{}, axes...), m.Mass, tripleOf(com), Triple{m.Forward, m.Long, m.Sideways}}
}

// foot lies along x, its centre half-way between ankle height and sole.
func (l limb) foot(ankle r3.Vec) Segment {
	m := l.Segment(reference.SegFoot)
	com := r3.Add(ankle, r3.Vec{X: m.Centre - l.Links.HeelToAnkle, Y: -l.Links.AnkleHeight / 2})
	return Segment{tripleOf(ankle), []Triple{{0, 0, 1}}, m.Mass, tripleOf(com), Triple{m.Long, m.Forward, m.Sideways}}
}

// end is the grip or the ball of the foot in the anatomical position.
func (l limb) end() r3.Vec {
	k := l.Links
	if l.Kind == human.Arm {
		return r3.Sub(l.root(), r3.Vec{Y: k.UpperArm + k.ElbowToGrip})
	}
	return r3.Add(l.root(), r3.Vec{X: k.HeelToBall - k.HeelToAnkle, Y: -k.Thigh - k.Shank - k.AnkleHeight})
}

// instant is one posture of a limb with its motion and load, as package human
// is asked. Rates and accelerations are by hinge, like those of [Motion].
type instant struct {
	root       [3]r3.Vec // place of the hips, velocity, acceleration
	back       bool      // faces -x
	moving     bool
	lean       planar.Angle
	arm        human.ArmAngles
	leg        human.LegAngles
	rates, ups [6 + 1]float64
	force      r3.Vec
	moment     r3.Vec
	pad        float64 // 0 at the end of the limb, else a share of the second segment from its joint
}

// draw returns a random instant, still or moving.
func draw(r *rand.Rand, moving bool) instant {
	within := func(low, high float64) float64 { return low + (high-low)*r.Float64() }
	degrees := func(low, high float64) planar.Angle { return planar.Angle(within(low, high)) * planar.Degree }
	vector := func(most float64) r3.Vec {
		return r3.Vec{X: within(-most, most), Y: within(-most, most), Z: within(-most, most)}
	}
	in := instant{
		moving: moving,
		root:   [3]r3.Vec{vector(1)}, back: r.IntN(2) == 1, lean: degrees(-100, 100),
		arm:   human.ArmAngles{Elevation: degrees(3, 177), Plane: degrees(-90, 180), Rotation: degrees(-90, 90), Elbow: degrees(0, 150)},
		leg:   human.LegAngles{HipFlexion: degrees(-30, 120), HipAbduction: degrees(-45, 45), HipRotation: degrees(-45, 45), Knee: degrees(0, 140), Ankle: degrees(-50, 30)},
		force: vector(600), moment: vector(20),
	}
	if r.IntN(3) == 0 {
		in.pad = within(0.2, 1)
	}
	if moving {
		in.root[1], in.root[2] = vector(2), vector(10)
		for k := range in.rates {
			in.rates[k], in.ups[k] = within(-6, 6), within(-60, 60)
		}
	}
	return in
}

// loaded returns the segment that the load is on, counted from the trunk.
func (in instant) loaded() int {
	if in.pad > 0 {
		return 2
	}
	return 3
}

// motion writes an instant for the engines. The shoulder's last hinge counts
// from the recommended zero, which is the arm's own rotation plus its plane.
func (l limb) motion(in instant) Motion {
	yaw := 0.0
	if in.back {
		yaw = math.Pi
	}
	angles := []planar.Angle{planar.Angle(yaw), in.lean}
	if a := in.arm; l.Kind == human.Arm {
		angles = append(angles, a.Plane, a.Elevation, a.Rotation+a.Plane, a.Elbow)
	} else {
		g := in.leg
		angles = append(angles, g.HipFlexion, g.HipAbduction, g.HipRotation, g.Knee, g.Ankle)
	}
	at := l.end()
	if in.pad > 0 {
		upper, lower := l.lengths()
		at = r3.Sub(l.root(), r3.Vec{Y: upper + in.pad*lower})
	}
	m := Motion{
		Root: [3]Triple{tripleOf(in.root[0]), tripleOf(in.root[1]), tripleOf(in.root[2])},
		Load: Load{in.loaded(), tripleOf(at), tripleOf(in.force), tripleOf(in.moment)},
	}
	for k, a := range angles {
		m.Angles = append(m.Angles, float64(a))
		m.Rates = append(m.Rates, in.rates[k])
		m.Accelerations = append(m.Accelerations, in.ups[k])
	}
	return m
}

// lengths returns those of the two links between shoulder and grip, or hip and
// ankle.
func (l limb) lengths() (upper, lower float64) {
	if l.Kind == human.Arm {
		return l.Links.UpperArm, l.Links.ElbowToGrip
	}
	return l.Links.Thigh, l.Links.Shank
}
