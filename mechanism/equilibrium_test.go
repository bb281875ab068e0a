package mechanism

import (
	"math"
	"testing"

	"steelyard/planar"
)

// freeBodies sums, for every link, the forces on it and their moments about
// the ground's origin, from what a Sweep tells and nothing of the solver.
type freeBodies struct {
	force  []vec     // N
	moment []float64 // N·m
	size   float64   // N, the greatest single force
}

func (b *freeBodies) push(l LinkID, at, f vec) {
	b.force[l] = b.force[l].Add(f)
	b.moment[l] += at.Cross(f)
	b.size = math.Max(b.size, f.Norm())
}

func (b *freeBodies) pair(onB, onA LinkID, at, f vec) {
	b.push(onB, at, f)
	b.push(onA, at, f.Neg())
}

func (b *freeBodies) couple(onB, onA LinkID, m float64) {
	b.moment[onB] += m
	b.moment[onA] -= m
}

// sumForces cuts every link of row i free in the given sense.
func sumForces(t testing.TB, sw *Sweep, i int, sense Sense) *freeBodies {
	m := sw.state.model.Machine()
	at := row{sw, i}
	b := &freeBodies{force: make([]vec, len(m.Links)+1), moment: make([]float64, len(m.Links)+1)}
	b.weigh(m, at)
	b.spring(m, at)
	for k, j := range m.Joints {
		r := sw.Reaction(i, k, sense)
		pin := at.Pose(j.B).Point(j.At)
		b.pair(j.B, j.A, pin, r.Force)
		b.couple(j.B, j.A, r.Moment)
		if sense != Hold {
			b.rubJoint(sw, i, k, float64(sense))
		}
	}
	for k, r := range m.Ropes {
		pulls := sharedPull(len(r.Route)-1, sw.Tension(i, k, sense))
		if sense != Hold {
			pulls = b.rubRope(t, sw, i, k, sense)
		}
		for p, s := range strands(t, at, r.Route) {
			b.push(r.Route[p].Link, s.on, s.unit.Scale(pulls[p]))
			b.push(r.Route[p+1].Link, s.on, s.unit.Scale(-pulls[p]))
		}
	}
	b.push(m.Contact.Link, sw.Contact[i], sw.Tangent[i].Scale(map[Sense][]float64{Hold: sw.Hold, Lift: sw.Lift, Lower: sw.Lower}[sense][i]))
	return b
}

func sharedPull(n int, pull float64) []float64 {
	pulls := make([]float64, n)
	for i := range pulls {
		pulls[i] = pull
	}
	return pulls
}

func (b *freeBodies) weigh(m *Machine, at poser) {
	g := func(l LinkID) float64 {
		if l != Ground && m.Links[l-1].Upright {
			return Gravity
		}
		return Gravity * math.Cos(float64(m.Plane.Tilt))
	}
	for i, l := range m.Links {
		id := LinkID(i + 1)
		b.push(id, at.Pose(id).Point(l.Center), vec{Y: -l.Mass * g(id)})
	}
	for _, w := range m.Weights {
		b.push(w.Link, at.Pose(w.Link).Point(w.At), vec{Y: -w.Mass * g(w.Link)})
	}
	for _, c := range m.Chains {
		p := at.Pose(c.Link).Point(c.At)
		lean := math.Cos(float64(m.Plane.Tilt))
		b.push(c.Link, p, vec{Y: -c.Density * Gravity * lean * math.Min(math.Max((p.Y-c.Floor)*lean, 0), c.Length)})
	}
}

func (b *freeBodies) spring(m *Machine, at poser) {
	for _, e := range m.Elements {
		if len(e.Route) == 0 {
			j := m.Joints[e.Joint]
			moment, _ := e.Law.Pull(float64(at.Turn(j.B)-at.Turn(j.A)), 0)
			b.couple(j.B, j.A, -moment)
			continue
		}
		from, to := e.Route[0], e.Route[1]
		p, q := at.Pose(from.Link).Point(from.At), at.Pose(to.Link).Point(to.At)
		pull, _ := e.Law.Pull(q.Sub(p).Norm(), 0)
		b.pair(from.Link, to.Link, p, q.Sub(p).Unit().Scale(pull))
	}
}

// growth is how something changes along the lift, read from the rows around i.
func growth(sw *Sweep, i int, f func(row) float64) float64 {
	lo, hi := max(i-1, 0), min(i+1, sw.Len()-1)
	return f(row{sw, hi}) - f(row{sw, lo})
}

func signOf(x float64) float64 {
	if math.Abs(x) < 1e-9 {
		return 0
	}
	return math.Copysign(1, x)
}

// rubJoint adds the friction of a pin, μ·r·R + drag, or of a slider, μ·N + drag
// with N the push across it or what its tipping moment presses with.
func (b *freeBodies) rubJoint(sw *Sweep, i, k int, sense float64) {
	j := sw.state.model.Machine().Joints[k]
	f, r, at := j.Friction, sw.Reaction(i, k, Sense(sense)), row{sw, i}
	if j.Kind == Revolute {
		turning := sense * growth(sw, i, func(p row) float64 { return float64(p.Turn(j.B) - p.Turn(j.A)) })
		b.couple(j.B, j.A, -signOf(turning)*(f.Coefficient*f.Radius*r.Force.Norm()+f.Drag))
		return
	}
	place := func(p row) float64 {
		along := p.Pose(j.A).Turn(planar.Polar(1, j.Along))
		return along.Dot(p.Pose(j.B).Point(j.At).Sub(p.Pose(j.A).Point(j.At)))
	}
	press := r.Force.Norm()
	if f.Bearing > 0 {
		press = math.Max(press, 2*math.Abs(r.Moment)/f.Bearing)
	}
	drag := -signOf(sense*growth(sw, i, place)) * (f.Coefficient*press + f.Drag)
	b.pair(j.B, j.A, at.Pose(j.B).Point(j.At), at.Pose(j.A).Turn(planar.Polar(drag, j.Along)))
}

