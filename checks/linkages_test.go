package checks

import (
	"math"
	"math/rand/v2"

	"steelyard/mechanism"
	"steelyard/planar"
)

type (
	vec     = planar.Vec
	machine = mechanism.Machine
)

const deg = planar.Degree

// bar returns a uniform bar from p to q.
func bar(name string, mass float64, p, q vec) mechanism.Link {
	l := q.Sub(p).Norm()
	return mechanism.Link{Name: name, Mass: mass, Center: p.Lerp(q, 0.5), Inertia: mass * l * l / 12}
}

// block returns a compact body about p.
func block(name string, mass float64, p vec) mechanism.Link {
	return mechanism.Link{Name: name, Mass: mass, Center: p, Inertia: mass * 0.02}
}

func pin(name string, a, b mechanism.LinkID, at vec) mechanism.Joint {
	return mechanism.Joint{Name: name, A: a, B: b, At: at}
}

func guide(name string, a, b mechanism.LinkID, at vec, along planar.Angle) mechanism.Joint {
	return mechanism.Joint{Name: name, Kind: mechanism.Prismatic, A: a, B: b, At: at, Along: along}
}

func plates(link mechanism.LinkID, at vec, mass float64) mechanism.Weight {
	return mechanism.Weight{Name: "plates", Link: link, At: at, Mass: mass, Inertia: mass * 0.0253, Load: true}
}

func turning(joint int, from, to planar.Angle) mechanism.Drive {
	return mechanism.Drive{Joint: joint, From: float64(from), To: float64(to)}
}

// where links of lengths a and b from p and q meet, on the side of the
// directed line p to q that left (+1) or right (-1) tells.
func where(p, q vec, a, b, left float64) vec {
	d := q.Sub(p)
	l := d.Norm()
	s := (l*l + (a-b)*(a+b)) / (2 * l)
	h := math.Sqrt(a*a - s*s)
	return p.Add(d.Scale(s / l)).Add(d.Perp().Scale(left * h / l))
}

func lever() machine {
	return machine{
		Name:    "lever",
		Links:   []mechanism.Link{{Name: "arm", Mass: 10, Center: vec{X: 0.4, Y: 0.05}, Inertia: 0.9}},
		Joints:  []mechanism.Joint{pin("axis", 0, 1, vec{X: 0.1, Y: 0.9})},
		Weights: []mechanism.Weight{plates(1, vec{X: 0.75, Y: 1.02}, 40)},
		Drive:   turning(0, -60*deg, 75*deg),
		Contact: mechanism.Contact{Name: "grip", Link: 1, At: vec{X: 1.15, Y: 0.84}},
	}
}

func helpedLever() machine {
	m := lever()
	m.Name = "lever with a helper spring"
	m.Elements = []mechanism.Element{{
		Name:  "helper",
		Route: mechanism.Route{{Name: "post", At: vec{X: 0.5, Y: 2}}, {Name: "arm", Link: 1, At: vec{X: 0.7, Y: 0.95}}},
		Law:   mechanism.Spring{Rate: 300, Free: 0.6, Preload: 25},
	}}
	return m
}

// sprung adds an element of any law to the lever.
func sprung(name string, e mechanism.Element) machine {
	m := lever()
	m.Name = name
	m.Elements = []mechanism.Element{e}
	return m
}

func gasLever() machine {
	return sprung("lever on a gas spring", mechanism.Element{
		Name:  "strut",
		Route: mechanism.Route{{Name: "foot", At: vec{X: 0.25, Y: 0.35}}, {Name: "eye", Link: 1, At: vec{X: 0.3, Y: 0.92}}},
		Law:   mechanism.GasSpring{Force: 450, Extended: 0.8, Column: 1.1},
	})
}

