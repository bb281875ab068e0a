package checks

import (
	"math"

	"steelyard/mechanism"
	"steelyard/planar"
)

// cammed is a lever with a cam on its axis that winds up a stack's rope.
func cammed(name string, cam planar.Outline, to planar.Angle) machine {
	axis, reach := vec{Y: 1}, vec{X: 0.5, Y: 0.2}
	m := pullLever(name, axis, reach, 0, to)
	s := stackOn(2, vec{X: 0.68, Y: 0.7}, 55)
	s.hang(&m)
	m.Ropes = []mechanism.Rope{rope("main",
		mechanism.Station{Name: "cam", Link: 1, At: axis, Outline: cam, Side: planar.Left, Anchor: -110 * deg},
		sheave("top sheave", 0, vec{X: 0.6, Y: 2.2}, 0.08, planar.Right), s.top)}
	return m
}

// oval returns the same ellipse for Steelyard and for the engines.
func oval(center vec, along, across float64, tilt planar.Angle) (planar.Outline, Shape) {
	e, err := planar.EllipseFromAxes(center, along, across, tilt)
	if err != nil {
		panic(err)
	}
	return e, Shape{Ellipse: &Ellipse{Center: pointOf(center), Along: along, Across: across, Turned: float64(tilt)}}
}

func ovalCam() bench {
	cam, shape := oval(vec{X: 0.02, Y: -0.03}, 0.17, 0.08, 25*deg)
	return bench{machine: cammed("oval cam", cam, -150*deg), shapes: map[planar.Outline]Shape{cam: shape}, engines: []Engine{Shortest}}
}

func eccentricCam() bench {
	cam := planar.Circle{Center: vec{X: -0.05, Y: 0.03}, Radius: 0.12}
	return bench{machine: cammed("eccentric round cam", cam, -150*deg), engines: []Engine{Shortest}}
}

// hollowCam is a plate with straight edges and a notch that the rope bridges.
func hollowCam() bench {
	corners := []vec{
		{X: 0.15, Y: -0.02}, {X: 0.12, Y: 0.09}, {X: 0.03, Y: 0.14}, {X: -0.02, Y: 0.06},
		{X: -0.1, Y: 0.1}, {X: -0.12, Y: -0.03}, {X: -0.05, Y: -0.11}, {X: 0.07, Y: -0.1},
	}
	cam, err := planar.Polygon(corners...)
	if err != nil {
		panic(err)
	}
	return bench{machine: cammed("cornered cam with a hollow", cam, -149*deg), shapes: map[planar.Outline]Shape{cam: {Trace: points(corners)}}, engines: []Engine{Shortest}}
}

func points(list []vec) []Point {
	out := make([]Point, len(list))
	for i, v := range list {
		out[i] = pointOf(v)
	}
	return out
}

// ovalRedirect leads the rope over a fixed oval post, on either side.
func ovalRedirect(name string, mirror float64) bench {
	m := redirect(name, mirror)
	post, shape := oval(vec{}, 0.18, 0.09, 35*deg)
	m.Ropes[0].Route[1].Outline = post
	m.Ropes[0].Route[1].At = vec{X: 0.05 * mirror, Y: 1.5}
	return bench{machine: m, shapes: map[planar.Outline]Shape{post: shape}, engines: []Engine{Shortest}}
}

// camToCam ties an oval cam on the lever to an oval cam on a second, loaded
// lever; the rope winds off one and on to the other.
func camToCam(name string, side planar.Side, anchor planar.Angle) bench {
	axis, reach, pivot := vec{Y: 1}, vec{X: 0.5, Y: 0.2}, vec{X: 0.9, Y: 1.2}
	first, shape1 := oval(vec{X: 0.02}, 0.16, 0.1, 10*deg)
	second, shape2 := oval(vec{Y: 0.03}, 0.2, 0.12, -60*deg)
	m := pullLever(name, axis, reach, 0, 80*deg)
	load := pivot.Add(vec{X: -0.6 * float64(side), Y: -0.1})
	m.Links = append(m.Links, bar("second lever", 5, pivot, load))
	m.Joints = append(m.Joints, pin("second axis", 0, 2, pivot))
	m.Weights = []mechanism.Weight{plates(2, load, 40)}
	m.Ropes = []mechanism.Rope{rope("belt",
		mechanism.Station{Name: "first cam", Link: 1, At: axis, Outline: first, Side: planar.Right, Anchor: 200 * deg},
		mechanism.Station{Name: "second cam", Link: 2, At: pivot, Outline: second, Side: side, Anchor: anchor},
	)}
	return bench{machine: m, shapes: map[planar.Outline]Shape{first: shape1, second: shape2}, engines: []Engine{Shortest}}
}

// smooth is a rounded cam that no simple curve names. A coach traces it at 72
// points; the engine gets it in 20000.
func smooth(n int) []vec {
	list := make([]vec, n)
	for i := range list {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		s2, c2 := 2*s*c, c*c-s*s
		h, dh := 0.12+0.03*c+0.01*c2, -0.03*s-0.02*s2
		list[i] = vec{X: h*c - dh*s, Y: h*s + dh*c}
	}
	return list
}

func tracedCam() bench {
	cam, err := planar.TracedThrough(smooth(72))
	if err != nil {
		panic(err)
	}
	return bench{machine: cammed("rounded cam traced at 72 points", cam, -150*deg), shapes: map[planar.Outline]Shape{cam: {Trace: points(smooth(20000))}}, engines: []Engine{Shortest}, allowed: traced}
}

func camMachines() []bench {
	return []bench{
		ovalCam(), eccentricCam(), hollowCam(), tracedCam(),
		ovalRedirect("oval post on the left", +1), ovalRedirect("oval post on the right", -1),
		camToCam("oval cam to oval cam, crossed", planar.Left, 20*deg), camToCam("oval cam to oval cam, open", planar.Right, -30*deg),
	}
}
