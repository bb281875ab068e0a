package demo

import (
	"math"
	"testing"

	"steelyard/mechanism"
	"steelyard/planar"
)

const g = mechanism.Gravity

// deg and mm turn what the sheets say into rad and m.
func deg(a float64) float64 { return a * math.Pi / 180 }

func mm(x, y float64) planar.Vec { return planar.Vec{X: x / 1000, Y: y / 1000} }

// across returns the distance in m from p to the line through a and b.
func across(p, a, b planar.Vec) float64 {
	return math.Abs(p.Sub(a).Cross(b.Sub(a).Unit()))
}

// turned returns v turned counter-clockwise by a in rad.
func turned(v planar.Vec, a float64) planar.Vec {
	sin, cos := math.Sincos(a)
	return planar.Vec{X: v.X*cos - v.Y*sin, Y: v.X*sin + v.Y*cos}
}

// TestByHand holds machines of the room against closed forms worked from the
// numbers in their sheets, none from the program. The rules are those of any
// book of statics, such as J. L. Meriam, L. G. Kraige, Engineering Mechanics:
// Statics (from memory): the law of the lever ΣM = 0, the incline W·sin α, the
// tackle W/n, the capstan T·exp(μβ), two-force members.
func TestByHand(t *testing.T) {
	for _, c := range []struct {
		file   string
		driver float64 // rad or m from the measured pose
		sense  mechanism.Sense
		want   float64 // N
		tol    float64 // N, far below what a scale shows
	}{
		{"halyard-pulldown.yaml", 0, mechanism.Hold, halyard(0), 1e-6},
		{"halyard-pulldown.yaml", deg(30), mechanism.Hold, halyard(deg(30)), 1e-6},
		{"bow-press.yaml", deg(20), mechanism.Hold, bow(deg(20)), 1e-6},
		{"dumb-bell-curl.yaml", deg(40), mechanism.Hold, 8 * g * turned(mm(60, -335), deg(40)).X / mm(60, -335).Norm(), 1e-6},
		{"stretcher-press.yaml", 0.3, mechanism.Hold, (52 + 100) * g * math.Sin(deg(45)), 1e-6},
		{"gate-squat.yaml", deg(-33), mechanism.Hold, gate(deg(-33)), 1e-6},
		{"gate-squat.yaml", 0, mechanism.Hold, gate(0), 1e-6},
		{"carriage-press.yaml", 0, mechanism.Hold, carriage(), 1e-6},
		{"landing-press.yaml", 0.2, mechanism.Hold, (21.5+20-14)*g + (0.735+0.2)*9.6*g, 1e-6}, // what hangs clear of the floor counts
		{"sculler-slide.yaml", 0, mechanism.Hold, 60 + 1.5*(400-330), 1e-6},
		{"sculler-slide.yaml", 0.45, mechanism.Hold, 60 + 1.5*(400+450-330), 1e-6},
		{"slip-hack-squat.yaml", 0, mechanism.Hold, slip(), 1e-6},
		{"span-bridge.yaml", 0, mechanism.Hold, span(), 1e-6},
		{"wing-raise.yaml", deg(60), mechanism.Hold, wing(deg(60)), 1e-6},
		{"locker-press.yaml", 0, mechanism.Hold, locker(), 1e-6},
		{"gunwale-abduction.yaml", 0, mechanism.Hold, 300 * across(mm(-60, 90), mm(60, 250), mm(300, -20)) / mm(420, 55).Norm(), 1e-6},
		{"kick-extension.yaml", 0, mechanism.Hold, kick(), 1e-6},
		{"painter-row.yaml", 0, mechanism.Hold, 30 * g * alongPath(mm(640, 700), mm(90, 820), mm(1190, 420), 55, -1), 1e-6},
		{"bollard-pressdown.yaml", 0, mechanism.Lift, 11.2 * g * math.Exp(0.17*math.Pi) * 400 / mm(6000, 400000).Norm(), 1e-6},
		{"bollard-pressdown.yaml", 0, mechanism.Lower, 11.2 * g * math.Exp(-0.17*math.Pi) * 400 / mm(6000, 400000).Norm(), 1e-6},
		{"quarter-tackle.yaml", 0, mechanism.Hold, 44.2 / 4 * g * quarterPath(), 1e-3},
		{"quarter-tackle.yaml", 0, mechanism.Lift, quarterLift() * quarterPath(), 1e-3},
	} {
		e := named(t, c.file)
		st := e.model.NewState()
		if err := st.MoveTo(c.driver); err != nil {
			t.Fatal(err)
		}
		got, err := st.Force(c.sense)
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("%-24s at %6.3f: by hand %8.3f N, computed %8.3f N", c.file, c.driver, c.want, got)
		if !(math.Abs(got-c.want) <= c.tol) {
			t.Errorf("%s at %g, sense %v: got %.9g N, want %.9g N", c.file, c.driver, c.sense, got, c.want)
		}
	}
}