// bandLever draws a rubber band over a sheave, and lifts a chain.
func bandLever() machine {
	m := sprung("lever drawing a band over a sheave, lifting a chain", mechanism.Element{
		Name: "band",
		Route: mechanism.Route{
			{Name: "hook", At: vec{X: 2, Y: 0.1}},
			{Name: "sheave", At: vec{X: 1.7, Y: -0.4}, Outline: planar.Circle{Radius: 0.05}, Side: planar.Right},
			{Name: "arm", Link: 1, At: vec{X: 1, Y: 0.9}},
		},
		Law: mechanism.Band{Free: 0.7, Area: 4e-4, Shear: 0.4e6},
	})
	m.Chains = []mechanism.Chain{{Name: "chain", Link: 1, At: vec{X: 1.1, Y: 0.9}, Floor: -0.2, Length: 2.5, Density: 6}}
	return m
}

func coiledLever() machine {
	return sprung("lever with a coiled spring about its axis", mechanism.Element{
		Name: "coil", Joint: 0, Law: mechanism.Spring{Rate: 60, Free: 0.3, Preload: 12},
	})
}

// fourBar is Norton's crank and rocker of 0.4, 1.2, 0.8 and 1.0 m, measured
// with its crank at 40° and turned right round.
func fourBar(name string, left float64) machine {
	o2, o4 := vec{}, vec{X: 1}
	a := planar.Polar(0.4, 40*deg)
	b := where(a, o4, 1.2, 0.8, left)
	u := b.Sub(a).Unit()
	return machine{
		Name:    name,
		Links:   []mechanism.Link{bar("crank", 2, o2, a), bar("coupler", 6, a, b), bar("rocker", 4, b, o4)},
		Joints:  []mechanism.Joint{pin("O2", 0, 1, o2), pin("A", 1, 2, a), pin("B", 2, 3, b), pin("O4", 0, 3, o4)},
		Weights: []mechanism.Weight{plates(2, a.Add(u.Scale(0.7)).Add(u.Perp().Scale(0.2)), 50)},
		Drive:   turning(0, 0, 360*deg),
		Contact: mechanism.Contact{Name: "crank pin", Link: 1, At: a},
	}
}

func leaningFourBar() machine {
	m := fourBar("four-bar in a leaning plane", +1)
	m.Plane.Tilt = 30 * deg
	m.Drive = turning(0, 70*deg, -5*deg)
	return m
}

func parallelogram() machine {
	o2, o4 := vec{X: 0, Y: 1}, vec{X: 0.05, Y: 1.3}
	arm := planar.Polar(0.6, 10*deg)
	a, b := o2.Add(arm), o4.Add(arm)
	return machine{
		Name:    "parallelogram arm",
		Links:   []mechanism.Link{bar("lower arm", 4, o2, a), bar("head", 3, a, b), bar("upper arm", 4, b, o4)},
		Joints:  []mechanism.Joint{pin("O2", 0, 1, o2), pin("A", 1, 2, a), pin("B", 2, 3, b), pin("O4", 0, 3, o4)},
		Weights: []mechanism.Weight{plates(3, o4.Add(arm.Scale(0.7)), 30)},
		Drive:   turning(0, -50*deg, 55*deg),
		Contact: mechanism.Contact{Name: "handle", Link: 2, At: b.Add(vec{X: 0.15})},
	}
}

// sliderCrank has its guide 0.2 m below the crank's axis, leaning by lean.
func sliderCrank(name string, lean planar.Angle, drive mechanism.Drive) machine {
	turn := planar.TurnAbout(vec{}, lean)
	a := planar.Polar(0.4, 60*deg)
	b := vec{X: a.X + math.Sqrt(1.2*1.2-(a.Y+0.2)*(a.Y+0.2)), Y: -0.2}
	a, b = turn.Point(a), turn.Point(b)
	return machine{
		Name:    name,
		Links:   []mechanism.Link{bar("crank", 3, vec{}, a), bar("rod", 5, a, b), block("sled", 12, b)},
		Joints:  []mechanism.Joint{pin("O2", 0, 1, vec{}), pin("A", 1, 2, a), pin("B", 2, 3, b), guide("rail", 0, 3, b, lean)},
		Weights: []mechanism.Weight{plates(1, a.Scale(0.6).Add(vec{Y: 0.1}), 25), plates(3, b.Add(vec{X: 0.05, Y: 0.2}), 60)},
		Drive:   drive,
		Contact: mechanism.Contact{Name: "foot plate", Link: 3, At: b.Add(vec{X: -0.1, Y: 0.15})},
	}
}

