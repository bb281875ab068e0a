package human

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"steelyard/reference"
)

func bodyOf(t testing.TB, p Person) *Body {
	t.Helper()
	b, _, err := NewBody(p)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Least-squares lines through the public survey data, computed with another
// program (Python 3.11, statistics.linear_regression): mm.
func TestConditionedOnStature(t *testing.T) {
	for _, c := range []struct {
		sex              reference.Sex
		d                reference.Dimension
		slope, intercept float64
		residual         float64
	}{
		{reference.Male, reference.Thigh, 0.276767, -76.7901, 21.1555},
		{reference.Female, reference.Thigh, 0.259093, -42.5124, 17.3681},
		{reference.Male, reference.UpperArm, 0.202817, -20.9453, 10.5994},
		{reference.Female, reference.UpperArm, 0.211985, -34.0139, 10.4600},
	} {
		for _, h := range []float64{1550, 1700, 1850} {
			mean, sd := condition(c.sex, []known{{reference.Stature, h / 1000, 0}})
			near(t, c.d.String()+" mean (mm)", 1000*mean[c.d], c.slope*h+c.intercept, 0.02)
			near(t, c.d.String()+" spread (mm)", 1000*sd[c.d], c.residual, 0.02)
		}
	}
}

// The same with two given dimensions: forearm to grip on stature and upper arm.
func TestConditionedOnTwo(t *testing.T) {
	mean, _ := condition(reference.Male, []known{{reference.Stature, 1.80, 0}, {reference.UpperArm, 0.36, 0}})
	near(t, "men, forearm to grip (mm)", 1000*mean[reference.ForearmGrip], 0.11590488535769235*1800+0.40107033047654034*360+10.999819526947732, 0.02)
	mean, _ = condition(reference.Female, []known{{reference.Stature, 1.60, 0}, {reference.UpperArm, 0.30, 0}})
	near(t, "women, forearm to grip (mm)", 1000*mean[reference.ForearmGrip], 0.11083121619663043*1600+0.4363573042541308*300+1.4326160518011761, 0.02)
}

func TestBodyFillsIn(t *testing.T) {
	p := Person{Height: 1.7562, Mass: 84, Sex: reference.Male, Age: 30}
	b := bodyOf(t, p)
	// An average man of the survey has its average limbs (mm, survey means).
	near(t, "upper arm (mm)", 1000*b.Size[reference.UpperArm].Value, 335.24, 1)
	near(t, "sitting height (mm)", 1000*b.Size[reference.SittingHeight].Value, 918.29, 1)
	if e := b.Size[reference.UpperArm]; e.Origin != FromSurvey || e.Spread < 0.009 || e.Spread > 0.011 || e.Source.Mark != reference.Computed {
		t.Errorf("upper arm: %+v", e)
	}

	p.Lengths = []Length{{Dimension: reference.UpperArm, Value: 0.360}}
	long := bodyOf(t, p)
	if e := long.Size[reference.UpperArm]; e.Value != 0.360 || e.Origin != Given || e.Source.Mark != reference.Measured {
		t.Errorf("measured upper arm: %+v", e)
	}
	if long.Size[reference.Forearm].Value <= b.Size[reference.Forearm].Value || long.Size[reference.Forearm].Spread >= b.Size[reference.Forearm].Spread {
		t.Error("a long upper arm must lengthen the expected forearm and narrow its spread")
	}
	p.Lengths[0].Spread = 0.050
	if v := bodyOf(t, p).Size[reference.Forearm].Value; v >= long.Size[reference.Forearm].Value {
		t.Error("a doubtful measurement must count less")
	}
}

func TestOutsideTheSurvey(t *testing.T) {
	b, warnings, err := NewBody(Person{Height: 2.05, Mass: 110, Sex: reference.Male, Age: 28})
	if err != nil {
		t.Fatal(err)
	}
	e := b.Size[reference.Thigh]
	near(t, "thigh (m), 0.245 of the height (Drillis & Contini)", e.Value, 0.245*2.05, 1e-12)
	if e.Origin != FromStature || e.Source.Mark != reference.TwoCopies || e.Spread < 0.02 {
		t.Errorf("thigh: %+v", e)
	}
	if m := b.Size[reference.ChestDepth].Source.Mark; m != reference.Interpolated {
		t.Errorf("chest depth carried beyond the survey is marked %v", m)
	}
	if len(warnings) == 0 || !strings.Contains(warnings[0].Text, "1.99") { // the survey's tallest man: 1993 mm
		t.Errorf("warnings: %v", warnings)
	}
}

func TestSexNotStated(t *testing.T) {
	at := func(sex reference.Sex) Estimate {
		return bodyOf(t, Person{Height: 1.70, Mass: 70, Sex: sex}).Size[reference.ShoulderBreadth]
	}
	f, m, u := at(reference.Female), at(reference.Male), at(reference.Unstated)
	near(t, "middle of both (m)", u.Value, (f.Value+m.Value)/2, 1e-12)
	if u.Spread <= f.Spread || u.Spread <= m.Spread {
		t.Errorf("spread %.4f must cover both %.4f and %.4f", u.Spread, f.Spread, m.Spread)
	}
}

func TestRefusedPeople(t *testing.T) {
	ok := Person{Height: 1.75, Mass: 75, Sex: reference.Male, Age: 30}
	change := func(f func(*Person)) Person { p := ok; f(&p); return p }
	length := func(d reference.Dimension, v ...float64) Person {
		return change(func(p *Person) {
			for _, x := range v {
				p.Lengths = append(p.Lengths, Length{Dimension: d, Value: x})
			}
		})
	}
	for _, c := range []struct {
		name   string
		p      Person
		place  string
		speaks string
	}{
		{"centimetres", change(func(p *Person) { p.Height = 178 }), "height", "did you mean 1.78 m"},
		{"a giant", change(func(p *Person) { p.Height = 3 }), "height", "2.50 m"},
		{"not a number", change(func(p *Person) { p.Height = math.NaN() }), "person", "ordinary numbers"},
		{"pounds", change(func(p *Person) { p.Mass = 400 }), "mass", "300 kg"},
		{"a feather", change(func(p *Person) { p.Mass = 30; p.Height = 1.9 }), "mass", "1.90 m"},
		{"a toddler", change(func(p *Person) { p.Age = 3 }), "age", "10 to 110"},
		{"an infinite age", change(func(p *Person) { p.Age = math.Inf(1) }), "person", "ordinary numbers"},
		{"upper arm in inches", length(reference.UpperArm, 0.14), "lengths: upper arm", "1.75 m"},
		{"arm longer than the person", length(reference.UpperArm, 2), "lengths: upper arm", "check the unit"},
		{"negative", length(reference.Thigh, -0.4), "lengths: thigh", "measure"},
		{"twice", length(reference.Thigh, 0.42, 0.43), "lengths: thigh", "twice"},
		{"stature as a length", length(reference.Stature, 1.7), "lengths", "own places"},
		{"no such segments", change(func(p *Person) { p.Segments = 7 }), "segments", "de Leva"},
		{"no such motion", change(func(p *Person) { p.Limits = []Limit{{NumActions, 9}} }), "limits", "name a motion"},
		{"no such dimension", length(reference.NumDimensions, 0.4), "lengths", "own places"},
		{"a range turned round", change(func(p *Person) { p.Limits = []Limit{{KneeFlex, degrees(20)}, {KneeExtend, degrees(-30)}} }), "limits: knee flexion", "leaves nothing"},
	} {
		_, _, err := NewBody(c.p)
		var input *InputError
		if !errors.As(err, &input) {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if input.Place != c.place || !strings.Contains(input.Text, c.speaks) {
			t.Errorf("%s: %q at %q, want %q at %q", c.name, input.Text, input.Place, c.speaks, c.place)
		}
	}
}

// Each long, but not impossible alone: together they contradict the height.
func TestConflictingLengths(t *testing.T) {
	p := Person{Height: 1.60, Mass: 60, Sex: reference.Female, Age: 30}
	p.Lengths = []Length{{Dimension: reference.UpperArm, Value: 0.345}, {Dimension: reference.Forearm, Value: 0.275}}
	_, warnings, err := NewBody(p)
	if err != nil {
		t.Fatal(err)
	}
	found := false
	for _, w := range warnings {
		found = found || w.Place == "lengths: upper arm and forearm"
	}
	if !found {
		t.Errorf("an arm of 0.620 m at 1.60 m passes without a word: %v", warnings)
	}
	p.Lengths = []Length{{Dimension: reference.UpperArm, Value: 0.380}, {Dimension: reference.Forearm, Value: 0.320}}
	if _, _, err := NewBody(p); err == nil {
		t.Error("an arm of 0.700 m at 1.60 m is accepted")
	}
}

// Any person within the limits gets a body of ordinary positive lengths, and no
// figures whatever make the package panic.
func TestAnyPerson(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Person{
			Height: rapid.Float64().Draw(t, "any height"), Mass: rapid.Float64().Draw(t, "any mass"), Age: rapid.Float64().Draw(t, "any age"),
			Sex: reference.Sex(rapid.IntRange(0, 2).Draw(t, "sex")),
		}
		if rapid.Bool().Draw(t, "plausible") {
			p.Height = rapid.Float64Range(1, 2.5).Draw(t, "height")
			p.Mass = p.Height * p.Height * rapid.Float64Range(14, 45).Draw(t, "index")
			p.Age = rapid.Float64Range(10, 110).Draw(t, "age")
		}
		b, _, err := NewBody(p)
		if err != nil {
			return
		}
		l := b.Links
		for _, v := range []float64{l.UpperArm, l.Forearm, l.ElbowToGrip, l.Thigh, l.Shank, l.Trunk, l.ShoulderHalf, l.HipHalf, l.Foot, l.HipToCrown} {
			if !(v > 0.01 && v < 1.6) {
				t.Fatalf("%+v gives %+v", p, l)
			}
		}
	})
}

