package checks

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/exercise"
	"steelyard/human"
	"steelyard/planar"
)

// workplace is a machine with somebody on it.
type workplace struct {
	machine
	exercise.Station
	exercise.Exercise
}

func handle() workplace { return workplace{handleBar(), seat(), exercise.ChestPress} }
func plate() workplace  { return workplace{footPlate(), reclined(), exercise.LegPress} }

// footPlate is a sled on a slope, pushed by a foot off the machine's plane.
func footPlate() machine {
	m := inclineSled()
	m.Name = "foot on a sled"
	m.Drive.To = 0.15
	return m
}

func reclined() exercise.Station {
	return exercise.Station{
		Contact: exercise.FootPlate, Anchor: exercise.HipsAnchor, At: vec{X: 0, Y: 0.35},
		Trunk: 60 * deg, BackPad: true, OneLimb: true, Width: exercise.Some(0.35), Flare: exercise.Some(float64(10 * deg)),
	}
}

// Both as exercise.LeastEffort documents them: how far the force may lean from
// the path on either axis, and what that must save.
const (
	slant     = 0.5
	leanPrice = 0.05
)

// asked returns the moments of a limb's joint axes for a force on its end, by
// joint as package exercise names them.
func (g grasp) asked(i int, force r3.Vec) [exercise.NumJoints]float64 {
	p := g.Placements[i]
	chain := g.ArmChain(p.Limb)
	if g.Kind == human.Leg {
		chain = g.LegChain(p.Limb, p.Toe)
	}
	chain[2].Load = human.Wrench{Force: force, At: p.Contact}
	var w [3]human.Wrench
	human.JointLoads(w[:], chain[:], r3.Vec{})
	var m [exercise.NumJoints]float64
	if g.Kind == human.Arm {
		a := p.Trunk.ArmMoments(g.Side, p.Limb, w[0].Moment, w[1].Moment)
		m[exercise.ShoulderRaising], m[exercise.ShoulderAcross] = a.Elevation, a.Horizontal
		m[exercise.ShoulderTurning], m[exercise.Elbow] = a.Rotation, a.Elbow
		return m
	}
	l := p.Trunk.LegMoments(g.Side, p.Limb, w[0].Moment, w[1].Moment, w[2].Moment)
	m[exercise.Hip], m[exercise.HipSide] = l.HipFlexion, l.HipAbduction
	m[exercise.Knee], m[exercise.Ankle] = l.Knee, l.Ankle
	return m
}

// available returns what a joint axis can produce one way, at rest.
func (g grasp) available(c *human.Capacity, i int, j exercise.Joint, sign float64) float64 {
	p := g.Placements[i]
	var can human.Available
	at := func(k human.Coordinate, angle planar.Angle) { can, _ = c.At(human.ActionToward(k, sign), angle, 0) }
	switch j {
	case exercise.ShoulderRaising:
		can, _ = c.Shoulder(p.Arm, human.ArmMoments{Elevation: sign}, 0, 0)
	case exercise.ShoulderAcross:
		_, can = c.Shoulder(p.Arm, human.ArmMoments{Horizontal: sign}, 0, 0)
	case exercise.ShoulderTurning:
		at(human.ShoulderRotation, p.Arm.Rotation)
	case exercise.Elbow:
		at(human.ElbowFlexion, p.Arm.Elbow)
	case exercise.Hip:
		at(human.HipFlexion, p.Leg.HipFlexion)
	case exercise.HipSide:
		at(human.HipAbduction, p.Leg.HipAbduction)
	case exercise.Knee:
		at(human.KneeFlexion, p.Leg.Knee)
	case exercise.Ankle:
		at(human.AnkleDorsiflexion, p.Leg.Ankle)
	}
	return can.Moment
}

// across are the two directions across the path: in the side view, and
// sideways.
func across(path r3.Vec) [2]r3.Vec {
	n := r3.Unit(r3.Cross(r3.Vec{Z: 1}, path))
	return [2]r3.Vec{n, r3.Cross(path, n)}
}

