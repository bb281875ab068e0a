package mechanism

import (
	"math"
	"math/rand/v2"
	"testing"

	"steelyard/planar"
)

// eachRandom calls check with seeded random machines of every family that run
// their whole travel, at least five of each in twenty draws.
func eachRandom(t *testing.T, check func(t *testing.T, m Machine)) {
	for k, c := range classics() {
		t.Run(c.name, func(t *testing.T) {
			r := rand.New(rand.NewPCG(2024, uint64(k)))
			tried := 0
			for range 20 {
				m := shaken(r, c)
				if !runs(m) || tried == 6 {
					continue
				}
				tried++
				check(t, m)
				if t.Failed() {
					t.Fatalf("random machine %d", tried)
				}
			}
			if tried < 5 {
				t.Errorf("only %d of 20 random machines run", tried)
			}
		})
	}
}

// runs reports whether the machine has a force at every position, friction
// included, and is nowhere so close to a dead point that rounding shows.
func runs(m Machine) bool {
	for _, m := range []Machine{m, rubbed(m)} {
		md, err := Compile(m)
		if err != nil {
			return false
		}
		sw, err := md.Sweep(11)
		if err != nil {
			return false
		}
		for i, stop := range sw.Stops {
			if stop != nil || sw.speed[i] < 0.02 {
				return false
			}
		}
	}
	return true
}

// same compares two tables at n positions, b read at place(i).
func same(t *testing.T, a, b *Sweep, place func(i int) int, sign float64, withFriction bool) {
	t.Helper()
	size := 1.0
	for i := range a.Hold {
		size = math.Max(size, math.Abs(a.Hold[i]))
	}
	for i := range a.Hold {
		k := place(i)
		lift, lower := b.Lift[k], b.Lower[k]
		if sign < 0 {
			lift, lower = lower, lift
		}
		near(t, "hold, N", sign*b.Hold[k], a.Hold[i], 1e-8*size)
		if withFriction {
			near(t, "lift, N", sign*lift, a.Lift[i], 1e-8*size)
			near(t, "lower, N", sign*lower, a.Lower[i], 1e-8*size)
		}
		near(t, "lift ratio", b.LiftRatio[k], a.LiftRatio[i], 1e-9*(1+a.LiftRatio[i]))
		near(t, "effective mass, kg", b.Mass[k], a.Mass[i], 1e-8*(1+a.Mass[i]))
		near(t, "its slope, kg/m", sign*b.MassSlope[k], a.MassSlope[i], 1e-6*(1+math.Abs(a.MassSlope[i])))
	}
}

func inPlace(i int) int { return i }

func TestMovingTheMachineChangesNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	eachRandom(t, func(t *testing.T, m Machine) {
		m = rubbed(m)
		d := vec{X: 6 * (r.Float64() - 0.5), Y: 6 * (r.Float64() - 0.5)}
		a, b := mustSweep(t, m, 11), mustSweep(t, shifted(m, d), 11)
		same(t, a, b, inPlace, 1, true)
		for i := range a.Hold {
			near(t, "travel, m", b.Travel[i], a.Travel[i], 1e-10)
			near(t, "contact, m", b.Contact[i].Sub(a.Contact[i]).Sub(d).Norm(), 0, 1e-10)
			for j := range m.Joints {
				f, g := a.Reaction(i, j, Lift), b.Reaction(i, j, Lift)
				near(t, "reaction, N", g.Force.Sub(f.Force).Norm(), 0, 1e-7*(1+f.Force.Norm()))
			}
		}
	})
}

func TestTurningInALevelPlaneChangesNothing(t *testing.T) {
	// A level plane carries no weight: only springs act, whichever way it faces.
	for _, m := range []Machine{sprung(), slottedLever(0.2, 0.5, 20*planar.Degree)} {
		m.Plane.Tilt = math.Pi / 2
		for _, by := range []planar.Angle{0.7, math.Pi / 2, -2.5} {
			same(t, mustSweep(t, m, 11), mustSweep(t, turned(m, by), 11), inPlace, 1, true)
		}
	}
}

