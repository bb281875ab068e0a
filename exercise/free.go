package exercise

import (
	"fmt"
	"math"

	"steelyard/human"
	"steelyard/mechanism"
	"steelyard/planar"
)

// Free is a load without a machine.
type Free int

// The free loads.
const (
	Barbell  Free = iota // one bar for both limbs
	Dumbbell             // one in each hand
	Cable                // a rope over a sheave to a weight, one for each hand
	numFrees
)

// String returns the load in words.
func (f Free) String() string { return [numFrees]string{"barbell", "dumb-bell", "cable"}[f] }

// way is the path of a free exercise in the side view or, drawn from in front,
// across: from and to are from the shoulder in arm lengths, or directions in
// degrees from forward (from in front: from outward) of the whole arm or of the
// forearm. How people do these is common practice, no source.
type way struct {
	exercise Exercise
	free     Free
	posture  Posture
	trunk    float64 // degrees from the floor
	pivot    pivot
	from, to [2]float64 // shape line; of an arc only the first number
	upper    float64    // degrees, of the upper arm where the elbow is the pivot
	sheave   [2]float64 // of a cable, from the shoulder in arm lengths
}

type pivot int

const (
	straightWay pivot = iota
	aboutShoulder
	aboutElbow
	onShoulders
	onHips
)

// nearlyStraight is the arm's length in use over its full length: elbows are
// not locked.
const nearlyStraight = 0.97

var ways = []way{
	{ChestPress, Barbell, LyingOnBack, 0, straightWay, [2]float64{0.05, 0.38}, [2]float64{0.05, 0.96}, 0, [2]float64{}},
	{ChestPress, Dumbbell, LyingOnBack, 0, straightWay, [2]float64{0.05, 0.36}, [2]float64{0.02, 0.96}, 0, [2]float64{}},
	{ChestPress, Cable, Standing, 90, straightWay, [2]float64{0.38, -0.05}, [2]float64{0.96, -0.05}, 0, [2]float64{-1.5, 0}},
	{InclinePress, Barbell, Seated, 45, straightWay, [2]float64{0.15, 0.36}, [2]float64{0.1, 0.95}, 0, [2]float64{}},
	{InclinePress, Dumbbell, Seated, 45, straightWay, [2]float64{0.15, 0.34}, [2]float64{0.05, 0.95}, 0, [2]float64{}},
	{OverheadPress, Barbell, Seated, 85, straightWay, [2]float64{0.15, 0.34}, [2]float64{0.02, 0.96}, 0, [2]float64{}},
	{OverheadPress, Dumbbell, Seated, 85, straightWay, [2]float64{0.1, 0.36}, [2]float64{0, 0.96}, 0, [2]float64{}},
	{Row, Barbell, Standing, 145, straightWay, [2]float64{0, -0.96}, [2]float64{-0.05, -0.36}, 0, [2]float64{}},
	{Row, Dumbbell, Standing, 150, straightWay, [2]float64{0, -0.96}, [2]float64{-0.1, -0.36}, 0, [2]float64{}},
	{Row, Cable, Seated, 90, straightWay, [2]float64{0.85, -0.42}, [2]float64{0.1, -0.42}, 0, [2]float64{2.5, -0.5}},
	{Pulldown, Cable, Seated, 85, straightWay, [2]float64{0.1, 0.95}, [2]float64{0.25, 0.27}, 0, [2]float64{0.2, 1.8}},
	{Fly, Dumbbell, LyingOnBack, 0, aboutShoulder, [2]float64{-5}, [2]float64{80}, 0, [2]float64{}},
	{Fly, Cable, Standing, 90, straightWay, [2]float64{0.1, 0}, [2]float64{0.9, 0}, 0, [2]float64{-0.2, 0}},
	{ReverseFly, Dumbbell, Standing, 165, aboutShoulder, [2]float64{-85}, [2]float64{-5}, 0, [2]float64{}},
	{LateralRaise, Dumbbell, Standing, 90, aboutShoulder, [2]float64{-80}, [2]float64{0}, 0, [2]float64{}},
	{LateralRaise, Cable, Standing, 90, aboutShoulder, [2]float64{-80}, [2]float64{0}, 0, [2]float64{-0.6, -1.9}},
	{Curl, Barbell, Standing, 90, aboutElbow, [2]float64{10}, [2]float64{130}, -88, [2]float64{}},
	{Curl, Dumbbell, Standing, 90, aboutElbow, [2]float64{10}, [2]float64{130}, -88, [2]float64{}},
	{Curl, Cable, Standing, 90, aboutElbow, [2]float64{10}, [2]float64{130}, -88, [2]float64{0.8, -1.9}},
	{TricepsExtension, Barbell, LyingOnBack, 0, aboutElbow, [2]float64{110}, [2]float64{8}, 95, [2]float64{}},
	{TricepsExtension, Dumbbell, Seated, 90, aboutElbow, [2]float64{120}, [2]float64{8}, 85, [2]float64{}},
	{TricepsExtension, Cable, Standing, 90, aboutElbow, [2]float64{105}, [2]float64{8}, -85, [2]float64{0.5, 1.3}},
	{Squat, Barbell, Standing, 125, onShoulders, [2]float64{}, [2]float64{}, 0, [2]float64{}},
	{StandingCalfRaise, Barbell, Standing, 90, onShoulders, [2]float64{}, [2]float64{}, 0, [2]float64{}},
	{HipThrust, Barbell, LyingOnBack, 0, onHips, [2]float64{}, [2]float64{}, 0, [2]float64{}},
}