func inclineSled() machine {
	at := vec{X: 0.3, Y: 0.4}
	return machine{
		Name:    "sled on a 45° incline",
		Links:   []mechanism.Link{block("sled", 45, at)},
		Joints:  []mechanism.Joint{guide("rail", 0, 1, at, 45*deg)},
		Weights: []mechanism.Weight{plates(1, vec{X: 0.1, Y: 0.6}, 100)},
		Drive:   mechanism.Drive{Joint: 0, From: -0.1, To: 0.6},
		Contact: mechanism.Contact{Name: "foot plate", Link: 1, At: vec{X: 0.5, Y: 0.7}},
	}
}

// trammel is a rod whose ends slide on an upright and a level guide.
func trammel() machine {
	top, foot := vec{Y: 0.9}, vec{X: 0.5}
	return machine{
		Name: "rod on two guides",
		Links: []mechanism.Link{
			block("carriage", 8, top), bar("rod", 5, top, foot), block("shoe", 3, foot),
		},
		Joints: []mechanism.Joint{
			guide("upright", 0, 1, top, 90*deg), pin("A", 1, 2, top), pin("B", 2, 3, foot), guide("level", 0, 3, foot, 0),
		},
		Weights: []mechanism.Weight{plates(2, top.Lerp(foot, 0.3).Add(vec{X: 0.1}), 30)},
		Drive:   mechanism.Drive{Joint: 0, From: -0.6, To: 0.05},
		Contact: mechanism.Contact{Name: "bar", Link: 2, At: top.Lerp(foot, 0.6)},
	}
}

// movingGuide lets a crank's block slide along a swinging arm.
func movingGuide() machine {
	o2, o4 := vec{X: 0.2, Y: 0.9}, vec{}
	a := o2.Add(planar.Polar(0.3, 20*deg))
	along := a.Angle()
	tip := planar.Polar(1.5, along)
	return machine{
		Name:  "crank in a swinging guide",
		Links: []mechanism.Link{bar("crank", 2, o2, a), block("block", 1, a), bar("arm", 9, o4, tip)},
		Joints: []mechanism.Joint{
			pin("O2", 0, 1, o2), pin("A", 1, 2, a), guide("slot", 3, 2, a, along), pin("O4", 0, 3, o4),
		},
		Weights: []mechanism.Weight{plates(3, tip, 20)},
		Drive:   turning(0, -30*deg, 300*deg),
		Contact: mechanism.Contact{Name: "crank pin", Link: 1, At: a},
	}
}

// wattSixBar is a Watt I chain: a four-bar whose coupler and rocker carry on
// beyond their common pin, and two links that join there.
func wattSixBar() machine {
	o2, o4 := vec{}, vec{X: 0.7, Y: 0.1}
	a := planar.Polar(0.5, 100*deg)
	b := where(a, o4, 0.75, 0.55, +1)
	c := b.Add(b.Sub(a).Unit().Scale(0.3)).Add(vec{Y: 0.15})
	d := b.Add(vec{X: 0.05, Y: 0.35})
	e := where(c, d, 0.45, 0.5, +1)
	return machine{
		Name: "Watt I six-bar",
		Links: []mechanism.Link{
			bar("crank", 3, o2, a), bar("coupler", 5, a, c), bar("rocker", 4, o4, d), bar("arm", 2, c, e), bar("strut", 2, d, e),
		},
		Joints: []mechanism.Joint{
			pin("O2", 0, 1, o2), pin("A", 1, 2, a), pin("B", 2, 3, b), pin("O4", 0, 3, o4),
			pin("C", 2, 4, c), pin("D", 3, 5, d), pin("E", 4, 5, e),
		},
		Weights: []mechanism.Weight{plates(2, c, 35)},
		Drive:   turning(0, -15*deg, 30*deg),
		Contact: mechanism.Contact{Name: "handle", Link: 4, At: e},
	}
}

