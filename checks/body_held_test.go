package checks

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/exercise"
	"steelyard/human"
	"steelyard/mechanism"
	"steelyard/planar"
)

// handleBar is Norton's four-bar at half size, its handle on the coupler.
func handleBar() machine {
	o2, o4 := vec{}, vec{X: 0.5}
	a := planar.Polar(0.2, 40*deg)
	b := where(a, o4, 0.6, 0.4, +1)
	u := b.Sub(a).Unit()
	on := func(along, above float64) vec { return a.Add(u.Scale(along)).Add(u.Perp().Scale(above)) }
	return machine{
		Name:    "arm on a four-bar",
		Links:   []mechanism.Link{bar("crank", 1, o2, a), bar("coupler", 3, a, b), bar("rocker", 2, b, o4)},
		Joints:  []mechanism.Joint{pin("O2", 0, 1, o2), pin("A", 1, 2, a), pin("B", 2, 3, b), pin("O4", 0, 3, o4)},
		Weights: []mechanism.Weight{plates(2, on(0.35, 0.1), 15)},
		Drive:   turning(0, -30*deg, 50*deg),
		Contact: mechanism.Contact{Name: "handle", Link: 2, At: on(0.2, 0.25)},
	}
}

// seat is where somebody sits to hold the handle in one hand, to the right of
// the machine's plane.
func seat() exercise.Station {
	return exercise.Station{
		Contact: exercise.Grip, Anchor: exercise.HipsAnchor, At: vec{X: -0.12, Y: -0.05},
		Trunk: 75 * deg, BackPad: true, OneLimb: true, Width: exercise.Some(0.5), Flare: exercise.Some(float64(35 * deg)),
	}
}

// grasp is somebody on a machine by package exercise.
type grasp struct {
	limb
	machine
	*mechanism.Sweep
	*exercise.Result
	Travel   []float64
	lowering bool // the way back is looked at
	righted  bool // the machine's force at a tempo is put right first; see misread
}

// phase is the way along the travel that is looked at.
func (g grasp) phase() *exercise.Phase {
	if g.lowering {
		return &g.Lowering
	}
	return &g.Lifting
}

// grasped puts one of the people on a workplace, at n positions.
func grasped(t *testing.T, person int, w workplace, n int, o exercise.Options) grasp {
	t.Helper()
	model, err := mechanism.Compile(w.machine)
	if err != nil {
		t.Fatal(err)
	}
	sw, err := model.Sweep(n)
	if err != nil {
		t.Fatal(err)
	}
	s, err := exercise.NewSetup(w.Exercise, w.Station, model, sw)
	if err != nil {
		t.Fatal(err)
	}
	b := people(t)[person]
	c, _, err := human.NewCapacity(b)
	if err != nil {
		t.Fatal(err)
	}
	r, err := exercise.Run(s, b, c, sw, o)
	if err != nil {
		t.Fatal(err)
	}
	for i, gap := range r.Gap {
		if gap != "" {
			t.Fatalf("position %d: %s", i, gap)
		}
	}
	return grasp{limb{b, w.Limb(), human.Right}, w.machine, sw, r, sw.Travel, false, false}
}

// hold writes machine and arm for the engine, without instants.
func (g grasp) hold(t *testing.T) Hold {
	t.Helper()
	c, err := CaseOf(g.machine, nil, 2)
	if err != nil {
		t.Fatal(err)
	}
	at := g.machine.Contact.At
	return Hold{
		Machine: c, Segments: g.segments(), Root: tripleOf(g.Placements[0].Trunk.Origin), Trunk: 2,
		Grip: tripleOf(g.end()), Handle: Triple{at.X, at.Y, g.Setup.Station.Width.Value / 2},
	}
}

// angles returns the arm's hinges at a position.
func (g grasp) angles(i int) []float64 {
	lean := 90*deg - g.Setup.Station.Trunk
	return g.motion(instant{lean: lean, arm: g.Placements[i].Arm}).Angles
}

// moments returns the joint moments at a position by hinge, with the moments of
// an extra push on the hand added.
func (g grasp) moments(i int, extra r3.Vec) []float64 {
	p := g.Placements[i]
	about := func(joint r3.Vec) r3.Vec { return r3.Cross(extra, r3.Sub(p.Contact, joint)) } // internal
	more := p.Trunk.ArmMoments(g.Side, p.Limb, about(p.Limb.Root), about(p.Limb.Mid))
	m := func(j exercise.Joint) float64 { return g.phase().Column(j).Moment[i] }
	s, c := math.Sincos(float64(p.Arm.Elevation))
	turning := m(exercise.ShoulderTurning) + more.Rotation
	across := m(exercise.ShoulderAcross) + more.Horizontal
	return []float64{across*s - turning*c, m(exercise.ShoulderRaising) + more.Elevation, turning, m(exercise.Elbow) + more.Elbow}
}

// misread is what package exercise reads too much of the machine's force at a
// tempo (N along the path) against the sweep's own m·s̈ + ½m′ṡ² + F, which the
// engines agree with. It reads a stroke's rows by straight lines.
func (g grasp) misread(i int, w speeding) float64 {
	return g.phase().Force[i] - (g.Sweep.Hold[i] + g.Mass[i]*w.growth + g.MassSlope[i]*w.grip*w.grip/2)
}

