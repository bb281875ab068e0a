package mechanism

import (
	"math"
	"testing"

	"steelyard/planar"
)

func TestPlateInertia(t *testing.T) {
	// A plate as a disc, 20 kg, 450 mm: ½·m·r² = 0.50625 kg·m² of its own; on a
	// 0.6 m arm it adds 7.03 % to m·r² when it turns with the arm. Exact.
	m := lever(0.6, 0.6, 20)
	bare := mustCompile(t, m).NewState().Inertia().Mass
	near(t, "point mass at the grip, kg", bare, 20, 1e-12)
	m.Weights[0].Inertia = 20 * 0.225 * 0.225 / 2
	near(t, "own inertia, kg·m²", m.Weights[0].Inertia, 0.50625, 1e-15)
	near(t, "share added, %", 100*(mustCompile(t, m).NewState().Inertia().Mass/bare-1), 7.03125, 1e-10)

	// Massless arm or not, a wheel without weight still has its inertia.
	m.Weights = []Weight{{Name: "wheel", Link: 1, Inertia: 0.5}}
	near(t, "weightless wheel, kg", mustCompile(t, m).NewState().Inertia().Mass, 0.5/0.36, 1e-12)
}

func TestParallelAxis(t *testing.T) {
	// Uniform rod about its end m·L²/3, and with a weight beyond: Σ m·r².
	m := lever(1.4, 1, 10)
	m.Links[0] = Link{Name: "rod", Mass: 6, Center: vec{X: 0.6}, Inertia: 6 * 1.2 * 1.2 / 12}
	m.Weights = append(m.Weights, Weight{Name: "second", Link: 1, At: vec{X: -0.3, Y: 0.4}, Mass: 8, Inertia: 0.2})
	near(t, "inertia about the axis, kg·m²", mustCompile(t, m).NewState().Inertia().Mass,
		6*1.2*1.2/3+10*1.4*1.4+8*0.25+0.2, 1e-12)
}

func TestFlywheel(t *testing.T) {
	// Geared up n times, a wheel counts n² times: J·n²/L² at the grip.
	m := lever(0, 0.5, 0)
	m.Wheels = []Flywheel{{Name: "wheel", Joint: 0, Inertia: 0.04, Ratio: 6}}
	st := mustCompile(t, m).NewState()
	near(t, "effective mass, kg", st.Inertia().Mass, 0.04*36/0.25, 1e-12)
	near(t, "force, N", mustForce(t, st, Hold), 0, 0)
}

// pendulum is 3 kg hanging 1 m below the origin, held half way down so that
// masses and forces are not those of the bob itself.
func pendulum() Machine {
	bob := vec{Y: -1}
	m := lever(0, 0, 0)
	m.Weights = []Weight{{Name: "bob", Link: 1, At: bob, Mass: 3, Load: true}}
	m.Contact.At = bob.Scale(0.5)
	m.Drive = Drive{Joint: 0, From: -1.3, To: 1.3}
	return m
}

func TestPendulumSmallSwing(t *testing.T) {
	// 1 m: 2π√(L/g) = 2.00640929259 s, 12 digits, from the effective mass and the
	// stiffness of the static force at rest.
	const h = 1e-3
	md := mustCompile(t, pendulum())
	at := func(q float64) (float64, *State) {
		st := md.NewState()
		if err := st.MoveTo(q); err != nil {
			t.Fatal(err)
		}
		return mustForce(t, st, Hold), st
	}
	up, _ := at(h)
	down, _ := at(-h)
	rest, st := at(0)
	near(t, "force at rest, N", rest, 0, 1e-12)
	stiffness := (up - down) / (2 * h * 0.5) * (1 + h*h/6) // per m of contact path; sin h = h(1 - h²/6)
	near(t, "period, s", 2*math.Pi*math.Sqrt(st.Inertia().Mass/stiffness), 2.00640929259, 1e-10)
}

