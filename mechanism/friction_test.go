package mechanism

import (
	"math"
	"testing"

	"steelyard/planar"
)

// liftAndLower checks the two friction curves at the state's pose.
func liftAndLower(t *testing.T, st *State, lift, lower, tol float64) {
	t.Helper()
	near(t, "lift, N", mustForce(t, st, Lift), lift, tol)
	near(t, "lower, N", mustForce(t, st, Lower), lower, tol)
}

// incline is 100 kg on rails at 30 deg, pushed at its centre of mass.
func incline(f JointFriction) Machine {
	sled, rail := slide("sled", 1, vec{}, 30*planar.Degree)
	rail.Friction = f
	return Machine{
		Links: []Link{sled}, Joints: []Joint{rail},
		Weights: []Weight{{Name: "plates", Link: 1, Mass: 100, Load: true}},
		Drive:   Drive{Joint: 0, From: 0, To: 0.5},
		Contact: Contact{Name: "handle", Link: 1},
	}
}

func TestInclineWithFriction(t *testing.T) {
	// W(sin α ± μ cos α), recomputed to 11 digits; efficiency up 0.742715725553.
	sw := mustSweep(t, incline(JointFriction{Coefficient: 0.2}), 3)
	for i := range sw.Hold {
		near(t, "up, N", sw.Lift[i], 660.18866052, 1e-8)
		near(t, "held, N", sw.Hold[i], 490.3325, 1e-10)
		near(t, "let down, N", sw.Lower[i], 320.47633948, 1e-8)
		near(t, "efficiency up", sw.Hold[i]/sw.Lift[i], 0.742715725553, 1e-11)
		near(t, "push across the rail, N", sw.Reaction(i, 0, Lift).Force.Norm(), 100*Gravity*math.Cos(float64(30*planar.Degree)), 1e-10)
	}

	// Below the angle of friction, 11.309932474 deg, it must be pulled down.
	m := incline(JointFriction{Coefficient: 0.2})
	for _, row := range []struct {
		rail  planar.Angle
		holds bool
	}{{11.30 * planar.Degree, true}, {11.32 * planar.Degree, false}} {
		m.Joints[0].Along = row.rail
		f := mustForce(t, mustCompile(t, m).NewState(), Lower)
		if (f < 0) != row.holds {
			t.Errorf("rail at %.2f deg: let down with %.3f N", row.rail.Degrees(), f)
		}
	}

	// A constant drag of wipers adds to one and takes from the other.
	liftAndLower(t, mustCompile(t, incline(JointFriction{Drag: 15})).NewState(), 490.3325+15, 490.3325-15, 1e-10)
}

func TestPinFriction(t *testing.T) {
	// A pin of radius a resists with μ·a·R. Level lever, W at b, F at l, both
	// upright, so R = W - F: F·l = W·b ± μ·a·(W - F).
	const w, b, l, k = 60 * Gravity, 0.62, 1.05, 0.15 * 0.012
	m := lever(b, l, 60)
	m.Joints[0].Friction = JointFriction{Coefficient: 0.15, Radius: 0.012}
	liftAndLower(t, mustCompile(t, m).NewState(), w*(b+k)/(l+k), w*(b-k)/(l-k), 1e-9)
}

func TestTippingSlider(t *testing.T) {
	// A carriage on an upright post, bearing length b, loaded e from the post:
	// the tipping moment W·e presses both ends with W·e/b, drag 2μ·W·e/b. The
	// push is at the post and does not tip it.
	const w, e, b, mu = 40 * Gravity, 0.3, 0.25, 0.1
	carriage, post := slide("carriage", 1, vec{}, math.Pi/2)
	post.Friction = JointFriction{Coefficient: mu, Bearing: b}
	m := Machine{
		Links: []Link{carriage}, Joints: []Joint{post},
		Weights: []Weight{{Name: "plates", Link: 1, At: vec{X: e}, Mass: 40, Load: true}},
		Drive:   Drive{Joint: 0, From: 0, To: 0.5},
		Contact: Contact{Name: "at the post", Link: 1},
	}
	liftAndLower(t, mustCompile(t, m).NewState(), w*(1+2*mu*e/b), w*(1-2*mu*e/b), 1e-9)

	// The drawer that jams: a weight at the post pushed e aside. F = W/(1 ∓ k),
	// k = 2μe/b; with k ≥ 1 no push lifts it, yet it still comes down.
	m.Weights[0].At = vec{}
	m.Contact.At = vec{X: e}
	const k = 2 * mu * e / b
	liftAndLower(t, mustCompile(t, m).NewState(), w/(1-k), w/(1+k), 1e-9)

	m.Joints[0].Friction.Coefficient = 0.45 // k = 1.08
	st := mustCompile(t, m).NewState()
	if f, err := st.Force(Lift); err == nil {
		t.Errorf("jammed carriage: lifted with %g N", f)
	}
	near(t, "jammed carriage, lower, N", mustForce(t, st, Lower), w/(1+1.08), 1e-9)

	m.Joints[0].Friction.Coefficient = 0.4 // k = 0.96: nearly jammed
	liftAndLower(t, mustCompile(t, m).NewState(), w/(1-0.96), w/(1+0.96), 1e-7)
}

