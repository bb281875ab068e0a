package human

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"steelyard/planar"
	"steelyard/reference"
)

var ground = [3]r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}

// lone returns what must be supplied at the proximal joint of one segment.
func lone(b Rigid, root r3.Vec) Wrench {
	dst := make([]Wrench, 1)
	JointLoads(dst, []Rigid{b}, root)
	return dst[0]
}

// Winter, Biomechanics and Motor Control of Human Movement, 4th ed. 2009,
// examples 5.1 to 5.3, from memory; he rounds g to 9.8 and prints two to four
// figures.
func TestWinterExamples(t *testing.T) {
	// 5.1: standing on one foot, 60 kg; the floor's 588 N act 4 cm in front of
	// the ankle, the foot's 0.9 kg 6 cm in front of it.
	standing := lone(Rigid{Mass: 0.9, Centre: r3.Vec{X: 0.06}, Axes: ground,
		Load: Wrench{Force: r3.Vec{Y: 588}, At: r3.Vec{X: 0.04}}}, r3.Vec{})
	near(t, "5.1 ankle force (N)", standing.Force.Y, -579.2, 0.05)
	near(t, "5.1 ankle moment (N·m)", standing.Moment.Z, -22.99, 0.01) // holds the heel up: plantarflexion

	// 5.2: the foot in swing, 80 kg: 1.16 kg, 0.0105 kg·m², ankle 1.95 cm behind
	// and 9.85 cm above its centre, which accelerates by (9.07, -6.62).
	centre := r3.Vec{X: 0.0195, Y: -0.0985}
	alpha := r3.Vec{Z: 21.69}
	foot := Rigid{Mass: 1.16, Centre: centre, Axes: ground, Inertia: [3]float64{0, 0, 0.0105}, Alpha: alpha}
	ankle := lone(foot, r3.Sub(r3.Vec{X: 9.07, Y: -6.62}, r3.Cross(alpha, centre)))
	near(t, "5.2 Rx (N)", ankle.Force.X, 10.52, 0.01)
	near(t, "5.2 Ry (N)", ankle.Force.Y, 3.69, 0.01)
	near(t, "5.2 ankle moment (N·m)", ankle.Moment.Z, 1.34, 0.01)

	// 5.3: the shank at the same instant: 3.72 kg, 0.0640 kg·m²; knee at
	// (0.142, 0.129) and ankle at (-0.185, -0.169) from its centre.
	knee, low := r3.Vec{X: 0.142, Y: 0.129}, r3.Vec{X: -0.185, Y: -0.169}
	alpha = r3.Vec{Z: 36.9}
	shank := Rigid{Mass: 3.72, Proximal: knee, Axes: ground, Inertia: [3]float64{0, 0, 0.0640}, Alpha: alpha,
		Load: Wrench{Force: r3.Vec{X: -10.52, Y: -3.69}, At: low, Moment: r3.Vec{Z: -1.34}}}
	top := lone(shank, r3.Add(r3.Vec{X: -0.03, Y: -4.21}, r3.Cross(alpha, knee)))
	near(t, "5.3 Rx (N)", top.Force.X, 10.41, 0.01)
	near(t, "5.3 Ry (N)", top.Force.Y, 24.48, 0.03)
	near(t, "5.3 knee moment (N·m)", top.Moment.Z, 2.66, 0.03)
}