// pressWidth is how far apart the hands are in a press, over the distance of
// the shoulder joints: the forearms then stand about upright. Common practice,
// no source.
const pressWidth = 1.6

// FreeWeight returns the exercise as one body does it with a free load of kg: a
// machine that is only the load and its path, for [mechanism.Model.Sweep], and
// the station to go with it. kg is the whole barbell, one dumb-bell, or the
// weight on one cable. It returns an error for a load the exercise is not done
// with, or for a load that is not a positive number.
//
// The force of a dumb-bell is straight down, that of a barbell too but for what
// the hands push against each other along it, that of a cable towards its
// sheave, without friction.
func FreeWeight(x Exercise, free Free, b *human.Body, kg float64) (*mechanism.Model, Station, error) {
	if !(kg > 0 && kg <= MostLoad) {
		return nil, Station{}, fmt.Errorf("exercise: a load of %g kg is outside 0 to %.0f kg; give what is lifted", kg, MostLoad)
	}
	for i := range ways {
		if w := &ways[i]; w.exercise == x && w.free == free {
			m, st := w.machine(b, kg)
			md, err := mechanism.Compile(m)
			if err != nil {
				return nil, st, fmt.Errorf("exercise: %v with a %v: %w", x, free, err)
			}
			return md, st, nil
		}
	}
	return nil, Station{}, fmt.Errorf("exercise: the %v is not done with a %v; compare it with %s", x, free, others(x))
}

// others lists the free loads an exercise is done with.
func others(x Exercise) string {
	text := ""
	for i := range ways {
		if ways[i].exercise == x {
			if text != "" {
				text += " or "
			}
			text += "a " + ways[i].free.String()
		}
	}
	if text == "" {
		return "another machine"
	}
	return text
}

// machine builds the load on its path for one body.
func (w *way) machine(b *human.Body, kg float64) (mechanism.Machine, Station) {
	st := Station{Exercises: []Exercise{w.exercise}, Contact: Held, Posture: w.posture, Anchor: HipsAnchor, At: planar.Vec{Y: 1}, Trunk: planar.Angle(w.trunk) * deg}
	m := mechanism.Machine{Name: w.exercise.String() + ", " + w.free.String(), Links: []mechanism.Link{{Name: "load"}}, Plane: mechanism.Plane{Mirrored: w.free != Barbell}}
	switch w.pivot {
	case onShoulders:
		w.bearOnShoulders(&m, &st, b)
	case onHips:
		w.bearOnHips(&m, &st, b)
	default:
		w.hold(&m, &st, b)
	}
	m.Contact.Link, m.Drive.Joint = 1, 0
	m.Links[0].Center = m.Contact.At
	at := m.Contact.At
	if w.free == Cable {
		st.Contact = RopeHandle
		w.hang(&m, &st, b, kg)
		return m, st
	}
	m.Weights = []mechanism.Weight{{Name: w.free.String(), Link: 1, At: at, Mass: kg, Load: true}}
	return m, st
}

