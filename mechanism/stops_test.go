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

func pastToggle() Machine {
	m := nortonFourBar(70 * planar.Degree)
	m.Drive = Drive{Joint: 3, From: 0, To: -2}
	m.Contact = Contact{Name: "rocker pin", Link: 3, At: m.Joints[2].At}
	return m
}

func outOfRail() Machine {
	m := sliderCrank(0.3, 0.35, 0.2, 20*planar.Degree, +1)
	m.Drive = Drive{Joint: 0, From: 0, To: -2}
	return m
}

func onAxis() Machine {
	m := lever(0.5, 0, 20)
	return m
}

// pushedRope has its stack above the handle's pull: it would have to be pushed up.
func pushedRope() Machine {
	m := hoist(40, vec{Y: -0.5}, vec{X: 0.5, Y: 1}, 0, Station{Name: "top", Link: Ground, At: vec{Y: 1}})
	m.Elements = []Element{{Name: "lift", Law: Steady{-900}, Route: Route{{Name: "floor", Link: Ground, At: vec{Y: -2}}, {Name: "load", Link: 1, At: vec{Y: -0.5}}}}}
	return m
}

// offDrum unwinds: 30 deg of rope lie on the drum as measured.
func offDrum() Machine {
	m := camOn(planar.Circle{Radius: 0.1}, vec{X: -1, Y: 0.1}, 50) // the rope leaves the top of the drum level
	m.Ropes[0].Route[0].Anchor, m.Ropes[0].Route[0].Side = 60*planar.Degree, planar.Left
	m.Drive = Drive{Joint: 0, From: 0, To: 1}
	return m
}

func offDrumLater() Machine {
	m := offDrum()
	m.Ropes[0].Route[0].Turns = 1
	m.Ropes[0].Route[2].At.Y = 0
	m.Drive.To = 7.5
	return m
}

// offSheave draws the rope up, away from the sheave above which it once bent:
// an arm of 1.2 m whose tip passes the height at which the rope runs straight.
func offSheave() Machine {
	end := vec{X: -1, Y: 1.1}
	stack, guide := slide("block", 2, end, 0)
	m := lever(0, 1.2, 0)
	m.Links, m.Joints, m.Weights = append(m.Links, stack), append(m.Joints, guide), nil
	m.Elements = []Element{{Name: "pull", Law: Steady{200}, Route: Route{{Name: "wall", Link: Ground, At: vec{X: -3, Y: 1.1}}, {Name: "block", Link: 2, At: end}}}}
	m.Ropes = []Rope{{Name: "main", Route: Route{
		{Name: "tip", Link: 1, At: vec{X: 1.2}},
		{Name: "sheave", Link: Ground, At: vec{X: 0, Y: 1}, Outline: planar.Circle{Radius: 0.1}, Side: planar.Left},
		{Name: "block", Link: 2, At: end},
	}}}
	m.Drive = Drive{Joint: 0, From: 0, To: 1.4}
	return m
}

// meetingSheaves brings a moving sheave against a fixed one, between which the
// rope crosses over.
func meetingSheaves() Machine {
	load, guide := slide("load", 1, vec{X: 0.05, Y: 0.4}, math.Pi/2)
	handle, rail := slide("handle", 2, vec{X: 0.25, Y: 0.5}, -math.Pi/2)
	return Machine{
		Links: []Link{load, handle}, Joints: []Joint{guide, rail},
		Ropes: []Rope{{Name: "main", Route: Route{
			{Name: "becket", Link: Ground, At: vec{Y: 1.5}},
			{Name: "lower sheave", Link: 1, At: vec{X: 0.05, Y: 0.6}, Outline: planar.Circle{Radius: 0.05}, Side: planar.Left},
			{Name: "upper sheave", Link: Ground, At: vec{X: 0.05, Y: 1}, Outline: planar.Circle{Radius: 0.05}, Side: planar.Right},
			{Name: "handle", Link: 2, At: vec{X: 0.25, Y: 0.5}},
		}}},
		Weights: []Weight{{Name: "plates", Link: 1, At: vec{X: 0.05, Y: 0.4}, Mass: 20, Load: true}},
		Drive:   Drive{Joint: 0, From: 0, To: 0.6},
		Contact: Contact{Name: "handle", Link: 2, At: vec{X: 0.25, Y: 0.5}},
	}
}

func jammed() Machine {
	carriage, post := slide("carriage", 1, vec{}, math.Pi/2)
	post.Friction = JointFriction{Coefficient: 0.45, Bearing: 0.25}
	return Machine{
		Links: []Link{carriage}, Joints: []Joint{post},
		Weights: []Weight{{Name: "plates", Link: 1, Mass: 40, Load: true}},
		Drive:   Drive{Joint: 0, From: 0, To: 0.5},
		Contact: Contact{Name: "handle", Link: 1, At: vec{X: 0.3}},
	}
}

func spentSpring() Machine {
	m := pulled(GasSpring{Force: 400, Extended: 0.5, Column: 0.25}, 0.5)
	m.Drive = Drive{Joint: 0, From: 0, To: -0.4}
	return m
}

func triadOut() Machine {
	m := stephensonIII(75 * planar.Degree)
	m.Drive = Drive{Joint: 6, From: 0, To: 2}
	return m
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
