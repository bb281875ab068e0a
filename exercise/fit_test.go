package exercise

import (
	"bytes"
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"steelyard/human"
	"steelyard/mechanism"
	"steelyard/planar"
	"steelyard/reference"
)

// legExtension is an arm about an axle at (0, 0.6) with a shin pad hanging so
// far below it, 10 kg at the pad, swung from 100° below level to 20°.
func legExtension(pad float64) mechanism.Machine {
	axle := planar.Vec{Y: 0.6}
	at := axle.Add(planar.Vec{Y: -pad})
	return mechanism.Machine{Name: "leg extension", Links: []mechanism.Link{{Name: "arm"}},
		Joints:  []mechanism.Joint{{Name: "axle", Kind: mechanism.Revolute, A: mechanism.Ground, B: 1, At: axle}},
		Weights: []mechanism.Weight{{Name: "plates", Link: 1, At: at, Mass: 10, Load: true}},
		Drive:   mechanism.Drive{From: -10 * float64(deg), To: 70 * float64(deg)},
		Contact: mechanism.Contact{Name: "pad", Link: 1, At: at}}
}

// onExtension is a seated person with the hip joints at a point, thighs level.
func onExtension(hips planar.Vec) Station {
	return Station{Exercises: []Exercise{LegExtension}, Contact: Pad, On: OnShank, Anchor: HipsAnchor, At: hips, Trunk: 90 * deg,
		PadRadius: 0.05, Axis: planar.Vec{Y: 0.6}, HasAxis: true}
}

func setUp(st Station, m mechanism.Machine) (*Setup, *mechanism.Sweep, error) {
	return setUpAt(FitPositions, st, m)
}

func setUpAt(positions int, st Station, m mechanism.Machine) (*Setup, *mechanism.Sweep, error) {
	md, err := mechanism.Compile(m)
	if err != nil {
		return nil, nil, err
	}
	sw, err := md.Sweep(positions)
	if err != nil {
		return nil, nil, err
	}
	s, err := NewSetup(st.Exercises[0], st, md, sw)
	return s, sw, err
}

// holes returns a dial of n values, its usual one in the middle.
func holes(name string, n int) Dial {
	d := Dial{Name: name, Usual: n / 2}
	for i := range n {
		d.Values = append(d.Values, string(rune('a'+i%26))+strings.Repeat("'", i/26))
	}
	return d
}

