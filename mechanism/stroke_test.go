package mechanism

import (
	"math"
	"strings"
	"testing"

	"steelyard/planar"
)

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

func TestStrokeIsWhereItSays(t *testing.T) {
	// Between the rows of the table the place is found from the travel: the
	// trammel followed at the wall has x = √(l² - y²), and its foot is the contact.
	const l, x0 = 1.3, 1.1
	m := trammel(l, x0)
	y0 := math.Sqrt(l*l - x0*x0)
	m.Drive = Drive{Joint: 1, From: 0, To: 0.5}
	sw := mustSweep(t, m, 101)
	for i := range 57 {
		s := sw.Travel[100] * float64(i) / 56
		y := y0 + sw.driverAt(s)
		near(t, "foot, m", math.Sqrt(l*l-y*y), x0-s, 2e-8)
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
