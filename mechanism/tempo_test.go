package mechanism

import (
	"math"
	"strings"
	"testing"

	"steelyard/planar"
)

// minimumJerk is the course 10τ³ - 15τ⁴ + 6τ⁵ and its derivatives (T. Flash and
// N. Hogan, J Neurosci 5 (1985) 1688, from memory).
func minimumJerk(tau float64) (x, v, a float64) {
	return 10*math.Pow(tau, 3) - 15*math.Pow(tau, 4) + 6*math.Pow(tau, 5),
		30*math.Pow(tau, 2) - 60*math.Pow(tau, 3) + 30*math.Pow(tau, 4),
		60*tau - 180*math.Pow(tau, 2) + 120*math.Pow(tau, 3)
}

// course returns speed and acceleration along the path, from the tempo alone.
func course(p Tempo, travel, t float64) (s, v, a float64) {
	part := func(tau, duration, sign float64) (float64, float64, float64) {
		x, v, a := minimumJerk(tau)
		return travel * x, sign * travel * v / duration, sign * travel * a / (duration * duration)
	}
	switch down := t - p.Up - p.Top; {
	case t < p.Up:
		return part(t/p.Up, p.Up, 1)
	case down < 0:
		return travel, 0, 0
	case down < p.Down:
		x, v, a := part(down/p.Down, p.Down, -1)
		return travel - x, v, a
	}
	return 0, 0, 0
}

func mustStroke(t *testing.T, m Machine, p Tempo, n int) (*Stroke, *Sweep) {
	t.Helper()
	sw := mustSweep(t, m, 201)
	r, err := sw.state.model.Stroke(sw, p, n)
	if err != nil {
		t.Fatal(err)
	}
	return r, sw
}

func TestStrokeFollowsTheEquationOfMotion(t *testing.T) {
	// F = static + m·s̈ + ½·m′·ṡ² against d'Alembert forces on every body.
	tempo := Tempo{1.2, 0.3, 1.6, 0.2}
	for _, c := range classics() {
		if len(c.m.Chains) > 0 {
			continue // not conservative, has its own test
		}
		t.Run(c.name, func(t *testing.T) {
			r, sw := mustStroke(t, c.m, tempo, 61)
			st := sw.state.model.NewState()
			for i, now := range r.Time {
				s, v, a := course(tempo, sw.Travel[sw.Len()-1], now)
				near(t, "travel, m", r.Travel[i], s, 1e-12)
				near(t, "speed, m/s", r.Speed[i], v, 1e-12)
				if err := st.MoveTo(sw.driverAt(s)); err != nil {
					t.Fatal(err)
				}
				f, in := mustForce(t, st, Hold), st.Inertia()
				want := f + in.Mass*a + in.Slope*v*v/2
				near(t, "force, N", r.Force[i], want, 1e-9*(1+math.Abs(want)))
				near(t, "static, N", r.Static[i], f, 1e-9*(1+math.Abs(f)))
			}
		})
	}
}

func TestStrokeWorkIsEnergy(t *testing.T) {
	// From rest to rest the work of the true force is what the static force does:
	// the growth of potential energy. And back it is returned.
	tempo := Tempo{0.8, 0, 0.9, 0}
	for _, c := range classics() {
		if len(c.m.Chains) > 0 {
			continue
		}
		t.Run(c.name, func(t *testing.T) {
			const n = 1701
			r, sw := mustStroke(t, c.m, tempo, n)
			grown := potential(sw.state.model, row{sw, sw.Len() - 1}) - potential(sw.state.model, row{sw, 0})
			up, most := 0.0, 0.0
			total := 0.0
			for i := 1; i < n; i++ {
				h := r.Time[i] - r.Time[i-1]
				work := h / 2 * (r.Force[i]*r.Speed[i] + r.Force[i-1]*r.Speed[i-1])
				if r.Time[i] <= tempo.Up+1e-9 {
					up += work
				}
				total += work
				most = math.Max(most, math.Abs(r.Force[i]))
			}
			size := most * sw.Travel[sw.Len()-1]
			near(t, "work up, J", up, grown, 1e-5*size)
			near(t, "work of the whole, J", total, 0, 1e-5*size)
		})
	}
}

