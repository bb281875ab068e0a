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

const g = mechanism.Gravity

// freely runs an exercise with a free load.
func freely(t *testing.T, x Exercise, free Free, kg float64, n int, o Options) (*Result, *mechanism.Sweep) {
	t.Helper()
	b, c := rower(t)
	md, st, err := FreeWeight(x, free, b, kg)
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
	r, err := Run(s, b, c, sw, o)
	if err != nil {
		t.Fatal(err)
	}
	return r, sw
}

// TestForearmHoldsAWeight is the first example of every biomechanics text: a
// forearm at some slope holds a weight in the hand, and the moment at the elbow
// is the sum of weights times level distances (Özkaya & Nordin, Fundamentals of
// Biomechanics, chapter on statics of the elbow, from memory).
func TestForearmHoldsAWeight(t *testing.T) {
	const kg = 12
	r, _ := freely(t, Curl, Dumbbell, kg, 25, Options{})
	b := r.Body
	forearm, hand := b.Segment(reference.SegForearm), b.Segment(reference.SegHand)
	c := r.Lifting.Column(Elbow)
	for i := range r.Travel {
		p := &r.Placements[i]
		level := p.Limb.Lower().X // of a metre along the forearm
		want := g * level * (kg*b.Links.ElbowToGrip + forearm.Mass*forearm.Centre + hand.Mass*(b.Links.Forearm+hand.Centre))
		if math.Abs(c.Moment[i]-want) > 1e-9 {
			t.Errorf("%d: elbow flexion %.6f N·m, want %.6f", i, c.Moment[i], want)
		}
		if c.Action[i] != human.ActionToward(human.ElbowFlexion, want) {
			t.Errorf("%d: action %v", i, c.Action[i])
		}
	}
}

// TestArmHeldOut: an arm almost straight and level to the side. The shoulder's
// three parts lie on axes at right angles, so together they are the moment of
// all weights about the shoulder.
func TestArmHeldOut(t *testing.T) {
	const kg = 5
	r, _ := freely(t, LateralRaise, Dumbbell, kg, 9, Options{})
	i := 8 // level
	p := &r.Placements[i]
	moment := func(m float64, at r3.Vec) r3.Vec {
		return r3.Cross(r3.Sub(at, p.Limb.Root), r3.Vec{Y: -m * g})
	}
	want := moment(kg, p.Limb.End)
	for _, s := range r.Body.ArmChain(p.Limb) {
		want = r3.Add(want, moment(s.Mass, s.Centre))
	}
	got := 0.0
	for _, j := range []Joint{ShoulderRaising, ShoulderAcross, ShoulderTurning} {
		got = math.Hypot(got, r.Lifting.Column(j).Moment[i])
	}
	if math.Abs(got-r3.Norm(want)) > 1e-9 {
		t.Errorf("got %.6f N·m, want %.6f", got, r3.Norm(want))
	}
	if c := r.Lifting.Column(ShoulderRaising); c.Action[i] != human.ShoulderAbduct || c.Moment[i] < 0.9*got {
		t.Errorf("got %v of %.3f N·m, want most of %.3f in shoulder abduction", c.Action[i], c.Moment[i], got)
	}
}

// TestLegExtensionByHand: pad force times its place along the shin, and the
// weight of shin and foot.
func TestLegExtensionByHand(t *testing.T) {
	b, c := rower(t)
	const kg = 25
	st := Station{Contact: Pad, On: OnShank, Anchor: HipsAnchor, At: planar.Vec{X: -b.Links.Thigh}, Trunk: 90 * deg}
	s, sw := mount(t, lever(planar.Vec{}, planar.Vec{Y: -0.32}, kg, 85*deg), st, LegExtension, 18)
	r, err := Run(s, b, c, sw, Options{})
	if err != nil {
		t.Fatal(err)
	}
	for i, q := range sw.Driver {
		sin := math.Sin(q)
		want := -0.32 * kg * g * sin / 2 // one leg of two
		for k, seg := range b.LegChain(r.Placements[i].Limb, r.Placements[i].Toe) {
			if k > 0 {
				want -= seg.Mass * g * seg.Centre.X
			}
		}
		if got := r.Lifting.Column(Knee).Moment[i]; math.Abs(got-want) > 1e-9 {
			t.Errorf("%.0f°: knee %.6f N·m, want %.6f", planar.Angle(q).Degrees(), got, want)
		}
	}
}

// TestTwoRoadsToTheHip meets at the hips of a standing body: what the legs ask
// of both hips from the ground up must be what trunk and load ask of the back
// from the top down, carried on to the hips by the force that goes through the
// pelvis and by half its weight, which lies half-way.
func TestTwoRoadsToTheHip(t *testing.T) {
	check := func(name string, r *Result) {
		hip, back := r.Lifting.Column(Hip), r.Lifting.Column(Trunk)
		b := r.Body
		for i := range r.Travel {
			if r.Gap[i] != "" {
				continue
			}
			p := &r.Placements[i]
			through := r3.Scale(2, r.Lifting.Push[i])
			for _, s := range b.LegChain(p.Limb, p.Toe) {
				through.Y -= 2 * s.Mass * g
			}
			through.Y -= pelvisShare * b.Person.Mass * g / 2
			carried := r3.Cross(p.Trunk.Point(r3.Vec{Y: lumbosacral * b.Links.Trunk}), through)
			carried = r3.Sub(carried, r3.Cross(p.Trunk.Origin, through))
			if from := back.Moment[i] - r3.Dot(carried, p.Trunk.Z); math.Abs(2*hip.Moment[i]-from) > 1e-6 {
				t.Errorf("%s %d: both hips %.6f N·m, the trunk on them %.6f", name, i, 2*hip.Moment[i], from)
			}
		}
	}
	r, _ := freely(t, Squat, Barbell, 60, 9, Options{})
	check("bar", r)

	b, c := rower(t)
	l := &b.Links
	top := l.AnkleHeight + 0.95*(l.Thigh+l.Shank) + (l.Trunk + shoulderPad)
	st := Station{Contact: Pad, On: OnShoulders, Posture: Standing, Trunk: 95 * deg, Feet: planar.Vec{X: 0.15}, HasFeet: true}
	s, sw := mount(t, lever(planar.Vec{X: -1, Y: top - 0.2}, planar.Vec{X: 0.05, Y: top - 0.45}, 60, 22*deg), st, Squat, 9)
	r, err := Run(s, b, c, sw, Options{})
	if err != nil {
		t.Fatal(err)
	}
	check("lever", r)
}

