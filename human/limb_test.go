package human

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"steelyard/planar"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: %.9g, want %.9g (off by %.2g, allowed %.2g)", what, got, want, got-want, tol)
	}
}

func nearVec(t *testing.T, what string, got, want r3.Vec, tol float64) {
	t.Helper()
	if !(r3.Norm(r3.Sub(got, want)) <= tol) {
		t.Errorf("%s: %.6g, want %.6g", what, got, want)
	}
}

var upright = TrunkAt(r3.Vec{}, 0, false)

// Two links of 0.3 and 0.4 m across 0.5 m make a 3-4-5 triangle: the middle
// joint stands 0.18 m along and 0.24 m off the line (altitude 12/5, foot 9/5).
func TestReachByHandGeometry(t *testing.T) {
	arm := Limb{Arm, Right, 0.3, 0.4}
	leg := Limb{Leg, Right, 0.3, 0.4}
	left := Limb{Arm, Left, 0.3, 0.4}
	forward, down := r3.Vec{X: 0.5}, r3.Vec{Y: -0.5}
	for _, c := range []struct {
		name   string
		limb   Limb
		end    r3.Vec
		swivel float64 // degrees
		mid    r3.Vec
	}{
		{"hand forward, elbow below", arm, forward, 0, r3.Vec{X: 0.18, Y: -0.24}},
		{"hand forward, elbow flared", arm, forward, 90, r3.Vec{X: 0.18, Z: 0.24}},
		{"left hand forward, elbow flared", left, forward, 90, r3.Vec{X: 0.18, Z: -0.24}},
		{"hand down, elbow behind", arm, down, 0, r3.Vec{X: -0.24, Y: -0.18}},
		{"hand overhead, elbow in front", arm, r3.Vec{Y: 0.5}, 0, r3.Vec{X: 0.24, Y: 0.18}},
		{"ankle down, knee in front", leg, down, 0, r3.Vec{X: 0.24, Y: -0.18}},
		{"ankle down, knee out", leg, down, 90, r3.Vec{Y: -0.18, Z: 0.24}},
	} {
		p, err := c.limb.Reach(upright, r3.Vec{}, c.end, degrees(c.swivel))
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		nearVec(t, c.name, p.Mid, c.mid, 1e-12)
		near(t, c.name+", flexion", p.Flexion().Degrees(), 90, 1e-9) // the triangle's right angle
	}
}

func TestReachRefuses(t *testing.T) {
	arm := Limb{Arm, Right, 0.3, 0.4}
	for _, c := range []struct {
		name string
		end  r3.Vec
	}{{"too far", r3.Vec{X: 0.71}}, {"too near", r3.Vec{X: 0.09}}, {"at the shoulder", r3.Vec{}}, {"nowhere", r3.Vec{X: math.NaN()}}} {
		var reach *ReachError
		if _, err := arm.Reach(upright, r3.Vec{}, c.end, 0); !errors.As(err, &reach) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	var swivel *SwivelError
	if _, err := arm.Reach(upright, r3.Vec{}, r3.Vec{Z: 0.5}, 0); !errors.As(err, &swivel) {
		t.Errorf("straight out to the side: %v", err)
	}
	p, err := arm.ReachToward(r3.Vec{}, r3.Vec{Z: 0.5}, r3.Vec{X: -1})
	if err != nil {
		t.Fatal(err)
	}
	nearVec(t, "elbow behind a hand out to the side", p.Mid, r3.Vec{X: -0.24, Z: 0.18}, 1e-12)
	if p, err = arm.Reach(upright, r3.Vec{}, r3.Vec{X: 0.7}, 0); err != nil || p.Flexion().Degrees() > 1e-5 {
		t.Errorf("a straight arm: %v, %v", p.Flexion(), err)
	}
}

// Placing a limb by its joint angles, reading the angles and reaching for the
// same end must agree for any posture, either side and any lie of the trunk.
func TestLimbRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side := Side(rapid.IntRange(0, 1).Draw(t, "side"))
		draw := func(name string, low, high float64) planar.Angle {
			return degrees(rapid.Float64Range(low, high).Draw(t, name))
		}
		trunk := TrunkAt(r3.Vec{X: 0.2, Y: 1, Z: 0.1}, draw("lean", -120, 120), rapid.Bool().Draw(t, "faces back"))
		root := trunk.Point(r3.Vec{Y: 0.5})

		arm := Limb{Arm, side, 0.29, 0.33}
		a := ArmAngles{draw("elevation", 6, 174), draw("plane", -179, 179), draw("rotation", -100, 100), draw("elbow", 1, 150), true}
		p := arm.PlaceArm(trunk, root, a)
		if got := trunk.ArmAngles(side, p); !sameArm(got, a) {
			t.Fatalf("arm %+v read as %+v", a, got)
		}
		checkReach(t, arm, trunk, p)

		leg := Limb{Leg, side, 0.42, 0.41}
		l := LegAngles{draw("hip flexion", -40, 130), draw("hip abduction", -40, 60), draw("hip rotation", -60, 60), draw("knee", 1, 150), draw("ankle", -60, 30)}
		q, toe := leg.PlaceLeg(trunk, root, l)
		if got := trunk.LegAngles(side, q, toe); !sameLeg(got, l) {
			t.Fatalf("leg %+v read as %+v", l, got)
		}
		checkReach(t, leg, trunk, q)
	})
}

