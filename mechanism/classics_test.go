package mechanism

import (
	"math"

	"steelyard/planar"
)

// classic is a machine that runs its whole travel without friction or a gap.
type classic struct {
	name string
	m    Machine
}

// classics is one machine of every family, for checks that hold for all.
func classics() []classic {
	oval, err := planar.EllipseFromAxes(vec{X: 0.01}, 0.14, 0.09, 0.3)
	if err != nil {
		panic(err)
	}
	chained := lever(0.5, 0.9, 10)
	chained.Chains = []Chain{{Name: "chain", Link: 1, At: vec{X: 0.8}, Floor: -0.6, Length: 3, Density: 6}}
	leant := clone(chained)
	leant.Plane.Tilt = 40 * planar.Degree
	list := []classic{
		{"lever", lever(0.62, 1.05, 60)},
		{"lever with chain", chained},
		{"leaning lever with chain", leant},
		{"four-bar, open", nortonFourBar(40 * planar.Degree)},
		{"four-bar, crossed", fourBar(norton, 40*planar.Degree, -1)},
		{"four-bar with springs", sprung()},
		{"parallelogram", parallelogram()},
		{"Watt I", wattI(75 * planar.Degree)},
		{"Stephenson III", stephensonIII(75 * planar.Degree)},
		{"Stephenson III by its output", byOutput()},
		{"slider-crank", sliderCrank(0.3, 0.9, 0, 50*planar.Degree, +1)},
		{"offset slider-crank, crossed", sliderCrank(0.3, 0.9, -0.1, 50*planar.Degree, -1)},
		{"sled on inclined rails", inclinedSled()},
		{"trammel", trammel(1.3, 1.1)},
		{"slotted lever", slottedLever(0.2, 0.5, 20*planar.Degree)},
		{"tackle", tackle(4, 80, RopeLoss{})},
		{"rope over a cylinder", wrapLever()},
		{"eccentric cam", camMachine(planar.Circle{Center: vec{X: 0.04, Y: -0.02}, Radius: 0.12}, 50)},
		{"oval cam", camOn(oval, vec{X: -0.7, Y: 0.9}, 50)},
		{"four-bar, cam and stack", camOnRocker()},
		{"sheave on the arm", sheaveOnArm()},
		{"over two fixed sheaves", overTwoSheaves()},
		{"leaning plane", leaning()},
	}
	return list
}

// sprung is a four-bar with one spring of each kind.
func sprung() Machine {
	m := nortonFourBar(70 * planar.Degree)
	m.Drive = Drive{Joint: 0, From: -0.5, To: 0.5}
	pa, pb := m.Joints[1].At, m.Joints[2].At
	from := func(name string, foot vec, law Law) Element {
		return Element{Name: name, Law: law, Route: Route{{Name: "foot", Link: Ground, At: foot}, {Name: "eye", Link: 2, At: pa.Lerp(pb, 0.6)}}}
	}
	m.Elements = []Element{
		from("spring", vec{X: -0.4, Y: -0.2}, Spring{Rate: 700, Free: 0.5, Preload: 30}),
		from("gas spring", vec{X: 0.4, Y: -0.3}, GasSpring{Force: 400, Extended: 1.3, Column: 1.5}),
		from("band", vec{X: 0.5, Y: 1.6}, Band{Free: 0.4, Area: 2e-4, Shear: 4e5}),
		{Name: "torsion spring", Joint: 2, Law: Spring{Rate: 20, Free: 0.1}},
		{Name: "between links", Law: Spring{Rate: 300, Free: 0.1}, Route: Route{{Name: "on the crank", Link: 1, At: pa.Scale(0.5)}, {Name: "on the rocker", Link: 3, At: pb}}},
	}
	return m
}

func parallelogram() Machine {
	m := fourBar(bars{0.5, 1, 0.5, 1}, 50*planar.Degree, +1)
	m.Drive = Drive{Joint: 0, From: -0.6, To: 0.6}
	return m
}

// byOutput is the Stephenson III followed at O6, so that four links are placed
// at once.
func byOutput() Machine {
	m := stephensonIII(75 * planar.Degree)
	m.Drive = Drive{Joint: 6, From: 0, To: 0.15}
	return m
}