// TestBarOverTheFoot: the ground pushes where body and bar together have their
// centre of mass, a fact of statics without any chain.
func TestBarOverTheFoot(t *testing.T) {
	const kg = 60
	r, _ := freely(t, Squat, Barbell, kg, 9, Options{})
	b := r.Body
	for i := range r.Travel {
		p := &r.Placements[i]
		sum := kg * p.Contact.X
		mass := float64(kg)
		add := func(m, x float64) { sum, mass = sum+m*x, mass+m }
		for _, s := range b.TrunkChain(p.Trunk) {
			add(s.Mass, s.Centre.X)
		}
		for _, s := range b.LegChain(p.Limb, p.Toe) {
			add(2*s.Mass, s.Centre.X)
		}
		add(armsMass(b), p.Trunk.Point(r3.Vec{Y: b.Links.Trunk}).X)
		heel := b.SolePoint(p.Limb, p.Toe, 0).X
		// Moments are of the segments' masses, the force of the stated mass: de
		// Leva's shares add up to 1 within a thousandth.
		if got, want := r.Pressure[i], sum/mass-heel; math.Abs(got-want) > 1e-3 {
			t.Errorf("%d: pressure %.4f m from the heel, want %.4f", i, got, want)
		}
	}
}

// TestBridgeFromTheTop checks a hip thrust from the other side: bench and trunk
// on the hips against the legs.
func TestBridgeFromTheTop(t *testing.T) {
	const kg = 80
	r, _ := freely(t, HipThrust, Barbell, kg, 9, Options{})
	b := r.Body
	bench := r.Setup.Station.At
	for i := range r.Travel {
		p := &r.Placements[i]
		ground := 2 * r.Lifting.Push[i].Y
		weight := kg * g
		moment := 0.0 // about the hips, of what bears on trunk, head and arms
		add := func(m, x float64) {
			weight += m * g
			moment -= m * g * (x - p.Trunk.Origin.X)
		}
		for _, s := range b.TrunkChain(p.Trunk) {
			add(s.Mass, s.Centre.X)
		}
		add(armsMass(b), p.Trunk.Point(r3.Vec{Y: b.Links.Trunk}).X)
		for _, s := range b.LegChain(p.Limb, p.Toe) {
			weight += 2 * s.Mass * g
		}
		moment += (weight - ground) * (bench.X - p.Trunk.Origin.X)
		moment -= kg * g * (p.Contact.X - p.Trunk.Origin.X) // the bar, were it not above the hips
		// The trunk's moments turn it about z; hip flexion is the reverse turn of
		// the trunk, so the legs answer with the same number.
		if got := 2 * r.Lifting.Column(Hip).Moment[i]; math.Abs(got-moment) > 1e-6 {
			t.Errorf("%d: both hips %.6f N·m from the legs, %.6f from the trunk", i, got, moment)
		}
	}
}

// TestSeatedCalfByHand: three forces in balance on a relaxed leg, read off as a
// lever: pad on the thigh against the knee's support, then the ankle's moment
// is the ground's force times its distance from the ankle.
func TestSeatedCalfByHand(t *testing.T) {
	b, c := rower(t)
	l := &b.Links
	height := 0.1 + l.AnkleHeight + l.Shank
	pad := planar.Vec{X: 0.9 * l.Thigh, Y: height}
	st := Station{Contact: Pad, On: OnKnees, Anchor: HipsAnchor, At: planar.Vec{Y: height}, Trunk: 90 * deg, Foot: Ball,
		Feet: planar.Vec{X: l.Thigh + l.HeelToBall - l.HeelToAnkle, Y: 0.1}, HasFeet: true}
	// The path straight up, so that the force is the weight.
	m := lever(planar.Vec{X: pad.X - 50, Y: pad.Y}, pad, 40, 1e-4)
	s, sw := mount(t, m, st, SeatedCalfRaise, 2)
	r, err := Run(s, b, c, sw, Options{})
	if err != nil {
		t.Fatal(err)
	}
	p := &r.Placements[0]
	leg := b.LegChain(p.Limb, p.Toe)
	hip, knee, ball := p.Limb.Root, p.Limb.Mid, p.Sole
	along := r3.Unit(r3.Sub(knee, ball))
	lift := (knee.X-hip.X)*along.Y - (knee.Y-hip.Y)*along.X
	down := 40*g/2*(pad.X-hip.X) + leg[0].Mass*g*(leg[0].Centre.X-hip.X) + (leg[1].Mass+leg[2].Mass)*g*(knee.X-hip.X)
	ground := r3.Scale(down/lift, along)
	v := r3.Sub(ball, p.Limb.End)
	want := v.X*ground.Y - v.Y*ground.X - leg[2].Mass*g*(leg[2].Centre.X-p.Limb.End.X)
	if got := r.Lifting.Column(Ankle).Moment[0]; math.Abs(-got-want) > 1e-3*want {
		t.Errorf("plantarflexion %.4f N·m, want %.4f", -got, want)
	}
}