// rubRope returns each strand's pull: behind a sheave more than before it, in
// the direction the rope runs over it. How much rope there is up to a place
// fixed on the sheave tells which way that is. Round sheaves only.
func (b *freeBodies) rubRope(t testing.TB, sw *Sweep, i, k int, sense Sense) []float64 {
	route := sw.state.model.Machine().Ropes[k].Route
	pulls := sharedPull(len(route)-1, sw.Tension(i, k, sense))
	radius := func(s Station) float64 {
		if s.Outline == nil {
			return 0
		}
		return s.Outline.(planar.Circle).Radius * float64(s.Side)
	}
	list := strands(t, row{sw, i}, route)
	for p := 1; p < len(pulls); p++ {
		upTo := growth(sw, i, func(at row) float64 {
			now := strands(t, at, route)
			near := func(n int) float64 { return float64(now[n].direction.Near(list[n].direction)) } // no whole turn apart
			total := now[0].length + radius(route[0])*(near(0)-float64(at.Turn(route[0].Link)))
			for n := 1; n < p; n++ {
				total += now[n].length + radius(route[n])*(near(n)-near(n-1))
			}
			return total - radius(route[p])*(near(p-1)-float64(at.Turn(route[p].Link)))
		})
		wrap := float64((list[p].direction - list[p-1].direction) * planar.Angle(signOf(radius(route[p]))))
		wrap -= 2 * math.Pi * math.Floor(wrap/(2*math.Pi))
		ratio := 1.0
		switch l := route[p].Loss; {
		case l.Efficiency > 0:
			ratio = l.Efficiency
		case l.Slip > 0:
			ratio = math.Exp(-l.Slip * wrap)
		}
		pulls[p] = pulls[p-1] * math.Pow(ratio, signOf(float64(sense)*upTo)) // less rope up to it: it runs on, and the next strand pulls harder
	}
	return pulls
}

func checkBalance(t *testing.T, sw *Sweep, sense Sense) {
	t.Helper()
	m := sw.state.model.Machine()
	for i := 0; i < sw.Len(); i += 50 {
		b := sumForces(t, sw, i, sense)
		for l := 1; l <= len(m.Links); l++ {
			tol := 1e-8 * (1 + b.size)
			near(t, m.Links[l-1].Name+", sum of forces, N", b.force[l].Norm(), 0, tol)
			near(t, m.Links[l-1].Name+", sum of moments, N·m", b.moment[l], 0, tol)
		}
		if t.Failed() {
			t.Fatalf("position %d, sense %d", i, sense)
		}
	}
}

// TestEveryLinkIsInEquilibrium: the second road beside virtual work.
func TestEveryLinkIsInEquilibrium(t *testing.T) {
	for _, c := range classics() {
		t.Run(c.name, func(t *testing.T) { checkBalance(t, mustSweep(t, c.m, 401), Hold) })
	}
}

// TestEveryLinkIsInEquilibriumWithFriction: lifting and lowering, with rubbing
// pins, sliders and round sheaves.
func TestEveryLinkIsInEquilibriumWithFriction(t *testing.T) {
	for _, c := range classics() {
		if c.name == "oval cam" || c.name == "four-bar, cam and stack" || c.name == "eccentric cam" {
			continue // their winding is not round about its axis
		}
		t.Run(c.name, func(t *testing.T) {
			sw := mustSweep(t, rubbed(c.m), 401) // fine, so that neighbours tell which way things turn and run
			checkBalance(t, sw, Lift)
			checkBalance(t, sw, Lower)
			for i := range sw.Hold {
				if !(sw.Lift[i] > sw.Hold[i] && sw.Hold[i] > sw.Lower[i]) {
					t.Errorf("position %d: lift %g, hold %g, lower %g N, want falling", i, sw.Lift[i], sw.Hold[i], sw.Lower[i])
				}
			}
		})
	}
}

// rubbed gives the machine's every joint and sheave ordinary friction.
func rubbed(m Machine) Machine {
	m = clone(m)
	for i := range m.Joints {
		f := &m.Joints[i].Friction
		if m.Joints[i].Kind == Revolute {
			*f = JointFriction{Coefficient: 0.12, Radius: 0.012, Drag: 0.2}
		} else {
			*f = JointFriction{Coefficient: 0.03, Bearing: 0.25, Drag: 4}
		}
	}
	for i := range m.Ropes {
		for k := 1; k < len(m.Ropes[i].Route)-1; k++ {
			if s := &m.Ropes[i].Route[k]; s.Outline != nil {
				s.Loss = RopeLoss{Efficiency: 0.95}
				if k == 2 {
					s.Loss = RopeLoss{Slip: 0.04}
				}
			}
		}
	}
	return m
}
