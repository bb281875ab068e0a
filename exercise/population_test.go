package exercise

import (
	"bytes"
	"context"
	"errors"
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

// thighRule is a leg extension with n seat holes a step apart, the first with
// the hips first behind the axle. With hips held and thighs level, whether the
// knee is in line depends on the thigh alone.
func thighRule(first, step float64, n int) ([]Dial, Build) {
	return []Dial{holes("seat", n)}, func(c []int) (*Setup, *mechanism.Sweep, error) {
		return setUpAt(PopulationPositions, onExtension(planar.Vec{X: -(first + step*float64(c[0])), Y: 0.6}), legExtension(0.25))
	}
}

// normalBetween is the probability of a normal variable between two bounds.
func normalBetween(mean, sd, low, high float64) float64 {
	phi := func(x float64) float64 { return math.Erfc(-(x-mean)/(sd*math.Sqrt2)) / 2 }
	return phi(high) - phi(low)
}

// TestShareOfPlantedRule compares the share with that of the normal
// distribution the thighs are drawn from, within four standard errors.
func TestShareOfPlantedRule(t *testing.T) {
	const draws = 4000
	for _, sex := range []reference.Sex{reference.Female, reference.Male} {
		row := reference.SurveyOf(sex).Row[reference.Thigh]
		for _, off := range []float64{-2, -1, 0, 1.5} { // standard deviations
			at := row.Mean + off*row.SD
			dials, build := thighRule(at, 0, 1)
			c, err := Population(context.Background(), dials, build, PopulationOptions{Sex: sex, Draws: draws, Within: 0.020})
			if err != nil {
				t.Fatal(err)
			}
			want := normalBetween(row.Mean, row.SD, at-0.020, at+0.020)
			if tol := 4 * math.Sqrt(want*(1-want)/draws); math.Abs(c.All.Share()-want) > tol {
				t.Errorf("%v, %+.1f sd: got %.4f, want %.4f ± %.4f", sex, off, c.All.Share(), want, tol)
			}
			if low, high := c.All.Between(); low > c.All.Share() || high < c.All.Share() || high-low > 0.04 {
				t.Errorf("%v: %.3f to %.3f is no band about %.3f", sex, low, high, c.All.Share())
			}
			if len(c.Dimensions) != 1 || c.Dimensions[0].Dimension != reference.Thigh {
				if math.Abs(off*row.SD) < 0.020 { // else an average thigh does not fit either
					t.Errorf("%v: %v in the way, want the thigh", sex, c.Dimensions)
				}
			}
		}
	}
}

// With the seat two standard deviations too far forward most of those shut out
// have thighs that are too long.
func TestTooLongIsTold(t *testing.T) {
	row := reference.SurveyOf(reference.Female).Row[reference.Thigh]
	dials, build := thighRule(row.Mean-0.018, 0, 1)
	c, err := Population(context.Background(), dials, build, PopulationOptions{Sex: reference.Female, Draws: 2000, Within: 0.020})
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Join(c.Words(), "\n")
	for _, want := range []string{"thigh too long (100 %)", "the knee is too far from the machine's axis (100 %)", "of 2,000 people drawn"} {
		if !strings.Contains(text, want) {
			t.Errorf("text lacks %q:\n%s", want, text)
		}
	}
	if c.Examined != mostExamined {
		t.Errorf("examined %d, want %d", c.Examined, mostExamined)
	}
}

func TestMoreHolesAndMoreRoomServeMore(t *testing.T) {
	last := Served{}
	for n := 1; n <= 5; n++ {
		dials, build := thighRule(0.36, 0.02, n)
		c, err := Population(context.Background(), dials, build, PopulationOptions{Draws: 600, Within: 0.012, Seed: 3})
		if err != nil {
			t.Fatal(err)
		}
		if c.All.Served < last.Served {
			t.Errorf("%d holes serve %d, one fewer served %d", n, c.All.Served, last.Served)
		}
		last = c.All
		sum := 0
		for _, v := range c.Values[0] {
			sum += v.Served
			if v.Only > v.Served || v.Served > c.All.Served || v.Low > v.High {
				t.Errorf("a hole serves %+v of %+v", v, c.All)
			}
		}
		if sum < c.All.Served || c.Women.Served+c.Men.Served != c.All.Served || c.Women.People != 300 {
			t.Errorf("the parts do not add up: %d by holes, %+v, %+v of %+v", sum, c.Women, c.Men, c.All)
		}
	}
	last = Served{}
	for _, within := range []float64{0.005, 0.01, 0.02, 0.04} {
		dials, build := thighRule(0.40, 0.03, 2)
		c, err := Population(context.Background(), dials, build, PopulationOptions{Draws: 600, Within: within, Seed: 3})
		if err != nil {
			t.Fatal(err)
		}
		if c.All.Served < last.Served {
			t.Errorf("within %g m serves %d, less room served %d", within, c.All.Served, last.Served)
		}
		last = c.All
	}
}

func TestPopulationIsTheSameWhateverTheWorkers(t *testing.T) {
	dials, build := thighRule(0.36, 0.02, 4)
	var first []byte
	for _, workers := range []int{1, 2, 5} {
		c, err := Population(context.Background(), dials, build, PopulationOptions{Draws: 1030, Within: 0.01, Workers: workers, Seed: 7})
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		if err := c.WriteJSON(&out, "rule", nil); err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = out.Bytes()
			value, err := jsonschema.UnmarshalJSON(bytes.NewReader(first))
			if err != nil {
				t.Fatal(err)
			}
			if err := compiledSchema(t, PeopleSchema).Validate(value); err != nil {
				t.Error(err)
			}
		}
		if !bytes.Equal(first, out.Bytes()) {
			t.Errorf("%d workers give another outcome than 1", workers)
		}
	}
}

