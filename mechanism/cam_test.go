package mechanism

import (
	"math"
	"testing"

	"steelyard/planar"
)

// camOn is an arm about the origin with the outline fixed to it, drawn by a
// rope that runs from the cam up to a fixed point, over it and down to a stack:
// positive turns wind the rope on. The rope's force is then weight · moment arm.
func camOn(outline planar.Outline, over vec, mass float64) Machine {
	end := vec{X: over.X, Y: over.Y - 1.2}
	stack, guide, plates := stackOn(2, end.X, end.Y, mass)
	return Machine{
		Links:  []Link{{Name: "arm"}, stack},
		Joints: []Joint{{Name: "axis", A: Ground, B: 1}, guide},
		Ropes: []Rope{{Name: "main", Route: Route{
			{Name: "cam", Link: 1, Outline: outline, Side: planar.Right, Anchor: -90 * planar.Degree},
			{Name: "over", Link: Ground, At: over},
			{Name: "stack", Link: 2, At: end},
		}}},
		Weights: []Weight{plates},
		Drive:   Drive{Joint: 0, From: 0, To: 1.8},
		Contact: Contact{Name: "grip", Link: 1, At: vec{X: 0.5}},
	}
}

// armOf finds, by bisection, the moment arm about the origin of the line from p
// that touches a convex outline of support h turned by q, leaving it on the
// line's right: n·p = h(n), n a quarter turn clockwise of the way to p.
func armOf(h func(phi float64) float64, p vec, q float64) float64 {
	gap := func(normal float64) float64 { return planar.Polar(1, planar.Angle(normal)).Dot(p) - h(normal-q) }
	// Inside p's own direction the line passes the outline, a quarter turn on it does not reach it.
	inside := float64(p.Angle())
	lo, hi := inside, inside+math.Pi/2
	for range 200 {
		if mid := (lo + hi) / 2; gap(mid) > 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return h(hi - q)
}

// compareArms holds every position of the cam machine against the support.
func compareArms(t *testing.T, outline planar.Outline, h func(phi float64) float64, tol float64) {
	t.Helper()
	over := vec{X: -0.7, Y: 0.9}
	sw := mustSweep(t, camOn(outline, over, 50), 37)
	for i, q := range sw.Driver {
		arm := armOf(h, over, q)
		near(t, "force · 0.5 m / weight, m", sw.Hold[i]*0.5/(50*Gravity), arm, tol)
		near(t, "lift ratio", sw.LiftRatio[i], arm/0.5, 2*tol)
	}
}

func TestEccentricCircle(t *testing.T) {
	// Support of a circle of radius r about c: r + c·n, textbook.
	const r, ex, ey = 0.12, 0.05, -0.03
	compareArms(t, planar.Circle{Center: vec{X: ex, Y: ey}, Radius: r},
		func(phi float64) float64 { return r + ex*math.Cos(phi) + ey*math.Sin(phi) }, 1e-12)
}

func TestEccentricCircleByTangents(t *testing.T) {
	// The same by another road: centre turned to C, tangent from p touches at
	// asin(r/d) from the line of centres; arm is the distance of that line.
	const r = 0.12
	over, center := vec{X: -0.7, Y: 0.9}, vec{X: 0.05, Y: -0.03}
	sw := mustSweep(t, camOn(planar.Circle{Center: center, Radius: r}, over, 50), 19)
	for i, q := range sw.Driver {
		c := planar.TurnThenShift(planar.Angle(q), vec{}).Point(center)
		to := over.Sub(c)
		line := planar.Polar(1, to.Angle()-planar.Angle(math.Asin(r/to.Norm())))
		near(t, "arm, m", sw.Hold[i]*0.5/(50*Gravity), math.Abs(line.Cross(over)), 1e-12)
	}
}

func TestEllipseCam(t *testing.T) {
	// Support of an ellipse: √(a² cos² + b² sin²), semi-axes 125 and 78 mm.
	const a, b, tilt = 0.125, 0.078, 0.4
	oval, err := planar.EllipseFromAxes(vec{X: 0.02, Y: 0.01}, a, b, tilt)
	if err != nil {
		t.Fatal(err)
	}
	compareArms(t, oval, func(phi float64) float64 {
		return 0.02*math.Cos(phi) + 0.01*math.Sin(phi) + math.Hypot(a*math.Cos(phi-tilt), b*math.Sin(phi-tilt))
	}, 1e-11)
}

func TestSpiralCam(t *testing.T) {
	// Log spiral r = r₀ exp(kφ): its tangent makes the constant angle ψ = acot k
	// with the radius, so the normal lies at φ - (π/2 - ψ) = φ - atan k and the
	// support is r sin ψ: 62 exp(0.22 φ) mm over 230 deg, as in the reference.
	const r0, k = 0.062, 0.22
	cam, err := planar.LogSpiral(planar.Spiral{Radius: r0, Growth: k, To: 230 * planar.Degree})
	if err != nil {
		t.Fatal(err)
	}
	lag := math.Atan(k)
	h := func(phi float64) float64 { return r0 * math.Exp(k*(phi+lag)) / math.Hypot(1, k) }
	// From -6 to 70 deg the rope leaves the spiral itself, not its straight back.
	over := vec{X: -0.7, Y: 0.9}
	m := camOn(cam, over, 50)
	m.Drive = Drive{Joint: 0, From: float64(-6 * planar.Degree), To: float64(70 * planar.Degree)}
	sw := mustSweep(t, m, 21)
	for i, q := range sw.Driver {
		near(t, "arm, m", sw.Hold[i]*0.5/(50*Gravity), armOf(h, over, q), 1e-9) // the outline is a curve through points of the spiral
	}
}

func TestTracedCamWithHollow(t *testing.T) {
	// A rope bridges a hollow: its support is the largest n·v over the corners,
	// whatever lies between them. The fourth corner is drawn in.
	corners := []vec{{X: 0.10, Y: -0.06}, {X: 0.12, Y: 0.05}, {X: 0.02, Y: 0.13}, {X: 0.00, Y: 0.04}, {X: -0.09, Y: 0.07}, {X: -0.10, Y: -0.05}}
	cam, err := planar.Polygon(corners...)
	if err != nil {
		t.Fatal(err)
	}
	if len(cam.Hollows()) != 1 {
		t.Fatalf("got %d hollows, want 1", len(cam.Hollows()))
	}
	compareArms(t, cam, func(phi float64) float64 {
		most := math.Inf(-1)
		for _, v := range corners {
			most = math.Max(most, planar.Polar(1, planar.Angle(phi)).Dot(v))
		}
		return most
	}, 1e-11)
}

func TestSmoothTracedCam(t *testing.T) {
	// Points on an ellipse traced at 48 places give the ellipse's force to what
	// such a trace can know: 0.2 % here.
	const a, b, n = 0.125, 0.1, 48
	points := make([]vec, n)
	for i := range points {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		points[i] = vec{X: a * cos, Y: b * sin}
	}
	cam, err := planar.TracedThrough(points)
	if err != nil {
		t.Fatal(err)
	}
	compareArms(t, cam, func(phi float64) float64 { return math.Hypot(a*math.Cos(phi), b*math.Sin(phi)) }, 2e-4*a)
}

func TestCamRadiusSetsTheLoad(t *testing.T) {
	// Common practice, no source: a cam's radius sets the load position by
	// position, so the force follows the rope's distance from the axis.
	oval, err := planar.EllipseFromAxes(vec{}, 0.15, 0.09, 0.3)
	if err != nil {
		t.Fatal(err)
	}
	m := camOn(oval, vec{X: -0.7, Y: 0.9}, 50)
	st := mustCompile(t, m).NewState()
	sw := mustSweep(t, m, 19)
	for i, q := range sw.Driver {
		if err := st.MoveTo(q); err != nil {
			t.Fatal(err)
		}
		_, radius := st.Radius(0, 0)
		near(t, "force, N", sw.Hold[i], 50*Gravity*radius/0.5, 1e-9)
	}
}

func TestCamWithWholeTurns(t *testing.T) {
	// A drum that winds two turns on: the rope it takes up is its radius times
	// the angle, and the arm stays the radius.
	m := camOn(planar.Circle{Radius: 0.06}, vec{X: -0.7, Y: 0.9}, 50)
	m.Ropes[0].Route[0].Turns = 3
	m.Drive = Drive{Joint: 0, From: 0, To: 4 * math.Pi * 0.99}
	m.Ropes[0].Route[2].At.Y = -0.9
	sw := mustSweep(t, m, 51)
	for i, q := range sw.Driver {
		near(t, "stack, m", sw.Pose(i, 2).Shift.Y, 0.06*q, 1e-11)
		near(t, "force, N", sw.Hold[i], 50*Gravity*0.06/0.5, 1e-9)
	}
}
