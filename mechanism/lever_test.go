package mechanism

import (
	"math"
	"testing"

	"steelyard/planar"
)

func TestLawOfTheLever(t *testing.T) {
	// Archimedes: force · its arm = weight · its arm, whichever side they are on.
	const w = 60 * Gravity
	for _, row := range []struct {
		name       string
		load, grip float64
		want       float64 // N, upwards where the grip moves up with the travel
	}{
		{"second class, load within the grip", 0.62, 1.05, 347.4356}, // 60 · 9.80665 · 0.62 / 1.05, exact
		{"third class, grip within the load", 1.05, 0.62, w * 1.05 / 0.62},
		{"first class, axis between", -0.62, 1.05, -w * 0.62 / 1.05}, // the grip rises, the load falls
	} {
		t.Run(row.name, func(t *testing.T) {
			st := mustCompile(t, lever(row.load, row.grip, 60)).NewState()
			near(t, "force level, N", mustForce(t, st, Hold), row.want, 1e-9)
			near(t, "imbalance, N·m", st.Imbalance(Hold), 0, 1e-10)
			near(t, "lift ratio", st.LiftRatio(), math.Abs(row.load/row.grip), 1e-12)
			near(t, "effective mass, kg", st.Inertia().Mass, 60*row.load*row.load/row.grip/row.grip, 1e-10)

			// The axis carries what is left: upwards, weight less push.
			near(t, "axis, N", st.Reaction(0, Hold).Force.Y, w-row.want, 1e-9)
			near(t, "axis sideways, N", st.Reaction(0, Hold).Force.X, 0, 1e-9)
		})
	}
}

func TestFirstClassLeverPushedDown(t *testing.T) {
	m := lever(-0.62, 1.05, 60)
	m.Drive = Drive{Joint: 0, From: 0.3, To: -1}
	near(t, "force, N", mustForce(t, mustCompile(t, m).NewState(), Hold), 347.4356, 1e-9) // the same law, load rising as the grip goes down
}

func TestOffsetCenterOfGravity(t *testing.T) {
	// 10 kg at (0.4, 0.05) m: moment m·g·(x cos φ - y sin φ), nought where
	// tan φ = x/y and not where the arm stands upright.
	m := lever(0, 1, 0)
	m.Links[0].Mass, m.Links[0].Center = 10, vec{X: 0.4, Y: 0.05}
	m.Drive.To = 1.5
	st := mustMove(t, m, float64(30*planar.Degree))
	near(t, "moment at 30 deg, N·m", mustForce(t, st, Hold)*1, 31.5195696041, 1e-10)
	if err := st.MoveTo(float64(82.8749836511 * planar.Degree)); err != nil {
		t.Fatal(err)
	}
	near(t, "moment at 82.87 deg, N·m", mustForce(t, st, Hold), 0, 1e-9) // the angle has 12 digits
}

func TestPlateLoadsMostFurthestOut(t *testing.T) {
	// Common practice, no source: a plate on a lever loads most where its
	// horizontal distance from the axis is greatest and nothing where the arm
	// stands upright.
	m := lever(0.62, 1.05, 60)
	m.Drive = Drive{Joint: 0, From: -math.Pi / 2, To: math.Pi / 2}
	sw := mustSweep(t, m, 181)
	most := 0
	for i, f := range sw.Hold {
		if f > sw.Hold[most] {
			most = i
		}
		out := sw.Pose(i, 1).Point(m.Weights[0].At).X
		near(t, "force over horizontal distance, N/m", f, 60*Gravity/1.05*out, 1e-9)
	}
	near(t, "hanging, N", sw.Hold[0], 0, 1e-9)
	near(t, "upright, N", sw.Hold[180], 0, 1e-9)
	near(t, "most where level, deg", degrees(sw.Driver[most]), 0, 1e-9)
}
