package checks

import (
	"steelyard/mechanism"
	"steelyard/planar"
)

// stack is a weight stack on an upright guide, its rope fixed at its top.
type stack struct {
	link   mechanism.Link
	guide  mechanism.Joint
	weight mechanism.Weight
	top    mechanism.Station
}

func stackOn(link mechanism.LinkID, top vec, mass float64) stack {
	return stack{
		block("stack", 2, top.Add(vec{Y: -0.2})),
		guide("stack guide", 0, link, top, 90*deg),
		plates(link, top.Add(vec{Y: -0.3}), mass),
		tie("stack", link, top),
	}
}

// hang adds the stack to the machine.
func (s stack) hang(m *machine) {
	m.Links = append(m.Links, s.link)
	m.Joints = append(m.Joints, s.guide)
	m.Weights = append(m.Weights, s.weight)
}

func tie(name string, link mechanism.LinkID, at vec) mechanism.Station {
	return mechanism.Station{Name: name, Link: link, At: at}
}

func sheave(name string, link mechanism.LinkID, at vec, radius float64, side planar.Side) mechanism.Station {
	return mechanism.Station{Name: name, Link: link, At: at, Outline: planar.Circle{Radius: radius}, Side: side}
}

func rope(name string, route ...mechanism.Station) mechanism.Rope {
	return mechanism.Rope{Name: name, Route: route}
}

// pullLever is a lever about axis with its tip at the end of reach, gripped
// four fifths of the way out.
func pullLever(name string, axis, reach vec, from, to planar.Angle) machine {
	return machine{
		Name:    name,
		Links:   []mechanism.Link{bar("lever", 4, axis, axis.Add(reach))},
		Joints:  []mechanism.Joint{pin("axis", 0, 1, axis)},
		Drive:   turning(0, from, to),
		Contact: mechanism.Contact{Name: "grip", Link: 1, At: axis.Add(reach.Scale(0.8))},
	}
}

// redirect is test problem (b) of the reference figures, or its mirror image.
func redirect(name string, mirror float64) machine {
	turn, side := planar.Angle(mirror), planar.Side(mirror)
	reach := planar.Polar(0.5, 60*deg)
	axis, top := vec{X: 0.6 * mirror, Y: 0.4}, vec{X: -0.1 * mirror, Y: 0.5}
	m := pullLever(name, axis, vec{X: reach.X * mirror, Y: reach.Y}, 0, -90*deg*turn)
	s := stackOn(2, top, 40)
	s.hang(&m)
	tip := axis.Add(vec{X: reach.X * mirror, Y: reach.Y})
	m.Ropes = []mechanism.Rope{rope("main", tie("tip", 1, tip), sheave("top sheave", 0, vec{Y: 1.5}, 0.1, side), s.top)}
	return m
}

// crossed runs under a low sheave and over a high one, so that the rope between
// them crosses their line of centres.
func crossed() machine {
	axis, reach := vec{X: 1, Y: 0.2}, vec{X: -0.2, Y: 0.6}
	m := pullLever("rope under one sheave, over the next", axis, reach, 30*deg, -50*deg)
	s := stackOn(2, vec{X: -0.62, Y: 0.6}, 35)
	s.hang(&m)
	m.Ropes = []mechanism.Rope{rope("main", tie("tip", 1, axis.Add(reach)),
		sheave("low sheave", 0, vec{Y: 0.4}, 0.08, planar.Right),
		sheave("high sheave", 0, vec{X: -0.5, Y: 2}, 0.12, planar.Left), s.top)}
	return m
}

// movingBlock hangs the stack on one sheave between strands that are not
// parallel.
func movingBlock() machine {
	axis, reach := vec{X: -0.9, Y: 0.5}, vec{X: 0.5, Y: 0.2}
	m := pullLever("2:1 moving block", axis, reach, 20*deg, -60*deg)
	s := stackOn(2, vec{X: 0.25, Y: 0.9}, 60)
	s.hang(&m)
	m.Ropes = []mechanism.Rope{rope("main", tie("beam", 0, vec{X: 0.45, Y: 2.3}),
		sheave("block", 2, vec{X: 0.25, Y: 1}, 0.07, planar.Right),
		sheave("top sheave", 0, vec{X: 0, Y: 2.2}, 0.1, planar.Left),
		tie("tip", 1, axis.Add(reach)))}
	return m
}

// tackle hangs the stack on four strands, none quite upright: where a rope
// turns by just half a turn MuJoCo takes the arc from an arc cosine near -1,
// good to only 2e-9 m.
func tackle() machine {
	axis, reach := vec{X: -0.9, Y: 0.5}, vec{X: 0.5, Y: 0.3}
	m := pullLever("4:1 tackle", axis, reach, 20*deg, -60*deg)
	s := stackOn(2, vec{X: 0.2, Y: 0.7}, 120)
	s.hang(&m)
	m.Ropes = []mechanism.Rope{rope("main", tie("beam", 0, vec{X: 0.5, Y: 2.2}),
		sheave("block 1", 2, vec{X: 0.4, Y: 0.8}, 0.07, planar.Right),
		sheave("top 1", 0, vec{X: 0.2, Y: 2.2}, 0.1, planar.Left),
		sheave("block 2", 2, vec{X: 0, Y: 0.8}, 0.06, planar.Right),
		sheave("top 2", 0, vec{X: -0.2, Y: 2.2}, 0.1, planar.Left),
		tie("tip", 1, axis.Add(reach)))}
	return m
}

