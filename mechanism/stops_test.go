package mechanism

import (
	"errors"
	"math"
	"regexp"
	"strings"
	"testing"

	"steelyard/planar"
)

// readable fails unless the error is one sentence a coach can use: what, where,
// a cure after a semicolon, and no bare Go value.
func readable(t *testing.T, err error) {
	t.Helper()
	text := err.Error()
	if len(text) < 40 || !strings.Contains(text, "; ") || strings.Contains(text, "\n") || strings.Contains(text, "%!") {
		t.Errorf("not a readable sentence: %q", text)
	}
	if regexp.MustCompile(`mechanism\.|<nil>|\{|0x`).MatchString(text) {
		t.Errorf("Go leaks into the sentence: %q", text)
	}
}

// stopIn returns the first stop of the machine's sweep.
func stopIn(t *testing.T, m Machine) *Stop {
	t.Helper()
	sw, err := mustCompile(t, m).Sweep(41)
	var stop *Stop
	if errors.As(err, &stop) {
		return stop
	}
	for i, s := range sw.Stops {
		if s != nil {
			if sw.Hold[i] != 0 || sw.Lift[i] != 0 || sw.Lower[i] != 0 {
				t.Errorf("position %d has a stop and a force of %g N", i, sw.Hold[i])
			}
			return s
		}
	}
	t.Fatal("it has no stop")
	return nil
}

func TestStopsOnTheWay(t *testing.T) {
	for _, row := range []struct {
		name string
		m    Machine
		kind StopKind
		part string
		at   float64 // driver, rad or m; NaN where only the kind is known beforehand
		tol  float64
	}{
		{"four-bar past its toggle", pastToggle(), DeadPoint, `link "crank"`, math.Pi - math.Acos((1+0.64-2.56)/1.6) - float64(70*planar.Degree), 1},
		{"slider out of reach", outOfRail(), DeadPoint, `link "rod"`, math.NaN(), 0},
		{"contact on the axis", onAxis(), DeadPoint, "contact", -0.5, 1e-12},
		{"output turns back", turningBack(), DeadPoint, "contact", math.NaN(), 0},
		{"rope pushed", pushedRope(), RopeSlack, `rope "main"`, 0, 1e-12},
		{"rope off its drum", offDrum(), RopeOff, `rope "main"`, float64(30 * planar.Degree), 0.03},
		{"rope off its drum after a whole turn", offDrumLater(), RopeOff, `rope "main"`, float64(390 * planar.Degree), 0.2},
		{"rope lifts off its sheave", offSheave(), RopeOff, `rope "main"`, math.Asin(1.1 / 1.2), 0.05},
		{"sheaves meet", meetingSheaves(), RopeThrough, `rope "main"`, 0.3, 0.02},
		{"jammed carriage", jammed(), Binds, "machine", 0, 1e-12},
		{"gas spring at its end", spentSpring(), SpringSpent, `element "element"`, -0.25, 0.02},
		{"triad out of reach", triadOut(), OutOfReach, `link "connecting link"`, math.NaN(), 0},
	} {
		t.Run(row.name, func(t *testing.T) {
			stop := stopIn(t, row.m)
			readable(t, stop)
			if stop.Kind != row.kind || !strings.Contains(stop.Part, row.part) {
				t.Errorf("got %q (%s), want kind %q of %s", stop, stop.Part, row.kind, row.part)
			}
			if !math.IsNaN(row.at) && row.kind != DeadPoint {
				near(t, "driver", stop.Driver, row.at, row.tol)
			}
			if !stop.Place.Finite() || stop.Place.Norm() > 5 {
				t.Errorf("place %v is not on the machine", stop.Place)
			}
		})
	}
}

func TestGapKeepsTheRest(t *testing.T) {
	// Past a stop the rest of the travel is a gap; before it the curve stands.
	sw, err := mustCompile(t, pastToggle()).Sweep(41)
	if err != nil {
		t.Fatal(err)
	}
	gap := false
	for i := range sw.Hold {
		if sw.Stops[i] == nil && gap {
			t.Fatalf("position %d has a force beyond the stop", i)
		}
		if sw.Stops[i] != nil {
			gap = true
			if sw.Posed[i] {
				t.Errorf("position %d is posed beyond the dead point", i)
			}
		}
	}
	if sw.Stops[0] != nil || !gap {
		t.Error("the start stands and the end is a gap")
	}
}

func TestContactTurnsBack(t *testing.T) {
	// Driven at the crank, the slider of a slider-crank turns at both dead
	// centres: 0 and 180 deg of the crank. A bend is none.
	m := sliderCrank(0.3, 0.9, 0, 50*planar.Degree, +1)
	m.Drive = Drive{Joint: 0, From: -2, To: 3}
	sw, err := mustCompile(t, m).Sweep(50)
	if err != nil {
		t.Fatal(err)
	}
	for i, q := range sw.Driver {
		inside := q > -float64(50*planar.Degree) && q < float64(130*planar.Degree)
		if inside != (sw.Stops[i] == nil) {
			t.Errorf("driver %.3f rad: stop %v", q, sw.Stops[i])
		}
	}
	near(t, "inner dead centre, rad", sw.Stops[0].Driver, -float64(50*planar.Degree), 1e-9)
	near(t, "outer dead centre, rad", sw.Stops[49].Driver, float64(130*planar.Degree), 1e-9)

	round := lever(0.6, 1, 30)
	round.Drive = Drive{Joint: 0, From: -5, To: 5}
	mustSweep(t, round, 6) // 115 deg from one position to the next
}

func TestSweepStartsBeyondReach(t *testing.T) {
	m := pastToggle()
	m.Drive = Drive{Joint: 3, From: -1.5, To: -2}
	_, err := mustCompile(t, m).Sweep(11)
	var stop *Stop
	if !errors.As(err, &stop) {
		t.Fatalf("got %v, want a stop", err)
	}
	readable(t, err)
}

func TestStateRestsAfterStop(t *testing.T) {
	// After a stop the state is whole: it balances and can go back.
	m := pastToggle()
	st := mustCompile(t, m).NewState()
	want := mustForce(t, st, Hold)
	if err := st.MoveTo(-2); err == nil {
		t.Fatal("it passed the dead point")
	}
	mustForce(t, st, Hold)
	if err := st.MoveTo(0); err != nil {
		t.Fatal(err)
	}
	near(t, "force back at the measured pose, N", mustForce(t, st, Hold), want, 1e-6)
}

func TestDriverThatIsNoNumber(t *testing.T) {
	st := mustCompile(t, lever(0.6, 1, 30)).NewState()
	for _, q := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if err := st.MoveTo(q); err == nil {
			t.Errorf("went to %g", q)
		}
	}
	for n := range 2 {
		if _, err := mustCompile(t, lever(0.6, 1, 30)).Sweep(n); err == nil {
			t.Errorf("a sweep of %d positions: got no error", n)
		}
	}
}