func TestSamePlacesAreTriedOnce(t *testing.T) {
	dials, build := thighRule(0.38, 0.02, 3)
	dials = append(dials, holes("paint", 6))
	c, err := Population(context.Background(), dials, func(v []int) (*Setup, *mechanism.Sweep, error) { return build(v[:1]) }, PopulationOptions{Draws: 50})
	if err != nil {
		t.Fatal(err)
	}
	if c.Places != 3 || c.Tried != 18 || !c.Matters(0) || c.Matters(1) {
		t.Errorf("got %d places of %d choices, seat matters %v, paint %v; want 3 of 18, true, false", c.Places, c.Tried, c.Matters(0), c.Matters(1))
	}
}

func TestThinnedKeepsEnds(t *testing.T) {
	thin, picks, possible := thinned([]Dial{holes("a", 100), holes("b", 3), holes("c", 41)})
	if possible != 12300 || product([]int{len(picks[0]), len(picks[1]), len(picks[2])}) > MostPlaces {
		t.Errorf("got %d possible, %d × %d × %d taken", possible, len(picks[0]), len(picks[1]), len(picks[2]))
	}
	for d, last := range []int{99, 2, 40} {
		p := picks[d]
		if p[0] != 0 || p[len(p)-1] != last || !slices.IsSorted(p) || len(slices.Compact(slices.Clone(p))) != len(p) || len(thin[d].Values) != len(p) {
			t.Errorf("dial %d: took %v", d, p)
		}
	}
	if len(picks[1]) != 3 {
		t.Errorf("the short list was cut to %v", picks[1])
	}
}

func TestPopulationStopsAndRefuses(t *testing.T) {
	dials, build := thighRule(0.36, 0.02, 4)
	ctx, stop := context.WithCancel(context.Background())
	last := 0
	_, err := Population(ctx, dials, build, PopulationOptions{Draws: 5000, Workers: 2, Progress: func(done, total int) {
		if done <= last || total != 5000 {
			t.Errorf("progress went from %d to %d of %d", last, done, total)
		}
		last = done
		stop()
	}})
	if !errors.Is(err, context.Canceled) || last > 500 {
		t.Errorf("got %v after %d people, want it stopped at once", err, last)
	}
	broken := errors.New("links cannot meet")
	_, err = Population(context.Background(), dials, func([]int) (*Setup, *mechanism.Sweep, error) { return nil, nil, broken }, PopulationOptions{Draws: 10})
	if !errors.Is(err, broken) {
		t.Errorf("got %v, want the machine's own error", err)
	}
	if _, err := ParseSexWord("all"); err == nil || !strings.Contains(err.Error(), "women, men or both") {
		t.Errorf("got %v", err)
	}
}

// Wilson's interval for 10 of 100 is 5.5 % to 17.4 %: R. G. Newcombe, Stat Med
// 17 (1998) 857-872, gives for 15 of 148 the bounds 0.0624 and 0.1605 (from
// memory); both follow from the quadratic (p - x)² = z² x(1-x)/n.
func TestBetweenSolvesItsQuadratic(t *testing.T) {
	for _, s := range []Served{{148, 15}, {100, 10}, {10, 0}, {10, 10}} {
		n, p := float64(s.People), s.Share()
		low, high := s.Between()
		for _, x := range []float64{low, high} {
			if left, right := (p-x)*(p-x), 1.959964*1.959964*x*(1-x)/n; math.Abs(left-right) > 1e-12 {
				t.Errorf("%+v: %g does not solve it: %g against %g", s, x, left, right)
			}
		}
	}
	if low, high := (Served{148, 15}).Between(); math.Abs(low-0.0624) > 5e-5 || math.Abs(high-0.1605) > 5e-5 {
		t.Errorf("15 of 148: got %.4f to %.4f, want 0.0624 to 0.1605", low, high)
	}
}

// 10,000 people on 20 settings: 5 s on two cores is what is allowed. "near" has
// few people at each place, "pad" and "press" nearly all at every place, so that
// every position is looked at.
func BenchmarkPopulation(b *testing.B) {
	seats, kick := thighRule(0.30, 0.01, 20)
	average := human.LinksOf(reference.Dimensions{reference.UpperArm: 0.32, reference.ForearmGrip: 0.33, reference.Trunk: 0.5, reference.ShoulderBreadth: 0.38})
	press := func(c []int) (*Setup, *mechanism.Sweep, error) {
		return atPress(PopulationPositions, &human.Body{Links: average}, -0.15+0.005*float64(c[0]))
	}
	for _, c := range []struct {
		name   string
		build  Build
		within float64
	}{{"near", kick, 0.03}, {"pad", kick, 1}, {"press", press, 1}} {
		b.Run(c.name, func(b *testing.B) {
			var out *Coverage
			for b.Loop() {
				var err error
				out, err = Population(context.Background(), seats, c.build, PopulationOptions{Within: c.within})
				if err != nil {
					b.Fatal(err)
				}
			}
			if out.All.People != 10_000 || out.Places != 20 {
				b.Fatalf("%d people at %d places", out.All.People, out.Places)
			}
			b.ReportMetric(100*out.All.Share(), "%served")
		})
	}
}
