package human

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// A slender rod turning steadily about a vertical axis at an angle β to it,
// fixed at its centre, needs the moment I·Ω²·sin β·cos β square to the plane of
// the two (the classical tilted rod, closed form).
func TestTiltedRodNeedsAMoment(t *testing.T) {
	const beta, inertia, speed = 0.6, 0.25, 7.0
	s, c := math.Sincos(beta)
	along := r3.Vec{X: s, Y: c}
	rod := Rigid{Axes: [3]r3.Vec{{X: c, Y: -s}, along, {Z: 1}}, Inertia: [3]float64{inertia, 0, inertia}, Omega: r3.Vec{Y: speed}}
	// dL/dt = Ω × L with L = I·Ω·sin β along the first axis reversed
	want := r3.Cross(rod.Omega, r3.Scale(-inertia*speed*s, rod.Axes[0]))
	nearVec(t, "moment (N·m)", lone(rod, r3.Vec{}).Moment, want, 1e-12)
	near(t, "its size (N·m)", r3.Norm(want), inertia*speed*speed*s*c, 1e-12)
}

// The sense of every moment, by hand: weightless segments, one force of 100 N
// on the hand or foot, arms of 0.6 and 0.3 m, legs of 0.8 and 0.4 m.
func TestMomentSenses(t *testing.T) {
	for _, side := range []Side{Right, Left} {
		out := side.out()
		for _, c := range []struct {
			name        string
			elbow, hand r3.Vec
			force       r3.Vec
			want        ArmMoments
		}{
			{"arm forward, pressed down", r3.Vec{X: 0.3}, r3.Vec{X: 0.6}, r3.Vec{Y: -100}, ArmMoments{Elevation: 60, Elbow: 30}},
			{"arm forward, pulled outward", r3.Vec{X: 0.3}, r3.Vec{X: 0.6}, r3.Vec{Z: 100 * out}, ArmMoments{Horizontal: 60, ElbowOffAxis: 30}},
			{"arm out, pulled back", r3.Vec{Z: 0.3 * out}, r3.Vec{Z: 0.6 * out}, r3.Vec{X: -100}, ArmMoments{Horizontal: 60, Elbow: 30}},
			{"forearm forward, pulled inward", r3.Vec{Y: -0.3}, r3.Vec{X: 0.3, Y: -0.3}, r3.Vec{Z: -100 * out}, ArmMoments{Rotation: 30, Horizontal: -30, ElbowOffAxis: 30}},
		} {
			hinge := r3.Cross(c.elbow, r3.Sub(c.hand, c.elbow))
			if r3.Norm(hinge) < 1e-9 { // straight: elbow below, or behind an arm held out
				hinge = r3.Vec{Z: 1}
				if c.elbow.Z != 0 {
					hinge = r3.Vec{Y: out}
				}
			}
			pose := Pose{r3.Vec{}, c.elbow, c.hand, r3.Unit(hinge)}
			chain := []Rigid{{Axes: ground}, {Proximal: c.elbow, Axes: ground, Load: Wrench{Force: c.force, At: c.hand}}}
			loads := make([]Wrench, 2)
			JointLoads(loads, chain, r3.Vec{})
			got := upright.ArmMoments(side, pose, loads[0].Moment, loads[1].Moment)
			name := side.String() + ", " + c.name
			near(t, name+", elevation", got.Elevation, c.want.Elevation, 1e-9)
			near(t, name+", horizontal", got.Horizontal, c.want.Horizontal, 1e-9)
			near(t, name+", rotation", got.Rotation, c.want.Rotation, 1e-9)
			near(t, name+", elbow", got.Elbow, c.want.Elbow, 1e-9)
			near(t, name+", off the elbow's axis", got.ElbowOffAxis, c.want.ElbowOffAxis, 1e-9)
		}
		for _, c := range []struct {
			name        string
			knee, ankle r3.Vec
			force       r3.Vec
			want        LegMoments
		}{
			{"leg down, pulled back", r3.Vec{Y: -0.4}, r3.Vec{Y: -0.8}, r3.Vec{X: -100}, LegMoments{HipFlexion: 80, Knee: -40}},
			{"leg down, pulled inward", r3.Vec{Y: -0.4}, r3.Vec{Y: -0.8}, r3.Vec{Z: -100 * out}, LegMoments{HipAbduction: 80, KneeOffAxis: 40}},
			{"sitting, foot pushed outward", r3.Vec{X: 0.4}, r3.Vec{X: 0.4, Y: -0.4}, r3.Vec{Z: 100 * out}, LegMoments{HipRotation: 40, HipAbduction: -40, KneeOffAxis: 40}},
			{"sitting, foot pulled back", r3.Vec{X: 0.4}, r3.Vec{X: 0.4, Y: -0.4}, r3.Vec{X: -100}, LegMoments{HipFlexion: 40, Knee: -40}},
		} {
			hinge := r3.Vec{Z: -1}
			pose := Pose{r3.Vec{}, c.knee, c.ankle, hinge}
			chain := []Rigid{{Axes: ground}, {Proximal: c.knee, Axes: ground, Load: Wrench{Force: c.force, At: c.ankle}}}
			loads := make([]Wrench, 2)
			JointLoads(loads, chain, r3.Vec{})
			got := upright.LegMoments(side, pose, loads[0].Moment, loads[1].Moment, r3.Vec{})
			name := side.String() + ", " + c.name
			near(t, name+", hip flexion", got.HipFlexion, c.want.HipFlexion, 1e-9)
			near(t, name+", hip abduction", got.HipAbduction, c.want.HipAbduction, 1e-9)
			near(t, name+", hip rotation", got.HipRotation, c.want.HipRotation, 1e-9)
			near(t, name+", knee", got.Knee, c.want.Knee, 1e-9)
			near(t, name+", off the knee's axis", got.KneeOffAxis, c.want.KneeOffAxis, 1e-9)
		}
	}
}

// Standing: the heel lies a quarter of the foot behind the ankle, an ankle
// height below; the ball heel-to-ball in front of it.
func TestSolePoints(t *testing.T) {
	b := testBody(t)
	p, toe := b.Links.Leg(Right).PlaceLeg(upright, r3.Vec{}, LegAngles{})
	heel, ball := b.SolePoint(p, toe, 0), b.SolePoint(p, toe, b.Links.HeelToBall)
	nearVec(t, "heel from the ankle (m)", r3.Sub(heel, p.End), r3.Vec{X: -b.Links.Foot / 4, Y: -b.Links.AnkleHeight}, 1e-12)
	nearVec(t, "ball from the heel (m)", r3.Sub(ball, heel), r3.Vec{X: b.Links.HeelToBall}, 1e-12)
}
