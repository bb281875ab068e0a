package checks

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/mechanism"
	"steelyard/reference"
)

// placed is a limb at an instant as package human places it, trunk first.
type placed struct {
	trunk human.Frame
	pose  human.Pose
	chain [4]human.Rigid
	loads [4]human.Wrench
}

// place puts the limb where package human has it, with its motion and load, and
// asks for the joint loads.
func (l limb) place(in instant) placed {
	p := placed{trunk: human.TrunkAt(in.root[0], in.lean, in.back)}
	var outer [3]human.Rigid
	var end r3.Vec
	if l.Kind == human.Arm {
		p.pose = l.Links.Arm(l.Side).PlaceArm(p.trunk, p.trunk.Shoulder(l.Links, l.Side), in.arm)
		outer, end = l.ArmChain(p.pose), p.pose.End
	} else {
		var toe r3.Vec
		p.pose, toe = l.Links.Leg(l.Side).PlaceLeg(p.trunk, p.trunk.Hip(l.Links, l.Side), in.leg)
		outer, end = l.LegChain(p.pose, toe), l.SolePoint(p.pose, toe, l.Links.HeelToBall)
	}
	p.chain = [4]human.Rigid{l.TrunkChain(p.trunk)[0], outer[0], outer[1], outer[2]}
	if in.pad > 0 {
		end = r3.Add(p.pose.Mid, r3.Scale(in.pad, r3.Sub(p.pose.End, p.pose.Mid)))
	}
	p.chain[in.loaded()].Load = human.Wrench{Force: in.force, At: end, Moment: in.moment}
	l.turn(&p, in)
	human.JointLoads(p.loads[:], p.chain[:], in.root[2])
	return p
}

// turn fills in how the segments turn: the sum of the hinges' rates along their
// axes, and its growth. The axes are those of the pose.
func (l limb) turn(p *placed, in instant) {
	u, o := p.pose.Upper(), l.out()
	rows := [4][]r3.Vec{{{Y: 1}, p.trunk.Z}}
	if l.Kind == human.Arm {
		rows[1] = []r3.Vec{r3.Scale(o, p.trunk.Y), r3.Unit(r3.Cross(u, p.trunk.Y)), r3.Scale(o, u)}
		rows[2] = []r3.Vec{p.pose.Hinge}
	} else {
		rows[1] = []r3.Vec{p.trunk.Z, r3.Scale(o, r3.Unit(r3.Cross(u, p.trunk.Z))), r3.Scale(o, u)}
		rows[2], rows[3] = []r3.Vec{p.pose.Hinge}, []r3.Vec{r3.Scale(-1, p.pose.Hinge)}
	}
	var omega, alpha r3.Vec
	k := 0
	for i, row := range rows {
		for _, axis := range row {
			carried := r3.Scale(in.rates[k], r3.Cross(omega, axis))
			alpha = r3.Add(alpha, r3.Add(carried, r3.Scale(in.ups[k], axis)))
			omega = r3.Add(omega, r3.Scale(in.rates[k], axis))
			k++
		}
		p.chain[i].Omega, p.chain[i].Alpha = omega, alpha
	}
}

// along returns the anatomical moments in the order of the engine's hinges,
// less the first. The shoulder's horizontal axis is no hinge: the work of
// turning its plane at constant axial rotation is done by Horizontal·sin E and,
// since that turns the arm about itself, by -Rotation·cos E.
func (l limb) along(p placed, in instant) []float64 {
	m := []float64{-p.trunk.TrunkFlexion(p.loads[0].Moment)}
	if l.Kind == human.Arm {
		a := p.trunk.ArmMoments(l.Side, p.pose, p.loads[1].Moment, p.loads[2].Moment)
		s, c := math.Sincos(float64(in.arm.Elevation))
		return append(m, a.Horizontal*s-a.Rotation*c, a.Elevation, a.Rotation, a.Elbow)
	}
	g := p.trunk.LegMoments(l.Side, p.pose, p.loads[1].Moment, p.loads[2].Moment, p.loads[3].Moment)
	return append(m, g.HipFlexion, g.HipAbduction, g.HipRotation, g.Knee, g.Ankle)
}