func checkReach(t *rapid.T, l Limb, body Frame, p Pose) {
	s, err := l.Swivel(body, p)
	if err != nil {
		return // straight out to the side
	}
	q, err := l.Reach(body, p.Root, p.End, s)
	if err != nil {
		t.Fatalf("%v: %v", l, err)
	}
	if r3.Norm(r3.Sub(p.Mid, q.Mid)) > 1e-7 || r3.Norm(r3.Sub(p.Hinge, q.Hinge)) > 1e-6 {
		t.Fatalf("%v: middle joint %v reached as %v", l, p.Mid, q.Mid)
	}
}

const sameAngle = 1e-6 // rad

func sameArm(a, b ArmAngles) bool {
	return sameTurn(a.Elevation, b.Elevation) && sameTurn(a.Plane, b.Plane) && sameTurn(a.Rotation, b.Rotation) && sameTurn(a.Elbow, b.Elbow)
}

func sameLeg(a, b LegAngles) bool {
	return sameTurn(a.HipFlexion, b.HipFlexion) && sameTurn(a.HipAbduction, b.HipAbduction) &&
		sameTurn(a.HipRotation, b.HipRotation) && sameTurn(a.Knee, b.Knee) && sameTurn(a.Ankle, b.Ankle)
}

func sameTurn(a, b planar.Angle) bool { return math.Abs(float64((a - b).Normalized())) < sameAngle }

// Postures whose angles follow from their description alone.
func TestArmAnglesOfKnownPostures(t *testing.T) {
	for _, side := range []Side{Right, Left} {
		out := side.out()
		for _, c := range []struct {
			name                             string
			elbow, hand                      r3.Vec
			elevation, plane, rotation, bend float64
		}{
			{"forearm forward at the side", r3.Vec{Y: -1}, r3.Vec{X: 1, Y: -1}, 0, 90, 0, 90},
			{"forearm turned out at the side", r3.Vec{Y: -1}, r3.Vec{Y: -1, Z: out}, 0, 90, 90, 90},
			{"forearm across the belly", r3.Vec{Y: -1}, r3.Vec{Y: -1, Z: -out}, 0, 90, -90, 90},
			{"arm forward, forearm up", r3.Vec{X: 1}, r3.Vec{X: 1, Y: 1}, 90, 90, 0, 90},
			{"arm out, forearm forward", r3.Vec{Z: out}, r3.Vec{X: 1, Z: out}, 90, 0, 0, 90},
			{"arm out, forearm up", r3.Vec{Z: out}, r3.Vec{Y: 1, Z: out}, 90, 0, 90, 90},
			{"arm out, forearm down", r3.Vec{Z: out}, r3.Vec{Y: -1, Z: out}, 90, 0, -90, 90},
			{"arm behind, forearm down", r3.Vec{X: -1}, r3.Vec{X: -1, Y: -1}, 90, -90, 0, 90},
			{"arm across, forearm forward of it", r3.Vec{Z: -out}, r3.Vec{X: 1, Z: -out}, 90, 180, 0, 90},
		} {
			hinge := r3.Unit(r3.Cross(c.elbow, r3.Sub(c.hand, c.elbow)))
			a := upright.ArmAngles(side, Pose{r3.Vec{}, c.elbow, c.hand, hinge})
			near(t, side.String()+", "+c.name+", elevation", a.Elevation.Degrees(), c.elevation, 1e-9)
			near(t, side.String()+", "+c.name+", plane", a.Plane.Degrees(), c.plane, 1e-9)
			near(t, side.String()+", "+c.name+", rotation", math.Abs((a.Rotation - degrees(c.rotation)).Normalized().Degrees()), 0, 1e-9)
			near(t, side.String()+", "+c.name+", elbow", a.Elbow.Degrees(), c.bend, 1e-9)
		}
	}
}

