package mechanism

import (
	"math"
	"testing"

	"steelyard/planar"
)

// near fails the test unless got is within tol of want.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.15g, want %.15g, difference %.3g > %.3g", what, got, want, got-want, tol)
	}
}

// mustCompile compiles a machine that is right by construction.
func mustCompile(t testing.TB, m Machine) *Model {
	t.Helper()
	md, err := Compile(m)
	if err != nil {
		t.Fatal(err)
	}
	return md
}

// lever is a third- or second-class lever turning about the origin, level as
// measured: load at x = load, grip at x = grip.
func lever(load, grip, mass float64) Machine {
	return Machine{
		Links:   []Link{{Name: "arm"}},
		Joints:  []Joint{{Name: "axis", A: Ground, B: 1}},
		Weights: []Weight{{Name: "plates", Link: 1, At: vec{X: load}, Mass: mass, Load: true}},
		Drive:   Drive{Joint: 0, From: -0.5, To: 1},
		Contact: Contact{Name: "grip", Link: 1, At: vec{X: grip}},
	}
}

func TestLawOfTheLever(t *testing.T) {
	md := mustCompile(t, lever(0.62, 1.05, 60))
	st := md.NewState()
	f, err := st.Force(Hold)
	if err != nil {
		t.Fatal(err)
	}
	// Law of the lever: 60 kg · 9.80665 · 0.62 / 1.05.
	near(t, "force level, N", f, 347.4356, 1e-9)
	near(t, "imbalance, N·m", st.Imbalance(Hold), 0, 1e-10)
	near(t, "lift ratio", st.LiftRatio(), 0.62/1.05, 1e-12)
	near(t, "effective mass, kg", st.Inertia().Mass, 60*0.62*0.62/1.05/1.05, 1e-10)
}

// nortonFourBar is the four-bar of R. L. Norton, Design of Machinery, ch. 4
// (a 40, b 120, c 80, d 100; from memory, answers recomputed to 12 digits),
// here in decimetres, loaded as in the reference problem: uniform bars of 2, 6
// and 4 kg and 50 kg on the coupler at (0.7, 0.2) m of its frame.
func nortonFourBar(crank planar.Angle) Machine {
	const a, b, c, d = 0.4, 1.2, 0.8, 1.0
	pa := planar.Polar(a, crank)
	pb, _ := meet(pa, vec{X: d}, b, c, +1)
	u := pb.Sub(pa).Unit()
	load := pa.Add(u.Scale(0.7)).Add(u.Perp().Scale(0.2))
	return Machine{
		Links: []Link{
			{Name: "crank", Mass: 2, Center: pa.Scale(0.5), Inertia: 2 * a * a / 12},
			{Name: "coupler", Mass: 6, Center: pa.Lerp(pb, 0.5), Inertia: 6 * b * b / 12},
			{Name: "rocker", Mass: 4, Center: pb.Lerp(vec{X: d}, 0.5), Inertia: 4 * c * c / 12},
		},
		Joints: []Joint{
			{Name: "O2", A: Ground, B: 1},
			{Name: "A", A: 1, B: 2, At: pa},
			{Name: "B", A: 2, B: 3, At: pb},
			{Name: "O4", A: Ground, B: 3, At: vec{X: d}},
		},
		Weights: []Weight{{Name: "plates", Link: 2, At: load, Mass: 50, Load: true}},
		Drive:   Drive{Joint: 0, From: 0, To: float64(60 * planar.Degree)},
		Contact: Contact{Name: "crank pin", Link: 1, At: pa},
	}
}

func TestNortonFourBar(t *testing.T) {
	md := mustCompile(t, nortonFourBar(40*planar.Degree))
	st := md.NewState()
	pa, pb := st.Pose(1).Point(md.machine.Joints[1].At), st.Pose(3).Point(md.machine.Joints[2].At)
	near(t, "theta3, deg", pb.Sub(pa).Angle().Degrees(), 20.2978827882, 1e-9)
	near(t, "theta4, deg", pb.Sub(vec{X: 1}).Angle().Degrees(), 57.3248800704, 1e-9)
	near(t, "omega3/omega2", st.vel[2].w, -0.164836576614, 1e-11)
	near(t, "omega4/omega2", st.vel[3].w, 0.279919409687, 1e-11)

	f, err := st.Force(Hold)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "holding torque at 40 deg, N·m", f*0.4, 120.737979215259, 1e-10)
	near(t, "effective mass, kg", st.Inertia().Mass, 29.3442453325, 1e-9)
	near(t, "imbalance, N·m", st.Imbalance(Hold), 0, 1e-11)

	if err := st.MoveTo(float64(60 * planar.Degree)); err != nil {
		t.Fatal(err)
	}
	f, _ = st.Force(Hold)
	near(t, "holding torque at 100 deg, N·m", f*0.4, -8.94809753549, 1e-10)
}
func BenchmarkFourBarSweep(b *testing.B) {
	md := mustCompile(b, nortonFourBar(40*planar.Degree))
	sw := md.NewSweep(101)
	b.ReportAllocs()
	for b.Loop() {
		if err := md.SweepInto(sw); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/101, "ns/position")
}