// stephensonSixBar is a Stephenson III chain: a four-bar whose coupler moves a
// further arm through a rod. Driven at that arm it falls into no dyads.
func stephensonSixBar(name string, drive mechanism.Drive) machine {
	o2, o4, o6 := vec{}, vec{X: 0.9, Y: 0.1}, vec{X: 1.3, Y: 0.5}
	a := planar.Polar(0.35, 70*deg)
	b := where(a, o4, 0.8, 0.6, +1)
	c := a.Lerp(b, 0.5).Add(vec{X: -0.1, Y: 0.3})
	e := where(c, o6, 0.7, 0.6, +1)
	return machine{
		Name: name,
		Links: []mechanism.Link{
			bar("crank", 3, o2, a), {Name: "coupler", Mass: 6, Center: a.Add(b).Add(c).Scale(1. / 3), Inertia: 0.5},
			bar("rocker", 4, b, o4), bar("rod", 3, c, e), bar("arm", 5, e, o6),
		},
		Joints: []mechanism.Joint{
			pin("O2", 0, 1, o2), pin("A", 1, 2, a), pin("B", 2, 3, b), pin("O4", 0, 3, o4),
			pin("C", 2, 4, c), pin("E", 4, 5, e), pin("O6", 0, 5, o6),
		},
		Weights: []mechanism.Weight{plates(3, b.Lerp(o4, 0.2).Add(vec{X: 0.1}), 45)},
		Drive:   drive,
		Contact: mechanism.Contact{Name: "handle", Link: 5, At: e.Lerp(o6, -0.3)},
	}
}

// randomFourBars returns n four-bars of any kind, each moved through the range
// in which it surely stays assembled.
func randomFourBars(n int) []machine {
	r := rand.New(rand.NewPCG(1, 2))
	between := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	var list []machine
	for len(list) < n {
		o2, o4 := vec{X: between(-1, 1), Y: between(-1, 1)}, vec{X: between(-1, 1), Y: between(-1, 1)}
		from, to := planar.Angle(between(-3, 3)), planar.Angle(between(0.3, 1.5))
		la, lb, lc := between(0.2, 1), between(0.3, 1.5), between(0.3, 1.5)
		a := o2.Add(planar.Polar(la, from))
		if !assembles(o2, o4, la, lb, lc, from, to) {
			continue
		}
		b := where(a, o4, lb, lc, math.Copysign(1, between(-1, 1)))
		list = append(list, machine{
			Name:    "random four-bars",
			Links:   []mechanism.Link{bar("crank", between(1, 5), o2, a), bar("coupler", between(1, 5), a, b), bar("rocker", between(1, 5), b, o4)},
			Joints:  []mechanism.Joint{pin("O2", 0, 1, o2), pin("A", 1, 2, a), pin("B", 2, 3, b), pin("O4", 0, 3, o4)},
			Weights: []mechanism.Weight{plates(2, vec{X: between(-1, 1), Y: between(-1, 1)}, between(5, 80))},
			Drive:   turning(0, 0, to),
			Contact: mechanism.Contact{Name: "crank pin", Link: 1, At: a},
		})
	}
	return list
}

// assembles keeps the coupler and rocker at least 0.05 m from being in line.
func assembles(o2, o4 vec, la, lb, lc float64, from, by planar.Angle) bool {
	for t := 0.0; t <= 1; t += 0.01 {
		span := o4.Sub(o2.Add(planar.Polar(la, from+by*planar.Angle(t)))).Norm()
		if span > lb+lc-0.05 || span < math.Abs(lb-lc)+0.05 {
			return false
		}
	}
	return true
}