func woman(t testing.TB) *human.Body {
	t.Helper()
	b, _, err := human.NewBody(human.Person{Height: 1.66, Mass: 65, Sex: reference.Female, Age: 30})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// seats is a leg extension whose hips go in steps of step along x and y about
// where the knee is in line with the axle, and whose pad goes along the arm.
func seats(b *human.Body, nx, ny, npad int, step float64) ([]Dial, Build) {
	dials := []Dial{holes("seat", nx), holes("height", ny), holes("pad", npad)}
	return dials, func(c []int) (*Setup, *mechanism.Sweep, error) {
		off := planar.Vec{X: step * float64(c[0]-nx/2), Y: step * float64(c[1]-ny/2)}
		hips := planar.Vec{X: -b.Links.Thigh, Y: 0.6}.Add(off).Add(planar.Vec{X: 0.003, Y: 0.004})
		return setUp(onExtension(hips), legExtension(0.30+0.02*float64(c[2])))
	}
}

// A thigh that lies level puts the knee as far in front of the hip as it is
// long, so with one seat dial the distance from the axle is a subtraction.
func TestFitLinesUpKneeAsGeometryDemands(t *testing.T) {
	b := woman(t)
	dials := []Dial{holes("seat", 8)}
	x := func(hole int) float64 { return -0.50 + 0.02*float64(hole) }
	build := func(c []int) (*Setup, *mechanism.Sweep, error) {
		return setUp(onExtension(planar.Vec{X: x(c[0]), Y: 0.6}), legExtension(0.32))
	}
	f, err := Fit(context.Background(), dials, build, b, FitOptions{})
	if err != nil {
		t.Fatal(err)
	}
	best := 0
	for hole := range 8 {
		if math.Abs(x(hole)+b.Links.Thigh) < math.Abs(x(best)+b.Links.Thigh) {
			best = hole
		}
	}
	got := &f.Best[0]
	if want := math.Abs(x(best) + b.Links.Thigh); got.Choice[0] != best || math.Abs(got.Misaligned-want) > 1e-9 {
		t.Errorf("got hole %d, %.4f mm off the axis; want %d, %.4f mm", got.Choice[0], 1000*got.Misaligned, best, 1000*want)
	}
	if !f.Proven || f.Tried != 8 || f.Possible != 8 {
		t.Errorf("got %d of %d tried, proven %v; want all 8", f.Tried, f.Possible, f.Proven)
	}
	if got.Joint != "knee" || math.Abs(got.Off.X-x(best)-b.Links.Thigh) > 1e-9 || math.Abs(got.Off.Y) > 1e-9 || got.Off.Z != 0 {
		t.Errorf("got the %s off by %v; want the knee, level with the axle", got.Joint, got.Off)
	}
}

// TestExhaustiveIsBruteForce goes through every choice in loops of its own, by
// geometry of its own: among the fitting, the one whose excess over InLine, in
// steps, is least, then what covers most, then the nearest.
func TestExhaustiveIsBruteForce(t *testing.T) {
	b := woman(t)
	dials, build := seats(b, 7, 5, 3, 0.012)
	f, err := Fit(context.Background(), dials, build, b, FitOptions{})
	if err != nil {
		t.Fatal(err)
	}
	fit, best := 0, [3]float64{math.Inf(1)}
	for i := range 7 {
		for j := range 5 {
			for k := range 3 {
				s, sw, err := build([]int{i, j, k})
				if err != nil {
					t.Fatal(err)
				}
				first, last := longestClean(s, sw, b)
				if sw.Travel[last]-sw.Travel[first] < 0.8*sw.Travel[s.Len()-1] {
					continue
				}
				fit++
				off := math.Hypot(0.003+0.012*float64(i-3), 0.004+0.012*float64(j-2))
				key := [3]float64{math.Max(0, math.Ceil((off-0.010)/0.005-1e-9)), math.Round(100 * (1 - kneeCovered(s, b, first, last))), off}
				if slices.Compare(key[:], best[:]) < 0 {
					best = key
				}
			}
		}
	}
	if f.Tried != 105 || f.Fit != fit {
		t.Errorf("got %d tried and %d that fit, want 105 and %d", f.Tried, f.Fit, fit)
	}
	if got := f.Best[0].Misaligned; math.Abs(got-best[2]) > 1e-9 {
		t.Errorf("best is %.3f mm off the axis, want %.3f mm", 1000*got, 1000*best[2])
	}
	for i := 1; i < len(f.Best); i++ {
		if f.Best[i].score.compare(f.Best[i-1].score) <= 0 {
			t.Errorf("number %d is no worse than the one before", i+1)
		}
	}
}

// longestClean returns the ends of the longest stretch without a fault, by
// looking at every pair of ends.
func longestClean(s *Setup, sw *mechanism.Sweep, b *human.Body) (first, last int) {
	var pl Placement
	for i := range s.Len() {
		for j := i; j < s.Len() && s.Place(&pl, b, j).Kind == NoFault; j++ {
			if sw.Travel[j]-sw.Travel[i] > sw.Travel[last]-sw.Travel[first] {
				first, last = i, j
			}
		}
	}
	return first, last
}

// kneeCovered is the share of the knee's range between two positions; the knee
// only straightens on the way.
func kneeCovered(s *Setup, b *human.Body, from, to int) float64 {
	var first, last Placement
	s.Place(&first, b, from)
	s.Place(&last, b, to)
	r := b.Ranges[human.KneeFlexion]
	return float64(first.Leg.Knee-last.Leg.Knee) / float64(r.Max.Angle-r.Min.Angle)
}

// TestClimbFindsPlantedOptimum searches a grid of millimetres, far too many to
// try, for a knee planted in line with the axle.
func TestClimbFindsPlantedOptimum(t *testing.T) {
	b := woman(t)
	dials, build := seats(b, 200, 200, 5, 0.001)
	dials[0].Usual, dials[1].Usual = 0, 0
	f, err := Fit(context.Background(), dials, build, b, FitOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if got := f.Best[0].Misaligned; got > InLine {
		t.Errorf("best is %.1f mm off the axis, want at most %.0f mm", 1000*got, 1000*InLine)
	}
	if f.Proven || f.Tried > 20_000 || f.Possible != 200_000 {
		t.Errorf("tried %d of %d, proven %v; want few and no proof", f.Tried, f.Possible, f.Proven)
	}
}

// TestClimbAgreesWithExhaustive lets both ways search the same choices.
func TestClimbAgreesWithExhaustive(t *testing.T) {
	b := woman(t)
	dials, build := seats(b, 13, 11, 4, 0.008)
	for _, o := range []FitOptions{{}, {Aim: AimLengthened}, {Aim: AimEven, Joint: "knee"}} {
		full, err := Fit(context.Background(), dials, build, b, o)
		if err != nil {
			t.Fatal(err)
		}
		o.Exhaustive = 1
		climbed, err := Fit(context.Background(), dials, build, b, o)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := climbed.Best[0].score, full.Best[0].score; got != want {
			t.Errorf("aim %q: climbing %d of %d ends at %v, the best is %v", o.Aim, climbed.Tried, full.Tried, got, want)
		}
	}
}

func TestFitIsTheSameWhateverTheWorkers(t *testing.T) {
	b := woman(t)
	dials, build := seats(b, 9, 5, 3, 0.01)
	for _, exhaustive := range []int{0, 1} {
		var first []byte
		for _, workers := range []int{1, 2, 5} {
			f, err := Fit(context.Background(), dials, build, b, FitOptions{Workers: workers, Exhaustive: exhaustive, Aim: AimMiddle})
			if err != nil {
				t.Fatal(err)
			}
			var out bytes.Buffer
			if err := f.WriteJSON(&out, "leg extension", nil); err != nil {
				t.Fatal(err)
			}
			if first == nil {
				first = out.Bytes()
			}
			if !bytes.Equal(first, out.Bytes()) {
				t.Errorf("exhaustive %d: %d workers give another outcome than 1", exhaustive, workers)
			}
		}
	}
}

// An aim may not make the share it asks for smaller than another aim does, as
// long as the alignment is of one class: here every choice has the same.
func TestAimIsServed(t *testing.T) {
	b := woman(t)
	dials := []Dial{holes("hang", 9)}
	build := func(c []int) (*Setup, *mechanism.Sweep, error) {
		m := legExtension(0.32)
		turn := planar.Angle(c[0]-4) * 15 * deg // where the plates hang about the axle
		sin, cos := math.Sincos(float64(turn))
		m.Weights[0].At = planar.Vec{X: 0.32 * sin, Y: 0.6 - 0.32*cos}
		return setUp(onExtension(planar.Vec{X: -b.Links.Thigh, Y: 0.6}), m)
	}
	for aim := AimLengthened; aim <= AimEven; aim++ {
		f, err := Fit(context.Background(), dials, build, b, FitOptions{Aim: aim})
		if err != nil {
			t.Fatal(err)
		}
		got := aim.met(f.Best[0].Shares())
		for other := AimLengthened; other <= AimEven; other++ {
			g, err := Fit(context.Background(), dials, build, b, FitOptions{Aim: other})
			if err != nil {
				t.Fatal(err)
			}
			if its := aim.met(g.Best[0].Shares()); its > got+0.005 {
				t.Errorf("aim %v reaches %.3f, but aiming for %v reaches %.3f of it", aim, got, other, its)
			}
		}
	}
}

func TestAimMet(t *testing.T) {
	for _, c := range []struct {
		aim    Aim
		shares [3]float64
		want   float64
	}{
		{AimLengthened, [3]float64{0.5, 0.3, 0.2}, 0.5},
		{AimMiddle, [3]float64{0.5, 0.3, 0.2}, 0.3},
		{AimShortened, [3]float64{0.5, 0.3, 0.2}, 0.2},
		{AimEven, [3]float64{1. / 3, 1. / 3, 1. / 3}, 1},
		{AimEven, [3]float64{1, 0, 0}, 0},
		{AimEven, [3]float64{0.5, 0.5, 0}, 0.5}, // off by a third at the most: 1 - 1.5/3
		{NoAim, [3]float64{1, 0, 0}, 0},
	} {
		if got := c.aim.met(c.shares); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%q of %v: got %g, want %g", c.aim, c.shares, got, c.want)
		}
	}
}

// A setting that touches neither body nor load is told once, not ranked.
func TestIndifferentSettingIsNamed(t *testing.T) {
	b := woman(t)
	dials, build := seats(b, 3, 1, 1, 0.02)
	dials = append(dials, holes("paint", 4))
	f, err := Fit(context.Background(), dials, func(c []int) (*Setup, *mechanism.Sweep, error) { return build(c[:3]) }, b, FitOptions{})
	if err != nil {
		t.Fatal(err)
	}
	best := &f.Best[0]
	if !slices.Equal(best.Same, []string{"paint"}) || best.Equal != 3 || best.Choice[3] != dials[3].Usual {
		t.Errorf("got %v, %d equal, paint at %d; want paint left at its usual place", best.Same, best.Equal, best.Choice[3])
	}
	if len(f.Best) > 1 && f.Best[1].Choice[0] == best.Choice[0] {
		t.Error("the second best is the first in another paint")
	}
}

func compiledSchema(t *testing.T, text []byte) *jsonschema.Schema {
	t.Helper()
	parsed, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("schema.json", parsed); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile("schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return schema
}

func TestFitDocumentFollowsSchema(t *testing.T) {
	b := woman(t)
	schema := compiledSchema(t, FitSchema)
	for _, step := range []float64{0.01, 0.2} { // at 0.2 m a step hardly anything fits
		dials, build := seats(b, 3, 2, 1, step)
		f, err := Fit(context.Background(), dials, build, b, FitOptions{Held: []Chosen{{"plates", "10 kg"}}})
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		if err := f.WriteJSON(&out, "leg extension", []string{"start light"}); err != nil {
			t.Fatal(err)
		}
		value, err := jsonschema.UnmarshalJSON(&out)
		if err != nil {
			t.Fatal(err)
		}
		if err := schema.Validate(value); err != nil {
			t.Error(err)
		}
	}
}

func BenchmarkFit(b *testing.B) {
	body, _, err := human.NewBody(human.Person{Height: 1.66, Mass: 65, Sex: reference.Female, Age: 30})
	if err != nil {
		b.Fatal(err)
	}
	dials, build := seats(body, 10, 10, 4, 0.008)
	for _, aim := range []Aim{NoAim, AimLengthened} {
		b.Run("aim="+aim.String(), func(b *testing.B) {
			for b.Loop() {
				if _, err := Fit(context.Background(), dials, build, body, FitOptions{Aim: aim}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
