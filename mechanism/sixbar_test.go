package mechanism

import (
	"math"
	"math/rand/v2"
	"testing"

	"steelyard/planar"
)

// sixBar is the places of a six-bar's pins at one crank angle, worked out link
// by link with the law of cosines. Invented lengths.
type sixBar struct{ a, b, o4, c, d, e, o6 vec }

// wattPins: four-bar O2 A B O4 with ternary coupler A B C and ternary rocker
// O4 B D, and a dyad C E D on top.
func wattPins(crank planar.Angle) sixBar {
	p := sixBar{o4: vec{X: 0.9}}
	p.a = planar.Polar(0.35, crank)
	p.b = crossing(p.a, p.o4, 0.8, 0.6, +1)
	p.c = crossing(p.a, p.b, 0.9, 0.5, +1)
	p.d = crossing(p.o4, p.b, 0.7, 0.35, -1)
	p.e = crossing(p.c, p.d, 0.7, 0.8, +1)
	return p
}

// wattI is the Watt I six-bar with its crank at the angle: bars of 1 to 5 kg,
// 40 kg on the top link.
func wattI(crank planar.Angle) Machine {
	p := wattPins(crank)
	m := Machine{
		Links: []Link{
			bar("crank", 1, vec{}, p.a), bar("coupler", 2, p.a, p.c), bar("rocker", 3, p.o4, p.d),
			bar("front link", 4, p.c, p.e), bar("rear link", 5, p.d, p.e),
		},
		Joints: []Joint{
			{Name: "O2", A: Ground, B: 1},
			{Name: "A", A: 1, B: 2, At: p.a},
			{Name: "B", A: 2, B: 3, At: p.b},
			{Name: "O4", A: Ground, B: 3, At: p.o4},
			{Name: "C", A: 2, B: 4, At: p.c},
			{Name: "D", A: 3, B: 5, At: p.d},
			{Name: "E", A: 4, B: 5, At: p.e},
		},
		Drive:   Drive{Joint: 0, From: -0.5, To: 0.6},
		Contact: Contact{Name: "grip", Link: 5, At: p.e.Add(vec{X: 0.1, Y: 0.1})},
	}
	m.Weights = []Weight{{Name: "plates", Link: 4, At: p.c.Lerp(p.e, 0.8), Mass: 40, Inertia: 0.4, Load: true}}
	return m
}

// stephensonPins: four-bar O2 A B O4 with a coupler point C, and a dyad from it
// to a second rocker at O6.
func stephensonPins(crank planar.Angle) sixBar {
	p := sixBar{o4: vec{X: 0.9, Y: 0.1}, o6: vec{X: 1.6, Y: 0.2}}
	p.a = planar.Polar(0.3, crank)
	p.b = crossing(p.a, p.o4, 0.9, 0.7, +1)
	p.c = crossing(p.a, p.b, 1.0, 0.4, +1)
	p.e = crossing(p.c, p.o6, 0.8, 0.9, +1)
	return p
}

// stephensonIII is the Stephenson III six-bar: driven at O2 it is a chain of
// dyads, driven at O6 four links must be placed at once.
func stephensonIII(crank planar.Angle) Machine {
	p := stephensonPins(crank)
	m := Machine{
		Links: []Link{
			bar("crank", 1, vec{}, p.a), bar("coupler", 4, p.a, p.b), bar("rocker", 3, p.o4, p.b),
			bar("connecting link", 2, p.c, p.e), bar("output", 5, p.o6, p.e),
		},
		Joints: []Joint{
			{Name: "O2", A: Ground, B: 1},
			{Name: "A", A: 1, B: 2, At: p.a},
			{Name: "B", A: 2, B: 3, At: p.b},
			{Name: "O4", A: Ground, B: 3, At: p.o4},
			{Name: "C", A: 2, B: 4, At: p.c},
			{Name: "E", A: 4, B: 5, At: p.e},
			{Name: "O6", A: Ground, B: 5, At: p.o6},
		},
		Drive:   Drive{Joint: 0, From: -0.2, To: 0.45}, // the output turns back at -0.4
		Contact: Contact{Name: "grip", Link: 5, At: p.e.Add(vec{X: 0.1, Y: 0.1})},
	}
	m.Weights = []Weight{{Name: "plates", Link: 2, At: p.c, Mass: 30, Load: true}}
	return m
}

