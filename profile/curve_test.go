package profile

import (
	"errors"
	"math"
	"testing"
)

func TestCheckRefuses(t *testing.T) {
	two := []float64{1, 1}
	tests := []struct {
		name string
		c    Curve
		want string
	}{
		{"nothing", Curve{}, "profile: column travel has 0 positions, 2 are needed"},
		{"short force", Curve{Travel: []float64{0, 1}, Hold: []float64{1}}, "profile: column hold has 1 positions, 2 are needed"},
		{"lift alone", Curve{Travel: []float64{0, 1}, Hold: two, Lift: two}, "profile: column lift or lower has 0 positions, 2 are needed"},
		{"short gap", Curve{Travel: []float64{0, 1}, Hold: two, Gap: []Reason{Slack}}, "profile: column gap has 1 positions, 2 are needed"},
		{"not a number", Curve{Travel: []float64{0, 1}, Hold: []float64{1, math.NaN()}}, "profile: hold at position 2 is NaN; it must be a number of at most 1e+12 in size"},
		{"without bound", Curve{Travel: []float64{0, 1}, Hold: two, Load: []float64{0, math.Inf(1)}}, "profile: load at position 2 is +Inf; it must be a number of at most 1e+12 in size"},
		{"late start", Curve{Travel: []float64{0.1, 1}, Hold: two}, "profile: travel at position 1 is 0.1; it must be 0 m, since travel counts from the start"},
		{"standing still", Curve{Travel: []float64{0, 0}, Hold: two}, "profile: travel at position 2 is 0; it must be at least 1e-09 m beyond the 0 m before it"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Read(tt.c, Holding)
			if err == nil || err.Error() != tt.want {
				t.Fatalf("got %v, want %s", err, tt.want)
			}
			var length *LengthError
			var value *ValueError
			if !errors.As(err, &length) && !errors.As(err, &value) {
				t.Errorf("%T carries no numbers", err)
			}
		})
	}
}

func TestNoForce(t *testing.T) {
	c := over(1, 5, func(u float64) float64 { return 100 })
	c.Gap = []Reason{Slack, None, Slack, None, DeadPoint} // lone positions make no segment
	if _, err := Read(c, Holding); !errors.Is(err, ErrNoForce) {
		t.Errorf("got %v, want ErrNoForce", err)
	}
}

func TestForceWithoutFrictionIsHold(t *testing.T) {
	c := over(1, 3, func(u float64) float64 { return 100 + u })
	for _, p := range []Phase{Holding, Lifting, Lowering} {
		if got := c.Force(p)[2]; got != 101 {
			t.Errorf("%v: got %g N, want 101 N", p, got)
		}
	}
}

// A parabola's slope is exact at any spacing: q = 3s² + s has slope 6s + 1.
func TestLiftRatiosOfParabola(t *testing.T) {
	c := Curve{Travel: []float64{0, 0.1, 0.25, 0.3, 0.7}, Hold: make([]float64, 5), Load: make([]float64, 5)}
	for i, s := range c.Travel {
		c.Load[i] = 3*s*s + s
	}
	for i, got := range c.LiftRatios(nil) {
		near(t, "slope", got, 6*c.Travel[i]+1, 1e-12, "m/m")
	}
	c.Gap = []Reason{None, None, Slack, None, None}
	got := c.LiftRatios(make([]float64, 0, 5))
	near(t, "chord of a run of two", got[0], (c.Load[1]-c.Load[0])/0.1, 1e-12, "m/m")
	near(t, "gap", got[2], 0, 0, "m/m")
	c.Load = nil
	near(t, "no load column", c.LiftRatios(got)[0], 0, 0, "m/m")
}

func TestReasonAndPhaseNames(t *testing.T) {
	if got := DeadPoint.String() + ", " + Reason(99).String() + ", " + Lowering.String(); got != "dead point, out of reach, lowering" {
		t.Error(got)
	}
}

func TestErrorsNameTheNumbers(t *testing.T) {
	m := Measurement{"arm", 0.8, -0.01, "m"}
	for _, tt := range []struct {
		err  error
		want string
	}{
		{&MeasurementError{m}, `profile: measurement "arm" is 0.8 ± -0.01 m; the value must be finite and the ± zero or more`},
		{&TooManyError{1001, 1000}, "profile: 1001 measurements carry a ±, at most 1000 can be drawn; drop the ± of those that matter least"},
		{&MatchError{Flatness}, "profile: loads cannot be matched by flatness; match by the mean force, the peak force or the mean force in one third"},
		{&FewDrawsError{Draws: 30}, "profile: only 30 of 30 machines drawn within the ± can be put together, 40 are needed"},
		{&FewDrawsError{100, 90, &Failure{Err: ErrNoForce}}, "profile: only 10 of 100 machines drawn within the ± can be put together, 40 are needed; measure again or narrow the ± (first failure: " + ErrNoForce.Error() + ")"},
	} {
		if got := tt.err.Error(); got != tt.want {
			t.Errorf("got  %s\nwant %s", got, tt.want)
		}
	}
}
