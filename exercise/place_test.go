package exercise

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/mechanism"
	"steelyard/planar"
	"steelyard/reference"
)

// rower is the person of these tests.
func rower(t testing.TB) (*human.Body, *human.Capacity) {
	t.Helper()
	b, _, err := human.NewBody(human.Person{Height: 1.72, Mass: 72, Sex: reference.Male, Age: 30})
	if err != nil {
		t.Fatal(err)
	}
	c, _, err := human.NewCapacity(b)
	if err != nil {
		t.Fatal(err)
	}
	return b, c
}

// lever is a machine whose pad turns about an axle and lifts a weight at its
// contact: the force at the pad is the weight's part along the path.
func lever(axle, pad planar.Vec, kg float64, turn planar.Angle) mechanism.Machine {
	return mechanism.Machine{
		Links:   []mechanism.Link{{Name: "arm", Center: pad}},
		Joints:  []mechanism.Joint{{Name: "axle", B: 1, At: axle}},
		Weights: []mechanism.Weight{{Name: "plates", Link: 1, At: pad, Mass: kg, Load: true}},
		Drive:   mechanism.Drive{To: float64(turn)},
		Contact: mechanism.Contact{Name: "pad", Link: 1, At: pad},
	}
}

// mount compiles a machine and puts a station on it.
func mount(t testing.TB, m mechanism.Machine, st Station, x Exercise, n int) (*Setup, *mechanism.Sweep) {
	t.Helper()
	md, err := mechanism.Compile(m)
	if err != nil {
		t.Fatal(err)
	}
	sw, err := md.Sweep(n)
	if err != nil {
		t.Fatal(err)
	}
	s, err := NewSetup(x, st, md, sw)
	if err != nil {
		t.Fatal(err)
	}
	return s, sw
}

func TestPadLine(t *testing.T) {
	for _, c := range []struct {
		name  string
		pad   r3.Vec
		t     r3.Vec
		r     float64
		u     r3.Vec
		along float64
	}{
		{"through the pad", r3.Vec{X: 3, Y: 4}, r3.Vec{X: -0.8, Y: 0.6}, 0, r3.Vec{X: 0.6, Y: 0.8}, 5}, // 3-4-5
		{"beside it, moving up", r3.Vec{X: 5}, r3.Vec{Y: 1}, 3, r3.Vec{X: 0.8, Y: -0.6}, 4},            // 3-4-5: sin β = 3/5
		{"beside it, moving down", r3.Vec{X: 5}, r3.Vec{Y: -1}, 3, r3.Vec{X: 0.8, Y: 0.6}, 4},
		{"level", r3.Vec{Z: 5}, r3.Vec{X: 1}, 3, r3.Vec{X: -0.6, Z: 0.8}, 4},
	} {
		u, n, along, ok := padLine(r3.Vec{}, c.pad, c.t, c.r)
		if !ok || r3.Norm(r3.Sub(u, c.u)) > 1e-12 || math.Abs(along-c.along) > 1e-12 {
			t.Errorf("%s: got %v, %g, %v, want %v, %g", c.name, u, along, ok, c.u, c.along)
		}
		if touch := r3.Add(r3.Scale(along, u), r3.Scale(c.r, n)); r3.Norm(r3.Sub(touch, c.pad)) > 1e-12 {
			t.Errorf("%s: pad at %v, want %v", c.name, touch, c.pad)
		}
	}
	if _, _, _, ok := padLine(r3.Vec{}, r3.Vec{X: 0.02}, r3.Vec{Y: 1}, 0.05); ok {
		t.Error("a joint inside the pad: got a line")
	}
}