// bar is a uniform link from a to b.
func bar(name string, mass float64, a, b vec) Link {
	return Link{Name: name, Mass: mass, Center: a.Lerp(b, 0.5), Inertia: mass * b.Sub(a).Dot(b.Sub(a)) / 12}
}

func TestSixBarPositions(t *testing.T) {
	const crank = 75 * planar.Degree
	for _, row := range []struct {
		name string
		m    Machine
		pins func(planar.Angle) sixBar
	}{
		{"Watt I", wattI(crank), wattPins},
		{"Stephenson III", stephensonIII(crank), stephensonPins},
	} {
		t.Run(row.name, func(t *testing.T) {
			sw := mustSweep(t, row.m, 12)
			for i, q := range sw.Driver {
				want := row.pins(crank + planar.Angle(q))
				for _, j := range row.m.Joints {
					expect := map[string]vec{"A": want.a, "B": want.b, "C": want.c, "D": want.d, "E": want.e}
					p, ok := expect[j.Name]
					if !ok {
						continue
					}
					near(t, j.Name+" on its second link, m", sw.Pose(i, j.B).Point(j.At).Sub(p).Norm(), 0, 1e-12)
					near(t, j.Name+" on its first link, m", sw.Pose(i, j.A).Point(j.At).Sub(p).Norm(), 0, 1e-12)
				}
			}
		})
	}
}

func TestSixBarForces(t *testing.T) {
	// Virtual work on closed-form pins: the load's rise over the contact's way by
	// central differences of the law-of-cosines poses, not of the solver's.
	const crank, h = 75 * planar.Degree, 1e-4
	bare := func(m Machine) Machine {
		for i := range m.Links {
			m.Links[i].Mass, m.Links[i].Inertia = 0, 0
		}
		return m
	}
	watt, stephenson := bare(wattI(crank)), bare(stephensonIII(crank))
	watt.Weights[0].Link, watt.Weights[0].At, watt.Contact.At = 5, wattPins(crank).d, wattPins(crank).e
	stephenson.Contact.At = stephensonPins(crank).e
	for _, row := range []struct {
		name          string
		m             Machine
		load, contact func(planar.Angle) vec
	}{
		{"Watt I", watt, func(a planar.Angle) vec { return wattPins(a).d }, func(a planar.Angle) vec { return wattPins(a).e }},
		{"Stephenson III", stephenson, func(a planar.Angle) vec { return stephensonPins(a).c }, func(a planar.Angle) vec { return stephensonPins(a).e }},
	} {
		t.Run(row.name, func(t *testing.T) {
			for _, q := range []planar.Angle{-0.15, 0, 0.4} {
				st := mustMove(t, row.m, float64(q))
				slope := func(f func(planar.Angle) vec) vec { // five points, error h⁴
					near1, far := f(crank+q+h).Sub(f(crank+q-h)), f(crank+q+2*h).Sub(f(crank+q-2*h))
					return near1.Scale(8).Sub(far).Scale(1 / (12 * float64(h)))
				}
				way := slope(row.contact).Norm()
				mass := row.m.Weights[0].Mass
				near(t, "force, N", mustForce(t, st, Hold), mass*Gravity*slope(row.load).Y/way, 1e-6)
				near(t, "lift ratio", st.LiftRatio(), slope(row.load).Norm()/way, 1e-9)
				near(t, "imbalance, N·m", st.Imbalance(Hold), 0, 1e-10)
			}
		})
	}
}