func TestLegAnglesOfKnownPostures(t *testing.T) {
	for _, side := range []Side{Right, Left} {
		out := side.out()
		for _, c := range []struct {
			name                                       string
			knee, ankle, toe                           r3.Vec
			flexion, abduction, rotation, bend, ankles float64
		}{
			{"sitting upright", r3.Vec{X: 1}, r3.Vec{X: 1, Y: -1}, r3.Vec{X: 1}, 90, 0, 0, 90, 0},
			{"heel to buttock", r3.Vec{Y: -1}, r3.Vec{X: -1, Y: -1}, r3.Vec{Y: -1}, 0, 0, 0, 90, 0},
			{"heel back, toes pulled in", r3.Vec{Y: -1}, r3.Vec{X: -1, Y: -1}, r3.Unit(r3.Vec{X: 1, Y: -1}), 0, 0, 0, 90, 45},
			{"toes pointed", r3.Vec{Y: -1}, r3.Vec{X: -1, Y: -1}, r3.Unit(r3.Vec{X: -1, Y: -1}), 0, 0, 0, 90, -45},
			{"thigh forward, foot swung in", r3.Vec{X: 1}, r3.Vec{X: 1, Z: -out}, r3.Vec{X: 1}, 90, 0, 90, 90, 0},
			{"thigh 30° out", r3.Vec{Y: -math.Sqrt(3) / 2, Z: out / 2}, r3.Vec{X: -1, Y: -math.Sqrt(3) / 2, Z: out / 2}, r3.Vec{Y: -1}, 0, 30, 0, 90, 0},
		} {
			hinge := r3.Unit(r3.Cross(c.knee, r3.Sub(c.ankle, c.knee)))
			a := upright.LegAngles(side, Pose{r3.Vec{}, c.knee, c.ankle, hinge}, c.toe)
			for _, v := range []struct {
				joint string
				got   planar.Angle
				want  float64
			}{{"hip flexion", a.HipFlexion, c.flexion}, {"abduction", a.HipAbduction, c.abduction}, {"rotation", a.HipRotation, c.rotation}, {"knee", a.Knee, c.bend}, {"ankle", a.Ankle, c.ankles}} {
				near(t, side.String()+", "+c.name+", "+v.joint, v.got.Degrees(), v.want, 1e-9)
			}
		}
	}
}

func TestTrunkLies(t *testing.T) {
	for _, c := range []struct {
		name       string
		lean       float64
		back       bool
		head, face r3.Vec
	}{
		{"upright", 0, false, r3.Vec{Y: 1}, r3.Vec{X: 1}},
		{"on the back", 90, false, r3.Vec{X: -1}, r3.Vec{Y: 1}},
		{"on the front", -90, false, r3.Vec{X: 1}, r3.Vec{Y: -1}},
		{"facing back, leaning back", 90, true, r3.Vec{X: 1}, r3.Vec{Y: 1}},
	} {
		f := TrunkAt(r3.Vec{}, degrees(c.lean), c.back)
		nearVec(t, c.name+", head", f.Y, c.head, 1e-15)
		nearVec(t, c.name+", face", f.X, c.face, 1e-15)
		nearVec(t, c.name+", right-handed", r3.Cross(f.X, f.Y), f.Z, 1e-15)
	}
}