// Level forearms with a weight in the hand. The printed answers are the force
// of a biceps at a stated distance and angle; the net joint moment is that
// force times its moment arm.
func TestForearmExamples(t *testing.T) {
	for _, c := range []struct {
		name                  string
		mass, at, load, reach float64 // kg, m
		force, arm, tolerance float64 // N, m, N
	}{
		// Giancoli, Physics: Principles with Applications, 7th ed., problem 9-37
		// (retrieved solution): 2.0 kg at 15 cm, 25 kg at 35 cm, biceps at 5.0 cm
		// and 105°; printed as about 1800 N.
		{"Giancoli 9-37", 2.0, 0.15, 25, 0.35, 1800, 0.050 * math.Sin(105*math.Pi/180), 50},
		// Practice problem (retrieved): 1.00 kg at half of 37 cm, 600 g ball at
		// 37 cm, biceps at 3.50 cm: 113.96 N.
		{"ball in the hand", 1.00, 0.185, 0.600, 0.370, 113.96, 0.0350, 0.1},
		// OpenStax, College Physics, section 9.6, example: 2.50 kg at 16.0 cm,
		// 4.00 kg at 38.0 cm, biceps at 4.00 cm: 470 N with g 9.80; figures from memory.
		{"OpenStax 9.6", 2.50, 0.160, 4.00, 0.380, 470, 0.0400, 1},
	} {
		w := lone(Rigid{Mass: c.mass, Centre: r3.Vec{X: c.at}, Axes: ground,
			Load: Wrench{Force: r3.Vec{Y: -c.load * Gravity}, At: r3.Vec{X: c.reach}}}, r3.Vec{})
		near(t, c.name+" (N)", w.Moment.Z/c.arm, c.force, c.tolerance)
	}
	// Chaffin & Andersson style example (retrieved abstract): forearm 15 N and
	// ball 20 N need 275 N of biceps and leave 240 N on the ulna, so 35 N net.
	w := lone(Rigid{Mass: 15 / Gravity, Axes: ground, Load: Wrench{Force: r3.Vec{Y: -20}}}, r3.Vec{})
	near(t, "net elbow force (N)", w.Force.Y, 275-240, 1e-12)
}

