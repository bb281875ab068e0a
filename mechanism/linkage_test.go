package mechanism

import (
	"errors"
	"math"
	"testing"

	"steelyard/planar"
)

func TestNortonFourBar(t *testing.T) {
	// R. L. Norton, Design of Machinery, ch. 4, example 4-1 (from memory; 20.298,
	// 57.325, -60.98, -98.01 deg), recomputed to 12 digits, with velocity ratios.
	for _, row := range []struct {
		name                           string
		branch                         float64
		theta3, theta4, omega3, omega4 float64
	}{
		{"open", +1, 20.2978827882, 57.3248800704, -0.164836576614, 0.279919409687},
		{"crossed", -1, -60.9779667959, -98.0049640780, -0.370350891982, -0.815106878283},
	} {
		t.Run(row.name, func(t *testing.T) {
			// Measured elsewhere and moved to 40 deg, so that position is solved.
			m := fourBar(norton, 70*planar.Degree, row.branch)
			st := mustMove(t, m, float64(-30*planar.Degree))
			pa, pb := st.Pose(1).Point(m.Joints[1].At), st.Pose(3).Point(m.Joints[2].At)
			near(t, "theta2, deg", pa.Angle().Degrees(), 40, 1e-12)
			near(t, "theta3, deg", pb.Sub(pa).Angle().Degrees(), row.theta3, 1e-10)
			near(t, "theta4, deg", pb.Sub(vec{X: norton.d}).Angle().Degrees(), row.theta4, 1e-10)
			near(t, "omega3/omega2", st.vel[2].w, row.omega3, 1e-12)
			near(t, "omega4/omega2", st.vel[3].w, row.omega4, 1e-12)
		})
	}
}

func TestNortonForces(t *testing.T) {
	// Closed form with analytic velocity ratios, 15 digits, agreed by a general
	// multibody engine to 8e-15; effective mass to 12 digits.
	st := mustCompile(t, nortonFourBar(40*planar.Degree)).NewState()
	near(t, "torque at 40 deg, N·m", mustForce(t, st, Hold)*norton.a, 120.737979215259, 1e-11)
	near(t, "effective mass, kg", st.Inertia().Mass, 29.3442453325, 1e-10)
	near(t, "imbalance, N·m", st.Imbalance(Hold), 0, 1e-11)
	if err := st.MoveTo(float64(60 * planar.Degree)); err != nil {
		t.Fatal(err)
	}
	near(t, "torque at 100 deg, N·m", mustForce(t, st, Hold)*norton.a, -8.94809753549, 1e-11)
}

func TestMechanicalAdvantage(t *testing.T) {
	// Norton ch. 6: torque out over torque in = omega2/omega4 = 3.57245680504;
	// transmission angle 37.0269972822 deg, 12 digits.
	m := nortonFourBar(40 * planar.Degree)
	for i := range m.Links {
		m.Links[i].Mass, m.Links[i].Inertia = 0, 0
	}
	const out = 100.0 // N·m on the rocker, clockwise, so that it resists
	m.Weights = nil
	m.Elements = []Element{{Name: "brake", Joint: 3, Law: Steady{out}}}
	st := mustCompile(t, m).NewState()
	in := mustForce(t, st, Hold) * norton.a
	near(t, "torque out over torque in", out/in, 3.57245680504, 1e-10)

	// The coupler is a two-force member: its pull lies along it and turns the
	// rocker at the transmission angle.
	pull := st.Reaction(2, Hold).Force
	rocker := m.Joints[2].At.Sub(m.Joints[3].At)
	mu := math.Asin(math.Abs(rocker.Unit().Cross(pull.Unit())))
	near(t, "transmission angle, deg", degrees(mu), 37.0269972822, 1e-9)
	near(t, "pull on the rocker, N", pull.Norm()*norton.c*math.Sin(mu), out, 1e-10)
}

func TestToggleIsTheRockersDeadPoint(t *testing.T) {
	// Norton's four-bar driven at its rocker: crank and coupler come in line at
	// crank 24.1468479965 deg stretched and 231.317812547 deg folded (12 digits).
	m := nortonFourBar(70 * planar.Degree)
	m.Drive = Drive{Joint: 3, From: -2, To: 2}
	m.Contact = Contact{Name: "rocker pin", Link: 3, At: m.Joints[2].At}
	start := m.Joints[2].At.Sub(m.Joints[3].At).Angle()
	for _, row := range []struct {
		name  string
		crank planar.Angle
		reach float64 // m, O2 to B
		to    float64
	}{
		{"stretched", 24.1468479965 * planar.Degree, 1.6, -2},
		{"folded", 231.317812547 * planar.Degree, 0.8, 2},
	} {
		t.Run(row.name, func(t *testing.T) {
			// Triangle O2-B-O4 by the law of cosines: the rocker's angle there.
			rocker := math.Pi - math.Acos((1+norton.c*norton.c-row.reach*row.reach)/(2*norton.c))
			st := mustCompile(t, m).NewState()
			err := st.MoveTo(row.to)
			var stop *Stop
			if !errors.As(err, &stop) {
				t.Fatalf("got %v, want a stop", err)
			}
			if stop.Kind != DeadPoint {
				t.Errorf("got %q, want the dead point", stop)
			}
			near(t, "driver, rad", stop.Driver, rocker-float64(start), 1e-9)
			// The crank arrives with a square root: 1e-10 rad of driver are 1e-5.
			near(t, "crank at rest, deg", st.Pose(1).Point(m.Joints[1].At).Angle().Normalized().Degrees(),
				row.crank.Normalized().Degrees(), 3e-3)
			pin := planar.Polar(norton.a, row.crank)
			near(t, "place x, m", stop.Place.X, pin.X, 1e-4)
			near(t, "place y, m", stop.Place.Y, pin.Y, 1e-4)
		})
	}
}