// limbTallies are all quantities of one limb and engine.
type limbTallies struct{ place, omega, alpha, force, moment, along tally }

func (t *tally) addVector(got r3.Vec, want Triple) {
	t.add(got.X, want[0])
	t.add(got.Y, want[1])
	t.add(got.Z, want[2])
}

func (c *limbTallies) add(l limb, in instant, answers []Answer) {
	p := l.place(in)
	var hinges []float64
	for i, a := range answers {
		c.place.addVector(p.chain[i].Proximal, a.Joint)
		c.place.addVector(p.chain[i].Centre, a.COM)
		c.omega.addVector(p.chain[i].Omega, a.Omega)
		c.alpha.addVector(p.chain[i].Alpha, a.Alpha)
		c.force.addVector(p.loads[i].Force, a.Force)
		c.moment.addVector(p.loads[i].Moment, a.Moment)
		hinges = append(hinges, a.Hinges...)
	}
	for k, m := range l.along(p, in) {
		c.along.add(m, hinges[k+1])
	}
}

func (c *limbTallies) differences(d Difference) []Difference {
	return d.inEach([]named{
		{"place in space", "m", c.place},
		{"segment's turning", "rad/s", c.omega},
		{"its growth", "rad/s²", c.alpha},
		{"net joint force", "N", c.force},
		{"net joint moment", "N m", c.moment},
		{"moment along an angle", "N m", c.along},
	})
}

// compare asks an engine for the limb's instants.
func (l limb) compare(e Engine, ins []instant, fault func(*Limb)) ([]Difference, error) {
	doc := Limb{Name: l.name(), Gravity: mechanism.Gravity, Segments: l.segments()}
	for _, in := range ins {
		doc.Motions = append(doc.Motions, l.motion(in))
	}
	if fault != nil {
		fault(&doc)
	}
	answers, err := e.Inverse(doc)
	if err != nil {
		return nil, err
	}
	var still, moving limbTallies
	for i, in := range ins {
		if in.moving {
			moving.add(l, in, answers[i])
		} else {
			still.add(l, in, answers[i])
		}
	}
	d := Difference{Engine: e.Name, Allowed: rounded}
	d.Machine = l.name() + ", still"
	list := still.differences(d)
	d.Machine = l.name() + ", moving"
	return append(list, moving.differences(d)...), nil
}

// rounded is the allowance for a limb: both roads are a few hundred operations
// without loops or iterations, each good to 1e-16.
const rounded = 1e-12

// people are invented, of both sexes, with both sets of segment tables.
func people(t *testing.T) (list []*human.Body) {
	t.Helper()
	for _, p := range []human.Person{
		{Height: 1.78, Mass: 82, Sex: reference.Male},
		{Height: 1.62, Mass: 58, Sex: reference.Female},
		{Height: 1.92, Mass: 104, Sex: reference.Male, Segments: reference.Dempster},
		{Height: 1.55, Mass: 71, Sex: reference.Female, Segments: reference.Dempster},
	} {
		b, _, err := human.NewBody(p)
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, b)
	}
	return list
}

// TestLimbsInSpace sets joint loads of random postures of both arms and legs,
// held still and moving, against two engines of inverse dynamics.
func TestLimbsInSpace(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	var list []Difference
	for _, l := range limbs(t) {
		var ins []instant
		for range 20 {
			ins = append(ins, draw(r, false), draw(r, true))
		}
		for _, e := range l.engines() {
			rows, err := l.compare(e, ins, nil)
			if err != nil {
				t.Fatal(err)
			}
			list = append(list, rows...)
		}
	}
	agree(t, "build/limbs.txt", list)
}