func TestDrivingElsewhereChangesNothing(t *testing.T) {
	// Which joint is followed is a matter of book-keeping: at the same pose the
	// same machine takes the same force and has the same effective mass. Followed
	// elsewhere, four or five links are placed at once by Newton's method.
	for _, row := range []struct {
		name   string
		m      Machine
		joints []int
	}{
		{"Watt I", wattI(75 * planar.Degree), []int{1, 2, 3, 4, 5, 6}},
		{"Stephenson III", stephensonIII(75 * planar.Degree), []int{1, 2, 3, 4, 5, 6}},
		{"four-bar", nortonFourBar(60 * planar.Degree), []int{1, 2, 3}},
		{"slotted lever", slottedLever(0.2, 0.5, 20*planar.Degree), []int{1, 2, 3}},
		{"offset slider-crank", sliderCrank(0.3, 0.9, -0.1, 50*planar.Degree, +1), []int{1, 2, 3}},
	} {
		for _, joint := range row.joints {
			t.Run(row.name+"/"+row.m.Joints[joint].Name, func(t *testing.T) {
				first := mustCompile(t, row.m).NewState()
				other := row.m
				q := 0.4
				if err := first.MoveTo(q); err != nil {
					t.Fatal(err)
				}
				j := row.m.Joints[joint]
				value := float64(first.Turn(j.B) - first.Turn(j.A))
				if j.Kind == Prismatic {
					along := first.Pose(j.A).Turn(planar.Polar(1, j.Along))
					value = along.Dot(first.Pose(j.B).Point(j.At).Sub(first.Pose(j.A).Point(j.At)))
				}
				other.Drive = Drive{Joint: joint, From: 0, To: value}
				second := mustMove(t, other, value)
				for l := 1; l <= len(row.m.Links); l++ {
					near(t, "turn, rad", float64(second.Turn(LinkID(l))), float64(first.Turn(LinkID(l))), 1e-10)
				}
				f := mustForce(t, first, Hold)
				near(t, "force, N", mustForce(t, second, Hold), f, 1e-8*(1+math.Abs(f)))
				a, b := first.Inertia(), second.Inertia()
				near(t, "effective mass, kg", b.Mass, a.Mass, 1e-9*a.Mass)
				near(t, "its slope, kg/m", b.Slope, a.Slope, 1e-7*(1+math.Abs(a.Slope)))
			})
		}
	}
}

// TestBranchIsCarried: in one go or in small steps a machine whose links are
// placed by Newton's method comes to the same pose, or ends at the same place.
// Solved from where the steps lead, it would at times fall into another mode.
func TestBranchIsCarried(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	base := classic{"Stephenson III", stephensonIII(75 * planar.Degree)}
	stops := 0
	for range 150 {
		m := shaken(r, base)
		m.Drive = Drive{Joint: 4 + 2*r.IntN(2), From: 0, To: 3 * (2*r.Float64() - 1)}
		md, err := Compile(m)
		if err != nil {
			continue
		}
		once, often := md.NewState(), md.NewState()
		errOnce := once.MoveTo(m.Drive.To)
		var errOften error
		for i := 1; i <= 500 && errOften == nil; i++ {
			errOften = often.MoveTo(m.Drive.To * float64(i) / 500)
		}
		if errOnce != nil {
			stops++
		}
		if (errOnce == nil) != (errOften == nil) {
			t.Fatalf("driver %+v: in one go %v, in small steps %v", m.Drive, errOnce, errOften)
		}
		near(t, "driver, rad", once.Driver(), often.Driver(), 1e-8)
		for l := range m.Links {
			tol := 1e-9
			if errOnce != nil {
				tol = 1e-2 // at the end of reach turns go with the root of the driver
			}
			near(t, m.Links[l].Name+", turn, rad", float64(once.Turn(LinkID(l+1))), float64(often.Turn(LinkID(l+1))), tol)
		}
		if t.Failed() {
			t.Fatalf("driver %+v", m.Drive)
		}
	}
	if stops < 20 || stops > 140 {
		t.Errorf("%d of 150 end before their travel, want some of each", stops)
	}
}