// swing integrates the solver's own equation of motion with nothing at the
// contact, 0 = F(s) + m·s̈ + ½·m′·ṡ², from rest at q for the duration, by the
// classical Runge-Kutta method, and calls at after every step.
func swing(t *testing.T, md *Model, q, duration float64, steps int, at func(time, q, v float64)) {
	t.Helper()
	st := md.NewState()
	// v is the speed along the path; perDriver turns it into the driver's rate.
	rate := func(q, v float64) (dq, dv float64) {
		if err := st.MoveTo(q); err != nil {
			t.Fatal(err)
		}
		in := st.Inertia()
		_, _, perDriver := st.path()
		return md.forward * v / perDriver, -(mustForce(t, st, Hold) + in.Slope*v*v/2) / in.Mass
	}
	h := duration / float64(steps)
	v := 0.0
	at(0, q, v)
	for i := range steps {
		q1, v1 := rate(q, v)
		q2, v2 := rate(q+h/2*q1, v+h/2*v1)
		q3, v3 := rate(q+h/2*q2, v+h/2*v2)
		q4, v4 := rate(q+h*q3, v+h*v3)
		q, v = q+h/6*(q1+2*q2+2*q3+q4), v+h/6*(v1+2*v2+2*v3+v4)
		at(h*float64(i+1), q, v)
	}
}

func TestPendulumWideSwing(t *testing.T) {
	// Amplitude 60 deg: 2.15324235178 s by the complete elliptic integral, 12
	// digits. After one period it is back at rest where it was let go.
	const period = 2.15324235178
	start := float64(60 * planar.Degree)
	var last float64
	swing(t, mustCompile(t, pendulum()), start, period, 400, func(_, q, _ float64) { last = q })
	near(t, "back at, rad", last, start, 1e-7)

	// A quarter of it takes it through the middle, at √(2g(1 - cos 60°)) · 0.5.
	var q, v float64
	swing(t, mustCompile(t, pendulum()), start, period/4, 400, func(_, qi, vi float64) { q, v = qi, vi })
	near(t, "middle, rad", q, 0, 1e-8)
	near(t, "speed at the contact, m/s", math.Abs(v), 0.5*math.Sqrt(2*Gravity*0.5), 1e-7)
}

func TestSlidingLadder(t *testing.T) {
	// A uniform ladder of length l let go against a smooth wall: about the centre
	// it has m·l²/12, its centre moves on a circle of l/2, so as a whole
	// θ̈ = (3g/2l) sin θ from the wall: energy gives θ̇² = (3g/l)(cos θ₀ - cos θ).
	// Textbook problem; invented numbers.
	const l, kg = 1.3, 12.0
	m := trammel(l, 0.5)
	m.Weights = nil
	m.Links[1].Mass, m.Links[1].Center, m.Links[1].Inertia = kg, vec{X: 0.25, Y: 0.6}, kg*l*l/12
	m.Drive = Drive{Joint: 0, From: 0, To: 0.6}
	theta0 := math.Asin(0.5 / l)
	swing(t, mustCompile(t, m), 0, 0.35, 200, func(_, q, v float64) {
		theta := math.Asin((0.5 + q) / l)
		thetaDot := math.Sqrt(3 * Gravity / l * (math.Cos(theta0) - math.Cos(theta)))
		near(t, "foot, m/s", v, l*math.Cos(theta)*thetaDot, 1e-7)
	})
}

func TestEnergyKeptWhileItSwings(t *testing.T) {
	// Let go, ½·m·ṡ² grows by what the potential energy falls.
	for _, c := range classics() {
		t.Run(c.name, func(t *testing.T) {
			md := mustCompile(t, c.m)
			d := md.machine.Drive
			middle := (d.From + d.To) / 2
			st := md.NewState()
			if err := st.MoveTo(middle); err != nil {
				t.Fatal(err)
			}
			start := potential(md, st)
			in := st.Inertia()
			f := mustForce(t, st, Hold)
			_, _, perDriver := st.path()
			// As long as it takes to pass a tenth of the travel at the first acceleration.
			duration := math.Sqrt(2 * 0.1 * math.Abs(d.To-d.From) * perDriver * in.Mass / (math.Abs(f) + 1))
			size := 0.0
			swing(t, md, middle, duration, 200, func(_, q, v float64) {
				if err := st.MoveTo(q); err != nil {
					t.Fatal(err)
				}
				kinetic := st.Inertia().Mass * v * v / 2
				size = math.Max(size, kinetic)
				near(t, "energy, J", kinetic+potential(md, st), start, 1e-6*(size+1e-3))
			})
			if size == 0 {
				t.Error("it did not move")
			}
		})
	}
}
