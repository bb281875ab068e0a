package human

import (
	"math"
	"testing"

	"steelyard/planar"
	"steelyard/reference"
)

func stretchOf(t testing.TB) *Stretch {
	b := bodyOf(t, Person{Height: 1.75, Mass: 75, Sex: reference.Male, Age: 30})
	return NewStretch(&b.Ranges)
}

// Every muscle must lengthen when the joint goes against its main action.
func TestMusclesLengthenAgainstTheirAction(t *testing.T) {
	s := stretchOf(t)
	for m := range NumMuscles {
		main := m.Works()[0]
		var p Posture
		p[ElbowFlexion], p[KneeFlexion] = degrees(60), degrees(60)
		p[ShoulderFlexion] = degrees(60)
		if main == ShoulderAbduct || main.Coordinate() == ShoulderHorizontal {
			p[ShoulderFlexion], p[ShoulderAbduction] = degrees(40), degrees(60)
		}
		before, after := p, p
		step := planar.Angle(0.1 * main.Sign())
		if main.Coordinate() == ShoulderHorizontal { // turn the raised arm forward
			elevation, plane := p.elevation()
			after = p.WithArm(ArmAngles{Elevation: elevation, Plane: plane + step, Elbow: p[ElbowFlexion]})
		} else {
			after[main.Coordinate()] += step
		}
		if l0, l1 := s.At(m, before), s.At(m, after); l1 >= l0 {
			t.Errorf("%v: %v takes it from %.3f to %.3f of its span", m, main, l0, l1)
		}
	}
}

// Within the ranges a muscle stays between 0 and 1 and reaches both.
func TestStretchSpansZeroToOne(t *testing.T) {
	b := bodyOf(t, Person{Height: 1.75, Mass: 75, Sex: reference.Male, Age: 30})
	s, r := NewStretch(&b.Ranges), b.Ranges
	for m := range NumMuscles {
		low, high := math.Inf(1), math.Inf(-1)
		visit := func(p Posture) {
			l := s.At(m, p)
			low, high = min(low, l), max(high, l)
		}
		at := func(c Coordinate, i int) planar.Angle {
			return r[c].Min.Angle + planar.Angle(float64(i)/12)*(r[c].Max.Angle-r[c].Min.Angle)
		}
		for i := range 13 {
			for j := range 13 {
				var p Posture
				p[ElbowFlexion], p[ShoulderFlexion] = at(ElbowFlexion, i), at(ShoulderFlexion, j)
				p[HipFlexion], p[KneeFlexion], p[AnkleDorsiflexion] = at(HipFlexion, j), at(KneeFlexion, i), at(AnkleDorsiflexion, j)
				p[HipAbduction], p[TrunkFlexion] = at(HipAbduction, i), at(TrunkFlexion, i)
				if m == Gastrocnemius {
					p[AnkleDorsiflexion] = at(AnkleDorsiflexion, j)
				}
				if muscles[m].pull != nil {
					a := ArmAngles{Elevation: degrees(float64(15 * j)), Plane: degrees(float64(30*i) - 180)}
					if _, bad := r.CheckShoulder(a); bad {
						continue
					}
					p = p.WithArm(a)
				}
				visit(p)
			}
		}
		if low < -0.001 || high > 1.001 || low > 0.08 || high < 0.92 { // the test's own grid is coarse
			t.Errorf("%v runs from %.3f to %.3f", m, low, high)
		}
	}
}

// Two-joint muscles follow both joints (trade facts, common practice, no
// source): the arm behind the body stretches the biceps; overhead, the long
// triceps; a flexed hip the hamstrings; a straight knee the gastrocnemius.
func TestTwoJointMuscles(t *testing.T) {
	s := stretchOf(t)
	with := func(c Coordinate, deg float64, p Posture) Posture { p[c] = degrees(deg); return p }
	bent := with(ElbowFlexion, 90, Posture{})
	for _, c := range []struct {
		m           Muscle
		short, long Posture
	}{
		{Biceps, with(ShoulderFlexion, 60, bent), with(ShoulderFlexion, -40, bent)},
		{TricepsLong, bent, with(ShoulderFlexion, 160, bent)},
		{Hamstrings, with(KneeFlexion, 60, Posture{}), with(KneeFlexion, 60, with(HipFlexion, 90, Posture{}))},
		{RectusFemoris, with(KneeFlexion, 60, with(HipFlexion, 90, Posture{})), with(KneeFlexion, 60, Posture{})},
		{Gastrocnemius, with(KneeFlexion, 90, Posture{}), Posture{}},
		{Pectorals, Posture{}.WithArm(ArmAngles{Elevation: degrees(90), Plane: degrees(90)}), Posture{}.WithArm(ArmAngles{Elevation: degrees(90), Plane: degrees(-20)})},
		{Latissimus, Posture{}, Posture{}.WithArm(ArmAngles{Elevation: degrees(165), Plane: degrees(45)})},
	} {
		if a, b := s.At(c.m, c.short), s.At(c.m, c.long); b < a+0.15 {
			t.Errorf("%v: %.2f to %.2f of its span", c.m, a, b)
		}
	}
	if a, b := s.At(Soleus, Posture{}), s.At(Soleus, with(KneeFlexion, 90, Posture{})); a != b {
		t.Errorf("the soleus does not cross the knee: %.3f and %.3f", a, b)
	}
}

// The share of the biceps' whole change of length that the shoulder makes, by
// hand: constant arm 29.21 mm over 230° (60° behind to 170°) against the
// integral of the elbow polynomial 14.660 + 0.45322θ + 1.8047e-3θ² -
// 2.9883e-5θ³ mm over 0 to 140° (Pigeon, Yahia & Feldman 1996).
func TestBicepsExcursionByHand(t *testing.T) {
	x := 140.0
	elbow := (14.660*x + 0.45322*x*x/2 + 1.8047e-3*x*x*x/3 - 2.9883e-5*x*x*x*x/4) * math.Pi / 180
	p := published("biceps brachii", ElbowFlexion)
	near(t, "elbow part (mm)", -1000*p.length(degrees(140)), elbow, 1e-4)
	q := published("biceps brachii", ShoulderFlexion)
	near(t, "shoulder part (mm)", 1000*(q.length(degrees(-60))-q.length(degrees(170))), 29.21*230*math.Pi/180, 1e-9)
}