func testBody(t testing.TB) *Body {
	b, _, err := NewBody(Person{Height: 1.78, Mass: 82, Sex: reference.Male, Age: 31})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func potential(chain [3]Rigid) float64 {
	v := 0.0
	for _, s := range chain {
		v += s.Mass * Gravity * s.Centre.Y
	}
	return v
}

// Held still, the moment along an angle is the slope of the potential energy
// less the work of the hand or foot force: virtual work against Newton-Euler.
func TestStaticMomentsAgainstVirtualWork(t *testing.T) {
	body := testBody(t)
	const h = 1e-5 // rad
	rapid.Check(t, func(t *rapid.T) {
		side := Side(rapid.IntRange(0, 1).Draw(t, "side"))
		draw := func(name string, low, high float64) planar.Angle {
			return degrees(rapid.Float64Range(low, high).Draw(t, name))
		}
		component := rapid.Float64Range(-400, 400)
		force := r3.Vec{X: component.Draw(t, "fx"), Y: component.Draw(t, "fy"), Z: component.Draw(t, "fz")}
		trunk := TrunkAt(r3.Vec{Y: 1}, draw("lean", -100, 100), false)

		a := ArmAngles{Elevation: draw("elevation", 10, 170), Plane: draw("plane", -80, 170), Rotation: draw("rotation", -80, 80), Elbow: draw("elbow", 5, 140)}
		arm, shoulder := body.Links.Arm(side), trunk.Shoulder(body.Links, side)
		pose := arm.PlaceArm(trunk, shoulder, a)
		chain := body.ArmChain(pose)
		chain[2].Load = Wrench{Force: force, At: pose.End}
		loads := make([]Wrench, 3)
		JointLoads(loads, chain[:], r3.Vec{})
		m := trunk.ArmMoments(side, pose, loads[0].Moment, loads[1].Moment)
		armWork := func(q *planar.Angle) float64 {
			at := func(d planar.Angle) float64 {
				*q += d
				p := arm.PlaceArm(trunk, shoulder, a)
				*q -= d
				return potential(body.ArmChain(p)) - r3.Dot(force, p.End)
			}
			return (at(h) - at(-h)) / (2 * h)
		}
		agree(t, "shoulder elevation", m.Elevation, armWork(&a.Elevation))
		agree(t, "shoulder rotation", m.Rotation, armWork(&a.Rotation))
		agree(t, "elbow", m.Elbow, armWork(&a.Elbow))
		// Horizontal: turn the whole arm about that axis.
		_, horizontal, _ := armAxes(trunk, side, pose.Upper())
		turned := func(d planar.Angle) float64 {
			p := pose
			p.Mid = r3.Add(p.Root, turnAbout(r3.Sub(p.Mid, p.Root), horizontal, d))
			p.End = r3.Add(p.Root, turnAbout(r3.Sub(p.End, p.Root), horizontal, d))
			p.Hinge = turnAbout(p.Hinge, horizontal, d)
			return potential(body.ArmChain(p)) - r3.Dot(force, p.End)
		}
		agree(t, "shoulder horizontal", m.Horizontal, (turned(h)-turned(-h))/(2*h))

		l := LegAngles{draw("hip flexion", -20, 110), draw("hip abduction", -20, 40), draw("hip rotation", -40, 40), draw("knee", 5, 130), draw("ankle", -40, 25)}
		leg, hip := body.Links.Leg(side), trunk.Hip(body.Links, side)
		q, toe := leg.PlaceLeg(trunk, hip, l)
		legs := body.LegChain(q, toe)
		ball := body.SolePoint(q, toe, body.Links.HeelToBall)
		legs[2].Load = Wrench{Force: force, At: ball}
		JointLoads(loads, legs[:], r3.Vec{})
		n := trunk.LegMoments(side, q, loads[0].Moment, loads[1].Moment, loads[2].Moment)
		legWork := func(angle *planar.Angle) float64 {
			at := func(d planar.Angle) float64 {
				*angle += d
				p, toe := leg.PlaceLeg(trunk, hip, l)
				*angle -= d
				return potential(body.LegChain(p, toe)) - r3.Dot(force, body.SolePoint(p, toe, body.Links.HeelToBall))
			}
			return (at(h) - at(-h)) / (2 * h)
		}
		agree(t, "hip flexion", n.HipFlexion, legWork(&l.HipFlexion))
		agree(t, "hip abduction", n.HipAbduction, legWork(&l.HipAbduction))
		agree(t, "hip rotation", n.HipRotation, legWork(&l.HipRotation))
		agree(t, "knee", n.Knee, legWork(&l.Knee))
		agree(t, "ankle", n.Ankle, legWork(&l.Ankle))
	})
}

func agree(t *rapid.T, what string, got, want float64) {
	if math.Abs(got-want) > 1e-4*(1+math.Abs(want)) { // N·m; central differences of 1e-5 rad
		t.Fatalf("%s: %.6f N·m, virtual work gives %.6f", what, got, want)
	}
}

// In motion the joints' power must be the rate of kinetic and potential
// energy. Omega and Alpha come from finite differences of the axes.
func TestMovingLegBalancesPower(t *testing.T) {
	body := testBody(t)
	leg := body.Links.Leg(Right)
	const h = 1e-4 // s
	chainAt := func(time float64) [3]Rigid {
		s := func(amplitude, rate, phase float64) planar.Angle {
			return planar.Angle(amplitude * math.Sin(rate*time+phase))
		}
		hip := r3.Vec{X: 0.1 * math.Sin(3*time), Y: 1 + 0.05*math.Cos(2*time)}
		p, toe := leg.PlaceLeg(upright, hip, LegAngles{0.5 + s(0.6, 3, 0), 0.2 + s(0.2, 2, 1), s(0.3, 4, 0), 0.8 + s(0.5, 5, 2), s(0.2, 6, 0)})
		return body.LegChain(p, toe)
	}
	omegas := func(time float64) (w [3]r3.Vec) {
		before, after := chainAt(time-h), chainAt(time+h)
		for i := range w {
			w[i] = AngularVelocity(&before[i], &after[i], 2*h)
		}
		return w
	}
	energy := func(time float64) float64 {
		before, now, after := chainAt(time-h), chainAt(time), chainAt(time+h)
		w := omegas(time)
		e := potential(now)
		for i := range now {
			v := r3.Scale(1/(2*h), r3.Sub(after[i].Centre, before[i].Centre))
			e += 0.5*now[i].Mass*r3.Dot(v, v) + 0.5*r3.Dot(w[i], now[i].spin(w[i]))
		}
		return e
	}
	for _, time := range []float64{0.1, 0.45, 0.9} {
		chain, w := chainAt(time), omegas(time)
		before, after := omegas(time-h), omegas(time+h)
		for i := range chain {
			chain[i].Omega = w[i]
			chain[i].Alpha = r3.Scale(1/(2*h), r3.Sub(after[i], before[i]))
		}
		p0, p1 := chainAt(time - h)[0].Proximal, chainAt(time + h)[0].Proximal
		velocity := r3.Scale(1/(2*h), r3.Sub(p1, p0))
		root := r3.Scale(1/(h*h), r3.Add(r3.Sub(p1, chain[0].Proximal), r3.Sub(p0, chain[0].Proximal)))
		loads := make([]Wrench, 3)
		JointLoads(loads, chain[:], root)

		power, inner := r3.Dot(loads[0].Force, velocity), r3.Vec{}
		for i, l := range loads {
			power += r3.Dot(l.Moment, r3.Sub(w[i], inner))
			inner = w[i]
		}
		rate := (energy(time+10*h) - energy(time-10*h)) / (20 * h)
		near(t, fmt.Sprintf("power at %.2f s (W)", time), power, rate, 2e-3*(1+math.Abs(rate)))
	}
}

func TestAngularVelocityOfAKnownTurn(t *testing.T) {
	axis := r3.Unit(r3.Vec{X: 1, Y: -2, Z: 0.5})
	from, to := Rigid{Axes: ground}, Rigid{}
	for i, e := range from.Axes {
		to.Axes[i] = turnAbout(e, axis, 2.5)
	}
	nearVec(t, "2.5 rad in half a second", AngularVelocity(&from, &to, 0.5), r3.Scale(5, axis), 1e-12)
	nearVec(t, "at rest", AngularVelocity(&from, &from, 0.5), r3.Vec{}, 0)
}

// A trunk held level from the hips, face down: its weight times the distance
// of its centre, .431 of the way from shoulders to hips (de Leva 1996, men,
// .4346 of the mass), and the head's .0694.
func TestLevelTrunk(t *testing.T) {
	b := testBody(t)
	for _, back := range []bool{false, true} {
		f := TrunkAt(r3.Vec{Y: 1}, degrees(-90), back)
		chain := b.TrunkChain(f)
		loads := make([]Wrench, 2)
		JointLoads(loads, chain[:], r3.Vec{})
		trunk := 0.4346 * 82 * Gravity * (1 - 0.431) * b.Links.Trunk
		head := 0.0694 * 82 * Gravity * (b.Links.HipToCrown - 0.5*242.9/1741*1.78)
		near(t, "moment of both hips (N·m)", f.TrunkFlexion(loads[0].Moment), -(trunk + head), 1e-9) // extension holds it
	}
}

// Trade fact (common practice, no source): the same weight asks most of the
// shoulder where the arm is level and nothing where it hangs.
func TestArmAsksMostWhenLevel(t *testing.T) {
	body := testBody(t)
	moment := func(deg float64) float64 {
		pose := body.Links.Arm(Right).PlaceArm(upright, r3.Vec{}, ArmAngles{Elevation: degrees(deg), Plane: degrees(0)})
		chain := body.ArmChain(pose)
		chain[2].Load = Wrench{Force: r3.Vec{Y: -98.0665}, At: pose.End} // 10 kg
		loads := make([]Wrench, 3)
		JointLoads(loads, chain[:], r3.Vec{})
		return upright.ArmMoments(Right, pose, loads[0].Moment, loads[1].Moment).Elevation
	}
	near(t, "hanging (N·m)", moment(0), 0, 1e-9)
	level := moment(90)
	near(t, "45° over level", moment(45)/level, math.Sqrt2/2, 1e-9) // sine of the elevation
	near(t, "135° over level", moment(135)/level, math.Sqrt2/2, 1e-9)
}