func TestBlockAndTackleWithSheaveEfficiency(t *testing.T) {
	// MA = E(1-Eⁿ)/(1-E), lead line from the upper block. Pipeline Rules of Thumb
	// Handbook p. 6: plain bearings 91.7 %, n = 4 (printed 3.25), roller bearings
	// 96.2 %; exact values recomputed to 11 digits. Lowering, each sheave passes
	// the pull on the other way: W = F·Σ E^-k, k = 1 to n.
	const w = 80 * Gravity
	for _, row := range []struct{ e, advantage float64 }{
		{0.917, 3.23607852332}, {0.962, 3.63416772514}, {0.98, 3.80396016},
	} {
		e := row.e
		near(t, "formula", e*(1-math.Pow(e, 4))/(1-e), row.advantage, 1e-8)
		sum := 1/e + 1/(e*e) + 1/(e*e*e) + 1/(e*e*e*e)
		m := tackle(4, 80, RopeLoss{Efficiency: e})
		sw := mustSweep(t, m, 3)
		for i := range sw.Hold {
			near(t, "lift, advantage", w/sw.Lift[i], row.advantage, 1e-8)
			near(t, "hold, advantage", w/sw.Hold[i], 4, 1e-12)
			near(t, "lower, N", sw.Lower[i], w/sum, 1e-9)
		}
		near(t, "tension at the becket, N", sw.Tension(1, 0, Lift), sw.Lift[1]*math.Pow(e, 4), 1e-8)
	}
	near(t, "pull for 3250 lb", 3250/3.23607852332, 1004.30195886, 1e-7)
}

func TestTackleRoutedFromEitherEnd(t *testing.T) {
	// How the route is written down must not matter, down to poor sheaves.
	for _, e := range []float64{0.95, 0.8, 0.6, 0.4} {
		for _, n := range []int{2, 4, 6} {
			m := tackle(n, 80, RopeLoss{Efficiency: e})
			back := m
			back.Ropes = []Rope{{Name: "main", Route: reversed(m.Ropes[0].Route)}}
			lifted, lowered := 0.0, 0.0
			for k := 1; k <= n; k++ {
				lifted += math.Pow(e, float64(k))
				lowered += math.Pow(e, -float64(k))
			}
			for _, m := range []Machine{m, back} {
				liftAndLower(t, mustCompile(t, m).NewState(), 80*Gravity/lifted, 80*Gravity/lowered, 1e-7)
			}
		}
	}
}

func TestCapstan(t *testing.T) {
	// Euler and Eytelwein, T2/T1 = exp(μβ), 9 digits.
	const w = 50 * Gravity
	post := Station{Name: "post", Link: Ground, At: vec{X: 0.05, Y: 1}, Outline: planar.Circle{Radius: 0.05}, Side: planar.Right}
	for _, row := range []struct {
		name                 string
		handle               vec
		pull                 planar.Angle
		turns                int
		slack, medium, tight float64 // for μ 0.1, 0.3, 0.5
	}{
		{"quarter turn", vec{X: 0.5, Y: 1.05}, 0, 0, 1.17008879, 1.60197765, 2.19328005},
		{"half turn", vec{X: 0.1, Y: 0.5}, -math.Pi / 2, 0, 1.36910777, 2.56633240, 4.81047738},
		{"one turn", vec{X: 0, Y: 1.6}, math.Pi / 2, 1, 1.87445609, 6.58606196, 23.1406926},
	} {
		for i, ratio := range []float64{row.slack, row.medium, row.tight} {
			t.Run(row.name, func(t *testing.T) {
				s := post
				s.Turns, s.Loss = row.turns, RopeLoss{Slip: 0.1 + 0.2*float64(i)}
				m := hoist(50, vec{Y: 0.4}, row.handle, row.pull, s)
				st := mustCompile(t, m).NewState()
				liftAndLower(t, st, w*ratio, w/ratio, 1e-8*w*ratio)
				m.Ropes[0].Route = reversed(m.Ropes[0].Route)
				m.Ropes[0].Route[1].Turns = row.turns
				st = mustCompile(t, m).NewState()
				liftAndLower(t, st, w*ratio, w/ratio, 1e-8*w*ratio)
			})
		}
	}
}

func TestSheaveBearing(t *testing.T) {
	// A sheave turns under (T2-T1)·r = μ·a·R with R the resultant of both pulls.
	// Round half a turn R = T1+T2, so T2/T1 = (1+f)/(1-f) with f = μa/r.
	// Round a quarter R² = T1²+T2², so (ρ-1)² = f²(1+ρ²).
	const w, f = 50 * Gravity, 0.2 * 0.15
	s := Station{Name: "sheave", Link: Ground, At: vec{X: 0.05, Y: 1}, Outline: planar.Circle{Radius: 0.05}, Side: planar.Right,
		Loss: RopeLoss{Bearing: 0.2, AxleOverRim: 0.15}}
	half := (1 + f) / (1 - f)
	liftAndLower(t, mustCompile(t, hoist(50, vec{Y: 0.4}, vec{X: 0.1, Y: 0.5}, -math.Pi/2, s)).NewState(), w*half, w/half, 1e-9)

	quarter := (1 + f*math.Sqrt(2-f*f)) / (1 - f*f)
	near(t, "quarter turn, balance", math.Pow(quarter-1, 2), f*f*(1+quarter*quarter), 1e-15)
	liftAndLower(t, mustCompile(t, hoist(50, vec{Y: 0.4}, vec{X: 0.5, Y: 1.05}, 0, s)).NewState(), w*quarter, w/quarter, 1e-9)

	// The rule of thumb 2μ·a/r for half a turn (3 to 8 %), from memory.
	near(t, "loss round half a turn", 1-1/half, 2*f, 2e-3)
}
