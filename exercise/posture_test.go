package exercise

import (
	"math"
	"testing"

	"steelyard/human"
	"steelyard/mechanism"
	"steelyard/planar"
)

// TestPosturesAndActions puts a pad where a posture has it and expects the
// angle that a goniometer would read there and the action that a coach would
// name, working against the pad.
func TestPosturesAndActions(t *testing.T) {
	b, c := rower(t)
	l := &b.Links
	for _, w := range []struct {
		name   string
		x      Exercise
		st     Station
		axle   planar.Vec
		pad    planar.Vec
		turn   planar.Angle
		tilt   planar.Angle
		joint  Joint
		angle  float64 // degrees, at the start
		action human.Action
	}{
		// On the front, head forward: the knees lie a thigh behind the hips.
		{"lying leg curl", LyingLegCurl, Station{On: OnShank, Posture: LyingOnFront, Trunk: 180 * deg},
			planar.Vec{X: -l.Thigh}, planar.Vec{X: -l.Thigh - 0.3}, -80 * deg, 0, Knee, 0, human.KneeFlex},
		{"the same half-way", LyingLegCurl, Station{On: OnShank, Posture: LyingOnFront, Trunk: 180 * deg},
			planar.Vec{X: -l.Thigh}, planar.Vec{X: -l.Thigh, Y: 0.3}, -20 * deg, 0, Knee, 90, human.KneeFlex},
		{"seated leg curl", SeatedLegCurl, Station{On: OnShank, Trunk: 90 * deg},
			planar.Vec{X: l.Thigh}, planar.Vec{X: l.Thigh + 0.3}, -60 * deg, 0, Knee, 0, human.KneeFlex},
		{"seated leg extension", LegExtension, Station{On: OnShank, Trunk: 90 * deg},
			planar.Vec{X: l.Thigh}, planar.Vec{X: l.Thigh, Y: -0.3}, 60 * deg, 0, Knee, 90, human.KneeExtend},
		{"standing, facing back", LegExtension, Station{On: OnShank, Trunk: 90 * deg, FacesBack: true},
			planar.Vec{X: -l.Thigh}, planar.Vec{X: -l.Thigh, Y: -0.3}, -60 * deg, 0, Knee, 90, human.KneeExtend},
		// In plan: the pad outside or inside a thigh that points straight ahead.
		{"hip abduction", HipAbduction, Station{On: OnThigh, Trunk: 90 * deg, Bend: 90 * deg},
			planar.Vec{Y: l.HipHalf}, planar.Vec{X: 0.35, Y: l.HipHalf}, 30 * deg, 90 * deg, HipSide, 0, human.HipAbduct},
		{"hip adduction", HipAdduction, Station{On: OnThigh, Trunk: 90 * deg, Bend: 90 * deg},
			planar.Vec{Y: l.HipHalf}, planar.Vec{X: 0.35 * math.Cos(0.5), Y: l.HipHalf + 0.35*math.Sin(0.5)}, -20 * deg, 90 * deg, HipSide, 0.5 * 180 / math.Pi, human.HipAdduct},
		// Chest to the floor and up again, legs level behind.
		{"back extension", BackExtension, Station{On: OnTrunk, Posture: LyingOnFront, Trunk: 180 * deg, Thigh: 180 * deg},
			planar.Vec{}, planar.Vec{Y: -0.4}, 80 * deg, 0, Hip, 90, human.HipExtend},
		{"lateral raise by a pad", LateralRaise, Station{On: OnUpperArm, Trunk: 90 * deg, Bend: 90 * deg, FromFront: true},
			planar.Vec{X: l.ShoulderHalf, Y: l.Trunk}, planar.Vec{X: l.ShoulderHalf + 0.2, Y: l.Trunk}, 20 * deg, 0, ShoulderRaising, 90, human.ShoulderAbduct},
	} {
		st := w.st
		st.Contact, st.Anchor = Pad, HipsAnchor
		m := lever(w.axle, w.pad, 0, w.turn)
		m.Plane = mechanism.Plane{Tilt: w.tilt, Mirrored: w.tilt != 0 || st.FromFront}
		// A steady moment that resists the travel, so that gravity has no say.
		sign := 1.0
		if w.turn < 0 {
			sign = -1
		}
		m.Elements = []mechanism.Element{{Name: "brake", Joint: 0, Law: mechanism.Steady{Force: sign * 40}}}
		s, sw := mount(t, m, st, w.x, 3)
		r, err := Run(s, b, c, sw, Options{})
		if err != nil {
			t.Errorf("%s: %v", w.name, err)
			continue
		}
		col := r.Lifting.Column(w.joint)
		if got := col.Angle[0].Degrees(); math.Abs(got-w.angle) > 1e-6 {
			t.Errorf("%s: %v at %.4f°, want %.4f", w.name, w.joint, got, w.angle)
		}
		if col.Action[1] != w.action {
			t.Errorf("%s: %v of %.2f N·m, want %v", w.name, col.Action[1], col.Moment[1], w.action)
		}
	}
}