func TestMirrorSymmetry(t *testing.T) {
	eachRandom(t, func(t *testing.T, m Machine) {
		m = rubbed(m)
		a, b := mustSweep(t, m, 11), mustSweep(t, mirrored(m), 11)
		same(t, a, b, inPlace, 1, true)
		for i := range a.Hold {
			near(t, "contact x, m", -b.Contact[i].X, a.Contact[i].X, 1e-10)
			near(t, "contact y, m", b.Contact[i].Y, a.Contact[i].Y, 1e-10)
		}
	})
}

func TestDoublingLoadsDoublesForce(t *testing.T) {
	eachRandom(t, func(t *testing.T, m Machine) {
		m = rubbed(m)
		m.Elements = nil
		for i := range m.Joints {
			m.Joints[i].Friction.Drag = 0
		}
		heavy := clone(m)
		for i := range heavy.Links {
			heavy.Links[i].Mass *= 2
			heavy.Links[i].Inertia *= 2
		}
		for i := range heavy.Weights {
			heavy.Weights[i].Mass *= 2
		}
		for i := range heavy.Chains {
			heavy.Chains[i].Density *= 2
		}
		if !runs(m) || !runs(heavy) {
			return // held up by its springs alone
		}
		a, b := mustSweep(t, m, 11), mustSweep(t, heavy, 11)
		for i := range a.Hold {
			tol := 1e-9 * (1 + math.Abs(b.Lift[i]))
			near(t, "hold, N", b.Hold[i], 2*a.Hold[i], tol)
			near(t, "lift, N", b.Lift[i], 2*a.Lift[i], tol)
			near(t, "lower, N", b.Lower[i], 2*a.Lower[i], tol)
		}
	})
}

func TestReversingTheTravelSwapsLiftAndLower(t *testing.T) {
	eachRandom(t, func(t *testing.T, m Machine) {
		m = rubbed(m)
		back := m
		back.Drive.From, back.Drive.To = m.Drive.To, m.Drive.From
		same(t, mustSweep(t, m, 11), mustSweep(t, back, 11), func(i int) int { return 10 - i }, -1, true)
	})
}

func TestWritingItOtherwiseChangesNothing(t *testing.T) {
	eachRandom(t, func(t *testing.T, m Machine) {
		same(t, mustSweep(t, m, 11), mustSweep(t, rewritten(m), 11), inPlace, 1, false)
	})
}

func TestLowerHoldLift(t *testing.T) {
	eachRandom(t, func(t *testing.T, m Machine) {
		sw := mustSweep(t, rubbed(m), 11)
		for i := range sw.Hold {
			if !(sw.Lower[i] < sw.Hold[i] && sw.Hold[i] < sw.Lift[i]) {
				t.Errorf("position %d: lower %g, hold %g, lift %g N, want rising", i, sw.Lower[i], sw.Hold[i], sw.Lift[i])
			}
		}
	})
}

func TestEnergyOfRandomMachines(t *testing.T) {
	eachRandom(t, func(t *testing.T, m Machine) {
		md := mustCompile(t, m)
		eachInside(t, md, func(q, h float64) {
			work := slopeOf(h, func(dq float64) float64 { return potential(md, moved(t, md, q+dq)) })
			st := moved(t, md, q)
			_, _, speed := st.path()
			f := mustForce(t, st, Hold)
			near(t, "force, N", f, md.forward*work/speed, 1e-5*(1+math.Abs(f)))
			near(t, "imbalance", st.Imbalance(Hold), 0, 1e-7*(1+math.Abs(f)))
		})
	})
}

func TestSameTwice(t *testing.T) {
	// The same machine gives the same numbers to the last bit.
	for _, c := range classics() {
		a, b := mustSweep(t, rubbed(c.m), 11), mustSweep(t, rubbed(c.m), 11)
		if err := b.state.model.SweepInto(b); err != nil {
			t.Fatal(err)
		}
		for i := range a.Hold {
			if a.Hold[i] != b.Hold[i] || a.Lift[i] != b.Lift[i] || a.Lower[i] != b.Lower[i] || a.Mass[i] != b.Mass[i] {
				t.Fatalf("%s, position %d differs", c.name, i)
			}
		}
	}
}