// sheaveOnLever carries one sheave on the moving lever itself.
func sheaveOnLever() machine {
	axis, reach := vec{Y: 0.9}, vec{X: 0.8, Y: 0.35}
	m := pullLever("sheave on the lever", axis, reach, 0, -50*deg)
	s := stackOn(2, vec{X: 0.12, Y: 0.8}, 50)
	s.hang(&m)
	m.Weights = append(m.Weights, mechanism.Weight{Name: "counterweight", Link: 1, At: vec{X: -0.3, Y: 0.8}, Mass: 10})
	m.Ropes = []mechanism.Rope{rope("main", tie("beam", 0, vec{X: 1.2, Y: 2.2}),
		sheave("lever sheave", 1, axis.Add(reach), 0.06, planar.Right),
		sheave("top sheave", 0, vec{X: 0.2, Y: 2.3}, 0.08, planar.Left), s.top)}
	return m
}

// ropedFourBar lets the rocker of Norton's four-bar draw a stack.
func ropedFourBar() machine {
	m := fourBar("four-bar drawing a stack", +1)
	m.Weights = nil
	m.Drive = turning(0, 0, 120*deg)
	s := stackOn(4, vec{X: 1.9, Y: 0.5}, 50)
	s.hang(&m)
	b, o4 := m.Joints[2].At, m.Joints[3].At
	m.Ropes = []mechanism.Rope{rope("main", tie("rocker", 3, b.Lerp(o4, 0.2).Add(vec{X: 0.05})),
		sheave("top sheave", 0, vec{X: 1.8, Y: 1.5}, 0.1, planar.Right), s.top)}
	return m
}

// twoRopes draws one lever by another, which in turn draws a stack.
func twoRopes() machine {
	axis, reach := vec{X: 1, Y: 0.3}, vec{X: -0.1, Y: 0.6}
	m := pullLever("lever drawing a lever drawing a stack", axis, reach, 10*deg, -35*deg)
	pivot, tip := vec{X: -1, Y: 0.8}, vec{X: -0.4, Y: 0.9}
	m.Links = append(m.Links, bar("second lever", 6, pivot, tip))
	m.Joints = append(m.Joints, pin("second axis", 0, 2, pivot))
	m.Weights = append(m.Weights, plates(2, vec{X: -0.5, Y: 0.95}, 20))
	s := stackOn(3, vec{X: -1.42, Y: 0.6}, 30)
	s.hang(&m)
	m.Ropes = []mechanism.Rope{
		rope("first", tie("tip", 1, axis.Add(reach)), sheave("first sheave", 0, vec{X: -0.3, Y: 2.1}, 0.1, planar.Left), tie("second tip", 2, tip)),
		rope("second", tie("heel", 2, vec{X: -0.8, Y: 0.75}), sheave("second sheave", 0, vec{X: -1.3, Y: 2.2}, 0.12, planar.Left), s.top),
	}
	return m
}

// ropeHandle draws a handle along a straight path that is not the rope's.
func ropeHandle() machine {
	grip := vec{X: 0.6, Y: 1.4}
	m := machine{
		Name:    "rope handle",
		Links:   []mechanism.Link{block("handle", 1, grip)},
		Joints:  []mechanism.Joint{guide("path", 0, 1, grip, -60*deg)},
		Drive:   mechanism.Drive{Joint: 0, From: 0, To: 0.7},
		Contact: mechanism.Contact{Name: "handle", Link: 1, At: grip},
	}
	s := stackOn(2, vec{X: -0.1, Y: 0.4}, 45)
	s.hang(&m)
	m.Ropes = []mechanism.Rope{rope("main", tie("handle", 1, grip), sheave("top sheave", 0, vec{Y: 2.2}, 0.1, planar.Left), s.top)}
	return m
}

func roped() []bench {
	both := []Engine{MuJoCo, Shortest}
	return []bench{
		{machine: redirect("redirect, sheave on the left", +1), engines: both},
		{machine: redirect("redirect, sheave on the right", -1), engines: both},
		{machine: crossed(), engines: both},
		{machine: movingBlock(), engines: both},
		{machine: tackle(), engines: both},
		{machine: sheaveOnLever(), engines: both},
		{machine: twoRopes(), engines: both},
		{machine: ropeHandle(), engines: both},
		{machine: ropedFourBar(), engines: []Engine{MuJoCo}},
	}
}