// TestMisalignmentByHand sets the knee 40 mm behind the axle of a leg
// extension. With the axle at the origin, the pad on a circle of radius R at
// angle θ and the knee at (-e, 0), the law of cosines gives the pad's place
// along the shin, √(R² + e² + 2Re cos θ), and the law of sines the shin's lean
// against the arm.
func TestMisalignmentByHand(t *testing.T) {
	b, c := rower(t)
	const R, e = 0.34, 0.04
	l := &b.Links
	m := lever(planar.Vec{}, planar.Vec{Y: -R}, 20, 80*deg)
	st := Station{Contact: Pad, On: OnShank, Anchor: HipsAnchor, At: planar.Vec{X: -e - l.Thigh}, Trunk: 90 * deg, HasAxis: true}
	s, sw := mount(t, m, st, LegExtension, 17)
	r, err := Run(s, b, c, sw, Options{})
	if err != nil {
		t.Fatal(err)
	}
	start := math.Sqrt(R*R + e*e) // θ = -90°
	for i := range r.Travel {
		theta := -math.Pi/2 + sw.Driver[i]
		along := math.Sqrt(R*R + e*e + 2*R*e*math.Cos(theta))
		knee := math.Pi/2 - (math.Pi/2 + math.Atan2(R*math.Sin(theta), R*math.Cos(theta)+e))
		if got := r.Creep[i]; math.Abs(got-(along-start)) > 1e-12 {
			t.Errorf("%d: creep %.9f m, want %.9f", i, got, along-start)
		}
		if got := float64(r.Placements[i].Leg.Knee); math.Abs(got-knee) > 1e-9 {
			t.Errorf("%d: knee %.6f rad, want %.6f", i, got, knee)
		}
		if got := r.Misaligned[i]; math.Abs(got-e) > 1e-12 {
			t.Errorf("%d: misaligned %.6f m, want %.6f", i, got, e)
		}
		// A pad that only pushes square to the shin, by the cosine rule at its
		// centre: the angle between shin and arm there.
		cos := (along*along + R*R - e*e) / (2 * along * R)
		want := r.Lifting.Force[i] * math.Tan(math.Acos(cos))
		if got := r.Shear[i]; math.Abs(got-want) > 1e-6 {
			t.Errorf("%d: shear %.6f N, want %.6f", i, got, want)
		}
	}
}

func TestFaults(t *testing.T) {
	b, _ := rower(t)
	l := &b.Links
	grip := Station{Contact: Grip, Anchor: HipsAnchor, Trunk: 90 * deg}
	at := func(x float64) mechanism.Machine { // level with the shoulders
		p := planar.Vec{X: x, Y: l.Trunk}
		return mechanism.Machine{Links: []mechanism.Link{{Center: p}}, Joints: []mechanism.Joint{{Kind: mechanism.Prismatic, B: 1, At: p}},
			Weights: []mechanism.Weight{{Link: 1, At: p, Mass: 1}}, Drive: mechanism.Drive{To: 0.01}, Contact: mechanism.Contact{Link: 1, At: p}}
	}
	full := l.UpperArm + l.ElbowToGrip
	for _, c := range []struct {
		name string
		x    float64
		kind FaultKind
		by   float64
	}{
		{"7 cm too far", full + 0.07, TooFar, 0.07},
		{"1 cm too near", math.Abs(l.UpperArm-l.ElbowToGrip) - 0.01, TooNear, 0.01},
		{"in reach", 0.9 * full, NoFault, 0},
	} {
		s, _ := mount(t, at(c.x), grip, ChestPress, 2)
		var p Placement
		if f := s.Place(&p, b, 0); f.Kind != c.kind || math.Abs(f.By-c.by) > 1e-9 {
			t.Errorf("%s: got %+v, want kind %v by %g m", c.name, f, c.kind, c.by)
		}
	}
	m := lever(planar.Vec{}, planar.Vec{Y: -l.Shank - 0.05}, 20, 10*deg)
	s, _ := mount(t, m, Station{Contact: Pad, On: OnShank, Anchor: HipsAnchor, At: planar.Vec{X: -l.Thigh}, Trunk: 90 * deg}, LegExtension, 2)
	var p Placement
	if f := s.Place(&p, b, 0); f.Kind != OffLimb || math.Abs(f.By-0.05) > 1e-9 {
		t.Errorf("pad below the ankle: got %+v, want 50 mm off the limb", f)
	}
}