// hold puts a load in the hands.
func (w *way) hold(m *mechanism.Machine, st *Station, b *human.Body) {
	l := &b.Links
	shoulder := st.trunk(l).Shoulder(*l, human.Right)
	s := planar.Vec{X: shoulder.X, Y: shoulder.Y}
	full := l.UpperArm + l.ElbowToGrip
	switch w.pivot {
	case straightWay:
		from, to := s.Add(planar.Vec{X: w.from[0], Y: w.from[1]}.Scale(full)), s.Add(planar.Vec{X: w.to[0], Y: w.to[1]}.Scale(full))
		m.Contact.At = from
		run(m, from, to)
		if w.posture != Standing && w.free != Cable {
			st.Width = Some(pressWidth * 2 * l.ShoulderHalf)
		}
	case aboutShoulder:
		st.FromFront, st.Forward = true, Some(shoulder.X)
		swing(m, planar.Vec{X: shoulder.Z, Y: shoulder.Y}, nearlyStraight*full, w.from[0], w.to[0])
	case aboutElbow:
		elbow := s.Add(planar.Polar(l.UpperArm, planar.Angle(w.upper)*deg))
		swing(m, elbow, l.ElbowToGrip, w.upper+w.from[0], w.upper+w.to[0])
		st.Axis, st.HasAxis = elbow, true
	}
}

// run lets the load slide straight.
func run(m *mechanism.Machine, from, to planar.Vec) {
	d := to.Sub(from)
	m.Joints = append(m.Joints, mechanism.Joint{Name: "way", Kind: mechanism.Prismatic, B: 1, At: from, Along: d.Angle()})
	m.Drive.To = d.Norm()
}

// swing lets the load turn about a point, from one direction to another in
// degrees.
func swing(m *mechanism.Machine, about planar.Vec, radius, from, to float64) {
	m.Contact.At = about.Add(planar.Polar(radius, planar.Angle(from)*deg))
	m.Joints = append(m.Joints, mechanism.Joint{Name: "way", Kind: mechanism.Revolute, B: 1, At: about})
	m.Drive.To = (to - from) * float64(deg)
}

// hang ties the load to a rope over a sheave of no size.
func (w *way) hang(m *mechanism.Machine, st *Station, b *human.Body, kg float64) {
	l := &b.Links
	shoulder := st.trunk(l).Shoulder(*l, human.Right)
	full := l.UpperArm + l.ElbowToGrip
	s := planar.Vec{X: shoulder.X, Y: shoulder.Y}
	if st.FromFront {
		s.X = shoulder.Z
	}
	sheave := s.Add(planar.Vec{X: w.sheave[0], Y: w.sheave[1]}.Scale(full))
	below := sheave.Sub(planar.Vec{Y: 5 * full})
	m.Links = append(m.Links, mechanism.Link{Name: "stack", Center: below})
	m.Joints = append(m.Joints, mechanism.Joint{Name: "stack", Kind: mechanism.Prismatic, B: 2, At: below, Along: math.Pi / 2})
	m.Ropes = []mechanism.Rope{{Name: "rope", Route: mechanism.Route{
		{Name: "stack", Link: 2, At: below}, {Name: "sheave", At: sheave}, {Name: "hand", Link: 1, At: m.Contact.At}}}}
	m.Weights = []mechanism.Weight{{Name: "stack", Link: 2, At: below, Mass: kg, Load: true}}
}