// lift is a weight of m lifted straight up by s.
func lift(mass, s float64) Machine {
	sled, guide := slide("load", 1, vec{}, math.Pi/2)
	return Machine{
		Links: []Link{sled}, Joints: []Joint{guide},
		Weights: []Weight{{Name: "plates", Link: 1, Mass: mass, Load: true}},
		Drive:   Drive{Joint: 0, From: 0, To: s},
		Contact: Contact{Name: "handle", Link: 1},
	}
}

func TestPeakAndDip(t *testing.T) {
	// The minimum-jerk course has its greatest acceleration 10/√3·S/T² at
	// (3 ∓ √3)/6 of the time: F = M(g ± 5.7735·S/T²).
	const mass, s, up = 40, 0.5, 1.5
	r, _ := mustStroke(t, lift(mass, s), Tempo{up, 0.5, 3, 0.5}, 11001)
	extra := mass * 10 / math.Sqrt(3) * s / (up * up)
	near(t, "peak, N", r.Force[r.Peak], mass*Gravity+extra, 1e-4)
	near(t, "dip, N", r.Force[r.Dip], mass*Gravity-extra, 1e-4)
	near(t, "time of the peak, s", r.Time[r.Peak], (3-math.Sqrt(3))/6*up, 1e-3)
	near(t, "time of the dip, s", r.Time[r.Dip], (3+math.Sqrt(3))/6*up, 1e-3)
	for i := range r.Time {
		if r.Leaves[i] || r.Slack[i] != "" {
			t.Fatalf("at %.2f s: leaves %v, slack %q", r.Time[i], r.Leaves[i], r.Slack[i])
		}
	}
}

func TestLoadLeaves(t *testing.T) {
	// It flies where it would have to be slowed faster than gravity does: where
	// S/T²·x″(τ) < -g.
	tempo := Tempo{0.3, 0.5, 1, 0.5}
	r, _ := mustStroke(t, lift(40, 0.5), tempo, 2301)
	for i, now := range r.Time {
		_, _, a := course(tempo, 0.5, now)
		if math.Abs(a+Gravity) > 1e-6 && r.Leaves[i] != (a < -Gravity) {
			t.Fatalf("at %.4f s, acceleration %.3f m/s²: leaves %v", now, a, r.Leaves[i])
		}
	}
	if _, _, a := course(tempo, 0.5, 0.8*0.3); a > -Gravity {
		t.Fatal("the tempo is too slow to test it")
	}
}

func TestRopeGoesSlackInMotion(t *testing.T) {
	// The handle outruns a stack that falls freely: the rope hangs loose where
	// the load's own acceleration down exceeds g.
	tempo := Tempo{0.3, 0.5, 1, 0.5}
	m := hoist(40, vec{Y: -0.5}, vec{X: 0.5, Y: 1}, 0, Station{Name: "top", Link: Ground, At: vec{Y: 1}})
	m.Drive.To = 0.5
	r, _ := mustStroke(t, m, tempo, 2301)
	some := false
	for i, now := range r.Time {
		_, _, a := course(tempo, 0.5, now)
		if math.Abs(a+Gravity) < 1e-3 {
			continue
		}
		slack := r.Slack[i] != ""
		if slack != (a < -Gravity) {
			t.Fatalf("at %.4f s, acceleration %.3f m/s²: slack %q", now, a, r.Slack[i])
		}
		some = some || slack && strings.Contains(r.Slack[i], "main")
	}
	if !some {
		t.Error("no slack rope was named")
	}
}

func TestDamperAndFrictionInMotion(t *testing.T) {
	// A dashpot adds c·v going up and takes it coming down; drag has its own sign.
	tempo := Tempo{1, 0.5, 2, 0.5}
	m := lift(40, 0.5)
	m.Elements = []Element{{Name: "dashpot", Law: Damper{Coefficient: 150}, Route: Route{
		{Name: "floor", Link: Ground, At: vec{Y: -0.3}}, {Name: "load", Link: 1}}}}
	m.Joints[0].Friction.Drag = 12
	r, sw := mustStroke(t, m, tempo, 81)
	for i, now := range r.Time {
		_, v, a := course(tempo, 0.5, now)
		static := 40 * Gravity
		if r.Sense[i] != Hold {
			static += 12 * float64(r.Sense[i])
		}
		near(t, "static, N", r.Static[i], static, 1e-9)
		near(t, "force, N", r.Force[i], static+40*a+150*v, 1e-9)
		if v != 0 && float64(r.Sense[i]) != math.Copysign(1, v) {
			t.Errorf("at %.2f s: sense %d at %g m/s", now, r.Sense[i], v)
		}
	}
	near(t, "sweep, lift, N", sw.Lift[7], 40*Gravity+12, 1e-9)
}