// TestRangeIsFlaggedNotClamped bends a knee that stops at 60° to 90°.
func TestRangeIsFlaggedNotClamped(t *testing.T) {
	b, _, err := human.NewBody(human.Person{Height: 1.72, Mass: 72, Sex: reference.Male, Age: 30, Limits: []human.Limit{{Motion: human.KneeFlex, Angle: 60 * deg}}})
	if err != nil {
		t.Fatal(err)
	}
	st := Station{Contact: Pad, On: OnShank, Anchor: HipsAnchor, At: planar.Vec{X: -b.Links.Thigh}, Trunk: 90 * deg}
	s, _ := mount(t, lever(planar.Vec{}, planar.Vec{Y: -0.3}, 20, 60*deg), st, LegExtension, 3)
	var p Placement
	f := s.Place(&p, b, 0)
	if f.Kind != PastRange || f.Motion != human.KneeFlex || math.Abs(f.By-30*math.Pi/180) > 1e-9 {
		t.Errorf("got %+v, want knee flexion 30° past its limit", f)
	}
	if got := p.Leg.Knee.Degrees(); math.Abs(got-90) > 1e-9 {
		t.Errorf("knee at %.3f°, want the 90° the machine asks", got)
	}
}

// TestSeatAndBackPad checks the two distances from which a seated body is
// placed.
func TestSeatAndBackPad(t *testing.T) {
	b, _ := rower(t)
	l := &b.Links
	for _, back := range []bool{false, true} {
		st := Station{Anchor: SeatAnchor, At: planar.Vec{X: 0.3, Y: 0.5}, BackPad: true, Trunk: 65 * deg, FacesBack: back}
		f := st.trunk(l)
		d := r3.Sub(f.Origin, r3.Vec{X: 0.3, Y: 0.5})
		if math.Abs(d.Y-l.SeatToHip) > 1e-12 || math.Abs(r3.Dot(d, f.X)-l.BackToHip) > 1e-12 {
			t.Errorf("faces back %v: hips %.4f m above the seat, %.4f m before the pad; want %.4f and %.4f", back, d.Y, r3.Dot(d, f.X), l.SeatToHip, l.BackToHip)
		}
	}
}

func TestPlaceAllocatesNothing(t *testing.T) {
	b, _ := rower(t)
	for _, x := range []Exercise{ChestPress, Curl, Fly, HipThrust, Squat, StandingCalfRaise} {
		free := Barbell
		if x == Fly {
			free = Dumbbell
		}
		md, st, err := FreeWeight(x, free, b, 20)
		if err != nil {
			t.Fatal(err)
		}
		sw, err := md.Sweep(5)
		if err != nil {
			t.Fatal(err)
		}
		s, err := NewSetup(x, st, md, sw)
		if err != nil {
			t.Fatal(err)
		}
		var p Placement
		if n := testing.AllocsPerRun(100, func() { s.Place(&p, b, 2) }); n != 0 {
			t.Errorf("%v: %v allocations, want none", x, n)
		}
	}
}

func BenchmarkPlace(bm *testing.B) {
	b, _ := rower(bm)
	md, st, err := FreeWeight(ChestPress, Barbell, b, 20)
	if err != nil {
		bm.Fatal(err)
	}
	sw, err := md.Sweep(11)
	if err != nil {
		bm.Fatal(err)
	}
	s, err := NewSetup(ChestPress, st, md, sw)
	if err != nil {
		bm.Fatal(err)
	}
	var p Placement
	bm.ReportAllocs()
	for i := range bm.N {
		if f := s.Place(&p, b, i%11); !f.Placed() {
			bm.Fatal(f)
		}
	}
}

func BenchmarkRun(bm *testing.B) {
	b, c := rower(bm)
	md, st, err := FreeWeight(ChestPress, Barbell, b, 20)
	if err != nil {
		bm.Fatal(err)
	}
	sw, err := md.Sweep(101)
	if err != nil {
		bm.Fatal(err)
	}
	s, err := NewSetup(ChestPress, st, md, sw)
	if err != nil {
		bm.Fatal(err)
	}
	for range bm.N {
		if _, err := Run(s, b, c, sw, Options{}); err != nil {
			bm.Fatal(err)
		}
	}
}