// halyard: ΣM about the axle, arm turned by a.
func halyard(a float64) float64 {
	plates, arm, grip := mm(530, -140), mm(100, -10), mm(-720, 120)
	return g * (40*turned(plates, a).X + 24*turned(arm, a).X) / grip.Norm()
}

// bow: the same in a plane that leans 12°, in which only cos 12° of the weight
// acts.
func bow(a float64) float64 {
	plates, arm, grip := mm(390, -500), mm(130, -400), mm(30, -750)
	return g * math.Cos(deg(12)) * (30*turned(plates, a).X + 13.5*turned(arm, a).X) / grip.Norm()
}

// gate: the frame does not turn, so its weight and the plates' act as if at the
// pins; per turn of the arms of 0.9 m all of it rises by 0.9·cos a.
func gate(a float64) float64 {
	moment := (14+40)*0.9 + 6*0.45 + 8*0.22 - 24.6*0.45 // kg·m
	return g * math.Cos(a) * moment / 0.9
}

// carriage: ΣM about the crank's axle gives the pull in the rod, whose own
// weight counts half at each end; its level part meets the feet.
func carriage() float64 {
	axle, pin, truck := mm(1350, 420), mm(1230, 760), mm(780, 620)
	moment := g * (120*(1.350-1.020) + 14*(1.350-1.170) + 4/2*(1.350-1.230))
	rod := moment / across(axle, truck, pin)
	return rod * pin.Sub(truck).Unit().X
}

// slip: the incline, and the band's neo-Hookean pull A·G·(λ - 1/λ²) along it.
// Source of the law: see mechanism.Band.
func slip() float64 {
	rail := planar.Polar(1, planar.Angle(deg(118)))
	stretch := mm(-470, 560).Sub(mm(-130, 60))
	l := stretch.Norm() / 0.520
	band := 4 * 0.028 * 0.0045 * 0.4e6 * (l - 1/(l*l))
	return (36+40)*g*rail.Y + band*stretch.Unit().Dot(rail)
}

// span: ΣM about the axle; the band hangs plumb and is 220 mm long, between 0 N
// at 200 mm and 110 N at 250 mm.
func span() float64 {
	band := 110. * 20 / 50
	moment := g*(80*(1.130-0.420)+17*(1.130-0.560)) + band*(1.130-0.330)
	return moment / mm(1130-150, 290-160).Norm()
}

// wing: ΣM about the axle, spring wound 35° at rest; the arm balances half-way
// to the pad.
func wing(a float64) float64 {
	pad := mm(75, -280)
	spring := 0.22 * (a*180/math.Pi + 35)
	return (spring + 2.2*g*turned(pad, a).X/2) / pad.Norm()
}

// locker: the gas behind the rod is as long as stroke·in/(in - out), so that it
// gives both forces on the label (Boyle's law); ΣM about the axle.
func locker() float64 {
	axle, top, eye := mm(-480, 1150), mm(-160, 1890), mm(-130, 1190)
	column := 0.3 * 675 / (675 - 500)
	push := 500 * column / (column - (0.705 - eye.Sub(top).Norm()))
	return (push*across(axle, top, eye) + 11*g*(0.480-0.150)) / mm(650, 70).Norm()
}

// kick: the rope crosses from above the sheave (r) to below the disc (R): between
// centres d apart the line leans from theirs by asin((R + r)/d). Its distance
// from the axle, which lies 35 mm from the disc's middle, is the moment arm.
func kick() float64 {
	sheave, middle := mm(-780, 500), mm(-35, 640)
	between := middle.Sub(sheave)
	lean := math.Asin((0.105 + 0.050) / between.Norm())
	along := turned(between.Unit(), -lean)
	arm := 0.105 + along.Cross(mm(0, 640).Sub(middle)) // below the disc, left of the axle
	return g * (45*arm - 6.5*0.030) / mm(60, 350).Norm()
}