// agree fails where a difference is too great, and writes the worst of them for
// run.sh to print.
func agree(t *testing.T, file string, list []Difference) {
	t.Helper()
	for _, d := range list {
		if !d.OK() {
			t.Errorf("%s, %s by %s: difference %.3g %s, relative %.3g > %.0e", d.Machine, d.Quantity, d.Engine, d.Greatest, d.Unit, d.Relative(), d.Allowed)
		}
	}
	f, err := os.Create(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(WriteTable(f, Worst(list)), f.Close()); err != nil {
		t.Fatal(err)
	}
}

// limbs are both arms and both legs of all people.
func limbs(t *testing.T) (list []limb) {
	t.Helper()
	for _, b := range people(t) {
		for _, k := range []human.Kind{human.Arm, human.Leg} {
			list = append(list, limb{b, k, human.Right}, limb{b, k, human.Left})
		}
	}
	return list
}

// engines that can answer for a limb: MuJoCo refuses a body without inertia
// about its long axis, which Dempster's tables leave out.
func (l limb) engines() []Engine {
	if l.Person.Segments == reference.Dempster {
		return []Engine{SimbodyLimb}
	}
	return []Engine{SimbodyLimb, MuJoCoLimb}
}

// TestSmallFaultsOfLimbsShow makes sure that the comparison can fail, in both
// engines: each fault is put into the engine's limb alone.
func TestSmallFaultsOfLimbsShow(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 2))
	ins := []instant{draw(r, true), draw(r, true), draw(r, true)}
	for _, row := range []struct {
		name, quantity string // no quantity: nothing may show
		fault          func(*Limb)
	}{
		{"no fault", "", nil},
		{"the forearm a millionth heavier", "net joint force", func(l *Limb) { l.Segments[2].Mass *= 1 + 1e-6 }},
		{"its centre a micrometre off", "net joint moment", func(l *Limb) { l.Segments[2].COM[1] += 1e-6 }},
		{"its long axis a thousandth stiffer to turn", "net joint moment", func(l *Limb) { l.Segments[2].Inertia[1] *= 1 + 1e-3 }},
		{"the elbow a micrometre off", "place in space", func(l *Limb) { l.Segments[2].Joint[1] += 1e-6 }},
		{"the elbow bent a microradian more", "moment along an angle", func(l *Limb) { l.Motions[1].Angles[5] += 1e-6 }},
		{"the arm a millionth faster", "net joint force", func(l *Limb) { l.Motions[1].Rates[3] *= 1 + 1e-6 }},
		{"the shoulder sped up a millionth more", "net joint moment", func(l *Limb) { l.Motions[1].Accelerations[3] *= 1 + 1e-6 }},
		{"the hips sped up a millionth more", "net joint force", func(l *Limb) { l.Motions[1].Root[2][2] *= 1 + 1e-6 }},
		{"the hand force a micrometre off", "net joint moment", func(l *Limb) { l.Motions[2].Load.At[0] += 1e-6 }},
		{"the moment on the hand a millionth more", "net joint moment", func(l *Limb) { l.Motions[2].Load.Moment[0] *= 1 + 1e-6 }},
	} {
		for _, e := range []Engine{SimbodyLimb, MuJoCoLimb} {
			rows, err := limb{people(t)[0], human.Arm, human.Left}.compare(e, ins, row.fault)
			if err != nil {
				t.Fatal(fmt.Errorf("%s: %w", row.name, err))
			}
			mustShow(t, row.name, row.quantity, rows)
		}
	}
}

// mustShow fails unless a fault shows in its quantity; without a quantity
// nothing may show.
func mustShow(t *testing.T, fault, quantity string, rows []Difference) {
	t.Helper()
	shows := func(d Difference) bool { return (quantity == "" || d.Quantity == quantity) && !d.OK() }
	switch found := slices.ContainsFunc(rows, shows); {
	case quantity == "" && found:
		t.Errorf("%s, but something differs: %v", fault, rows)
	case quantity != "" && !found:
		t.Errorf("%s does not show in the %s: %v", fault, quantity, rows)
	}
}
