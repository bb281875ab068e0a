package mechanism

import (
	"math"

	"steelyard/planar"
)

// Machines that each stop for one reason on their way.

func pastToggle() Machine {
	m := nortonFourBar(70 * planar.Degree)
	m.Drive = Drive{Joint: 3, From: 0, To: -2}
	m.Contact = Contact{Name: "rocker pin", Link: 3, At: m.Joints[2].At}
	return m
}

func outOfRail() Machine {
	m := sliderCrank(0.3, 0.35, 0.2, 20*planar.Degree, +1)
	m.Drive = Drive{Joint: 0, From: 0, To: -2}
	m.Contact = Contact{Name: "crank pin", Link: 1, At: m.Joints[1].At}
	return m
}

func onAxis() Machine {
	m := lever(0.5, 0, 20)
	return m
}

// turningBack is the Stephenson III beyond the place where connecting link and
// coupler carry the output to its end.
func turningBack() Machine {
	m := stephensonIII(75 * planar.Degree)
	m.Drive.From = -0.6
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