func TestMeasuredAtTheDeadPoint(t *testing.T) {
	// Driven at the rocker and measured where crank and coupler are in line, it
	// could go on either way: refused, with the place.
	m := nortonFourBar(24.1468479965 * planar.Degree)
	m.Drive = Drive{Joint: 3, From: 0, To: 1}
	m.Contact = Contact{Name: "rocker pin", Link: 3, At: m.Joints[2].At}
	_, err := Compile(m)
	var stop *Stop
	if !errors.As(err, &stop) || stop.Kind != DeadPoint {
		t.Fatalf("got %v, want the dead point", err)
	}
	near(t, "place, m", stop.Place.Sub(m.Joints[1].At).Norm(), 0, 1e-9)
}

func TestDragLinkCountsTurns(t *testing.T) {
	// With the ground the shortest link, and 0.3 + 0.9 < 0.8 + 0.7 (Grashof), crank
	// and rocker both go right round: two turns of the one are two of the other,
	// and of the coupler.
	m := fourBar(bars{0.8, 0.9, 0.7, 0.3}, 40*planar.Degree, +1)
	m.Drive = Drive{Joint: 0, From: 0, To: 4 * math.Pi}
	st := mustMove(t, m, m.Drive.To)
	near(t, "rocker, rad", float64(st.Turn(3)), 4*math.Pi, 1e-9)
	near(t, "coupler, rad", float64(st.Turn(2)), 4*math.Pi, 1e-9)
}

func TestForceGrowsAtTheToggle(t *testing.T) {
	// Towards the toggle the crank's push on the rocker grows without bound:
	// held at the crank, a moment on the rocker needs ever less.
	m := nortonFourBar(40 * planar.Degree)
	m.Links, m.Weights = []Link{{Name: "crank"}, {Name: "coupler"}, {Name: "rocker"}}, nil
	m.Elements = []Element{{Name: "brake", Joint: 3, Law: Steady{100}}}
	st := mustMove(t, m, float64((24.1468479965-40)*planar.Degree))
	near(t, "force at the toggle, N", mustForce(t, st, Hold), 0, 1e-7)
}

func TestParallelogramCarriesLevel(t *testing.T) {
	// Equal cranks keep the coupler level: it moves like the crank pin, so where
	// the load sits on it does not matter. F·L = W·L·cos φ at the crank pin.
	m := fourBar(bars{0.5, 1, 0.5, 1}, 30*planar.Degree, +1)
	for i := range m.Links {
		m.Links[i].Mass = 0
	}
	m.Drive = Drive{Joint: 0, From: -0.4, To: 0.8}
	for _, x := range []float64{0.1, 1.7} {
		m.Weights[0].At.X = x
		st := mustMove(t, m, float64(25*planar.Degree))
		near(t, "coupler turn, rad", float64(st.Turn(2)), 0, 1e-14)
		near(t, "force, N", mustForce(t, st, Hold), 50*Gravity*math.Cos(float64(55*planar.Degree)), 1e-10)
	}
}

func TestFourBarLoadOnAnyLink(t *testing.T) {
	// Virtual work with the closed-form velocity ratios of the example: the
	// crank torque that holds a weight on crank, coupler or rocker.
	omega3, omega4 := -0.164836576614, 0.279919409687
	base := nortonFourBar(40 * planar.Degree)
	for i := range base.Links {
		base.Links[i].Mass = 0
	}
	pa, o4 := base.Joints[1].At, base.Joints[3].At
	at := vec{X: 0.55, Y: 0.61}
	for _, row := range []struct {
		name string
		link LinkID
		rise float64 // m/rad of the weight
	}{
		{"crank", 1, at.X},
		{"coupler", 2, pa.X + omega3*(at.X-pa.X)},
		{"rocker", 3, omega4 * (at.X - o4.X)},
	} {
		m := base
		m.Weights = []Weight{{Name: "plates", Link: row.link, At: at, Mass: 30, Load: true}}
		st := mustCompile(t, m).NewState()
		near(t, row.name+", torque, N·m", mustForce(t, st, Hold)*norton.a, 30*Gravity*row.rise, 1e-9)
	}
}