// inclinedSled is a sled on rails at 40 deg, pushed by a lever through a link.
func inclinedSled() Machine {
	rails := 40 * planar.Degree
	pin, tip := vec{X: 0.6, Y: 0.5}, vec{X: -0.1, Y: 0.5}
	sled, guide := slide("sled", 3, pin, rails)
	sled.Mass = 15
	return Machine{
		Links: []Link{bar("lever", 4, vec{}, tip), bar("link", 2, tip, pin), sled},
		Joints: []Joint{
			{Name: "axis", A: Ground, B: 1},
			{Name: "tip", A: 1, B: 2, At: tip},
			{Name: "sled pin", A: 2, B: 3, At: pin},
			guide,
		},
		Weights: []Weight{{Name: "plates", Link: 3, At: vec{X: 0.7, Y: 0.8}, Mass: 60, Load: true}},
		Drive:   Drive{Joint: 0, From: 0.2, To: -0.6},
		Contact: Contact{Name: "foot plate", Link: 3, At: vec{X: 0.5, Y: 0.7}},
	}
}

// camOnRocker is the four-bar with an oval cam on its rocker that draws a stack.
func camOnRocker() Machine {
	oval, err := planar.EllipseFromAxes(vec{}, 0.15, 0.1, 0)
	if err != nil {
		panic(err)
	}
	m := nortonFourBar(40 * planar.Degree)
	stack, guide, plates := stackOn(4, -0.8, 0.4, 50)
	m.Links = append(m.Links, stack)
	m.Joints = append(m.Joints, guide)
	m.Weights = append(m.Weights, plates)
	m.Ropes = []Rope{{Name: "main", Route: Route{
		{Name: "cam", Link: 3, At: vec{X: 1}, Outline: oval, Side: planar.Right, Anchor: -100 * planar.Degree},
		{Name: "sheave", Link: Ground, At: vec{X: -0.75, Y: 1.2}, Outline: planar.Circle{Radius: 0.05}, Side: planar.Left},
		{Name: "stack", Link: 4, At: vec{X: -0.8, Y: 0.4}},
	}}}
	return m
}

// sheaveOnArm is an arm whose end carries a sheave; the rope runs from the
// floor over it and over a fixed sheave to a stack.
func sheaveOnArm() Machine {
	stack, guide, plates := stackOn(2, -0.6, 0.3, 40)
	tip := vec{X: 0.7, Y: 0.2}
	return Machine{
		Links:  []Link{{Name: "arm", Mass: 5, Center: tip.Scale(0.5), Inertia: 0.3}, stack},
		Joints: []Joint{{Name: "axis", A: Ground, B: 1}, guide},
		Ropes: []Rope{{Name: "main", Route: Route{
			{Name: "floor", Link: Ground, At: vec{X: 0.9, Y: -0.9}},
			{Name: "arm sheave", Link: 1, At: tip, Outline: planar.Circle{Radius: 0.06}, Side: planar.Left},
			{Name: "top sheave", Link: Ground, At: vec{X: -0.55, Y: 1.3}, Outline: planar.Circle{Radius: 0.05}, Side: planar.Left},
			{Name: "stack", Link: 2, At: vec{X: -0.6, Y: 0.3}},
		}}},
		Weights: []Weight{plates},
		Drive:   Drive{Joint: 0, From: 0, To: 0.9},
		Contact: Contact{Name: "grip", Link: 1, At: vec{X: 0.5, Y: -0.1}},
	}
}

// leaning is a lever in a plane that leans 30 deg, drawing an upright stack.
func leaning() Machine {
	m := sheaveOnArm()
	m.Plane.Tilt = math.Pi / 6
	return m
}

// overTwoSheaves is a rope whose middle strand lies still between two fixed
// sheaves, over the first and under the second.
func overTwoSheaves() Machine {
	stack, guide, plates := stackOn(2, -1.0, 0.2, 40)
	grip := vec{X: 0.6, Y: -0.2}
	return Machine{
		Links:  []Link{{Name: "arm", Mass: 5, Center: grip.Scale(0.5), Inertia: 0.3}, stack},
		Joints: []Joint{{Name: "axis", A: Ground, B: 1}, guide},
		Ropes: []Rope{{Name: "main", Route: Route{
			{Name: "arm", Link: 1, At: grip},
			{Name: "front sheave", Link: Ground, At: vec{X: 0.1, Y: 1}, Outline: planar.Circle{Radius: 0.05}, Side: planar.Left},
			{Name: "rear sheave", Link: Ground, At: vec{X: -0.95, Y: 1.3}, Outline: planar.Circle{Radius: 0.05}, Side: planar.Left},
			{Name: "stack", Link: 2, At: vec{X: -1.0, Y: 0.2}},
		}}},
		Weights: []Weight{plates},
		Drive:   Drive{Joint: 0, From: 0, To: -0.8},
		Contact: Contact{Name: "grip", Link: 1, At: grip},
	}
}
