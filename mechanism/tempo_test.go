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

func TestLeaningChainInMotion(t *testing.T) {
	// In a plane of slope c = cos(lean) the chain's height is c·y, its pull counts
	// by c, and it rises at c·v: λ·c(c·y(g + c·a) + (c·v)²).
	const lambda, c = 8.0, 0.8
	m := lift(0, 0.8)
	m.Plane.Tilt = planar.Angle(math.Acos(c))
	m.Chains = []Chain{{Name: "chain", Link: 1, Floor: -0.2, Length: 2, Density: lambda}}
	tempo := Tempo{0.8, 0.2, 1, 0.2}
	r, _ := mustStroke(t, m, tempo, 111)
	for i, now := range r.Time {
		s, v, a := course(tempo, 0.8, now)
		want := lambda * c * c * (0.2 + s) * (Gravity + c*a)
		if v > 0 {
			want += lambda * c * c * c * v * v
		}
		near(t, "force, N", r.Force[i], want, 1e-8)
	}
}

func TestHeldBackMachineDoesNotLeave(t *testing.T) {
	// Where the counterweight outweighs the load the body holds back at rest
	// already; that is no flight.
	m := lever(0.3, 1, 20)
	m.Weights = append(m.Weights, Weight{Name: "counterweight", Link: 1, At: vec{X: -0.8}, Mass: 30})
	m.Drive = Drive{Joint: 0, From: -0.3, To: 0.3}
	r, _ := mustStroke(t, m, Tempo{2, 0.2, 2, 0.2}, 41)
	for i := range r.Time {
		if r.Force[i] >= 0 || r.Leaves[i] {
			t.Fatalf("at %.2f s: %g N, leaves %v", r.Time[i], r.Force[i], r.Leaves[i])
		}
	}
}