// Check figure: de Leva's mean man is 1741 mm, 73.0 kg; Table 4 (two copies)
// gives an upper arm of 281.7 mm, a forearm of 268.9 mm and a shank of 434.0 mm
// between the same ends. The survey's soldiers agree within 6 %.
func TestLinksAgainstDeLeva(t *testing.T) {
	l := bodyOf(t, Person{Height: 1.741, Mass: 73, Sex: reference.Male, Age: 24}).Links
	for _, c := range []struct {
		name      string
		got, want float64
	}{{"upper arm", l.UpperArm, 0.2817}, {"forearm", l.Forearm, 0.2689}, {"thigh", l.Thigh, 0.4222}, {"shank", l.Shank, 0.4340}, {"trunk", l.Trunk, 0.5155}, {"foot", l.Foot, 0.2581}} {
		if r := c.got / c.want; math.Abs(r-1) > 0.06 {
			t.Errorf("%s: %.4f m, de Leva %.4f m (ratio %.3f)", c.name, c.got, c.want, r)
		}
	}
}

func TestSegmentMasses(t *testing.T) {
	// de Leva's Table 4, men, over 80 kg; centre .5772 of the upper arm.
	b := bodyOf(t, Person{Height: 1.80, Mass: 80, Sex: reference.Male, Age: 24})
	arm := b.Segment(reference.SegUpperArm)
	near(t, "upper arm (kg)", arm.Mass, 0.0271*80, 1e-9)
	near(t, "its centre (m)", arm.Centre, 0.5772*b.Links.UpperArm, 1e-12)
	near(t, "its inertia (kg·m²)", arm.Sideways, arm.Mass*math.Pow(0.269*b.Links.UpperArm, 2), 1e-12)
	trunk := b.Segment(reference.SegTrunk) // .4310 from the shoulders
	near(t, "trunk centre from the hips (m)", trunk.Centre, (1-0.4310)*b.Links.Trunk, 1e-12)

	p := b.Person
	p.Segments = reference.Dempster
	d := bodyOf(t, p)
	near(t, "Dempster upper arm (kg)", d.Segment(reference.SegUpperArm).Mass, 0.028*80, 1e-9)
	foot := d.Segment(reference.SegFoot) // .50 from ankle to ball, Winter Table 4.1
	near(t, "Dempster foot centre from the heel (m)", foot.Centre, (d.Links.HeelToAnkle+d.Links.HeelToBall)/2, 1e-12)
	near(t, "Dempster long axis (kg·m²)", d.Segment(reference.SegUpperArm).Long, 0, 0) // not given
}

// Seat and back, by hand from the survey's means for men (mm): sitting height
// 918.29, stature 1756.21, hip point 900.93, buttock to knee 617.95, thigh 409.27.
func TestSeatedLinks(t *testing.T) {
	var d reference.Dimensions
	for i := range d {
		d[i] = reference.SurveyOf(reference.Male).Row[i].Mean
	}
	l := LinksOf(d)
	near(t, "seat to hips (m)", l.SeatToHip, 0.91829-1.75621+0.90093, 1e-4)
	near(t, "back to hips (m)", l.BackToHip, 0.61795-0.40927-0.060, 1e-4)
	near(t, "hips to crown (m)", l.HipToCrown, 1.75621-0.90093, 1e-4)
}