// alongPath returns the cosine between the path from hand to end and the rope
// from the hand to a sheave of radius r in mm, which it touches on the right hand
// (side -1) or left hand (+1) of the way there; below 0 the pull helps.
func alongPath(hand, end, sheave planar.Vec, r, side float64) float64 {
	way := sheave.Sub(hand)
	rope := turned(way.Unit(), side*math.Asin(r/1000/way.Norm()))
	return -rope.Dot(end.Sub(hand).Unit())
}

func quarterPath() float64 { return alongPath(mm(220, 1350), mm(760, 1380), mm(-647, 1330), 45, 1) }

// quarterLift: each sheave passes 97 % on, so the four parts that carry the yoke
// pull T, T/E, T/E², T/E³ and the hand T/E⁵. Unequal pulls tip the yoke against
// its guides, 300 mm apart, where μ is 0.1; the stack's own guides drag 6 N.
func quarterLift() float64 {
	const e = 0.97
	sum := 1 + 1/e + 1/(e*e) + 1/(e*e*e)
	tip := 0.135*(1/(e*e*e)-1) + 0.045*(1/(e*e)-1/e) // m, per T: parts 135 and 45 mm off the middle
	first := (44.2*g + 6) / (sum - 2*0.1*tip/0.300)
	return first / math.Pow(e, 5)
}

// TestLoadsThatMove holds what only shows in motion: the mass felt at the handle
// of a wheel of inertia I on a drum of radius r is I/r².
func TestLoadsThatMove(t *testing.T) {
	e := named(t, "regatta-wheel.yaml")
	path := mm(-1300, 110).Unit()
	want := (0.07 + 0.02) / (0.030 * 0.030) * path.X * path.X // the rope starts level
	if got := e.sweep.Mass[0]; math.Abs(got-want) > 1e-9*want {
		t.Errorf("mass felt at the catch: got %.9g kg, want %.9g kg", got, want)
	}
}

// TestPulldownHalvesTheStack: with the rope in line with the bar's way, half the
// stack is felt and it travels half as far (two parts carry it).
func TestPulldownHalvesTheStack(t *testing.T) {
	e := named(t, "tide-pulldown.yaml")
	most, ratio := 0.0, 0.0
	for i, f := range e.sweep.Hold {
		if f > most {
			most, ratio = f, e.sweep.LiftRatio[i]
		}
	}
	if want := 40 * g / 2; math.Abs(most-want) > 1e-3*want || math.Abs(ratio-0.5) > 1e-3 {
		t.Errorf("at most %.2f N at lift ratio %.4f; want %.2f N at 0.5", most, ratio, want)
	}
}

// TestRopeBridgesTheHollow: where the rope leaves the traced cam with normal n,
// its moment arm is the reach of the outermost traced point along n. Between
// points 40 mm apart a curve of radius 45 mm bulges by 40²/(8·45) = 4.4 mm; into
// the hollow, 18 mm deep, the rope does not go.
func TestRopeBridgesTheHollow(t *testing.T) {
	e := named(t, "bailer-pressdown.yaml")
	traced := [][2]float64{{70, 0}, {62, 38}, {38, 68}, {2, 82}, {-38, 84}, {-78, 68}, {-88, 40}, {-74, 12}, {-76, -18}, {-92, -48}, {-78, -82}, {-38, -92}, {6, -78}, {46, -44}}
	st := e.model.NewState()
	for i, q := range e.sweep.Driver {
		if err := st.MoveTo(q); err != nil {
			t.Fatal(err)
		}
		last := st.Spans(0)[1]
		n := turned(last.To.Sub(last.From).Unit(), math.Pi/2-q) // outwards, in the cam's own frame
		reach := 0.0
		for _, p := range traced {
			reach = math.Max(reach, mm(p[0], p[1]).Dot(n))
		}
		if got := e.sweep.Radius(i, 0, 2); got < reach-1e-9 || got > reach+0.0045 {
			t.Errorf("turned by %.0f°: the rope passes %.1f mm from the axle, want %.1f mm and up to 4.5 more", q*180/math.Pi, 1000*got, 1000*reach)
		}
	}
}
