package exercise

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/optimize"
	"gonum.org/v1/gonum/spatial/r3"

	"steelyard/human"
	"steelyard/mechanism"
	"steelyard/planar"
)

// anyPress is a lever of any make pressed from the chest by any elbows.
func anyPress(t *testing.T, l *human.Links, rng *rand.Rand, turn planar.Angle, positions int) (*Setup, *mechanism.Sweep) {
	full := l.UpperArm + l.ElbowToGrip
	from := planar.Vec{X: full * (0.35 + 0.3*rng.Float64()), Y: l.Trunk + full*0.4*(rng.Float64()-0.5)}
	m := lever(from.Add(planar.Vec{X: 0.4 * (rng.Float64() - 0.5), Y: 0.6}), from, 30, turn)
	st := Station{Contact: Grip, Anchor: HipsAnchor, Trunk: 90 * deg, Flare: Some(rng.Float64() * 1.4), Width: Some(0.3 + 0.4*rng.Float64())}
	return mount(t, m, st, ChestPress, positions)
}

// TestDirectionIsSteady: along a press the push turns a little from one position
// to the next. With no price on leaning a step of these turns it by up to 47°.
func TestDirectionIsSteady(t *testing.T) {
	b, c := rower(t)
	rng := rand.New(rand.NewPCG(1, 2))
	steps := 0
	for n := range 60 {
		s, sw := anyPress(t, &b.Links, rng, 25*deg, 161)
		r, err := Run(s, b, c, sw, Options{})
		if err != nil {
			continue
		}
		for i := 1; i < len(r.Travel); i++ {
			p, q := r.Lifting.Push[i-1], r.Lifting.Push[i]
			if r.Gap[i-1] != "" || r.Gap[i] != "" || min(r.Lifting.Force[i-1], r.Lifting.Force[i]) < 20 {
				continue // a force near nothing turns at will
			}
			steps++
			if by := planar.Angle(math.Acos(min(1, r3.Dot(p, q)/(r3.Norm(p)*r3.Norm(q))))); by > 5*deg {
				t.Errorf("press %d, position %d: the push turns by %.1f° at once", n, i, by.Degrees())
			}
		}
	}
	if steps < 3000 {
		t.Errorf("only %d steps", steps)
	}
}

// TestEffortPassesOnce: that the greatest effort is above 1 for every force above
// the first at which it is, which halving rests on. Along the path it is convex
// in the force; the price on leaning takes the proof away, so it is tried.
func TestEffortPassesOnce(t *testing.T) {
	b, c := rower(t)
	rng := rand.New(rand.NewPCG(3, 4))
	passed := 0
	for n := range 80 {
		s, _ := anyPress(t, &b.Links, rng, -5*deg, 2)
		var sta stance
		if f := s.Place(&sta.placement, b, 0); !f.Placed() {
			continue
		}
		s.face(&sta, b, pace{}, 0)
		sta.capacities(c)
		above := false
		for f := 10.0; f < 2000; f *= 1.02 {
			_, z := sta.leastEffort(f)
			if above && z <= 1 {
				t.Errorf("press %d: effort %.4f again at %.1f N", n, z, f)
			}
			if !above && z > 1 {
				above, passed = true, passed+1
			}
		}
	}
	if passed < 40 {
		t.Errorf("only %d presses reached an effort of 1", passed)
	}
}

// TestLeastEffortAgainstOptimiser sets the corners and feet of leastEffort
// against a general optimiser (gonum optimize, Nelder-Mead from several starts)
// that knows only the efforts.
func TestLeastEffortAgainstOptimiser(t *testing.T) {
	b, c := rower(t)
	l := &b.Links
	rng := rand.New(rand.NewPCG(1, 2))
	moved := 0
	for range 60 {
		s, _ := anyPress(t, l, rng, -5*deg, 2)
		var sta stance
		if f := s.Place(&sta.placement, b, 0); !f.Placed() {
			continue
		}
		s.face(&sta, b, pace{}, 0)
		sta.capacities(c)
		f := 50 + 300*rng.Float64()
		x, z := sta.leastEffort(f)
		if math.Abs(x[0]) > slant*f*(1+1e-6) || math.Abs(x[1]) > slant*f*(1+1e-6) {
			t.Errorf("%.1f N across %.1f N, want at most %.1f", x, f, slant*f)
		}
		if got := sta.greatest(f, x); got != z {
			t.Errorf("effort %.9f said, %.9f at the force", z, got)
		}
		along := sta.greatest(f, [2]float64{})
		if z < along-1e-9 {
			moved++
		}
		whole := func(x [2]float64) float64 {
			return sta.greatest(f, x) + leanPrice*along*(x[0]*x[0]+x[1]*x[1])/(slant*slant*f*f)
		}
		best := optimum(t, f, whole)
		if got := whole(x); math.Abs(got-best) > 1e-4*(1+best) {
			t.Errorf("greatest effort and price %.6f, the optimiser finds %.6f", got, best)
		}
	}
	if moved < 30 {
		t.Errorf("the direction mattered in %d cases, want 30 or more", moved)
	}
}