// push writes the question at a position for the engine.
func (g grasp) push(c *human.Capacity, i int) Push {
	p := g.Placements[i]
	rest := g.asked(i, r3.Vec{})
	per := func(v r3.Vec) (m [exercise.NumJoints]float64) {
		m = g.asked(i, v)
		for j := range m {
			m[j] -= rest[j]
		}
		return m
	}
	n := across(p.Path)
	along, first, second := per(r3.Scale(-1, p.Path)), per(n[0]), per(n[1])
	out := Push{Force: g.Lifting.Force[i], Bound: slant, Price: leanPrice}
	for _, col := range g.Lifting.Joints {
		j := col.Joint
		out.Joints = append(out.Joints, Asked{rest[j], along[j], [2]float64{first[j], second[j]},
			[2]float64{g.available(c, i, j, 1), g.available(c, i, j, -1)}})
	}
	return out
}

// easeTallies are all quantities of a direction of least effort.
type easeTallies struct{ effort, across tally }

// ease compares the direction of least effort at all positions with a force.
func (g grasp) ease(t *testing.T, fault func([]Push)) []Difference {
	t.Helper()
	c, _, err := human.NewCapacity(g.limb.Body)
	if err != nil {
		t.Fatal(err)
	}
	var at []int
	var pushes []Push
	for i, f := range g.Lifting.Force {
		if f > 0 && g.Gap[i] == "" {
			at, pushes = append(at, i), append(pushes, g.push(c, i))
		}
	}
	if fault != nil {
		fault(pushes)
	}
	answers, err := SciPyEffort.Ease(g.machine.Name, pushes)
	if err != nil {
		t.Fatal(err)
	}
	var k easeTallies
	for q, a := range answers {
		i := at[q]
		n := across(g.Placements[i].Path)
		if told := g.Lifting.Effort[i]; !math.IsNaN(told) { // no figure for a joint far beyond what was tested
			k.effort.add(told, a.Reached)
		}
		k.across.add(r3.Dot(g.Lifting.Push[i], n[0]), a.Across[0])
		k.across.add(r3.Dot(g.Lifting.Push[i], n[1]), a.Across[1])
	}
	d := Difference{Machine: g.machine.Name + ", least effort", Engine: SciPyEffort.Name, Allowed: eased}
	var list []Difference
	for _, q := range []struct {
		name, unit string
		tally
	}{{"greatest effort", "1", k.effort}, {"force across the path", "N", k.across}} {
		d.Quantity, d.Unit, d.Greatest, d.Scale = q.name, q.unit, q.greatest, math.Max(q.scale, faint)
		list = append(list, d)
	}
	return list
}

// eased is the allowance: both solve a few linear equations to rounding, which
// planes that are nearly parallel magnify.
const eased = 1e-9

// TestLeastEffortDirection sets the direction in which package exercise has hand
// and foot push against a quadratic programme.
func TestLeastEffortDirection(t *testing.T) {
	var list []Difference
	for person := range people(t) {
		for _, w := range []workplace{handle(), plate()} {
			list = append(list, grasped(t, person, w, 33, exercise.Options{}).ease(t, nil)...)
		}
	}
	agree(t, "build/effort.txt", list)
}

// TestSmallFaultsOfEffortShow makes sure that the comparison can fail.
func TestSmallFaultsOfEffortShow(t *testing.T) {
	each := func(change func(*Push)) func([]Push) {
		return func(list []Push) {
			for i := range list {
				change(&list[i])
			}
		}
	}
	for _, row := range []struct {
		name, quantity string
		workplace
		fault func([]Push)
	}{
		{"no fault", "", handle(), nil},
		{"the machine a millionth heavier", "force across the path", plate(), each(func(p *Push) { p.Force *= 1 + 1e-6 })},
		{"the knee's moment arm sideways a micrometre off", "force across the path", plate(), each(func(p *Push) { p.Joints[2].Across[1] += 1e-6 })},
		{"the knee a millionth stronger", "force across the path", plate(), each(func(p *Push) { p.Joints[2].Available[1] *= 1 + 1e-6 })},
		{"the force freer to lean by a millionth", "force across the path", handle(), each(func(p *Push) { p.Bound *= 1 + 1e-6 })},
	} {
		g := grasped(t, 0, row.workplace, 33, exercise.Options{})
		mustShow(t, row.name, row.quantity, g.ease(t, row.fault))
	}
}