// extra is the push on the hand that puts the machine's force right.
func (g grasp) extra(i int, w speeding) r3.Vec {
	if !g.righted {
		return r3.Vec{}
	}
	return r3.Scale(g.misread(i, w), g.Placements[i].Path)
}

// heldTallies are all quantities of an arm on a machine.
type heldTallies struct{ gap, slip, force, driver, hinges tally }

func (c *heldTallies) differences(d Difference) (list []Difference) {
	for _, q := range []struct {
		name, unit string
		tally
	}{
		{"grip from handle", "m", c.gap},
		{"their speed", "m/s", c.slip},
		{"hand force", "N", c.force},
		{"crank speeding up", "rad/s²", c.driver},
		{"arm speeding up", "rad/s²", c.hinges},
	} {
		d.Quantity, d.Unit, d.Greatest, d.Scale = q.name, q.unit, q.greatest, math.Max(q.scale, faint)
		list = append(list, d)
	}
	return list
}

// compare puts the joint moments of every stride-th position, but for the two at
// either end, into one system of machine and arm.
func (g grasp) compare(t *testing.T, d Difference, stride int, fault func(*Hold)) []Difference {
	t.Helper()
	h := g.hold(t)
	var wanted []speeding
	for i := 2; i < g.Len()-2; i += stride {
		rates, w := g.course(i)
		extra := g.extra(i, w)
		wanted = append(wanted, w)
		h.Instants = append(h.Instants, Instant{At: g.Driver[i], Rate: w.rate, Angles: g.angles(i), Rates: rates, Moments: g.moments(i, extra)})
	}
	if fault != nil {
		fault(&h)
	}
	answers, err := SimbodyHold.Hold(h)
	if err != nil {
		t.Fatal(err)
	}
	var c heldTallies
	for k, a := range answers {
		i := 2 + k*stride
		c.gap.add(r3.Norm(g.Placements[i].Contact)+a.Gap, r3.Norm(g.Placements[i].Contact))
		c.slip.add(wanted[k].grip+a.Slip, wanted[k].grip)
		c.force.addVector(r3.Add(g.phase().Push[i], g.extra(i, wanted[k])), a.Force)
		c.driver.add(wanted[k].driver, a.Driver)
		for j, x := range a.Hinges {
			c.hinges.add(wanted[k].hinges[j], x)
		}
		c.driver.scale, c.hinges.scale = math.Max(c.driver.scale, a.Loose), math.Max(c.hinges.scale, a.Loose)
	}
	d.Engine = SimbodyHold.Name
	return c.differences(d)
}

// The allowances at a tempo. Package exercise reads the machine's force between
// the rows of a stroke by straight lines, which costs a few ten-thousandths. With
// that put right, what is left are its differences of fourth order and ours.
const (
	straightLines = 1e-3
	differences   = 1e-8
)

// TestArmOnMachine puts the joint moments that package exercise finds into one
// system of machine and arm. Held still it must stay where it is, at a tempo it
// must speed up as the tempo says; and the handle must do to the hand what
// package exercise says, along the path and across it.
func TestArmOnMachine(t *testing.T) {
	var list []Difference
	for person := range people(t) {
		for _, along := range []bool{true, false} {
			g := grasped(t, person, handle(), 33, exercise.Options{Along: along})
			list = append(list, g.compare(t, Difference{Machine: g.machine.Name + ", still", Allowed: 10 * rounded}, 1, nil)...)
			g = grasped(t, person, handle(), 401, exercise.Options{Along: along, Tempo: quick})
			for _, g.lowering = range []bool{false, true} {
				g.righted = false
				list = append(list, g.compare(t, Difference{Machine: g.machine.Name + ", at a tempo", Allowed: straightLines}, 12, nil)...)
				g.righted = true
				list = append(list, g.compare(t, Difference{Machine: g.machine.Name + ", its force put right", Allowed: differences}, 12, nil)...)
			}
		}
	}
	agree(t, "build/held.txt", list)
}

// quick is a tempo at which inertia counts.
var quick = &mechanism.Tempo{Up: 0.6, Down: 0.8}

// TestSmallFaultsOfHeldMachinesShow makes sure that the comparison can fail.
func TestSmallFaultsOfHeldMachinesShow(t *testing.T) {
	g := grasped(t, 0, handle(), 401, exercise.Options{Tempo: quick})
	g.righted = true
	for _, row := range []struct {
		name, quantity string
		fault          func(*Hold)
	}{
		{"no fault", "", nil},
		{"plates a millionth heavier", "crank speeding up", func(h *Hold) { h.Machine.Weights[0].Mass *= 1 + 1e-6 }},
		{"the handle a micrometre off", "grip from handle", func(h *Hold) { h.Handle[2] += 1e-6 }},
		{"the hand a hundred-thousandth heavier", "hand force", func(h *Hold) { h.Segments[3].Mass *= 1 + 1e-5 }},
		{"the forearm's long axis a thousandth stiffer to turn", "arm speeding up", func(h *Hold) { h.Segments[2].Inertia[1] *= 1 + 1e-3 }},
		{"the elbow moment a millionth more", "arm speeding up", func(h *Hold) { h.Instants[3].Moments[3] *= 1 + 1e-6 }},
		{"the elbow a millionth faster", "their speed", func(h *Hold) { h.Instants[9].Rates[5] *= 1 + 1e-6 }},
	} {
		d := Difference{Machine: g.machine.Name, Allowed: differences}
		mustShow(t, row.name, row.quantity, g.compare(t, d, 40, row.fault))
	}
}