// optimum minimises a function over the square of allowed forces across the path.
func optimum(t *testing.T, f float64, of func([2]float64) float64) float64 {
	t.Helper()
	inside := func(v []float64) [2]float64 { // a smooth map of the plane onto the square
		return [2]float64{slant * f * math.Sin(v[0]), slant * f * math.Sin(v[1])}
	}
	best := math.Inf(1)
	for _, start := range [][]float64{{0, 0}, {1, 1}, {-1, 1}, {1, -1}, {-1, -1}} {
		for range 3 { // restarts, as the method stalls on edges
			r, err := optimize.Minimize(optimize.Problem{Func: func(v []float64) float64 { return of(inside(v)) }},
				start, &optimize.Settings{MajorIterations: 2000, Converger: &optimize.FunctionConverge{Absolute: 1e-10, Iterations: 200}}, &optimize.NelderMead{})
			if err != nil {
				t.Fatal(err)
			}
			best, start = min(best, r.F), r.X
		}
	}
	return best
}

func TestDirections(t *testing.T) {
	b, c := rower(t)
	l := &b.Links
	hand := planar.Vec{X: 0.3, Y: l.Trunk}
	for _, want := range []struct {
		contact Contact
		along   bool
		is      Direction
	}{
		{Grip, false, LeastEffort}, {Grip, true, AlongPath}, {Strap, false, AlongPath},
	} {
		st := Station{Contact: want.contact, Anchor: HipsAnchor, Trunk: 90 * deg}
		at := hand
		if want.contact == Strap {
			st.On = OnUpperArm
			at.X = 0.2
		}
		m := lever(at.Add(planar.Vec{Y: 0.6}), at, 20, 10*deg)
		s, sw := mount(t, m, st, ChestPress, 3)
		r, err := Run(s, b, c, sw, Options{Along: want.along})
		if err != nil {
			t.Fatal(err)
		}
		if r.Direction != want.is {
			t.Errorf("contact %v: %v, want %v", want.contact, r.Direction, want.is)
		}
		// Whatever is free, the part along the path is the machine's.
		for i := range r.Travel {
			p := r.Placements[i].Path
			v := r.Lifting.Push[i]
			if got := -(v.X*p.X + v.Y*p.Y + v.Z*p.Z); math.Abs(got-r.Lifting.Force[i]) > 1e-9 {
				t.Errorf("%v %d: %.6f N along the path, want %.6f", want.is, i, got, r.Lifting.Force[i])
			}
		}
	}
}

// TestRopePullsTowardsItsSheave: a cable's force on the hand points from the
// hand to the sheave and has the stack's weight.
func TestRopePullsTowardsItsSheave(t *testing.T) {
	const kg = 15
	r, _ := freely(t, Row, Cable, kg, 7, Options{})
	m := r.Setup.model.Machine()
	sheave := m.Ropes[0].Route[1].At
	for i := range r.Travel {
		p := &r.Placements[i]
		d := sheave.Sub(planar.Vec{X: p.Contact.X, Y: p.Contact.Y})
		d = d.Scale(kg * g / d.Norm())
		if v := r.Lifting.Push[i]; math.Abs(v.X-d.X) > 1e-6 || math.Abs(v.Y-d.Y) > 1e-6 || v.Z != 0 {
			t.Errorf("%d: force %.4f N, want %.4f", i, v, d)
		}
	}
	if r.Direction != AlongRope {
		t.Errorf("got %v", r.Direction)
	}
}

// TestEveryActionHasAName guards the table from action to axis.
func TestEveryActionHasAName(t *testing.T) {
	for j := range NumJoints {
		for _, m := range []float64{1, -1} {
			a := j.actionOf(human.ArmAngles{Elevation: 1, Plane: 1.5}, m)
			if a.Coordinate() != j.coordinate() || (a.Sign() > 0) != (m > 0) {
				t.Errorf("%v %+g: action %v", j, m, a)
			}
		}
	}
}