func TestSmallLiftRatioIsFlatterInMotion(t *testing.T) {
	// Common practice, no source: a small lift ratio means a flatter inertial
	// load. With the load r times as fast as the hand, F = r·M·g + r²·M·s̈: the
	// swing over the static force is r·s̈/g.
	tempo := Tempo{1, 0.5, 1, 0.5}
	for _, n := range []int{2, 4} {
		m := tackle(n, 80, RopeLoss{})
		m.Drive.To = 0.5
		r, _ := mustStroke(t, m, tempo, 6001)
		near(t, "swing over static force", r.Force[r.Peak]/r.Static[r.Peak]-1, 10/math.Sqrt(3)*0.5/float64(n)/Gravity, 1e-6)
	}
}

func TestFlywheelStroke(t *testing.T) {
	// A wheel alone: F = J·n²/L²·s̈, nothing at rest, and it gives back in
	// slowing what it took in speeding up.
	m := lever(0, 0.5, 0)
	m.Wheels = []Flywheel{{Name: "wheel", Joint: 0, Inertia: 0.04, Ratio: 6}}
	tempo := Tempo{0.6, 0.2, 0.8, 0.2}
	r, sw := mustStroke(t, m, tempo, 91)
	for i, now := range r.Time {
		_, _, a := course(tempo, sw.Travel[sw.Len()-1], now)
		near(t, "force, N", r.Force[i], 0.04*36/0.25*a, 1e-9)
	}
}

func TestChainInMotion(t *testing.T) {
	// Raised, the chain takes λ(g·y + y·a + v²): what is picked up must be
	// brought to speed. Let down, λ·y(g + a): what is laid down keeps its own.
	// D. Kleppner and R. Kolenkow, An Introduction to Mechanics, ch. 3 (momentum
	// and the flow of mass), from memory.
	const lambda = 8.0
	m := lift(0, 0.8)
	m.Chains = []Chain{{Name: "chain", Link: 1, Floor: -0.2, Length: 2, Density: lambda}}
	tempo := Tempo{0.8, 0.2, 1, 0.2}
	r, _ := mustStroke(t, m, tempo, 111)
	for i, now := range r.Time {
		s, v, a := course(tempo, 0.8, now)
		want := lambda * (0.2 + s) * (Gravity + a)
		if v > 0 {
			want += lambda * v * v
		}
		near(t, "force, N", r.Force[i], want, 1e-8)
	}
}

func TestTempoIsChecked(t *testing.T) {
	sw := mustSweep(t, lift(40, 0.5), 11)
	md := sw.state.model
	for _, row := range []struct {
		name  string
		tempo Tempo
		says  string
	}{
		{"no time up", Tempo{0, 0, 2, 0}, "0 s up"},
		{"no time down", Tempo{2, 0, 0, 0}, "0 s down"},
		{"not a number", Tempo{math.NaN(), 0, 2, 0}, "NaN"},
		{"pause below nought", Tempo{2, -1, 2, 0}, "-1 s"},
		{"a minute and more", Tempo{2, 0, 2, 61}, "61 s"},
	} {
		if _, err := md.Stroke(sw, row.tempo, 20); err == nil || !strings.Contains(err.Error(), row.says) {
			t.Errorf("%s: got %v, want a sentence with %q", row.name, err, row.says)
		}
	}
	if _, err := md.Stroke(sw, Tempo{1, 0, 1, 0}, 1); err == nil {
		t.Error("one row: got no error")
	}

	m := sliderCrank(0.3, 0.35, 0.2, 20*planar.Degree, +1) // the crank reaches too low for the rod
	m.Drive = Drive{Joint: 0, From: 0, To: -2}
	gap, err := mustCompile(t, m).Sweep(21)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := gap.state.model.Stroke(gap, Tempo{1, 0, 1, 0}, 20); err == nil {
		t.Error("a travel with a gap: got no error")
	}
}
